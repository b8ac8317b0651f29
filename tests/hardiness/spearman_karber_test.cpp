// The mean killing dose without a curve, trimmed and not.
#include "core/hardiness/spearman_karber.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace bullace;
using namespace bullace::hardiness;

namespace {

std::vector<KillShare> logShares(std::vector<DoseRow> rows) {
    for (DoseRow& row : rows) {
        row.x = std::log10(row.x);
    }
    return killShares(pooledDoses(rows));
}

// US EPA's program on data of Hamilton, Russo & Thurston 1977, Environ. Sci. Technol. 11:714-719,
// with the correction of 1978 (12:417). Limits are ±2 standard errors of log10; 0 where the program
// gives none.
struct Printed {
    const char* name;
    std::vector<DoseRow> rows;
    double trim, lc50, low, high;
};
const std::vector<Printed> kPrinted{
    {"1A-0",
     {{15.54, 20, 0}, {20.47, 20, 0}, {27.92, 20, 0}, {35.98, 19, 1}, {55.52, 20, 20}},
     0,
     43.89,
     42.37,
     45.47},
    {"1A-5",
     {{15.54, 20, 0}, {20.47, 20, 0}, {27.92, 20, 0}, {35.98, 19, 1}, {55.52, 20, 20}},
     0.05,
     44.16,
     41.92,
     46.52},
    {"1A-10",
     {{15.54, 20, 0}, {20.47, 20, 0}, {27.92, 20, 0}, {35.98, 19, 1}, {55.52, 20, 20}},
     0.1,
     44.16,
     0,
     0},
    {"1A-20",
     {{15.54, 20, 0}, {20.47, 20, 0}, {27.92, 20, 0}, {35.98, 19, 1}, {55.52, 20, 20}},
     0.2,
     44.16,
     0,
     0},
    {"1C-0",
     {{15.54, 20, 0}, {20.47, 20, 1}, {27.92, 20, 0}, {35.98, 19, 3}, {55.52, 20, 20}},
     0,
     41.73,
     39.14,
     44.49},
    {"1C-5",
     {{15.54, 20, 0}, {20.47, 20, 1}, {27.92, 20, 0}, {35.98, 19, 3}, {55.52, 20, 20}},
     0.05,
     42.53,
     39.86,
     45.38},
    {"1C-10",
     {{15.54, 20, 0}, {20.47, 20, 1}, {27.92, 20, 0}, {35.98, 19, 3}, {55.52, 20, 20}},
     0.1,
     42.79,
     39.51,
     46.34},
    {"1C-20",
     {{15.54, 20, 0}, {20.47, 20, 1}, {27.92, 20, 0}, {35.98, 19, 3}, {55.52, 20, 20}},
     0.2,
     42.91,
     40.77,
     45.17},
    {"1E-0",
     {{15.54, 20, 0}, {20.47, 20, 1}, {27.92, 20, 1}, {35.98, 19, 19}, {55.52, 20, 20}},
     0,
     30.8,
     29.6,
     32.04},
    {"1E-5",
     {{15.54, 20, 0}, {20.47, 20, 1}, {27.92, 20, 1}, {35.98, 19, 19}, {55.52, 20, 20}},
     0.05,
     31.48,
     0,
     0},
    {"1E-10",
     {{15.54, 20, 0}, {20.47, 20, 1}, {27.92, 20, 1}, {35.98, 19, 19}, {55.52, 20, 20}},
     0.1,
     31.48,
     0,
     0},
    {"1E-20",
     {{15.54, 20, 0}, {20.47, 20, 1}, {27.92, 20, 1}, {35.98, 19, 19}, {55.52, 20, 20}},
     0.2,
     31.48,
     0,
     0},
    {"4A-0",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 10}, {60, 10, 10}, {100, 10, 10}},
     0,
     26.75,
     24.28,
     29.46},
    {"4A-5",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 10}, {60, 10, 10}, {100, 10, 10}},
     0.05,
     27.2,
     24.1,
     30.71},
    {"4A-10",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 10}, {60, 10, 10}, {100, 10, 10}},
     0.1,
     27.38,
     0,
     0},
    {"4A-20",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 10}, {60, 10, 10}, {100, 10, 10}},
     0.2,
     27.38,
     0,
     0},
    {"4C-0",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 4}, {60, 10, 10}, {100, 10, 10}},
     0,
     36.14,
     30.09,
     43.4},
    {"4C-5",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 4}, {60, 10, 10}, {100, 10, 10}},
     0.05,
     36.96,
     30.39,
     44.96},
    {"4C-10",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 4}, {60, 10, 10}, {100, 10, 10}},
     0.1,
     37.49,
     30.69,
     45.81},
    {"4C-20",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 4}, {60, 10, 10}, {100, 10, 10}},
     0.2,
     38.18,
     29.41,
     49.56}};

// Table V of the same paper; values to all digits by an independent program of its formulas.
struct TableV {
    const char* name;
    std::vector<DoseRow> rows;
    double lc50[4];
    double variance, low, high;
};
const std::vector<TableV> kTableV{
    {"dr4a",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 10}, {60, 10, 10}, {100, 10, 10}},
     {26.7451250832949, 27.2042724735766, 27.3829591526181, 27.3829591526181},
     0.000440283636509974,
     24.2816815872807,
     29.458491709066},
    {"dr4b",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 7}, {36, 10, 10}, {60, 10, 10}, {100, 10, 10}},
     {19.703205585037, 19.5237924162613, 19.3555811264888, 19.0705837406817},
     0.00102732848518994,
     16.9993751441651,
     22.8370929539423},
    {"dr4c",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 1}, {36, 10, 4}, {60, 10, 10}, {100, 10, 10}},
     {36.1379243353098, 36.9605580093361, 37.4949817375391, 38.1801647846449},
     0.00157943995450231,
     30.0939272877687,
     43.3957842317034},
    {"dr4d",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 2}, {36, 10, 7}, {60, 10, 10}, {100, 10, 10}},
     {29.5451338196441, 29.6921594158865, 29.7904796894236, 29.7405074468518},
     0.00177948824314992,
     24.3286493880129,
     35.8801229981461},
    {"dr4e",
     {{7.8, 10, 0}, {13, 10, 0}, {22, 10, 2}, {36, 10, 3}, {60, 10, 10}, {100, 10, 10}},
     {36.110348124492, 37.0581259610236, 38.0512196910669, 40.2258839191239},
     0.00177948824314992,
     29.734710431934,
     43.853033129645}};

bool agrees(double found, double expected) {
    return std::abs(found - expected) <= 1e-9 + 1e-9 * std::abs(expected);
}

} // namespace

TEST_CASE("trimmed means are those that the program of the method's authors prints") {
    for (const Printed& printed : kPrinted) {
        CAPTURE(printed.name);
        const auto found = spearmanKarber(logShares(printed.rows), printed.trim);
        REQUIRE(found);
        CHECK(std::abs(std::pow(10, found->mean) - printed.lc50) < 0.011);
        if (printed.low > 0) {
            const double error = std::sqrt(found->varianceAsPrinted);
            CHECK(std::abs(std::pow(10, found->mean - 2 * error) - printed.low) < 0.011);
            CHECK(std::abs(std::pow(10, found->mean + 2 * error) - printed.high) < 0.011);
        }
    }
}

// Independent of the closed form: each share moved by a little, and the mean taken anew.
TEST_CASE("the variance is that of the delta method, also where a trim leaves one row between") {
    const std::vector<KillShare> shares{{0, 20, 0}, {1, 20, 0.05}, {2.5, 30, 0.4}, {3, 25, 0.97}};
    for (const double trim : {0.04, 0.1, 0.2, 0.45}) {
        CAPTURE(trim);
        const auto found = spearmanKarber(shares, trim);
        REQUIRE(found);
        double variance = 0;
        for (std::size_t i = 0; i < shares.size(); ++i) {
            std::vector<KillShare> more = shares;
            std::vector<KillShare> less = shares;
            more[i].killed += 1e-6;
            less[i].killed -= 1e-6;
            const double slope =
                (spearmanKarber(more, trim)->mean - spearmanKarber(less, trim)->mean) / 2e-6;
            variance +=
                slope * slope * shares[i].killed * (1 - shares[i].killed) / shares[i].counted;
        }
        CHECK(found->variance == doctest::Approx(variance).epsilon(1e-4));
    }
}

TEST_CASE("the five tables of 1977 come out to nine digits at each trim") {
    for (const TableV& table : kTableV) {
        CAPTURE(table.name);
        const std::vector<KillShare> shares = logShares(table.rows);
        const double trims[] = {0, 0.05, 0.1, 0.2};
        for (std::size_t i = 0; i < 4; ++i) {
            CAPTURE(trims[i]);
            const auto found = spearmanKarber(shares, trims[i]);
            REQUIRE(found);
            CHECK(agrees(std::pow(10, found->mean), table.lc50[i]));
        }
        const auto whole = spearmanKarber(shares, 0);
        CHECK(agrees(whole->variance, table.variance));
        const double error = std::sqrt(whole->variance);
        CHECK(agrees(std::pow(10, whole->mean - 2 * error), table.low));
        CHECK(agrees(std::pow(10, whole->mean + 2 * error), table.high));
    }
}

// EPA-821-R-02-013, Appendix J, Table J1: the data are printed there; the mean of the hand
// calculation, 1.6565, is from memory and computed again.
TEST_CASE("the minnows of EPA's Appendix J, with their control pooled and corrected for") {
    std::vector<DoseRow> rows{
        {6.25, 40, 2}, {12.5, 40, 0}, {25, 40, 0}, {50, 40, 26}, {100, 40, 40}};
    for (DoseRow& row : rows) {
        row.x = std::log10(row.x);
    }
    const auto shares = killSharesAgainst(pooledDoses(rows), {40, 2});
    REQUIRE(shares.ok());
    CHECK((*shares)[0].killed == 0);
    CHECK((*shares)[2].killed == 0);
    CHECK((*shares)[3].killed == doctest::Approx(0.6410).epsilon(1e-4));
    CHECK((*shares)[4].killed == 1);
    const auto found = spearmanKarber(*shares, 0);
    REQUIRE(found);
    CHECK(std::abs(found->mean - 1.6565) < 0.0001);
    CHECK(std::abs(std::pow(10, found->mean) - 45.34) < 0.01);
    CHECK(found->varianceByLess.value() == doctest::Approx(0.00053468).epsilon(1e-3));
    CHECK(found->variance < *found->varianceByLess);
}

// Invented buds; an independent program's values.
TEST_CASE("shares that do not reach from none to all need a trim") {
    const std::vector<DoseRow> buds{{10, 30, 1},
                                    {12.5, 30, 3},
                                    {15, 30, 16},
                                    {17.5, 30, 23},
                                    {20, 30, 29},
                                    {22.5, 30, 30},
                                    {25, 30, 30}};
    const std::vector<KillShare> shares = killShares(buds);
    CHECK_FALSE(spearmanKarber(shares, 0).has_value());
    CHECK(leastTrim(shares).value() == doctest::Approx(1 / 30.0));
    CHECK(spearmanKarber(shares, 0.1)->mean == doctest::Approx(15.2430555555556).epsilon(1e-9));
    CHECK(spearmanKarber(shares, 0.2)->mean == doctest::Approx(15.102386039886).epsilon(1e-9));
    const std::vector<DoseRow> females{
        {0, 20, 0}, {1, 20, 2}, {2, 20, 6}, {3, 20, 10}, {4, 20, 12}, {5, 20, 16}};
    CHECK_FALSE(spearmanKarber(killShares(females), 0.1).has_value());
    CHECK(spearmanKarber(killShares(females), 0.2)->mean ==
          doctest::Approx(3.20833333333333).epsilon(1e-9));
}

TEST_CASE("kill that falls with frost is pooled with its neighbour, weighted by what was counted") {
    const std::vector<KillShare> shares =
        killShares(std::vector<DoseRow>{{10, 10, 0}, {12, 10, 4}, {14, 30, 3}, {16, 10, 10}});
    CHECK(shares[0].killed == 0);
    CHECK(shares[1].killed == doctest::Approx(7.0 / 40));
    CHECK(shares[2].killed == doctest::Approx(7.0 / 40));
    CHECK(shares[3].killed == 1);
}

TEST_CASE("a control that cannot be corrected for is told, and nothing gives no mean") {
    const std::vector<DoseRow> rows{{10, 10, 0}, {12, 10, 4}};
    CHECK_FALSE(killSharesAgainst(rows, {0, 0}).ok());
    CHECK_FALSE(killSharesAgainst(rows, {10, 11}).ok());
    CHECK_FALSE(killSharesAgainst(rows, {10, 10}).ok());
    CHECK_FALSE(spearmanKarber({}, 0).has_value());
    CHECK_FALSE(leastTrim({}).has_value());
    CHECK_FALSE(spearmanKarber(killShares(rows), 0.5).has_value());
    const std::vector<DoseRow> never{{10, 10, 0}, {12, 10, 4}};
    CHECK_FALSE(leastTrim(killShares(never)).has_value());
}
