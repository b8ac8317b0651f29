// The law by which the vines of an accession reach a stage, fitted to intervals as they are: no
// interval is replaced by its middle.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/season/onset_interval.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace bullace::season {

// Normal and logistic on the time itself, the others on its logarithm (times above 0).
enum class OnsetLaw { Normal, Logistic, LogNormal, LogLogistic, Weibull, Exponential };
[[nodiscard]] std::string_view nameOf(OnsetLaw law);
[[nodiscard]] bool isOfLogarithm(OnsetLaw law);

// Location of each onset = its row of covariates · coefficients.
struct OnsetDesign {
    std::span<const OnsetInterval> onsets; // n
    std::span<const double> covariates{};  // n × columns, row by row; empty: an intercept alone
    std::size_t columns = 1;
};

// T = location + scale·W, or log T of the laws of the logarithm; W standard normal, logistic, or
// the least extreme value (Weibull; exponential with the scale 1).
struct OnsetFit {
    OnsetLaw law = OnsetLaw::Normal;
    std::vector<double> coefficients;
    double scale = 1;
    std::optional<double> logScaleError{}; // standard error of log scale; none where it is fixed
    std::vector<double> covariance; // of the coefficients, then of log scale where it is fitted
    double logLikelihood = 0;
    OnsetCounts counts;

    [[nodiscard]] double standardError(std::size_t coefficient) const;
    [[nodiscard]] std::size_t degreesOfFreedom() const; // telling onsets less coefficients
    // weights · coefficients with its 95 % interval. The standard error is that of the likelihood;
    // the interval is a t interval, the error being widened by √(n/(n - p)): exact where every date
    // is known (Student 1908, Biometrika 6:1-25), and kept to its 95 % for visits days apart by
    // simulation in the tests. `weights` as long as the coefficients.
    [[nodiscard]] statistics::Estimate combination(std::span<const double> weights) const;
    // The same of one coefficient.
    [[nodiscard]] statistics::Estimate coefficient(std::size_t which) const;
};

struct OnsetFitting {
    std::optional<OnsetFit> fit; // none where there is no maximum, or too few vines; see remarks
    OnsetCounts counts;
    Remarks remarks;
};

// Maximum likelihood, by Newton's steps on the coefficients and the logarithm of the scale. Unseen
// onsets are counted and left out. No fit where all are on one side, all share a day (the spread
// could be 0), or there are not more telling onsets than coefficients.
// Errors: InvalidInput where the shapes do not fit, a covariate is not finite, a bound is NaN or in
// the wrong order, or a time is not above 0 for a law of the logarithm (an `after` of 0 or below
// counts as unbounded there).
// Source  Odell, Anderson & D'Agostino 1992, Biometrics 48:951-959 (interval-censored regression).
[[nodiscard]] Result<OnsetFitting> fitOnset(OnsetLaw law, const OnsetDesign& design);

} // namespace bullace::season
