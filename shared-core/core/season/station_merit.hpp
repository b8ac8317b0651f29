// What each accession is predicted to pass on of one descriptor, from all of the station's notes of
// it and from its relatives'.
#pragma once

#include "core/season/station_cross_plan.hpp"
#include "core/vineyard/block.hpp"

#include <span>
#include <string>
#include <vector>

namespace bullace::season {

// Descriptors with numbers of at least kLeastVines vines and of two accessions, in their order.
inline constexpr std::size_t kLeastVines = 8;
[[nodiscard]] std::vector<std::string> predictable(const StationNotes& notes);

// Breeding values by predictionModel() with accessions related through the pedigree, also of those
// that were not noted themselves.
// Errors  those of the pedigree and of fitMixed().
[[nodiscard]] Result<StationMerits> meritsOf(const StationNotes& notes,
                                             std::span<const vineyard::Block> blocks,
                                             const std::string& descriptor);

} // namespace bullace::season
