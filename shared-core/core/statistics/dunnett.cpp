// Trapezoidal sums for Dunnett's statistic over what all differences share, the reference's error.
#include "core/statistics/dunnett.hpp"

#include "core/statistics/distributions.hpp"
#include "core/statistics/scaled_chi.hpp"

#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>

namespace bullace::statistics {

namespace {

constexpr double kNowhere = std::numeric_limits<double>::quiet_NaN();
constexpr double kGreatestLoading = 0.999999;
// Beyond it no standard normal value of 10,000 lies, but in 1e-15 of cases.
constexpr double kGreatestNormal = 10.5;

} // namespace

Dunnett::Dunnett(std::span<const double> lambdas, double degreesOfFreedom)
    : degreesOfFreedom_(degreesOfFreedom),
      isSound_(!lambdas.empty() && degreesOfFreedom >= 1) {
    std::map<double, double> counted; // equal to 1e-12, so that balanced trials are quick
    for (const double lambda : lambdas) {
        isSound_ = isSound_ && lambda >= 0 && lambda < 1;
        counted[std::round(lambda * 1e12) / 1e12] += 1;
    }
    loadings_.assign(counted.begin(), counted.end());
}

double Dunnett::knownAbove(double t) const {
    double sum = 0;
    for (int i = -kNormalSteps; i <= kNormalSteps; ++i) {
        const double z = i * kNormalStep;
        double within = normalDensity(z);
        for (const auto& [lambda, times] : loadings_) {
            const double rest = std::sqrt(1 - lambda * lambda);
            const double one =
                normalBelow((lambda * z + t) / rest) - normalBelow((lambda * z - t) / rest);
            within *= times == 1 ? one : std::pow(std::max(one, 0.0), times);
        }
        sum += within;
    }
    return std::clamp(1 - sum * kNormalStep, 0.0, 1.0);
}

double Dunnett::above(double t) const {
    if (!isSound_ || std::isnan(t)) {
        return kNowhere;
    }
    if (t <= 0) {
        return 1;
    }
    return averageOverScaledChi(
        degreesOfFreedom_, kGreatestNormal / t, [this, t](double s) { return knownAbove(t * s); });
}

double Dunnett::quantile(double alpha) const {
    if (!isSound_ || !(alpha > 0 && alpha < 1)) {
        return kNowhere;
    }
    const auto excess = [this, alpha](double t) { return above(t) - alpha; };
    double high = 3;
    while (excess(high) > 0 && high < 1e12) {
        high *= 2;
    }
    std::uintmax_t steps = 100;
    const auto [from, to] =
        boost::math::tools::toms748_solve(excess,
                                          high > 3 ? high / 2 : 0,
                                          high,
                                          boost::math::tools::eps_tolerance<double>(36),
                                          steps);
    return (from + to) / 2;
}

std::vector<double> productLoadings(std::span<const double> correlations, std::size_t size) {
    std::vector<double> loadings(size, std::sqrt(0.5));
    for (int round = 0; size > 1 && round < 500; ++round) {
        double moved = 0;
        for (std::size_t i = 0; i < size; ++i) {
            double product = 0;
            double square = 0;
            for (std::size_t j = 0; j < size; ++j) {
                product += i == j ? 0 : correlations[i * size + j] * loadings[j];
                square += i == j ? 0 : loadings[j] * loadings[j];
            }
            const double next =
                std::clamp(square > 0 ? product / square : 0, 0.0, kGreatestLoading);
            moved = std::max(moved, std::abs(next - loadings[i]));
            loadings[i] = next;
        }
        if (moved < 1e-13) {
            break;
        }
    }
    return loadings;
}

} // namespace bullace::statistics
