// Round numbers and dates along an axis or a scale.
#pragma once

#include "core/base/civil_date.hpp"

#include <cstddef>
#include <vector>

namespace bullace::report {

// The least step of the form 1, 2 or 5 times a power of ten with which `range` has at most `most`
// steps. range and most must be above 0 and finite; else 1. Common practice, no source.
[[nodiscard]] double roundStep(double range, int most);

struct Ticks {
    std::vector<double> at; // ascending, equally far apart, whole multiples of `step`
    double step = 1;
    int decimals = 0; // with which the ticks are written exactly
};

// At most `most` + 1 ticks that lie within least to greatest (either may be the greater one). Where
// both are the same, or one is not finite: one tick, or none.
[[nodiscard]] Ticks ticksWithin(double least, double greatest, int most);

// The same, with one tick at or below the least and one at or above the greatest: for limits.
[[nodiscard]] Ticks ticksAround(double least, double greatest, int most);

struct DateTick {
    CivilDate date;
    bool isMonth = false; // the first of a month, when `date` is to be said with its month
};

// Days on which an axis from `first` to `last` is marked, at most `most`: every day, every second
// day, Mondays, every second Monday, the first of each month, of every third, of January. Empty
// where `last` is before `first` or most is below 1.
[[nodiscard]] std::vector<DateTick> dateTicks(CivilDate first, CivilDate last, int most);

} // namespace bullace::report
