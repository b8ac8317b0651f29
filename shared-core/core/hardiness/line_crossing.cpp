#include "core/hardiness/line_crossing.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::hardiness {

FittedLine FittedLine::spread(double factor) const {
    return {a, b, varianceA * factor, covariance * factor, varianceB * factor};
}

double crossingOf(const FittedLine& line, double eta) {
    return (eta - line.a) / line.b;
}

double crossingError(const FittedLine& line, double eta) {
    const double x = crossingOf(line, eta);
    const double variance = line.varianceA + 2 * x * line.covariance + x * x * line.varianceB;
    return std::sqrt(std::max(0.0, variance)) / std::abs(line.b);
}

double fiellerG(const FittedLine& line, double quantile) {
    const double ratio = quantile / line.b;
    return ratio * ratio * line.varianceB;
}

std::optional<statistics::Interval>
fiellerLimits(const FittedLine& line, double eta, double quantile) {
    const double g = fiellerG(line, quantile);
    if (!(g < 1) || !(line.varianceB > 0)) {
        return std::nullopt;
    }
    const double x = crossingOf(line, eta);
    const double ratio = line.covariance / line.varianceB;
    const double spread = line.varianceA + 2 * x * line.covariance + x * x * line.varianceB -
                          g * (line.varianceA - ratio * line.covariance);
    const double middle = x + g / (1 - g) * (x + ratio);
    const double half = quantile / (std::abs(line.b) * (1 - g)) * std::sqrt(std::max(0.0, spread));
    return statistics::Interval{middle - half, middle + half};
}

} // namespace bullace::hardiness
