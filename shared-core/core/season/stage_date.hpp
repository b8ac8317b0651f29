// The mean day of a stage as bloom windows need it, also where its vines' spread cannot be told.
#pragma once

#include "core/season/bloom_windows.hpp"
#include "core/season/onset_comparison.hpp"

#include <optional>
#include <span>

namespace bullace::season {

struct StageDating {
    std::optional<StageDate> date{}; // none where nothing bounds the mean on both sides
    Remarks remarks;
};

// By overYears(). Where the spread cannot be estimated: the middle of the 95 % limits of each
// year's mean, as the mean over the years, the limits being its error, and no spread between vines;
// a remark says so. Errors: those of overYears().
[[nodiscard]] Result<StageDating> stageDate(std::span<const YearOnset> onsets);

} // namespace bullace::season
