// Civil dates as the station writes them: YYYY-MM-DD, and only days that the calendar has.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bullace {

using CivilDate = std::chrono::year_month_day;

// Exactly ten characters, years 0000 to 9999, a day of the (proleptic Gregorian) calendar; else
// nothing.
[[nodiscard]] std::optional<CivilDate> readDate(std::string_view text);

// `date` must be a day of the calendar in the years 0000 to 9999.
[[nodiscard]] std::string writeDate(CivilDate date);

// Days from `from` to `to`, negative where `to` is earlier.
[[nodiscard]] int daysBetween(CivilDate from, CivilDate to);

[[nodiscard]] CivilDate addDays(CivilDate date, int days);

// An instant (UTC milliseconds since 1970) at an offset from UTC in minutes, as RFC 3339:
// 2026-05-12T07:31:02.114-05:00. Outside of the years 0000 to 9999 the milliseconds as they are; an
// offset of more than a day is taken as none.
[[nodiscard]] std::string writeInstant(std::int64_t utcMs, std::int64_t offsetMinutes);

} // namespace bullace
