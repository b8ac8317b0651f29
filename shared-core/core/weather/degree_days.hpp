// Heat above a threshold, from a day's least and greatest temperature, and its sum over a season.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/result.hpp"

#include <optional>
#include <span>
#include <vector>

namespace bullace::weather {

enum class DegreeDayMethod {
    MeanClamped, // the day's mean, not above the upper threshold: McMaster & Wilhelm 1997, method 1
    LimitsClamped,  // least and greatest are each kept inside both thresholds first: method 2
    SingleTriangle, // Lindsey & Newman 1956, Ecology 37:812-823
    DoubleTriangle, // half of the day up to the greatest, half down to the next day's least
    SingleSine,     // Baskerville & Emin 1969, Ecology 50:514-517
    DoubleSine
};

// Temperatures in one unit, °C or °F; degree-days come in the same. `upper` is a horizontal cutoff:
// heat above it adds no more than heat at it.
struct Thresholds {
    double lower = 0;
    std::optional<double> upper;
};

// One day's degree-days, never below 0. `nextLeast` is asked for by the double methods alone.
// Errors: InvalidInput where the least is above the greatest (they may have been exchanged), a
// number is not finite, the upper threshold is not above the lower, or the next day's least is
// lacking.
// Source  Zalom, Goodell, Wilson, Barnett & Bentley 1983, UC DANR Leaflet 21373, Tables 3-6.
[[nodiscard]] Result<double> degreeDays(DegreeDayMethod method,
                                        double least,
                                        double greatest,
                                        std::optional<double> nextLeast,
                                        const Thresholds& thresholds);

// A day's record; what was not measured is not there.
struct DayTemperatures {
    CivilDate day;
    std::optional<double> least;
    std::optional<double> greatest;
};

// Days of which the heat cannot be said, in a row.
struct HeatGap {
    CivilDate first;
    CivilDate last;
};
struct HeatDay {
    CivilDate day;
    double ofDay = 0;
    double sum = 0; // from the first day on, this one included
};
struct HeatSum {
    std::vector<HeatDay> days; // up to the first gap: a sum over a gap would be too small, unseen
    std::vector<HeatGap> gaps; // all of them, with days that are wholly lacking
};

// `days` ascending, each once. The last day has no next one: with a double method it is a gap.
// Errors: InvalidInput for days out of order or twice (the message names one), and those of
// degreeDays(), which name the day.
[[nodiscard]] Result<HeatSum> heatSum(DegreeDayMethod method,
                                      std::span<const DayTemperatures> days,
                                      const Thresholds& thresholds);

} // namespace bullace::weather
