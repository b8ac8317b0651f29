// Weather from a file: what form it has, what it says by days, and how that is written beside what
// is there. Nothing is written before somebody has seen it.
#pragma once

#include "office/act.hpp"

#include "core/base/remark.hpp"
#include "core/weather/logger.hpp"
#include "core/weather/weather_days.hpp"
#include "core/weather/weather_tables.hpp"

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace bullace::office {

// What the beginning of a file says: NOAA's daily record in one of its forms, or a logger's table.
struct WeatherLook {
    std::optional<weather::DailyForm> daily{}; // nothing for a logger's
    bool needsUnit = false;                    // the file does not say whether it is in °C or °F
    std::optional<weather::LoggerPreview> logger{};
};
// Errors: InvalidInput where it is none of the forms; the message says what was looked for.
[[nodiscard]] Result<WeatherLook> lookAtWeather(BytesView file);

struct WeatherWish {
    weather::TemperatureUnit unit = weather::TemperatureUnit::Celsius; // where the file says none
    std::optional<weather::DateOrder> order{}; // of a logger, where 4/5 may be April or May
    weather::Hemisphere where = weather::Hemisphere::North;
};
// The file's days, °C and mm, with two decimals at most.
struct WeatherIntake {
    std::string station; // as the file calls it; empty where it does not
    weather::DailyDays days;
    std::vector<weather::HeatGap> gaps; // days without both extremes, first to last day of the file
    std::size_t failedQuality = 0;      // values that the file itself marks as doubtful: left out
    std::set<std::string> otherElements;     // passed over: SNOW, TOBS …
    std::vector<weather::UnreadLine> unread; // lines that could not be read
    Remarks remarks; // days without values, a doubt of the unit, values that stand twice
};
// Errors: those of the file's reader, with line and column; InvalidInput for a file without any
// day.
[[nodiscard]] Result<WeatherIntake>
readWeatherFile(BytesView file, const WeatherLook& look, const WeatherWish& wish);

// Where weather is measured, as the subjects name it: 1 to 56 bytes without '/' or control
// characters. Why a name cannot be one; empty where it can.
[[nodiscard]] std::string siteFault(const std::string& site);

// What is to be written: entries weather/SITE/DATE/TMAX, TMIN and PRCP, in acts of at most 10,000.
struct WeatherPlan {
    std::vector<Act> acts;
    std::size_t fresh = 0;    // where nothing stood
    std::size_t there = 0;    // the same value stands there: not written again
    std::size_t replaced = 0; // another value stands there, or several: the file's goes over them
};
// Errors: InvalidInput for a site that cannot be one; those of reading.
[[nodiscard]] Result<WeatherPlan> planWeather(store::Database& database,
                                              const WeatherIntake& intake,
                                              const std::string& site,
                                              const std::string& author,
                                              const std::string& why);
// Writes act after act; how many values were written. Errors: Outdated where something was written
// since the plan was made, and those of writing; acts before the one that failed are written.
[[nodiscard]] Result<std::size_t>
takeInWeather(store::Database& database, const WeatherPlan& plan, const Clock& clock);

} // namespace bullace::office
