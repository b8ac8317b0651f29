// Mean and spread of samples, and how many samples a wanted precision of the mean needs.
#pragma once

#include <optional>
#include <span>

namespace bullace::fruit {

struct Spread {
    unsigned count = 0;
    double mean = 0;                   // in the samples' unit; 0 where there are none
    std::optional<double> sd{};        // with n - 1; from two samples on
    std::optional<double> cvPercent{}; // 100 sd / mean; where the mean is above 0
};

// Welford 1962, Technometrics 4:419-420, which does not lose digits to large means. Finite numbers.
[[nodiscard]] Spread spreadOf(std::span<const double> samples);

// The quantile of Student's t that leaves 2.5 % on either side; degreesOfFreedom from 1.
[[nodiscard]] double studentT95(unsigned degreesOfFreedom);

// n = (t·CV/E)² rounded up, for a given t; cvPercent and errorPercent of the mean, both above 0.
// From a population of a finite size, n = 1 / (1/N + (E/(t·CV))²): USDA Forest Service Handbook
// 2409.12 (2000). Nothing where that is no number that can be counted.
[[nodiscard]] std::optional<unsigned> samplesForT(double t,
                                                  double cvPercent,
                                                  double errorPercent,
                                                  std::optional<unsigned> population = {});

// The least n that is not below (t·CV/E)² with t of n - 1 degrees of freedom at 95 %, sought upward
// from t = 1.96: the half width of the mean's 95 % interval is then errorPercent of the mean. At
// least 2. Nothing where an argument is not above 0 or a million would not do.
[[nodiscard]] std::optional<unsigned> samplesNeeded(double cvPercent, double errorPercent);

// How many samples more than these the wanted precision needs; 0 where they are enough. Nothing
// with less than two samples, with a mean that is not above 0, or a percent that is not.
[[nodiscard]] std::optional<unsigned> moreNeeded(std::span<const double> samples, double percent);

} // namespace bullace::fruit
