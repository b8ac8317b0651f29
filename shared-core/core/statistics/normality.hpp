// Whether numbers look as if they came from a normal distribution.
#pragma once

#include "core/statistics/estimate.hpp"

#include <optional>
#include <span>
#include <vector>

namespace bullace::statistics {

struct ShapiroWilk {
    double w = 0; // 1 where they lie as a normal sample does on average, less otherwise
    double p = 0;
};

// Nothing for less than 3 or more than 5,000 numbers, and where all are the same to rounding.
// Finite numbers in any order.
// Source  Shapiro & Wilk 1965, Biometrika 52:591-611, by Royston's approximation (1995, Appl. Stat.
//         44:547-551, algorithm AS R94).
[[nodiscard]] std::optional<ShapiroWilk> shapiroWilk(std::span<const double> numbers);

// The values that a normal sample of this size has on average at each rank, for the ranks of the
// numbers (ties share the mean rank): the quantiles of (rank - 3/8)/(n + 1/4) (Blom 1958,
// Statistical Estimates and Transformed Beta-variables).
[[nodiscard]] std::vector<double> normalScores(std::span<const double> numbers);

// Ranks from 1; ties share the mean of theirs.
[[nodiscard]] std::vector<double> meanRanks(std::span<const double> numbers);

} // namespace bullace::statistics
