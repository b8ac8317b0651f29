// Records of a trial from a file's columns, and the parts of answers that several methods tell
// alike.
#pragma once

#include "console/document.hpp"
#include "console/work.hpp"

#include "core/trials/comparisons.hpp"
#include "core/trials/linear_model.hpp"
#include "core/trials/trial_table.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace bullace::console {

// Which columns are what; empty names in the lists are none.
struct TrialColumns {
    std::string response;
    std::vector<std::string> factors;
    std::vector<std::string> covariates;
};

// Each row of the file is a row of the table; missing cells are missing there. Factors and
// covariates are called as they were asked for. Errors: InvalidInput where a column is not there, a
// cell of the response or of a covariate is no number.
[[nodiscard]] Result<trials::TrialTable> trialTableOf(const WorkFile& file,
                                                      const TrialColumns& columns);

// A list of lines: term, degrees of freedom, sum of squares, mean square, F, p.
void describeLines(std::string_view name,
                   const std::vector<trials::VarianceLine>& lines,
                   Document& into);

// The levels with their means, and what differs. `comparisons` may be null.
void describeMeans(const trials::AdjustedMeans& means,
                   const trials::Comparisons* comparisons,
                   Document& into);

} // namespace bullace::console
