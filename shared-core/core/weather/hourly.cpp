#include "core/weather/hourly.hpp"

#include "core/weather/chill.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bullace::weather {

namespace {

int dayOfYear(CivilDate day) {
    return daysBetween(day.year() / std::chrono::January / 1, day) + 1;
}

Error refused(CivilDate day, const char* what) {
    return {ErrorCode::InvalidInput, writeDate(day) + ": " + what, {}};
}

struct Sun {
    double rise = 0;
    double set = 0;
};

// One day of a run with what its nights need.
struct Lit {
    Sun sun;
    double least;
    double greatest;

    [[nodiscard]] double byDay(double hour) const {
        const double length = sun.set - sun.rise;
        return least +
               (greatest - least) * std::sin(std::numbers::pi * (hour - sun.rise) / (length + 4));
    }
    // `hour` counts on behind midnight.
    [[nodiscard]] double byNight(double hour, const Lit& next) const {
        const double atSunset = byDay(sun.set);
        const double length = 24 - (sun.set - next.sun.rise);
        return atSunset -
               (atSunset - next.least) / std::log(length + 1) * std::log(hour - sun.set + 1);
    }
};

void addDay(std::span<const Lit> run, std::size_t i, std::vector<double>& hours) {
    const Lit& day = run[i];
    const Lit& before = i > 0 ? run[i - 1] : day;
    const Lit& next = i + 1 < run.size() ? run[i + 1] : day;
    for (int hour = 0; hour < 24; ++hour) {
        if (hour < day.sun.rise) {
            hours.push_back(before.byNight(hour + 24, day));
        } else {
            hours.push_back(hour <= day.sun.set ? day.byDay(hour) : day.byNight(hour, next));
        }
    }
}

Result<Lit> litDay(double latitude, const DayTemperatures& day) {
    if (*day.least > *day.greatest) {
        return refused(day.day,
                       "The least temperature is above the greatest: they may have been "
                       "exchanged.");
    }
    const double length = dayLengthHours(latitude, dayOfYear(day.day));
    if (!(std::abs(latitude) <= 90) || !(length > 0) || !(length < 24)) {
        return refused(day.day, "At this latitude the sun does not rise and set on that day.");
    }
    return Lit{{12 - length / 2, 12 + length / 2}, *day.least, *day.greatest};
}

void finishRun(std::vector<Lit>& lit, std::vector<HourlyRun>& runs) {
    if (!lit.empty()) {
        runs.back().celsius.reserve(24 * lit.size());
        for (std::size_t i = 0; i < lit.size(); ++i) {
            addDay(lit, i, runs.back().celsius);
        }
        lit.clear();
    }
}

} // namespace

Result<std::vector<HourlyRun>> hourlyFromExtremes(double latitude,
                                                  std::span<const DayTemperatures> days) {
    std::vector<HourlyRun> runs;
    std::vector<Lit> lit;
    std::optional<CivilDate> last;
    for (const DayTemperatures& day : days) {
        if (last && daysBetween(*last, day.day) < 1) {
            return refused(day.day, "The days are not in order, or this one is there twice.");
        }
        const bool isNext = last && daysBetween(*last, day.day) == 1;
        last = day.day;
        const bool isThere =
            day.least && day.greatest && std::isfinite(*day.least) && std::isfinite(*day.greatest);
        if (!isThere || !isNext) {
            finishRun(lit, runs);
        }
        if (!isThere) {
            continue;
        }
        if (lit.empty()) {
            runs.push_back({day.day, {}});
        }
        const Result<Lit> made = litDay(latitude, day);
        if (!made) {
            return made.error();
        }
        lit.push_back(*made);
    }
    finishRun(lit, runs);
    return runs;
}

int hoursAtOrBelow(std::span<const double> hourly, double thresholdC) {
    return static_cast<int>(std::count_if(
        hourly.begin(), hourly.end(), [&](double celsius) { return celsius <= thresholdC; }));
}

ChillSum chillOf(std::span<const double> hourly) {
    ChillSum sum;
    sum.hours = static_cast<int>(hourly.size());
    sum.hoursBelow = chillHoursBelow(hourly);
    sum.hoursBetween = chillHoursBetween(hourly);
    sum.utah = utahUnits(hourly);
    sum.portions = chillPortions(hourly);
    for (const double celsius : hourly) {
        sum.growingDegreeHours += growingDegreeHour(celsius);
    }
    sum.lowest = hourly.empty() ? 0 : *std::ranges::min_element(hourly);
    return sum;
}

Result<Chill> chillBetween(const DailyDays& record, const Period& period, double latitude) {
    Chill made{{}, daysOf(record, period), {}};
    made.remarks = made.days.remarks;
    const auto runs = hourlyFromExtremes(latitude, made.days.days);
    if (!runs) {
        return runs.error();
    }
    if (made.days.days.empty() || !made.days.isComplete()) {
        made.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                 "There is no sum of cold: the hours of a gap "
                                                 "would be missing in it."),
                                {}});
        return made;
    }
    made.sum = chillOf(runs->front().celsius);
    return made;
}

} // namespace bullace::weather
