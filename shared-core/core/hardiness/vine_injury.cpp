// Injury of whole vines, which their buds do not tell: spurs, cordon and trunk.
#include "core/fruit/sample_size.hpp"
#include "core/hardiness/bud_injury.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::hardiness {

namespace {

bool isPercent(const std::optional<double>& value) {
    return !value || (*value >= 0 && *value <= 100);
}

// A mean of percents with limits of t, kept within 0 and 100.
std::optional<statistics::Estimate> meanPercent(const std::vector<double>& values) {
    if (values.empty()) {
        return std::nullopt;
    }
    const fruit::Spread spread = fruit::spreadOf(values);
    if (!spread.sd) {
        return statistics::Estimate{spread.mean, {}, {}};
    }
    const double error = *spread.sd / std::sqrt(static_cast<double>(spread.count));
    auto mean = statistics::estimateAround(
        spread.mean, error, statistics::studentTQuantile(0.975, spread.count - 1.0));
    mean.interval = statistics::Interval{std::max(0.0, mean.interval->low),
                                         std::min(100.0, mean.interval->high)};
    return mean;
}

} // namespace

Result<VineInjurySummary> vineInjury(std::span<const VineInjury> vines) {
    VineInjurySummary summary;
    summary.vines = vines.size();
    std::vector<double> spurs;
    std::vector<double> cordons;
    DeadOf trunks;
    for (std::size_t i = 0; i < vines.size(); ++i) {
        const VineInjury& vine = vines[i];
        if (!isPercent(vine.deadSpursPercent) || !isPercent(vine.deadCordonPercent) ||
            vine.trunk.value_or(0) < 0 || vine.trunk.value_or(0) > 3) {
            return Error{ErrorCode::InvalidInput,
                         "Vine " + std::to_string(i + 1) +
                             " has a percent outside 0 to 100, or a trunk score outside 0 to 3.",
                         {}};
        }
        if (vine.deadSpursPercent) {
            spurs.push_back(*vine.deadSpursPercent);
        }
        if (vine.deadCordonPercent) {
            cordons.push_back(*vine.deadCordonPercent);
        }
        if (vine.trunk) {
            ++summary.trunks[static_cast<std::size_t>(*vine.trunk)];
            ++trunks.counted;
            trunks.dead += *vine.trunk >= 2 ? 1 : 0;
        }
    }
    summary.spursScored = spurs.size();
    summary.cordonsScored = cordons.size();
    summary.deadSpursPercent = meanPercent(spurs);
    summary.deadCordonPercent = meanPercent(cordons);
    summary.killedToGround = *deadShare(trunks);
    summary.remarks.push_back(
        {BULLACE_SENTENCE("Remark",
                          "Buds stand more cold than trunk and cordon: injury of whole vines is "
                          "told apart from that of buds."),
         {}});
    return summary;
}

} // namespace bullace::hardiness
