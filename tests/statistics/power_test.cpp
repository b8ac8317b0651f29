// How many vines, pairs and blocks a planned comparison takes, against values computed in R.
#include "core/statistics/power.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace bullace::statistics;

namespace {

doctest::Approx near(double value) {
    return doctest::Approx(value).epsilon(1e-6);
}

} // namespace

TEST_CASE("vines in each of two groups, by the noncentral t distribution") {
    {
        const auto n = vinesForDifference(1.0, 1.0, {0.9, 0.05});
        REQUIRE(n);
        CHECK(n->exact == near(22.021095570094));
        CHECK(n->each == 23);
        CHECK(n->power == near(0.912498295660624));
    }
    {
        const auto n = vinesForDifference(0.5, 1.0, {0.8, 0.05});
        REQUIRE(n);
        CHECK(n->exact == near(63.7657637248468));
        CHECK(n->each == 64);
        CHECK(n->power == near(0.801458623367973));
    }
    {
        const auto n = vinesForDifference(2.2, 3.0, {0.85, 0.01});
        REQUIRE(n);
        CHECK(n->exact == near(50.2123286678543));
        CHECK(n->each == 51);
        CHECK(n->power == near(0.856706583164918));
    }
}

TEST_CASE("vines for a mean that is known to a wanted half width") {
    {
        const auto n = vinesForMean(4.0, 1, 0.05);
        REQUIRE(n);
        CHECK(n->n == 64);
        CHECK(n->achieved == near(0.999170271260371));
        CHECK(n->withOneLess > 1.0);
        CHECK(vinesForMeanNormal(4.0, 1, 0.05) == 62);
    }
    {
        const auto n = vinesForMean(1.2, 0.25, 0.1);
        REQUIRE(n);
        CHECK(n->n == 65);
        CHECK(n->achieved == near(0.248418705101754));
        CHECK(n->withOneLess > 0.25);
        CHECK(vinesForMeanNormal(1.2, 0.25, 0.1) == 63);
    }
}

TEST_CASE("pairs for a correlation, by Fisher's z") {
    CHECK(*pairsForCorrelation(0.3, {0.8, 0.05}) == near(84.9278111157752));
    CHECK(*pairsForCorrelation(0.5, {0.9, 0.05}) == near(37.8230899651845));
}

TEST_CASE("blocks of a trial, by the noncentral F distribution") {
    {
        const auto n = blocksForTrial(6, 0.5, 1.0, {0.8, 0.05});
        REQUIRE(n);
        CHECK(n->n == 7);
        CHECK(n->achieved == near(0.855648865848439));
        CHECK(n->withOneLess == near(0.772072248325415));
    }
    {
        const auto n = blocksForTrial(12, 0.3, 1.0, {0.9, 0.05});
        REQUIRE(n);
        CHECK(n->n == 8);
        CHECK(n->achieved == near(0.930734945329409));
        CHECK(n->withOneLess == near(0.878578720766797));
    }
}

TEST_CASE("blocks for a least significant difference") {
    {
        const auto n = blocksForDifference(10, 2.5, 1.6, 0.05);
        REQUIRE(n);
        CHECK(n->n == 8);
        CHECK(n->achieved == near(1.57982691375553));
    }
    {
        const auto n = blocksForDifference(20, 0.8, 0.7, 0.05);
        REQUIRE(n);
        CHECK(n->n == 13);
        CHECK(n->achieved == near(0.691270185727146));
    }
}

TEST_CASE("plots of a survey by strata") {
    // USDA Forest Service Handbook 2409.12 (2000): areas 30 10 20 40, CV 40 65 80 35 %, error 10 %,
    // t = 2, 1,000 plots: weighted CV 48.5 %, 86 plots.
    const std::vector<Stratum> strata{{30, 40}, {10, 65}, {20, 80}, {40, 35}};
    const auto plan = plotsOfStrata(strata, 10, 2, 1000);
    REQUIRE(plan);
    CHECK(plan->cvPercent == near(48.5));
    CHECK(plan->exact == doctest::Approx(85.998).epsilon(1e-4));
    CHECK(plan->plots == 86);
    const auto endless = plotsOfStrata(strata, 10, 2);
    REQUIRE(endless);
    CHECK(endless->exact == near(94.09));
    CHECK(endless->plots == 95);
}

TEST_CASE("what cannot be planned is not planned") {
    CHECK_FALSE(vinesForDifference(0, 1, {0.9, 0.05}));
    CHECK_FALSE(vinesForDifference(1e-9, 1, {0.9, 0.05}));
    CHECK_FALSE(vinesForDifference(1, 1, {0.04, 0.05}));
    CHECK_FALSE(vinesForMean(1, 1e-9, 0.05));
    CHECK_FALSE(vinesForMean(-1, 1, 0.05));
    CHECK_FALSE(vinesForMeanNormal(1, 1, 0));
    CHECK_FALSE(pairsForCorrelation(0, {0.9, 0.05}));
    CHECK_FALSE(pairsForCorrelation(1, {0.9, 0.05}));
    CHECK_FALSE(blocksForTrial(1, 1, 1, {0.9, 0.05}));
    CHECK_FALSE(blocksForTrial(5, 1e-9, 1, {0.9, 0.05}));
    CHECK_FALSE(blocksForDifference(5, 1, 1e-9, 0.05));
    CHECK_FALSE(plotsOfStrata({}, 10, 2));
    CHECK_FALSE(plotsOfStrata(std::vector<Stratum>{{-1, 30}}, 10, 2));
    CHECK(std::isfinite(vinesForDifference(100, 1, {0.9, 0.05})->exact));
}
