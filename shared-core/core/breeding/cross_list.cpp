// Her own list of crosses: commented line by line.
#include "core/breeding/cross_pair.hpp"

#include <algorithm>
#include <map>

namespace bullace::breeding {

namespace {

using Place = std::map<std::string, std::size_t, std::less<>>;

struct Uses {
    std::vector<std::size_t> count;
    std::map<std::pair<std::string, std::vector<std::string>>, std::size_t> lines;
};

void commentMother(const PlanInput& input, const Place& place, CheckedCross& checked) {
    const auto mother = place.find(checked.cross.mother);
    if (mother == place.end()) {
        checked.warnings.push_back(
            {BULLACE_SENTENCE("Remark", "Nothing is known of %1."), {checked.cross.mother}});
    } else if (input.candidates[mother->second].parent.sex == FlowerSex::Male) {
        checked.warnings.push_back(
            {BULLACE_SENTENCE("Remark", "%1 has male flowers and sets no fruit."),
             {checked.cross.mother}});
    }
    if (checked.cross.fathers.empty()) {
        checked.warnings.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Open pollination: the father is not known, and only the mother's "
                              "half of the seedlings can be expected."),
             {}});
    }
}

void commentFather(const PlanInput& input,
                   std::size_t mother,
                   std::size_t father,
                   CheckedCross& checked) {
    PlannedCross part = crossOf(input, mother, father);
    // A selfing on her own list is meant.
    PlanRules rules = input.rules;
    rules.hasSelfings = true;
    const PlanInput own{input.candidates, input.pairs, rules};
    const auto objection = objectionTo(own, mother, father);
    if (objection && objection->why != WhyNot::NoSeed) {
        part.warnings.push_back(objection->reason);
    }
    if (mother == father) {
        part.warnings.push_back(
            {BULLACE_SENTENCE("Remark", "%1 is selfed."), {input.candidates[mother].parent.id}});
    }
    for (const Remark& warning : part.warnings) {
        if (std::ranges::find(checked.warnings, warning) == checked.warnings.end()) {
            checked.warnings.push_back(warning);
        }
    }
    checked.parts.push_back(std::move(part));
}

void countUse(const PlanInput& input, std::size_t candidate, Uses& uses, CheckedCross& checked) {
    ++uses.count[candidate];
    if (uses.count[candidate] == input.candidates[candidate].mostUses + 1) {
        checked.warnings.push_back(
            {BULLACE_SENTENCE("Remark", "From this cross on %1 is used more than %2 times."),
             {input.candidates[candidate].parent.id,
              static_cast<std::int64_t>(input.candidates[candidate].mostUses)}});
    }
}

void commentTwice(Uses& uses, CheckedCross& checked) {
    std::vector<std::string> fathers = checked.cross.fathers;
    std::ranges::sort(fathers);
    const auto [at, isNew] =
        uses.lines.emplace(std::pair(checked.cross.mother, fathers), checked.cross.line);
    if (!isNew) {
        checked.warnings.push_back(
            {BULLACE_SENTENCE("Remark", "The same cross stands on line %1 already."),
             {static_cast<std::int64_t>(at->second)}});
    }
}

void expect(CheckedCross& checked) {
    if (checked.parts.empty() || checked.parts.size() != checked.cross.fathers.size()) {
        return;
    }
    if (checked.parts.size() == 1) {
        checked.merit = checked.parts.front().merit;
        return;
    }
    std::vector<ExpectedMerit> families;
    for (const PlannedCross& part : checked.parts) {
        families.push_back(part.merit);
    }
    const std::vector<double> shares(families.size(), 1.0);
    if (auto mixed = expectedMixture(families, shares)) {
        checked.warnings.push_back(mixed->remarks.back());
        checked.merit = std::move(*mixed);
    }
}

} // namespace

Result<std::vector<CheckedCross>> checkOwnCrosses(std::span<const OwnCross> crosses,
                                                  std::span<const PlanCandidate> candidates,
                                                  const PairTable& pairs,
                                                  const PlanRules& rules) {
    const PlanInput input{candidates, pairs, rules};
    if (const Status sound = checkPlanInput(input); !sound) {
        return sound.error();
    }
    Place place;
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        place.emplace(candidates[i].parent.id, i);
    }
    Uses uses{std::vector<std::size_t>(candidates.size(), 0), {}};
    std::vector<CheckedCross> all;
    for (const OwnCross& cross : crosses) {
        CheckedCross checked;
        checked.cross = cross;
        commentMother(input, place, checked);
        const auto mother = place.find(cross.mother);
        for (const std::string& father : cross.fathers) {
            const auto at = place.find(father);
            if (at == place.end() && father != cross.mother) {
                checked.warnings.push_back(
                    {BULLACE_SENTENCE("Remark", "Nothing is known of %1."), {father}});
            } else if (at != place.end() && mother != place.end()) {
                commentFather(input, mother->second, at->second, checked);
                countUse(input, at->second, uses, checked);
            }
        }
        if (mother != place.end()) {
            countUse(input, mother->second, uses, checked);
        }
        commentTwice(uses, checked);
        expect(checked);
        all.push_back(std::move(checked));
    }
    return all;
}

} // namespace bullace::breeding
