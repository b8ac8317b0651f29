// How shoots grow: logistic curves through tagged shoots' lengths, when growth stops, and pruning
// weight for a metre of cordon.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace bullace::hardiness {

struct ShootLength {
    CivilDate day;
    double cm = 0;
};

// length = asymptote / (1 + exp(-rate·(day - midpoint))). Days count from the first measured.
struct ShootGrowth {
    std::size_t lengths = 0;
    CivilDate firstDay{};
    CivilDate lastDay{};
    double greatestCm = 0; // measured
    // 95 % limits of Student's t with n - 3; absent, with a remark, where there is no one curve.
    std::optional<statistics::Estimate> asymptoteCm{};
    std::optional<statistics::Estimate>
        midpointDay{}; // of fastest growth, at half of the asymptote
    std::optional<statistics::Estimate> ratePerDay{};
    std::optional<statistics::Estimate> greatestGrowthCmPerDay{}; // asymptote·rate/4
    // The day on which the curve reaches 95 % of its asymptote: midpoint + ln(19)/rate.
    std::optional<statistics::Estimate> endDay{};
    std::optional<CivilDate> endDate{};
    bool isEndBeyondMeasured = false; // the plateau was not seen
    std::optional<double> residualSdCm{};
    Remarks remarks;
};

// One shoot's lengths in any order; several of one day are all used. Least squares by the normal
// likelihood from several starts; standard errors from its curvature at the end, with the residual
// variance of n - 3 degrees of freedom. Four days with different lengths are needed.
// Source  logistic curve: Verhulst 1838; least squares and its errors: Bates & Watts 1988,
// Nonlinear
//         Regression Analysis, ch. 2 (from memory). That growth ends at 95 %: common practice, no
//         source.
// Errors: InvalidInput naming the day of a length that is below 0 or no number.
[[nodiscard]] Result<ShootGrowth> fitShootGrowth(std::span<const ShootLength> lengths);

enum class ShootTip { Growing, Slowing, Stopped };
struct TipRecord {
    CivilDate day;
    ShootTip tip = ShootTip::Growing;
};
// Growth ended after `after` (nothing: already stopped at the first visit) and on or before
// `onOrBefore` (nothing: still growing at the last).
struct GrowthEnd {
    std::size_t visits = 0;
    std::optional<CivilDate> after{};
    std::optional<CivilDate> onOrBefore{};
    Remarks remarks; // contradictions among them
};
// Slowing counts as growing. Where a stop is followed by growth, the stop that lasted counts.
[[nodiscard]] GrowthEnd growthEnd(std::span<const TipRecord> records);

// Days from the end of growth to the first frost: above 0 where the vine had stopped before it.
// Unbounded where an end is.
[[nodiscard]] statistics::Interval daysBeforeFrost(const GrowthEnd& end, CivilDate firstFrost);
// The same of a fitted end; nothing without one.
[[nodiscard]] std::optional<statistics::Estimate> daysBeforeFrost(const ShootGrowth& growth,
                                                                  CivilDate firstFrost);

struct PrunedVine {
    double kg = 0;
    double cordonCm = 0;
};
struct PruningWeight {
    std::size_t vines = 0;
    std::size_t leftOut = 0;                          // without a cordon's length
    std::optional<statistics::Estimate> kgPerMetre{}; // mean of the vines' own, limits of t
    Remarks remarks;
};
// Errors: InvalidInput naming the vine, from 1, of a weight or length below 0 or no number.
[[nodiscard]] Result<PruningWeight> pruningWeight(std::span<const PrunedVine> vines);

} // namespace bullace::hardiness
