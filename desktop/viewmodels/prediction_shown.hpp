// Predictions, variances and correlations of a mixed model as pictures, tables and sentences.
#pragma once

#include "desk/study.hpp"
#include "desk/trial_choices.hpp"

#include "core/season/station_trial.hpp"
#include "core/trials/descriptor_correlation.hpp"
#include "core/trials/heritability.hpp"
#include "core/trials/mixed_model.hpp"

#include <optional>

namespace bullace::desk {

struct ShownPrediction {
    const StudyGround& ground;
    Tried tried;
    season::StationTrial trial; // a record for each vine and season
    trials::MixedFit fit{};
    std::optional<trials::Heritability> heritability{};
};

struct ShownCorrelation {
    const StudyGround& ground;
    Tried one;
    Tried two;
    season::TrialOfBoth both;
    trials::DescriptorCorrelation correlated;
};

void showPredictions(const ShownPrediction& shown, Study& study);
void showVariances(const ShownPrediction& shown, Study& study);
void showCorrelation(const ShownCorrelation& shown, Study& study);

} // namespace bullace::desk
