// Trapezoidal sums for the studentized range, and Boost.Math's bracketing root finder.
#include "core/statistics/studentized_range.hpp"

#include "core/statistics/distributions.hpp"
#include "core/statistics/scaled_chi.hpp"

#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

namespace bullace::statistics {

namespace {

constexpr double kNowhere = std::numeric_limits<double>::quiet_NaN();
// No range of 10,000 standard normal values is wider, but in 1e-15 of cases.
constexpr double kWidestRange = 15;

// P(range of k standard normal values > w).
double rangeAbove(double w, unsigned groups) {
    if (w >= kWidestRange) {
        return 0;
    }
    const double others = static_cast<double>(groups) - 1;
    double sum = 0;
    for (int i = -kNormalSteps; i <= kNormalSteps; ++i) {
        const double z = i * kNormalStep;
        // From z down to z - w; on the right side both tails are taken from above, which keeps
        // the digits of a small w.
        const double between =
            z > w / 2 ? normalBelow(w - z) - normalBelow(-z) : normalBelow(z) - normalBelow(z - w);
        sum += normalDensity(z) * std::pow(std::max(between, 0.0), others);
    }
    return std::clamp(1 - static_cast<double>(groups) * sum * kNormalStep, 0.0, 1.0);
}

} // namespace

double studentizedRangeAbove(double q, unsigned groups, double degreesOfFreedom) {
    if (groups < 2 || groups > 10000 || !(degreesOfFreedom >= 1) || std::isnan(q)) {
        return kNowhere;
    }
    if (q <= 0) {
        return 1;
    }
    return averageOverScaledChi(
        degreesOfFreedom, kWidestRange / q, [=](double s) { return rangeAbove(q * s, groups); });
}

double studentizedRangeQuantile(double above, unsigned groups, double degreesOfFreedom) {
    if (!(above > 0 && above < 1) || groups < 2 || groups > 10000 || !(degreesOfFreedom >= 1)) {
        return kNowhere;
    }
    const auto excess = [=](double q) {
        return studentizedRangeAbove(q, groups, degreesOfFreedom) - above;
    };
    double high = 4;
    while (excess(high) > 0 && high < 1e12) {
        high *= 2;
    }
    const double low = high > 4 ? high / 2 : 0;
    std::uintmax_t steps = 100;
    const auto [from, to] = boost::math::tools::toms748_solve(
        excess, low, high, boost::math::tools::eps_tolerance<double>(36), steps);
    return (from + to) / 2;
}

} // namespace bullace::statistics
