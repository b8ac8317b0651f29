// What the views of trials and of predictions have in common: which descriptor, seasons and blocks
// are chosen, the records of them in the shown unit, and the words of a model's terms.
#pragma once

#include "desk/study.hpp"

#include "core/season/station_trial.hpp"
#include "core/trials/scale.hpp"

#include <QString>

#include <optional>
#include <string>

namespace bullace::desk {

// A descriptor as it is tried: what it is called, in which unit, and what kind of number it is.
struct Tried {
    std::string code;
    QString title;
    std::string unit; // as shown; empty where there is none
    double factor = 1;
    double zero = 0;
    int decimals = 1; // of a single value
    trials::ResponseKind kind = trials::ResponseKind::Measurement;

    [[nodiscard]] QString titleWithUnit() const;
};
// Nothing where the station does not know the descriptor.
[[nodiscard]] std::optional<Tried> triedOf(const StudyGround& ground, const QString& code);

// The groups `what`, `seasons` and `blocks`, put right in `chosen`.
[[nodiscard]] std::vector<ChoiceGroup> trialChoices(const StudyGround& ground, Chosen& chosen);
[[nodiscard]] season::TrialQuestion trialQuestion(const Chosen& chosen);
// The records of what is chosen, in the shown unit; empty where there is no such descriptor.
[[nodiscard]] season::StationTrial chosenTrial(const StudyGround& ground, const Chosen& chosen);
// Values as they are shown; nothing that is missing changes.
void toShownUnit(const Tried& tried, std::vector<double>& values);

// "accession × season" of "accession:season"; "residual".
[[nodiscard]] QString termWords(const std::string& term);
// "2025" or "2023 to 2025"; empty without a record.
[[nodiscard]] QString seasonWords(const season::StationTrial& trial);
// "A022 Brindlecap"; what is no accession of the station as it is.
[[nodiscard]] QString accessionWords(const StudyGround& ground, const std::string& id);
// A share of chance in words that fit a table: "< 0.001", "0.034".
[[nodiscard]] QString chanceText(const std::optional<double>& p);
// What was left out, and when the records were made.
void tellTrial(const season::StationTrial& trial, Study& study);

} // namespace bullace::desk
