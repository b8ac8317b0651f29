// A curve of kill where some die without any treatment: the share that dies anyway is estimated
// with the curve, from a control and from the mild doses.
#pragma once

#include "core/hardiness/dose_fit.hpp"
#include "core/hardiness/spearman_karber.hpp"

#include <optional>
#include <span>

namespace bullace::hardiness {

// p = c + (1 - c)·F(intercept + slope·x); rows of the control have p = c.
struct NaturalMortalityFit {
    Link link = Link::Logit;
    double intercept = 0;
    double slope = 0;
    double natural = 0; // c, 0 to 1
    double interceptError = 0;
    double slopeError = 0;
    std::optional<double> naturalError{}; // none where c is 0: the edge of what it may be
    statistics::Interval naturalLimits{}; // profile, 0 to 1
    double logLikelihood = 0;             // with the binomial coefficients
    GoodnessOfFit goodness;               // of the rows and the control
};

// The dose that kills `part` of those that would have lived.
struct NaturalMortalityPoint {
    double part = 0.5;
    double x = 0;
    double error = 0; // delta method
    statistics::Interval delta{};
    statistics::Interval profile{};
};

struct NaturalMortality {
    NaturalMortalityFit fit;
    std::vector<NaturalMortalityPoint> points; // in the order of `parts`
};

// Maximum likelihood for all three together; standard errors from the observed information. Where
// the greatest likelihood lies at c = 0 the curve is that of fitDoses(). Nothing where there is no
// one finite maximum with a slope above 0.
// Source  Abbott 1925, J. Econ. Entomol. 18:265-267; Finney 1971, Probit Analysis, ch. 7.
// `rows` must satisfy checkDoses(); the control likewise; each part above 0 and below 1.
[[nodiscard]] std::optional<NaturalMortality> fitNaturalMortality(std::span<const DoseRow> rows,
                                                                  const Control& control,
                                                                  Link link,
                                                                  std::span<const double> parts);

} // namespace bullace::hardiness
