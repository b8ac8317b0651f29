#include "core/statistics/power.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace bullace::statistics {

namespace {

constexpr std::size_t kMost = 1'000'000;

bool isMeant(const PlannedTest& test) {
    return test.alpha > 0 && test.alpha < test.power && test.power < 1;
}

// The least whole number from `first` on at which `isEnough`; doubled until it is, then halved. The
// answer must stay true once it is.
std::optional<std::size_t> leastFrom(std::size_t first,
                                     const std::function<bool(std::size_t)>& isEnough) {
    std::size_t high = first;
    while (!isEnough(high)) {
        if (high > kMost) {
            return std::nullopt;
        }
        high *= 2;
    }
    std::size_t low = first;
    while (low < high) {
        const std::size_t middle = (low + high) / 2;
        (isEnough(middle) ? high : low) = isEnough(middle) ? middle : middle + 1;
    }
    return high;
}

double powerOfTwoGroups(double n, double delta, double sd, double alpha) {
    const double freedom = 2 * (n - 1);
    const double t = studentTQuantile(1 - alpha / 2, freedom);
    return noncentralTAbove(t, freedom, std::sqrt(n / 2) * delta / sd);
}

double powerOfTrial(std::size_t entries, std::size_t blocks, double ratio, double alpha) {
    const auto t = static_cast<double>(entries);
    const auto b = static_cast<double>(blocks);
    const double numerator = t - 1;
    const double denominator = (t - 1) * (b - 1);
    return noncentralFAbove(
        fQuantile(1 - alpha, numerator, denominator), numerator, denominator, b * (t - 1) * ratio);
}

} // namespace

std::optional<TwoGroups> vinesForDifference(double delta, double sd, const PlannedTest& test) {
    if (!(delta > 0) || !(sd > 0) || !isMeant(test)) {
        return std::nullopt;
    }
    const auto powerAt = [&](double n) { return powerOfTwoGroups(n, delta, sd, test.alpha); };
    const auto each =
        leastFrom(2, [&](std::size_t n) { return powerAt(static_cast<double>(n)) >= test.power; });
    if (!each) {
        return std::nullopt;
    }
    double low = std::max(1.0 + 1e-9, static_cast<double>(*each) - 1);
    auto high = static_cast<double>(*each);
    for (int i = 0; i < 100 && high - low > 1e-13 * high; ++i) {
        const double middle = (low + high) / 2;
        (powerAt(middle) >= test.power ? high : low) = middle;
    }
    return TwoGroups{high, *each, powerAt(static_cast<double>(*each))};
}

std::optional<Planned> vinesForMean(double sd, double half, double alpha) {
    if (!(sd > 0) || !(half > 0) || !(alpha > 0) || !(alpha < 1)) {
        return std::nullopt;
    }
    const auto halfAt = [&](std::size_t n) {
        const auto size = static_cast<double>(n);
        return studentTQuantile(1 - alpha / 2, size - 1) * sd / std::sqrt(size);
    };
    const auto n = leastFrom(2, [&](std::size_t tried) { return halfAt(tried) <= half; });
    return n ? std::optional(Planned{*n, halfAt(*n), *n > 2 ? halfAt(*n - 1) : halfAt(*n)})
             : std::nullopt;
}

std::optional<std::size_t> vinesForMeanNormal(double sd, double half, double alpha) {
    if (!(sd > 0) || !(half > 0) || !(alpha > 0) || !(alpha < 1)) {
        return std::nullopt;
    }
    const double root = normalQuantile(1 - alpha / 2) * sd / half;
    const double n = std::ceil(root * root * (1 - 1e-12));
    return n <= static_cast<double>(kMost) ? std::optional(static_cast<std::size_t>(n))
                                           : std::nullopt;
}

std::optional<double> pairsForCorrelation(double rho, const PlannedTest& test) {
    if (!(std::abs(rho) < 1) || rho == 0 || !isMeant(test)) {
        return std::nullopt;
    }
    const double root =
        (normalQuantile(1 - test.alpha / 2) + normalQuantile(test.power)) / std::atanh(rho);
    const double n = root * root + 3;
    return n <= static_cast<double>(kMost) ? std::optional(n) : std::nullopt;
}

std::optional<Planned>
blocksForTrial(std::size_t entries, double between, double error, const PlannedTest& test) {
    if (entries < 2 || !(between > 0) || !(error > 0) || !isMeant(test)) {
        return std::nullopt;
    }
    const auto powerAt = [&](std::size_t blocks) {
        return powerOfTrial(entries, blocks, between / error, test.alpha);
    };
    const auto n = leastFrom(2, [&](std::size_t tried) { return powerAt(tried) >= test.power; });
    return n ? std::optional(Planned{*n, powerAt(*n), *n > 2 ? powerAt(*n - 1) : 0}) : std::nullopt;
}

std::optional<Planned>
blocksForDifference(std::size_t entries, double error, double wanted, double alpha) {
    if (entries < 2 || !(error > 0) || !(wanted > 0) || !(alpha > 0) || !(alpha < 1)) {
        return std::nullopt;
    }
    const auto differenceAt = [&](std::size_t blocks) {
        const auto b = static_cast<double>(blocks);
        const double freedom = (static_cast<double>(entries) - 1) * (b - 1);
        return studentTQuantile(1 - alpha / 2, freedom) * std::sqrt(2 * error / b);
    };
    const auto n = leastFrom(2, [&](std::size_t tried) { return differenceAt(tried) <= wanted; });
    return n ? std::optional(
                   Planned{*n, differenceAt(*n), *n > 2 ? differenceAt(*n - 1) : differenceAt(*n)})
             : std::nullopt;
}

std::optional<StratifiedPlan> plotsOfStrata(std::span<const Stratum> strata,
                                            double errorPercent,
                                            double t,
                                            std::optional<double> population) {
    double area = 0;
    double weighted = 0;
    for (const Stratum& stratum : strata) {
        if (!(stratum.area > 0) || !(stratum.cvPercent >= 0)) {
            return std::nullopt;
        }
        area += stratum.area;
        weighted += stratum.area * stratum.cvPercent;
    }
    if (!(weighted > 0) || !(errorPercent > 0) || !(t > 0) || (population && !(*population > 0))) {
        return std::nullopt;
    }
    const double cv = weighted / area;
    const double ratio = errorPercent / (t * cv);
    const double exact = 1 / (ratio * ratio + (population ? 1 / *population : 0));
    const double plots = std::ceil(exact * (1 - 1e-12));
    return plots <= static_cast<double>(kMost)
               ? std::optional(StratifiedPlan{cv, exact, static_cast<std::size_t>(plots)})
               : std::nullopt;
}

} // namespace bullace::statistics
