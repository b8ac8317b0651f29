// When a stage is to come this season: a thermal-time model of each accession's past seasons, with
// what its forecasts were off before.
#include "desk/stage_readings.hpp"
#include "desk/study_remarks.hpp"
#include "desk/study_views.hpp"

#include "core/season/stage_date.hpp"
#include "core/season/thermal_model.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using season::StageYear;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(ForecastStudy)
};

// One accession's past, and what was noted of this season.
struct Awaited {
    std::vector<StageYear> past;
    std::optional<season::StageDate> now;
    season::ThermalFit fit;
    season::Forecast forecast;
};
using ByAccession = std::map<std::string, Awaited>;

class ForecastView : public StudyView {
public:
    QString key() const override { return QStringLiteral("forecast"); }
    QString title() const override { return Tr::tr("Forecast of stages"); }
    QString help() const override {
        return Tr::tr(
            "The day on which each accession is to reach the stage this season. Its past seasons "
            "give the degree-days that it needed; base temperature and first day are those with "
            "the least error when each past season is forecast from the others. The interval "
            "holds what other years' weather would do from here on and the model's past error. "
            "Faint points are the days of past seasons.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        std::vector<ChoiceGroup> groups{stageChoice()};
        if (ground.notes.weather.size() > 1) {
            groups.push_back(siteChoice(ground.notes));
        }
        groups.push_back(stageAccessions(ground));
        for (const ChoiceGroup& group : groups) {
            settleChoice(chosen, group);
        }
        return groups;
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        study.cautions << Tr::tr("A forecast is an estimate from the station's own notes, with its "
                                 "uncertainty. Official forecasts, local codes and licensed "
                                 "practice come first.");
        const season::AskedStage& stage =
            season::stageOf(toText(chosen.at(QStringLiteral("stage"))));
        const int year = static_cast<int>(ground.today.year());
        const auto* record = weatherOf(ground, chosen);
        if (record == nullptr) {
            study.words = Tr::tr("No weather has been taken in yet, so nothing can be forecast. "
                                 "The view of the weather takes it in.");
            return study;
        }
        ByAccession by = awaitedIn(ground, chosen, stage, year);
        if (by.empty()) {
            study.words = Tr::tr("No stage has been noted yet, so nothing can be forecast.");
            return study;
        }
        study.title = Tr::tr("Forecast: %1, %2").arg(stageWords(stage), QString::number(year));
        study.tableName = study.title;
        std::size_t told = 0;
        for (auto& [id, awaited] : by) {
            const auto fit = season::fitThermalModel(*record, awaited.past);
            if (fit) {
                awaited.fit = *fit;
                awaited.forecast = season::forecastStage(*record, *fit, year, ground.today);
            }
            told += awaited.forecast.day ? 1U : 0U;
        }
        addTable(ground, by, year, study);
        addPlot(ground, by, year, study);
        study.words =
            Tr::tr("%1 of %n accession(s) can be forecast.", nullptr, static_cast<int>(by.size()))
                .arg(told);
        study.method = Tr::tr("Thermal time by single sine; base and first day by the least error "
                              "of each past season forecast from the others.");
        countStageLeftOut(ground.notes, stage, 0, study);
        return study;
    }

private:
    static ByAccession awaitedIn(const StudyGround& ground,
                                 const Chosen& chosen,
                                 const season::AskedStage& stage,
                                 int year) {
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        ByAccession by;
        const auto readings = season::readingsOf(ground.notes, stage, 0);
        for (const auto& one : season::seasonsOf(readings, stage.question)) {
            if (one.year > year || !isChosen(chosen, group, fromText(one.accession))) {
                continue;
            }
            std::vector<season::YearOnset> onsets;
            season::addOnsets(one, onsets);
            const auto dating = season::stageDate(onsets);
            Awaited& awaited = by[one.accession];
            if (!dating || !dating->date) {
                continue;
            }
            if (one.year == year) {
                awaited.now = dating->date;
            } else {
                awaited.past.push_back({one.year, dating->date->mean});
            }
        }
        return by;
    }

    static QString monthDayText(std::chrono::month_day day, int year) {
        return seasonDayText(
            season::dayOfSeason(std::chrono::year(year) / day.month() / day.day(), year), year);
    }

    static QString forecastText(const season::Forecast& forecast, int year) {
        if (!forecast.day) {
            return Tr::tr("none", "forecast");
        }
        const QString day = seasonDayText(forecast.day->value, year);
        return forecast.day->interval ? QStringLiteral("%1 (%2)").arg(
                                            day, seasonSpanText(*forecast.day->interval, year))
                                      : day;
    }

    static QString notedText(const Awaited& awaited, int year) {
        return awaited.now               ? seasonDayText(awaited.now->mean, year)
               : awaited.forecast.isPast ? Tr::tr("overdue")
                                         : Tr::tr("not yet");
    }

    static void addTable(const StudyGround& ground, const ByAccession& by, int year, Study& study) {
        study.columns = {{Tr::tr("Accession"), 16, false, true},
                         {Tr::tr("Seasons"), 7, true},
                         {Tr::tr("Forecast (95 %)"), 27},
                         {Tr::tr("Off by, d"), 8, true},
                         {Tr::tr("Mean date, d"), 9, true},
                         {Tr::tr("Needs, °C days"), 24},
                         {Tr::tr("Had"), 6, true},
                         {Tr::tr("Noted"), 10}};
        NamedRemarks named;
        for (const auto& [id, awaited] : by) {
            GridRow row;
            row.key = fromText(id);
            row.cells << fromText(ground.notes.accessions[*ground.notes.accession(id)].words)
                      << QString::number(awaited.fit.usedYears.size())
                      << forecastText(awaited.forecast, year);
            if (const auto& model = awaited.fit.model) {
                row.cells << numberText(model->pastError, 1) << numberText(model->calendarError, 1)
                          << Tr::tr("%1 above %2 °C from %3")
                                 .arg(numberText(model->needed, 0),
                                      numberText(model->baseC, 0),
                                      monthDayText(model->start, year));
            } else {
                row.cells << QString() << QString() << QString();
            }
            row.cells << (awaited.forecast.soFar ? numberText(*awaited.forecast.soFar, 0)
                                                 : QString())
                      << notedText(awaited, year);
            study.rows.push_back(std::move(row));
            named.add(id, awaited.forecast.remarks); // why there is none, too
        }
        named.tell(study.remarks);
    }

    static void addPlot(const StudyGround& ground, const ByAccession& by, int year, Study& study) {
        report::Plot plot;
        plot.title = toText(study.title);
        plot.x.kind = report::PlotAxis::Dates;
        plot.x.title = toText(Tr::tr("Day"));
        plot.y.kind = report::PlotAxis::Names;
        plot.y.title = toText(Tr::tr("Accession"));
        plot.y.isReversed = true;
        report::PlotSeries past{
            report::PlotSeries::Points, toText(Tr::tr("Past seasons")), {}, true, false, {}};
        report::PlotSeries to{
            report::PlotSeries::Points, toText(Tr::tr("Forecast")), {}, false, false, {}};
        report::PlotSeries noted{
            report::PlotSeries::Points, toText(Tr::tr("Noted this season")), {}, false, false, {}};
        const auto at = [year](double day) { return seasonPlotDay(day, year); };
        std::size_t seasons = 0;
        for (const auto& [id, awaited] : by) {
            if (!awaited.forecast.day) {
                continue;
            }
            report::PlotPoint point;
            point.y = static_cast<double>(plot.y.names.size());
            point.label = id;
            plot.y.names.push_back(id);
            for (const StageYear& one : awaited.past) {
                point.x = at(one.day);
                past.points.push_back(point);
            }
            if (awaited.now) {
                point.x = at(awaited.now->mean);
                noted.points.push_back(point);
            }
            point.x = at(awaited.forecast.day->value);
            if (awaited.forecast.day->interval) {
                point.xLow = at(awaited.forecast.day->interval->low);
                point.xHigh = at(awaited.forecast.day->interval->high);
            }
            to.points.push_back(std::move(point));
            seasons += awaited.past.size();
        }
        if (to.points.empty()) {
            return;
        }
        for (report::PlotSeries* series : {&past, &to, &noted}) {
            if (!series->points.empty()) {
                plot.series.push_back(std::move(*series));
            }
        }
        plot.marks = {{report::plotDay(ground.today), toText(Tr::tr("today")), false}};
        plot.notes.count = seasons;
        plot.notes.missing = toText(
            Tr::tr("n counts past seasons; accessions without a forecast are in the table."));
        study.plot = std::move(plot);
    }
};

} // namespace

std::unique_ptr<StudyView> makeForecastView() {
    return std::make_unique<ForecastView>();
}

} // namespace bullace::desk
