// The last frost of spring, the first of autumn, and each freeze with its lowest temperature.
#pragma once

#include "core/base/remark.hpp"
#include "core/weather/weather_days.hpp"

#include <optional>
#include <vector>

namespace bullace::weather {

// A frost is a day whose least temperature is at or below the threshold. Spring ends and autumn
// begins at midsummer, 15 July in the north and 15 January in the south.
struct FrostYear {
    int year = 0; // of midsummer
    double thresholdC = 0;
    std::optional<CivilDate> lastOfSpring{};
    std::optional<CivilDate> firstOfAutumn{};
    std::optional<int> daysBetweenThem{}; // without frost
    std::optional<double> lowest{};       // °C, of the days that are known
    // No day without a least temperature lies between the frost, or half a year back, and
    // midsummer; and so on: the date cannot be another.
    bool isSpringCertain = false;
    bool isAutumnCertain = false;
    Remarks remarks;
};
// `year` is that of midsummer; half a year on either side of it is looked at.
[[nodiscard]] FrostYear
frostsOf(const DailyDays& record, int year, Hemisphere where, double thresholdC = 0);

// Consecutive days whose least is at or below the threshold.
struct Freeze {
    CivilDate first;
    CivilDate last;
    double lowest = 0; // °C
    CivilDate lowestOn;
    bool isBesideGap = false; // the day before or behind it is not known: it may have been longer
};
[[nodiscard]] std::vector<Freeze>
freezesOf(const DailyDays& record, const Period& period, double thresholdC = 0);

} // namespace bullace::weather
