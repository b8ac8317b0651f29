#include "core/season/onset_summary.hpp"

#include "core/season/onset_limits.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::season {

namespace {

using statistics::Estimate;

statistics::Interval backFromLogarithm(const statistics::Interval& limits) {
    return {std::exp(limits.low), std::exp(limits.high)};
}

// Standard deviations of the standard laws.
double deviationOf(OnsetLaw law) {
    return law == OnsetLaw::Logistic ? 1.813799364234218 : 1; // π/√3
}

Result<LawEstimate> estimateOf(const OnsetFit& fit, std::span<const OnsetInterval> onsets) {
    LawEstimate made{
        fit.law, fit.coefficient(0), fit.scale * deviationOf(fit.law), fit.logLikelihood};
    const auto limits = locationLimits(fit.law, onsets);
    if (!limits) {
        return limits.error();
    }
    if (*limits) {
        made.middle.interval = **limits;
    }
    if (isOfLogarithm(fit.law)) {
        // By the delta method.
        made.middle.value = std::exp(made.middle.value);
        made.middle.standardError = made.middle.value * made.middle.standardError.value_or(0);
        if (made.middle.interval) {
            made.middle.interval = backFromLogarithm(*made.middle.interval);
        }
    }
    return made;
}

bool isForLaw(OnsetLaw law, std::span<const OnsetInterval> onsets) {
    return !isOfLogarithm(law) ||
           std::ranges::all_of(onsets, [](const OnsetInterval& one) { return one.by > 0; });
}

} // namespace

const LawEstimate* OnsetSummary::of(OnsetLaw law) const {
    const auto found = std::ranges::find(laws, law, &LawEstimate::law);
    return found == laws.end() ? nullptr : &*found;
}

Result<OnsetSummary> summariseOnset(std::span<const OnsetInterval> onsets) {
    auto steps = turnbull(onsets);
    if (!steps) {
        return steps.error();
    }
    OnsetSummary summary;
    summary.steps = std::move(*steps);
    summary.counts = summary.steps.counts;
    summary.half = summary.steps.where(0.5);
    for (const OnsetLaw law : {OnsetLaw::Normal, OnsetLaw::Logistic, OnsetLaw::LogNormal}) {
        if (!isForLaw(law, onsets)) {
            continue;
        }
        const auto fitting = fitOnset(law, {onsets});
        if (!fitting) {
            return fitting.error();
        }
        if (fitting->fit) {
            const auto estimate = estimateOf(*fitting->fit, onsets);
            if (!estimate) {
                return estimate.error();
            }
            summary.laws.push_back(*estimate);
        } else if (law == OnsetLaw::Normal) {
            summary.remarks = fitting->remarks;
        }
    }
    if (const LawEstimate* normal = summary.of(OnsetLaw::Normal)) {
        summary.limits = normal->middle.interval;
    } else if (auto limits = locationLimits(OnsetLaw::Normal, onsets); limits) {
        summary.limits = *limits;
    }
    return summary;
}

Remark inWords(const Estimate& difference, OnsetUnit unit) {
    const bool isEarlier = difference.value < 0;
    const auto bounds = difference.interval.value_or(statistics::Interval{});
    const std::vector<Remark::Part> parts{Remark::Number{std::abs(difference.value), 1},
                                          Remark::Number{isEarlier ? -bounds.high : bounds.low, 1},
                                          Remark::Number{isEarlier ? -bounds.low : bounds.high, 1}};
    if (unit == OnsetUnit::Days) {
        return isEarlier
                   ? Remark{BULLACE_SENTENCE("Remark", "%1 days earlier, 95 %: %2 to %3."), parts}
                   : Remark{BULLACE_SENTENCE("Remark", "%1 days later, 95 %: %2 to %3."), parts};
    }
    return isEarlier
               ? Remark{BULLACE_SENTENCE("Remark", "%1 degree-days earlier, 95 %: %2 to %3."),
                        parts}
               : Remark{BULLACE_SENTENCE("Remark", "%1 degree-days later, 95 %: %2 to %3."), parts};
}

} // namespace bullace::season
