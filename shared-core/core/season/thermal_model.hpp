// When will it: the degree-days that a stage has needed, and the day on which this season reaches
// them.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"
#include "core/weather/heat_band.hpp"

#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace bullace::season {

// A past season's day of the stage, as its vines' mean.
struct StageYear {
    int year = 0;
    double day = 0; // of the season, from 1 for 1 January
};

// What is tried: every base with every start. Single sine, without an upper threshold.
struct ThermalGrid {
    std::vector<double> basesC{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14};
    std::vector<std::chrono::month_day> starts{std::chrono::January / 1,
                                               std::chrono::January / 15,
                                               std::chrono::February / 1,
                                               std::chrono::February / 15,
                                               std::chrono::March / 1,
                                               std::chrono::March / 15,
                                               std::chrono::April / 1};
};

struct PastForecast {
    int year = 0;
    double day = 0;       // as it was
    double predicted = 0; // from the other years alone, base and start too
};

struct ThermalModel {
    double baseC = 0;
    std::chrono::month_day start;
    double needed = 0;      // degree-days from the start to the stage: the mean of the years
    double chosenError = 0; // leave-one-year-out root mean square, days, by which they were chosen
    // The same with base and start chosen anew without the year that is forecast: what a forecast
    // was off, choosing included.
    double pastError = 0;
    double calendarError = 0; // of the other years' mean date, for comparison
    std::vector<PastForecast> past;
};
struct ThermalFit {
    std::optional<ThermalModel> model; // none with fewer than three usable years
    std::vector<int> usedYears;
    std::vector<int> leftOut; // their weather has a gap before the stage, or stands twice
    Remarks remarks;
};

// Source  leave-one-year-out choice of base and start: e.g. Arnold 1959, Proc. Am. Soc. Hort. Sci.
// 74:430-445 (least error of the forecast rather than least variation of the sums); from memory.
// Errors: InvalidInput for a grid that is empty, or a day that is not finite.
[[nodiscard]] Result<ThermalFit> fitThermalModel(const weather::DailyDays& record,
                                                 std::span<const StageYear> past,
                                                 const ThermalGrid& grid = {});

struct Forecast {
    // Day of season; the interval is 95 % of what is to be expected: the weather of other years to
    // come, and the model's past error, with t of the past years less one.
    std::optional<statistics::Estimate> day{};
    std::optional<double> soFar{}; // degree-days of this season until the last known day
    std::optional<CivilDate> knownUntil{};
    std::vector<std::pair<int, double>>
        byWeather;       // other years' weather, and the day it would give
    bool isPast = false; // the season has had its degree-days: the stage should have been reached
    Remarks remarks;
};
// This season's weather up to `today` (days behind it in the record are not looked at), then each
// other year's.
[[nodiscard]] Forecast
forecastStage(const weather::DailyDays& record, const ThermalFit& fit, int year, CivilDate today);

} // namespace bullace::season
