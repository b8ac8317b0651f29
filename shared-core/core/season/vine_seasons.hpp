// From what was noted vine by vine to the onsets of each accession and year.
#pragma once

#include "core/season/onset_interval.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace bullace::season {

struct VineReadings {
    std::string accession;
    std::string vine; // its position
    int year = 0;     // the season's
    std::vector<StageReading> readings;
};

// One accession in one year. Everbearing vines have all stages at once: they stand apart, with the
// onset of their most and of their least advanced organs, so that no mean goes across both.
struct AccessionSeason {
    std::string accession;
    int year = 0;
    std::vector<OnsetInterval> onsets;
    std::vector<OnsetInterval> everbearingMost;  // one for each everbearing vine, and in the
    std::vector<OnsetInterval> everbearingLeast; // same order
    std::size_t divided = 0;  // visits at which two values did not agree on the stage
    std::size_t runsBack = 0; // vines noted as not yet there after they had been
    Remarks remarks;
};

// Ascending by accession (as bytes), then year. A vine that stands twice in a year counts as one,
// with all of its readings.
[[nodiscard]] std::vector<AccessionSeason> seasonsOf(std::span<const VineReadings> vines,
                                                     const StageQuestion& question);

// The same with the time from one stage to a later one, in days, in the place of the onset.
[[nodiscard]] std::vector<AccessionSeason> lengthsOf(std::span<const VineReadings> vines,
                                                     const StageQuestion& first,
                                                     const StageQuestion& second);

} // namespace bullace::season
