// The file of a temperature logger: what its columns seem to be, its readings, and the days and
// hours that follow from them.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/weather/hourly.hpp"
#include "core/weather/weather_days.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::weather {

enum class DateOrder { YearFirst, DayFirst, MonthFirst };

// Columns from 0. `clock` where the time of day stands in a column of its own.
struct LoggerColumns {
    std::size_t skippedLines = 0; // above the header
    std::size_t day = 0;
    std::optional<std::size_t> clock{};
    std::size_t temperature = 0;
    std::optional<std::size_t> humidity{};
    DateOrder order = DateOrder::YearFirst;
};

struct UnreadLine {
    std::size_t line = 0; // of the file, from 1
    std::string what;     // one sentence
};

struct LoggerPreview {
    std::vector<std::string> header;
    LoggerColumns columns;                           // as guessed
    bool isOrderCertain = true;                      // false where 4/5 may be April or May
    std::optional<TemperatureUnit> unit{};           // where the header says it
    std::vector<std::vector<std::string>> firstRows; // at most 10
};
// Errors: InvalidInput where no column holds date and time, or none holds a temperature.
[[nodiscard]] Result<LoggerPreview> previewLogger(BytesView file);

struct LoggerReading {
    std::int64_t minute = 0; // of the logger's own clock, since 1970-01-01 00:00
    double celsius = 0;
    std::optional<double> humidity{}; // percent
};
struct LoggerGap {
    std::int64_t from = 0; // minutes of the readings before and behind it
    std::int64_t to = 0;
};
struct LoggerRecord {
    std::vector<LoggerReading> readings; // ascending, each minute once
    std::vector<UnreadLine> unread;
    std::size_t repeated = 0;      // the same minute again with the same temperature
    std::int64_t everyMinutes = 0; // the usual step; 0 with less than two readings
    std::vector<LoggerGap> gaps;   // more than 1.5 steps apart
    Remarks remarks;
};
// A minute twice with two temperatures is told among the unread lines; the first counts. Errors:
// InvalidInput where a column is not there or no line can be read.
[[nodiscard]] Result<LoggerRecord>
readLogger(BytesView file, const LoggerColumns& columns, TemperatureUnit unit);

// Least and greatest of each observing day, which begins at `beginsAtHour` (0 to 23) and has the
// date on which it ends (at 0 h: the date itself). A day with a gap of more than three hours, or
// not covered from end to end, has none and is named.
struct LoggerDays {
    DailyDays days;
    std::vector<CivilDate> incomplete;
    Remarks remarks;
};
[[nodiscard]] LoggerDays daysOf(const LoggerRecord& record, int beginsAtHour);

// Temperatures at full hours, on the line between the readings around them; a run ends where these
// are more than two hours apart. Runs begin at any hour of `first`'s day.
struct LoggerHours {
    std::int64_t firstHour = 0; // hours since 1970-01-01 00:00 of the logger's clock
    std::vector<double> celsius;
};
[[nodiscard]] std::vector<LoggerHours> hoursOf(const LoggerRecord& record);

} // namespace bullace::weather
