#include "core/weather/logger.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace bullace::weather {

namespace {

constexpr std::int64_t kHour = 60;
constexpr std::int64_t kDay = 24 * kHour;

std::int64_t floorTo(std::int64_t value, std::int64_t step) {
    return (value >= 0 ? value : value - step + 1) / step * step;
}

CivilDate dayOfMinute(std::int64_t minute) {
    return std::chrono::sys_days(std::chrono::days(floorTo(minute, kDay) / kDay));
}

struct Extent {
    double least = 0;
    double greatest = 0;
    std::int64_t first = 0;
    std::int64_t last = 0;
    std::int64_t widest = 0; // between two readings of it
};

void take(Extent& extent, const LoggerReading& reading) {
    extent.least = std::min(extent.least, reading.celsius);
    extent.greatest = std::max(extent.greatest, reading.celsius);
    extent.widest = std::max(extent.widest, reading.minute - extent.last);
    extent.last = reading.minute;
}

} // namespace

LoggerDays daysOf(const LoggerRecord& record, int beginsAtHour) {
    LoggerDays made;
    const std::int64_t begin = std::clamp(beginsAtHour, 0, 23) * kHour;
    std::map<std::int64_t, Extent> extents; // by the minute at which the day begins
    for (const LoggerReading& reading : record.readings) {
        const std::int64_t day = floorTo(reading.minute - begin, kDay) + begin;
        const auto [at, isNew] = extents.try_emplace(
            day, Extent{reading.celsius, reading.celsius, reading.minute, reading.minute, 0});
        if (!isNew) {
            take(at->second, reading);
        }
    }
    constexpr std::int64_t kMostApart = 3 * kHour;
    for (const auto& [day, extent] : extents) {
        const CivilDate date = dayOfMinute(day + (begin > 0 ? kDay : 0));
        const bool isWhole = extent.widest <= kMostApart && extent.first - day <= kMostApart &&
                             day + kDay - extent.last <= kMostApart;
        if (isWhole) {
            made.days[date] = {extent.greatest, extent.least, {}, static_cast<int>(begin)};
        } else {
            made.incomplete.push_back(date);
            made.remarks.push_back(
                {BULLACE_SENTENCE(
                     "Remark",
                     "The logger has no least and greatest temperature of %1: hours of "
                     "that day are lacking."),
                 {date}});
        }
    }
    return made;
}

std::vector<LoggerHours> hoursOf(const LoggerRecord& record) {
    std::vector<LoggerHours> runs;
    for (std::size_t i = 0; i < record.readings.size(); ++i) {
        const LoggerReading& here = record.readings[i];
        const bool isJoined = i > 0 && here.minute - record.readings[i - 1].minute <= 2 * kHour;
        const LoggerReading& before = isJoined ? record.readings[i - 1] : here;
        if (!isJoined) {
            runs.push_back({0, {}});
        }
        // Full hours behind the reading before, up to this one.
        const std::int64_t from = isJoined ? before.minute + 1 : here.minute;
        for (std::int64_t hour = -floorTo(-from, kHour); hour <= here.minute; hour += kHour) {
            const double part = here.minute == before.minute
                                    ? 1
                                    : static_cast<double>(hour - before.minute) /
                                          static_cast<double>(here.minute - before.minute);
            if (runs.back().celsius.empty()) {
                runs.back().firstHour = hour / kHour;
            }
            runs.back().celsius.push_back(before.celsius + part * (here.celsius - before.celsius));
        }
    }
    std::erase_if(runs, [](const LoggerHours& run) { return run.celsius.empty(); });
    return runs;
}

} // namespace bullace::weather
