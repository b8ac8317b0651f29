#include "core/season/station_merit.hpp"

#include "core/breeding/related.hpp"
#include "core/season/station_pedigree.hpp"
#include "core/season/station_prediction.hpp"

#include <set>

namespace bullace::season {

std::vector<std::string> predictable(const StationNotes& notes) {
    std::vector<std::string> found;
    for (const auto& [descriptor, of] : notes.of) {
        std::set<std::uint32_t> vines;
        std::set<std::size_t> accessions;
        for (const NumberNote& note : of.numbers) {
            vines.insert(note.vine);
            accessions.insert(notes.vines[note.vine].accession);
        }
        if (vines.size() >= kLeastVines && accessions.size() > 1 && canBeTried(of)) {
            found.push_back(descriptor);
        }
    }
    return found;
}

Result<StationMerits> meritsOf(const StationNotes& notes,
                               std::span<const vineyard::Block> blocks,
                               const std::string& descriptor) {
    const auto pedigree = pedigreeOf(notes);
    if (!pedigree) {
        return pedigree.error();
    }
    const StationTrial trial = trialOf(notes, blocks, {descriptor});
    PredictionWish wish;
    wish.related = breeding::relatedThrough(*pedigree);
    const auto model = predictionModel(trial, wish);
    if (!model) {
        return model.error();
    }
    trials::MixedOptions options;
    options.hasDegreesOfFreedom = false;
    const auto fit = trials::fitMixed(model->table, model->spec, options);
    if (!fit) {
        return fit.error();
    }
    StationMerits merits;
    merits.records = fit->n;
    merits.accessions = model->table.factor(kAccessionFactor)->levels.size();
    merits.open = trial.open;
    merits.missed = trial.missed;
    for (const Remarks* told : {&trial.remarks, &model->remarks, &fit->remarks}) {
        merits.remarks.insert(merits.remarks.end(), told->begin(), told->end());
    }
    const trials::RandomPredictions* predicted = fit->predictionsOf(kAccessionFactor);
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
