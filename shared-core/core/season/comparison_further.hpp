// What stands on the comparison sheet beside counts and measures: dates of stages, the temperature
// that kills half of the buds, and how long juice holds its colour.
#pragma once

#include "core/season/comparison.hpp"
#include "core/season/station_stages.hpp"

#include <cstddef>
#include <span>

namespace bullace::season {

// All three: `accessions` and `reference` are indices of the notes; what cannot be told of an
// accession is an empty cell, and a difference without an error has no p.

// Days of the season, as means over the years, each counting the same; differences in days over the
// years that have both. A cell's vines are vines in a season. Where the vines' spread cannot be
// told, the middle of what the visits leave possible.
[[nodiscard]] ComparedItem compareStage(const StationNotes& notes,
                                        const AskedStage& stage,
                                        std::span<const std::size_t> accessions,
                                        std::size_t reference);

// The temperature that kills half of the primary buds, °C, by logistic curves over all winters;
// differences by one slope for both. A cell's vines are buds.
[[nodiscard]] ComparedItem compareCold(const StationNotes& notes,
                                       std::span<const std::size_t> accessions,
                                       std::size_t reference);

// The half-life of the absorbance at 520 nm, days; of readings of several conditions those of the
// most readings. p is that of the difference of the rates. A cell's vines are readings.
[[nodiscard]] ComparedItem compareColour(const StationNotes& notes,
                                         std::span<const std::size_t> accessions,
                                         std::size_t reference);

} // namespace bullace::season
