// When each accession of the station is expected to flower, over all of its seasons.
#pragma once

#include "core/season/bloom_windows.hpp"
#include "core/season/station_notes.hpp"

#include <cstddef>
#include <vector>

namespace bullace::season {

struct StationBloom {
    std::vector<BloomWindow> windows; // ascending by accession
    std::size_t without = 0;          // accessions whose visits do not bound start and end
};

// From start (a tenth of the caps off) to end of bloom, by stageDate() over all seasons.
[[nodiscard]] StationBloom expectedBloom(const StationNotes& notes);

} // namespace bullace::season
