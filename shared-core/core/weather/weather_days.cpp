#include "core/weather/weather_days.hpp"

#include <algorithm>
#include <array>

namespace bullace::weather {

namespace {

constexpr int kMostDays = 200 * 366;

void remarkOn(PeriodDays& made) {
    for (const CivilDate day : made.reversed) {
        made.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "%1 is not used: its least temperature is above its greatest; they "
                              "may have been exchanged."),
             {day}});
    }
    for (const HeatGap& gap : made.gaps) {
        made.remarks.push_back(
            gap.first == gap.last
                ? Remark{BULLACE_SENTENCE("Remark", "The temperatures of %1 are not known."),
                         {gap.first}}
                : Remark{
                      BULLACE_SENTENCE("Remark", "The temperatures from %1 to %2 are not known."),
                      {gap.first, gap.last}});
    }
}

} // namespace

PeriodDays daysOf(const DailyDays& record, const Period& period) {
    PeriodDays made;
    const int count = daysBetween(period.first, period.last) + 1;
    if (count < 1 || count > kMostDays) {
        return made;
    }
    made.days.reserve(static_cast<std::size_t>(count));
    auto next = record.lower_bound(period.first);
    const std::chrono::sys_days first = period.first;
    for (int i = 0; i < count; ++i) {
        const CivilDate day = first + std::chrono::days(i);
        DayTemperatures one{day, {}, {}};
        if (next != record.end() && next->first == day) {
            one.least = next->second.least;
            one.greatest = next->second.greatest;
            ++next;
        }
        if (one.least && one.greatest && *one.least > *one.greatest) {
            made.reversed.push_back(day);
            one.least.reset();
            one.greatest.reset();
        }
        const bool isLacking = !one.least || !one.greatest;
        const bool goesOn =
            i > 0 && !made.gaps.empty() && made.gaps.back().last == made.days.back().day;
        if (isLacking && goesOn) {
            made.gaps.back().last = day;
        } else if (isLacking) {
            made.gaps.push_back({day, day});
        }
        made.days.push_back(one);
    }
    remarkOn(made);
    return made;
}

std::vector<int> yearsOf(const DailyDays& record) {
    std::vector<int> years;
    for (const auto& [day, weather] : record) {
        const int year = static_cast<int>(day.year());
        if (years.empty() || years.back() != year) {
            years.push_back(year);
        }
    }
    return years;
}

double toCelsius(double value, TemperatureUnit unit) {
    return unit == TemperatureUnit::Celsius ? value : (value - 32) / 1.8;
}

std::optional<TemperatureUnit> guessUnit(std::span<const DayTemperatures> days, Hemisphere where) {
    struct Month {
        double sum = 0;
        int days = 0;
    };
    std::array<Month, 13> months{};
    for (const DayTemperatures& day : days) {
        if (day.greatest && day.day.ok()) {
            Month& month = months[static_cast<unsigned>(day.day.month())];
            month.sum += *day.greatest;
            ++month.days;
        }
    }
    constexpr int kEnough = 10;
    bool hasSummer = false;
    std::optional<double> warmest;
    for (unsigned month = 1; month <= 12; ++month) {
        if (months[month].days < kEnough) {
            continue;
        }
        const double mean = months[month].sum / months[month].days;
        warmest = std::max(warmest.value_or(mean), mean);
        const bool isSummer =
            where == Hemisphere::North ? month >= 6 && month <= 8 : month == 12 || month <= 2;
        hasSummer = hasSummer || isSummer;
    }
    if (warmest && *warmest > 50) {
        return TemperatureUnit::Fahrenheit;
    }
    return warmest && hasSummer && *warmest <= 45 ? std::optional(TemperatureUnit::Celsius)
                                                  : std::nullopt;
}

std::optional<Remark>
doubtUnit(std::span<const DayTemperatures> asTheyStand, TemperatureUnit readAs, Hemisphere where) {
    const auto guess = guessUnit(asTheyStand, where);
    if (!guess || *guess == readAs) {
        return std::nullopt;
    }
    return *guess == TemperatureUnit::Celsius
               ? Remark{BULLACE_SENTENCE("Remark",
                                         "Read as °F its summer is too cold for any vine: the "
                                         "numbers look like °C."),
                        {}}
               : Remark{BULLACE_SENTENCE("Remark",
                                         "Read as °C its summer is hotter than any that was ever "
                                         "measured: the numbers look like °F."),
                        {}};
}

} // namespace bullace::weather
