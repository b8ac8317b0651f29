#include "desk/prediction_shown.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(PredictionShown)
};

// 95 % of a normal distribution: predictions are many, and their variances are taken as known.
constexpr double kNormal = 1.959963984540054;
// More names than an axis can say: the table has them all.
constexpr std::size_t kMostDrawn = 120;

struct Predicted {
    const trials::Prediction* prediction = nullptr;
    std::size_t records = 0;
};

// The greatest first.
std::vector<Predicted> sortedPredictions(const ShownPrediction& shown,
                                         const trials::RandomPredictions& of) {
    const trials::Factor& accession = *shown.trial.table.factor(season::kAccessionFactor);
    std::map<std::string, std::size_t> records;
    for (const std::uint32_t level : accession.of) {
        ++records[accession.levels[level]];
    }
    std::vector<Predicted> sorted;
    for (const trials::Prediction& prediction : of.levels) {
        const auto found = records.find(prediction.level);
        sorted.push_back({&prediction, found == records.end() ? 0 : found->second});
    }
    std::ranges::stable_sort(sorted, std::ranges::greater(), [](const Predicted& each) {
        return each.prediction->total;
    });
    return sorted;
}

GridRow predictionRow(const ShownPrediction& shown,
                      const trials::Prediction& prediction,
                      std::size_t records) {
    const int decimals = shown.tried.decimals + 1;
    GridRow row;
    row.key = fromText(prediction.level);
    row.cells << accessionWords(shown.ground, prediction.level)
              << numberText(prediction.total, decimals)
              << numberText(prediction.totalStandardError, decimals)
              << numberText(prediction.value, decimals)
              << (prediction.reliability ? numberText(*prediction.reliability, 2) : QString())
              << QString::number(records);
    return row;
}

report::PlotPoint predictionPoint(const trials::Prediction& prediction, double x) {
    report::PlotPoint point;
    point.x = x;
    point.y = prediction.total;
    point.yLow = prediction.total - kNormal * prediction.totalStandardError;
    point.yHigh = prediction.total + kNormal * prediction.totalStandardError;
    point.label = prediction.level;
    return point;
}

// What both pictures say below themselves.
void addNotes(const ShownPrediction& shown, report::Plot& plot) {
    plot.notes.count = shown.fit.n;
    plot.notes.missing = toText(Tr::tr("What is open or was not observed is left out."));
}

report::Plot predictionPlot(const ShownPrediction& shown,
                            const std::vector<Predicted>& sorted,
                            const QString& title) {
    report::PlotSeries noted;
    noted.name = toText(Tr::tr("Prediction and 95 % interval"));
    report::PlotSeries others;
    others.name = toText(Tr::tr("Without records, from relatives"));
    report::Plot plot;
    for (std::size_t i = 0; i < std::min(sorted.size(), kMostDrawn); ++i) {
        const Predicted& each = sorted[i];
        (each.records > 0 ? noted : others)
            .points.push_back(predictionPoint(*each.prediction, static_cast<double>(i)));
        plot.x.names.push_back(each.prediction->level);
    }
    plot.title = toText(title);
    plot.x.kind = report::PlotAxis::Names;
    plot.x.title = toText(Tr::tr("Accession"));
    plot.y.title = toText(shown.tried.title);
    plot.y.unit = shown.tried.unit;
    for (report::PlotSeries* series : {&noted, &others}) {
        if (!series->points.empty()) {
            plot.series.push_back(std::move(*series));
        }
    }
    addNotes(shown, plot);
    return plot;
}

// Of all variance, percent.
double shareOf(const ShownPrediction& shown, const trials::VarianceComponent& component) {
    double sum = 0;
    for (const trials::VarianceComponent& each : shown.fit.variances) {
        sum += each.value;
    }
    return sum > 0 ? 100 * component.value / sum : 0;
}

QString errorText(const trials::VarianceComponent& component, int decimals) {
    const auto& error =
        component.standardError ? component.standardError : component.averageStandardError;
    return error ? numberText(*error, decimals) : QString();
}

GridRow varianceRow(const ShownPrediction& shown, const trials::VarianceComponent& component) {
    const int decimals = 2 * (shown.tried.decimals + 1);
    const auto tested =
        std::ranges::find(shown.fit.randomTests, component.name, &trials::RandomTest::name);
    const bool isTested = tested != shown.fit.randomTests.end();
    GridRow row;
    row.key = QStringLiteral("term ") + fromText(component.name);
    row.cells << termWords(component.name)
              << (component.isAtBoundary ? Tr::tr("0, on its boundary")
                                         : numberText(component.value, decimals))
              << errorText(component, decimals) << numberText(shareOf(shown, component), 1)
              << (isTested ? numberText(tested->likelihoodRatio, 2) : QString())
              << (isTested ? chanceText(tested->p) : QString());
    return row;
}

void tellHeritability(const trials::Heritability& of, Study& study) {
    const auto tell = [&study](std::string_view sentence, const std::optional<double>& value) {
        if (value) {
            study.remarks.push_back({sentence, {Remark::Number{*value, 2}}});
        }
    };
    tell(BULLACE_SENTENCE("Remark", "Heritability of an accession's mean by Cullis: %1."),
         of.cullis);
    tell(BULLACE_SENTENCE("Remark", "Heritability of an accession's mean by Piepho: %1."),
         of.piepho);
    tell(BULLACE_SENTENCE("Remark", "Heritability on an entry-mean basis: %1."), of.entryMean);
    tell(BULLACE_SENTENCE("Remark", "Heritability of a single record: %1."), of.singlePlot);
    study.remarks.insert(study.remarks.end(), of.remarks.begin(), of.remarks.end());
}

} // namespace

void showPredictions(const ShownPrediction& shown, Study& study) {
    const trials::RandomPredictions* of = shown.fit.predictionsOf(season::kAccessionFactor);
    if (of == nullptr) {
        study.words = Tr::tr("Nothing can be predicted.");
        return;
    }
    study.columns = {{Tr::tr("Accession"), 20, false, true},
                     {Tr::tr("Prediction"), 10, true},
                     {Tr::tr("SE"), 8, true},
                     {Tr::tr("Above the mean"), 10, true},
                     {Tr::tr("Reliability"), 9, true},
                     {Tr::tr("Records"), 8, true}};
    const std::vector<Predicted> sorted = sortedPredictions(shown, *of);
    for (const Predicted& each : sorted) {
        study.rows.push_back(predictionRow(shown, *each.prediction, each.records));
    }
    study.words = Tr::tr("%n accession(s), the greatest prediction first.",
                         nullptr,
                         static_cast<int>(study.rows.size()));
    if (sorted.size() > kMostDrawn) {
        study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                  "The picture has the first %1 accessions; "
                                                  "the table has all."),
                                 {static_cast<std::int64_t>(kMostDrawn)}});
    }
    study.plot = predictionPlot(shown, sorted, study.title);
}

void showVariances(const ShownPrediction& shown, Study& study) {
    study.columns = {{Tr::tr("What varies"), 20, false, true},
                     {Tr::tr("Variance"), 10, true},
                     {Tr::tr("SE"), 10, true},
                     {Tr::tr("Share, %"), 8, true},
                     {Tr::tr("Likelihood ratio"), 11, true},
                     {Tr::tr("p"), 8, true}};
    report::Plot plot;
    report::PlotSeries bars;
    bars.kind = report::PlotSeries::Bars;
    bars.name = toText(Tr::tr("Share of all variance"));
    for (const trials::VarianceComponent& component : shown.fit.variances) {
        study.rows.push_back(varianceRow(shown, component));
        report::PlotPoint point;
        point.x = static_cast<double>(plot.x.names.size());
        point.y = shareOf(shown, component);
        point.label = toText(termWords(component.name));
        plot.x.names.push_back(point.label);
        bars.points.push_back(std::move(point));
    }
    study.words = Tr::tr("What the records vary by, beside the seasons.");
    if (shown.heritability) {
        tellHeritability(*shown.heritability, study);
    }
    plot.title = toText(study.title);
    plot.x.kind = report::PlotAxis::Names;
    plot.x.title = toText(Tr::tr("What varies"));
    plot.y.title = toText(Tr::tr("Share of all variance"));
    plot.y.unit = std::string("%");
    plot.y.beginsAtZero = true;
    plot.series.push_back(std::move(bars));
    addNotes(shown, plot);
    study.plot = std::move(plot);
}

} // namespace bullace::desk
