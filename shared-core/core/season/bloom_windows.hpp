// Which accession's pollen meets which other's flowers, for how many days, and how long pollen must
// be stored where none does.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"
#include "core/vineyard/flower_sex.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::season {

// The mean day of a stage over an accession's vines, how its vines spread around it, and how well
// the mean is known: value, standard error and degrees of freedom of a normal fit.
struct StageDate {
    double mean = 0;          // day of season
    double spread = 0;        // standard deviation between vines, days; 0 or more
    double standardError = 0; // of the mean, 0 or more
    double degreesOfFreedom = 1;
};

using vineyard::FlowerSex;

// From the first flowers to the last; pollen is shed in the same time by male and perfect ones.
struct BloomWindow {
    std::string accession;
    std::optional<FlowerSex> sex{}; // nothing: not known
    StageDate start;
    StageDate end;
};

struct StoredPollen {
    double days = 0;               // from the end of shedding to the mother's first flowers
    bool isFromYearBefore = false; // the father sheds later: its pollen waits until the next spring
};

struct BloomOverlap {
    std::size_t mother = 0; // place among the windows
    std::size_t father = 0;
    // Days on which a vine of the mother flowers and one of the father sheds, over vines and over
    // what is not known of the means; the interval is of single pairs of vines, 2.5 to 97.5 %.
    statistics::Estimate days;
    double probability = 0; // that they meet on a day at least
    // Where the expected windows do not meet.
    std::optional<StoredPollen> stored{};
};

struct BloomOverlaps {
    std::vector<BloomOverlap> pairs; // mothers that are not male with fathers that are not female
    std::size_t leftOut = 0;         // pairs that the flowers' sex rules out
    Remarks remarks;
};

// Every pair of different accessions. A vine that begins late for its accession is taken to end
// late by the same share of the spread (common practice, no source); different vines do not depend
// on one another. The means are drawn from Student's t around their estimates; 4096 points of an
// additive recurrence (Roberts 2018, from memory; after Kronecker and Weyl) stand for chance, so
// that the same windows give the same numbers.
// Errors: InvalidInput where a number is not finite, a spread or error is negative, the degrees of
// freedom are not above 0, or a mean end lies before its mean start; the message names the
// accession.
[[nodiscard]] Result<BloomOverlaps> bloomOverlaps(std::span<const BloomWindow> windows);

} // namespace bullace::season
