#include "core/weather/winkler.hpp"

#include <algorithm>
#include <array>

namespace bullace::weather {

namespace {

constexpr std::array<double, 7> kCelsius{850, 1111, 1389, 1667, 1944, 2222, 2700};
constexpr std::array<double, 7> kFahrenheit{1500, 2000, 2500, 3000, 3500, 4000, 4900};
constexpr double kBaseC = 10;

} // namespace

std::string_view nameOf(WinklerClass which) {
    constexpr std::array<std::string_view, 8> kNames{
        "too cool", "Ia", "Ib", "II", "III", "IV", "V", "too hot"};
    return kNames[static_cast<std::size_t>(which)];
}

WinklerClass winklerClass(double sum, TemperatureUnit unit) {
    const auto& limits = unit == TemperatureUnit::Celsius ? kCelsius : kFahrenheit;
    // The last class holds its upper limit: only more than that is too hot.
    const auto above = std::upper_bound(limits.begin(), limits.end() - 1, sum);
    if (above == limits.end() - 1 && sum > limits.back()) {
        return WinklerClass::TooHot;
    }
    return static_cast<WinklerClass>(above - limits.begin());
}

int winklerClass1944(double fahrenheitDays) {
    constexpr std::array<double, 4> kUpTo{2500, 3000, 3500, 4000};
    return static_cast<int>(std::ranges::lower_bound(kUpTo, fahrenheitDays) - kUpTo.begin()) + 1;
}

WinklerSeason winklerOf(const DailyDays& record, int year, Hemisphere where, TemperatureUnit unit) {
    using namespace std::chrono;
    const std::chrono::year begins(year);
    const Period season = where == Hemisphere::North
                              ? Period{begins / April / 1, begins / October / 31}
                              : Period{begins / October / 1, (begins + years(1)) / April / 30};
    WinklerSeason made{year, unit, {}, {}, daysOf(record, season), {}};
    made.remarks = made.days.remarks;
    const auto heat = heatSum(DegreeDayMethod::MeanClamped, made.days.days, {kBaseC, {}});
    if (!made.days.isComplete() || !heat || heat->days.empty()) {
        made.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                 "The season of %1 is not complete: it has no sum "
                                                 "and no class."),
                                {std::int64_t{year}}});
        return made;
    }
    made.sum = heat->days.back().sum * (unit == TemperatureUnit::Celsius ? 1 : 1.8);
    made.winklerClass = winklerClass(*made.sum, unit);
    return made;
}

} // namespace bullace::weather
