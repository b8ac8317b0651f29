// When the vines of each accession reached a stage: step curves over the days or the degree-days of
// a season, and how much earlier or later than a reference.
#include "desk/stage_plot.hpp"
#include "desk/stage_readings.hpp"
#include "desk/stage_table.hpp"
#include "desk/study_views.hpp"

#include "core/season/turnbull.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using season::AccessionSeason;
using season::YearOnset;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(StageStudy)
};

constexpr std::size_t kMostBold = 8;    // curves that can be told apart
constexpr std::size_t kMostFaint = 200; // behind one that stands out
const QString kReference = QStringLiteral("reference");
const QString kBold = QStringLiteral("bold");
const QString kBy = QStringLiteral("by");
const QString kHeat = QStringLiteral("heat");

ChoiceGroup named(ChoiceGroup group, const QString& key, const QString& title) {
    group.key = key;
    group.title = title;
    group.isMany = false;
    return group;
}

class StageView : public StudyView {
public:
    QString key() const override { return QStringLiteral("season"); }
    QString title() const override { return Tr::tr("Stages of the season"); }
    QString help() const override {
        return Tr::tr(
            "The share of each accession's vines that had reached a stage. Visits are days apart, "
            "so a date is an interval: the line rises where the vines were seen to be there, the "
            "band begins where they were last seen not to be. Strokes at the foot are days of "
            "visits. By degree-days the same stands over the season's heat. With more than eight "
            "accessions one stands out. The half date is the mean of a normal law, or where vines "
            "are too few the step in which half of them got there.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        std::vector<ChoiceGroup> groups{stageChoice(), seasonChoice(stageSeasons(ground.notes))};
        ChoiceGroup by{kBy, Tr::tr("By"), false, {{QStringLiteral("days"), Tr::tr("days")}}};
        if (!ground.notes.weather.empty()) {
            by.lines.push_back({kHeat, Tr::tr("degree-days")});
        }
        groups.push_back(std::move(by));
        if (ground.notes.weather.size() > 1) {
            groups.push_back(siteChoice(ground.notes));
        }
        const ChoiceGroup accessions = stageAccessions(ground);
        groups.push_back(named(accessions, kReference, Tr::tr("Reference")));
        settleChoice(chosen, accessions);
        if (chosenCount(accessions, chosen) > kMostBold) {
            groups.push_back(named(accessions, kBold, Tr::tr("Stands out")));
        }
        groups.push_back(accessions);
        for (const ChoiceGroup& group : groups) {
            settleChoice(chosen, group);
        }
        return groups;
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const AskedSeason asking = ask(ground, chosen);
        if (asking.visits.empty()) {
            study.words = Tr::tr("No stage has been noted yet.");
            return study;
        }
        study.title =
            Tr::tr("%1, %2").arg(stageWords(*asking.stage)).arg(QString::number(asking.season));
        study.tableName = study.title;
        const std::string reference = toText(chosen.at(kReference));
        addStageColumns(ground, asking, reference, study);
        report::Plot plot;
        prepare(asking, study.title, plot);
        addAll(ground, chosen, asking, plot, study);
        finish(asking, std::move(plot), study);
        countStageLeftOut(ground.notes, *asking.stage, asking.season, study);
        return study;
    }

private:
    static std::size_t chosenCount(const ChoiceGroup& group, const Chosen& chosen) {
        return static_cast<std::size_t>(
            std::ranges::count_if(group.lines, [&](const ChoiceLine& line) {
                return isChosen(chosen, group, line.key);
            }));
    }

    static AskedSeason ask(const StudyGround& ground, const Chosen& chosen) {
        AskedSeason asking;
        asking.stage = &season::stageOf(toText(chosen.at(QStringLiteral("stage"))));
        asking.season = chosen.at(QStringLiteral("season")).toInt();
        if (asking.season == 0) {
            return asking;
        }
        const auto readings = season::readingsOf(ground.notes, *asking.stage, asking.season);
        for (const season::VineReadings& vine : readings) {
            asking.readings += vine.readings.size();
            for (const season::StageReading& reading : vine.readings) {
                asking.visits.insert(
                    static_cast<std::int32_t>(season::dayOfSeason(reading.day, asking.season)));
            }
        }
        asking.seasons = season::seasonsOf(readings, asking.stage->question);
        if (const auto* record = weatherOf(ground, chosen)) {
            asking.curves = heatCurves(*record, std::array{asking.season});
            std::erase_if(asking.curves,
                          [](const season::HeatCurve& curve) { return curve.days.empty(); });
        }
        asking.isHeat = chosen.at(kBy) == kHeat && asking.hasHeat();
        return asking;
    }

    static void prepare(const AskedSeason& asking, const QString& title, report::Plot& plot) {
        plot.title = toText(title);
        plot.x.kind = asking.isHeat ? report::PlotAxis::Numbers : report::PlotAxis::Dates;
        plot.x.title = toText(
            asking.isHeat
                ? Tr::tr("Degree-days from 1 January above %1 °C").arg(numberText(kSeasonBaseC, 0))
                : Tr::tr("Day"));
        plot.x.unit = asking.isHeat ? "°C days" : "";
        plot.y.title = toText(Tr::tr("Vines at the stage or past it"));
        plot.y.unit = "%";
        plot.y.least = 0;
        plot.y.greatest = 100;
        plot.notes.count = asking.readings;
        plot.notes.from = season::dateOfSeason(*asking.visits.begin(), asking.season);
        plot.notes.to = season::dateOfSeason(*asking.visits.rbegin(), asking.season);
        plot.notes.missing =
            toText(Tr::tr("Between two visits nobody knows; what is open is left out."));
    }

    // Days of season, or the degree-days that they stand for; the visits become the rug.
    static StageAxis axisOf(const AskedSeason& asking, report::Plot& plot) {
        std::vector<YearOnset> visits;
        for (const std::int32_t day : asking.visits) {
            const auto at = static_cast<double>(day);
            visits.push_back({asking.season, {at, at}});
        }
        if (asking.isHeat) {
            visits = season::onHeat(visits, asking.curves).onsets;
        }
        const int year = asking.season;
        StageAxis axis;
        axis.at = asking.isHeat ? std::function<double(double)>([](double sum) { return sum; })
                                : [year](double day) { return seasonPlotDay(day, year); };
        if (!visits.empty()) {
            axis.first = visits.front().onset.by;
            axis.last = visits.back().onset.by;
        }
        for (const YearOnset& visit : visits) {
            plot.rug.push_back(axis.at(visit.onset.by));
        }
        return axis;
    }

    static void addAll(const StudyGround& ground,
                       const Chosen& chosen,
                       const AskedSeason& asking,
                       report::Plot& plot,
                       Study& study) {
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        const StageAxis axis = axisOf(asking, plot);
        const auto bold = chosen.find(kBold);
        std::vector<const AccessionSeason*> bolds;
        StageRows table;
        std::size_t faint = 0;
        std::size_t shown = 0;
        for (const AccessionSeason& one : asking.seasons) {
            shown += isChosen(chosen, group, fromText(one.accession)) ? 1U : 0U;
        }
        for (const AccessionSeason& one : asking.seasons) {
            if (!isChosen(chosen, group, fromText(one.accession))) {
                continue;
            }
            addStageRows(ground, asking, one, toText(chosen.at(kReference)), table);
            const bool isBold =
                shown <= kMostBold || bold == chosen.end() || toText(bold->second) == one.accession;
            if (isBold) {
                bolds.push_back(&one);
            } else if (faint++ < kMostFaint) {
                addCurve(one, asking, axis, true, plot);
            }
        }
        for (const AccessionSeason* one : bolds) { // in front of those that stand back
            addCurve(*one, asking, axis, false, plot);
        }
        study.rows = std::move(table.rows);
        table.remarks.tell(study.remarks);
        // Marks of vines that no visit bounds come last: the curves have the first colours.
        std::ranges::stable_partition(plot.series, [](const report::PlotSeries& series) {
            return series.kind != report::PlotSeries::Points;
        });
        if (faint > kMostFaint) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "The picture has the first %1 accessions; "
                                                      "the table has all."),
                                     {static_cast<std::int64_t>(kMostFaint)}});
        }
    }

    static void addCurve(const AccessionSeason& one,
                         const AskedSeason& asking,
                         const StageAxis& axis,
                         bool isFaint,
                         report::Plot& plot) {
        std::vector<YearOnset> onsets;
        season::addOnsets(one, onsets);
        if (asking.isHeat) {
            onsets = season::onHeat(onsets, asking.curves).onsets;
        }
        const auto curve = season::turnbull(daysOnly(onsets));
        if (curve) {
            addStageSteps(one.accession, *curve, axis, isFaint, plot);
        }
    }

    static void finish(const AskedSeason& asking, report::Plot plot, Study& study) {
        study.words = Tr::tr("%n accession(s) on %1 days of visits.",
                             nullptr,
                             static_cast<int>(asking.seasons.size()))
                          .arg(asking.visits.size());
        if (!plot.series.empty()) {
            study.plot = std::move(plot);
        }
        study.method = Tr::tr("Shares without a law (Turnbull 1976); half dates by a normal law "
                              "fitted to the intervals between visits, limits by profile "
                              "likelihood; above 0 is later than the reference.");
        if (asking.hasHeat()) {
            study.method +=
                QLatin1Char(' ') + Tr::tr("Degree-days by single sine from 1 January above %1 °C.")
                                       .arg(numberText(kSeasonBaseC, 0));
        }
    }
};

} // namespace

std::unique_ptr<StudyView> makeStageView() {
    return std::make_unique<StageView>();
}

} // namespace bullace::desk
