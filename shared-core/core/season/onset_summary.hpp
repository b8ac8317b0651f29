// What the vines of one accession say together in one year.
#pragma once

#include "core/season/onset_fit.hpp"
#include "core/season/turnbull.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace bullace::season {

struct LawEstimate {
    OnsetLaw law = OnsetLaw::Normal;
    statistics::Estimate middle; // mean and median of the normal and logistic law, else the median
    double spread = 0;           // standard deviation; of the laws of the logarithm of log time
    double logLikelihood = 0;
};

// All three laws that have a maximum stand side by side; the greatest log-likelihood fits best. The
// interval of `middle` is by profile likelihood (locationLimits).
struct OnsetSummary {
    OnsetCounts counts;
    StepCurve steps;                // without a law
    std::optional<StepMass> half{}; // the step in which half of the vines have reached the stage
    std::vector<LawEstimate> laws;  // normal, logistic, log-normal
    // 95 % limits of the normal mean, also where its spread cannot be estimated.
    std::optional<statistics::Interval> limits{};
    Remarks remarks;

    [[nodiscard]] const LawEstimate* of(OnsetLaw law) const;
};
// Errors: those of turnbull() and fitOnset(). Times of 0 or below have no log-normal law.
[[nodiscard]] Result<OnsetSummary> summariseOnset(std::span<const OnsetInterval> onsets);

// "9.0 days earlier, 95 %: 6.1 to 11.9." Unit: days, or degree-days.
enum class OnsetUnit { Days, DegreeDays };
[[nodiscard]] Remark inWords(const statistics::Estimate& difference, OnsetUnit unit);

} // namespace bullace::season
