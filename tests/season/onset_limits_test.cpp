// Limits of mean dates: Student's where every date is known, and 95 of 100 where visits are days
// apart.
#include "core/season/onset_limits.hpp"

#include "known_onsets.hpp"

#include "core/statistics/distributions.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

using namespace bullace;
using namespace bullace::season;

namespace {

// 53 bits of a draw: the same on every machine.
double uniform(std::mt19937_64& engine) {
    return (static_cast<double>(engine() >> 11) + 0.5) / 9007199254740992.0;
}

std::optional<statistics::Interval> limitsOf(const std::vector<OnsetInterval>& onsets,
                                             OnsetLaw law = OnsetLaw::Normal) {
    const auto limits = locationLimits(law, onsets);
    REQUIRE(limits.ok());
    return *limits;
}

// Visits every 3 to 7 days, from before the first vine to `stop` spreads behind the mean.
std::vector<double> visitsAround(double mean, double spread, double stop, std::mt19937_64& engine) {
    std::vector<double> visits{mean - 4 * spread - 7 * uniform(engine)};
    while (visits.back() < mean + stop * spread) {
        visits.push_back(visits.back() + 3 + std::floor(5 * uniform(engine)));
    }
    return visits;
}

OnsetInterval seen(const std::vector<double>& visits, double day) {
    const auto by = std::lower_bound(visits.begin(), visits.end(), day);
    return {by == visits.begin() ? -kOpen : *(by - 1), by == visits.end() ? kOpen : *by};
}

struct Season {
    std::size_t vines;
    double spread;
    double stop; // visits end so many spreads behind the mean
};

// The share of seasons of which the limits hold the mean; one without limits holds nothing.
double coverageOf(const Season& season, std::size_t seasons) {
    std::mt19937_64 engine(20260514);
    std::size_t holding = 0;
    for (std::size_t round = 0; round < seasons; ++round) {
        const double mean = 150 + 10 * uniform(engine);
        const auto visits = visitsAround(mean, season.spread, season.stop, engine);
        std::vector<OnsetInterval> onsets;
        for (std::size_t vine = 0; vine < season.vines; ++vine) {
            const double z = statistics::normalQuantile(uniform(engine));
            onsets.push_back(seen(visits, mean + season.spread * z));
        }
        const auto limits = limitsOf(onsets);
        holding += limits && limits->holds(mean) ? 1U : 0U;
    }
    return static_cast<double>(holding) / static_cast<double>(seasons);
}

} // namespace

TEST_CASE("where every date is known the limits are Student's") {
    // Student's sleep data, second drug (Student 1908, Biometrika 6:1-25): mean 2.33, standard
    // deviation 2.002249, t of 9 degrees of freedom 2.262157.
    std::vector<OnsetInterval> onsets;
    for (const double hours : {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4}) {
        onsets.push_back({hours, hours});
    }
    const auto limits = limitsOf(onsets);
    REQUIRE(limits.has_value());
    const double half = 2.262157 * 2.002249 / std::sqrt(10.0);
    CHECK(std::abs(limits->low - (2.33 - half)) < 2e-5);
    CHECK(std::abs(limits->high - (2.33 + half)) < 2e-5);

    const auto fitting = fitOnset(OnsetLaw::Normal, {onsets});
    REQUIRE(fitting->fit.has_value());
    const auto same = coefficientLimits(*fitting->fit, {onsets}, 0);
    REQUIRE(same.ok());
    CHECK(std::abs(same->low - (2.33 - half)) < 1e-5);
    CHECK(std::abs(same->high - (2.33 + half)) < 1e-5);
}

TEST_CASE("the mean of bloom lies in its limits in 93 to 97 of 100 seasons") {
    for (const Season& season : {Season{4, 6, 4},
                                 Season{6, 4, 4},
                                 Season{8, 3, 4},
                                 Season{12, 3, 4},
                                 Season{12, 4, 0.5},
                                 Season{20, 5, 4},
                                 Season{40, 2.5, 4}}) {
        CAPTURE(season.vines);
        CAPTURE(season.spread);
        const double coverage = coverageOf(season, 4000);
        CHECK(coverage > 0.93);
        CHECK(coverage < 0.97);
    }
}

TEST_CASE("a difference between two accessions lies in its limits in 93 to 97 of 100 seasons") {
    std::mt19937_64 engine(7);
    constexpr std::size_t kSeasons = 1500;
    constexpr double kLater = -4;
    std::size_t fits = 0;
    std::size_t holding = 0;
    for (std::size_t season = 0; season < kSeasons; ++season) {
        const auto visits = visitsAround(150, 5, 3, engine);
        std::vector<OnsetInterval> onsets;
        std::vector<double> covariates;
        for (int vine = 0; vine < 14; ++vine) {
            const bool isOther = vine % 2 == 1;
            const double z = statistics::normalQuantile(uniform(engine));
            onsets.push_back(seen(visits, 150 + (isOther ? kLater : 0) + 3.5 * z));
            covariates.insert(covariates.end(), {1.0, isOther ? 1.0 : 0.0});
        }
        const OnsetDesign design{onsets, covariates, 2};
        const auto fitting = fitOnset(OnsetLaw::Normal, design);
        REQUIRE(fitting.ok());
        if (fitting->fit) {
            ++fits;
            holding += coefficientLimits(*fitting->fit, design, 1)->holds(kLater) ? 1U : 0U;
        }
    }
    CHECK(fits > kSeasons * 9 / 10);
    const double coverage = static_cast<double>(holding) / static_cast<double>(fits);
    CAPTURE(coverage);
    CHECK(coverage > 0.93);
    CHECK(coverage < 0.97);
}

TEST_CASE("where the spread cannot be estimated the mean still has its limits") {
    const auto one = limitsOf({{150, 153}, {150, 153}, {150, 153}, {150, 153}});
    REQUIRE(one.has_value());
    CHECK(one->low < 150.5);
    CHECK(one->low > 145);
    CHECK(one->high > 152.5);
    CHECK(one->high < 158);
    const auto two = limitsOf({{150, 153}, {150, 153}, {153, 156}, {153, 156}, {150, 156}});
    REQUIRE(two.has_value());
    CHECK(two->holds(153));
    CHECK(two->low > 145);
    CHECK(two->high < 161);
    // All before the first visit: only the latest date is bounded.
    std::vector<OnsetInterval> before(8, {-kOpen, 150});
    before.push_back({-kOpen, 152});
    const auto left = limitsOf(before);
    REQUIRE(left.has_value());
    CHECK(left->low == -kOpen);
    CHECK(left->high > 149.99);
    CHECK(left->high < 153);
    // Of two such vines each may well have been the early half of its accession.
    CHECK_FALSE(limitsOf({{-kOpen, 150}, {-kOpen, 150}}).has_value());
    CHECK_FALSE(limitsOf({{150, 153}}).has_value());
    CHECK_FALSE(limitsOf({{150, 150}, {150, 150}}).has_value());
    CHECK_FALSE(limitsOf({}).has_value());
    CHECK_FALSE(locationLimits(OnsetLaw::Normal, std::vector<OnsetInterval>{{3, 2}}).ok());
}

TEST_CASE("limits move with the axis and widen with the unit") {
    const std::vector<OnsetInterval> onsets = onsetsOf(kBloom, "Acc1");
    std::vector<OnsetInterval> moved;
    for (const OnsetInterval& one : onsets) {
        moved.push_back({one.after * 24 + 1000, one.by * 24 + 1000});
    }
    const auto here = limitsOf(onsets);
    const auto there = limitsOf(moved);
    REQUIRE(here.has_value());
    REQUIRE(there.has_value());
    CHECK(std::abs(here->low * 24 + 1000 - there->low) < 1e-3);
    CHECK(std::abs(here->high * 24 + 1000 - there->high) < 1e-3);
}
