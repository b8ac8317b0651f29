// Trapezoidal sums for the studentized range, and Boost.Math's bracketing root finder.
#include "core/statistics/studentized_range.hpp"

#include "core/statistics/distributions.hpp"
#include "core/statistics/scaled_chi.hpp"

#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <vector>

namespace bullace::statistics {

namespace {

constexpr double kNowhere = std::numeric_limits<double>::quiet_NaN();
// No range of 10,000 standard normal values is wider, but in 1e-15 of cases.
constexpr double kWidestRange = 15;

// Below it a range is all but certain to be wider: what that leaves out is less than 1e-14 when it
// is averaged, as so small a standard deviation is as rare.
constexpr double kNarrowRange = 1e-7;

// The range of some standard normal values, with what its integral needs at each step.
class NormalRange {
public:
    explicit NormalRange(unsigned groups) : groups_(groups) {
        // The greatest of many values is more sharply peaked than the normal distribution.
        const int every = groups <= 200 ? 2 : 1;
        for (int i = -kNormalSteps; i <= kNormalSteps; i += every) {
            const double z = i * kNormalStep;
            nodes_.push_back(
                {z, normalDensity(z) * kNormalStep * every, normalBelow(z), normalBelow(-z)});
        }
    }

    // P(range > w).
    [[nodiscard]] double above(double w) const {
        if (w >= kWidestRange || w < kNarrowRange) {
            return w < kNarrowRange ? 1 : 0;
        }
        const double others = groups_ - 1;
        double sum = 0;
        for (const Node& node : nodes_) {
            // From z down to z - w; on the right side both tails are taken from above, which keeps
            // the digits of a small w.
            const double between = node.z > w / 2 ? normalBelow(w - node.z) - node.aboveZ
                                                  : node.belowZ - normalBelow(node.z - w);
            sum += node.weight * std::pow(std::max(between, 0.0), others);
        }
        return std::clamp(1 - groups_ * sum, 0.0, 1.0);
    }

private:
    struct Node {
        double z = 0;
        double weight = 0;
        double belowZ = 0;
        double aboveZ = 0;
    };
    double groups_;
    std::vector<Node> nodes_;
};

double rangeAbove(const NormalRange& range, double q, double degreesOfFreedom) {
    return averageOverScaledChi(
        degreesOfFreedom, kWidestRange / q, [&](double s) { return range.above(q * s); });
}

} // namespace

double studentizedRangeAbove(double q, unsigned groups, double degreesOfFreedom) {
    if (groups < 2 || groups > 10000 || !(degreesOfFreedom >= 1) || std::isnan(q)) {
        return kNowhere;
    }
    if (q <= 0) {
        return 1;
    }
    return rangeAbove(NormalRange(groups), q, degreesOfFreedom);
}

double studentizedRangeQuantile(double above, unsigned groups, double degreesOfFreedom) {
    if (!(above > 0 && above < 1) || groups < 2 || groups > 10000 || !(degreesOfFreedom >= 1)) {
        return kNowhere;
    }
    const NormalRange range(groups);
    const auto excess = [&](double q) {
        return (q > 0 ? rangeAbove(range, q, degreesOfFreedom) : 1) - above;
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
