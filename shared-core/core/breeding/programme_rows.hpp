// Rows and columns of an integer programme, looked at without a solver.
#pragma once

#include "core/breeding/integer_programme.hpp"

#include <cstddef>

namespace bullace::breeding {

// Whether all numbers are such that a solver's tolerances mean something, and all bounds are
// bounds.
[[nodiscard]] bool isSolvable(const Programme& programme);

// The rows that the values break by more than `tolerance` of their bounds, into `broken`: a solver
// forgives less than its own tolerance, and adding such rows could go on for ever.
void findClearlyBroken(const FindBroken& findBroken,
                       std::span<const double> values,
                       double tolerance,
                       double margin,
                       std::vector<ProgrammeRow>& broken);

// Columns whose reduced cost is at most `most`.
[[nodiscard]] std::vector<std::uint32_t> cheapColumns(const std::vector<double>& costs,
                                                      double most);

// The cost that so many columns do not exceed; without bound where there are not so many.
[[nodiscard]] double costOfRank(std::vector<double> costs, std::size_t rank);

} // namespace bullace::breeding
