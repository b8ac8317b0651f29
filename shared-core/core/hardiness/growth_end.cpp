// The end of growth from shoot tips, against frost, and pruning weight: what needs no curve.
#include "core/fruit/sample_size.hpp"
#include "core/hardiness/shoot_growth.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace bullace::hardiness {

GrowthEnd growthEnd(std::span<const TipRecord> records) {
    std::vector<TipRecord> sorted(records.begin(), records.end());
    std::ranges::sort(sorted, {}, &TipRecord::day);
    GrowthEnd end;
    end.visits = sorted.size();
    bool wasStopped = false;
    bool grewAgain = false;
    for (const TipRecord& record : sorted) {
        if (record.tip != ShootTip::Stopped) {
            grewAgain = grewAgain || wasStopped;
            end.after = record.day;
            end.onOrBefore.reset();
        } else if (!end.onOrBefore && record.day != end.after) {
            end.onOrBefore = record.day;
        }
        wasStopped = wasStopped || record.tip == ShootTip::Stopped;
    }
    if (sorted.empty()) {
        end.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "No shoot tips were looked at: nothing is known."), {}});
    } else if (!end.onOrBefore) {
        end.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "Still growing at the last visit, on %1."),
             {sorted.back().day}});
    } else if (!end.after) {
        end.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "Growth had already stopped at the first visit, on %1."),
             {sorted.front().day}});
    }
    if (grewAgain) {
        end.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                "A stop was followed by growth: the stop that "
                                                "lasted counts."),
                               {}});
    }
    return end;
}

statistics::Interval daysBeforeFrost(const GrowthEnd& end, CivilDate firstFrost) {
    statistics::Interval days;
    if (end.onOrBefore) {
        days.low = daysBetween(*end.onOrBefore, firstFrost);
    }
    if (end.after) {
        days.high = daysBetween(*end.after, firstFrost);
    }
    return days;
}

Result<PruningWeight> pruningWeight(std::span<const PrunedVine> vines) {
    PruningWeight weight;
    std::vector<double> perMetre;
    for (std::size_t i = 0; i < vines.size(); ++i) {
        const PrunedVine& vine = vines[i];
        if (!(vine.kg >= 0 && vine.kg <= 1e4) || !(vine.cordonCm >= 0 && vine.cordonCm <= 1e6)) {
            return Error{ErrorCode::InvalidInput,
                         "Vine " + std::to_string(i + 1) +
                             " has a pruning weight or cordon length that cannot be one.",
                         {}};
        }
        if (vine.cordonCm > 0) {
            perMetre.push_back(vine.kg / (vine.cordonCm / 100));
        } else {
            ++weight.leftOut;
        }
    }
    weight.vines = perMetre.size();
    const fruit::Spread spread = fruit::spreadOf(perMetre);
    if (spread.sd) {
        const double error = *spread.sd / std::sqrt(static_cast<double>(spread.count));
        weight.kgPerMetre = statistics::estimateAround(
            spread.mean, error, statistics::studentTQuantile(0.975, spread.count - 1.0));
    } else if (spread.count == 1) {
        weight.kgPerMetre = statistics::Estimate{spread.mean, {}, {}};
        weight.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "One vine alone: how far vines differ is not known."), {}});
    }
    if (weight.leftOut > 0) {
        weight.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "Vines without a cordon's length, left out: %1."),
             {static_cast<std::int64_t>(weight.leftOut)}});
    }
    return weight;
}

} // namespace bullace::hardiness
