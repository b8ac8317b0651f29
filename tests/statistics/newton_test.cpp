// The maximiser and its profile limits, against closed forms.
#include "core/statistics/newton.hpp"

#include "core/statistics/distributions.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace bullace::statistics;

namespace {

// r of n in logits; the maximum is log(r/(n-r)), its variance 1/r + 1/(n-r).
LogLikelihood binomial(double r, double n) {
    return [r, n](std::span<const double> at, Slope& out) {
        const double p = 1 / (1 + std::exp(-at[0]));
        out.value = r * std::log(p) + (n - r) * std::log1p(-p);
        out.gradient[0] = r - n * p;
        out.hessian[0] = -n * p * (1 - p);
    };
}

} // namespace

TEST_CASE("a proportion in logits is found with its closed form and its error") {
    const auto found = maximise(binomial(12, 40), {3.0});
    REQUIRE(found);
    CHECK(found->at[0] == doctest::Approx(std::log(12.0 / 28.0)).epsilon(1e-12));
    CHECK(found->standardError(0) == doctest::Approx(std::sqrt(1 / 12.0 + 1 / 28.0)).epsilon(1e-9));
}

TEST_CASE("profile limits of a proportion are where twice the log-likelihood has fallen by 3.84") {
    const LogLikelihood likelihood = binomial(12, 40);
    const auto found = maximise(likelihood, {0.0});
    REQUIRE(found);
    const Interval limits = profileLimits(likelihood, *found, 0);
    for (const double limit : {limits.low, limits.high}) {
        Slope slope;
        slope.clear(1);
        likelihood(std::vector{limit}, slope);
        CHECK(2 * (found->value - slope.value) ==
              doctest::Approx(chiSquaredQuantile(0.95, 1)).epsilon(1e-8));
    }
    CHECK(limits.low < found->at[0]);
    CHECK(limits.high > found->at[0]);
}

TEST_CASE("a likelihood that rises for ever has no maximum") {
    CHECK_FALSE(maximise(binomial(40, 40), {0.0}));
    CHECK_FALSE(maximise(binomial(0, 40), {0.0}));
}

TEST_CASE("a surface that is flat in one direction has no maximum of its own") {
    const LogLikelihood ridge = [](std::span<const double> at, Slope& out) {
        const double sum = at[0] + at[1] - 1;
        out.value = -sum * sum;
        out.gradient = {-2 * sum, -2 * sum};
        out.hessian = {-2, -2, -2, -2};
    };
    CHECK_FALSE(maximise(ridge, {0.0, 0.0}));
}

TEST_CASE("two parameters: mean and spread of a normal sample, with known limits of the mean") {
    const std::vector<double> sample{3.1, 4.7, 5.2, 6.0, 2.9, 4.4, 5.8, 4.9};
    const LogLikelihood normal = [&sample](std::span<const double> at, Slope& out) {
        const double inverse = std::exp(-2 * at[1]);
        for (const double x : sample) {
            const double off = x - at[0];
            out.value -= at[1] + off * off * inverse / 2;
            out.gradient[0] += off * inverse;
            out.gradient[1] += off * off * inverse - 1;
            out.hessian[0] -= inverse;
            out.hessian[1] -= 2 * off * inverse;
            out.hessian[2] -= 2 * off * inverse;
            out.hessian[3] -= 2 * off * off * inverse;
        }
    };
    const auto found = maximise(normal, {0.0, 2.0});
    REQUIRE(found);
    double mean = 0;
    for (const double x : sample) {
        mean += x / 8;
    }
    double squares = 0;
    for (const double x : sample) {
        squares += (x - mean) * (x - mean);
    }
    CHECK(found->at[0] == doctest::Approx(mean).epsilon(1e-10));
    CHECK(std::exp(found->at[1]) == doctest::Approx(std::sqrt(squares / 8)).epsilon(1e-10));
    // Closed form: n log(1 + n d²/squares) = 3.841459 at the limits, mean ± d.
    const double d = std::sqrt(squares / 8 * std::expm1(chiSquaredQuantile(0.95, 1) / 8));
    const Interval limits = profileLimits(normal, *found, 0);
    CHECK(limits.low == doctest::Approx(mean - d).epsilon(1e-8));
    CHECK(limits.high == doctest::Approx(mean + d).epsilon(1e-8));
}

TEST_CASE("the logarithm of the normal distribution holds far below zero") {
    // Abramowitz & Stegun 1964, Table 26.2: -log10 Q(x) of 5, 20 and 40.
    CHECK(-logNormalBelow(-5) / std::log(10) == doctest::Approx(6.54265).epsilon(1e-6));
    CHECK(-logNormalBelow(-20) / std::log(10) == doctest::Approx(88.56010).epsilon(1e-6));
    CHECK(-logNormalBelow(-40) / std::log(10) == doctest::Approx(349.43701).epsilon(1e-6));
    CHECK(logNormalBelow(-29.999999) == doctest::Approx(logNormalBelow(-30.000001)).epsilon(1e-6));
}
