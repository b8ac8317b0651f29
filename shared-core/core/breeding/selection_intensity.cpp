// Selection intensities: one integral for any number of candidates.
#include "core/breeding/selection_index.hpp"
#include "core/statistics/distributions.hpp"

#include <cassert>
#include <cmath>

namespace bullace::breeding {

namespace {

// The probability that fewer than `selected` of the others lie above x: of a binomial distribution,
// through its relation to F.
double isAmongBest(double above, double selected, double candidates) {
    const double below = 1 - above;
    const double rest = candidates - selected;
    if (above <= 0 || below <= 0) {
        return above <= 0 ? 1 : 0;
    }
    return statistics::fAbove(rest * above / (selected * below), 2 * selected, 2 * rest);
}

} // namespace

double selectionIntensity(double share) {
    assert(share > 0 && share < 1);
    return statistics::normalDensity(statistics::normalQuantile(1 - share)) / share;
}

double selectionIntensity(std::size_t selected, std::size_t candidates) {
    assert(selected >= 1 && selected <= candidates);
    if (selected == candidates) {
        return 0;
    }
    // The values of all that are among the best, added up: candidates × E[x; x is among the best].
    // The trapezoidal rule converges faster than any power for such an integrand.
    const auto k = static_cast<double>(selected);
    const auto n = static_cast<double>(candidates);
    constexpr double kFar = 10;
    const auto sumOver = [&](std::size_t steps, bool oddOnly) {
        const double width = 2 * kFar / static_cast<double>(steps);
        double sum = 0;
        for (std::size_t s = 1; s < steps; s += oddOnly ? 2 : 1) {
            const double x = -kFar + width * static_cast<double>(s);
            sum +=
                x * statistics::normalDensity(x) * isAmongBest(statistics::normalBelow(-x), k, n);
        }
        return sum;
    };
    constexpr std::size_t kMostSteps = std::size_t{1} << 17;
    std::size_t steps = 128;
    double sum = sumOver(steps, false);
    double before = 0;
    double integral = sum * 2 * kFar / static_cast<double>(steps);
    do {
        before = integral;
        steps *= 2;
        sum += sumOver(steps, true);
        integral = sum * 2 * kFar / static_cast<double>(steps);
    } while (std::abs(integral - before) > 1e-13 * std::abs(integral) && steps < kMostSteps);
    return integral * n / k;
}

} // namespace bullace::breeding
