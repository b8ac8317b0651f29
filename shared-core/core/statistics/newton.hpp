// The greatest value of a likelihood of a few parameters, its covariance, and limits by profile.
#pragma once

#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace bullace::statistics {

// A log-likelihood with its first and second derivatives at a point of p parameters.
struct Slope {
    double value = 0;
    std::vector<double> gradient; // p
    std::vector<double> hessian;  // p × p, row by row, symmetric

    // Zeros, for so many parameters.
    void clear(std::size_t parameters);
};
// Fills `out`, which comes cleared. A point outside of the domain has the value -infinity or NaN;
// its derivatives are then not looked at.
using LogLikelihood = std::function<void(std::span<const double> at, Slope& out)>;

struct Maximum {
    std::vector<double> at;
    double value = 0;
    std::vector<double> covariance; // p × p, the inverse of the observed information
    int steps = 0;

    [[nodiscard]] double standardError(std::size_t parameter) const;
    [[nodiscard]] double covarianceOf(std::size_t one, std::size_t other) const;
};

// By Newton's steps, halved until the value does not fall; where the surface is not curved down, a
// ridge is added to it first (Levenberg 1944, Q. Appl. Math. 2:164-168). Done when a further step
// would raise the value by less than 1e-14 of it, or of 1. Nothing where that is not reached in
// 200 steps, or where the surface at its end is flat in some direction: there is no maximum, or not
// one alone.
// `start` must lie inside of the domain.
[[nodiscard]] std::optional<Maximum> maximise(const LogLikelihood& likelihood,
                                              std::vector<double> start);

// The same with one parameter held where it stands in `start`; its row of the covariance is 0.
[[nodiscard]] std::optional<Maximum>
maximiseHolding(const LogLikelihood& likelihood, std::vector<double> start, std::size_t held);

// All values of one parameter that a likelihood-ratio test does not reject: where the profile lies
// no more than `drop` below the maximum (1.920729 for 95 %: half the quantile of chi squared with
// one degree of freedom). A side that never falls so far within 1,000 standard errors, or whose
// profile cannot be followed so far, is unbounded.
[[nodiscard]] Interval profileLimits(const LogLikelihood& likelihood,
                                     const Maximum& maximum,
                                     std::size_t parameter,
                                     double drop = 1.920729410347062);

} // namespace bullace::statistics
