// The variances at which the restricted likelihood of a mixed model is greatest.
#pragma once

#include "core/trials/mixed_equations_matrix.hpp"

#include <vector>

namespace bullace::trials {

struct Search {
    Variances at;
    double logLikelihood = 0;
    std::vector<Parameter> free; // those that are not held at 0
    std::vector<Parameter> held; // variances on their boundary
    bool hasConverged = false;
    bool isSingular = false; // a covariance matrix on its boundary: correlations of exactly 1
    int evaluations = 0;
};

// By steps of the average information, halved until the likelihood rises; a variance that they lead
// below 0 is held at 0 and let go again where the likelihood rises from there. Where they do not
// arrive, by BOBYQA (Powell 2009, DAMTP 2009/NA06) over the roots of the covariance matrices.
// Nothing where the equations cannot be factored anywhere: the response is fitted exactly.
[[nodiscard]] std::optional<Search> searchVariances(MixedEquations& equations);

// The same without a search.
[[nodiscard]] std::optional<Search> atVariances(MixedEquations& equations, Variances known);

} // namespace bullace::trials
