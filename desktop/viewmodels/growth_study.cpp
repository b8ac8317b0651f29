// Vigour and growth: lengths of tagged shoots over the season as logistic curves, when growth
// stopped, and pruning weight for a metre of cordon.
#include "desk/study_views.hpp"

#include "core/hardiness/shoot_growth.hpp"
#include "core/journal/json_value.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

constexpr std::string_view kShoots = "shoot-length";
constexpr std::array<std::string_view, 3> kGrowth{kShoots, "shoot-tip", "pruning-weight"};
constexpr std::size_t kMostCurves = 6;
constexpr std::size_t kMostInDetail = 2; // accessions with a line for each of their shoots

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
        if (note.vine != season::kNoVine && number && length &&
            season::yearOfDay(note.day) == season) {
            grown[notes.vines[note.vine].accession].shoots[{note.vine, *number}].push_back(
                {season::dateOfDay(note.day), *length});
        }
    }
    for (const season::WordNote& note : notes.notesOf("shoot-tip").words) {
        const auto tip = tipOf(notes.words[note.word]);
        if (tip && season::yearOfDay(note.day) == season) {
            grown[notes.vines[note.vine].accession].tips[note.vine].push_back(
                {season::dateOfDay(note.day), *tip});
        }
    }
    for (const season::NumberNote& note : notes.notesOf("pruning-weight").numbers) {
        if (season::yearOfDay(note.day) == season) {
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

// "25 Jul": the title has the year.
QString dayWords(CivilDate day) {
    return QStringLiteral("%1 %2").arg(
        QString::number(static_cast<unsigned>(day.day())),
        QLocale().monthName(static_cast<int>(static_cast<unsigned>(day.month())),
                            QLocale::ShortFormat));
}

class GrowthView : public StudyView {
public:
    QString key() const override { return QStringLiteral("growth"); }
    QString title() const override { return Tr::tr("Growth"); }
    QString help() const override {
        return Tr::tr("Tagged shoots of each accession in one season: logistic curves through "
                      "their lengths, when the curve reaches 95 % of its greatest length, and when "
                      "the tips were seen to have stopped; pruning weight for a metre of cordon. "
                      "The picture has one line for each accession, the mean of its shoots on "
                      "each day; with one or two accessions chosen, one for each shoot.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        const ChoiceGroup seasons = seasonChoice(season::yearsOf(ground.notes, kGrowth));
        settleChoice(chosen, seasons);
        const ChoiceGroup accessions = accessionChoice(ground, kGrowth, true);
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
                         {Tr::tr("Shoots"), 5, true},
                         {Tr::tr("Longest, cm"), 8, true},
                         {Tr::tr("Growth ends (first and last shoot)"), 28},
                         {Tr::tr("Tips stopped"), 30},
                         {Tr::tr("Prunings, kg/m"), 17, true}};
        report::Plot plot;
        plot.title = toText(study.title);
        plot.x.kind = report::PlotAxis::Dates;
        plot.x.title = toText(Tr::tr("Day"));
        plot.y.title = toText(Tr::tr("Length of shoots"));
        plot.y.unit = "cm";
        plot.y.beginsAtZero = true;
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        std::vector<std::pair<std::size_t, const Grown*>> shown;
        std::size_t measured = 0;
        for (const auto& [accession, of] : grown) {
            if (isChosen(chosen, group, fromText(ground.notes.accessions[accession].id))) {
                shown.emplace_back(accession, &of);
                measured += of.shoots.empty() ? 0U : 1U;
            }
        }
        std::int64_t untold = 0;
        for (const auto& [accession, of] : shown) {
            const season::NotedAccession& noted = ground.notes.accessions[accession];
            untold += addRow(noted, *of, study) ? 0 : 1;
            addLines(noted.id, of->shoots, measured <= kMostInDetail, plot);
        }
        sayRest(untold, measured, study);
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
    // False, and no row, where nothing can be told of the accession.
    static bool addRow(const season::NotedAccession& accession, const Grown& of, Study& study) {
        std::vector<double> ends;
        std::vector<double> greatest;
        std::optional<CivilDate> growingOn; // a shoot's last visit, where it had no end by then
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
            } else if (growth->isEndBeyondMeasured) {
                growingOn = growingOn ? std::max(*growingOn, growth->lastDay) : growth->lastDay;
            }
        }
        GridRow row;
        row.key = fromText(accession.id);
        row.cells << fromText(accession.words) << QString::number(of.shoots.size())
                  << meanText(greatest) << endText(ends, growingOn) << tipText(of)
                  << pruningText(of);
        const bool isTold =
            !of.shoots.empty() || std::any_of(row.cells.begin() + 2,
                                              row.cells.end(),
                                              [](const auto& cell) { return !cell.isEmpty(); });
        if (isTold) {
            study.rows.push_back(std::move(row));
        }
        return isTold;
    }

    static void sayRest(std::int64_t untold, std::size_t measured, Study& study) {
        if (untold > 0) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "Accessions whose prunings were weighed but "
                                                      "no cordon was measured, not listed: %1."),
                                     {untold}});
        }
        if (measured > kMostCurves) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "The picture has the first %1 accessions; "
                                                      "the table has all."),
                                     {static_cast<std::int64_t>(kMostCurves)}});
        }
    }

    static QString meanText(const std::vector<double>& values) {
        double sum = 0;
        for (const double value : values) {
            sum += value;
        }
        return values.empty() ? QString() : numberText(sum / static_cast<double>(values.size()), 0);
    }

    // "25 Jul (19 Jul to 2 Aug)": the mean, the first and the last shoot.
    static QString endText(const std::vector<double>& ends,
                           const std::optional<CivilDate>& growingOn) {
        if (ends.empty()) {
            return growingOn ? Tr::tr("not by %1", "a day").arg(dayWords(*growingOn)) : QString();
        }
        double sum = 0;
        for (const double end : ends) {
            sum += end;
        }
        const auto [first, last] = std::ranges::minmax(ends);
        const auto words = [](double day) { return dayWords(report::dateOfPlotDay(day)); };
        return Tr::tr("%1 (%2 to %3)", "days")
            .arg(words(sum / static_cast<double>(ends.size())), words(first), words(last));
    }

    // The widest that the intervals of the vines that stopped reach together, and how many had not.
    static QString tipText(const Grown& of) {
        std::optional<CivilDate> after;
        std::optional<CivilDate> by;
        int open = 0;
        for (const auto& [vine, tips] : of.tips) {
            const hardiness::GrowthEnd end = hardiness::growthEnd(tips);
            if (!end.onOrBefore) {
                ++open;
                continue;
            }
            after = end.after && (!after || *end.after < *after) ? end.after : after;
            by = !by || *by < *end.onOrBefore ? end.onOrBefore : by;
        }
        const QString growing = open == 0 ? QString() : Tr::tr("%n vine(s) not yet", nullptr, open);
        if (!by) {
            return growing;
        }
        const QString stopped =
            after ? Tr::tr("%1 to %2", "days").arg(dayWords(*after), dayWords(*by))
                  : Tr::tr("by %1", "a day").arg(dayWords(*by));
        return growing.isEmpty() ? stopped : QStringLiteral("%1; %2").arg(stopped, growing);
    }

    static QString pruningText(const Grown& of) {
        std::vector<hardiness::PrunedVine> vines;
        for (const auto& [vine, pruned] : of.pruned) {
            vines.push_back(pruned);
        }
        const auto weight = hardiness::pruningWeight(vines);
        if (!weight || !weight->kgPerMetre) {
            return {};
        }
        statistics::Estimate told = *weight->kgPerMetre;
        if (told.interval) {
            told.interval->low = std::max(0.0, told.interval->low); // no weight is below 0
        }
        return estimateText(told, 2);
    }

    static void
    addLines(const std::string& id, const Lengths& shoots, bool isEachShoot, report::Plot& plot) {
        std::set<std::size_t> groups;
        for (const report::PlotSeries& series : plot.series) {
            groups.insert(*series.group);
        }
        if (shoots.empty() || groups.size() >= kMostCurves) {
            return;
        }
        std::map<double, std::vector<double>> byDay;
        for (const auto& [shoot, lengths] : shoots) {
            std::map<double, std::vector<double>> own;
            for (const hardiness::ShootLength& length : lengths) {
                const double day = report::plotDay(length.day);
                own[day].push_back(length.cm);
                byDay[day].push_back(length.cm);
            }
            if (isEachShoot) {
                addLine(id, own, groups.size(), plot);
            }
        }
        if (!isEachShoot) {
            addLine(id, byDay, groups.size(), plot);
        }
        noteOf(byDay, plot);
    }

    // The mean of each day.
    static void addLine(const std::string& id,
                        const std::map<double, std::vector<double>>& byDay,
                        std::size_t group,
                        report::Plot& plot) {
        report::PlotSeries line{report::PlotSeries::Line, id, {}, false, false, group};
        for (const auto& [day, lengths] : byDay) {
            report::PlotPoint point;
            point.x = day;
            for (const double cm : lengths) {
                point.y += cm / static_cast<double>(lengths.size());
            }
            point.weight = static_cast<double>(lengths.size());
            point.label = id;
            line.points.push_back(std::move(point));
        }
        plot.series.push_back(std::move(line));
    }

    static void noteOf(const std::map<double, std::vector<double>>& byDay, report::Plot& plot) {
        report::PlotNotes& notes = plot.notes;
        for (const auto& [day, lengths] : byDay) {
            const CivilDate date = report::dateOfPlotDay(day);
            notes.count = notes.count.value_or(0) + lengths.size();
            notes.from = notes.from ? std::min(*notes.from, date) : date;
            notes.to = notes.to ? std::max(*notes.to, date) : date;
        }
    }
};

} // namespace

std::unique_ptr<StudyView> makeGrowthView() {
    return std::make_unique<GrowthView>();
}

} // namespace bullace::desk
