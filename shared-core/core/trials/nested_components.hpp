// Components of variance of nested records by their moments: between accessions, between vines of
// an accession, within a vine.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/trials/trial_table.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bullace::trials {

struct NestedComponents {
    struct Level {
        std::string name; // of the factor; the last is "within"
        std::size_t degreesOfFreedom = 0;
        double sumOfSquares = 0;
        std::optional<double> meanSquare{};
        // May be below 0, which a remark says; nothing without degrees of freedom here or below.
        std::optional<double> variance{};
    };
    std::size_t n = 0;
    std::size_t leftOut = 0;
    std::vector<Level> levels;
    Remarks remarks;
};

// `nested` from the coarsest to the finest; labels of a finer factor may repeat in another level of
// the coarser one. Numbers may be unequal.
// Errors  InvalidInput where a column is not there or no row is complete; none is named.
// Source  Henderson 1953, Biometrics 9:226-252, method 1 (the analysis of variance's own
// estimators);
//         Searle, Casella & McCulloch 1992, Variance Components, §5.3.
[[nodiscard]] Result<NestedComponents> nestedComponents(const TrialTable& table,
                                                        const std::vector<std::string>& nested);

} // namespace bullace::trials
