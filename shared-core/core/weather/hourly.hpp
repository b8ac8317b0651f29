// Hours between a day's extremes, and what a winter's hours of cold add up to.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/weather/weather_days.hpp"

#include <optional>
#include <span>
#include <vector>

namespace bullace::weather {

// Hours without a gap, 24 for each day from 0 h, °C.
struct HourlyRun {
    CivilDate first;
    std::vector<double> celsius;
};

// A sine by day, from the least at sunrise towards the greatest, and a logarithmic fall by night
// from sunset to the next day's least; hours of true local time, latitude in degrees, north
// positive. `days` ascending, each once; a day without both extremes ends a run. The night before
// a run's first day and behind its last are made with that day's own extremes.
// Errors: InvalidInput for a latitude at which the sun does not rise or set that day, days out of
// order, a least above a greatest; the message names the day.
// Source  Linvill 1990, HortScience 25:14-16; sunrise by dayLengthHours().
[[nodiscard]] Result<std::vector<HourlyRun>>
hourlyFromExtremes(double latitude, std::span<const DayTemperatures> days);

// At or below; temperatures that are not finite count for nothing.
[[nodiscard]] int hoursAtOrBelow(std::span<const double> hourly, double thresholdC);

struct ChillSum {
    int hours = 0;        // all of the period
    int hoursBelow = 0;   // at or below 7.2 °C
    int hoursBetween = 0; // 0 to 7.2 °C
    double utah = 0;      // units
    double portions = 0;  // of the Dynamic Model
    double growingDegreeHours = 0;
    double lowest = 0; // °C
};
[[nodiscard]] ChillSum chillOf(std::span<const double> hourly);

// Of a period from a daily record. A period with a gap has no sum: its gaps are named.
struct Chill {
    std::optional<ChillSum> sum{};
    PeriodDays days;
    Remarks remarks;
};
[[nodiscard]] Result<Chill>
chillBetween(const DailyDays& record, const Period& period, double latitude);

} // namespace bullace::weather
