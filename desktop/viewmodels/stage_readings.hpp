// What the views of the season ask of the station's notes: which stage, which vines were how far on
// which day, and the weather that belongs to it.
#pragma once

#include "desk/study.hpp"

#include "core/season/onset_comparison.hpp"
#include "core/season/vine_seasons.hpp"
#include "core/weather/heat_band.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bullace::desk {

// A stage that can be asked for: a BBCH code, or a percentage that means the same.
struct AskedStage {
    std::string_view key; // one word
    season::StageQuestion question;
    std::string_view percent; // the descriptor of the percentage
};
// Bud break, start, middle and end of bloom, first colour, ripe, leaf fall, in this order. Codes
// 61, 65 and 69 and their shares of caps off after Lorenz et al. 1995 (Aust. J. Grape Wine Res.
// 1:100-103); the shares of the other stages are common practice, no source.
[[nodiscard]] std::span<const AskedStage> askedStages();
[[nodiscard]] QString stageWords(const AskedStage& stage);
// "stage"; none is left out, so that a station without notes shows what can be asked.
[[nodiscard]] ChoiceGroup stageChoice();
// The stage of that key, else the first.
[[nodiscard]] const AskedStage& stageOf(const QString& key);

// Seasons (calendar years) with any stage or percentage, the newest first.
[[nodiscard]] std::vector<int> stageSeasons(const season::StationNotes& notes);
// "accessions" with any of these, by their words.
[[nodiscard]] ChoiceGroup stageAccessions(const StudyGround& ground);

// What was noted of each vine in a season (0: in all, each by itself) that tells of the stage. Two
// people's different values of one visit are both there. What is open is not.
[[nodiscard]] std::vector<season::VineReadings>
readingsOf(const season::StationNotes& notes, const AskedStage& stage, int season);
// What is open or was missed of the stage's descriptors, added to what a study left out.
void countStageLeftOut(const season::StationNotes& notes,
                       const AskedStage& stage,
                       int season,
                       Study& study);
// The onsets of one accession and year, each with its year.
void addOnsets(const season::AccessionSeason& season, std::vector<season::YearOnset>& onsets);

// "site": where the weather was measured. Empty without weather; one line with one site.
[[nodiscard]] ChoiceGroup siteChoice(const season::StationNotes& notes);
// The weather of the chosen site, else of the first; null without any.
[[nodiscard]] const weather::DailyDays* weatherOf(const StudyGround& ground, const Chosen& chosen);

// How the heat of a season is summed where nothing else is asked: single sine above 10 °C from 1
// January, °C days.
inline constexpr double kSeasonBaseC = 10;
[[nodiscard]] weather::HeatRule seasonHeat();
// Of the years, as far as their weather is known without a gap.
[[nodiscard]] std::vector<season::HeatCurve> heatCurves(const weather::DailyDays& record,
                                                        std::span<const int> years);

// A day of the season as a date, and an interval of such days, as a person reads them: "14 May",
// with the year where it is not `year`.
[[nodiscard]] QString seasonDayText(double day, int year);
[[nodiscard]] QString seasonSpanText(const statistics::Interval& days, int year);
// The same on an axis of dates, no further than two years from the season.
[[nodiscard]] double seasonPlotDay(double day, int year);
// Adds remarks that are not there yet.
void addRemarks(const Remarks& remarks, Remarks& to);

// Remarks that computations made of one accession each: told once for all that they concern.
class NamedRemarks {
public:
    void add(const std::string& accession, const Remarks& remarks);
    void tell(Remarks& to) const;

private:
    std::vector<std::pair<Remark, std::vector<std::string>>> all_;
};

} // namespace bullace::desk
