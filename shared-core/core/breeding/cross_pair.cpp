// Looks at one pair of candidates at a time.
#include "core/breeding/cross_pair.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::breeding {

namespace {

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), ""};
}

bool isShare(double value) {
    return value >= 0 && value <= 1; // false of NaN
}

bool isShareOrUnknown(const std::optional<double>& value) {
    return !value || isShare(*value);
}

Status checkCandidate(const PlanCandidate& candidate, const PlanRules& rules) {
    const CrossParent& parent = candidate.parent;
    if (candidate.fewestUses > candidate.mostUses) {
        return wrong(parent.id + " is to be used more often than it may be.");
    }
    constexpr double kGreatest = 1e9;
    for (const auto& value : {parent.merit, parent.meritErrorVariance}) {
        if (value && !(std::abs(*value) <= kGreatest)) {
            return wrong("The prediction of " + parent.id + " is no number that can be used.");
        }
    }
    if (!isShareOrUnknown(parent.inbreeding)) {
        return wrong("The inbreeding of " + parent.id + " is not between 0 and 1.");
    }
    const bool isSound = candidate.speciesShares.empty() ||
                         (candidate.speciesShares.size() == rules.species.size() &&
                          std::ranges::all_of(candidate.speciesShares, isShare));
    return isSound ? Status()
                   : wrong("The shares of species in " + parent.id +
                           " are not one for each wish, from 0 to 1.");
}

Status checkRules(const PlanRules& rules) {
    for (const SpeciesWish& wish : rules.species) {
        if (!isShare(wish.fewest) || !isShare(wish.most) || wish.fewest > wish.most) {
            return wrong("The wanted share of " + wish.species +
                         " is not a range between 0 and 1.");
        }
    }
    if (!isShareOrUnknown(rules.mostKinship) || !isShareOrUnknown(rules.mostGroupKinship) ||
        !isShareOrUnknown(rules.leastOverlap)) {
        return wrong("A limit on kinship or on the overlap of bloom is not between 0 and 1.");
    }
    if (!(rules.seconds > 0) || !std::isfinite(rules.spreadIntensity) ||
        (rules.additiveVariance &&
         !(*rules.additiveVariance >= 0 && *rules.additiveVariance < 1e18))) {
        return wrong("The time, the intensity or the additive variance of the plan is no number "
                     "that can be used.");
    }
    return rules.crosses > 0 && rules.crosses <= 100000
               ? Status()
               : wrong("A plan has from 1 to 100000 crosses.");
}

std::optional<double>
shareOf(const PlanInput& input, std::size_t mother, std::size_t father, std::size_t species) {
    const auto& one = input.candidates[mother].speciesShares;
    const auto& other = input.candidates[father].speciesShares;
    return one.empty() || other.empty() ? std::nullopt
                                        : std::optional((one[species] + other[species]) / 2);
}

bool isBloomApart(const PlanInput& input, std::size_t mother, std::size_t father) {
    const PairKnown& known = input.known(mother, father);
    return mother != father && input.rules.leastOverlap && known.bloomOverlap &&
           *known.bloomOverlap < *input.rules.leastOverlap;
}

using Found = std::optional<Objection>;

Found objectionToSexes(const CrossParent& mother, const CrossParent& father) {
    if (mother.sex == FlowerSex::Male) {
        return Objection{
            WhyNot::NoSeed,
            {BULLACE_SENTENCE("Remark", "%1 has male flowers and sets no fruit."), {mother.id}}};
    }
    if (father.sex == FlowerSex::Female) {
        return Objection{
            WhyNot::NoSeed,
            {BULLACE_SENTENCE("Remark", "%1 has female flowers: its pollen does not function."),
             {father.id}}};
    }
    return {};
}

Found objectionToRoles(const PlanInput& input, std::size_t mother, std::size_t father) {
    if (mother == father && !input.rules.hasSelfings) {
        return Objection{WhyNot::NotWanted,
                         {BULLACE_SENTENCE("Remark", "Selfings are not wanted in this plan."), {}}};
    }
    if (!input.candidates[mother].mayBeMother) {
        return Objection{WhyNot::NotWanted,
                         {BULLACE_SENTENCE("Remark", "%1 is not to be a mother."),
                          {input.candidates[mother].parent.id}}};
    }
    if (!input.candidates[father].mayBeFather) {
        return Objection{WhyNot::NotWanted,
                         {BULLACE_SENTENCE("Remark", "%1 is not to be a father."),
                          {input.candidates[father].parent.id}}};
    }
    return {};
}

Found objectionToSpecies(const PlanInput& input, std::size_t mother, std::size_t father) {
    for (std::size_t s = 0; s < input.rules.species.size(); ++s) {
        const SpeciesWish& wish = input.rules.species[s];
        const auto share = shareOf(input, mother, father, s);
        if (!wish.inEachCross) {
            continue;
        }
        if (!share) {
            return Objection{WhyNot::OtherSpecies,
                             {BULLACE_SENTENCE("Remark",
                                               "The seedlings' share of %1 is not known, and each "
                                               "cross is to have a certain one."),
                              {wish.species}}};
        }
        if (*share < wish.fewest - 1e-9 || *share > wish.most + 1e-9) {
            return Objection{WhyNot::OtherSpecies,
                             {BULLACE_SENTENCE("Remark", "The seedlings would be %1 % %2."),
                              {Remark::Number{*share * 100, 1}, wish.species}}};
        }
    }
    return {};
}

} // namespace

std::optional<double> PlanInput::kinship(std::size_t one, std::size_t other) const {
    if (const auto& kinship = known(one, other).kinship) {
        return kinship;
    }
    if (one == other) {
        return (1 + candidates[one].parent.inbreeding.value_or(0)) / 2;
    }
    return known(other, one).kinship;
}

Status checkPlanInput(const PlanInput& input) {
    const std::size_t n = input.candidates.size();
    if (input.pairs.size() != n * n) {
        return wrong("The table of pairs does not fit the candidates.");
    }
    std::set<std::string> ids;
    for (const PlanCandidate& candidate : input.candidates) {
        if (candidate.parent.id.empty() || !ids.insert(candidate.parent.id).second) {
            return wrong(candidate.parent.id.empty()
                             ? "A candidate has no name."
                             : candidate.parent.id + " is twice among the candidates.");
        }
        if (const Status sound = checkCandidate(candidate, input.rules); !sound) {
            return sound.error();
        }
    }
    for (std::size_t k = 0; k < n * n; ++k) {
        if (!isShareOrUnknown(input.pairs[k].kinship) ||
            !isShareOrUnknown(input.pairs[k].bloomOverlap)) {
            return wrong("Kinship or overlap of bloom of " + input.candidates[k / n].parent.id +
                         " and " + input.candidates[k % n].parent.id + " is not between 0 and 1.");
        }
    }
    return checkRules(input.rules);
}

PlannedCross crossOf(const PlanInput& input, std::size_t mother, std::size_t father) {
    const CrossParent& one = input.candidates[mother].parent;
    const CrossParent& other = input.candidates[father].parent;
    PlannedCross cross;
    cross.mother = mother;
    cross.father = father;
    cross.merit =
        expectedMerit(one, other, input.rules.additiveVariance, input.kinship(mother, father));
    cross.chromosomes = expectedChromosomes(one, other);
    cross.sexes = expectedSexes(one, other);
    cross.colours = expectedColours(one, other);
    if (one.sex && mother != father) {
        cross.needsEmasculation = one.sex == FlowerSex::Perfect;
    }
    const PairKnown& known = input.known(mother, father);
    cross.bloomOverlap = mother == father ? std::nullopt : known.bloomOverlap;
    cross.usesStoredPollen = known.hasStoredPollen && isBloomApart(input, mother, father);
    if (one.merit && other.merit) {
        cross.worth = worthOf(input, mother, father);
    }
    const Remarks* said[] = {
        &cross.merit.remarks, &cross.chromosomes.remarks, &cross.sexes.remarks};
    for (const Remarks* remarks : said) {
        cross.warnings.insert(cross.warnings.end(), remarks->begin(), remarks->end());
    }
    return cross;
}

std::optional<Objection>
objectionTo(const PlanInput& input, std::size_t mother, std::size_t father) {
    const CrossParent& one = input.candidates[mother].parent;
    const CrossParent& other = input.candidates[father].parent;
    if (auto found = objectionToSexes(one, other)) {
        return found;
    }
    if (auto found = objectionToRoles(input, mother, father)) {
        return found;
    }
    const PairKnown& known = input.known(mother, father);
    if (isBloomApart(input, mother, father) && !known.hasStoredPollen) {
        return Objection{
            WhyNot::BloomApart,
            {BULLACE_SENTENCE("Remark",
                              "Pollen of %1 is in time for %2 with a probability of %3 only, and "
                              "none is stored."),
             {other.id, one.id, Remark::Number{*known.bloomOverlap, 2}}}};
    }
    const auto kinship = input.kinship(mother, father);
    if (input.rules.mostKinship && kinship && *kinship > *input.rules.mostKinship + 1e-12) {
        return Objection{
            WhyNot::TooRelated,
            {BULLACE_SENTENCE("Remark", "%1 and %2 have a kinship of %3; at most %4 is wanted."),
             {one.id,
              other.id,
              Remark::Number{*kinship, 3},
              Remark::Number{*input.rules.mostKinship, 3}}}};
    }
    return objectionToSpecies(input, mother, father);
}

double worthOf(const PlanInput& input, std::size_t mother, std::size_t father) {
    const CrossParent& one = input.candidates[mother].parent;
    const CrossParent& other = input.candidates[father].parent;
    const double mean = (*one.merit + *other.merit) / 2;
    if (!input.rules.additiveVariance || input.rules.spreadIntensity == 0) {
        return mean;
    }
    // Inbreeding that is not known counts as none, as of founders.
    const double f = (one.inbreeding.value_or(0) + other.inbreeding.value_or(0)) / 2;
    return mean +
           input.rules.spreadIntensity * std::sqrt(*input.rules.additiveVariance * (1 - f) / 2);
}

} // namespace bullace::breeding
