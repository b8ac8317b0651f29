// The share of vines that have reached a stage by each day, without assuming any law.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/season/onset_interval.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace bullace::season {

// A share of the vines that reached the stage somewhere in (after, by]; where in it, nothing can
// say. Both the same: on that day. `by` is kUnbounded for what was not seen to reach it, `after` is
// -kUnbounded for what was reached before any visit.
struct StepMass {
    double after = 0;
    double by = 0;
    double mass = 0;      // above 0; all of them are 1 together
    double cumulated = 0; // this one included
};

struct StepCurve {
    std::vector<StepMass> steps; // ascending
    double logLikelihood = 0;
    double excess = 0; // of the Kuhn-Tucker conditions: 0 where no mass can be moved with gain
    std::size_t candidates = 0; // intervals that could have held mass
    OnsetCounts counts;
    Remarks remarks;

    // The step in which the share passes `share` (0 to 1): the bounds of that quantile.
    [[nodiscard]] std::optional<StepMass> where(double share) const;
};

// The nonparametric maximum likelihood estimate. Mass can lie on the innermost intervals alone, at
// ties an end comes before an open start (Turnbull 1976, J. R. Stat. Soc. B 38:290-295); it is
// found by steps of expectation and maximisation, then by projected Newton steps (Bertsekas 1982,
// SIAM J. Control Optim. 20:221-246), until no gradient is above 1 + 1e-9 of the number of vines
// (Gentleman & Geyer 1994, Biometrika 81:618-623). Unseen onsets are counted and left out; without
// any other there are no steps, and a remark.
// Errors: InvalidInput where a bound is NaN, or `after` is above `by`; the message says which one.
[[nodiscard]] Result<StepCurve> turnbull(std::span<const OnsetInterval> onsets);

} // namespace bullace::season
