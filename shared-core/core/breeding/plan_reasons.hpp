// What a plan of crosses says about itself: what was not known, and why each attractive pair is not
// in it.
#pragma once

#include "core/breeding/cross_pair.hpp"

namespace bullace::breeding {

struct AllowedPair {
    std::uint32_t mother;
    std::uint32_t father;
    double worth;
};

struct Solved {
    std::vector<AllowedPair> pairs;
    ProgrammeSolution solution;
};

// Of both directions of a cross the better one: whether the other way round is preferred.
[[nodiscard]] bool isBetterTurned(const PlanInput& input, std::size_t mother, std::size_t father);

// Candidates left out, and what is not known of the others.
void tellUnknowns(const PlanInput& input, CrossPlan& plan);

// The worthiest pairs that are not in the plan, and why.
void tellRefusals(const PlanInput& input, const Solved& solved, CrossPlan& plan);

} // namespace bullace::breeding
