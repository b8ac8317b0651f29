// How warm other years were by each day of the season: the band behind this year's curve.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/weather/weather_days.hpp"

#include <optional>
#include <vector>

namespace bullace::weather {

// From a day of the year, for a number of days; a season may pass into the next year.
struct SeasonSpan {
    std::chrono::month_day from = std::chrono::January / 1; // not 29 February
    int days = 365;                                         // 1 to 366
};

// Cumulated degree-days at the end of one day, over the years of the band.
struct BandDay {
    int day = 0; // from 1, the span's first
    double least = 0;
    double lowerQuartile = 0;
    double median = 0;
    double upperQuartile = 0;
    double greatest = 0;
};
struct YearCurve {
    int year = 0; // in which the span begins
    std::vector<HeatDay> days;
};
struct HeatBand {
    std::vector<BandDay> days;     // none with no complete year
    std::vector<YearCurve> curves; // of the complete years
    std::vector<int> incomplete;   // years with a gap; they are in no part of the band
    Remarks remarks;
};
struct HeatRule {
    DegreeDayMethod method = DegreeDayMethod::MeanClamped;
    Thresholds thresholds;
};

// Of the latest `atMost` complete years but `except`. Quartiles lie between the ranked years by
// linear interpolation (Hyndman & Fan 1996, Am. Stat. 50:361-365, type 7).
// Errors: those of heatSum(); InvalidInput for a span that is none.
[[nodiscard]] Result<HeatBand> heatBand(const DailyDays& record,
                                        const SeasonSpan& span,
                                        const HeatRule& rule,
                                        std::optional<int> except = {},
                                        std::size_t atMost = 10);

// One year's curve of that span, up to its first gap.
[[nodiscard]] Result<HeatSum>
heatCurve(const DailyDays& record, const SeasonSpan& span, const HeatRule& rule, int year);

// Between the sorted values; `sorted` ascending and not empty, share 0 to 1.
[[nodiscard]] double quantileOf(std::span<const double> sorted, double share);

} // namespace bullace::weather
