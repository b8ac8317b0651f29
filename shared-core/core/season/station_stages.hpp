// The stages that are asked for, and which of the station's notes tell of them.
#pragma once

#include "core/season/onset_comparison.hpp"
#include "core/season/station_notes.hpp"
#include "core/season/vine_seasons.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace bullace::season {

// A stage that can be asked for: a BBCH code, or a percentage that means the same.
struct AskedStage {
    std::string_view key; // one word
    StageQuestion question;
    std::string_view percent; // the descriptor of the percentage
};
// Bud break, start, middle and end of bloom, first colour, ripe, leaf fall, in this order. Codes
// 61, 65 and 69 and their shares of caps off after Lorenz et al. 1995 (Aust. J. Grape Wine Res.
// 1:100-103); the shares of the other stages are common practice, no source.
[[nodiscard]] std::span<const AskedStage> askedStages();
// The stage of that key, else the first.
[[nodiscard]] const AskedStage& stageOf(std::string_view key);

inline constexpr std::string_view kFullBloom = "bloom-full";
inline constexpr std::string_view kRipe = "ripe";

// The descriptors by which any stage is noted: the stage itself first, then the percentages.
[[nodiscard]] std::span<const std::string_view> stageDescriptors();
// Those that tell of one stage: its code, the least advanced organs, the percentage.
[[nodiscard]] std::vector<std::string_view> descriptorsOf(const AskedStage& stage);

// What was noted of each vine in a year (0: in all, each by itself) that tells of the stage. Two
// people's different values of one visit are both there. What is open is not.
[[nodiscard]] std::vector<VineReadings>
readingsOf(const StationNotes& notes, const AskedStage& stage, int year);
// The onsets of one accession and year, each with its year.
void addOnsets(const AccessionSeason& season, std::vector<YearOnset>& onsets);

} // namespace bullace::season
