// Which crosses to make: the best set under her limits, why attractive pairs are not in it, what
// more merit costs in kinship, and her own list with comments.
#include "desk/breeding_views.hpp"
#include "desk/cross_plan_rows.hpp"
#include "desk/cross_planning.hpp"
#include "desk/desk_words.hpp"
#include "desk/study_remarks.hpp"
#include "office/cross_entry.hpp"

#include "core/season/station_merit.hpp"
#include "core/season/station_pedigree.hpp"
#include "quick/trade_words.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <set>

namespace bullace::desk {

using breeding::CrossPlan;
using breeding::ProgrammeStatus;
using descriptors::DescriptorKind;
using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(CrossPlanStudy)
};

using namespace planning;

constexpr std::array<int, 3> kTaxonShares{25, 50, 75}; // percent

ChoiceGroup numbers(const QString& key, const QString& title, std::initializer_list<int> all) {
    ChoiceGroup group{key, title, false, {}};
    for (const int number : all) {
        group.lines.push_back({QString::number(number), QString::number(number)});
    }
    return group;
}

ChoiceGroup limits(const QString& key, const QString& title, std::initializer_list<double> all) {
    ChoiceGroup group{key, title, false, {}};
    for (const double limit : all) {
        group.lines.push_back({QString::number(limit), numberText(limit, 4)});
    }
    group.lines.push_back({kNone, Tr::tr("no limit")});
    return group;
}

ChoiceGroup byChoice(const StudyGround& ground) {
    ChoiceGroup by{kBy, Tr::tr("Gain in"), false, {}};
    for (const std::string& descriptor : season::predictable(ground.notes)) {
        const vineyard::Asked* asked = ground.catalogue->descriptor(descriptor);
        const bool isCode = asked == nullptr || asked->known.kind == DescriptorKind::Stage ||
                            asked->known.kind == DescriptorKind::Code;
        if (isCode) {
            continue; // no more or less of it
        }
        by.lines.push_back({fromText(descriptor), descriptorWords(*ground.catalogue, descriptor)});
    }
    // What most trials are about stands first, then by the alphabet.
    std::ranges::stable_sort(by.lines, std::greater<>{}, [](const ChoiceLine& line) {
        return line.key == QStringLiteral("yield");
    });
    return by;
}

ChoiceGroup taxonChoice(const season::StationNotes& notes) {
    ChoiceGroup group{kTaxon, Tr::tr("Share of a taxon in the seedlings"), false, {}};
    group.lines.push_back({kNone, Tr::tr("any")});
    const auto pedigree = season::pedigreeOf(notes);
    if (!pedigree) {
        return group;
    }
    std::set<std::string> taxa;
    for (const breeding::FounderTaxa& founder : season::founderTaxa(notes, *pedigree)) {
        taxa.insert(founder.taxa.front().taxon);
    }
    for (const std::string& taxon : taxa) {
        if (fromText(taxon).contains(QLatin1Char(','))) {
            continue;
        }
        for (const int share : kTaxonShares) {
            group.lines.push_back({QStringLiteral("%1|%2").arg(fromText(taxon)).arg(share),
                                   Tr::tr("%1 %2 % at least", "a taxon, a share")
                                       .arg(fromText(taxon), QString::number(share))});
        }
    }
    return group;
}

ChoiceGroup statusChoice(const season::StationNotes& notes) {
    ChoiceGroup group{kStatuses, Tr::tr("Parents among"), true, {}};
    std::set<std::string> statuses;
    for (const season::NotedAccession& accession : notes.accessions) {
        if (!accession.status.empty()) {
            statuses.insert(accession.status);
        }
    }
    for (const std::string& status : statuses) {
        group.lines.push_back({fromText(status), quick::tradeWord(status)});
    }
    return group;
}

QString planWords(const CrossPlan& plan, const PlanWords& words) {
    const QString count = Tr::tr("%n cross(es)", nullptr, static_cast<int>(plan.crosses.size()));
    if (plan.crosses.empty()) {
        return Tr::tr("No set of crosses keeps all limits; the notes below say which is in the "
                      "way.");
    }
    if (plan.status == ProgrammeStatus::Optimal) {
        return Tr::tr("%1: no other set of as many is better (proven).").arg(count);
    }
    const double gap = (plan.bound - plan.worth) / static_cast<double>(plan.crosses.size());
    return Tr::tr("%1: found in the time there was; the mean of a better set is at most %2 "
                  "further.")
        .arg(count, numberText(gap, words.decimals));
}

class CrossPlanView : public StudyView {
public:
    QString key() const override { return QStringLiteral("plan"); }
    QString title() const override { return Tr::tr("Plan of crosses"); }
    QString help() const override {
        return Tr::tr(
            "The set of crosses with the greatest expected mean under the limits chosen: how "
            "often a parent may be used, how related the two parents and all parents together may "
            "be, which share of a taxon the seedlings carry, and whether mother and father have "
            "to meet in bloom (with a chance of one half) where no pollen of the father is "
            "stored. The picture shows what more merit costs in kinship. Crosses that are not in "
            "the set stand in a table of their own, with the reason. Her own list are the crosses "
            "of the collection that are not closed: they are commented, never taken away. C "
            "enters the set as crosses, in one act that Ctrl+Z takes back.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        const ChoiceGroup tables{kTable,
                                 Tr::tr("Table of"),
                                 false,
                                 {{QStringLiteral("plan"), Tr::tr("the best set")},
                                  {QStringLiteral("refused"), Tr::tr("why others are not in it")},
                                  {QStringLiteral("own"), Tr::tr("her own list")}}};
        const ChoiceGroup better{kBetter,
                                 Tr::tr("Better is"),
                                 false,
                                 {{QStringLiteral("more"), Tr::tr("more", "better is")},
                                  {QStringLiteral("less"), Tr::tr("less", "better is")}}};
        const ChoiceGroup pollen{kPollen,
                                 Tr::tr("Pollen"),
                                 false,
                                 {{QStringLiteral("meet"), Tr::tr("in bloom together, or stored")},
                                  {kNone, Tr::tr("whenever they bloom")}}};
        std::vector<ChoiceGroup> groups{
            tables,
            byChoice(ground),
            better,
            numbers(kCrosses, Tr::tr("Crosses"), {10, 5, 20, 40}),
            numbers(kUses, Tr::tr("Uses of a parent, at most"), {4, 1, 2, 8}),
            limits(kKinship, Tr::tr("Kinship of mother and father, at most"), {0.125, 0.0625, 0.2}),
            limits(kGroup, Tr::tr("Mean kinship of all parents, at most"), {0.2, 0.15, 0.1, 0.05}),
            pollen,
            taxonChoice(ground.notes),
            statusChoice(ground.notes)};
        if (chosen[kGroup].isEmpty()) {
            chosen[kGroup] = kNone;
        }
        for (const ChoiceGroup& group : groups) {
            settleChoice(chosen, group);
        }
        return groups;
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        if (chosen.at(kBy).isEmpty()) {
            study.words = Tr::tr("No descriptor has numbers of enough vines yet to predict what "
                                 "accessions pass on.");
            return study;
        }
        const auto made = planned(ground, chosen);
        if (!made) {
            study.words = quick::errorWords(made.error());
            return study;
        }
        const QString of = descriptorWords(*ground.catalogue, toText(chosen.at(kBy)));
        study.title = Tr::tr("Plan of crosses by %1").arg(of);
        study.tableName = study.title;
        const vineyard::Asked* asked = ground.catalogue->descriptor(toText(chosen.at(kBy)));
        const QString unit = asked == nullptr ? QString() : fromText(asked->known.unit);
        const bool isLess = chosen.at(kBetter) == QStringLiteral("less");
        const PlanWords words{ground.notes, made->ground, isLess};
        addTable(ground, chosen, *made, words, unit, study);
        tell(*made, study);
        return study;
    }

private:
    static void addTable(const StudyGround& ground,
                         const Chosen& chosen,
                         const Planned& made,
                         const PlanWords& words,
                         const QString& unit,
                         Study& study) {
        const QString table = chosen.at(kTable);
        if (table == QStringLiteral("own")) {
            addOwnRows(words, made.own, unit, study);
            study.words = made.own.empty()
                              ? Tr::tr("There is no cross in the collection that is not closed.")
                              : Tr::tr("%n cross(es) of the collection, not closed yet.",
                                       nullptr,
                                       static_cast<int>(made.own.size()));
            addOwnPlot(made, words, unit, study);
            return;
        }
        study.words = planWords(made.plan, words);
        addCurve(made, words, unit, study);
        if (table == QStringLiteral("refused")) {
            addRefusalRows(words, made.plan, unit, study);
            return;
        }
        addPlanRows(words, made.plan, unit, study);
        addDeed(ground, made, study);
    }

    static report::Plot plotOf(const QString& unit, const Planned& made, const Study& study) {
        report::Plot plot;
        plot.title = toText(study.title);
        plot.y.title = toText(Tr::tr("Expected mean of the families"));
        plot.y.unit = toText(unit);
        plot.notes.count = made.merits.records;
        plot.notes.missing = toText(
            Tr::tr("n counts vines and seasons. Means are deviations from the mean of all."));
        return plot;
    }

    // The best sets between the greatest merit and the least kinship, by ascending kinship.
    static report::PlotSeries curveOf(const Planned& made, const PlanWords& words) {
        report::PlotSeries line;
        line.kind = report::PlotSeries::Line;
        line.name = toText(Tr::tr("the best there is"));
        for (const breeding::TradeOffPoint& point : made.curve) {
            const bool isProven = point.status == ProgrammeStatus::Optimal;
            if (isProven || point.status == ProgrammeStatus::TimeIsUp) {
                report::PlotPoint at;
                at.x = point.groupKinship;
                at.y = words.merit(point.worth / static_cast<double>(made.rules.crosses));
                at.label = toText(isProven ? Tr::tr("proven") : Tr::tr("found in time"));
                line.points.push_back(std::move(at));
            }
        }
        std::ranges::sort(line.points, {}, &report::PlotPoint::x);
        line.group = 0;
        return line;
    }

    // What more merit costs in kinship.
    static void
    addCurve(const Planned& made, const PlanWords& words, const QString& unit, Study& study) {
        report::Plot plot = plotOf(unit, made, study);
        plot.x.title = toText(Tr::tr("Mean kinship of all parents"));
        const report::PlotSeries line = curveOf(made, words);
        if (!line.points.empty()) {
            report::PlotSeries points = line;
            points.kind = report::PlotSeries::Points;
            points.name.clear(); // the line has it
            plot.series = {line, std::move(points)};
        }
        if (!made.plan.crosses.empty()) {
            report::PlotSeries own;
            own.kind = report::PlotSeries::Points;
            own.name = toText(Tr::tr("the set in the table"));
            own.group = 1;
            report::PlotPoint at;
            at.x = made.plan.groupKinship;
            at.y = words.merit(made.plan.worth / static_cast<double>(made.plan.crosses.size()));
            own.points.push_back(at);
            plot.series.push_back(std::move(own));
        }
        if (!plot.series.empty()) {
            study.plot = std::move(plot);
        }
    }

    // Each cross of her own list by what it gives and what it costs.
    static void
    addOwnPlot(const Planned& made, const PlanWords& words, const QString& unit, Study& study) {
        report::Plot plot = plotOf(unit, made, study);
        plot.x.title = toText(Tr::tr("Kinship of mother and father"));
        report::PlotSeries points;
        points.kind = report::PlotSeries::Points;
        points.name = toText(Tr::tr("her own crosses"));
        for (const breeding::CheckedCross& checked : made.own) {
            if (checked.parts.size() != 1 || !checked.parts.front().merit.mean ||
                !checked.parts.front().merit.inbreeding) {
                continue;
            }
            const breeding::ExpectedMerit& merit = checked.parts.front().merit;
            report::PlotPoint at;
            at.x = *merit.inbreeding;
            at.y = words.merit(*merit.mean);
            at.label = checked.cross.mother + " × " + checked.cross.fathers.front();
            points.points.push_back(std::move(at));
        }
        if (!points.points.empty()) {
            plot.series.push_back(std::move(points));
            study.plot = std::move(plot);
        }
    }

    static void addDeed(const StudyGround& ground, const Planned& made, Study& study) {
        std::vector<office::CrossEntry> entries;
        for (const breeding::PlannedCross& cross : made.plan.crosses) {
            entries.push_back({made.ground.candidates[cross.mother].parent.id,
                               made.ground.candidates[cross.father].parent.id});
            tellEntered(ground.notes, entries.back(), study);
        }
        const int year = season::yearOfCrosses(ground.today);
        const auto act = office::enterCrosses(*ground.catalogue, entries, year, ground.author);
        if (!act) {
            return;
        }
        study.deed = StudyDeed{Tr::tr("Enter as crosses"),
                               QStringLiteral("C"),
                               Tr::tr("%n cross(es) of %1 entered; Ctrl+Z takes them back.",
                                      nullptr,
                                      static_cast<int>(entries.size()))
                                   .arg(QString::number(year)),
                               std::make_shared<const office::Act>(*act)};
    }

    static void
    tellEntered(const season::StationNotes& notes, const office::CrossEntry& entry, Study& study) {
        for (const season::NotedCross& cross : notes.crosses) {
            if (cross.mother == entry.mother && cross.father == entry.father) {
                study.remarks.push_back(
                    {BULLACE_SENTENCE("Remark", "%1 × %2 is in the collection already, as %3."),
                     {entry.mother, entry.father, cross.id}});
            }
        }
    }

    static void tell(const Planned& made, Study& study) {
        addRemarks(made.merits.remarks, study.remarks);
        addRemarks(made.plan.remarks, study.remarks);
        addRemarks(made.ground.remarks, study.remarks);
        const auto say = [&study](std::string_view sentence, std::size_t count) {
            if (count > 0) {
                study.remarks.push_back({sentence, {static_cast<std::int64_t>(count)}});
            }
        };
        say(BULLACE_SENTENCE("Remark",
                             "Accessions with smaller predictions that were not considered: %1."),
            made.ground.leftOut);
        say(BULLACE_SENTENCE("Remark",
                             "Candidates whose bloom the visits do not bound, so that nobody knows "
                             "whom they meet: %1."),
            made.ground.withoutBloom);
        const auto late = std::ranges::count(
            made.curve, ProgrammeStatus::NotSolved, &breeding::TradeOffPoint::status);
        say(BULLACE_SENTENCE("Remark",
                             "Places of the curve for which no set was found in time: %1."),
            static_cast<std::size_t>(late));
        study.openLeft += made.merits.open;
        study.missedLeft += made.merits.missed;
        study.method =
            Tr::tr(
                "Merits are breeding values predicted by a mixed model over all notes, relatives "
                "lending each other information (REML, Henderson 1976). The set is an integer "
                "programme solved in at most %1 seconds; its gap is told where it is not proven. "
                "The deviation within a family is that of Mendelian sampling; sexes and colours "
                "are "
                "published ratios, and no more than what to expect.")
                .arg(numberText(kPlanSeconds, 0));
        study.cautions << Tr::tr("Pollen, seed and wild plants: permits, quarantine and access "
                                 "rules come first.");
    }
};

} // namespace

std::unique_ptr<StudyView> makeCrossPlanView() {
    return std::make_unique<CrossPlanView>();
}

} // namespace bullace::desk
