#include "core/weather/heat_band.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::weather {

namespace {

bool isSpan(const SeasonSpan& span) {
    const bool isLeapDay = span.from == std::chrono::February / 29;
    return span.from.ok() && !isLeapDay && span.days >= 1 && span.days <= 366;
}

Period periodOf(const SeasonSpan& span, int year) {
    const CivilDate first = std::chrono::year(year) / span.from.month() / span.from.day();
    return {first, addDays(first, span.days - 1)};
}

// Double methods need one day more, of which only the least is used.
bool needsNextDay(DegreeDayMethod method) {
    return method == DegreeDayMethod::DoubleSine || method == DegreeDayMethod::DoubleTriangle;
}

void fillDays(HeatBand& band, int days) {
    std::vector<double> sums(band.curves.size());
    for (int day = 1; day <= days; ++day) {
        for (std::size_t i = 0; i < sums.size(); ++i) {
            sums[i] = band.curves[i].days[static_cast<std::size_t>(day - 1)].sum;
        }
        std::ranges::sort(sums);
        band.days.push_back({day,
                             sums.front(),
                             quantileOf(sums, 0.25),
                             quantileOf(sums, 0.5),
                             quantileOf(sums, 0.75),
                             sums.back()});
    }
}

void remarkOn(HeatBand& band) {
    for (const int year : band.incomplete) {
        band.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "%1 is not in the band: days of it are not known."),
             {std::int64_t{year}}});
    }
    if (band.curves.empty()) {
        band.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "No other year is complete: there is no band."), {}});
    }
}

} // namespace

double quantileOf(std::span<const double> sorted, double share) {
    const double at = std::clamp(share, 0.0, 1.0) * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::size_t>(std::floor(at));
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    return sorted[below] + (at - std::floor(at)) * (sorted[above] - sorted[below]);
}

Result<HeatSum>
heatCurve(const DailyDays& record, const SeasonSpan& span, const HeatRule& rule, int year) {
    if (!isSpan(span)) {
        return Error{ErrorCode::InvalidInput,
                     "A season begins on a day of every year and has 1 to 366 days.",
                     {}};
    }
    Period period = periodOf(span, year);
    period.last = addDays(period.last, needsNextDay(rule.method) ? 1 : 0);
    auto sum = heatSum(rule.method, daysOf(record, period).days, rule.thresholds);
    if (sum && needsNextDay(rule.method)) {
        const auto whole = static_cast<std::size_t>(span.days);
        sum->days.resize(std::min(sum->days.size(), whole));
        // The day behind the span is a gap of its own, which is none of the span's.
        std::erase_if(sum->gaps, [&](const HeatGap& gap) { return gap.first == period.last; });
    }
    return sum;
}

Result<HeatBand> heatBand(const DailyDays& record,
                          const SeasonSpan& span,
                          const HeatRule& rule,
                          std::optional<int> except,
                          std::size_t atMost) {
    HeatBand band;
    const std::vector<int> years = yearsOf(record);
    for (auto year = years.rbegin(); year != years.rend(); ++year) {
        if (*year == except || band.curves.size() >= atMost) {
            continue;
        }
        auto sum = heatCurve(record, span, rule, *year);
        if (!sum) {
            return sum.error();
        }
        if (sum->days.size() == static_cast<std::size_t>(span.days)) {
            band.curves.push_back({*year, std::move(sum->days)});
        } else {
            band.incomplete.push_back(*year);
        }
    }
    std::ranges::reverse(band.curves);
    std::ranges::reverse(band.incomplete);
    if (!band.curves.empty()) {
        fillDays(band, span.days);
    }
    remarkOn(band);
    return band;
}

} // namespace bullace::weather
