#include "desk/trial_shown.hpp"

#include "desk/study_remarks.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using trials::AdjustedMean;
using trials::Comparisons;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(TrialShown)
};

constexpr int kPlaces = 3; // of F, W and the like

bool isAsItIs(const ShownTrial& trial) {
    return trial.scaled.scale() == trials::Scale::AsItIs;
}

// The levels that could be estimated, the greatest mean first.
std::vector<std::size_t> order(const trials::AdjustedMeans& means) {
    std::vector<std::size_t> levels;
    for (std::size_t i = 0; i < means.levels.size(); ++i) {
        if (means.levels[i].mean) {
            levels.push_back(i);
        }
    }
    std::ranges::stable_sort(levels, std::ranges::greater(), [&means](std::size_t i) {
        return means.levels[i].mean->value;
    });
    return levels;
}

// "abc"; from four that follow one another on "a–d".
QString letterOf(const std::vector<std::string>& letters, std::size_t level) {
    if (level >= letters.size()) {
        return {};
    }
    constexpr std::size_t kFew = 3;
    const std::string& all = letters[level];
    bool isRun = all.size() > kFew;
    for (std::size_t i = 1; i < all.size(); ++i) {
        isRun = isRun && all[i] == all[i - 1] + 1;
    }
    return isRun
               ? QStringLiteral("%1–%2").arg(QLatin1Char(all.front())).arg(QLatin1Char(all.back()))
               : fromText(all);
}

const trials::ReferenceDifference* toReference(const Comparisons& comparisons, std::size_t level) {
    const auto found =
        std::ranges::find(comparisons.toReference, level, &trials::ReferenceDifference::level);
    return found == comparisons.toReference.end() ? nullptr : &*found;
}

void addMeanRow(const ShownTrial& trial, std::size_t level, Study& study) {
    const trials::TreatmentMeans& treatment = trial.analysis.treatments.front();
    const AdjustedMean& mean = treatment.means.levels[level];
    const int decimals = trial.tried.decimals + 1;
    GridRow row;
    row.key = fromText(mean.level);
    row.cells << accessionWords(trial.ground, mean.level) << QString::number(mean.n)
              << estimateText(trial.scaled.back(*mean.mean), decimals);
    const auto& error = mean.mean->standardError;
    row.cells << (isAsItIs(trial) && error ? numberText(*error, decimals + 1) : QString())
              << letterOf(treatment.comparisons.letters, level)
              << letterOf(treatment.comparisons.lettersByT, level);
    if (!trial.reference.isEmpty()) {
        const auto* difference = toReference(treatment.comparisons, level);
        row.cells << (difference != nullptr && isAsItIs(trial)
                          ? estimateText(difference->value, decimals)
                          : QString())
                  << (difference != nullptr ? chanceText(difference->p) : QString());
    }
    study.rows.push_back(std::move(row));
}

void addMeanPoint(const ShownTrial& trial,
                  std::size_t level,
                  report::Plot& plot,
                  report::PlotSeries& means) {
    const trials::TreatmentMeans& treatment = trial.analysis.treatments.front();
    const AdjustedMean& mean = treatment.means.levels[level];
    const statistics::Estimate told = trial.scaled.back(*mean.mean);
    report::PlotPoint point;
    point.x = static_cast<double>(plot.x.names.size());
    point.y = told.value;
    if (told.interval && std::isfinite(told.interval->low) && std::isfinite(told.interval->high)) {
        point.yLow = told.interval->low;
        point.yHigh = told.interval->high;
    }
    point.label = mean.level;
    const QString letters = letterOf(treatment.comparisons.letters, level);
    plot.x.names.push_back(toText((fromText(mean.level) + QLatin1Char(' ') + letters).trimmed()));
    means.points.push_back(std::move(point));
}

void tellNumber(std::string_view sentence,
                std::optional<double> value,
                int decimals,
                Study& study) {
    if (value && std::isfinite(*value)) {
        study.remarks.push_back({sentence, {Remark::Number{*value, decimals}}});
    }
}

void tellComparisons(const ShownTrial& trial, Study& study) {
    const Comparisons& comparisons = trial.analysis.treatments.front().comparisons;
    const int decimals = trial.tried.decimals + 1;
    tellNumber(
        BULLACE_SENTENCE("Remark", "Standard error of a difference, the mean over all pairs: %1."),
        comparisons.meanError,
        decimals,
        study);
    tellNumber(BULLACE_SENTENCE("Remark",
                                "Least significant difference of two means (5 %, each pair by "
                                "itself): %1."),
               comparisons.leastSignificant,
               decimals,
               study);
    tellNumber(BULLACE_SENTENCE("Remark",
                                "Least difference by Tukey's test (5 %, all pairs together): %1."),
               comparisons.leastTukey,
               decimals,
               study);
}

QString blockWords(const std::string& block) {
    return block == season::kBlockFactor ? Tr::tr("blocks of the vineyard")
           : block == season::kRowFactor ? Tr::tr("rows")
                                         : Tr::tr("replicates");
}

void tellBlocks(const ShownTrial& trial, Study& study) {
    for (const trials::BlockEfficiency& each : trial.analysis.efficiencies) {
        study.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Efficiency of the %1: %2. Without them it would take that many "
                              "times the replicates; below 1 they cost more than they gave."),
             {toText(blockWords(each.block)), Remark::Number{each.relative, 2}}});
    }
    if (trial.plots.mostVines > 1) {
        study.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Vines of one accession in one replicate are taken together, at most "
                              "%1: they are no replicates of one another."),
             {static_cast<std::int64_t>(trial.plots.mostVines)}});
    }
    const auto outside = std::ranges::count(trial.plots.plotOf, season::kNoPlot);
    if (outside > 0) {
        study.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "Vines that stand in no replicate, left out: %1."),
             {static_cast<std::int64_t>(outside)}});
    }
}

void tellTest(std::string_view sentence,
              const std::optional<trials::GroupTest>& test,
              Study& study) {
    if (test) {
        study.remarks.push_back({sentence, {toText(chanceText(test->p))}});
    }
}

void tellChecks(const ShownTrial& trial, Study& study) {
    const trials::ResidualChecks& checks = trial.analysis.checks;
    if (checks.shapiroW && checks.shapiroP) {
        study.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Residuals against a normal distribution (Shapiro and Wilk): W %1, p "
                              "%2."),
             {Remark::Number{*checks.shapiroW, kPlaces}, toText(chanceText(checks.shapiroP))}});
    }
    tellTest(
        BULLACE_SENTENCE("Remark", "Equal variances (Bartlett): p %1."), checks.bartlett, study);
    tellTest(BULLACE_SENTENCE("Remark", "Equal variances (Brown and Forsythe): p %1."),
             checks.brownForsythe,
             study);
    tellTest(BULLACE_SENTENCE("Remark", "Accessions and replicates add up (Tukey): p %1."),
             checks.nonAdditivity,
             study);
    tellTest(BULLACE_SENTENCE("Remark", "Equal means where variances are not alike (Welch): p %1."),
             trial.analysis.welch,
             study);
    if (!checks.outliers.empty()) {
        study.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Records far off from the others, to be looked at again: %1. The "
                              "residuals over the block have them."),
             {static_cast<std::int64_t>(checks.outliers.size())}});
    }
}

GridRow varianceRow(const ShownTrial& trial, const trials::VarianceLine& line) {
    const int decimals = isAsItIs(trial) ? trial.tried.decimals + 1 : kPlaces;
    const auto text = [](const std::optional<double>& value, int places) {
        return value ? numberText(*value, places) : QString();
    };
    GridRow row;
    row.key = QStringLiteral("term ") + fromText(line.term);
    row.cells << termWords(line.term) << QString::number(line.degreesOfFreedom)
              << numberText(line.sumOfSquares, decimals) << text(line.meanSquare, decimals)
              << text(line.f, 2) << chanceText(line.p);
    return row;
}

report::PlotAxis responseAxis(const ShownTrial& trial) {
    report::PlotAxis axis;
    axis.title = toText(trial.tried.title);
    axis.unit = trial.tried.unit;
    return axis;
}

} // namespace

const trials::VarianceLine* lineOf(const ShownTrial& trial, std::string_view term) {
    const auto& lines = trial.analysis.model.typeTwo;
    const auto found = std::ranges::find(lines, term, &trials::VarianceLine::term);
    return found == lines.end() ? nullptr : &*found;
}

void tellAnalysis(const ShownTrial& trial, Study& study) {
    if (isAsItIs(trial)) {
        tellNumber(BULLACE_SENTENCE("Remark", "Coefficient of variation: %1 %."),
                   trial.analysis.model.cvPercent,
                   1,
                   study);
        tellComparisons(trial, study);
    }
    tellBlocks(trial, study);
    tellChecks(trial, study);
    addRemarks(trial.analysis.remarks, study.remarks);
}

void showMeans(const ShownTrial& trial, Study& study) {
    const trials::TreatmentMeans& treatment = trial.analysis.treatments.front();
    study.columns = {{Tr::tr("Accession"), 20, false, true},
                     {Tr::tr("Plots"), 6, true},
                     {Tr::tr("Adjusted mean (95 %)"), 22, true},
                     {Tr::tr("SE"), 7, true},
                     {Tr::tr("Tukey"), 8},
                     {Tr::tr("By least difference"), 10}};
    if (!trial.reference.isEmpty()) {
        study.columns.push_back({Tr::tr("Less %1 (Dunnett)").arg(trial.reference), 20, true});
        study.columns.push_back({Tr::tr("p"), 7, true});
    }
    report::Plot plot;
    plot.title = toText(study.title);
    plot.x.kind = report::PlotAxis::Names;
    plot.x.title = toText(Tr::tr("Accession, with Tukey's letters"));
    plot.y = responseAxis(trial);
    report::PlotSeries means;
    means.name = toText(Tr::tr("Adjusted mean and 95 % interval"));
    for (const std::size_t level : order(treatment.means)) {
        addMeanRow(trial, level, study);
        addMeanPoint(trial, level, plot, means);
    }
    if (means.points.empty()) {
        study.words = Tr::tr("No mean can be put right for what repeats: accessions stand in "
                             "blocks or rows that share none of them. Choose other blocks, or "
                             "vines as what repeats.");
        return;
    }
    plot.series.push_back(std::move(means));
    plot.notes.count = trial.analysis.model.n;
    plot.notes.missing = toText(Tr::tr("What is open or was not observed is left out."));
    study.plot = std::move(plot);
}

void showVariance(const ShownTrial& trial, Study& study) {
    study.columns = {{Tr::tr("Source"), 18, false, true},
                     {Tr::tr("Degrees of freedom"), 12, true},
                     {Tr::tr("Sum of squares"), 14, true},
                     {Tr::tr("Mean square"), 14, true},
                     {Tr::tr("F"), 8, true},
                     {Tr::tr("p"), 8, true}};
    for (const trials::VarianceLine& line : trial.analysis.model.typeTwo) {
        study.rows.push_back(varianceRow(trial, line));
    }
    report::Plot plot;
    plot.title = toText(study.title);
    plot.x = responseAxis(trial);
    plot.x.title = toText(Tr::tr("Fitted"));
    plot.y.title = toText(Tr::tr("Residual"));
    if (!isAsItIs(trial)) {
        plot.x.unit.clear(); // of the scale
    }
    plot.y.unit = plot.x.unit;
    report::PlotSeries points;
    points.name = toText(Tr::tr("Plots"));
    const trials::Factor& accession = *trial.plots.table.factor(season::kAccessionFactor);
    for (const trials::FittedRow& row : trial.analysis.rows) {
        report::PlotPoint point;
        point.x = row.fitted;
        point.y = row.residual;
        point.label = accession.levels[accession.of[row.row]];
        points.points.push_back(std::move(point));
    }
    plot.series.push_back(std::move(points));
    plot.marks = {{0, toText(Tr::tr("as fitted")), true}};
    plot.notes.count = trial.analysis.model.n;
    plot.notes.missing = toText(Tr::tr("What is open or was not observed is left out."));
    study.plot = std::move(plot);
}

} // namespace bullace::desk
