// Where a fitted line η = a + b·x reaches a wanted η, and how precisely that is known.
#pragma once

#include "core/statistics/estimate.hpp"

#include <optional>

namespace bullace::hardiness {

struct FittedLine {
    double a = 0;
    double b = 0;
    double varianceA = 0;
    double covariance = 0;
    double varianceB = 0;

    // All three times `factor`, which heterogeneity asks for.
    [[nodiscard]] FittedLine spread(double factor) const;
};

// x at which the line reaches `eta`: (eta - a)/b. b must not be 0.
[[nodiscard]] double crossingOf(const FittedLine& line, double eta);

// Standard error of that x by the delta method (first order).
[[nodiscard]] double crossingError(const FittedLine& line, double eta);

// g = (quantile/b)²·Var(b): how near the slope is to none. From 1 on, the limits below do not
// exist.
[[nodiscard]] double fiellerG(const FittedLine& line, double quantile);

// Fiducial limits of that x; nothing where g is 1 or more: then no finite range is excluded.
// Source  Finney 1971, Probit Analysis, 3rd ed., eq. 4.35; Fieller 1954, J. R. Stat. Soc. B
//         16:175-185 (both cited from memory).
[[nodiscard]] std::optional<statistics::Interval>
fiellerLimits(const FittedLine& line, double eta, double quantile);

} // namespace bullace::hardiness
