// Whose pollen meets whose flowers: where it can be worked by hand, and within its bounds.
#include "core/season/stage_date.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::season;

namespace {

BloomWindow window(const char* accession,
                   double start,
                   double end,
                   double spread = 0,
                   std::optional<FlowerSex> sex = FlowerSex::Perfect) {
    return {accession, sex, {start, spread, 0, 10}, {end, spread, 0, 10}};
}
BloomOverlap overlap(const BloomWindow& mother, const BloomWindow& father) {
    const auto made = bloomOverlaps(std::vector{mother, father});
    REQUIRE(made.ok());
    REQUIRE_FALSE(made->pairs.empty());
    return made->pairs.front();
}

} // namespace

TEST_CASE("windows without spread overlap by their shared days, or pollen waits") {
    const BloomOverlap meeting = overlap(window("A", 150, 160), window("B", 155, 170));
    CHECK(meeting.days.value == doctest::Approx(5));
    CHECK(meeting.days.interval->low == doctest::Approx(5));
    CHECK(meeting.probability == 1);
    CHECK_FALSE(meeting.stored.has_value());
    const BloomOverlap early = overlap(window("A", 150, 160), window("B", 130, 140));
    CHECK(early.days.value == 0);
    CHECK(early.probability == 0);
    REQUIRE(early.stored.has_value());
    CHECK(early.stored->days == doctest::Approx(10));
    CHECK_FALSE(early.stored->isFromYearBefore);
    const BloomOverlap late = overlap(window("A", 150, 160), window("B", 165, 172));
    REQUIRE(late.stored.has_value());
    CHECK(late.stored->isFromYearBefore);
    CHECK(late.stored->days == doctest::Approx(150 + 365.25 - 172));
}

// Two windows of the same length L whose starts differ by X ~ N(0, 2 s²): they share max(0, L -
// |X|) days. With L large the mean is L - E|X| = L - 2 s/√π, and P(share >= 1) = P(|X| <= L - 1).
TEST_CASE("vines that spread share as many days as the normal law says") {
    const BloomOverlap wide = overlap(window("A", 150, 190, 4), window("B", 150, 190, 4));
    CHECK(std::abs(wide.days.value - (40 - 8 / std::sqrt(3.141592653589793))) < 0.1);
    const BloomOverlap narrow = overlap(window("A", 150, 156, 4), window("B", 150, 156, 4));
    // Φ(5/5.656854) = 0.811617; both sides: 0.623234.
    CHECK(std::abs(narrow.probability - 0.6232) < 0.01);
}

TEST_CASE("means that are hardly known widen what may be expected") {
    BloomWindow sure = window("A", 150, 160, 2);
    BloomWindow unsure = window("B", 156, 166, 2);
    const BloomOverlap known = overlap(sure, unsure);
    unsure.start.standardError = 4;
    unsure.end.standardError = 4;
    unsure.start.degreesOfFreedom = 3;
    unsure.end.degreesOfFreedom = 3;
    const BloomOverlap doubtful = overlap(sure, unsure);
    CHECK(doubtful.days.interval->high > known.days.interval->high);
    CHECK(doubtful.probability < known.probability);
}

TEST_CASE("male vines are no mothers and female vines no fathers") {
    const auto made = bloomOverlaps(std::vector{window("M", 150, 160, 2, FlowerSex::Male),
                                                window("F", 150, 160, 2, FlowerSex::Female),
                                                window("U", 150, 160, 2, std::nullopt)});
    REQUIRE(made.ok());
    CHECK(made->leftOut == 3); // M as mother of F and U, F as father of U
    CHECK(made->pairs.size() == 3);
    CHECK(made->remarks.size() == 2);
    for (const BloomOverlap& pair : made->pairs) {
        CHECK(pair.mother != 0);
        CHECK(pair.father != 1);
    }
    CHECK(bloomOverlaps({})->pairs.empty());
    CHECK_FALSE(bloomOverlaps(std::vector{window("A", 160, 150)}).ok());
    CHECK_FALSE(bloomOverlaps(std::vector{window("A", NAN, 150)}).ok());
    CHECK_FALSE(bloomOverlaps(std::vector{window("A", 150, 160, -1)}).ok());
}

TEST_CASE(
    "who is asked first changes the shared days little, and no overlap is longer than a window") {
    CHECK(rc::check("bounds", [] {
        const double start = *rc::gen::inRange(140, 160);
        const double other = *rc::gen::inRange(140, 160);
        const double length = *rc::gen::inRange(1, 20);
        const double otherLength = *rc::gen::inRange(1, 20);
        const double spread = *rc::gen::inRange(0, 50) / 10.0;
        const BloomWindow a = window("A", start, start + length, spread);
        const BloomWindow b = window("B", other, other + otherLength, spread);
        const auto made = bloomOverlaps(std::vector{a, b});
        RC_ASSERT(made.ok());
        const BloomOverlap& one = made->pairs[0];
        const BloomOverlap& two = made->pairs[1];
        RC_ASSERT(one.days.value <= std::min(length, otherLength) + 1e-4);
        RC_ASSERT(one.days.value >= 0);
        RC_ASSERT(std::abs(one.days.value - two.days.value) < 0.1);
        RC_ASSERT(one.probability >= 0);
        RC_ASSERT(one.probability <= 1);
        RC_ASSERT(one.days.interval->low <= one.days.interval->high);
    }));
}

TEST_CASE("a stage whose vines share an interval still has a day with its error") {
    const auto spread = stageDate(
        std::vector<YearOnset>{{2021, {150, 153}}, {2021, {156, 160}}, {2021, {146, 150}}});
    REQUIRE(spread.ok());
    REQUIRE(spread->date.has_value());
    CHECK(spread->date->spread > 1);
    CHECK(spread->remarks.empty());
    const auto same = stageDate(std::vector<YearOnset>(5, {2021, {150, 153}}));
    REQUIRE(same->date.has_value());
    CHECK(same->date->spread == 0);
    CHECK(std::abs(same->date->mean - 151.5) < 0.01);
    CHECK(same->date->standardError > 0.3);
    CHECK(same->date->standardError < 1.5);
    CHECK(same->remarks.size() == 2);
    CHECK_FALSE(stageDate(std::vector<YearOnset>{{2021, {150, 153}}})->date.has_value());
    CHECK_FALSE(stageDate({})->date.has_value());
}
