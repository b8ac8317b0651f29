// Fills that people of every colour vision tell apart.
#include "core/report/palettes.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace bullace::report;

namespace {

constexpr Vision kVisions[] = {Vision::Full, Vision::Protan, Vision::Deutan, Vision::Tritan};
constexpr double kLeastDifference = 12; // below it two fills are taken for one

double worstPair(std::span<const Rgb> palette, Vision vision) {
    double worst = 1000;
    for (std::size_t i = 0; i < palette.size(); ++i) {
        for (std::size_t j = i + 1; j < palette.size(); ++j) {
            worst = std::min(
                worst, differenceOf(seenWith(vision, palette[i]), seenWith(vision, palette[j])));
        }
    }
    return worst;
}

} // namespace

TEST_CASE("categories, ordered steps and differences stay apart for every colour vision") {
    for (const Vision vision : kVisions) {
        CAPTURE(int(vision));
        CHECK(worstPair(categoryColours(), vision) >= kLeastDifference);
        CHECK(worstPair(orderedColours(), vision) >= kLeastDifference);
        CHECK(worstPair(divergingColours(), vision) >= kLeastDifference);
    }
}

TEST_CASE("differences are white in the middle and about as light at both sides of it") {
    const auto steps = divergingColours();
    REQUIRE(steps.size() == 7);
    CHECK(labOf(steps[3]).lightness == doctest::Approx(100));
    for (std::size_t i = 0; i < 3; ++i) {
        const double below = labOf(steps[i]).lightness;
        const double above = labOf(steps[6 - i]).lightness;
        CHECK(std::abs(below - above) < 9); // blue is a little darker than vermillion
        CHECK(below < labOf(steps[i + 1]).lightness);
        CHECK(above < labOf(steps[5 - i]).lightness);
    }
}

TEST_CASE("fewer steps than a palette has take its ends and keep its order") {
    const auto three = spreadOver(orderedColours(), 3);
    REQUIRE(three.size() == 3);
    CHECK(three.front().blue == orderedColours().front().blue);
    CHECK(three.back().blue == orderedColours().back().blue);
    CHECK(labOf(three[0]).lightness < labOf(three[1]).lightness);
    CHECK(labOf(three[1]).lightness < labOf(three[2]).lightness);
    CHECK(spreadOver(orderedColours(), 0).empty());
    REQUIRE(spreadOver(orderedColours(), 1).size() == 1);
    CHECK(spreadOver(orderedColours(), 10).size() == 10);
}
