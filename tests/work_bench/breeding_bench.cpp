// Pedigrees of 100,000 and a million vines; plans of 40 crosses among 200 candidates.
#include "bench/measure.hpp"
#include "work_bench/work_benches.hpp"

#include "core/breeding/cross_plan.hpp"
#include "core/breeding/relationship.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <string>
#include <vector>

namespace bullace::bench {

namespace {

using namespace breeding;

double even(std::mt19937_64& dice) {
    return (static_cast<double>(dice() >> 11) + 0.5) * 0x1p-53;
}

// Vines in the order of time: one in `rarity` becomes a parent, of the latest third of parents most
// often; 8 % are selfed, 5 % have an unknown father.
Pedigree stationPedigree(std::size_t size, std::size_t rarity, std::mt19937_64& dice) {
    std::vector<PedigreeLine> lines;
    std::vector<std::size_t> parents;
    const auto pick = [&] {
        const auto recent = static_cast<double>(parents.size()) * std::cbrt(even(dice));
        return "N" + std::to_string(
                         parents[std::min(static_cast<std::size_t>(recent), parents.size() - 1)]);
    };
    std::string mother;
    std::string father;
    for (std::size_t i = 0; i < size; ++i) {
        PedigreeLine line{"N" + std::to_string(i), "", "", i + 2};
        if (i >= 600) {
            if (i % 10 == 0) { // ten seedlings of a cross
                const double kind = even(dice);
                mother = pick();
                father = kind < 0.08 ? mother : kind < 0.13 ? "" : pick();
            }
            line.mother = mother;
            line.father = father;
        }
        if (i < 600 || dice() % rarity == 0) {
            parents.push_back(i);
        }
        lines.push_back(std::move(line));
    }
    std::ranges::shuffle(lines, dice);
    auto pedigree = makePedigree(lines);
    must(pedigree.ok(), "a pedigree");
    return std::move(*pedigree);
}

void benchPedigreeOf(std::size_t size, const std::string& name, double target) {
    std::mt19937_64 dice(11);
    const Pedigree pedigree = stationPedigree(size, 23, dice);
    std::vector<double> f;
    InverseRelationship inverse;
    const double forF = secondsOf([&] { f = inbreeding(pedigree); });
    const double forInverse = secondsOf([&] { inverse = inverseRelationship(pedigree, f); });
    must(inverse.inverse.size == size && std::isfinite(inverse.logDeterminant), "an inverse");
    const double mean = std::accumulate(f.begin(), f.end(), 0.0) / static_cast<double>(size);
    must(mean > 0.01 && mean < 0.9, "inbreeding");
    tell("inbreeding and A-inverse of " + name + " vines",
         forF + forInverse,
         "s",
         "under " + std::to_string(target).substr(0, 3) + " s",
         forF + forInverse < target);
}

struct PlanCase {
    std::vector<PlanCandidate> candidates;
    PairTable pairs;
    PlanRules rules;
};

// 200 of the youngest vines of a pedigree: 100 female, 80 perfect, 20 male.
PlanCase planCase() {
    std::mt19937_64 dice(3);
    const Pedigree pedigree = stationPedigree(5000, 23, dice);
    const std::vector<double> f = inbreeding(pedigree);
    PlanCase made;
    std::vector<std::int32_t> members;
    for (std::size_t i = 0; i < 200; ++i) {
        const std::size_t vine = pedigree.size() - 1 - i * 7;
        members.push_back(static_cast<std::int32_t>(vine));
        PlanCandidate one;
        one.parent.id = pedigree.names[vine];
        one.parent.sex = i % 10 < 5   ? FlowerSex::Female
                         : i % 10 < 9 ? FlowerSex::Perfect
                                      : FlowerSex::Male;
        one.parent.merit = 10 * (even(dice) + even(dice) + even(dice) - 1.5);
        one.parent.inbreeding = f[vine];
        one.speciesShares = {even(dice)};
        made.candidates.push_back(one);
    }
    const std::vector<double> kinship = kinshipMatrix(pedigree, f, members);
    for (const double k : kinship) {
        made.pairs.push_back({k, even(dice), dice() % 5 == 0});
    }
    made.rules.crosses = 40;
    made.rules.leastOverlap = 0.3;
    made.rules.mostKinship = 0.125;
    made.rules.species = {{"munsoniana", 0.3, 0.6, false}};
    return made;
}

void tellPlan(const std::string& what, const PlanCase& of) {
    double gap = 0;
    bool isProven = false;
    double group = 0;
    const double seconds = secondsOf([&] {
        const auto plan = planCrosses(of.candidates, of.pairs, of.rules);
        must(plan.ok() && plan->crosses.size() == 40, "a plan of 40 crosses");
        gap = plan->bound - plan->worth;
        isProven = plan->status == ProgrammeStatus::Optimal;
        group = plan->groupKinship;
    });
    tell(what + (isProven ? ", proven the best"
                          : ", at most " + std::to_string(gap) + " below the best"),
         seconds,
         "s",
         "under 5 s",
         seconds < 5,
         "\"group kinship\":" + std::to_string(group));
}

} // namespace

void benchPedigree() {
    benchPedigreeOf(100000, "100,000", 0.3);
    benchPedigreeOf(1000000, "1,000,000", 4.0);
}

void benchCrossPlan() {
    PlanCase of = planCase();
    of.rules.seconds = 4;
    tellPlan("40 crosses among 200 candidates", of);
    const auto free = planCrosses(of.candidates, of.pairs, of.rules);
    must(free.ok(), "a plan");
    for (const int percent : {97, 90, 80, 70, 60}) {
        of.rules.mostGroupKinship = free->groupKinship * percent / 100;
        tellPlan("40 crosses among 200 candidates, group kinship " + std::to_string(percent) +
                     " % of the best's",
                 of);
    }
    of.rules.mostGroupKinship.reset();
    for (PlanCandidate& one : of.candidates) {
        one.parent.sex = FlowerSex::Perfect;
    }
    tellPlan("40 crosses among 200 perfect candidates", of);
}

} // namespace bullace::bench
