// One pair of candidates: what is expected of it, and what a plan's rules say to it.
#pragma once

#include "core/breeding/cross_plan.hpp"

namespace bullace::breeding {

// The input of a plan, as its parts look at it.
struct PlanInput {
    std::span<const PlanCandidate> candidates;
    const PairTable& pairs;
    const PlanRules& rules;

    [[nodiscard]] const PairKnown& known(std::size_t mother, std::size_t father) const {
        return pairs[mother * candidates.size() + father];
    }
    // Either way round; of a candidate with itself from its inbreeding where it is not in the
    // table.
    [[nodiscard]] std::optional<double> kinship(std::size_t one, std::size_t other) const;
};

// Errors  as planCrosses().
[[nodiscard]] Status checkPlanInput(const PlanInput& input);

// Both have a merit where it is used.
[[nodiscard]] PlannedCross crossOf(const PlanInput& input, std::size_t mother, std::size_t father);

// What the rules have against it; nothing where it may be in a plan.
struct Objection {
    WhyNot why = WhyNot::NotWanted;
    Remark reason;
};
[[nodiscard]] std::optional<Objection>
objectionTo(const PlanInput& input, std::size_t mother, std::size_t father);

// Merit and spread as one number; both candidates have a merit.
[[nodiscard]] double worthOf(const PlanInput& input, std::size_t mother, std::size_t father);

} // namespace bullace::breeding
