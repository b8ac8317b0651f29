// What stands on the comparison sheet beside counts and measures: dates of stages, the temperature
// that kills half of the buds, and how long juice holds its colour.
#pragma once

#include "desk/study.hpp"

#include "core/season/comparison.hpp"

#include <span>
#include <vector>

namespace bullace::desk {

inline constexpr std::string_view kBloomItem = "!bloom"; // no descriptor is called so
inline constexpr std::string_view kRipeItem = "!ripe";
inline constexpr std::string_view kColdItem = "!cold";
inline constexpr std::string_view kColourItem = "!colour";

struct FurtherItem {
    std::string_view key;
    QString title;
    std::string_view unit; // empty for days of the season, whose means are dates
    bool isDate = false;
};
// Those of which the station has notes.
[[nodiscard]] std::vector<FurtherItem> furtherItems(const StudyGround& ground);

// Days of the season, °C, or days; differences likewise. `accessions` and `reference` are indices
// of the notes. What cannot be told of an accession is an empty cell.
[[nodiscard]] season::ComparedItem compareFurther(const StudyGround& ground,
                                                  std::string_view key,
                                                  std::span<const std::size_t> accessions,
                                                  std::size_t reference);

// The same notes with taxa in the place of accessions, and accessions in that of vines: what
// repeats in a taxon are its accessions. Accessions without a taxon are a taxon of that name.
[[nodiscard]] season::StationNotes notesByTaxon(const season::StationNotes& notes,
                                                const std::string& withoutTaxon);

} // namespace bullace::desk
