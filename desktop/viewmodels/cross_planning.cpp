#include "desk/cross_planning.hpp"

#include "core/season/station_merit.hpp"
#include "quick/words.hpp"

#include <tuple>
#include <utility>

namespace bullace::desk::planning {

using breeding::PlanRules;
using quick::fromText;
using quick::toText;

namespace {

constexpr double kLikelyToMeet = 0.5;

std::optional<double> limitOf(const Chosen& chosen, const QString& key) {
    const QString now = chosen.at(key);
    return now == kNone ? std::nullopt : std::optional(now.toDouble());
}

PlanRules rulesOf(const Chosen& chosen, const Planned& planned) {
    PlanRules rules;
    rules.crosses = chosen.at(kCrosses).toUInt();
    rules.mostKinship = limitOf(chosen, kKinship);
    rules.mostGroupKinship = limitOf(chosen, kGroup);
    if (chosen.at(kPollen) != kNone) {
        rules.leastOverlap = kLikelyToMeet;
    }
    rules.additiveVariance = planned.merits.additiveVariance;
    rules.seconds = kPlanSeconds;
    const QString taxon = chosen.at(kTaxon);
    const qsizetype bar = taxon.lastIndexOf(QLatin1Char('|'));
    rules.species.clear();
    for (const std::string& species : planned.ground.species) {
        breeding::SpeciesWish wish{species};
        if (bar > 0 && fromText(species) == taxon.left(bar)) {
            wish.fewest = taxon.mid(bar + 1).toDouble() / 100;
        }
        rules.species.push_back(std::move(wish));
    }
    return rules;
}

season::PlanWish wishOf(const Chosen& chosen) {
    season::PlanWish wish;
    wish.mostUses = chosen.at(kUses).toUInt();
    wish.mostCandidates = kMostCandidates;
    wish.isLessBetter = chosen.at(kBetter) == QStringLiteral("less");
    for (const QString& status : chosen.at(kStatuses).split(u',', Qt::SkipEmptyParts)) {
        wish.statuses.insert(toText(status));
    }
    return wish;
}

} // namespace

Result<Planned> planned(const StudyGround& ground, const Chosen& chosen) {
    Planned made;
    auto merits =
        season::meritsOf(ground.notes, ground.catalogue->blocks(), toText(chosen.at(kBy)));
    if (!merits) {
        return merits.error();
    }
    made.merits = std::move(*merits);
    const bool isOwn = chosen.at(kTable) == QStringLiteral("own");
    auto candidates = isOwn ? season::planOfOwn(ground.notes, made.merits, wishOf(chosen))
                            : season::planOf(ground.notes, made.merits, wishOf(chosen));
    if (!candidates) {
        return candidates.error();
    }
    made.ground = std::move(*candidates);
    made.rules = rulesOf(chosen, made);
    const auto& [of, pairs] = std::tie(made.ground.candidates, made.ground.pairs);
    if (isOwn) {
        auto own =
            breeding::checkOwnCrosses(season::openCrosses(ground.notes), of, pairs, made.rules);
        if (!own) {
            return own.error();
        }
        made.own = std::move(*own);
        return made;
    }
    auto plan = breeding::planCrosses(of, pairs, made.rules);
    if (!plan) {
        return plan.error();
    }
    made.plan = std::move(*plan);
    PlanRules quick = made.rules;
    quick.seconds = kCurveSeconds;
    quick.mostGroupKinship.reset();
    if (auto curve = breeding::tradeOff(of, pairs, quick, kCurvePoints)) {
        made.curve = std::move(*curve);
    }
    return made;
}

} // namespace bullace::desk::planning
