#include "core/season/station_cross_plan.hpp"

#include "core/breeding/relationship.hpp"
#include "core/season/station_bloom.hpp"
#include "core/season/station_pedigree.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bullace::season {

using breeding::PlanCandidate;

namespace {

// The last number noted of each accession.
std::map<std::size_t, NumberNote> lastOf(const StationNotes& notes, std::string_view descriptor) {
    std::map<std::size_t, NumberNote> last;
    for (const NumberNote& note : notes.notesOf(descriptor).numbers) {
        const auto [at, isNew] = last.emplace(notes.vines[note.vine].accession, note);
        if (!isNew && note.day >= at->second.day) {
            at->second = note;
        }
    }
    return last;
}

// The word noted most often; of equals the first in the order of the words.
std::map<std::size_t, std::string> mostNoted(const StationNotes& notes,
                                             std::string_view descriptor) {
    std::map<std::size_t, std::map<std::string, std::size_t>> counts;
    for (const WordNote& note : notes.notesOf(descriptor).words) {
        ++counts[notes.vines[note.vine].accession][notes.words[note.word]];
    }
    std::map<std::size_t, std::string> most;
    for (const auto& [accession, words] : counts) {
        most[accession] =
            std::ranges::max_element(words, {}, [](const auto& one) { return one.second; })->first;
    }
    return most;
}

class Planning {
public:
    Planning(const StationNotes& notes, const StationMerits& merits, const PlanWish& wish)
        : notes_(notes),
          merits_(merits),
          wish_(wish) {}

    Result<StationPlan> plan(const std::set<std::string>& kept) {
        auto pedigree = pedigreeOf(notes_);
        if (!pedigree) {
            return pedigree.error();
        }
        auto species = breeding::speciesShares(*pedigree, founderTaxa(notes_, *pedigree));
        if (!species) {
            return species.error();
        }
        choose(kept);
        plan_.species = species->taxa;
        plan_.remarks = species->remarks;
        const std::vector<double> inbreeding = breeding::inbreeding(*pedigree);
        std::vector<std::int32_t> members;
        for (std::size_t i = 0; i < plan_.accessions.size(); ++i) {
            const std::string& id = notes_.accessions[plan_.accessions[i]].id;
            members.push_back(*pedigree->find(id));
            addCandidate(plan_.accessions[i]);
            const auto at = static_cast<std::size_t>(members.back());
            PlanCandidate& candidate = plan_.candidates.back();
            candidate.parent.inbreeding = inbreeding[at];
            for (std::size_t t = 0; t < plan_.species.size(); ++t) {
                candidate.speciesShares.push_back(species->of(at, t));
            }
        }
        const std::size_t n = plan_.candidates.size();
        plan_.pairs.resize(n * n);
        plan_.overlapDays.resize(n * n);
        const auto kinships = breeding::kinshipMatrix(*pedigree, inbreeding, members);
        for (std::size_t i = 0; i < n * n; ++i) {
            plan_.pairs[i].kinship = kinships[i];
        }
        addStoredPollen();
        if (Status done = addBloom(); !done) {
            return done.error();
        }
        return std::move(plan_);
    }

private:
    [[nodiscard]] double meritOf(std::size_t accession) const {
        const auto found = merits_.of.find(notes_.accessions[accession].id);
        return found == merits_.of.end() ? -std::numeric_limits<double>::infinity()
               : wish_.isLessBetter      ? -found->second.value
                                         : found->second.value;
    }

    void choose(const std::set<std::string>& kept) {
        std::vector<std::size_t> chosen;
        for (std::size_t i = 0; i < notes_.accessions.size(); ++i) {
            const NotedAccession& accession = notes_.accessions[i];
            const bool isWanted =
                wish_.statuses.empty() || wish_.statuses.contains(accession.status);
            if (kept.contains(accession.id)) {
                plan_.accessions.push_back(i);
            } else if (isWanted && accession.planted && merits_.of.contains(accession.id)) {
                chosen.push_back(i);
            }
        }
        std::ranges::stable_sort(
            chosen, std::greater<>{}, [this](std::size_t one) { return meritOf(one); });
        if (chosen.size() > wish_.mostCandidates) {
            plan_.leftOut = chosen.size() - wish_.mostCandidates;
            chosen.resize(wish_.mostCandidates);
        }
        plan_.accessions.insert(plan_.accessions.end(), chosen.begin(), chosen.end());
        std::ranges::sort(plan_.accessions);
    }

    void addCandidate(std::size_t at) {
        const NotedAccession& accession = notes_.accessions[at];
        PlanCandidate candidate;
        candidate.mostUses = wish_.mostUses;
        breeding::CrossParent& parent = candidate.parent;
        parent.id = accession.id;
        const auto sex = sexes_.find(at);
        const auto code = sex != sexes_.end() ? static_cast<int>(sex->second.value)
                                              : accession.flowerSex.value_or(0);
        parent.sex = vineyard::flowerSexOf(code);
        const auto mother = notes_.accession(accession.mother);
        if (mother &&
            vineyard::flowerSexOf(notes_.accessions[*mother].flowerSex) == FlowerSex::Female) {
            parent.carriesFemale = true;
        }
        if (const auto count = chromosomes_.find(at); count != chromosomes_.end()) {
            parent.chromosomes = static_cast<int>(std::lround(count->second.value));
        }
        if (const auto colour = colours_.find(at); colour != colours_.end()) {
            parent.berryColour = colour->second;
        }
        if (const auto merit = merits_.of.find(accession.id); merit != merits_.of.end()) {
            parent.merit = meritOf(at);
            parent.meritErrorVariance = merit->second.errorVariance;
        }
        plan_.candidates.push_back(std::move(candidate));
    }

    void addStoredPollen() {
        const std::size_t n = plan_.candidates.size();
        for (const NotedLot& lot : notes_.lots) {
            const auto father = lot.kind == "pollen" && lot.accession
                                    ? plan_.find(notes_.accessions[*lot.accession].id)
                                    : std::nullopt;
            for (std::size_t mother = 0; father && mother < n; ++mother) {
                plan_.pairs[mother * n + *father].hasStoredPollen = true;
            }
        }
    }

    Status addBloom() {
        std::vector<BloomWindow> windows;
        std::vector<std::size_t> of; // candidates
        for (BloomWindow& window : expectedBloom(notes_).windows) {
            if (const auto at = plan_.find(window.accession)) {
                of.push_back(*at);
                windows.push_back(std::move(window));
            }
        }
        plan_.withoutBloom = plan_.candidates.size() - windows.size();
        const auto overlaps = bloomOverlaps(windows);
        if (!overlaps) {
            return overlaps.error();
        }
        for (const BloomOverlap& pair : overlaps->pairs) {
            const std::size_t at = of[pair.mother] * plan_.candidates.size() + of[pair.father];
            plan_.pairs[at].bloomOverlap = pair.probability;
            plan_.overlapDays[at] = pair.days.value;
        }
        return {};
    }

    const StationNotes& notes_;
    const StationMerits& merits_;
    const PlanWish& wish_;
    std::map<std::size_t, NumberNote> sexes_ = lastOf(notes_, "flower-sex");
    std::map<std::size_t, NumberNote> chromosomes_ = lastOf(notes_, "chromosomes");
    std::map<std::size_t, std::string> colours_ = mostNoted(notes_, "berry-colour");
    StationPlan plan_;
};

} // namespace

std::optional<std::size_t> StationPlan::find(std::string_view accession) const {
    const auto found = std::ranges::find(candidates, accession, [](const PlanCandidate& one) {
        return std::string_view(one.parent.id);
    });
    return found == candidates.end() ? std::nullopt
                                     : std::optional<std::size_t>(found - candidates.begin());
}

Result<StationPlan>
planOf(const StationNotes& notes, const StationMerits& merits, const PlanWish& wish) {
    return Planning(notes, merits, wish).plan({});
}

std::vector<breeding::OwnCross> openCrosses(const StationNotes& notes) {
    std::vector<breeding::OwnCross> own;
    for (const NotedCross& cross : notes.crosses) {
        if (cross.isClosed) {
            continue;
        }
        breeding::OwnCross one{cross.mother, {}, own.size() + 1};
        if (!cross.father.empty()) {
            one.fathers.push_back(cross.father);
        }
        own.push_back(std::move(one));
    }
    return own;
}

Result<StationPlan>
planOfOwn(const StationNotes& notes, const StationMerits& merits, const PlanWish& wish) {
    std::set<std::string> named;
    for (const breeding::OwnCross& cross : openCrosses(notes)) {
        named.insert(cross.mother);
        named.insert(cross.fathers.begin(), cross.fathers.end());
    }
    return Planning(notes, merits, wish).plan(named);
}

int yearOfCrosses(CivilDate today) {
    return static_cast<int>(today.year()) + (today.month() >= std::chrono::July ? 1 : 0);
}

} // namespace bullace::season
