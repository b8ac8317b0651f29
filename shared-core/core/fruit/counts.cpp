#include "core/fruit/counts.hpp"

#include "core/statistics/distributions.hpp"
#include "core/statistics/newton.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::fruit {

using statistics::Estimate;
using statistics::Interval;
using statistics::LogLikelihood;
using statistics::Slope;

namespace {

constexpr std::uint64_t kGreatestCount = 100'000;
constexpr std::uint64_t kMostCounts = 1'000'000'000;
constexpr double kMostNeeded = 1e9;

// Frequencies of 0, 1, … and of more than 0, 1, …: with integer counts the score of k is a finite
// sum over the latter, exact where differences of digamma functions lose digits.
struct Tally {
    std::vector<double> at;
    std::vector<double> above;
    double n = 0;
    double sum = 0;
    double mean = 0;
    double squares = 0; // about the mean
};

Tally tallyOf(std::span<const CountFrequency> counts) {
    Tally tally;
    for (const CountFrequency& one : counts) {
        tally.at.resize(std::max(tally.at.size(), one.count + 1), 0.0);
        tally.at[one.count] += static_cast<double>(one.frequency);
    }
    tally.above.assign(tally.at.size(), 0.0);
    for (std::size_t x = 0; x < tally.at.size(); ++x) {
        tally.n += tally.at[x];
        tally.sum += tally.at[x] * static_cast<double>(x);
    }
    double above = tally.n;
    tally.mean = tally.sum / tally.n;
    for (std::size_t x = 0; x < tally.at.size(); ++x) {
        above -= tally.at[x];
        tally.above[x] = above;
        const double off = static_cast<double>(x) - tally.mean;
        tally.squares += tally.at[x] * off * off;
    }
    return tally;
}

// The log-likelihood of log k, the mean at its own maximum (the two are orthogonal).
LogLikelihood likelihoodOfK(const Tally& tally) {
    return [&tally](std::span<const double> at, Slope& out) {
        const double k = std::exp(at[0]);
        const double m = tally.mean;
        double first = -tally.n * std::log1p(m / k);
        double second = tally.n * m / (k * (k + m));
        double value = -tally.n * k * std::log1p(m / k) - tally.sum * std::log1p(k / m);
        for (std::size_t j = 0; j < tally.above.size(); ++j) {
            const double step = k + static_cast<double>(j);
            value += tally.above[j] * std::log(step);
            first += tally.above[j] / step;
            second -= tally.above[j] / (step * step);
        }
        out.value = value;
        out.gradient[0] = k * first;
        out.hessian[0] = k * k * second + k * first;
    };
}

// Σ f log(x!), which the likelihood of k leaves out.
double logFactorials(const Tally& tally) {
    double sum = 0;
    for (std::size_t x = 0; x < tally.at.size(); ++x) {
        sum += tally.at[x] * statistics::logGamma(static_cast<double>(x) + 1);
    }
    return sum;
}

void fitK(const Tally& tally, CountFit& fit) {
    const double start =
        fit.kByMoments ? *fit.kByMoments : tally.mean * tally.mean / (tally.squares / tally.n);
    const LogLikelihood likelihood = likelihoodOfK(tally);
    const auto found = statistics::maximise(likelihood, {std::log(start)});
    if (!found) {
        fit.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                "The counts are hardly over-dispersed: k is so "
                                                "large that it cannot be told."),
                               {}});
        return;
    }
    const double k = std::exp(found->at[0]);
    const Interval logs = statistics::profileLimits(likelihood, *found, 0);
    const double error = k * found->standardError(0);
    fit.k = Estimate{k, error, Interval{std::exp(logs.low), std::exp(logs.high)}};
    fit.logLikelihood = found->value - logFactorials(tally);
    fit.likelihoodRatio = std::max(0.0, 2 * (fit.logLikelihood - fit.poissonLogLikelihood));
    fit.likelihoodRatioP = statistics::chiSquaredAbove(*fit.likelihoodRatio, 1) / 2;
}

// The k with which zeros are as frequent as they are; the share falls from 1 at 0 to exp(-m).
std::optional<double> kOfZeros(const Tally& tally) {
    const double share = tally.at[0] / tally.n;
    if (!(share > std::exp(-tally.mean)) || !(share < 1)) {
        return std::nullopt;
    }
    double low = -30;
    double high = 30; // logarithms of k
    for (int i = 0; i < 200; ++i) {
        const double between = (low + high) / 2;
        const double k = std::exp(between);
        (-k * std::log1p(tally.mean / k) > std::log(share) ? low : high) = between;
    }
    return std::exp(low);
}

void expect(CountFit& fit, std::size_t upTo) {
    const double m = fit.mean;
    const double k = fit.k ? fit.k->value : 0;
    double log = fit.k ? -k * std::log1p(m / k) : -m;
    for (std::size_t x = 0; x < upTo; ++x) {
        fit.expected.push_back(static_cast<double>(fit.n) * std::exp(log));
        const double next = static_cast<double>(x) + 1;
        log += fit.k ? std::log((k + next - 1) / next) - std::log1p(k / m) : std::log(m / next);
    }
}

Error wrong(const std::string& message) {
    return {ErrorCode::InvalidInput, message, ""};
}

std::optional<Error> whatIsWrong(std::span<const CountFrequency> counts) {
    std::uint64_t all = 0;
    for (const CountFrequency& one : counts) {
        if (one.count > kGreatestCount || one.frequency > kMostCounts) {
            return wrong("The count " + std::to_string(one.count) +
                         " is too large, or stands for too many: up to 100,000, and a thousand "
                         "million in all, can be fitted.");
        }
        all += one.frequency;
    }
    if (all == 0 || all > kMostCounts) {
        return wrong(all == 0 ? "There is no count to fit." : "There are too many counts to fit.");
    }
    return std::nullopt;
}

} // namespace

Result<CountFit> fitCounts(std::span<const CountFrequency> counts) {
    if (const auto error = whatIsWrong(counts)) {
        return *error;
    }
    const Tally tally = tallyOf(counts);
    CountFit fit;
    fit.n = static_cast<std::uint64_t>(tally.n);
    fit.mean = tally.mean;
    if (tally.n > 1) {
        fit.variance = tally.squares / (tally.n - 1);
    }
    if (tally.mean == 0) {
        fit.expected.push_back(tally.n);
        fit.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "All of the %1 counts are 0: nothing varies."),
             {static_cast<std::int64_t>(fit.n)}});
        return fit;
    }
    fit.poissonLogLikelihood =
        tally.sum * std::log(tally.mean) - tally.n * tally.mean - logFactorials(tally);
    fit.logLikelihood = fit.poissonLogLikelihood;
    if (fit.variance) {
        fit.dispersionIndex = tally.squares / tally.mean;
        fit.dispersionP = statistics::chiSquaredAbove(*fit.dispersionIndex, tally.n - 1);
        if (*fit.variance > tally.mean * (1 + 1e-12)) {
            fit.kByMoments = tally.mean * tally.mean / (*fit.variance - tally.mean);
        }
    }
    fit.kByZeroClass = kOfZeros(tally);
    if (tally.squares > tally.sum * (1 + 1e-12)) {
        fitK(tally, fit);
    } else {
        fit.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The counts are not over-dispersed (variance %1, "
                              "mean %2): they are taken as Poisson counts."),
             {Remark::Number{fit.variance.value_or(0), 3}, Remark::Number{tally.mean, 3}}});
    }
    const double spread = fit.mean + (fit.k ? fit.mean * fit.mean / fit.k->value : 0);
    fit.meanError = std::sqrt(spread / tally.n);
    expect(fit, tally.at.size());
    return fit;
}

std::optional<std::uint64_t> countsNeeded(double mean, std::optional<double> k, double relative) {
    if (!(mean > 0) || !(relative > 0) || (k && !(*k > 0))) {
        return std::nullopt;
    }
    const double needed = (1 / mean + (k ? 1 / *k : 0)) / (relative * relative);
    return needed <= kMostNeeded
               ? std::optional(static_cast<std::uint64_t>(std::ceil(needed * (1 - 1e-12))))
               : std::nullopt;
}

} // namespace bullace::fruit
