// Trapezoidal sums over the logarithm of a scaled chi.
#include "core/statistics/scaled_chi.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::statistics {

double averageOverScaledChi(double degreesOfFreedom,
                            double zeroBeyond,
                            const std::function<double(double)>& g) {
    if (degreesOfFreedom > 1e6) {
        return g(1.0);
    }
    const double half = degreesOfFreedom / 2;
    // The density of x = log s, at its mode x = 0 first: exp(constant + df·x - df/2·e^2x).
    const double constant = std::log(2.0) + half * std::log(half) - std::lgamma(half);
    const double step = std::min(0.125, 0.6 / std::sqrt(2 * degreesOfFreedom));
    const auto density = [&](double x) {
        return std::exp(constant + degreesOfFreedom * x - half * std::exp(2 * x));
    };
    const double peak = density(0);
    double sum = 0;
    const double right = std::log(zeroBeyond);
    for (int i = 0;; ++i) {
        const double x = i * step;
        const double weight = density(x);
        if (weight < 1e-18 * peak || x > right) {
            break;
        }
        sum += weight * g(std::exp(x));
    }
    for (int i = 1;; ++i) {
        const double x = -i * step;
        const double weight = density(x);
        if (weight < 1e-18 * peak) {
            break;
        }
        if (x <= right) {
            sum += weight * g(std::exp(x));
        }
    }
    return std::clamp(sum * step, 0.0, 1.0);
}

} // namespace bullace::statistics
