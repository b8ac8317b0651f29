// What a device keeps for itself: with an act in one transaction, and never sent.
#include "support/journals.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using journal::textValue;
using store::Bookmark;
using store::Role;

TEST_CASE("a bookmark that goes with an act is there after the act, and after a restart") {
    Journal tablet(Role::Field, 3);
    CHECK(tablet->kept("walk").value().empty());
    const std::vector<Bookmark> marks{{"walk", textValue("vine 14")}, {"hand", textValue("left")}};
    REQUIRE(tablet
                ->append(
                    std::vector{act(kSubject, integerValue(5))}, {}, store::Grouping::Single, marks)
                .ok());
    CHECK(tablet->kept("walk").value() == textValue("vine 14"));
    tablet.reopen();
    CHECK(tablet->kept("walk").value() == textValue("vine 14"));
    CHECK(tablet->kept("hand").value() == textValue("left"));
    REQUIRE(tablet->keep(std::vector<Bookmark>{{"walk", textValue("vine 15")}}).ok());
    CHECK(tablet->kept("walk").value() == textValue("vine 15"));
    tablet.checkSound();
}

TEST_CASE("an act that is refused leaves its bookmark as it was") {
    Journal tablet(Role::Field, 3);
    REQUIRE(tablet->keep(std::vector<Bookmark>{{"walk", textValue("vine 14")}}).ok());
    const std::vector<Bookmark> marks{{"walk", textValue("vine 15")}};
    const auto refused = tablet->append(
        std::vector{act("rulebook/1", integerValue(5))}, {}, store::Grouping::Single, marks);
    CHECK_FALSE(refused.ok());
    CHECK(tablet->kept("walk").value() == textValue("vine 14"));
}

TEST_CASE("bookmarks are no entries: an export does not hold them") {
    Journal tablet(Role::Field, 3);
    tablet.write(act(kSubject, integerValue(5)));
    const std::string before = tablet.exported();
    REQUIRE(tablet->keep(std::vector<Bookmark>{{"walk", textValue("vine 14")}}).ok());
    CHECK(tablet.exported() == before);
}
