// How people agree, against published examples.
#include "core/statistics/agreement.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <rapidcheck.h>
#include <vector>

using namespace bullace;
using namespace bullace::statistics;

namespace {

std::vector<Pair> pairsOf(const std::vector<std::vector<int>>& table) {
    std::vector<Pair> pairs;
    for (std::size_t i = 0; i < table.size(); ++i) {
        for (std::size_t j = 0; j < table.size(); ++j) {
            for (int n = 0; n < table[i][j]; ++n) {
                pairs.push_back({static_cast<double>(i), static_cast<double>(j)});
            }
        }
    }
    return pairs;
}

} // namespace

TEST_CASE("kappa of two readers over fifty proposals") {
    // The textbook table 20, 5; 10, 15 (from memory): observed 0.70, by chance 0.50, kappa 0.40.
    const Kappa kappa = kappaOf(pairsOf({{20, 5}, {10, 15}}), KappaWeights::None);
    CHECK(kappa.n == 50);
    CHECK(kappa.equal == 35);
    REQUIRE(kappa.kappa);
    CHECK(kappa.kappa->value == doctest::Approx(0.4).epsilon(1e-12));
    // With two scores all weights are the same.
    CHECK(kappaOf(pairsOf({{20, 5}, {10, 15}}), KappaWeights::Squared).kappa->value ==
          doctest::Approx(0.4).epsilon(1e-12));
}

TEST_CASE("squared weights make kappa the intraclass correlation of large samples") {
    // Fleiss & Cohen 1973, Educ. Psychol. Meas. 33:613-619: equal but for terms of 1/n.
    std::mt19937_64 random(3);
    std::vector<Pair> pairs;
    std::vector<std::vector<double>> rows;
    for (int i = 0; i < 20'000; ++i) {
        const auto truth = static_cast<double>(random() % 7 + 1);
        const double one = truth + static_cast<double>(random() % 3) - 1;
        const double other = truth + static_cast<double>(random() % 3) - 1 + 0.0;
        pairs.push_back({one, other});
        rows.push_back({one, other});
    }
    const auto icc = intraclassOf(rows);
    REQUIRE(icc);
    CHECK(kappaOf(pairs, KappaWeights::Squared).kappa->value ==
          doctest::Approx(icc->icc->value).epsilon(1e-3));
}

TEST_CASE("kappa's error covers the truth about as often as it says") {
    std::mt19937_64 random(11);
    const auto chance = [&random](double p) {
        return (static_cast<double>(random() >> 11U) + 0.5) * 0x1p-53 < p;
    };
    int covered = 0;
    constexpr int kRuns = 1000;
    for (int run = 0; run < kRuns; ++run) {
        std::vector<Pair> pairs;
        for (int i = 0; i < 150; ++i) {
            const double truth = chance(0.5) ? 1 : 0;
            pairs.push_back({chance(0.9) ? truth : 1 - truth, chance(0.9) ? truth : 1 - truth});
        }
        const auto kappa = kappaOf(pairs, KappaWeights::None).kappa;
        covered += kappa->interval->holds(0.64) ? 1 : 0; // 0.9² + 0.1² = 0.82; (0.82 - 0.5)/0.5
    }
    CHECK(covered >= 0.93 * kRuns);
    CHECK(covered <= 0.97 * kRuns);
}

TEST_CASE("one score alone, one pair or no pair has no kappa, and says so") {
    for (const auto& pairs : {std::vector<Pair>{}, {{5, 5}}, {{5, 5}, {5, 5}}}) {
        const Kappa kappa = kappaOf(pairs, KappaWeights::Squared);
        CHECK_FALSE(kappa.kappa);
        CHECK(kappa.remarks.size() == 1);
    }
}

TEST_CASE("the intraclass correlation of four judges over six targets") {
    // Shrout & Fleiss 1979, Psychol. Bull. 86:420-428, Table 2: ICC(2,1) = .29, from memory; and
    // its limits .02 to .76.
    const auto icc = intraclassOf(
        {{9, 2, 5, 8}, {6, 1, 3, 2}, {8, 4, 6, 8}, {7, 1, 2, 6}, {10, 5, 6, 9}, {6, 2, 4, 7}});
    REQUIRE(icc);
    REQUIRE(icc->icc);
    CHECK(icc->icc->value == doctest::Approx(0.29).epsilon(0.005));
    CHECK(icc->icc->interval->low == doctest::Approx(0.02).epsilon(0.1));
    CHECK(icc->icc->interval->high == doctest::Approx(0.76).epsilon(0.005));
}

TEST_CASE("agreement that cannot be told says so") {
    CHECK_FALSE(intraclassOf({{1, 2}})->icc);
    CHECK_FALSE(intraclassOf({{5, 5}, {5, 5}})->icc);
    CHECK_FALSE(intraclassOf({})->icc);
    CHECK_FALSE(intraclassOf({{1, 2}, {1}}));
    CHECK_FALSE(intraclassOf({{1}, {2}}));
    CHECK_FALSE(intraclassOf({{1, std::nan("")}, {2, 3}}));
    const auto perfect = intraclassOf({{1, 1}, {3, 3}, {8, 8}});
    REQUIRE(perfect);
    CHECK(perfect->icc->value == doctest::Approx(1));
}

TEST_CASE("the limits of agreement of two flow meters") {
    // Bland & Altman 1986, Lancet 327:307-310: first readings of 17 people with both meters; mean
    // difference -2.1, SD 38.8, limits -79.7 and 75.5 with two SD (data from memory).
    const std::vector<double> large{
        494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427};
    const std::vector<double> mini{
        512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451};
    std::vector<Pair> pairs;
    for (std::size_t i = 0; i < large.size(); ++i) {
        pairs.push_back({large[i], mini[i]});
    }
    const auto difference = differenceOf(pairs);
    REQUIRE(difference);
    CHECK(difference->mean == doctest::Approx(-2.1).epsilon(0.01));
    CHECK(*difference->sd == doctest::Approx(38.8).epsilon(0.002));
    CHECK(difference->mean - 2 * *difference->sd == doctest::Approx(-79.7).epsilon(0.002));
    CHECK(difference->limits->low ==
          doctest::Approx(difference->mean - 1.959964 * *difference->sd));
    // Their standard error of a limit: √(3 · 38.8²/17) = 16.3.
    CHECK(*difference->limitError == doctest::Approx(16.3).epsilon(0.003));
    CHECK_FALSE(differenceOf({}));
    CHECK_FALSE(differenceOf(std::vector<Pair>{{1, 2}})->sd);
}

TEST_CASE("a person's bias is found from vines that others noted too") {
    // Person 1 notes 0.8 more than the others.
    std::mt19937_64 random(5);
    const auto noise = [&random] {
        double sum = -6;
        for (int i = 0; i < 12; ++i) {
            sum += (static_cast<double>(random() >> 11U) + 0.5) * 0x1p-53;
        }
        return sum;
    };
    std::vector<Reading> readings;
    const double bias[] = {-0.4, 0.8, -0.4};
    for (std::size_t vine = 0; vine < 200; ++vine) {
        const double truth = 5 + noise();
        for (std::size_t person = 0; person < 3; ++person) {
            if ((vine + person) % 3 != 0) {
                readings.push_back({vine, person, truth + bias[person] + 0.5 * noise()});
            }
        }
    }
    const auto model = observerModel(readings, 4);
    REQUIRE(model);
    CHECK(model->things == 200);
    CHECK(model->readings == 400);
    for (std::size_t person = 0; person < 3; ++person) {
        REQUIRE(model->observers[person].bias);
        CHECK(model->observers[person].bias->value == doctest::Approx(bias[person]).epsilon(0.2));
        CHECK(*model->observers[person].spread == doctest::Approx(0.5).epsilon(0.15));
    }
    CHECK(*model->readingSd == doctest::Approx(0.5).epsilon(0.1));
    CHECK(*model->observerSd > 0.3);
    CHECK_FALSE(model->observers[3].bias); // noted nothing
}

TEST_CASE("the balanced model is the analysis of variance") {
    // Closed form: the observers' variance is (mean square of observers - of error)/vines, the bias
    // the difference of means times n·ratio/(1 + n·ratio).
    const std::vector<std::vector<double>> rows{{5, 6}, {3, 4.5}, {7, 7.5}, {4, 5.5}, {6, 6.2}};
    std::vector<Reading> readings;
    double apart = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        readings.push_back({i, 0, rows[i][0]});
        readings.push_back({i, 1, rows[i][1]});
        apart += (rows[i][1] - rows[i][0]) / 5;
    }
    double error = 0;
    for (const auto& row : rows) {
        error += (row[1] - row[0] - apart) * (row[1] - row[0] - apart) / 2 / 4;
    }
    const double observers = 5 * apart * apart / 2;
    const double variance = (observers - error) / 5;
    const auto model = observerModel(readings, 2);
    REQUIRE(model);
    CHECK(*model->readingSd == doctest::Approx(std::sqrt(error)).epsilon(1e-6));
    CHECK(*model->observerSd == doctest::Approx(std::sqrt(variance)).epsilon(1e-6));
    const double ratio = 5 * variance / error;
    CHECK(model->observers[1].bias->value ==
          doctest::Approx(apart / 2 * ratio / (1 + ratio)).epsilon(1e-6));
}

TEST_CASE("people who note the same, and vines noted by one person, show no difference") {
    const std::vector<Reading> same{{0, 0, 5}, {0, 1, 5}, {1, 0, 7}, {1, 1, 7}};
    const auto alike = observerModel(same, 2);
    REQUIRE(alike);
    CHECK(*alike->observerSd == 0);
    const std::vector<Reading> alone{{0, 0, 5}, {0, 0, 6}, {1, 1, 7}};
    const auto none = observerModel(alone, 2);
    REQUIRE(none);
    CHECK(none->things == 0);
    CHECK_FALSE(none->observerSd);
    CHECK(none->remarks.size() == 1);
    CHECK_FALSE(observerModel(std::vector<Reading>{{0, 5, 1.0}}, 2));
}

TEST_CASE("whatever people note, the model's numbers are finite") {
    CHECK(rc::check(
        [](const std::vector<std::tuple<std::uint8_t, std::uint8_t, std::int16_t>>& noted) {
            std::vector<Reading> readings;
            for (const auto& [thing, observer, value] : noted) {
                readings.push_back({static_cast<std::size_t>(thing % 8),
                                    static_cast<std::size_t>(observer % 4),
                                    static_cast<double>(value)});
            }
            const auto model = observerModel(readings, 4);
            RC_ASSERT(model.ok());
            for (const ObserverEffect& observer : model->observers) {
                RC_ASSERT(!observer.bias || std::isfinite(observer.bias->value));
                RC_ASSERT(!observer.bias || std::isfinite(*observer.bias->standardError));
                RC_ASSERT(!observer.spread || std::isfinite(*observer.spread));
            }
            RC_ASSERT(!model->observerSd || std::isfinite(*model->observerSd));
        }));
}
