// A station's past for the benchmarks of the tablet: an office with its plan, labels and rounds,
// and years of walks by three tablets over twelve thousand vines.
#pragma once

#include "core/base/civil_date.hpp"
#include "store/database.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace bullace::bench {

inline constexpr unsigned kPastBlocks = 5; // B1 to B5
inline constexpr unsigned kPastRows = 60;  // in each
inline constexpr unsigned kPastVines = 40; // in each row
inline constexpr std::size_t kPastPositions =
    std::size_t{kPastBlocks} * kPastRows * kPastVines; // 12,000

// All of them, along the rows: "B1-01-01" to "B5-60-40".
[[nodiscard]] std::vector<std::string> pastPositions();

// The day after the last of those walks on which one walks now, in bloom.
[[nodiscard]] CivilDate pastToday();
// The round that is walked now: a stage at every vine of B1 and of the first rows of B2, 3,000
// stops. Three more are open, two of them over all vines.
inline constexpr const char* kPastRound = "bloom";

// A stage of the vine as it might be noted on the day: vines differ, and all move on.
[[nodiscard]] std::int64_t stageOf(const std::string& position, CivilDate date);

// Merges `entries` entries into an empty journal, as a sync with the station would: all of the
// office's, and of the walks the newest. Ends the benchmark where that fails.
void fillWithPast(store::Database& database, std::size_t entries);

} // namespace bullace::bench
