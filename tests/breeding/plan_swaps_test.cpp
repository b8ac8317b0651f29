// Plans under a tight limit on the kinship of the group.
#include "core/breeding/cross_plan.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace bullace::breeding;

namespace {

// Sixty perfect candidates in families of five full sisters, the best families far ahead.
struct Families {
    Families() {
        constexpr std::size_t kCandidates = 60;
        for (std::size_t i = 0; i < kCandidates; ++i) {
            PlanCandidate candidate;
            candidate.parent.id = "V" + std::to_string(100 + i);
            candidate.parent.sex = FlowerSex::Perfect;
            candidate.parent.merit =
                10.0 - static_cast<double>(i / 5) + 0.1 * static_cast<double>(i * 7 % 5);
            candidate.mostUses = 4;
            candidates.push_back(std::move(candidate));
        }
        for (std::size_t i = 0; i < kCandidates; ++i) {
            for (std::size_t j = 0; j < kCandidates; ++j) {
                PairKnown pair;
                pair.kinship = i == j ? 0.5 : i / 5 == j / 5 ? 0.25 : 0.01;
                pair.hasStoredPollen = true;
                pairs.push_back(pair);
            }
        }
        rules.crosses = 15;
    }
    std::vector<PlanCandidate> candidates;
    PairTable pairs;
    PlanRules rules;
};

} // namespace

TEST_CASE("however tight the limit on the group's kinship, a plan that keeps it is found at once") {
    Families families;
    const auto free = planCrosses(families.candidates, families.pairs, families.rules);
    REQUIRE(free.ok());
    REQUIRE(free->status == ProgrammeStatus::Optimal);
    families.rules.seconds = 0.4;
    for (const double share : {0.9, 0.75, 0.6, 0.5}) {
        families.rules.mostGroupKinship = share * free->groupKinship;
        const auto plan = planCrosses(families.candidates, families.pairs, families.rules);
        REQUIRE(plan.ok());
        REQUIRE(plan->crosses.size() == families.rules.crosses);
        CHECK(plan->groupKinship <= *families.rules.mostGroupKinship * (1 + 1e-5));
        CHECK(plan->worth <= free->worth + 1e-6); // a limit costs something
        CHECK(plan->worth <= plan->bound + 1e-6);
        CHECK(std::ranges::all_of(plan->uses, [](std::size_t uses) { return uses <= 4; }));
    }
}
