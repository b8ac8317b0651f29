// Daily weather from a file in whichever of its forms it is, for the methods that need it.
#pragma once

#include "console/work.hpp"

#include "core/weather/weather_days.hpp"

#include <optional>
#include <string>

namespace bullace::console {

struct WeatherOptions {
    std::string path;
    std::string unit; // "C" or "F", where the file does not say
    bool isSouthern = false;
};
struct WeatherFile {
    std::string form; // in words
    weather::DailyRecord record;
    Remarks remarks;
};

// A fixed-width file of NOAA's daily record, its CSV by station (both say their unit), its ordered
// table, or a plain CSV with the columns date, least and greatest, maybe rain in mm. The last two
// do not say their unit: it is asked for. Errors name the file, and line and column.
[[nodiscard]] Result<WeatherFile> readWeather(const WeatherOptions& options, Terminal& terminal);

// Adds --unit and --south.
void addWeatherOptions(CLI::App& command, WeatherOptions& options);

// "2026-04-01" as a day; nothing with an empty text.
[[nodiscard]] Result<std::optional<CivilDate>> readDay(const std::string& text, const char* option);

} // namespace bullace::console
