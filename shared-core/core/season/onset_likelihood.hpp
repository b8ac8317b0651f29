// The likelihood of onsets under a law, for the fit and its limits alone: equal onsets joined, and
// derivatives by location and log scale.
#pragma once

#include "core/base/result.hpp"
#include "core/season/onset_fit.hpp"
#include "core/statistics/newton.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace bullace::season {

// Onsets with the same bounds and covariates count together.
struct WeighedOnset {
    double low = 0; // on the law's own axis
    double high = 0;
    double weight = 1;
    std::size_t row = 0; // of the covariates
};

struct OnsetProblem {
    OnsetLaw law;
    std::size_t columns;
    std::vector<WeighedOnset> onsets;
    std::vector<double> covariates; // as given, or ones
    double jacobian = 0;            // of exact times, for the laws of the logarithm
    OnsetCounts counts;

    [[nodiscard]] std::span<const double> row(const WeighedOnset& one) const {
        return std::span(covariates).subspan(one.row * columns, columns);
    }
    [[nodiscard]] bool hasScale() const { return law != OnsetLaw::Exponential; }
};

// Errors as of fitOnset().
[[nodiscard]] Result<OnsetProblem> problemOf(OnsetLaw law, const OnsetDesign& design);

// First and second derivatives of one onset's log-likelihood by location and log scale.
struct LocalSlope {
    double value = 0;
    double byPlace = 0;
    double byScale = 0;
    double placePlace = 0;
    double placeScale = 0;
    double scaleScale = 0;
};
[[nodiscard]] LocalSlope
localSlope(OnsetLaw law, const WeighedOnset& onset, double place, double scale);

// At the coefficients, then log scale where it is fitted. `out` comes cleared.
void likelihoodAt(const OnsetProblem& problem, std::span<const double> at, statistics::Slope& out);

} // namespace bullace::season
