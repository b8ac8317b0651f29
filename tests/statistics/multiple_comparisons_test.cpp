// The studentized range, Dunnett's statistic, and the test of Shapiro and Wilk.
#include "core/statistics/adjust.hpp"
#include "core/statistics/distributions.hpp"
#include "core/statistics/dunnett.hpp"
#include "core/statistics/normality.hpp"
#include "core/statistics/studentized_range.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

using namespace bullace::statistics;

namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

double normalDraw(std::mt19937_64& random) {
    return normalQuantile((static_cast<double>(random() >> 11) + 0.5) / 9007199254740992.0);
}

} // namespace

TEST_CASE("the range of two means is that of Student's t") {
    for (const double df : {1.0, 2.0, 2.5, 7.0, 30.0, 1000.0}) {
        for (const double q : {0.1, 1.0, 3.0, 6.0, 20.0}) {
            const double t = studentTBothTails(q / std::numbers::sqrt2, df);
            CHECK(studentizedRangeAbove(q, 2, df) == doctest::Approx(t).epsilon(1e-10));
        }
    }
    CHECK(studentizedRangeAbove(3, 2, kInfinite) ==
          doctest::Approx(2 * normalBelow(-3 / std::numbers::sqrt2)).epsilon(1e-11));
}

// The usual table of 5 and 1 % points (Harter 1960, Ann. Math. Stat. 31:1122-1147), from memory.
TEST_CASE("points of the studentized range are those of the tables") {
    struct Row {
        double above;
        unsigned groups;
        double df;
        double q;
    };
    for (const Row& row : {Row{0.05, 3, 10, 3.877},
                           Row{0.05, 5, 20, 4.232},
                           Row{0.05, 10, 60, 4.646},
                           Row{0.05, 2, 1, 17.97},
                           Row{0.01, 3, 10, 5.270},
                           Row{0.05, 4, kInfinite, 3.633}}) {
        const double q = studentizedRangeQuantile(row.above, row.groups, row.df);
        CHECK(std::abs(q - row.q) < 0.006 * std::max(1.0, row.q / 10));
        CHECK(studentizedRangeAbove(q, row.groups, row.df) ==
              doctest::Approx(row.above).epsilon(1e-8));
    }
}

TEST_CASE("hundreds of means and few degrees of freedom keep to their probabilities") {
    double last = 0;
    for (const unsigned groups : {2U, 10U, 100U, 1000U}) {
        const double q = studentizedRangeQuantile(0.05, groups, 3);
        CHECK(q > last);
        CHECK(studentizedRangeAbove(q, groups, 3) == doctest::Approx(0.05).epsilon(1e-8));
        last = q;
    }
    CHECK(studentizedRangeAbove(0, 5, 10) == 1);
    CHECK(std::isnan(studentizedRangeAbove(3, 1, 10)));
    CHECK(std::isnan(studentizedRangeQuantile(1.5, 3, 10)));
}

// Dunnett 1955, table 2 (two-sided, 5 %) by its later revision (Dunnett 1964, Biometrics
// 20:482-491), from memory.
TEST_CASE("Dunnett's points are those of the tables, and one mean is Student's t") {
    const auto point = [](std::size_t means, double df) {
        const std::vector<double> lambdas(means, std::sqrt(0.5));
        return Dunnett(lambdas, df).quantile(0.05);
    };
    CHECK(std::abs(point(2, 10) - 2.57) < 0.006);
    CHECK(std::abs(point(3, 16) - 2.59) < 0.006);
    CHECK(std::abs(point(5, 20) - 2.73) < 0.006);
    CHECK(point(1, 7) == doctest::Approx(studentTQuantile(0.975, 7)).epsilon(1e-9));
    const std::vector<double> wrong = {1.0};
    CHECK(std::isnan(Dunnett(wrong, 5).above(2)));
}

TEST_CASE("Dunnett's probability for unequal numbers is what trials drawn at random show") {
    const std::vector<double> n = {3, 5, 12};
    const double reference = 7;
    const double df = 9;
    std::vector<double> lambdas;
    for (const double each : n) {
        lambdas.push_back(std::sqrt(each / (each + reference)));
    }
    const double point = Dunnett(lambdas, df).quantile(0.1);
    std::mt19937_64 random(20);
    const int draws = 40000;
    int beyond = 0;
    for (int draw = 0; draw < draws; ++draw) {
        double chi = 0;
        for (int i = 0; i < 9; ++i) {
            const double z = normalDraw(random);
            chi += z * z;
        }
        const double s = std::sqrt(chi / df);
        const double base = normalDraw(random) / std::sqrt(reference);
        double greatest = 0;
        for (const double each : n) {
            const double apart = normalDraw(random) / std::sqrt(each) - base;
            greatest =
                std::max(greatest, std::abs(apart) / (s * std::sqrt(1 / each + 1 / reference)));
        }
        beyond += greatest > point ? 1 : 0;
    }
    // Three standard errors of the share: 0.0045.
    CHECK(std::abs(static_cast<double>(beyond) / draws - 0.1) < 0.0045);
}

TEST_CASE("the loadings of a product correlation are found again") {
    const std::vector<double> lambdas = {0.3, 0.6, 0.7, 0.55};
    std::vector<double> correlations(16, 1.0);
    for (std::size_t i = 0; i < 4; ++i) {
        for (std::size_t j = 0; j < 4; ++j) {
            correlations[i * 4 + j] = i == j ? 1.0 : lambdas[i] * lambdas[j];
        }
    }
    const std::vector<double> found = productLoadings(correlations, 4);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(found[i] == doctest::Approx(lambdas[i]).epsilon(1e-8));
    }
}

// Shapiro & Wilk 1965, p. 606: weights of 11 men, W = 0.79, between the 1 % points; Royston's
// approximation gives W = 0.7888 and p = 0.0067 (values of the last two from memory).
TEST_CASE("the weights of eleven men are not from a normal distribution") {
    const std::vector<double> weights = {148, 154, 158, 160, 161, 162, 166, 170, 182, 195, 236};
    const auto test = shapiroWilk(weights);
    REQUIRE(test);
    CHECK(test->w == doctest::Approx(0.7888).epsilon(0.0002));
    CHECK(test->p == doctest::Approx(0.0067).epsilon(0.01));
    CHECK_FALSE(shapiroWilk(std::vector<double>{4, 4, 4, 4}));
    CHECK_FALSE(shapiroWilk(std::vector<double>{4, 5}));
    CHECK(shapiroWilk(std::vector<double>{1, 2, 3})->w == doctest::Approx(1));
}

TEST_CASE("normal samples are held for normal as often as the level says") {
    std::mt19937_64 random(7);
    int rejected = 0;
    const int samples = 3000;
    for (int sample = 0; sample < samples; ++sample) {
        std::vector<double> numbers;
        for (int i = 0; i < 25; ++i) {
            numbers.push_back(normalDraw(random));
        }
        rejected += shapiroWilk(numbers)->p < 0.05 ? 1 : 0;
    }
    CHECK(std::abs(rejected / static_cast<double>(samples) - 0.05) < 0.013);
}

TEST_CASE("ranks share what is tied, and scores stand about zero") {
    const std::vector<double> numbers = {5, 1, 5, 2};
    CHECK(meanRanks(numbers) == std::vector<double>{3.5, 1, 3.5, 2});
    const std::vector<double> scores = normalScores(std::vector<double>{3, 1, 2});
    CHECK(scores[2] == doctest::Approx(0));
    CHECK(scores[0] == doctest::Approx(-scores[1]));
}

// Benjamini & Hochberg 1995, the rule itself: of 0.01, 0.02, 0.03, 0.5 nothing is above the next.
TEST_CASE("probabilities of several tests are put right by their rank") {
    const auto adjusted = falseDiscovery(std::vector<double>{0.5, 0.01, 0.03, 0.02});
    CHECK(adjusted[0] == doctest::Approx(0.5));
    CHECK(adjusted[1] == doctest::Approx(0.04));
    CHECK(adjusted[2] == doctest::Approx(0.04));
    CHECK(adjusted[3] == doctest::Approx(0.04));
}
