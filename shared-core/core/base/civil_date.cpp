#include "core/base/civil_date.hpp"

#include <cstdlib>

namespace bullace {

namespace {

// The digits text[from, from + count) as a number, or -1.
int digitsAt(std::string_view text, std::size_t from, std::size_t count) {
    int value = 0;
    for (std::size_t i = from; i < from + count; ++i) {
        if (text[i] < '0' || text[i] > '9') {
            return -1;
        }
        value = value * 10 + (text[i] - '0');
    }
    return value;
}

void appendPadded(std::string& out, long long value, std::size_t width) {
    const std::string digits = std::to_string(value);
    out.append(width > digits.size() ? width - digits.size() : 0, '0');
    out += digits;
}

} // namespace

std::optional<CivilDate> readDate(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
        return std::nullopt;
    }
    const int year = digitsAt(text, 0, 4);
    const int month = digitsAt(text, 5, 2);
    const int day = digitsAt(text, 8, 2);
    if (year < 0 || month < 0 || day < 0) {
        return std::nullopt;
    }
    const CivilDate date{std::chrono::year{year},
                         std::chrono::month{static_cast<unsigned>(month)},
                         std::chrono::day{static_cast<unsigned>(day)}};
    if (!date.ok()) {
        return std::nullopt;
    }
    return date;
}

std::string writeDate(CivilDate date) {
    std::string out;
    appendPadded(out, static_cast<int>(date.year()), 4);
    out += '-';
    appendPadded(out, static_cast<unsigned>(date.month()), 2);
    out += '-';
    appendPadded(out, static_cast<unsigned>(date.day()), 2);
    return out;
}

int daysBetween(CivilDate from, CivilDate to) {
    return static_cast<int>((std::chrono::sys_days{to} - std::chrono::sys_days{from}).count());
}

CivilDate addDays(CivilDate date, int days) {
    return CivilDate{std::chrono::sys_days{date} + std::chrono::days{days}};
}

std::string writeInstant(std::int64_t utcMs, std::int64_t offsetMinutes) {
    constexpr std::int64_t kDayMinutes = 24 * 60;
    constexpr std::int64_t kLeastMs = -62'167'132'800'000; // a day into the year 0000
    constexpr std::int64_t kGreatestMs =
        253'402'214'400'000; // a day before the end of the year 9999
    if (utcMs < kLeastMs || utcMs > kGreatestMs) {
        return std::to_string(utcMs) + " ms";
    }
    if (std::abs(offsetMinutes) > kDayMinutes) {
        offsetMinutes = 0;
    }
    using namespace std::chrono;
    const sys_time<milliseconds> local{milliseconds{utcMs} + minutes{offsetMinutes}};
    const auto day = floor<days>(local);
    const long long ms = (local - day).count();
    std::string out = writeDate(CivilDate{day});
    out += 'T';
    appendPadded(out, ms / 3'600'000, 2);
    out += ':';
    appendPadded(out, ms / 60'000 % 60, 2);
    out += ':';
    appendPadded(out, ms / 1000 % 60, 2);
    out += '.';
    appendPadded(out, ms % 1000, 3);
    out += offsetMinutes < 0 ? '-' : '+';
    appendPadded(out, std::abs(offsetMinutes) / 60, 2);
    out += ':';
    appendPadded(out, std::abs(offsetMinutes) % 60, 2);
    return out;
}

} // namespace bullace
