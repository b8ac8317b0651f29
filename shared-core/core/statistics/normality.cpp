// Royston's approximation to the test of Shapiro and Wilk; normal scores.
#include "core/statistics/normality.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>

namespace bullace::statistics {

namespace {

// c0 + c1 x + c2 x² …
template<std::size_t N>
double polynomial(const std::array<double, N>& coefficients, double x) {
    double value = 0;
    for (std::size_t i = N; i-- > 0;) {
        value = value * x + coefficients[i];
    }
    return value;
}

// The weights of the greater half of the sorted numbers, the greatest first (AS R94).
std::vector<double> weights(std::size_t n) {
    const std::size_t half = n / 2;
    std::vector<double> a(half);
    if (n == 3) {
        a[0] = std::numbers::sqrt2 / 2;
        return a;
    }
    std::vector<double> scores(half);
    double sum = 0;
    for (std::size_t i = 0; i < half; ++i) {
        scores[i] =
            -normalQuantile((static_cast<double>(i) + 0.625) / (static_cast<double>(n) + 0.25));
        sum += 2 * scores[i] * scores[i];
    }
    const double root = 1 / std::sqrt(static_cast<double>(n));
    const std::array first{0.0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056};
    const std::array second{0.0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633};
    a[0] = polynomial(first, root) + scores[0] / std::sqrt(sum);
    std::size_t start = 1;
    double scale = (sum - 2 * scores[0] * scores[0]) / (1 - 2 * a[0] * a[0]);
    if (n > 5) {
        a[1] = polynomial(second, root) + scores[1] / std::sqrt(sum);
        scale = (sum - 2 * scores[0] * scores[0] - 2 * scores[1] * scores[1]) /
                (1 - 2 * a[0] * a[0] - 2 * a[1] * a[1]);
        start = 2;
    }
    for (std::size_t i = start; i < half; ++i) {
        a[i] = scores[i] / std::sqrt(scale);
    }
    return a;
}

double probability(double w, std::size_t n) {
    const double size = static_cast<double>(n);
    if (n == 3) {
        const double least = std::asin(std::sqrt(0.75));
        return std::clamp(6 / std::numbers::pi * (std::asin(std::sqrt(w)) - least), 0.0, 1.0);
    }
    double y = std::log(std::max(1 - w, 1e-300));
    double mean = 0;
    double sd = 1;
    if (n <= 11) {
        const double gamma = polynomial(std::array{-2.273, 0.459}, size);
        if (y >= gamma) {
            return 0;
        }
        y = -std::log(gamma - y);
        mean = polynomial(std::array{0.5440, -0.39978, 0.025054, -0.0006714}, size);
        sd = std::exp(polynomial(std::array{1.3822, -0.77857, 0.062767, -0.0020322}, size));
    } else {
        const double log = std::log(size);
        mean = polynomial(std::array{-1.5861, -0.31082, -0.083751, 0.0038915}, log);
        sd = std::exp(polynomial(std::array{-0.4803, -0.082676, 0.0030302}, log));
    }
    return normalBelow(-(y - mean) / sd);
}

} // namespace

std::optional<ShapiroWilk> shapiroWilk(std::span<const double> numbers) {
    const std::size_t n = numbers.size();
    if (n < 3 || n > 5000) {
        return {};
    }
    std::vector<double> sorted(numbers.begin(), numbers.end());
    std::ranges::sort(sorted);
    const double range = sorted.back() - sorted.front();
    const double size = std::max(std::abs(sorted.front()), std::abs(sorted.back()));
    if (!(range > 1e-14 * size) || !std::isfinite(range)) {
        return {};
    }
    const double origin = sorted[n / 2];
    double mean = 0;
    for (double& number : sorted) {
        number = (number - origin) / range;
        mean += number / static_cast<double>(n);
    }
    double squares = 0;
    for (const double number : sorted) {
        squares += (number - mean) * (number - mean);
    }
    const std::vector<double> a = weights(n);
    double slope = 0;
    double weightSquares = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        slope += a[i] * (sorted[n - 1 - i] - sorted[i]);
        weightSquares += 2 * a[i] * a[i];
    }
    const double w = std::clamp(slope * slope / (squares * weightSquares), 0.0, 1.0);
    return ShapiroWilk{w, probability(w, n)};
}

std::vector<double> meanRanks(std::span<const double> numbers) {
    std::vector<std::size_t> order(numbers.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, {}, [&](std::size_t i) { return numbers[i]; });
    std::vector<double> ranks(numbers.size());
    for (std::size_t from = 0; from < order.size();) {
        std::size_t to = from;
        while (to < order.size() && numbers[order[to]] == numbers[order[from]]) {
            ++to;
        }
        for (std::size_t i = from; i < to; ++i) {
            ranks[order[i]] = (static_cast<double>(from + 1) + static_cast<double>(to)) / 2;
        }
        from = to;
    }
    return ranks;
}

std::vector<double> normalScores(std::span<const double> numbers) {
    std::vector<double> scores = meanRanks(numbers);
    for (double& score : scores) {
        score = normalQuantile((score - 0.375) / (static_cast<double>(numbers.size()) + 0.25));
    }
    return scores;
}

} // namespace bullace::statistics
