#include "core/season/stage_date.hpp"

#include "core/season/onset_limits.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace bullace::season {

namespace {

// Years count the same; their limits hold for each alone, so that half their mean width is no less
// than what the mean of them needs.
std::optional<StageDate> fromLimits(std::span<const YearOnset> onsets,
                                    const std::vector<int>& years) {
    StageDate date;
    for (const int year : years) {
        std::vector<OnsetInterval> vines;
        for (const YearOnset& one : onsets) {
            if (one.year == year) {
                vines.push_back(one.onset);
            }
        }
        const auto limits = locationLimits(OnsetLaw::Normal, vines);
        if (!limits || !*limits || !std::isfinite((*limits)->low) ||
            !std::isfinite((*limits)->high)) {
            return std::nullopt;
        }
        date.mean += ((*limits)->low + (*limits)->high) / 2;
        date.standardError += ((*limits)->high - (*limits)->low) / 2;
        date.degreesOfFreedom += static_cast<double>(countsOf(vines).telling()) - 1;
    }
    const auto count = static_cast<double>(years.size());
    date.mean /= count;
    date.degreesOfFreedom = std::max(1.0, date.degreesOfFreedom - 1);
    date.standardError /= count * statistics::studentTQuantile(0.975, date.degreesOfFreedom);
    return date;
}

} // namespace

Result<StageDating> stageDate(std::span<const YearOnset> onsets) {
    const auto over = overYears(onsets);
    if (!over) {
        return over.error();
    }
    StageDating made{{}, over->remarks};
    if (over->mean && over->spread) {
        const double freedom =
            static_cast<double>(over->counts.telling()) - static_cast<double>(over->years.size());
        made.date = StageDate{over->mean->value,
                              *over->spread,
                              over->mean->standardError.value_or(0),
                              std::max(1.0, freedom)};
    } else if (!over->years.empty()) {
        made.date = fromLimits(onsets, over->years);
        if (made.date) {
            made.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                     "Its mean day is taken from the limits of it, "
                                                     "and its vines as if they did not spread."),
                                    {}});
        }
    }
    return made;
}

} // namespace bullace::season
