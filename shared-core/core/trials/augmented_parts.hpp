// The complete records of an augmented design with what each is, shared by its two analyses.
// Nothing else includes it.
#pragma once

#include "core/trials/augmented.hpp"

namespace bullace::trials {

// Names that no column of a file has.
inline constexpr const char* kKind = "\x01kind";   // check or selection
inline constexpr const char* kCheck = "\x01check"; // "c:" and its name, or "s" for all selections

struct AugmentedRecords {
    TrialTable table;                 // with the two columns above
    std::vector<bool> isCheck;        // of each level of the entry
    std::vector<std::string> missing; // checks without a complete record
    std::size_t leftOut = 0;
};

[[nodiscard]] Result<AugmentedRecords> takeAugmented(const TrialTable& table,
                                                     const AugmentedPlan& plan);

} // namespace bullace::trials
