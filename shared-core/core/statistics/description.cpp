#include "core/statistics/description.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace bullace::statistics {

namespace {

struct Moments {
    double mean = 0;
    double second = 0; // sums of powers about the mean
    double third = 0;
    double fourth = 0;
};

// From the first value on, so that equal leading digits do no harm.
Moments momentsOf(std::span<const double> values) {
    const auto n = static_cast<double>(values.size());
    const double origin = values.front();
    Moments moments;
    for (const double value : values) {
        moments.mean += (value - origin) / n;
    }
    for (const double value : values) {
        const double off = value - origin - moments.mean;
        moments.second += off * off;
        moments.third += off * off * off;
        moments.fourth += off * off * off * off;
    }
    moments.mean += origin;
    return moments;
}

double polynomial(std::span<const double> coefficients, double x) {
    double value = 0;
    for (std::size_t i = coefficients.size(); i-- > 0;) {
        value = value * x + coefficients[i];
    }
    return value;
}

// Weights of the upper half of the ordered values, the extreme one first.
std::vector<double> shapiroWeights(std::size_t n) {
    constexpr std::array kFirst{0.0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056};
    constexpr std::array kSecond{0.0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633};
    const std::size_t half = n / 2;
    if (n == 3) {
        return {std::sqrt(0.5)};
    }
    std::vector<double> scores;
    double squares = 0;
    for (std::size_t i = 1; i <= half; ++i) {
        const double share = (static_cast<double>(i) - 0.375) / (static_cast<double>(n) + 0.25);
        scores.push_back(-normalQuantile(share));
        squares += 2 * scores.back() * scores.back();
    }
    const double inverse = 1 / std::sqrt(static_cast<double>(n));
    const double length = std::sqrt(squares);
    const double first = polynomial(kFirst, inverse) + scores[0] / length;
    const bool hasSecond = n > 5;
    const double second = hasSecond ? polynomial(kSecond, inverse) + scores[1] / length : 0;
    double rest = squares - 2 * scores[0] * scores[0];
    double room = 1 - 2 * first * first;
    if (hasSecond) {
        rest -= 2 * scores[1] * scores[1];
        room -= 2 * second * second;
    }
    const double scale = std::sqrt(rest / room);
    std::vector<double> weights;
    for (const double score : scores) {
        weights.push_back(score / scale);
    }
    weights[0] = first;
    if (hasSecond) {
        weights[1] = second;
    }
    return weights;
}

double shapiroP(double w, std::size_t n) {
    constexpr std::array kGamma{-2.273, 0.459};
    constexpr std::array kMeanFew{0.544, -0.39978, 0.025054, -6.714e-4};
    constexpr std::array kSpreadFew{1.3822, -0.77857, 0.062767, -0.0020322};
    constexpr std::array kMean{-1.5861, -0.31082, -0.083751, 0.0038915};
    constexpr std::array kSpread{-0.4803, -0.082676, 0.0030302};
    const auto size = static_cast<double>(n);
    if (n == 3) {
        const double sixOverPi = 6 / std::numbers::pi;
        return std::max(0.0, sixOverPi * (std::asin(std::sqrt(w)) - std::asin(std::sqrt(0.75))));
    }
    double y = std::log(1 - w);
    if (n <= 11) {
        const double gamma = polynomial(kGamma, size);
        if (y >= gamma) {
            return 0;
        }
        y = -std::log(gamma - y);
        return normalBelow(-(y - polynomial(kMeanFew, size)) /
                           std::exp(polynomial(kSpreadFew, size)));
    }
    const double log = std::log(size);
    return normalBelow(-(y - polynomial(kMean, log)) / std::exp(polynomial(kSpread, log)));
}

} // namespace

double quantileOf(std::span<const double> sorted, double share) {
    const double at = share * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::size_t>(at);
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    return sorted[below] + (at - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

std::optional<Description> describe(std::span<const double> values, double confidence) {
    if (values.empty()) {
        return std::nullopt;
    }
    const auto n = static_cast<double>(values.size());
    const Moments moments = momentsOf(values);
    std::vector<double> sorted(values.begin(), values.end());
    std::ranges::sort(sorted);
    Description of;
    of.n = values.size();
    of.mean = moments.mean;
    of.median = quantileOf(sorted, 0.5);
    of.lowerQuartile = quantileOf(sorted, 0.25);
    of.upperQuartile = quantileOf(sorted, 0.75);
    of.least = sorted.front();
    of.greatest = sorted.back();
    if (values.size() < 2) {
        return of;
    }
    const double variance = moments.second / (n - 1);
    const double tail = (1 - confidence) / 2;
    of.sd = std::sqrt(variance);
    of.standardError = *of.sd / std::sqrt(n);
    const double half = studentTQuantile(1 - tail, n - 1) * *of.standardError;
    of.meanLimits = Interval{of.mean - half, of.mean + half};
    of.varianceLimits = Interval{moments.second / chiSquaredQuantile(1 - tail, n - 1),
                                 moments.second / chiSquaredQuantile(tail, n - 1)};
    if (of.mean > 0) {
        of.cvPercent = 100 * *of.sd / of.mean;
    }
    if (moments.second > 0) {
        const double spread = moments.second / n;
        of.skewness = moments.third / n / (spread * std::sqrt(spread));
        of.excessKurtosis = moments.fourth / n / (spread * spread) - 3;
    }
    return of;
}

std::optional<Normality> normalityOf(std::span<const double> values) {
    if (values.size() < 3 || values.size() > 5000) {
        return std::nullopt;
    }
    std::vector<double> sorted(values.begin(), values.end());
    std::ranges::sort(sorted);
    const Moments moments = momentsOf(sorted);
    if (!(moments.second > 0)) {
        return std::nullopt;
    }
    const std::vector<double> weights = shapiroWeights(sorted.size());
    double sum = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        sum += weights[i] * (sorted[sorted.size() - 1 - i] - sorted[i]);
    }
    const double w = std::min(1.0, sum * sum / moments.second);
    return Normality{w, w < 1 ? shapiroP(w, sorted.size()) : 1};
}

} // namespace bullace::statistics
