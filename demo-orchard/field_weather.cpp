// The weather of the demo station's field: a year's course, days that take after the day before,
// freezes, and springs that make the vines bloom when they did.
#include "demo/bench_work.hpp"
#include "demo/portable_curves.hpp"
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace bullace::demo {

namespace {

using journal::numberValue;

constexpr const char* kSite = "field";
constexpr double kYearC = 17.0;     // mean of the year
constexpr double kSwingC = 10.5;    // of its course, to either side
constexpr double kHottestDay = 203; // of the year
constexpr double kKeeps = 0.75;     // of a day's departure, on the next
constexpr double kNewC = 2.6;       // of each day
constexpr double kWetChance = 0.3;
constexpr double kMostRainMm = 45;
constexpr double kFreezeC = -10;
constexpr int kRampDays = 20; // on which a spring's warmth comes and goes
constexpr int kHalvings = 60;

struct ColdSpell {
    int year;
    unsigned month;
    unsigned day;
    double lowestC;
};
constexpr std::array<ColdSpell, 4> kSpells{
    {{2021, 2, 16, -11.2}, {2022, 12, 24, -13.1}, {2024, 1, 17, -11.8}, {2025, 1, 22, -14.6}}};

std::vector<WeatherDay> rawDays(Dice& dice, CivilDate from, CivilDate to) {
    std::vector<WeatherDay> days;
    double departure = 0;
    for (auto at = std::chrono::sys_days(from); at <= std::chrono::sys_days(to);
         at += std::chrono::days(1)) {
        const CivilDate date(at);
        departure = departure * kKeeps + dice.normal(0, kNewC);
        WeatherDay& one = days.emplace_back();
        one.date = date;
        const double summer = yearlyCosine(dayOfYear(date) - kHottestDay); // 1, in winter -1
        one.mean = kYearC + kSwingC * summer + departure * (0.7 - 0.3 * summer);
        one.range = std::clamp(dice.normal(11, 2.5), 4.0, 19.0);
        const double wet = dice.uniform();
        const double amount = dice.uniform();
        one.rain = wet < kWetChance ? rounded(0.2 + kMostRainMm * amount * amount * amount, 1) : 0;
    }
    return days;
}

void addSpells(std::vector<WeatherDay>& days) {
    constexpr std::array<double, 3> kOf{1.0, 0.6, 0.25}; // days from the coldest
    for (const ColdSpell& spell : kSpells) {
        const int at = daysBetween(days.front().date, day(spell.year, spell.month, spell.day));
        const WeatherDay& coldest = days[static_cast<std::size_t>(at)];
        const double drop = spell.lowestC - (coldest.mean - coldest.range / 2);
        for (int off = -2; off <= 2; ++off) {
            days[static_cast<std::size_t>(at + off)].mean +=
                std::min(0.0, drop) * kOf[static_cast<std::size_t>(std::abs(off))];
        }
    }
}

double heatOf(const WeatherDay& one, double base) {
    return std::max(0.0, (one.least() + one.greatest()) / 2 - base);
}

// Of the whole degrees added to a spring, how much a day gets.
double shareOf(int day, int first, int last) {
    const int inside = std::min(day - (first - kRampDays), last + kRampDays - day);
    return std::clamp(static_cast<double>(inside) / kRampDays, 0.0, 1.0);
}

struct Spring {
    std::size_t yearAt = 0; // the index of 1 January
    int first = 0;          // days of the year
    int bloom = 0;
};

double
heatToBloom(const std::vector<WeatherDay>& days, const Spring& spring, double base, double warmer) {
    double heat = 0;
    for (int day = spring.first; day <= spring.bloom; ++day) {
        WeatherDay one = days[spring.yearAt + static_cast<std::size_t>(day) - 1];
        one.mean += warmer * shareOf(day, spring.first, spring.bloom);
        heat += heatOf(one, base);
    }
    return heat;
}

int meanBloom(const Orchard& orchard, std::size_t season) {
    double sum = 0;
    double vines = 0;
    for (const Vine& vine : orchard.vines) {
        if (vine.seasons[season].stands) {
            sum += vine.seasons[season].bloomDay;
            vines += 1;
        }
    }
    return static_cast<int>(std::nearbyint(sum / std::max(1.0, vines)));
}

// The later springs get what makes their heat up to bloom that of the first.
void fitSprings(const Orchard& orchard, std::vector<WeatherDay>& days, FieldWeather& truth) {
    for (std::size_t season = 0; season < kYears.size(); ++season) {
        const int year = kYears[season];
        const Spring spring{
            static_cast<std::size_t>(daysBetween(days.front().date, day(year, 1, 1))),
            dayOfYear(day(year, truth.heatFromMonth, 1)),
            meanBloom(orchard, season)};
        if (season == 0) {
            truth.heatToBloom = rounded(heatToBloom(days, spring, truth.heatBaseC, 0), 1);
            continue;
        }
        double low = -8;
        double high = 8;
        for (int i = 0; i < kHalvings; ++i) {
            const double middle = (low + high) / 2;
            const bool isTooWarm =
                heatToBloom(days, spring, truth.heatBaseC, middle) > truth.heatToBloom;
            (isTooWarm ? high : low) = middle;
        }
        for (int day = spring.first - kRampDays; day <= spring.bloom + kRampDays; ++day) {
            days[spring.yearAt + static_cast<std::size_t>(day) - 1].mean +=
                low * shareOf(day, spring.first, spring.bloom);
        }
    }
}

} // namespace

std::vector<WeatherDay> makeFieldWeather(Dice& dice, const Orchard& orchard, BenchTruth& truth) {
    FieldWeather& weather = truth.weather;
    weather.site = kSite;
    weather.from = day(2021, 1, 1);
    weather.to = day(2025, 10, 8);
    weather.gapFrom = day(2023, 7, 3);
    weather.gapTo = day(2023, 7, 8);
    std::vector<WeatherDay> days = rawDays(dice, weather.from, weather.to);
    addSpells(days);
    fitSprings(orchard, days, weather);
    for (const WeatherDay& one : days) {
        if (one.least() < kFreezeC) {
            weather.freezes.emplace_back(one.date, one.least());
        }
    }
    return days;
}

void writeFieldWeather(const std::vector<WeatherDay>& days, Pen& bench, const BenchTruth& truth) {
    const FieldWeather& weather = truth.weather;
    bench.begin(kHesper, weather.to, 13, 0, 0);
    for (const WeatherDay& one : days) {
        if (one.date >= weather.gapFrom && one.date <= weather.gapTo) {
            continue;
        }
        const std::string subject = "weather/" + weather.site + "/" + writeDate(one.date) + "/";
        bench.catalog(subject + "TMAX", numberValue(one.greatest()));
        bench.catalog(subject + "TMIN", numberValue(one.least()));
        if (static_cast<int>(one.date.year()) == kYears.back()) {
            bench.catalog(subject + "PRCP", numberValue(one.rain));
        }
    }
}

} // namespace bullace::demo
