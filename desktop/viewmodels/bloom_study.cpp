// When each accession flowers, in one season or as expected over all, and whose pollen meets whose
// flowers: the windows as lying bars, the pairs as a table.
#include "desk/desk_words.hpp"
#include "desk/stage_readings.hpp"
#include "desk/study_remarks.hpp"
#include "desk/study_views.hpp"

#include "core/season/bloom_windows.hpp"
#include "core/season/stage_date.hpp"
#include "core/statistics/distributions.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using season::FlowerSex;
using season::StageDate;
using season::YearOnset;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(BloomStudy)
};

constexpr std::size_t kMostPaired = 40;
const QString kAll = QStringLiteral("all");
const QString kTable = QStringLiteral("lines");

// One accession's bloom: start, middle, end.
struct Bloom {
    std::size_t accession = 0;
    std::optional<FlowerSex> sex;
    std::array<std::vector<YearOnset>, 3> onsets;
    std::array<std::optional<StageDate>, 3> dates;
    std::size_t vines = 0; // of which the first flowers tell something

    [[nodiscard]] bool isWindow() const {
        return dates[0] && dates[2] && dates[0]->mean <= dates[2]->mean;
    }
};

// The mean's 95 % limits, which come from the days between visits and from how vines differ.
double halfOf(const StageDate& date) {
    return date.standardError * statistics::studentTQuantile(0.975, date.degreesOfFreedom);
}

QString dateText(const std::optional<StageDate>& date, int year) {
    if (!date) {
        return Tr::tr("cannot be told");
    }
    const QString day = seasonDayText(date->mean, year);
    const double half = halfOf(*date);
    return half > 0 ? Tr::tr("%1 ± %2 d", "a day, and half of its 95 % interval in days")
                          .arg(day, numberText(half, 1))
                    : day;
}

class BloomView : public StudyView {
public:
    QString key() const override { return QStringLiteral("bloom"); }
    QString title() const override { return Tr::tr("Bloom and pollen"); }
    QString help() const override {
        return Tr::tr(
            "Lying bars from the first flowers to the last of each accession, with a "
            "stroke at full bloom, in one season or as expected over all seasons (on the "
            "days of this year). Behind the name stands whether the flowers are male, "
            "female or perfect. The table has the windows with their 95 % limits, which come "
            "from the days between visits and from how vines differ, or the pairs: days "
            "on which the mother flowers and the father sheds pollen, how likely they "
            "meet at all, and for how many days pollen has to be stored.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        ChoiceGroup seasons = seasonChoice(stageSeasons(ground.notes));
        if (!seasons.lines.empty()) {
            seasons.lines.push_back({kAll, Tr::tr("expected, all seasons")});
        }
        const ChoiceGroup lines{kTable,
                                Tr::tr("Table of"),
                                false,
                                {{QStringLiteral("pairs"), Tr::tr("pairs")},
                                 {QStringLiteral("windows"), Tr::tr("windows")}}};
        std::vector<ChoiceGroup> groups{seasons, lines, stageAccessions(ground)};
        for (const ChoiceGroup& group : groups) {
            settleChoice(chosen, group);
        }
        return groups;
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const QString of = chosen.at(QStringLiteral("season"));
        const int season = of.toInt(); // 0: all
        const std::vector<Bloom> blooms =
            of.isEmpty() ? std::vector<Bloom>() : bloomsOf(ground, chosen, season, study);
        if (blooms.empty()) {
            study.words = Tr::tr("No bloom has been noted yet.");
            return study;
        }
        study.title = season == 0 ? Tr::tr("Bloom as expected over all seasons")
                                  : Tr::tr("Bloom of %1").arg(QString::number(season));
        study.tableName = study.title;
        const int year = season == 0 ? static_cast<int>(ground.today.year()) : season;
        addPlot(ground, blooms, year, study);
        if (chosen.at(kTable) == QStringLiteral("windows")) {
            addWindows(ground, blooms, year, study);
        } else {
            addPairs(ground, blooms, study);
        }
        study.words = Tr::tr(
            "%n accession(s), the earliest first.", nullptr, static_cast<int>(blooms.size()));
        study.method = Tr::tr("Means of start (a tenth of the caps off), middle and end by a "
                              "normal law fitted to the intervals between visits, with an effect "
                              "of each year; overlaps over vines and over what is not known of "
                              "the means.");
        // All three ask the same descriptors.
        countStageLeftOut(ground.notes, bloomStages().front(), season, study);
        return study;
    }

private:
    static std::span<const season::AskedStage> bloomStages() {
        return season::askedStages().subspan(1, 3);
    }

    static std::vector<Bloom>
    bloomsOf(const StudyGround& ground, const Chosen& chosen, int season, Study& study) {
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        std::map<std::string, Bloom> by;
        NamedRemarks named;
        std::size_t which = 0;
        for (const season::AskedStage& stage : bloomStages()) {
            const auto readings = season::readingsOf(ground.notes, stage, season);
            for (const auto& one : season::seasonsOf(readings, stage.question)) {
                if (isChosen(chosen, group, fromText(one.accession))) {
                    season::addOnsets(one, by[one.accession].onsets[which]);
                    named.add(one.accession, one.remarks);
                }
            }
            ++which;
        }
        std::vector<Bloom> blooms;
        std::size_t without = 0;
        for (auto& [id, bloom] : by) {
            bloom.accession = *ground.notes.accession(id);
            bloom.sex = vineyard::flowerSexOf(ground.notes.accessions[bloom.accession].flowerSex);
            date(id, bloom, named);
            bloom.isWindow() ? blooms.push_back(std::move(bloom)) : void(++without);
        }
        named.tell(study.remarks);
        if (without > 0) {
            study.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "The visits do not bound the bloom of some accessions, which are "
                                  "left out (accessions: %1)."),
                 {static_cast<std::int64_t>(without)}});
        }
        std::ranges::stable_sort(blooms, {}, [](const Bloom& one) { return one.dates[0]->mean; });
        return blooms;
    }

    static void date(const std::string& id, Bloom& bloom, NamedRemarks& named) {
        for (std::size_t i = 0; i < bloom.dates.size(); ++i) {
            const auto made = season::stageDate(bloom.onsets[i]);
            if (made && made->date) {
                bloom.dates[i] = made->date;
                named.add(id, made->remarks);
            }
        }
        for (const YearOnset& onset : bloom.onsets[0]) {
            bloom.vines += onset.onset.isUnseen() ? 0U : 1U;
        }
    }

    // How well first and last are known, as whiskers over the bars.
    static void addLimits(const StudyGround& ground,
                          const std::vector<Bloom>& blooms,
                          int year,
                          report::Plot& plot) {
        report::PlotSeries limits{report::PlotSeries::Points,
                                  toText(Tr::tr("95 % limits of first and last")),
                                  {},
                                  true,
                                  false,
                                  {}};
        for (std::size_t i = 0; i < blooms.size(); ++i) {
            for (const std::size_t which : {std::size_t{0}, std::size_t{2}}) {
                const StageDate& date = *blooms[i].dates[which];
                const double half = halfOf(date);
                report::PlotPoint point;
                point.x = seasonPlotDay(date.mean, year);
                point.xLow = seasonPlotDay(date.mean - half, year);
                point.xHigh = seasonPlotDay(date.mean + half, year);
                point.y = static_cast<double>(i);
                point.label = ground.notes.accessions[blooms[i].accession].id;
                limits.points.push_back(std::move(point));
            }
        }
        plot.series.push_back(std::move(limits));
    }

    static void
    addPlot(const StudyGround& ground, const std::vector<Bloom>& blooms, int year, Study& study) {
        report::Plot plot;
        plot.title = toText(study.title);
        plot.x.kind = report::PlotAxis::Dates;
        plot.x.title = toText(Tr::tr("Day"));
        plot.y.kind = report::PlotAxis::Names;
        plot.y.title = toText(Tr::tr("Accession"));
        plot.y.isReversed = true; // the earliest above
        const auto at = [year](double day) { return seasonPlotDay(day, year); };
        std::map<std::optional<FlowerSex>, report::PlotSeries> series;
        std::size_t vines = 0;
        for (const Bloom& bloom : blooms) {
            const season::NotedAccession& accession = ground.notes.accessions[bloom.accession];
            report::PlotPoint point;
            point.y = static_cast<double>(plot.y.names.size());
            point.xLow = at(bloom.dates[0]->mean);
            point.xHigh = at(bloom.dates[2]->mean);
            const double middle = bloom.dates[1]
                                      ? bloom.dates[1]->mean
                                      : (bloom.dates[0]->mean + bloom.dates[2]->mean) / 2;
            point.x = std::clamp(at(middle), *point.xLow, *point.xHigh);
            point.label = accession.id;
            plot.y.names.push_back(
                toText(Tr::tr("%1, %2").arg(fromText(accession.id), flowerWords(bloom.sex))));
            report::PlotSeries& of = series[bloom.sex];
            of.kind = report::PlotSeries::Spans;
            of.name = toText(flowerWords(bloom.sex));
            of.points.push_back(std::move(point));
            vines += bloom.vines;
        }
        for (auto& [sex, one] : series) {
            plot.series.push_back(std::move(one));
        }
        addLimits(ground, blooms, year, plot);
        plot.notes.count = vines;
        plot.notes.missing = toText(
            Tr::tr("n counts vines and seasons; accessions whose visits do not bound the bloom "
                   "are left out."));
        study.plot = std::move(plot);
    }

    static void addWindows(const StudyGround& ground,
                           const std::vector<Bloom>& blooms,
                           int year,
                           Study& study) {
        study.columns = {{Tr::tr("Accession"), 18, false, true},
                         {Tr::tr("Flowers"), 12},
                         {Tr::tr("Vines"), 6, true},
                         {Tr::tr("First (95 %)"), 18},
                         {Tr::tr("Full (95 %)"), 18},
                         {Tr::tr("Last (95 %)"), 18},
                         {Tr::tr("Spread of vines, d"), 14, true}};
        for (const Bloom& bloom : blooms) {
            const season::NotedAccession& accession = ground.notes.accessions[bloom.accession];
            GridRow row;
            row.key = fromText(accession.id);
            row.cells << fromText(accession.words) << flowerWords(bloom.sex)
                      << QString::number(bloom.vines) << dateText(bloom.dates[0], year)
                      << dateText(bloom.dates[1], year) << dateText(bloom.dates[2], year)
                      << numberText(bloom.dates[0]->spread, 1);
            study.rows.push_back(std::move(row));
        }
    }

    static void
    addPairs(const StudyGround& ground, const std::vector<Bloom>& blooms, Study& study) {
        study.columns = {{Tr::tr("Mother"), 18, false, true},
                         {Tr::tr("Father"), 18},
                         {Tr::tr("Days together (95 %)"), 20, true},
                         {Tr::tr("Likely, %"), 8, true},
                         {Tr::tr("Store pollen, days"), 20}};
        std::vector<season::BloomWindow> windows;
        for (const Bloom& bloom : blooms) {
            if (windows.size() < kMostPaired) {
                windows.push_back({ground.notes.accessions[bloom.accession].id,
                                   bloom.sex,
                                   *bloom.dates[0],
                                   *bloom.dates[2]});
            }
        }
        if (blooms.size() > kMostPaired) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "Only the first %1 accessions to flower are "
                                                      "paired; choose accessions for others."),
                                     {static_cast<std::int64_t>(kMostPaired)}});
        }
        const auto made = season::bloomOverlaps(windows);
        if (!made) {
            study.words = quick::errorWords(made.error());
            return;
        }
        addRemarks(made->remarks, study.remarks);
        for (const season::BloomOverlap& pair : made->pairs) {
            const season::NotedAccession& mother =
                ground.notes.accessions[blooms[pair.mother].accession];
            const season::NotedAccession& father =
                ground.notes.accessions[blooms[pair.father].accession];
            GridRow row;
            row.key = fromText(mother.id);
            row.cells << fromText(mother.words) << fromText(father.words)
                      << estimateText(pair.days, 1) << numberText(100 * pair.probability, 0)
                      << storedText(pair);
            study.rows.push_back(std::move(row));
        }
    }

    static QString storedText(const season::BloomOverlap& pair) {
        if (!pair.stored) {
            return Tr::tr("none", "days of storing pollen");
        }
        const QString days = numberText(pair.stored->days, 0);
        return pair.stored->isFromYearBefore ? Tr::tr("%1, from the year before").arg(days) : days;
    }
};

} // namespace

std::unique_ptr<StudyView> makeBloomView() {
    return std::make_unique<BloomView>();
}

} // namespace bullace::desk
