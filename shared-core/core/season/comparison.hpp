// Accessions side by side: the mean of each, what it lies above or below a reference, and which of
// the differences are beyond doubt when so many are looked at.
#pragma once

#include "core/base/remark.hpp"
#include "core/season/station_notes.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::season {

struct ComparedCell {
    std::size_t vines = 0; // or lots, where those are what repeats
    std::size_t values = 0;
    std::size_t seasons = 0;
    std::optional<statistics::Estimate> mean;
    std::optional<statistics::Estimate> difference; // to the reference; none of its own
    std::optional<double> p;                        // that there is none
    std::optional<double> pAdjusted;                // for all differences of the sheet
    [[nodiscard]] bool isBeyondDoubt() const { return pAdjusted && *pAdjusted < 0.05; }
};

struct ComparedItem {
    std::string key;                 // the descriptor's code, or what else is compared
    std::vector<ComparedCell> cells; // of the accessions, in their order
    Remarks remarks;
};

// What of one vine in one season stands for it.
enum class SeasonValue {
    Mean, // of all its values
    Sum   // picks are parts of one crop
};

// A descriptor's numbers. Each vine counts once: the mean of its seasons, each put right for what
// the season was like (least squares over accessions and seasons). Errors come from how vines of an
// accession differ, pooled over the accessions; differences by Student's t. An accession that
// shares no season with others that lead to the reference cannot be compared, and a remark says so.
// `accessions` and `reference` are indices of the notes; the reference need not be among them.
[[nodiscard]] ComparedItem compareNumbers(const StationNotes& notes,
                                          std::string_view descriptor,
                                          std::span<const std::size_t> accessions,
                                          std::size_t reference,
                                          SeasonValue value = SeasonValue::Mean);

// Adjusts the p of every cell for all of them together.
// Source  Holm 1979, Scand. J. Stat. 6:65-70.
void adjustForAll(std::vector<ComparedItem>& items);

} // namespace bullace::season
