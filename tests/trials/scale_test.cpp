// Counts, percentages and scores on other scales and back.
#include "core/trials/scale.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

using namespace bullace;
using namespace bullace::trials;

namespace {

double draw(std::mt19937_64& random) {
    return (static_cast<double>(random() >> 11) + 0.5) / 9007199254740992.0;
}

// Poisson counts by counting exponential waiting times.
double countOf(double mean, std::mt19937_64& random) {
    double time = -std::log(draw(random));
    double count = 0;
    while (time < mean) {
        time -= std::log(draw(random));
        ++count;
    }
    return count;
}

} // namespace

TEST_CASE("each value comes back from every scale as it was") {
    const std::vector<double> values = {0, 1, 3, 3, 12, 57, 100};
    for (const Scale scale :
         {Scale::AsItIs, Scale::Logarithm, Scale::SquareRoot, Scale::Logit, Scale::NormalScores}) {
        const auto response = ScaledResponse::of(values, scale);
        REQUIRE(response.ok());
        CHECK(scaleOf(nameOf(scale)) == scale);
        for (std::size_t i = 0; i < values.size(); ++i) {
            CHECK(std::isfinite(response->values()[i]));
            CHECK(response->back(response->values()[i]) ==
                  doctest::Approx(values[i]).epsilon(1e-10));
        }
        CHECK(response->remarks().empty() == (scale == Scale::AsItIs));
        CHECK(std::ranges::is_sorted(response->values()));
    }
    CHECK_FALSE(scaleOf("cubes"));
}

TEST_CASE("a mean of logarithms is a geometric mean, with limits that lie unevenly") {
    const std::vector<double> values = {1, 7, 31};
    const auto response = ScaledResponse::of(values, Scale::Logarithm);
    const double mean = (response->values()[0] + response->values()[1] + response->values()[2]) / 3;
    // (2 · 8 · 32)^(1/3) - 1 = 7.
    CHECK(response->back(mean) == doctest::Approx(7));
    const auto told = response->back(statistics::estimateAround(mean, 0.5, 2));
    CHECK_FALSE(told.standardError);
    CHECK(told.interval->high - told.value > told.value - told.interval->low);
    CHECK(response->back(-5) == 0);
}

TEST_CASE("what cannot stand on a scale is named, and what is missing stays missing") {
    const double none = std::numeric_limits<double>::quiet_NaN();
    CHECK(ScaledResponse::of(std::vector<double>{3, -1}, Scale::SquareRoot).error().message ==
          "Record 2 is below 0, and has no place on this scale.");
    CHECK_FALSE(ScaledResponse::of(std::vector<double>{101}, Scale::Logit));
    for (const Scale scale : {Scale::Logarithm, Scale::Logit, Scale::NormalScores}) {
        const auto response = ScaledResponse::of(std::vector<double>{4, none, 9}, scale);
        REQUIRE(response.ok());
        CHECK(std::isnan(response->values()[1]));
        CHECK(response->back(response->values()[2]) == doctest::Approx(9));
    }
    CHECK(ScaledResponse::of({}, Scale::NormalScores).ok());
    const auto one = ScaledResponse::of(std::vector<double>{100}, Scale::Logit);
    CHECK(std::isfinite(one->values()[0]));
    CHECK(std::isfinite(one->back(3)));
}

// By construction: counts of chance have their variance equal to the mean (slope 1), sizes that
// vary by a share of the mean have slope 2, errors of one size slope 0.
TEST_CASE("the scale that is advised is the one that the records were made on") {
    std::mt19937_64 random(8);
    std::vector<std::vector<double>> counts;
    std::vector<std::vector<double>> shares;
    std::vector<std::vector<double>> even;
    for (int group = 0; group < 10; ++group) {
        const double mean = 3 * std::pow(1.5, group);
        counts.emplace_back();
        shares.emplace_back();
        even.emplace_back();
        for (int i = 0; i < 40; ++i) {
            counts.back().push_back(countOf(mean, random));
            shares.back().push_back(mean * (0.7 + 0.6 * draw(random)));
            even.back().push_back(mean + 2 * draw(random));
        }
    }
    const ScaleAdvice ofCounts = adviseScale(counts, ResponseKind::Count);
    CHECK(ofCounts.scale == Scale::SquareRoot);
    CHECK(std::abs(*ofCounts.taylorSlope - 1) < 0.2);
    CHECK(inEnglish(ofCounts.reason).find("square roots even it out") != std::string::npos);
    CHECK(adviseScale(shares, ResponseKind::Measurement).scale == Scale::Logarithm);
    CHECK(adviseScale(even, ResponseKind::Measurement).scale == Scale::AsItIs);
    even.back().push_back(-1);
    CHECK(adviseScale(even, ResponseKind::Measurement).scale == Scale::AsItIs);
    CHECK_FALSE(adviseScale({}, ResponseKind::Count).taylorSlope);
}

TEST_CASE("percentages near their ends and scores of few steps are advised away from plain means") {
    const std::vector<std::vector<double>> low = {{1, 2, 4}, {50, 60, 40}};
    const std::vector<std::vector<double>> middle = {{30, 40}, {50, 60, 40}};
    CHECK(adviseScale(low, ResponseKind::Percentage).scale == Scale::Logit);
    CHECK(adviseScale(middle, ResponseKind::Percentage).scale == Scale::AsItIs);
    const std::vector<std::vector<double>> few = {{1, 3, 3}, {3, 5, 5}};
    const std::vector<std::vector<double>> many = {{1, 2, 3}, {4, 5, 9}};
    CHECK(adviseScale(few, ResponseKind::Score).scale == Scale::NormalScores);
    CHECK(adviseScale(many, ResponseKind::Score).scale == Scale::AsItIs);
}
