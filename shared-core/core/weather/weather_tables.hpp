// The forms in which NOAA's daily record is handed out, and the two of CSV among them.
// Source  NOAA GHCN-Daily, readme-by_station.txt and readme v3.00.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/result.hpp"
#include "core/weather/ghcn.hpp"
#include "core/weather/weather_days.hpp"

#include <optional>
#include <vector>

namespace bullace::weather {

struct DailyTable {
    DailyRecord record;
    std::size_t repeated = 0; // values that stand twice and are the same
    Remarks remarks;
};

enum class DailyForm {
    FixedWidth, // a month of an element in each line
    ByStation,  // a value in each line
    Ordered     // a header with DATE, and TMAX, TMIN or PRCP; does not say its unit
};
// The form as the first line tells it; nothing where it is none of them.
[[nodiscard]] std::optional<DailyForm> dailyFormOf(BytesView text);

// A file in a form; unit and hemisphere are for the ordered one. Errors: those of the form.
[[nodiscard]] Result<DailyTable> readDaily(BytesView text,
                                           DailyForm form,
                                           TemperatureUnit unit,
                                           Hemisphere where = Hemisphere::North);

// Without header, eight fields: station, YYYYMMDD, element, value in tenths, three flags (the
// second is quality), and the hour of observation as HHMM or nothing. Lines in any order; -9999 is
// missing. Errors: InvalidInput with line and column: another station than the first line's, what
// is no day or number, and a day's element twice with two values.
[[nodiscard]] Result<DailyTable> readStationTable(BytesView text);

// With a header that holds DATE (ISO) and TMAX, TMIN or PRCP, maybe STATION, and TMAX_ATTRIBUTES
// and so on ("measurement,quality,source[,HHMM]"). The file does not say its unit: °F and inches,
// or °C and mm, as it was ordered. Empty and -9999 are missing. A remark doubts the unit where the
// summer contradicts it. Errors: as above, and a file without the columns.
[[nodiscard]] Result<DailyTable>
readOrderedTable(BytesView text, TemperatureUnit unit, Hemisphere where = Hemisphere::North);

} // namespace bullace::weather
