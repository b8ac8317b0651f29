// What each accession is predicted to pass on of one descriptor, from all of the station's notes of
// it and from its relatives'.
#pragma once

#include "core/season/station_cross_plan.hpp"

#include <string>
#include <vector>

namespace bullace::season {

// Descriptors with numbers of at least kLeastRecords vines of two accessions, in their order.
inline constexpr std::size_t kLeastRecords = 8;
[[nodiscard]] std::vector<std::string> predictable(const StationNotes& notes);

// Breeding values by a mixed model over a value for each vine and season (a mean; of yield the sum
// of the picks): seasons fixed; accessions, related through the pedigree, and where they can be
// told blocks, accessions in seasons and vines random.
// Errors  those of the pedigree and of fitMixed().
[[nodiscard]] Result<StationMerits> meritsOf(const StationNotes& notes,
                                             const std::string& descriptor);

} // namespace bullace::season
