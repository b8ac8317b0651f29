// The plan as an integer programme: one column a pair, one for each candidate's uses.
#include "core/breeding/cross_plan.hpp"

#include "core/breeding/cross_pair.hpp"
#include "core/breeding/plan_reasons.hpp"
#include "core/breeding/plan_swaps.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

namespace bullace::breeding {

namespace {

// The kinship among candidates, for that of the group.
struct GroupKinship {
    Eigen::MatrixXd kinship;
    double parents = 0; // 2 × crosses

    // c'Kc and its slope 2Kc over c, for uses in the order of the candidates.
    double of(const Eigen::VectorXd& uses, Eigen::VectorXd* slope = nullptr) const {
        const Eigen::VectorXd c = uses / parents;
        const Eigen::VectorXd kc = kinship * c;
        if (slope != nullptr) {
            *slope = 2 * kc;
        }
        return c.dot(kc);
    }
};

GroupKinship groupKinshipOf(const PlanInput& input) {
    const std::size_t n = input.candidates.size();
    GroupKinship group;
    group.kinship.resize(static_cast<Eigen::Index>(n), static_cast<Eigen::Index>(n));
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j <= i; ++j) {
            const double kinship = input.kinship(i, j).value_or(0);
            group.kinship(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) = kinship;
            group.kinship(static_cast<Eigen::Index>(j), static_cast<Eigen::Index>(i)) = kinship;
        }
    }
    group.parents = 2 * static_cast<double>(input.rules.crosses);
    return group;
}

bool isConvex(const GroupKinship& group) {
    const Eigen::Index n = group.kinship.rows();
    const Eigen::MatrixXd raised = group.kinship + 1e-8 * Eigen::MatrixXd::Identity(n, n);
    return raised.llt().info() == Eigen::Success;
}

std::vector<AllowedPair> allowedPairs(const PlanInput& input) {
    std::vector<AllowedPair> allowed;
    const std::size_t n = input.candidates.size();
    for (std::size_t m = 0; m < n; ++m) {
        for (std::size_t f = 0; f < n; ++f) {
            const bool hasMerits =
                input.candidates[m].parent.merit && input.candidates[f].parent.merit;
            if (!hasMerits || objectionTo(input, m, f)) {
                continue;
            }
            if (m == f || !isBetterTurned(input, m, f) || objectionTo(input, f, m)) {
                allowed.push_back({static_cast<std::uint32_t>(m),
                                   static_cast<std::uint32_t>(f),
                                   worthOf(input, m, f)});
            }
        }
    }
    return allowed;
}

// A pair whose species are not known counts as just within the wish.
ProgrammeRow
speciesRow(const PlanInput& input, const std::vector<AllowedPair>& pairs, std::size_t species) {
    const SpeciesWish& wish = input.rules.species[species];
    const auto crosses = static_cast<double>(input.rules.crosses);
    ProgrammeRow row{crosses * wish.fewest - 1e-9, crosses * wish.most + 1e-9, {}};
    for (std::uint32_t p = 0; p < pairs.size(); ++p) {
        const auto& one = input.candidates[pairs[p].mother].speciesShares;
        const auto& other = input.candidates[pairs[p].father].speciesShares;
        const double share = one.empty() || other.empty() ? (wish.fewest + wish.most) / 2
                                                          : (one[species] + other[species]) / 2;
        if (share != 0) {
            row.elements.emplace_back(p, share);
        }
    }
    return row;
}

// Columns: the pairs, then the candidates' uses. Uses are settled first: sets that use each
// candidate as often are often worth the same, and trying them one after the other would take for
// ever.
Programme programmeOf(const PlanInput& input, const std::vector<AllowedPair>& pairs) {
    Programme programme;
    const auto first = static_cast<std::uint32_t>(pairs.size());
    const auto crosses = static_cast<double>(input.rules.crosses);
    ProgrammeRow number{crosses, crosses, {}};
    std::vector<ProgrammeRow> uses(input.candidates.size());
    for (std::uint32_t p = 0; p < first; ++p) {
        programme.columns.push_back({pairs[p].worth, 0, 1, true});
        number.elements.emplace_back(p, 1);
        if (pairs[p].mother == pairs[p].father) {
            uses[pairs[p].mother].elements.emplace_back(p, 2);
            continue;
        }
        uses[pairs[p].mother].elements.emplace_back(p, 1);
        uses[pairs[p].father].elements.emplace_back(p, 1);
    }
    programme.rows.push_back(std::move(number));
    for (std::uint32_t i = 0; i < uses.size(); ++i) {
        const PlanCandidate& candidate = input.candidates[i];
        const double most = std::min(static_cast<double>(candidate.mostUses), 2 * crosses);
        const double fewest = static_cast<double>(candidate.fewestUses);
        programme.columns.push_back({0, std::min(fewest, most), most, true, true});
        uses[i].lower = uses[i].upper = 0;
        uses[i].elements.emplace_back(first + i, -1);
        programme.rows.push_back(std::move(uses[i]));
    }
    for (std::size_t s = 0; s < input.rules.species.size(); ++s) {
        if (!input.rules.species[s].inEachCross) {
            programme.rows.push_back(speciesRow(input, pairs, s));
        }
    }
    return programme;
}

Eigen::VectorXd usesIn(std::span<const double> values, std::size_t first) {
    return Eigen::Map<const Eigen::VectorXd>(values.data() + first,
                                             static_cast<Eigen::Index>(values.size() - first));
}

// The plane that touches c'Kc at these uses: c'Kc >= 2 c0'Kc - c0'Kc0 everywhere. In hundredths of
// the limit, so that the solver's tolerances mean something.
FindBroken withinKinship(const GroupKinship& group, double limit, std::size_t first) {
    return [&group, limit, first](
               std::span<const double> values, double margin, std::vector<ProgrammeRow>& broken) {
        const double most = limit * (1 - margin);
        Eigen::VectorXd slope;
        const double here = group.of(usesIn(values, first), &slope);
        if (here <= most) {
            return;
        }
        const double scale = 100 / std::max(most, 1e-6);
        ProgrammeRow row;
        row.upper = scale * (most + here);
        for (Eigen::Index i = 0; i < slope.size(); ++i) {
            if (slope[i] != 0) {
                row.elements.emplace_back(static_cast<std::uint32_t>(first) +
                                              static_cast<std::uint32_t>(i),
                                          scale * slope[i] / group.parents);
            }
        }
        broken.push_back(std::move(row));
    };
}

// A plan to begin with where the group's kinship is limited, in the columns of the programme.
std::vector<double>
firstSet(const PlanInput& input, const GroupKinship& group, const std::vector<AllowedPair>& pairs) {
    if (!input.rules.mostGroupKinship) {
        return {};
    }
    std::vector<std::size_t> mostUses;
    for (const PlanCandidate& candidate : input.candidates) {
        mostUses.push_back(candidate.mostUses);
    }
    const std::vector<std::size_t> chosen = plannedBySwaps(
        {pairs, mostUses, input.rules.crosses, group.kinship, *input.rules.mostGroupKinship});
    if (chosen.empty()) {
        return {};
    }
    std::vector<double> values(pairs.size() + input.candidates.size(), 0.0);
    for (const std::size_t pair : chosen) {
        values[pair] = 1;
        values[pairs.size() + pairs[pair].mother] += 1;
        values[pairs.size() + pairs[pair].father] += 1;
    }
    return values;
}

Solved solve(const PlanInput& input, const GroupKinship& group) {
    Solved solved;
    solved.pairs = allowedPairs(input);
    const Programme programme = programmeOf(input, solved.pairs);
    const FindBroken findBroken =
        input.rules.mostGroupKinship
            ? withinKinship(group, *input.rules.mostGroupKinship, solved.pairs.size())
            : FindBroken();
    solved.solution = solveProgramme(
        programme, input.rules.seconds, findBroken, firstSet(input, group, solved.pairs));
    return solved;
}

// Which rule, left out alone, would make a plan possible.
void tellWhyImpossible(const PlanInput& input, const GroupKinship& group, CrossPlan& plan) {
    const auto isPossibleWith = [&](const PlanRules& rules) {
        const PlanInput changed{input.candidates, input.pairs, rules};
        return !solve(changed, group).solution.values.empty();
    };
    PlanRules relaxed = input.rules;
    relaxed.seconds = std::min(input.rules.seconds, 2.0);
    const auto tryWithout = [&](bool isSet, const auto& change, std::string_view sentence) {
        PlanRules rules = relaxed;
        change(rules);
        if (isSet && isPossibleWith(rules)) {
            plan.remarks.push_back({sentence, {}});
        }
    };
    const std::size_t before = plan.remarks.size();
    tryWithout(
        input.rules.mostGroupKinship.has_value(),
        [](PlanRules& rules) { rules.mostGroupKinship.reset(); },
        BULLACE_SENTENCE("Remark", "The limit on the group's kinship leaves no plan."));
    tryWithout(
        input.rules.mostKinship.has_value(),
        [](PlanRules& rules) { rules.mostKinship.reset(); },
        BULLACE_SENTENCE("Remark", "The limit on the parents' kinship leaves no plan."));
    tryWithout(
        input.rules.leastOverlap.has_value(),
        [](PlanRules& rules) { rules.leastOverlap.reset(); },
        BULLACE_SENTENCE("Remark", "The overlap of bloom that is wanted leaves no plan."));
    tryWithout(
        !input.rules.species.empty(),
        [](PlanRules& rules) {
            for (SpeciesWish& wish : rules.species) {
                wish = {wish.species, 0, 1, false};
            }
        },
        BULLACE_SENTENCE("Remark", "The wanted shares of species leave no plan."));
    if (plan.remarks.size() == before) {
        plan.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "There are not enough pairs for %1 crosses: %2 are allowed, and each "
                              "candidate may be used only so often."),
             {static_cast<std::int64_t>(input.rules.crosses),
              static_cast<std::int64_t>(plan.pairs)}});
    }
}

CrossPlan planOf(const PlanInput& input, const GroupKinship& group, const Solved& solved) {
    CrossPlan plan;
    plan.method = "integer programme, branch and bound";
    plan.status = solved.solution.status;
    plan.bound = solved.solution.bound;
    plan.pairs = solved.pairs.size();
    plan.uses.assign(input.candidates.size(), 0);
    for (std::size_t p = 0; !solved.solution.values.empty() && p < solved.pairs.size(); ++p) {
        if (solved.solution.values[p] > 0.5) {
            plan.crosses.push_back(crossOf(input, solved.pairs[p].mother, solved.pairs[p].father));
            plan.worth += solved.pairs[p].worth;
            ++plan.uses[solved.pairs[p].mother];
            ++plan.uses[solved.pairs[p].father];
        }
    }
    std::ranges::stable_sort(plan.crosses, std::greater<>(), &PlannedCross::worth);
    if (!plan.crosses.empty()) {
        plan.groupKinship = group.of(usesIn(solved.solution.values, solved.pairs.size()));
    }
    if (plan.status == ProgrammeStatus::TimeIsUp) {
        plan.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The time was up before the plan was proven the best: another may "
                              "be worth %1 more in sum, and not more than that."),
             {Remark::Number{std::max(plan.bound - plan.worth, 0.0), 3}}});
    }
    if (plan.status == ProgrammeStatus::NotSolved) {
        plan.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "No plan was found in the time that was given."), {}});
    }
    return plan;
}

Status check(const PlanInput& input, const GroupKinship& group) {
    const bool isSound = !input.rules.mostGroupKinship || isConvex(group);
    return isSound ? Status()
                   : Error{ErrorCode::InvalidInput,
                           "The kinships contradict one another, so that the group's cannot be "
                           "limited. Take them from one pedigree.",
                           ""};
}

// The least c'Kc that parts of crosses could reach: columns may be taken in part, and one more, the
// kinship itself in hundredths, is made small.
double leastGroupKinship(const PlanInput& input, const GroupKinship& group) {
    const std::vector<AllowedPair> pairs = allowedPairs(input);
    Programme programme = programmeOf(input, pairs);
    for (ProgrammeColumn& column : programme.columns) {
        column.worth = 0;
        column.isWhole = column.isDecidedFirst = false;
    }
    const auto last = static_cast<std::uint32_t>(programme.columns.size());
    programme.columns.push_back({-1, 0, 100, false});
    const auto above = [&group, first = pairs.size(), last](std::span<const double> values,
                                                            double /*margin*/,
                                                            std::vector<ProgrammeRow>& broken) {
        Eigen::VectorXd slope;
        const double here = group.of(usesIn(values.first(last), first), &slope);
        ProgrammeRow row;
        row.upper = 100 * here;
        for (Eigen::Index i = 0; i < slope.size(); ++i) {
            row.elements.emplace_back(static_cast<std::uint32_t>(first) +
                                          static_cast<std::uint32_t>(i),
                                      100 * slope[i] / group.parents);
        }
        row.elements.emplace_back(last, -1);
        broken.push_back(std::move(row));
    };
    const ProgrammeSolution solution = solveProgramme(programme, input.rules.seconds, above);
    return solution.reducedCosts.empty() ? 0 : std::max(-solution.relaxation / 100, 0.0);
}

} // namespace

Result<CrossPlan> planCrosses(std::span<const PlanCandidate> candidates,
                              const PairTable& pairs,
                              const PlanRules& rules) {
    const PlanInput input{candidates, pairs, rules};
    if (const Status sound = checkPlanInput(input); !sound) {
        return sound.error();
    }
    const GroupKinship group = groupKinshipOf(input);
    if (const Status sound = check(input, group); !sound) {
        return sound.error();
    }
    const Solved solved = solve(input, group);
    CrossPlan plan = planOf(input, group, solved);
    tellUnknowns(input, plan);
    if (plan.status == ProgrammeStatus::Infeasible) {
        tellWhyImpossible(input, group, plan);
    }
    tellRefusals(input, solved, plan);
    return plan;
}

Result<std::vector<TradeOffPoint>> tradeOff(std::span<const PlanCandidate> candidates,
                                            const PairTable& pairs,
                                            PlanRules rules,
                                            std::size_t points) {
    rules.mostGroupKinship = 1.0;
    const PlanInput input{candidates, pairs, rules};
    if (const Status sound = checkPlanInput(input); !sound) {
        return sound.error();
    }
    const GroupKinship group = groupKinshipOf(input);
    if (const Status sound = check(input, group); !sound) {
        return sound.error();
    }
    std::vector<TradeOffPoint> curve;
    double least = 0;
    for (std::size_t k = 0; k < points; ++k) {
        if (k == 1) {
            least = leastGroupKinship(input, group);
        }
        const double step =
            k == 0 ? 0 : (curve.front().groupKinship - least) / static_cast<double>(points);
        rules.mostGroupKinship =
            k == 0 ? std::nullopt
                   : std::optional(curve.front().groupKinship - step * static_cast<double>(k));
        const CrossPlan plan = planOf(input, group, solve(input, group));
        curve.push_back(
            {rules.mostGroupKinship, plan.status, plan.worth, plan.bound, plan.groupKinship});
        if (k == 0 && plan.crosses.empty()) {
            break;
        }
    }
    return curve;
}

} // namespace bullace::breeding
