// What is read vine by vine: stretches of subjects between two bounds, and one subject alone.
#include "support/journals.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using store::Role;

namespace {

std::string vigour(const char* vine, const char* date) {
    return std::string("obs/B2-07-") + vine + "/" + date + "/vigour";
}

// "VINE VALUE" of each row, in the order in which they come.
std::string
read(Journal& tablet, const std::vector<store::PathStretch>& stretches, std::size_t most = 100) {
    std::string words;
    std::size_t rows = 0;
    REQUIRE(tablet
                ->eachStateIn(stretches,
                              [&](const store::StateRow& row) {
                                  words += row.subject.substr(10, 2) + " " + row.valueJson + ", ";
                                  return ++rows < most;
                              })
                .ok());
    return words;
}

store::PathStretch may(const char* vine) {
    const std::string place = std::string("obs/B2-07-") + vine + "/";
    return {place + "2026-05-01", place + "2026-05-31~"};
}

} // namespace

TEST_CASE("several vines are read one after the other, each within its own days") {
    Journal tablet(Role::Field, 3);
    tablet.write(act(vigour("01", "2026-04-30"), integerValue(1)));
    tablet.write(act(vigour("01", "2026-05-12"), integerValue(2)));
    tablet.write(act(vigour("02", "2026-05-12"), integerValue(3)));
    tablet.write(act(vigour("02", "2026-05-31"), integerValue(4)));
    tablet.write(act(vigour("02", "2026-06-01"), integerValue(5)));
    tablet.write(act(vigour("03", "2026-05-12"), integerValue(6)));
    CHECK(read(tablet, {may("01"), may("02")}) == "01 2, 02 3, 02 4, ");
    CHECK(read(tablet, {may("03"), may("09"), may("01")}) == "03 6, 01 2, ");
    CHECK(read(tablet, {}).empty());
    CHECK(read(tablet, {may("02"), may("03")}, 2) == "02 3, 02 4, "); // no more was wanted
}

TEST_CASE("an undone value is not read, and a vine's subject alone is not that of its samples") {
    Journal tablet(Role::Field, 3);
    const std::string subject = vigour("01", "2026-05-12");
    const auto place = tablet.write(act(subject, integerValue(2)));
    tablet.write(act(subject + "/" + tablet->about().own.text() + ",1", integerValue(7)));
    CHECK(tablet.says(subject) == "settled 2");
    tablet.write(undo(subject, {place}));
    CHECK(tablet.says(subject).empty());
    CHECK(read(tablet, {may("01")}) == "01 7, ");
}
