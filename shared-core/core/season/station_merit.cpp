#include "core/season/station_merit.hpp"

#include "core/breeding/related.hpp"
#include "core/season/station_pedigree.hpp"
#include "core/trials/mixed_model.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace bullace::season {

namespace {

constexpr std::string_view kSummed = "yield";
constexpr const char* kAccession = "accession";
constexpr const char* kSeason = "season";
constexpr const char* kBlock = "block";
constexpr const char* kVine = "vine";

struct Sum {
    double sum = 0;
    std::size_t count = 0;
};

trials::TrialTable tableOf(const StationNotes& notes, const std::string& descriptor) {
    std::map<std::pair<std::uint32_t, int>, Sum> values;
    for (const NumberNote& note : notes.notesOf(descriptor).numbers) {
        Sum& sum = values[{note.vine, yearOfDay(note.day)}];
        sum.sum += note.value;
        ++sum.count;
    }
    trials::TrialTable table;
    table.responseName = descriptor;
    std::vector<std::string> accessions;
    std::vector<std::string> seasons;
    std::vector<std::string> blocks;
    std::vector<std::string> vines;
    for (const auto& [at, sum] : values) {
        const NotedVine& vine = notes.vines[at.first];
        table.response.push_back(descriptor == kSummed ? sum.sum
                                                       : sum.sum / static_cast<double>(sum.count));
        accessions.push_back(notes.accessions[vine.accession].id);
        seasons.push_back(std::to_string(at.second));
        blocks.push_back(vine.position.substr(0, vine.position.find('-')));
        vines.push_back(vine.position + " " + std::to_string(at.first));
    }
    table.factors = {trials::makeFactor(kAccession, accessions),
                     trials::makeFactor(kSeason, seasons),
                     trials::makeFactor(kBlock, blocks),
                     trials::makeFactor(kVine, vines)};
    return table;
}

// A random term whose levels are fewer than the records and more than one can be told, unless
// another has the same.
trials::MixedSpec specOf(const trials::TrialTable& table,
                         std::shared_ptr<const trials::Related> related) {
    trials::MixedSpec spec;
    trials::RandomTerm accessions{{kAccession}};
    accessions.related = std::move(related);
    spec.random.push_back(std::move(accessions));
    std::set<std::size_t> levels{table.factor(kAccession)->levels.size()};
    const auto add = [&](const trials::Term& term) {
        std::vector<const trials::Factor*> factors;
        for (const std::string& name : term) {
            factors.push_back(table.factor(name));
        }
        const std::size_t count = trials::combined(factors).levels.size();
        if (count > 1 && count < table.rows() && levels.insert(count).second) {
            spec.random.push_back({term});
        }
    };
    add({kBlock});
    if (table.factor(kSeason)->levels.size() > 1) {
        spec.fixed.push_back({kSeason});
        add({kAccession, kSeason});
        add({kVine});
    }
    return spec;
}

} // namespace

std::vector<std::string> predictable(const StationNotes& notes) {
    std::vector<std::string> found;
    for (const auto& [descriptor, of] : notes.of) {
        std::set<std::uint32_t> vines;
        std::set<std::size_t> accessions;
        for (const NumberNote& note : of.numbers) {
            vines.insert(note.vine);
            accessions.insert(notes.vines[note.vine].accession);
        }
        if (vines.size() >= kLeastRecords && accessions.size() > 1) {
            found.push_back(descriptor);
        }
    }
    return found;
}

Result<StationMerits> meritsOf(const StationNotes& notes, const std::string& descriptor) {
    const auto pedigree = pedigreeOf(notes);
    if (!pedigree) {
        return pedigree.error();
    }
    const trials::TrialTable table = tableOf(notes, descriptor);
    trials::MixedOptions options;
    options.hasDegreesOfFreedom = false;
    const auto fit =
        trials::fitMixed(table, specOf(table, breeding::relatedThrough(*pedigree)), options);
    if (!fit) {
        return fit.error();
    }
    StationMerits merits;
    merits.records = fit->n;
    merits.accessions = table.factor(kAccession)->levels.size();
    merits.open = notes.notesOf(descriptor).open.size();
    merits.missed = notes.notesOf(descriptor).missed.size();
    merits.remarks = fit->remarks;
    const trials::RandomPredictions* predicted = fit->predictionsOf(kAccession);
    if (predicted == nullptr) {
        return merits;
    }
    merits.additiveVariance = predicted->variance;
    for (const trials::Prediction& one : predicted->levels) {
        merits.of.emplace(one.level,
                          Merit{one.value, one.predictionErrorVariance, one.reliability});
    }
    return merits;
}

} // namespace bullace::season
