// Selections of an augmented design as random effects of a mixed model, checks as fixed ones.
#include "core/trials/augmented_parts.hpp"
#include "core/trials/mixed_model.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::trials {

namespace {

const std::string kSelections = "selections";

// An indicator for each selection; its records are few, and checks have none.
SmoothTerm indicators(const Factor& entry, const std::vector<bool>& isCheck) {
    SmoothTerm term{kSelections, {}};
    for (std::size_t level = 0; level < entry.levels.size(); ++level) {
        if (isCheck[level]) {
            continue;
        }
        std::vector<double> column(entry.of.size(), 0.0);
        for (std::size_t row = 0; row < entry.of.size(); ++row) {
            column[row] = entry.of[row] == level ? 1.0 : 0.0;
        }
        term.columns.push_back(std::move(column));
    }
    return term;
}

double selectionsMean(const MixedFit& fit) {
    for (const FixedMeans& means : fit.fixedMeans) {
        for (const FixedMean& mean : means.means) {
            if (means.term == kCheck && mean.level == "s") {
                return mean.value;
            }
        }
    }
    return 0;
}

void addPredictions(const MixedFit& fit,
                    const std::vector<std::string>& names,
                    RandomSelections& into) {
    const RandomPredictions* predictions = fit.predictionsOf(kSelections);
    if (predictions == nullptr || predictions->levels.size() != names.size()) {
        return;
    }
    into.selectionVariance = predictions->variance;
    for (std::size_t i = 0; i < names.size(); ++i) {
        const Prediction& each = predictions->levels[i];
        into.selections.push_back({names[i],
                                   each.value,
                                   std::sqrt(std::max(0.0, each.predictionErrorVariance)),
                                   each.reliability,
                                   into.selectionsMean + each.value});
    }
    if (predictions->variance > 0 && predictions->meanVarianceOfDifference) {
        into.heritability =
            1 - *predictions->meanVarianceOfDifference / (2 * predictions->variance);
    }
}

} // namespace

Result<RandomSelections>
predictSelections(const TrialTable& table, const AugmentedPlan& plan, BlockEffects blocks) {
    const auto records = takeAugmented(table, plan);
    if (!records) {
        return records.error();
    }
    const Factor& entry = *records->table.factor(plan.entry);
    std::vector<std::string> names;
    for (std::size_t level = 0; level < entry.levels.size(); ++level) {
        if (!records->isCheck[level]) {
            names.push_back(entry.levels[level]);
        }
    }
    MixedSpec spec;
    spec.fixed = {{kCheck}};
    if (blocks == BlockEffects::Fixed) {
        spec.fixed.push_back({plan.block});
    } else {
        spec.random.push_back(RandomTerm{{plan.block}});
    }
    spec.smooth.push_back(indicators(entry, records->isCheck));
    MixedOptions options;
    options.hasDegreesOfFreedom = false;
    const auto fit = fitMixed(records->table, spec, options);
    if (!fit) {
        return fit.error();
    }
    RandomSelections result;
    result.hasConverged = fit->hasConverged;
    result.logLikelihood = fit->invariantLogLikelihood;
    result.remarks = fit->remarks;
    result.selectionsMean = selectionsMean(*fit);
    if (const VarianceComponent* error = fit->variance("residual")) {
        result.errorVariance = error->value;
    }
    if (const VarianceComponent* block = fit->variance(plan.block)) {
        result.blockVariance = block->value;
    }
    addPredictions(*fit, names, result);
    if (result.selectionVariance == 0) {
        result.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The selections vary no more than the checks' error explains: all "
                              "are predicted alike."),
             {}});
    }
    return result;
}

} // namespace bullace::trials
