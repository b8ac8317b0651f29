#include "core/report/ticks.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <utility>

namespace bullace::report {

namespace {

using std::chrono::sys_days;

// Steps that a hair of rounding keeps from being whole are whole.
constexpr double kHair = 1e-9;

int decimalsOf(double step) {
    return std::max(0, static_cast<int>(std::ceil(-std::log10(step) - kHair)));
}

Ticks ticksFrom(double first, double last, double step) {
    Ticks ticks;
    ticks.step = step;
    ticks.decimals = decimalsOf(step);
    for (double number = first; number <= last; number += 1) {
        ticks.at.push_back(number * step + 0.0); // no minus before a zero
    }
    return ticks;
}

bool isRange(double& least, double& greatest) {
    if (least > greatest) {
        std::swap(least, greatest);
    }
    return std::isfinite(least) && std::isfinite(greatest) && greatest - least > 0;
}

enum class Every { Day, SecondDay, Monday, SecondMonday, Month, Quarter, Year, TenthYear };
constexpr std::array kEvery{Every::Day,
                            Every::SecondDay,
                            Every::Monday,
                            Every::SecondMonday,
                            Every::Month,
                            Every::Quarter,
                            Every::Year,
                            Every::TenthYear};

bool isMarked(Every every, sys_days day) {
    const CivilDate date(day);
    const unsigned month = static_cast<unsigned>(date.month());
    const bool isFirst = date.day() == std::chrono::day(1);
    const auto number = day.time_since_epoch().count(); // a Thursday is 0, so a Monday is 4
    switch (every) {
    case Every::Day:
        return true;
    case Every::SecondDay:
        return number % 2 == 0;
    case Every::Monday:
        return (number - 4) % 7 == 0;
    case Every::SecondMonday:
        return (number - 4) % 14 == 0;
    case Every::Month:
        return isFirst;
    case Every::Quarter:
        return isFirst && month % 3 == 1;
    case Every::Year:
        return isFirst && month == 1;
    case Every::TenthYear:
        return isFirst && month == 1 && static_cast<int>(date.year()) % 10 == 0;
    }
    return false;
}

} // namespace

double roundStep(double range, int most) {
    if (!(range > 0) || !std::isfinite(range) || most < 1) {
        return 1;
    }
    const double raw = range / most;
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * power * (1 + kHair) >= raw) {
            return factor * power;
        }
    }
    return 10 * power;
}

Ticks ticksWithin(double least, double greatest, int most) {
    if (!isRange(least, greatest)) {
        return std::isfinite(least) && least == greatest ? Ticks{{least}, 1, 0} : Ticks{};
    }
    const double step = roundStep(greatest - least, most);
    return ticksFrom(
        std::ceil(least / step - kHair), std::floor(greatest / step + kHair) + 0.5, step);
}

Ticks ticksAround(double least, double greatest, int most) {
    if (!isRange(least, greatest)) {
        return std::isfinite(least) && least == greatest ? ticksAround(least - 0.5, least + 0.5, 1)
                                                         : Ticks{};
    }
    double step = roundStep(greatest - least, most);
    const auto first = [&] { return std::floor(least / step + kHair); };
    const auto last = [&] { return std::ceil(greatest / step - kHair); };
    while (last() - first() > std::max(2, most)) {
        step = roundStep(step * 1.01, 1);
    }
    return ticksFrom(first(), last() + 0.5, step);
}

std::vector<DateTick> dateTicks(CivilDate first, CivilDate last, int most) {
    for (const Every every : kEvery) {
        std::vector<DateTick> marked;
        for (sys_days day = first; day <= sys_days(last); day += std::chrono::days(1)) {
            if (isMarked(every, day)) {
                marked.push_back({CivilDate(day), CivilDate(day).day() == std::chrono::day(1)});
            }
        }
        if (std::ssize(marked) <= most || every == kEvery.back()) {
            marked.resize(std::min(marked.size(), static_cast<std::size_t>(std::max(0, most))));
            return marked;
        }
    }
    return {};
}

} // namespace bullace::report
