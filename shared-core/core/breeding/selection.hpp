// Which candidates to take on: the best under a limit on their kinship, and how sure it is that one
// is truly among the best.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/breeding/integer_programme.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::breeding {

struct SelectionLimits {
    std::size_t selected = 1;
    std::optional<double> mostKinship{};     // of any two that are selected
    std::optional<double> mostMeanKinship{}; // over all ordered pairs, each with itself too
    double seconds = 5;
};

struct Selection {
    ProgrammeStatus status = ProgrammeStatus::NotSolved;
    std::vector<std::size_t> selected; // candidates, the best first
    double sum = 0;                    // of their merits
    double bound = 0;                  // no selection of as many has a greater sum
    double meanKinship = 0;            // of the selected
    Remarks remarks;
};

// The `selected` candidates of the greatest sum of merits within the limits, as an integer
// programme: taking the best one by one can end in a family from which nothing more may be taken.
// merits   one a candidate
// kinship  n × n, row by row, symmetric, from 0 to 1; may be empty without limits
// Errors  InvalidInput where sizes do not agree, a number is not finite or outside its range, fewer
//         than one or more than all are to be selected, or a mean is limited and the kinships are
//         none (their matrix has a negative eigenvalue).
[[nodiscard]] Result<Selection> selectWithin(std::span<const double> merits,
                                             std::span<const double> kinship,
                                             const SelectionLimits& limits);

// A candidate's chance.
struct AmongBest {
    double probability = 0;
    double standardError = 0; // of the simulation
};

// The probability that each candidate truly is among the best `k`, by drawing true values around
// the predictions: value = prediction + error, the errors normal with `errorCovariance` (n × n, row
// by row, from the mixed model) or, where only their variances are known (n numbers), independent.
// Of equal values the first counts as the better. The same numbers give the same answer. Errors
// InvalidInput where sizes do not agree, k is not between 1 and n, a number is not finite or
//         the covariances are none.
[[nodiscard]] Result<std::vector<AmongBest>> amongBest(std::span<const double> predictions,
                                                       std::span<const double> errorCovariance,
                                                       std::size_t k,
                                                       std::size_t draws = 20000);

} // namespace bullace::breeding
