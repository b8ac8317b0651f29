// The heat of a growing season by the classes of the Winkler index.
#pragma once

#include "core/weather/weather_days.hpp"

#include <optional>
#include <string_view>

namespace bullace::weather {

enum class WinklerClass { TooCool, Ia, Ib, II, III, IV, V, TooHot };
[[nodiscard]] std::string_view nameOf(WinklerClass which); // "Ia", "too cool"

// The limits in °C are no exact conversions of those in °F: a sum is classified in the unit it is
// in, here by Jones et al. 2010 (Aust. J. Grape Wine Res. 16:313-326, as tabulated later): a sum at
// a limit belongs to the class above. The sum is not below 0.
[[nodiscard]] WinklerClass winklerClass(double sum, TemperatureUnit unit);
// The five classes of Amerine & Winkler 1944, Hilgardia 15:493-673, in °F days: up to 2500, 3000,
// 3500, 4000, and more.
[[nodiscard]] int winklerClass1944(double fahrenheitDays);

// Σ max(0, daily mean - 10 °C (50 °F)) from 1 April to 31 October in the north, 1 October to 30
// April in the south (named by the year in which it begins). Daily, and not by means of months,
// which hide the cold days of a warm month. A season with a lacking day has neither sum nor class.
struct WinklerSeason {
    int year = 0;
    TemperatureUnit unit = TemperatureUnit::Celsius;
    std::optional<double> sum{}; // degree-days of that unit
    std::optional<WinklerClass> winklerClass{};
    PeriodDays days;
    Remarks remarks;
};
[[nodiscard]] WinklerSeason
winklerOf(const DailyDays& record, int year, Hemisphere where, TemperatureUnit unit);

} // namespace bullace::weather
