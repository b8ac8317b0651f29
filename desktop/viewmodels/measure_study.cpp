// Counts and measures of a season: which accession's are larger, and by how much they vary.
#include "desk/desk_words.hpp"
#include "desk/study_views.hpp"

#include "core/fruit/counts.hpp"
#include "core/fruit/variation.hpp"
#include "core/statistics/description.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <map>

namespace bullace::desk {

using descriptors::DescriptorKind;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::size_t kEnoughForBox = 10;

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(MeasureStudy)
};

bool isNumeric(const vineyard::Asked& asked) {
    const DescriptorKind kind = asked.known.kind;
    return kind == DescriptorKind::Count || kind == DescriptorKind::Measure ||
           kind == DescriptorKind::Percent || kind == DescriptorKind::Score;
}

// What one accession's vines hold, in the shown unit.
struct Noted {
    std::size_t accession = 0;
    fruit::AccessionVines vines;
    std::vector<double> values;
    double median = 0;
};

class MeasureView : public StudyView {
public:
    QString key() const override { return QStringLiteral("measures"); }
    QString title() const override { return Tr::tr("Counts and measures"); }
    QString help() const override {
        return Tr::tr("One descriptor in one season, accession by accession, the greatest median "
                      "first. From ten values on a box stands for them, with the quartiles and the "
                      "extremes; of fewer each value is drawn. The mean of an accession is the "
                      "mean of its vines' means, and its interval comes from how vines differ. "
                      "Enter on a line of the table opens the accession.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        ChoiceGroup what{QStringLiteral("what"), Tr::tr("What"), false, {}};
        for (const vineyard::Asked* asked : ground.catalogue->descriptors()) {
            const season::DescriptorNotes& notes = ground.notes.notesOf(asked->known.code);
            if (isNumeric(*asked) && !notes.numbers.empty()) {
                what.lines.push_back({fromText(asked->known.code), quick::titleWords(*asked)});
            }
        }
        settleChoice(chosen, what);
        const std::string code = toText(chosen[what.key]);
        const std::array<std::string_view, 1> codes{code};
        const ChoiceGroup seasons = seasonChoice(season::yearsOf(ground.notes, codes));
        settleChoice(chosen, seasons);
        const ChoiceGroup accessions = accessionChoice(ground, codes, true);
        settleChoice(chosen, accessions);
        return {what, seasons, accessions};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        const std::string code = toText(chosen.at(QStringLiteral("what")));
        const vineyard::Asked* asked = ground.catalogue->descriptor(code);
        if (asked == nullptr) {
            study.title = title();
            study.tableName = title();
            study.words = Tr::tr("Nothing has been counted or measured yet.");
            return study;
        }
        const int season = chosen.at(QStringLiteral("season")).toInt();
        const Unit unit = unitFor(asked->known.unit, ground.units);
        const std::vector<Noted> noted = notedIn(ground, chosen, code, season, unit);
        const int decimals = shownDecimals(unit, asked->known.decimals);
        study.title = Tr::tr("%1, %2").arg(quick::titleWords(*asked)).arg(season);
        countLeftOut(ground.notes.notesOf(code), season, study);
        addTable(ground, noted, decimals + 1, study);
        addVariance(noted, decimals + 1, study);
        if (asked->known.kind == DescriptorKind::Count) {
            addSpread(noted, study);
        }
        addPlot(ground, noted, *asked, unit, study);
        study.method = Tr::tr("Means of vines' means, 95 % intervals by Student's t over vines; "
                              "variances by Henderson's method I.");
        return study;
    }

private:
    static std::vector<Noted> notedIn(const StudyGround& ground,
                                      const Chosen& chosen,
                                      const std::string& code,
                                      int season,
                                      const Unit& unit) {
        const ChoiceGroup accessions{QStringLiteral("accessions"), {}, true, {}};
        std::map<std::size_t, std::map<std::uint32_t, fruit::VineSamples>> by;
        for (const season::NumberNote& note : ground.notes.notesOf(code).numbers) {
            const std::size_t accession = ground.notes.vines[note.vine].accession;
            const bool isIn =
                season::yearOfDay(note.day) == season &&
                isChosen(chosen, accessions, fromText(ground.notes.accessions[accession].id));
            if (isIn) {
                by[accession][note.vine].push_back(note.value / unit.factor + unit.zero);
            }
        }
        std::vector<Noted> all;
        for (auto& [accession, vines] : by) {
            Noted noted{accession, {}, {}, 0};
            for (auto& [vine, samples] : vines) {
                noted.values.insert(noted.values.end(), samples.begin(), samples.end());
                noted.vines.push_back(std::move(samples));
            }
            std::ranges::sort(noted.values);
            noted.median = statistics::quantileOf(noted.values, 0.5);
            all.push_back(std::move(noted));
        }
        std::ranges::stable_sort(all, std::ranges::greater(), &Noted::median);
        return all;
    }

    static void
    addTable(const StudyGround& ground, const std::vector<Noted>& all, int decimals, Study& study) {
        study.tableName = study.title;
        study.columns = {{Tr::tr("Accession"), 22, false, true},
                         {Tr::tr("Vines"), 6, true},
                         {Tr::tr("Values"), 7, true},
                         {Tr::tr("Mean (95 %)"), 24, true},
                         {Tr::tr("SD of vines"), 10, true},
                         {Tr::tr("Median"), 9, true},
                         {Tr::tr("Least to greatest"), 16, true}};
        for (const Noted& noted : all) {
            const auto summary = fruit::summaryOfVines(noted.vines);
            GridRow row;
            row.key = fromText(ground.notes.accessions[noted.accession].id);
            row.cells << fromText(ground.notes.accessions[noted.accession].words)
                      << QString::number(noted.vines.size()) << QString::number(noted.values.size())
                      << estimateText({summary->mean, {}, summary->interval}, decimals)
                      << (summary->sd ? numberText(*summary->sd, decimals) : QString())
                      << numberText(noted.median, decimals)
                      << intervalText({summary->least, summary->greatest}, decimals - 1);
            study.rows.push_back(std::move(row));
        }
        study.words = Tr::tr(
            "%n accession(s), the greatest median first.", nullptr, static_cast<int>(all.size()));
    }

    static void addVariance(const std::vector<Noted>& all, int decimals, Study& study) {
        std::vector<fruit::AccessionVines> vines;
        for (const Noted& noted : all) {
            vines.push_back(noted.vines);
        }
        const auto parts = fruit::varianceParts(vines);
        if (!parts) {
            return;
        }
        const auto add = [&study, decimals](std::string_view sentence,
                                            const std::optional<double>& variance) {
            if (variance) {
                study.remarks.push_back({sentence, {Remark::Number{*variance, decimals + 1}}});
            }
        };
        add(BULLACE_SENTENCE("Remark", "Variance between accessions: %1."),
            parts->betweenAccessions);
        add(BULLACE_SENTENCE("Remark", "Variance between vines of an accession: %1."),
            parts->betweenVines);
        add(BULLACE_SENTENCE("Remark", "Variance within a vine: %1."), parts->withinVine);
        study.remarks.insert(study.remarks.end(), parts->remarks.begin(), parts->remarks.end());
        addPlan(all, *parts, study);
    }

    // How the counts of the chosen accessions come in heaps.
    static void addSpread(const std::vector<Noted>& all, Study& study) {
        std::vector<fruit::CountFrequency> counts;
        for (const Noted& noted : all) {
            for (const double value : noted.values) {
                counts.push_back({static_cast<std::uint64_t>(std::max(0.0, value)), 1});
            }
        }
        const auto fit = fruit::fitCounts(counts);
        if (!fit) {
            return;
        }
        study.remarks.insert(study.remarks.end(), fit->remarks.begin(), fit->remarks.end());
        if (fit->k) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "All counts together: negative binomial, "
                                                      "mean %1, k %2 (95 %: %3 to %4)."),
                                     {Remark::Number{fit->mean, 1},
                                      Remark::Number{fit->k->value, 2},
                                      Remark::Number{fit->k->interval->low, 2},
                                      Remark::Number{fit->k->interval->high, 2}}});
        }
    }

    // What it takes to know an accession's mean to a tenth of it.
    static void
    addPlan(const std::vector<Noted>& all, const fruit::VarianceParts& parts, Study& study) {
        if (!parts.betweenVines || !parts.withinVine || all.empty() || !(parts.mean > 0)) {
            return;
        }
        const auto plan =
            fruit::twoStagePlan(*parts.betweenVines, *parts.withinVine, parts.mean / 20);
        if (plan) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "For a mean within a tenth of it (95 %), an "
                                                      "accession takes vines: %1, with values on "
                                                      "each: %2, a further vine costing as much "
                                                      "as a further value."),
                                     {static_cast<std::int64_t>(plan->vines),
                                      static_cast<std::int64_t>(plan->samplesEach)}});
        }
    }

    static void addPlot(const StudyGround& ground,
                        const std::vector<Noted>& all,
                        const vineyard::Asked& asked,
                        const Unit& unit,
                        Study& study) {
        if (all.empty()) {
            return;
        }
        report::Plot plot;
        plot.title = toText(study.title);
        plot.x.kind = report::PlotAxis::Names;
        plot.x.title = toText(Tr::tr("Accession"));
        plot.y.title = toText(quick::titleWords(asked));
        plot.y.unit = std::string(unit.shown);
        plot.y.beginsAtZero = asked.known.kind == DescriptorKind::Count;
        report::PlotSeries boxes;
        boxes.kind = report::PlotSeries::Boxes;
        boxes.name = toText(Tr::tr("Quartiles and extremes"));
        report::PlotSeries points;
        points.name = toText(Tr::tr("Values of fewer than ten"));
        std::size_t count = 0;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const Noted& noted = all[i];
            plot.x.names.push_back(ground.notes.accessions[noted.accession].id);
            count += noted.values.size();
            addOne(noted, static_cast<double>(i), plot.x.names.back(), boxes, points);
        }
        for (report::PlotSeries* series : {&boxes, &points}) {
            if (!series->points.empty()) {
                plot.series.push_back(std::move(*series));
            }
        }
        plot.notes.count = count;
        plot.notes.missing = toText(Tr::tr("What is open or was not observed is left out."));
        study.plot = std::move(plot);
    }

    static void addOne(const Noted& noted,
                       double at,
                       const std::string& label,
                       report::PlotSeries& boxes,
                       report::PlotSeries& points) {
        if (noted.values.size() < kEnoughForBox) {
            for (const double value : noted.values) {
                report::PlotPoint point;
                point.x = at;
                point.y = value;
                point.label = label;
                points.points.push_back(std::move(point));
            }
            return;
        }
        report::PlotPoint box;
        box.x = at;
        box.y = noted.median;
        box.yLow = noted.values.front();
        box.yHigh = noted.values.back();
        box.boxLow = statistics::quantileOf(noted.values, 0.25);
        box.boxHigh = statistics::quantileOf(noted.values, 0.75);
        box.weight = static_cast<double>(noted.values.size());
        box.label = label;
        boxes.points.push_back(std::move(box));
    }
};

} // namespace

std::unique_ptr<StudyView> makeMeasureView() {
    return std::make_unique<MeasureView>();
}

} // namespace bullace::desk
