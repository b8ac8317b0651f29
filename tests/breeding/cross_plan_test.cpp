// The computed plan against trying every set of crosses, its reasons, and her own list.
#include "core/breeding/cross_plan.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::breeding;

namespace {

PlanCandidate candidate(const std::string& id, FlowerSex sex, double merit) {
    PlanCandidate of;
    of.parent.id = id;
    of.parent.sex = sex;
    of.parent.merit = merit;
    of.parent.chromosomes = 40;
    of.parent.inbreeding = 0;
    return of;
}

struct Station {
    std::vector<PlanCandidate> candidates;
    PairTable pairs;
    PlanRules rules;

    PairKnown& pair(std::size_t mother, std::size_t father) {
        return pairs[mother * candidates.size() + father];
    }
    CrossPlan plan() const {
        auto made = planCrosses(candidates, pairs, rules);
        REQUIRE(made.ok());
        return std::move(*made);
    }
};

Station station(std::vector<PlanCandidate> candidates, std::size_t crosses) {
    Station made{std::move(candidates), {}, {}};
    made.pairs.assign(made.candidates.size() * made.candidates.size(), PairKnown{0.0, 1.0, false});
    for (std::size_t i = 0; i < made.candidates.size(); ++i) {
        made.pair(i, i).kinship = 0.5;
    }
    made.rules.crosses = crosses;
    return made;
}

Station threeFemalesTwoPerfect(std::size_t crosses) {
    return station({candidate("F1", FlowerSex::Female, 5),
                    candidate("F2", FlowerSex::Female, 3),
                    candidate("F3", FlowerSex::Female, 1),
                    candidate("P1", FlowerSex::Perfect, 4),
                    candidate("P2", FlowerSex::Perfect, 2)},
                   crosses);
}

// Kinships of candidates that descend from a few founders at random: those of a real pedigree.
Station randomStation(std::mt19937_64& dice) {
    std::vector<PlanCandidate> candidates;
    const std::size_t n = 3 + dice() % 4;
    std::vector<std::vector<double>> genes(n, std::vector<double>(3, 0));
    for (std::size_t i = 0; i < n; ++i) {
        candidates.push_back(candidate("A" + std::to_string(i),
                                       static_cast<FlowerSex>(dice() % 3),
                                       static_cast<double>(dice() % 20)));
        candidates.back().mostUses = 1 + dice() % 3;
        candidates.back().speciesShares = {static_cast<double>(dice() % 5) / 4};
        for (int k = 0; k < 4; ++k) {
            genes[i][dice() % 3] += 0.25;
        }
    }
    Station made = station(std::move(candidates), 1 + dice() % 3);
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) {
            double alike = i == j ? 0.25 : 0;
            for (std::size_t k = 0; k < 3; ++k) {
                alike += genes[i][k] * genes[j][k] / 2;
            }
            made.pair(i, j).kinship = alike;
            made.pair(i, j).bloomOverlap = static_cast<double>(dice() % 5) / 4;
            made.pair(i, j).hasStoredPollen = dice() % 4 == 0;
        }
    }
    made.rules.leastOverlap = 0.4;
    made.rules.mostKinship = 0.2 + static_cast<double>(dice() % 4) / 10;
    made.rules.species = {{"rotundifolia", 0.25, 0.75, dice() % 2 == 0}};
    if (dice() % 2 == 0) {
        made.rules.mostGroupKinship = 0.15 + static_cast<double>(dice() % 10) / 50;
    }
    return made;
}

// Whether the pair may be in a plan, from the words of the issue alone.
bool isAllowed(Station& of, std::size_t m, std::size_t f) {
    const PairKnown& known = of.pair(m, f);
    const double share =
        (of.candidates[m].speciesShares[0] + of.candidates[f].speciesShares[0]) / 2;
    const bool isWished = !of.rules.species[0].inEachCross || (share >= 0.25 && share <= 0.75);
    return m != f && of.candidates[m].parent.sex != FlowerSex::Male &&
           of.candidates[f].parent.sex != FlowerSex::Female && isWished &&
           (*known.bloomOverlap >= 0.4 || known.hasStoredPollen) &&
           *known.kinship <= *of.rules.mostKinship;
}

struct Cross {
    std::size_t one;
    std::size_t other;
};

// Whether the set keeps what is asked of a set; its worth.
std::optional<double> worthOf(Station& of, const std::vector<Cross>& set) {
    std::vector<double> uses(of.candidates.size(), 0);
    double worth = 0;
    double share = 0;
    for (const Cross& cross : set) {
        uses[cross.one] += 1;
        uses[cross.other] += 1;
        worth +=
            (*of.candidates[cross.one].parent.merit + *of.candidates[cross.other].parent.merit) / 2;
        share += (of.candidates[cross.one].speciesShares[0] +
                  of.candidates[cross.other].speciesShares[0]) /
                 2;
    }
    const auto crosses = static_cast<double>(set.size());
    const bool isWished = of.rules.species[0].inEachCross ||
                          (share >= 0.25 * crosses - 1e-9 && share <= 0.75 * crosses + 1e-9);
    double group = 0;
    for (std::size_t i = 0; i < uses.size(); ++i) {
        if (uses[i] > static_cast<double>(of.candidates[i].mostUses)) {
            return {};
        }
        for (std::size_t j = 0; j < uses.size(); ++j) {
            group += uses[i] * uses[j] * *of.pair(i, j).kinship / (4 * crosses * crosses);
        }
    }
    const bool isWithin = group <= of.rules.mostGroupKinship.value_or(1) * (1 + 1e-6);
    return isWished && isWithin ? std::optional(worth) : std::nullopt;
}

std::optional<double> byTrying(Station& of) {
    std::vector<Cross> pairs;
    for (std::size_t i = 0; i < of.candidates.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (isAllowed(of, i, j) || isAllowed(of, j, i)) {
                pairs.push_back({i, j});
            }
        }
    }
    std::optional<double> best;
    std::vector<Cross> set;
    const std::function<void(std::size_t)> extend = [&](std::size_t from) {
        if (set.size() == of.rules.crosses) {
            const auto worth = worthOf(of, set);
            best = worth && (!best || *worth > *best) ? worth : best;
            return;
        }
        for (std::size_t p = from; p < pairs.size(); ++p) {
            set.push_back(pairs[p]);
            extend(p + 1);
            set.pop_back();
        }
    };
    extend(0);
    return best;
}

bool holds(const Remarks& remarks, const std::string& words) {
    return std::ranges::any_of(remarks, [&words](const Remark& remark) {
        return inEnglish(remark).find(words) != std::string::npos;
    });
}

} // namespace

TEST_CASE("the plan is the best of all sets of crosses that keep the rules") {
    int planned = 0;
    CHECK(rc::check([&planned](std::uint64_t seed) {
        std::mt19937_64 dice(seed);
        Station of = randomStation(dice);
        const auto best = byTrying(of);
        const auto plan = planCrosses(of.candidates, of.pairs, of.rules);
        RC_ASSERT(plan.ok());
        if (!best) {
            RC_ASSERT(plan->status == ProgrammeStatus::Infeasible);
            RC_ASSERT(plan->crosses.empty());
            RC_ASSERT(!plan->remarks.empty());
            return;
        }
        ++planned;
        RC_ASSERT(plan->status == ProgrammeStatus::Optimal);
        RC_ASSERT(plan->crosses.size() == of.rules.crosses);
        RC_ASSERT(std::abs(plan->worth - *best) < 1e-6);
        std::vector<Cross> set;
        for (const PlannedCross& cross : plan->crosses) {
            RC_ASSERT(isAllowed(of, cross.mother, cross.father));
            set.push_back({cross.mother, cross.father});
        }
        RC_ASSERT(worthOf(of, set).has_value());
    }));
    CHECK(planned > 10);
}

TEST_CASE("females are mothers and need no emasculation, two of them are never crossed") {
    const CrossPlan plan = threeFemalesTwoPerfect(3).plan();
    REQUIRE(plan.crosses.size() == 3);
    // F1×P1 4.5, F1×P2 3.5, F2×P1 3.5; P1×P2 is worth 3.
    CHECK(plan.worth == doctest::Approx(11.5));
    CHECK(plan.crosses[0].mother == 0);
    CHECK(plan.crosses[0].father == 3);
    CHECK(plan.crosses[0].needsEmasculation == false);
    CHECK(plan.crosses[0].sexes.possible.at(0) == SexShares{0, 0.5, 0.5});
    const auto two = std::ranges::find_if(
        plan.refusals, [](const Refusal& of) { return of.mother + of.father == 1; });
    REQUIRE(two != plan.refusals.end());
    CHECK(two->why == WhyNot::NoSeed);
    CHECK(inEnglish(two->reason).find("pollen does not function") != std::string::npos);
}

TEST_CASE("a parent that is used up, and what it would cost to force its cross in") {
    Station of = threeFemalesTwoPerfect(2);
    of.candidates[3].mostUses = 1;
    const CrossPlan plan = of.plan();
    CHECK(plan.worth == doctest::Approx(4.5 + 3.5));
    const auto used = std::ranges::find_if(plan.refusals, [](const Refusal& refusal) {
        return refusal.mother == 1 && refusal.father == 3;
    });
    REQUIRE(used != plan.refusals.end());
    CHECK(used->why == WhyNot::UsesUp);
    // F2×P1 with F1×P2 is worth 7 as against 8; the relaxation may tell less, never more.
    REQUIRE(used->leastLoss);
    CHECK(*used->leastLoss >= 0);
    CHECK(*used->leastLoss <= 1 + 1e-9);
}

TEST_CASE("stored pollen stands in for bloom that does not overlap") {
    Station of = threeFemalesTwoPerfect(1);
    of.rules.leastOverlap = 0.5;
    of.pair(0, 3).bloomOverlap = 0.1;
    CHECK(of.plan().worth == doctest::Approx(3.5));
    CHECK(of.plan().refusals.at(0).why == WhyNot::BloomApart);
    of.pair(0, 3).hasStoredPollen = true;
    CHECK(of.plan().worth == doctest::Approx(4.5));
    CHECK(of.plan().crosses[0].usesStoredPollen);
}

TEST_CASE("a rule that leaves no plan is named") {
    Station of = threeFemalesTwoPerfect(2);
    of.rules.species = {{"munsoniana", 0.9, 1, false}};
    for (PlanCandidate& one : of.candidates) {
        one.speciesShares = {0.5};
    }
    const CrossPlan plan = of.plan();
    CHECK(plan.crosses.empty());
    CHECK(plan.status == ProgrammeStatus::Infeasible);
    CHECK(holds(plan.remarks, "The wanted shares of species leave no plan."));
    CHECK(holds(threeFemalesTwoPerfect(50).plan().remarks, "not enough pairs for 50 crosses"));
}

TEST_CASE("what is not known leaves a candidate in and is told, but one without merit stays out") {
    Station of = threeFemalesTwoPerfect(2);
    of.candidates[0].parent.merit.reset();
    of.candidates[1].parent.sex.reset();
    of.pair(1, 3).kinship.reset();
    of.pair(3, 1).kinship.reset();
    const CrossPlan plan = of.plan();
    CHECK(plan.crosses.size() == 2);
    CHECK(plan.uses[0] == 0);
    CHECK(holds(plan.remarks, "no prediction: 1."));
    CHECK(holds(plan.remarks, "unknown flower sex: 1."));
    CHECK(holds(plan.remarks, "kinship is not known: 1."));
}

TEST_CASE("38 by 40 is planned with a warning") {
    Station of = threeFemalesTwoPerfect(1);
    of.candidates[3].parent.chromosomes = 38;
    const CrossPlan plan = of.plan();
    CHECK(plan.crosses.at(0).chromosomes.number == 39);
    CHECK(holds(plan.crosses[0].warnings, "almost sterile"));
}

TEST_CASE("less kinship costs merit along the curve") {
    std::mt19937_64 dice(5);
    std::vector<PlanCandidate> candidates;
    for (int i = 0; i < 12; ++i) {
        candidates.push_back(candidate("A" + std::to_string(i), FlowerSex::Perfect, 12 - i));
    }
    Station of = station(std::move(candidates), 6);
    for (std::size_t i = 0; i < 6; ++i) {
        for (std::size_t j = 0; j < 6; ++j) {
            of.pair(i, j).kinship = i == j ? 0.5 : 0.25; // the better half are full sibs
        }
    }
    const auto curve = tradeOff(of.candidates, of.pairs, of.rules, 4);
    REQUIRE(curve.ok());
    REQUIRE(curve->size() == 4);
    CHECK_FALSE(curve->front().mostGroupKinship);
    for (std::size_t k = 1; k < 4; ++k) {
        const TradeOffPoint& point = (*curve)[k];
        REQUIRE(point.status == ProgrammeStatus::Optimal);
        CHECK(point.worth <= (*curve)[k - 1].worth + 1e-9);
        CHECK(point.groupKinship <= *point.mostGroupKinship * (1 + 1e-5));
    }
    CHECK(curve->back().worth < curve->front().worth);
}

TEST_CASE("usefulness prefers the parents that leave more spread") {
    Station of = threeFemalesTwoPerfect(1);
    of.candidates[3].parent.inbreeding = 0.9;
    of.candidates[4].parent.merit = 3.9;
    CHECK(of.plan().crosses[0].father == 3);
    of.rules.additiveVariance = 4;
    of.rules.spreadIntensity = 1.5;
    CHECK(of.plan().crosses[0].father == 4);
}

TEST_CASE("wrong input of a plan is refused by name") {
    const auto message = [](const std::function<void(Station&)>& change) {
        Station of = threeFemalesTwoPerfect(1);
        change(of);
        const auto plan = planCrosses(of.candidates, of.pairs, of.rules);
        return plan.ok() ? "" : plan.error().message;
    };
    CHECK(message([](Station& of) { of.candidates[1].parent.id = "F1"; }) ==
          "F1 is twice among the candidates.");
    CHECK(message([](Station& of) { of.candidates[1].parent.merit = std::nan(""); }).find("F2") !=
          std::string::npos);
    CHECK(message([](Station& of) { of.pair(0, 1).kinship = 1.5; }).find("F1 and F2") !=
          std::string::npos);
    CHECK(message([](Station& of) { of.pairs.pop_back(); }).find("table") != std::string::npos);
    CHECK(message([](Station& of) { of.rules.crosses = 0; }).find("from 1") != std::string::npos);
    CHECK(message([](Station& of) { of.candidates[0].fewestUses = 9; }).find("F1") == 0);
    CHECK(message([](Station& of) {
              of.pair(0, 1).kinship = of.pair(1, 0).kinship = 1;
              of.rules.mostGroupKinship = 0.2;
          }).find("contradict") != std::string::npos);
}

TEST_CASE("her own list is commented and never overruled") {
    Station of = threeFemalesTwoPerfect(1);
    of.candidates[3].mostUses = 1;
    const std::vector<OwnCross> list{{"F1", {"P1"}, 2},
                                     {"F1", {"F2"}, 3},
                                     {"P1", {"P1"}, 4},
                                     {"F2", {}, 5},
                                     {"F3", {"P1", "P2"}, 6},
                                     {"F1", {"P1"}, 7},
                                     {"X9", {"P1"}, 8}};
    const auto checked = checkOwnCrosses(list, of.candidates, of.pairs, of.rules);
    REQUIRE(checked.ok());
    REQUIRE(checked->size() == list.size());
    CHECK((*checked)[0].merit->mean == 4.5);
    CHECK(holds((*checked)[1].warnings, "F2 has female flowers: its pollen does not function."));
    CHECK(holds((*checked)[2].warnings, "P1 is selfed."));
    CHECK((*checked)[2].merit->inbreeding == 0.5);
    CHECK(holds((*checked)[2].warnings, "From this cross on P1 is used more than 1 times."));
    CHECK(holds((*checked)[3].warnings, "Open pollination"));
    CHECK_FALSE((*checked)[3].merit);
    CHECK((*checked)[4].merit->mean == 2.0);
    CHECK(holds((*checked)[4].warnings, "shares of the pollen"));
    CHECK(holds((*checked)[5].warnings, "stands on line 2 already"));
    CHECK(holds((*checked)[6].warnings, "Nothing is known of X9."));
}
