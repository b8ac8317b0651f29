// Records of a trial as plain columns: factors (accession, block, year …), covariates and one
// response, as analysis of variance and mixed models take them.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"

#include <cstddef>
#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::trials {

inline constexpr std::uint32_t kNoLevel = std::numeric_limits<std::uint32_t>::max();

// Which of its levels each row has.
struct Factor {
    std::string name;
    std::vector<std::string> levels; // each once, in the order of their bytes
    std::vector<std::uint32_t> of;   // for each row its index in `levels`, or kNoLevel
};

// A number of each row; NaN where it is missing.
struct Covariate {
    std::string name;
    std::vector<double> values;
};

// A main effect is a list of one name, an interaction a list of several. The order of the names
// does not matter to what is estimated.
using Term = std::vector<std::string>;

// "accession:year".
[[nodiscard]] std::string termName(const Term& term);

// All columns have as many rows as the response.
struct TrialTable {
    std::string responseName;
    std::vector<double> response; // NaN where it is missing
    std::vector<Factor> factors;
    std::vector<Covariate> covariates;

    [[nodiscard]] std::size_t rows() const { return response.size(); }
    // Null where there is none of that name.
    [[nodiscard]] const Factor* factor(std::string_view name) const;
    [[nodiscard]] const Covariate* covariate(std::string_view name) const;
};

// The factor of a column of texts; an empty text is missing.
[[nodiscard]] Factor makeFactor(std::string name, std::span<const std::string> cells);

// The combinations of the factors' levels that occur, as the levels of one factor, in the order of
// the first factor's levels, then of the second's …; "G1:Y2". A row that misses one misses all.
// At least one factor; all have as many rows.
[[nodiscard]] Factor combined(std::span<const Factor* const> factors);

// Which rows have the response and all factors and covariates of the terms.
// Errors  InvalidInput where a term names no column of the table (the message lists those that are
//         there), names one twice, or is empty.
[[nodiscard]] Result<std::vector<std::size_t>> completeRows(const TrialTable& table,
                                                            std::span<const Term> terms);

// Says how many rows are not complete, if any is not.
void tellLeftOut(std::size_t rows, Remarks& remarks);

// Some rows of the table, in the order given; levels that do not occur in them are gone.
[[nodiscard]] TrialTable rowsOf(const TrialTable& table, std::span<const std::size_t> rows);

} // namespace bullace::trials
