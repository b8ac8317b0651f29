// A season's yield from its picks, and a crop foretold from counts and weights.
#include "core/fruit/crop.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace bullace;
using namespace bullace::fruit;
using statistics::Estimate;

namespace {

CivilDate day(unsigned month, unsigned of) {
    return std::chrono::year(2025) / std::chrono::month(month) / std::chrono::day(of);
}

} // namespace

TEST_CASE("a season's yield is the sum of its picks") {
    const std::vector<Pick> picks{
        {day(9, 12), 6.5, ""}, {day(8, 30), 12.25, ""}, {day(9, 25), {}, "no-crop"}};
    const SeasonYield yield = seasonYield(picks);
    CHECK(yield.kg == doctest::Approx(18.75));
    CHECK(yield.picks == 2);
    CHECK(yield.isComplete);
    CHECK(yield.first == day(8, 30));
    CHECK(yield.last == day(9, 12));
    CHECK(yield.remarks.empty());
}

TEST_CASE("a missed pick makes the season incomplete") {
    const std::vector<Pick> picks{{day(8, 30), 12.25, ""}, {day(9, 12), {}, "walked-past"}};
    const SeasonYield yield = seasonYield(picks);
    CHECK_FALSE(yield.isComplete);
    CHECK(yield.missed == 1);
    CHECK(inEnglish(yield.remarks.at(0)) ==
          "Incomplete: picks missed: 1. The vine bore more than the sum says.");
    CHECK(seasonYield({}).kg == 0);
    CHECK_FALSE(seasonYield({}).first);
}

TEST_CASE("vines on an acre at published spacings") {
    // Ohio State University (Dami): 6 × 9 ft, 807 vines; crop estimation page: 8 × 9 ft, 605.
    CHECK(std::round(vinesPerArea(kSquareFeetOfAcre, 9, 6)) == 807);
    CHECK(vinesPerArea(kSquareFeetOfAcre, 9, 8) == doctest::Approx(605).epsilon(1e-12));
    CHECK(vinesPerArea(kSquareFeetOfAcre, 10, 20) == doctest::Approx(217.8));
    CHECK(vinesPerArea(kSquareMetresOfHectare, 4, 2.5) == 1000);
}

TEST_CASE("a crop is vines by clusters by berries by weight") {
    // 181.5 vines, 95 % of them bearing, 220 clusters of 0.18 lb: 3.414015 short tons by hand
    // (2000 lb); as one berry of that weight a cluster, in kg.
    const double pound = 453.59237;
    const CropEstimate crop = cropEstimate({{181.5 * 0.95}, {220}, {1}, {0.18 * pound}, {}});
    REQUIRE(crop.kg);
    CHECK(crop.kg->value == doctest::Approx(3.414015 * 2000 * pound / 1000).epsilon(1e-12));
    CHECK(crop.kg->interval->low == doctest::Approx(crop.kg->value));
}

TEST_CASE(
    "relative errors of the factors add up as squares, and the greatest is named by its share") {
    const CropEstimate crop =
        cropEstimate({{100}, {200, 6.0, {}}, {10, 0.4, {}}, {5, 0.0, {}}, Estimate{2, 0.1, {}}});
    REQUIRE(crop.kg);
    CHECK(crop.kg->value == doctest::Approx(2000));
    // 3 %, 4 % and 5 %: √(9 + 16 + 25) = 7.07 %.
    CHECK(*crop.kg->standardError / crop.kg->value == doctest::Approx(std::sqrt(0.005)));
    CHECK(crop.shares.at(4) == doctest::Approx(0.5));
    CHECK(crop.shares.at(0) == 0);
    CHECK(crop.kg->interval->low == doctest::Approx(2000 / std::exp(1.959964 * std::sqrt(0.005))));
    CHECK(crop.remarks.empty());
}

TEST_CASE("a factor that is not above zero gives no crop, and says so") {
    for (const double bad : {0.0, -3.0, std::nan(""), statistics::kUnbounded}) {
        const CropEstimate crop = cropEstimate({{100}, {bad}, {10}, {5}, {}});
        CHECK_FALSE(crop.kg);
        CHECK(crop.remarks.size() == 1);
    }
    CHECK_FALSE(cropEstimate({{1e300}, {1e300}, {10}, {5}, {}}).kg);
}

TEST_CASE("the lag-phase factor comes from the station's own records") {
    const std::vector<LagPhaseRecord> records{{4, 8}, {5, 11}, {6, 11.5}, {0, 9}};
    const LagPhaseFactor factor = lagPhaseFactor(records);
    REQUIRE(factor.factor);
    CHECK(factor.records == 3);
    CHECK(factor.factor->value ==
          doctest::Approx(std::cbrt(2.0 * 2.2 * (11.5 / 6))).epsilon(1e-12));
    CHECK(factor.factor->interval->holds(2.0));
    CHECK(factor.remarks.size() == 1); // one was left out
    const LagPhaseFactor few = lagPhaseFactor(std::vector<LagPhaseRecord>{{4, 8}});
    CHECK_FALSE(few.factor);
    CHECK(few.remarks.size() == 1);
}
