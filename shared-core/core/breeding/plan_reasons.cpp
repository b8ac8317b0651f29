// Counts and compares what the plan took with what it did not.
#include "core/breeding/plan_reasons.hpp"

#include <algorithm>
#include <functional>

namespace bullace::breeding {

namespace {

Refusal
outbid(const PlanInput& input, const CrossPlan& plan, const AllowedPair& pair, double cost) {
    Refusal refusal{pair.mother, pair.father, pair.worth, WhyNot::Outbid, {}, cost};
    for (const std::size_t i : {refusal.mother, refusal.father}) {
        if (plan.uses[i] >= input.candidates[i].mostUses) {
            refusal.why = WhyNot::UsesUp;
            refusal.reason = {
                BULLACE_SENTENCE("Remark", "%1 is in %2 crosses already, as often as it may be."),
                {input.candidates[i].parent.id, static_cast<std::int64_t>(plan.uses[i])}};
            return refusal;
        }
    }
    refusal.reason = {BULLACE_SENTENCE("Remark", "Other crosses serve the plan as a whole better."),
                      {}};
    return refusal;
}

} // namespace

bool isBetterTurned(const PlanInput& input, std::size_t mother, std::size_t father) {
    const auto sexOf = [&input](std::size_t i) { return input.candidates[i].parent.sex; };
    const bool isFemale = sexOf(mother) == FlowerSex::Female;
    const bool isOtherFemale = sexOf(father) == FlowerSex::Female;
    if (isFemale != isOtherFemale) {
        return isOtherFemale;
    }
    const double here = input.known(mother, father).bloomOverlap.value_or(0);
    const double there = input.known(father, mother).bloomOverlap.value_or(0);
    return here != there ? there > here : father < mother;
}

void tellUnknowns(const PlanInput& input, CrossPlan& plan) {
    std::int64_t withoutMerit = 0;
    std::int64_t withoutSex = 0;
    for (const PlanCandidate& candidate : input.candidates) {
        withoutMerit += candidate.parent.merit ? 0 : 1;
        withoutSex += candidate.parent.sex ? 0 : 1;
    }
    std::int64_t withoutKinship = 0;
    for (const PlannedCross& cross : plan.crosses) {
        withoutKinship += input.kinship(cross.mother, cross.father) ? 0 : 1;
    }
    std::int64_t withoutSpecies = 0;
    for (const PlanCandidate& candidate : input.candidates) {
        withoutSpecies += candidate.speciesShares.empty() && !input.rules.species.empty() ? 1 : 0;
    }
    const auto tell = [&plan](std::int64_t count, std::string_view sentence) {
        if (count > 0) {
            plan.remarks.push_back({sentence, {count}});
        }
    };
    tell(withoutMerit,
         BULLACE_SENTENCE("Remark", "Candidates left out because they have no prediction: %1."));
    tell(withoutSex, BULLACE_SENTENCE("Remark", "Candidates of unknown flower sex: %1."));
    tell(withoutSpecies,
         BULLACE_SENTENCE("Remark",
                          "Candidates whose share of the wanted species is not known: %1. On "
                          "average over the crosses it is taken as the middle of what is wanted."));
    tell(withoutKinship,
         BULLACE_SENTENCE("Remark",
                          "Crosses in the plan of parents whose kinship is not known: %1."));
}

void tellRefusals(const PlanInput& input, const Solved& solved, CrossPlan& plan) {
    if (plan.crosses.empty()) {
        return;
    }
    const double least = plan.crosses.back().worth;
    const std::size_t n = input.candidates.size();
    std::vector<char> isAllowed(n * n, 0);
    for (std::size_t p = 0; p < solved.pairs.size(); ++p) {
        const AllowedPair& pair = solved.pairs[p];
        isAllowed[pair.mother * n + pair.father] = 1;
        isAllowed[pair.father * n + pair.mother] = 1;
        if (solved.solution.values[p] < 0.5 && pair.worth >= least) {
            plan.refusals.push_back(outbid(input, plan, pair, solved.solution.reducedCosts[p]));
        }
    }
    for (std::size_t m = 0; m < n; ++m) {
        for (std::size_t f = 0; f < n; ++f) {
            const bool hasMerits =
                input.candidates[m].parent.merit && input.candidates[f].parent.merit;
            if (m == f || !hasMerits || isAllowed[m * n + f] != 0) {
                continue;
            }
            // Of two forbidden directions the one is told.
            const double worth = worthOf(input, m, f);
            const bool isTold = isBetterTurned(input, m, f) && objectionTo(input, f, m);
            if (worth >= least && !isTold) {
                const Objection objection = *objectionTo(input, m, f);
                plan.refusals.push_back({m, f, worth, objection.why, objection.reason, {}});
            }
        }
    }
    std::ranges::stable_sort(plan.refusals, std::greater<>(), &Refusal::worth);
    if (plan.refusals.size() > input.rules.refusalsTold) {
        plan.remarks.push_back(
            {BULLACE_SENTENCE(
                 "Remark", "Further pairs worth as much as the least of the plan, not told: %1."),
             {static_cast<std::int64_t>(plan.refusals.size() - input.rules.refusalsTold)}});
        plan.refusals.resize(input.rules.refusalsTold);
    }
}

} // namespace bullace::breeding
