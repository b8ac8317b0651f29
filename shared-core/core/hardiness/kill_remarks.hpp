// What a curve of kill has to say about itself in words.
#pragma once

#include "core/hardiness/kill_curve.hpp"

namespace bullace::hardiness {

// Why there is no curve, how far it may be trusted, and that it is an estimate. The last holds of
// every one.
[[nodiscard]] Remarks remarksOn(const KillCurve& curve, bool hasControl);
[[nodiscard]] Remarks remarksOn(const SlopeComparison& comparison);
[[nodiscard]] Remark remarkOnControl();

} // namespace bullace::hardiness
