// A trial that was analysed, as pictures, tables and sentences: adjusted means, analysis of
// variance, residuals.
#pragma once

#include "desk/study.hpp"
#include "desk/trial_choices.hpp"

#include "core/season/station_trial.hpp"
#include "core/trials/trial_analysis.hpp"

#include <QString>

namespace bullace::desk {

struct ShownTrial {
    const StudyGround& ground;
    Tried tried;
    season::StationTrial vines; // each once
    season::TrialRepeat repeat = season::TrialRepeat::Vines;
    season::TrialPlots plots;
    QString reference; // an accession; empty for none
    std::size_t values = 0;
    trials::ScaledResponse scaled;  // the plots' response on its scale
    trials::TrialAnalysis analysis; // of the plots, on that scale
};

// A term's line beside all terms that do not contain it; null where it has none.
[[nodiscard]] const trials::VarianceLine* lineOf(const ShownTrial& trial, std::string_view term);

// What the analysis has to say: CV, least differences, what blocks were worth, residual checks.
void tellAnalysis(const ShownTrial& trial, Study& study);

void showMeans(const ShownTrial& trial, Study& study);
void showVariance(const ShownTrial& trial, Study& study);
void showResiduals(const ShownTrial& trial, Study& study);

} // namespace bullace::desk
