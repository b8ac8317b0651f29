// A good plan under a tight limit on the group's kinship, found by exchanging one cross for
// another: what an exact search then begins with. Inside of cross_plan.
#pragma once

#include "core/breeding/plan_reasons.hpp"

#include <Eigen/Core>
#include <cstddef>
#include <vector>

namespace bullace::breeding {

struct SwapQuestion {
    const std::vector<AllowedPair>& pairs;
    const std::vector<std::size_t>& mostUses; // of each candidate
    std::size_t crosses = 1;
    const Eigen::MatrixXd& kinship; // of the candidates
    double limit = 1;               // on c'Kc, c the uses over twice the crosses
};

// Places of the chosen pairs; empty where none was found that keeps the limit and the uses. Each
// exchange is the best one for one cross; kinship has a price, which is halved towards the least
// with which the limit is kept. Deterministic.
// Source  Lagrange's relaxation as in Fisher 1981, Manage. Sci. 27:1-18.
[[nodiscard]] std::vector<std::size_t> plannedBySwaps(const SwapQuestion& question);

} // namespace bullace::breeding
