// From which temperature cold kills buds: freezing tests of an accession's buds as curves of kill,
// with the temperatures that kill a tenth, half and nine tenths.
#include "desk/kill_plot.hpp"
#include "desk/study_remarks.hpp"
#include "desk/study_views.hpp"

#include "core/hardiness/kill_curve.hpp"
#include "core/season/station_bench.hpp"
#include "quick/trade_words.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace bullace::desk {

using hardiness::KillCurve;
using hardiness::Link;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::string_view kFreezeTest = "freeze-test";
constexpr std::size_t kMostCurves = 6; // that can be told apart
constexpr std::size_t kMostBands = 3;  // more cover one another
const QString kBud = QStringLiteral("bud");
const QString kWinter = QStringLiteral("winter");
const QString kLink = QStringLiteral("link");

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(ColdStudy)
};

// The winter that a day belongs to, by the year in which it began.
int winterOf(CivilDate day) {
    const int year = static_cast<int>(day.year());
    return day.month() >= std::chrono::July ? year : year - 1;
}

QString winterWords(int year) {
    return QStringLiteral("%1/%2").arg(year).arg((year + 1) % 100, 2, 10, QLatin1Char('0'));
}

// The tests of one accession that were chosen.
using ByAccession = std::map<std::size_t, std::vector<season::FreezeTest>>;

QString limitsWords(hardiness::LimitsBy by) {
    switch (by) {
    case hardiness::LimitsBy::Profile:
        return Tr::tr("profile");
    case hardiness::LimitsBy::ScaledFieller:
        return Tr::tr("Fieller, widened");
    case hardiness::LimitsBy::ScaledDelta:
        return Tr::tr("delta, widened");
    }
    return {};
}

class ColdView : public StudyView {
public:
    QString key() const override { return QStringLiteral("cold"); }
    QString title() const override { return Tr::tr("Killing temperatures of buds"); }
    QString help() const override {
        return Tr::tr("Freezing tests of buds, accession by accession, of one winter and one kind "
                      "of bud. Points are shares of dead buds with exact 95 % limits, larger where "
                      "more buds were cut; the curve is drawn over the temperatures that were "
                      "tested and no further, with its 95 % band where three accessions or "
                      "fewer are chosen, and at half a lying stroke shows the limits of the "
                      "temperature that kills half. Colder is to the right.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        std::map<int, int> winters;
        std::map<std::string, int> buds;
        std::map<QString, QString> names;
        for (const season::FreezeTest& test : season::freezeTestsIn(ground.notes)) {
            --winters[winterOf(season::dateOfDay(test.day))];
            --buds[test.bud];
            const season::NotedAccession& accession = ground.notes.accessions[test.accession];
            names[fromText(accession.id)] = fromText(accession.words);
        }
        ChoiceGroup winter{kWinter, Tr::tr("Winter"), false, {}};
        for (auto at = winters.rbegin(); at != winters.rend(); ++at) {
            winter.lines.push_back({QString::number(at->first), winterWords(at->first)});
        }
        ChoiceGroup bud{kBud, Tr::tr("Buds"), false, {}};
        for (const char* kind : {"primary", "secondary", "tertiary"}) {
            if (buds.contains(kind)) {
                bud.lines.push_back({QLatin1String(kind), quick::tradeWord(kind)});
            }
        }
        ChoiceGroup link{kLink, Tr::tr("Shape of the curve"), false, {}};
        link.lines = {{QStringLiteral("logit"), Tr::tr("logit")},
                      {QStringLiteral("probit"), Tr::tr("probit")},
                      {QStringLiteral("cloglog"), Tr::tr("complementary log-log")}};
        ChoiceGroup accessions{QStringLiteral("accessions"), Tr::tr("Accessions"), true, {}};
        for (const auto& [id, words] : names) {
            accessions.lines.push_back({id, words});
        }
        const std::vector<ChoiceGroup> groups{winter, bud, link, accessions};
        for (const ChoiceGroup& group : groups) {
            settleChoice(chosen, group);
        }
        return groups;
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        study.cautions << Tr::tr(
            "Killing temperatures are estimates from the station's own tests of cut "
            "buds, with their uncertainty; a whole vine dies at other temperatures. "
            "Official forecasts, local codes and licensed practice come first.");
        const ByAccession tests = chosenTests(ground, chosen);
        if (tests.empty()) {
            study.words = Tr::tr("No freezing test of buds has been noted yet.");
            return study;
        }
        const Link link = linkOf(chosen.at(kLink));
        study.title = Tr::tr("Killing temperatures, %1 buds, winter %2")
                          .arg(quick::tradeWord(toText(chosen.at(kBud))),
                               winterWords(chosen.at(kWinter).toInt()));
        study.tableName = study.title;
        study.columns = {{Tr::tr("Accession"), 16, false, true},
                         {Tr::tr("Buds"), 6, true},
                         {Tr::tr("10 % dead, °C"), 20, true},
                         {Tr::tr("Half dead, °C (95 %)"), 22, true},
                         {Tr::tr("90 % dead, °C"), 20, true},
                         {Tr::tr("Limits"), 14}};
        report::Plot plot = emptyKillPlot(study.title);
        std::vector<hardiness::FreezeGroup> groups;
        std::size_t drawn = 0; // buds
        const bool hasBands = tests.size() <= kMostBands;
        for (const auto& [accession, of] : tests) {
            const auto rows = rowsOf(of);
            const auto curve = hardiness::killCurve(rows, {link, {}, {0.1, 0.5, 0.9}});
            const std::string& id = ground.notes.accessions[accession].id;
            if (!curve) {
                study.remarks.push_back(
                    {BULLACE_SENTENCE("Remark",
                                      "%1 is left out: a test has more dead buds than "
                                      "were cut, or none."),
                     {id}});
                continue;
            }
            addRow(ground.notes.accessions[accession], *curve, study);
            if (groups.size() < kMostCurves) {
                addKillCurve(id, rows, *curve, {groups.size(), hasBands}, plot);
                drawn += static_cast<std::size_t>(curve->counted);
            }
            groups.push_back({id, rows});
        }
        finish(std::move(plot), drawn, tests, study);
        addDifferences(groups, link, study);
        study.method =
            Tr::tr("Maximum likelihood by accession, %1; limits by profile likelihood, or "
                   "widened where the counts vary more than chance does.")
                .arg(fromText(hardiness::nameOf(link)));
        countLeftOut(ground.notes.notesOf(kFreezeTest), 0, study);
        return study;
    }

private:
    static Link linkOf(const QString& word) {
        return word == QStringLiteral("probit")    ? Link::Probit
               : word == QStringLiteral("cloglog") ? Link::ComplementaryLogLog
                                                   : Link::Logit;
    }

    static ByAccession chosenTests(const StudyGround& ground, const Chosen& chosen) {
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        ByAccession tests;
        for (season::FreezeTest& test : season::freezeTestsIn(ground.notes)) {
            const bool isIn =
                winterOf(season::dateOfDay(test.day)) == chosen.at(kWinter).toInt() &&
                test.bud == toText(chosen.at(kBud)) &&
                isChosen(chosen, group, fromText(ground.notes.accessions[test.accession].id));
            if (isIn) {
                tests[test.accession].push_back(std::move(test));
            }
        }
        return tests;
    }

    static std::vector<hardiness::FreezeRow> rowsOf(const std::vector<season::FreezeTest>& tests) {
        std::vector<hardiness::FreezeRow> rows;
        for (const season::FreezeTest& test : tests) {
            rows.push_back(test.row);
        }
        return rows;
    }

    static QString pointText(const KillCurve& curve, double part) {
        for (const hardiness::KillPoint& point : curve.points) {
            if (point.part == part) {
                const QString text = estimateText(point.temperatureC, 1);
                return point.isBeyondTested ? Tr::tr("%1, beyond what was tested").arg(text) : text;
            }
        }
        return {};
    }

    static void
    addRow(const season::NotedAccession& accession, const KillCurve& curve, Study& study) {
        GridRow row;
        row.key = fromText(accession.id);
        const bool hasCurve = !curve.points.empty();
        QString half = pointText(curve, 0.5);
        if (!hasCurve && curve.meanKill) {
            half = estimateText(curve.meanKill->temperatureC, 1);
        }
        row.cells << fromText(accession.words) << QString::number(curve.counted)
                  << pointText(curve, 0.1) << (half.isEmpty() ? Tr::tr("cannot be told") : half)
                  << pointText(curve, 0.9)
                  << (hasCurve         ? limitsWords(curve.points.front().limitsBy)
                      : curve.meanKill ? Tr::tr("Spearman-Kärber")
                                       : QString());
        for (const Remark& remark : curve.remarks) {
            tellOf(row.key, remark, study);
        }
        study.rows.push_back(std::move(row));
    }

    static void
    finish(report::Plot plot, std::size_t buds, const ByAccession& tests, Study& study) {
        study.words = Tr::tr("%n accession(s) tested.", nullptr, static_cast<int>(tests.size()));
        if (tests.size() > kMostCurves) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "The picture has the first %1 accessions; "
                                                      "the table has all."),
                                     {static_cast<std::int64_t>(kMostCurves)}});
        }
        if (plot.series.empty()) {
            return;
        }
        plot.notes.count = buds;
        std::int32_t first = std::numeric_limits<std::int32_t>::max();
        std::int32_t last = std::numeric_limits<std::int32_t>::min();
        for (const auto& [accession, of] : tests) {
            for (const season::FreezeTest& test : of) {
                first = std::min(first, test.day);
                last = std::max(last, test.day);
            }
        }
        plot.notes.from = season::dateOfDay(first);
        plot.notes.to = season::dateOfDay(last);
        plot.notes.missing = toText(Tr::tr("Tests that are open are left out."));
        study.plot = std::move(plot);
    }

    // Accessions against one another by one slope.
    static void
    addDifferences(const std::vector<hardiness::FreezeGroup>& groups, Link link, Study& study) {
        if (groups.size() < 2) {
            return;
        }
        const auto compared = hardiness::compareKill(groups, link);
        if (!compared) {
            return;
        }
        std::size_t certain = 0;
        for (const auto& difference : compared->differences) {
            certain += difference.pHolm < 0.05 ? 1U : 0U;
        }
        if (!compared->differences.empty()) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "Of %1 differences between two accessions, "
                                                      "%2 are beyond doubt when all are looked at "
                                                      "together (one slope, Holm)."),
                                     {static_cast<std::int64_t>(compared->differences.size()),
                                      static_cast<std::int64_t>(certain)}});
        }
        addRemarks(compared->remarks, study.remarks);
    }
};

} // namespace

std::unique_ptr<StudyView> makeColdView() {
    return std::make_unique<ColdView>();
}

} // namespace bullace::desk
