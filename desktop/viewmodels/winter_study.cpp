// What the winter did: dead buds by accession and what to leave at pruning, and injury of whole
// vines apart from them.
#include "desk/study_views.hpp"

#include "core/hardiness/bud_injury.hpp"
#include "core/journal/json_value.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <array>
#include <cmath>
#include <map>

namespace bullace::desk {

using hardiness::DeadOf;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::array<std::string_view, 3> kBuds{"primary-buds", "secondary-buds", "tertiary-buds"};

constexpr std::array<std::string_view, 6> kInjuries{
    kBuds[0], kBuds[1], kBuds[2], "dead-spurs", "dead-cordon", "trunk"};

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(WinterStudy)
};

// What one accession's vines showed in one season.
struct Injured {
    std::array<DeadOf, 3> buds{};
    std::map<std::uint32_t, hardiness::VineInjury> vines;
};

class WinterView : public StudyView {
public:
    QString key() const override { return QStringLiteral("winter"); }
    QString title() const override { return Tr::tr("Winter injury"); }
    QString help() const override {
        return Tr::tr("Dead buds of each accession in one season, with exact 95 % limits, and how "
                      "many more buds to leave at pruning: by the rule of thumb, and by the number "
                      "that restores the living buds. Spurs, cordon and trunk stand apart: a vine "
                      "can live through what kills its buds, and the other way round.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        const ChoiceGroup seasons = seasonChoice(season::yearsOf(ground.notes, kInjuries));
        settleChoice(chosen, seasons);
        return {seasons};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const int season = chosen.at(QStringLiteral("season")).toInt();
        const auto injured = injuredIn(ground.notes, season, study);
        if (injured.empty()) {
            study.words = Tr::tr("No winter injury has been noted yet.");
            return study;
        }
        study.title = Tr::tr("Winter injury, %1").arg(season);
        study.columns = {{Tr::tr("Accession"), 18, false, true},
                         {Tr::tr("Primary dead, %"), 18, true},
                         {Tr::tr("Secondary"), 15, true},
                         {Tr::tr("More buds: thumb"), 10, true},
                         {Tr::tr("restoring, %"), 14, true},
                         {Tr::tr("Spurs dead, %"), 14, true},
                         {Tr::tr("Killed to ground"), 8, true}};
        report::Plot plot;
        plot.title = toText(study.title);
        plot.x.kind = report::PlotAxis::Names;
        plot.x.title = toText(Tr::tr("Accession"));
        plot.y.unit = std::string("%");
        plot.y.beginsAtZero = true;
        std::size_t count = 0;
        for (const auto& [accession, of] : injured) {
            count += addRow(ground.notes.accessions[accession], of, plot, study);
        }
        study.words =
            Tr::tr("%n accession(s) looked at.", nullptr, static_cast<int>(injured.size()));
        finish(std::move(plot), count, study);
        study.method = Tr::tr("Exact binomial limits (Clopper & Pearson 1934); rule of thumb: "
                              "Cornell University 2014; restoring number: 1/(1 - injury).");
        study.cautions << Tr::tr("Numbers for pruning are a guide; local extension advice and "
                                 "licensed practice come first.");
        return study;
    }

private:
    using ByAccession = std::map<std::size_t, Injured>;

    static ByAccession injuredIn(const season::StationNotes& notes, int season, Study& study) {
        ByAccession injured;
        const auto isIn = [season](std::int32_t day) { return season::yearOfDay(day) == season; };
        for (std::size_t i = 0; i < kBuds.size(); ++i) {
            const season::DescriptorNotes& of = notes.notesOf(kBuds[i]);
            countLeftOut(of, season, study);
            for (const season::RecordNote& note : of.records) {
                const auto dead = journal::numberIn(note.value, "dead");
                const auto counted = journal::numberIn(note.value, "of");
                if (note.vine != season::kNoVine && isIn(note.day) && dead && counted) {
                    DeadOf& buds = injured[notes.vines[note.vine].accession].buds[i];
                    buds.dead += std::llround(*dead);
                    buds.counted += std::llround(*counted);
                }
            }
        }
        const auto addNumbers = [&](std::string_view code, auto set) {
            const season::DescriptorNotes& of = notes.notesOf(code);
            countLeftOut(of, season, study);
            for (const season::NumberNote& note : of.numbers) {
                if (isIn(note.day)) {
                    set(injured[notes.vines[note.vine].accession].vines[note.vine], note.value);
                }
            }
        };
        addNumbers("dead-spurs", [](hardiness::VineInjury& vine, double value) {
            vine.deadSpursPercent = value;
        });
        addNumbers("dead-cordon", [](hardiness::VineInjury& vine, double value) {
            vine.deadCordonPercent = value;
        });
        addNumbers("trunk", [](hardiness::VineInjury& vine, double value) {
            vine.trunk = static_cast<int>(std::lround(value));
        });
        return injured;
    }

    static QString shareText(const std::optional<hardiness::DeadShare>& share) {
        return share ? QStringLiteral("%1, n %2")
                           .arg(estimateText({share->percent, {}, share->clopperPearson}, 0),
                                QString::number(share->of.counted))
                     : QString();
    }

    static std::size_t addRow(const season::NotedAccession& accession,
                              const Injured& of,
                              report::Plot& plot,
                              Study& study) {
        std::vector<hardiness::VineInjury> vines;
        for (const auto& [vine, injury] : of.vines) {
            vines.push_back(injury);
        }
        const auto buds = hardiness::budInjury(of.buds[0], of.buds[1], of.buds[2]);
        const auto whole = hardiness::vineInjury(vines);
        if (!buds || !whole) {
            study.remarks.push_back(
                {BULLACE_SENTENCE("Remark", "%1 is left out: a count or percent is impossible."),
                 {accession.id}});
            return 0;
        }
        GridRow row;
        row.key = fromText(accession.id);
        row.cells << fromText(accession.words) << shareText(buds->ofBud[0])
                  << shareText(buds->ofBud[1]) << thumbText(*buds)
                  << (buds->pruning && buds->pruning->restoringPercent
                          ? estimateText(*buds->pruning->restoringPercent, 0)
                          : QString())
                  << (whole->deadSpursPercent ? estimateText(*whole->deadSpursPercent, 0)
                                              : QString())
                  << (whole->killedToGround ? QStringLiteral("%1/%2")
                                                  .arg(whole->killedToGround->of.dead)
                                                  .arg(whole->killedToGround->of.counted)
                                            : QString());
        study.rows.push_back(std::move(row));
        addPoints(accession.id, *buds, *whole, plot);
        return static_cast<std::size_t>(of.buds[0].counted) + whole->spursScored;
    }

    static QString thumbText(const hardiness::BudInjury& buds) {
        if (!buds.pruning) {
            return {};
        }
        if (buds.pruning->isLeastPruning) {
            return Tr::tr("least pruning");
        }
        return buds.pruning->ruleOfThumbPercent
                   ? QStringLiteral("%1 %").arg(numberText(*buds.pruning->ruleOfThumbPercent, 0))
                   : QString();
    }

    static void addPoints(const std::string& id,
                          const hardiness::BudInjury& buds,
                          const hardiness::VineInjurySummary& whole,
                          report::Plot& plot) {
        const auto at = static_cast<double>(plot.x.names.size());
        plot.x.names.push_back(id);
        if (plot.series.empty()) {
            plot.series.resize(2);
            plot.series[0].name = toText(Tr::tr("Primary buds dead"));
            plot.series[1].name = toText(Tr::tr("Spurs dead"));
        }
        const auto add = [&](report::PlotSeries& series, const statistics::Estimate& estimate) {
            report::PlotPoint point;
            point.x = at;
            point.y = estimate.value;
            if (estimate.interval) {
                point.yLow = std::max(0.0, estimate.interval->low);
                point.yHigh = std::min(100.0, estimate.interval->high);
            }
            point.label = id;
            series.points.push_back(std::move(point));
        };
        if (buds.ofBud[0]) {
            add(plot.series[0], {buds.ofBud[0]->percent, {}, buds.ofBud[0]->clopperPearson});
        }
        if (whole.deadSpursPercent) {
            add(plot.series[1], *whole.deadSpursPercent);
        }
    }

    static void finish(report::Plot plot, std::size_t count, Study& study) {
        std::erase_if(plot.series,
                      [](const report::PlotSeries& series) { return series.points.empty(); });
        if (plot.series.empty()) {
            return;
        }
        plot.y.title = toText(Tr::tr("Dead"));
        plot.notes.count = count;
        plot.notes.missing = toText(Tr::tr("What is open or was not observed is left out."));
        study.plot = std::move(plot);
    }
};

} // namespace

std::unique_ptr<StudyView> makeWinterView() {
    return std::make_unique<WinterView>();
}

} // namespace bullace::desk
