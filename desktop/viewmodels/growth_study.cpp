// Vigour and growth: lengths of tagged shoots over the season as logistic curves, when growth
// stopped, and pruning weight for a metre of cordon.
#include "desk/study_views.hpp"

#include "core/hardiness/shoot_growth.hpp"
#include "core/journal/json_value.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

constexpr std::string_view kShoots = "shoot-length";
constexpr std::size_t kMostCurves = 6;

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(GrowthStudy)
};

// A tagged shoot keeps its number on its vine.
using Shoot = std::pair<std::uint32_t, std::int64_t>;
using Lengths = std::map<Shoot, std::vector<hardiness::ShootLength>>;

// What is known of one accession's growth in a season.
struct Grown {
    Lengths shoots;
    std::map<std::uint32_t, std::vector<hardiness::TipRecord>> tips;
    std::map<std::uint32_t, hardiness::PrunedVine> pruned;
};

bool isIn(std::int32_t day, int season) {
    return static_cast<int>(season::dateOfDay(day).year()) == season;
}

std::optional<hardiness::ShootTip> tipOf(const std::string& word) {
    return word == "growing"   ? std::optional(hardiness::ShootTip::Growing)
           : word == "slowing" ? std::optional(hardiness::ShootTip::Slowing)
           : word == "stopped" ? std::optional(hardiness::ShootTip::Stopped)
                               : std::nullopt;
}

std::map<std::size_t, Grown> grownIn(const season::StationNotes& notes, int season) {
    std::map<std::size_t, Grown> grown;
    for (const season::RecordNote& note : notes.notesOf(kShoots).records) {
        const auto shoot = journal::memberOf(note.value, "shoot");
        const auto cm = journal::memberOf(note.value, "cm");
        const auto number = shoot ? journal::wholeNumberOf(*shoot) : std::nullopt;
        const auto length = cm ? journal::numberOf(*cm) : std::nullopt;
        if (note.vine != season::kNoVine && number && length && isIn(note.day, season)) {
            grown[notes.vines[note.vine].accession].shoots[{note.vine, *number}].push_back(
                {season::dateOfDay(note.day), *length});
        }
    }
    for (const season::WordNote& note : notes.notesOf("shoot-tip").words) {
        const auto tip = tipOf(notes.words[note.word]);
        if (tip && isIn(note.day, season)) {
            grown[notes.vines[note.vine].accession].tips[note.vine].push_back(
                {season::dateOfDay(note.day), *tip});
        }
    }
    for (const season::NumberNote& note : notes.notesOf("pruning-weight").numbers) {
        if (isIn(note.day, season)) {
            grown[notes.vines[note.vine].accession].pruned[note.vine].kg = note.value;
        }
    }
    for (const season::NumberNote& note : notes.notesOf("cordon-length").numbers) {
        const auto accession = grown.find(notes.vines[note.vine].accession);
        if (accession != grown.end() && accession->second.pruned.contains(note.vine)) {
            accession->second.pruned[note.vine].cordonCm = note.value;
        }
    }
    return grown;
}

class GrowthView : public StudyView {
public:
    QString key() const override { return QStringLiteral("growth"); }
    QString title() const override { return Tr::tr("Growth"); }
    QString help() const override {
        return Tr::tr("Tagged shoots of each accession in one season: logistic curves through "
                      "their lengths, when the curve reaches 95 % of its greatest length, and when "
                      "the tips were seen to have stopped; pruning weight for a metre of cordon. "
                      "The picture has one line for each shoot.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        std::set<int, std::greater<>> years;
        for (const std::string_view code :
             {kShoots, std::string_view("shoot-tip"), std::string_view("pruning-weight")}) {
            for (const int year : seasonsOf(ground.notes.notesOf(code))) {
                years.insert(year);
            }
        }
        const ChoiceGroup seasons = seasonChoice({years.begin(), years.end()});
        settleChoice(chosen, seasons);
        const ChoiceGroup accessions =
            accessionChoice(ground, {std::string(kShoots), "pruning-weight"}, true);
        settleChoice(chosen, accessions);
        return {seasons, accessions};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const int season = chosen.at(QStringLiteral("season")).toInt();
        const auto grown = grownIn(ground.notes, season);
        if (grown.empty()) {
            study.words = Tr::tr("No shoot has been measured and no pruning weighed yet.");
            return study;
        }
        study.title = Tr::tr("Growth, %1").arg(season);
        study.columns = {{Tr::tr("Accession"), 18, false, true},
                         {Tr::tr("Shoots"), 6, true},
                         {Tr::tr("Greatest length, cm"), 14, true},
                         {Tr::tr("Growth ends (curve)"), 16},
                         {Tr::tr("Tips stopped"), 24},
                         {Tr::tr("Prunings, kg/m"), 18, true}};
        report::Plot plot;
        plot.title = toText(study.title);
        plot.x.kind = report::PlotAxis::Dates;
        plot.x.title = toText(Tr::tr("Day"));
        plot.y.title = toText(Tr::tr("Length of shoots"));
        plot.y.unit = "cm";
        plot.y.beginsAtZero = true;
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        for (const auto& [accession, of] : grown) {
            if (isChosen(chosen, group, fromText(ground.notes.accessions[accession].id))) {
                addRow(ground.notes.accessions[accession], of, plot, study);
            }
        }
        study.words = Tr::tr("%n accession(s).", nullptr, static_cast<int>(study.rows.size()));
        if (!plot.series.empty()) {
            plot.notes.missing =
                toText(Tr::tr("Lengths that are open are left out; the table has all accessions."));
            study.plot = std::move(plot);
        }
        study.method = Tr::tr("Logistic curves by least squares for each shoot; the end of growth "
                              "is 95 % of the greatest length (common practice, no source).");
        countLeftOut(ground.notes.notesOf(kShoots), season, study);
        return study;
    }

private:
    static void addRow(const season::NotedAccession& accession,
                       const Grown& of,
                       report::Plot& plot,
                       Study& study) {
        std::vector<double> ends;
        std::vector<double> greatest;
        for (const auto& [shoot, lengths] : of.shoots) {
            const auto growth = hardiness::fitShootGrowth(lengths);
            if (!growth) {
                study.remarks.push_back(
                    {BULLACE_SENTENCE("Remark",
                                      "%1: a shoot's length is impossible; the shoot is "
                                      "left out."),
                     {accession.id}});
                continue;
            }
            greatest.push_back(growth->greatestCm);
            if (growth->endDate && !growth->isEndBeyondMeasured) {
                ends.push_back(report::plotDay(*growth->endDate));
            }
            addLine(accession.id, lengths, plot);
        }
        GridRow row;
        row.key = fromText(accession.id);
        row.cells << fromText(accession.words) << QString::number(of.shoots.size())
                  << meanText(greatest) << endText(ends) << tipText(of) << pruningText(of);
        study.rows.push_back(std::move(row));
    }

    static QString meanText(const std::vector<double>& values) {
        double sum = 0;
        for (const double value : values) {
            sum += value;
        }
        return values.empty() ? QString() : numberText(sum / static_cast<double>(values.size()), 0);
    }

    static QString endText(const std::vector<double>& ends) {
        double sum = 0;
        for (const double end : ends) {
            sum += end;
        }
        return ends.empty() ? QString()
                            : quick::dateWords(
                                  report::dateOfPlotDay(sum / static_cast<double>(ends.size())));
    }

    // The widest that the vines' own intervals reach together.
    static QString tipText(const Grown& of) {
        std::optional<CivilDate> after;
        std::optional<CivilDate> by;
        bool isOpen = false;
        for (const auto& [vine, tips] : of.tips) {
            const hardiness::GrowthEnd end = hardiness::growthEnd(tips);
            if (end.after && (!after || *end.after < *after)) {
                after = end.after;
            }
            isOpen = isOpen || !end.onOrBefore;
            if (end.onOrBefore && (!by || *by < *end.onOrBefore)) {
                by = end.onOrBefore;
            }
        }
        if (!after && !by) {
            return {};
        }
        if (isOpen || !by) {
            return Tr::tr("after %1").arg(quick::dateWords(after ? *after : *by));
        }
        return after
                   ? Tr::tr("%1 to %2", "days").arg(quick::dateWords(*after), quick::dateWords(*by))
                   : Tr::tr("by %1", "a day").arg(quick::dateWords(*by));
    }

    static QString pruningText(const Grown& of) {
        std::vector<hardiness::PrunedVine> vines;
        for (const auto& [vine, pruned] : of.pruned) {
            vines.push_back(pruned);
        }
        const auto weight = hardiness::pruningWeight(vines);
        return weight && weight->kgPerMetre ? estimateText(*weight->kgPerMetre, 2) : QString();
    }

    static void addLine(const std::string& id,
                        std::vector<hardiness::ShootLength> lengths,
                        report::Plot& plot) {
        std::set<std::string> ids;
        for (const report::PlotSeries& series : plot.series) {
            ids.insert(series.name);
        }
        if (!ids.contains(id) && ids.size() >= kMostCurves) {
            return;
        }
        const auto same = std::ranges::find(plot.series, id, &report::PlotSeries::name);
        const std::size_t group = same != plot.series.end() ? *same->group : ids.size();
        std::ranges::sort(lengths, {}, [](const hardiness::ShootLength& one) {
            return report::plotDay(one.day);
        });
        report::PlotSeries line{report::PlotSeries::Line, id, {}, false, false, group};
        for (const hardiness::ShootLength& length : lengths) {
            report::PlotPoint point;
            point.x = report::plotDay(length.day);
            point.y = length.cm;
            point.label = id;
            line.points.push_back(std::move(point));
        }
        plot.notes.count = plot.notes.count.value_or(0) + line.points.size();
        plot.series.push_back(std::move(line));
    }
};

} // namespace

std::unique_ptr<StudyView> makeGrowthView() {
    return std::make_unique<GrowthView>();
}

} // namespace bullace::desk
