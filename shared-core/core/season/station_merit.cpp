#include "core/season/station_merit.hpp"

#include "core/breeding/related.hpp"
#include "core/season/station_pedigree.hpp"

#include <cmath>
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

Result<PredictedDescriptor> predictDescriptor(const StationNotes& notes,
                                              std::span<const vineyard::Block> blocks,
                                              const std::string& descriptor,
                                              const PredictionWish& wish) {
    const StationTrial trial = trialOf(notes, blocks, {descriptor});
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
    PredictedDescriptor predicted;
    predicted.rows = fit->n;
    predicted.open = trial.open;
    predicted.missed = trial.missed;
    for (const Remarks* told : {&trial.remarks, &model->remarks, &fit->remarks}) {
        predicted.remarks.insert(predicted.remarks.end(), told->begin(), told->end());
    }
    const trials::Factor& accession = *model->table.factor(kAccessionFactor);
    for (std::size_t row = 0; row < accession.of.size(); ++row) {
        if (accession.of[row] != trials::kNoLevel && std::isfinite(model->table.response[row])) {
            ++predicted.records[accession.levels[accession.of[row]]];
        }
    }
    if (const trials::RandomPredictions* of = fit->predictionsOf(kAccessionFactor)) {
        predicted.variance = of->variance;
        for (const trials::Prediction& each : of->levels) {
            predicted.of.emplace(each.level, each);
        }
    }
    return predicted;
}

Result<StationMerits> meritsOf(const StationNotes& notes,
                               std::span<const vineyard::Block> blocks,
                               const std::string& descriptor) {
    const auto pedigree = pedigreeOf(notes);
    if (!pedigree) {
        return pedigree.error();
    }
    PredictionWish wish;
    wish.related = breeding::relatedThrough(*pedigree);
    auto predicted = predictDescriptor(notes, blocks, descriptor, wish);
    if (!predicted) {
        return predicted.error();
    }
    StationMerits merits;
    merits.records = predicted->rows;
    merits.accessions = predicted->records.size();
    merits.open = predicted->open;
    merits.missed = predicted->missed;
    merits.remarks = std::move(predicted->remarks);
    merits.additiveVariance = predicted->variance;
    for (const auto& [accession, one] : predicted->of) {
        merits.of.emplace(accession,
                          Merit{one.value, one.predictionErrorVariance, one.reliability});
    }
    return merits;
}

} // namespace bullace::season
