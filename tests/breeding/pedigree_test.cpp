// Lines of a pedigree become an order of parents before offspring, or a message that names what is
// wrong.
#include "breeding/known_pedigrees.hpp"

#include "support/check_file.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::breeding;
using namespace bullace::test;

namespace {

std::string messageOf(const Lines& lines, const std::vector<CloneLine>& clones = {}) {
    const auto pedigree = makePedigree(lines, clones);
    REQUIRE_FALSE(pedigree.ok());
    CHECK(pedigree.error().code == ErrorCode::InvalidInput);
    return pedigree.error().message;
}

} // namespace

TEST_CASE("parents may come after their offspring, and one that is only named is a founder") {
    const Pedigree pedigree =
        pedigreeOf(linesOf({{"A31", "A12", "A7"}, {"A12", "A1", ""}, {"A7", "A1", "A2"}}));
    CHECK(pedigree.size() == 5);
    CHECK(pedigree.namedOnlyAsParent == 2);
    for (std::size_t i = 0; i < pedigree.size(); ++i) {
        CHECK(pedigree.mother[i] < static_cast<std::int32_t>(i));
        CHECK(pedigree.father[i] < static_cast<std::int32_t>(i));
    }
    const auto last = static_cast<std::size_t>(in(pedigree, "A31"));
    CHECK(pedigree.mother[last] == in(pedigree, "A12"));
    CHECK(pedigree.father[last] == in(pedigree, "A7"));
    CHECK_FALSE(pedigree.find("A99"));
}

TEST_CASE("no lines are a pedigree of nobody") {
    CHECK(pedigreeOf({}).size() == 0);
}

TEST_CASE("an individual that is its own ancestor is refused with the members of the circle") {
    CHECK(
        messageOf(linesOf(
            {{"A12", "A7", "A1"}, {"A7", "A31", ""}, {"A31", "", "A12"}, {"A40", "A12", "A7"}})) ==
        "A12 is its own ancestor: A12 (line 2), A7 (line 3), A31 (line 4).");
    CHECK(messageOf(linesOf({{"A5", "A5", "A1"}})) == "A5 is its own ancestor: A5 (line 2).");
    // Between two circles lies nobody that is its own ancestor.
    const std::string two = messageOf(
        linesOf({{"a", "b", ""}, {"b", "a", ""}, {"m", "a", ""}, {"y", "m", "z"}, {"z", "y", ""}}));
    CHECK(two.find("a (line 2), b (line 3)") != std::string::npos);
    CHECK(two.find("2 such circles") != std::string::npos);
    CHECK(two.find("m (line") == std::string::npos);
}

TEST_CASE("the outside case of a circle names exactly its members") {
    if (const auto csv = checkFile("cases/ped-invalid-cycle/pedigree.csv")) {
        CHECK(messageOf(linesOf(*csv)) ==
              "b is its own ancestor: b (line 3), d (line 5), c (line 4).");
    }
}

TEST_CASE("one vine with two mothers, or listed twice with other parents, is refused by lines") {
    CHECK(messageOf(linesOf({{"A3", "A1", "A2"}, {"A4", "A1", ""}, {"A3", "A4", "A2"}})) ==
          "A3 is listed twice: with the parents A1 and A2 on line 2, with A4 and A2 on line 4.");
    CHECK(messageOf(linesOf({{"A3", "A1", "A2"}, {"A3", "", ""}})) ==
          "A3 is listed twice: with the parents A1 and A2 on line 2, with unknown and unknown on "
          "line 3.");
    CHECK(pedigreeOf(linesOf({{"A3", "A1", "A2"}, {"A3", "A1", "A2"}})).repeatedLines == 1);
    CHECK(messageOf(linesOf({{"", "A1", "A2"}})) == "Line 2 has no name of a vine.");
}

TEST_CASE("a bud sport is the genotype that it was taken from") {
    const std::vector<CloneLine> clones{{"S1", "A3", 2}, {"S2", "S1", 3}};
    const auto pedigree =
        makePedigree(linesOf({{"A3", "A1", "A2"}, {"A9", "S2", "A3"}, {"A8", "S1", "A1"}}), clones);
    REQUIRE(pedigree.ok());
    CHECK(pedigree->size() == 5);
    CHECK(pedigree->find("S2") == pedigree->find("A3"));
    const auto selfed = static_cast<std::size_t>(*pedigree->find("A9"));
    CHECK(pedigree->mother[selfed] == pedigree->father[selfed]);
    CHECK(messageOf(linesOf({{"A3", "A1", "A2"}, {"S1", "A1", "A4"}}), clones).find("twice") !=
          std::string::npos);
    CHECK(messageOf({}, {{"S1", "S2", 1}, {"S2", "S1", 2}}) == "S1 is a clone of itself (line 1).");
    CHECK(messageOf({}, {{"S1", "A1", 1}, {"S1", "A2", 2}}) ==
          "S1 is a clone of A1 (line 1) and of A2 (line 2): it can be of one only.");
    CHECK(messageOf({}, {{"S1", "", 1}}).find("Line 1") == 0);
}

TEST_CASE("every pedigree that time could have made is taken, in any order of its lines") {
    CHECK(rc::check([](std::uint64_t seed) {
        std::mt19937_64 dice(seed);
        Lines lines = randomLines(dice, 1 + dice() % 40);
        std::ranges::shuffle(lines, dice);
        const auto pedigree = makePedigree(lines);
        RC_ASSERT(pedigree.ok());
        RC_ASSERT(pedigree->size() == lines.size());
        for (std::size_t i = 0; i < pedigree->size(); ++i) {
            RC_ASSERT(pedigree->mother[i] < static_cast<std::int32_t>(i));
            RC_ASSERT(pedigree->father[i] < static_cast<std::int32_t>(i));
        }
    }));
}
