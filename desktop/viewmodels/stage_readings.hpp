// What the views of the season ask of the station's notes: which stage, which vines were how far on
// which day, and the weather that belongs to it.
#pragma once

#include "desk/study.hpp"

#include "core/season/station_stages.hpp"
#include "core/weather/heat_band.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bullace::desk {

[[nodiscard]] QString stageWords(const season::AskedStage& stage);
// "stage"; none is left out, so that a station without notes shows what can be asked.
[[nodiscard]] ChoiceGroup stageChoice();
// Seasons (calendar years) with any stage or percentage, the newest first.
[[nodiscard]] std::vector<int> stageSeasons(const season::StationNotes& notes);
// "accessions" with any of these, by their words.
[[nodiscard]] ChoiceGroup stageAccessions(const StudyGround& ground);

// What is open or was missed of the stage's descriptors, added to what a study left out.
void countStageLeftOut(const season::StationNotes& notes,
                       const season::AskedStage& stage,
                       int season,
                       Study& study);
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
} // namespace bullace::desk
