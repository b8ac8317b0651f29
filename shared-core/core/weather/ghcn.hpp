// Daily weather in the fixed-width form of NOAA's Global Historical Climatology Network.
// Source  NOAA GHCN-Daily, readme v3.00: 269 characters a line, values in tenths of °C and of mm,
// -9999 for missing, any quality flag: the value is not to be used.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/result.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace bullace::weather {

// One day; what was not measured, or did not pass the quality check, is not there.
struct DailyWeather {
    std::optional<double> greatest;  // °C
    std::optional<double> least;     // °C
    std::optional<double> rain;      // mm
    std::optional<int> observedAt{}; // minutes after midnight, where the file says when it was read

    friend bool operator==(const DailyWeather&, const DailyWeather&) = default;
};

struct DailyRecord {
    std::string station;                    // its ID, "USC00010655"
    std::map<CivilDate, DailyWeather> days; // with at least one value
    std::size_t failedQuality = 0;          // values left out because of their flag
    std::set<std::string> otherElements;    // elements that were passed over: SNOW, TOBS, …
};

// Lines may have lost blanks at their ends. Errors: InvalidInput, with line and column: another
// station than the first line's, no year or month, a value that is no number, one on a day that the
// month does not have, or an element of a month that is there twice; a file without lines.
[[nodiscard]] Result<DailyRecord> readGhcnDaily(std::string_view text);

} // namespace bullace::weather
