// Limits of a mean onset and of differences between means, by profile likelihood: they stand where
// the spread cannot be estimated, too.
#pragma once

#include "core/base/result.hpp"
#include "core/season/onset_fit.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <optional>
#include <span>

namespace bullace::season {

// 95 % limits of the location of one group of vines (of the logarithm, for its laws), ±kUnbounded
// where nothing bounds it. All locations at which some scale reaches a likelihood no further below
// the greatest than n/2 · log(1 + t²/(n - p)), t the quantile of Student's t with n - p degrees of
// freedom (p = 1): where every date is known these are exactly Student's limits, since n/2 · log(1
// + t²/(n - p)) is what the likelihood falls there; with intervals between visits the tests keep it
// to its 95 % by simulation. For fixed location the likelihood is concave in 1/scale, so that there
// is one maximum and the limits hold a single interval (Burridge 1981, J. R. Stat. Soc. B 43:41-45;
// from memory). Nothing with less than two telling onsets, where neither side is bounded, or where
// a spread of 0 has an infinite likelihood.
// Errors: those of fitOnset().
[[nodiscard]] Result<std::optional<statistics::Interval>>
locationLimits(OnsetLaw law, std::span<const OnsetInterval> onsets);

// The same of one coefficient of a fit of this design, p the number of its coefficients. Where the
// profile cannot be followed, the t interval of the fit.
[[nodiscard]] Result<statistics::Interval>
coefficientLimits(const OnsetFit& fit, const OnsetDesign& design, std::size_t coefficient);

} // namespace bullace::season
