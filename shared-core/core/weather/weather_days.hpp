// From a record to the days of a period, with every day that lacks something named, and whether its
// numbers are in the unit that they are taken for.
#pragma once

#include "core/base/remark.hpp"
#include "core/weather/degree_days.hpp"
#include "core/weather/ghcn.hpp"

#include <optional>
#include <span>
#include <vector>

namespace bullace::weather {

using DailyDays = std::map<CivilDate, DailyWeather>;

struct Period {
    CivilDate first;
    CivilDate last; // included
};
struct PeriodDays {
    std::vector<DayTemperatures> days; // each day of the period; what is lacking is empty
    std::vector<HeatGap> gaps;         // days without both extremes
    std::vector<CivilDate> reversed;   // the least stood above the greatest: neither is used
    Remarks remarks;                   // each gap and reversed day by name

    [[nodiscard]] bool isComplete() const { return gaps.empty(); }
};
// Nothing in it where the period ends before it begins or is longer than 200 years.
[[nodiscard]] PeriodDays daysOf(const DailyDays& record, const Period& period);

// The years that the record touches, ascending.
[[nodiscard]] std::vector<int> yearsOf(const DailyDays& record);

enum class TemperatureUnit { Celsius, Fahrenheit };
[[nodiscard]] double toCelsius(double value, TemperatureUnit unit);

enum class Hemisphere { North, South };

// What the numbers of a file can be, by the mean of the greatest temperatures in its warmest month
// of ten days and more: above 50 nobody has measured °C (the highest mean of a month known is near
// 49), and up to 45 °F in a whole summer no vine grows (7 °C). Nothing where that leaves both, or
// no month of summer is there. Both limits: from memory, no source.
[[nodiscard]] std::optional<TemperatureUnit> guessUnit(std::span<const DayTemperatures> days,
                                                       Hemisphere where);
// A plain doubt where the guess is another unit than the file was read with.
[[nodiscard]] std::optional<Remark>
doubtUnit(std::span<const DayTemperatures> asTheyStand, TemperatureUnit readAs, Hemisphere where);

} // namespace bullace::weather
