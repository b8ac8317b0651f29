// The strata of a split-plot trial as lines of one linear model, each against its own error.
#include "core/trials/split_plot.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::trials {

namespace {

Error invalid(const std::string& message) {
    return {ErrorCode::InvalidInput, message, {}};
}

// How many levels each factor has, among complete rows.
struct Shape {
    double blocks = 0;
    double whole = 0;
    double sub = 0;
    bool isComplete = false; // each combination once in each block
};

Result<Shape> shapeOf(const TrialTable& taken, const SplitPlotPlan& plan) {
    const Factor* block = taken.factor(plan.block);
    const Factor* whole = taken.factor(plan.wholePlot);
    const Factor* sub = taken.factor(plan.subPlot);
    for (const Factor* factor : {block, whole, sub}) {
        if (factor->levels.size() < 2) {
            return invalid("There is only one " + factor->name +
                           " among the complete records; a split-plot trial needs two at least.");
        }
    }
    const Factor cells = combined(std::array{block, whole, sub});
    std::vector<char> seen(cells.levels.size(), 0);
    for (const std::uint32_t cell : cells.of) {
        if (seen[cell] != 0) {
            return invalid("The combination " + cells.levels[cell] + " (" + cells.name +
                           ") is recorded more than once: give one value of each part of a whole "
                           "plot.");
        }
        seen[cell] = 1;
    }
    Shape shape{static_cast<double>(block->levels.size()),
                static_cast<double>(whole->levels.size()),
                static_cast<double>(sub->levels.size())};
    shape.isComplete =
        static_cast<double>(cells.levels.size()) == shape.blocks * shape.whole * shape.sub;
    return shape;
}

// The line against another error.
VarianceLine against(VarianceLine line, const VarianceLine& error) {
    line.f.reset();
    line.p.reset();
    if (line.meanSquare && error.meanSquare && *error.meanSquare > 0) {
        line.f = *line.meanSquare / *error.meanSquare;
        line.p = statistics::fAbove(*line.f,
                                    static_cast<double>(line.degreesOfFreedom),
                                    static_cast<double>(error.degreesOfFreedom));
    }
    return line;
}

void fillStrata(const ModelSummary& model, SplitPlotAnalysis& into) {
    VarianceLine block = model.typeOne[0];
    block.term = "Residuals";
    into.blocks = {against(block, {})};
    VarianceLine wholeError = against(model.typeOne[2], {});
    wholeError.term = "Residuals";
    into.wholePlots = {against(model.typeOne[1], wholeError), wholeError};
    const VarianceLine& subError = model.typeOne.back();
    into.subPlots = {
        against(model.typeOne[3], subError), against(model.typeOne[4], subError), subError};
    const auto cv = [&model](const VarianceLine& line) {
        return line.meanSquare && model.mean > 0
                   ? std::optional(100 * std::sqrt(*line.meanSquare) / model.mean)
                   : std::nullopt;
    };
    into.cvWholePercent = cv(wholeError);
    into.cvSubPercent = cv(subError);
}

DifferenceKind kind(double variance, double df, double alpha) {
    const double error = std::sqrt(variance);
    return {error, df, error * statistics::studentTQuantile(1 - alpha / 2, df)};
}

// Means of a balanced stratum, independent and of one variance.
TreatmentMeans independentMeans(const LinearModel& model,
                                const std::string& factor,
                                const DifferenceKind& of,
                                double alpha) {
    TreatmentMeans result;
    if (auto means = model.means({factor})) {
        result.means = std::move(*means);
    }
    AdjustedMeans& means = result.means;
    const std::size_t size = means.levels.size();
    const double variance = of.standardError * of.standardError / 2;
    means.degreesOfFreedom = of.degreesOfFreedom;
    means.covariance.assign(size * size, 0.0);
    const double t = statistics::studentTQuantile(0.975, of.degreesOfFreedom);
    for (std::size_t i = 0; i < size; ++i) {
        means.covariance[i * size + i] = variance;
        means.levels[i].mean =
            statistics::estimateAround(means.levels[i].rawMean, std::sqrt(variance), t);
    }
    result.comparisons = compareMeans(means, {alpha, {}});
    return result;
}

void addComponents(const Shape& shape, SplitPlotAnalysis& into) {
    const double a = *into.wholePlots.back().meanSquare;
    const double b = *into.subPlots.back().meanSquare;
    into.subPlotVariance = b;
    into.wholePlotVariance = (a - b) / shape.sub;
    into.blockVariance = (*into.blocks.back().meanSquare - a) / (shape.whole * shape.sub);
    if (*into.wholePlotVariance < 0 || *into.blockVariance < 0) {
        into.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "A variance of whole plots or blocks is estimated below 0: read it "
                              "as none that could be seen."),
             {}});
    }
}

void addDifferences(const LinearModel& model,
                    const Shape& shape,
                    const SplitPlotPlan& plan,
                    SplitPlotAnalysis& into) {
    const double a = *into.wholePlots.back().meanSquare;
    const double b = *into.subPlots.back().meanSquare;
    const double dfA = static_cast<double>(into.wholePlots.back().degreesOfFreedom);
    const double dfB = static_cast<double>(into.subPlots.back().degreesOfFreedom);
    const double r = shape.blocks;
    const double s = shape.sub;
    into.betweenWholePlots = kind(2 * a / (r * s), dfA, plan.alpha);
    into.betweenSubPlots = kind(2 * b / (r * shape.whole), dfB, plan.alpha);
    into.subWithinWhole = kind(2 * b / r, dfB, plan.alpha);
    const double sum = (s - 1) * b + a;
    const double df = sum * sum / ((s - 1) * b * (s - 1) * b / dfB + a * a / dfA);
    into.wholeAtSub = kind(2 * sum / (r * s), df, plan.alpha);
    into.wholePlotMeans =
        independentMeans(model, plan.wholePlot, *into.betweenWholePlots, plan.alpha);
    into.subPlotMeans = independentMeans(model, plan.subPlot, *into.betweenSubPlots, plan.alpha);
    if (auto cells = model.means({plan.wholePlot, plan.subPlot})) {
        for (AdjustedMean& mean : cells->levels) {
            mean.mean = statistics::Estimate{mean.rawMean};
        }
        cells->covariance.clear();
        cells->remarks.clear();
        into.combinations = std::move(*cells);
    }
    addComponents(shape, into);
}

} // namespace

Result<SplitPlotAnalysis> analyseSplitPlot(const TrialTable& table, const SplitPlotPlan& plan) {
    const std::vector<Term> terms = {{plan.block},
                                     {plan.wholePlot},
                                     {plan.block, plan.wholePlot},
                                     {plan.subPlot},
                                     {plan.wholePlot, plan.subPlot}};
    for (const std::string& name : {plan.block, plan.wholePlot, plan.subPlot}) {
        if (table.factor(name) == nullptr) {
            return invalid("There is no column \"" + name + "\" that could be a factor.");
        }
    }
    const auto complete = completeRows(table, terms);
    const auto model = LinearModel::fit(table, terms);
    if (!complete || !model) {
        return complete ? model.error() : complete.error();
    }
    const auto shape = shapeOf(rowsOf(table, *complete), plan);
    if (!shape) {
        return shape.error();
    }
    const ModelSummary& summary = model->summary();
    SplitPlotAnalysis result;
    result.method = "split plot; strata of blocks, whole plots and sub-plots, least squares";
    result.n = summary.n;
    result.leftOut = summary.leftOut;
    result.mean = summary.mean;
    result.remarks = summary.remarks;
    fillStrata(summary, result);
    const bool hasErrors = result.wholePlots.back().meanSquare.value_or(0) > 0 &&
                           result.subPlots.back().meanSquare.value_or(0) > 0;
    if (shape->isComplete && hasErrors) {
        addDifferences(*model, *shape, plan, result);
    } else {
        result.remarks.push_back(
            {hasErrors ? BULLACE_SENTENCE("Remark",
                                          "Not every block holds every combination, so the tests "
                                          "of whole plots are approximate and there are no means: "
                                          "take a mixed model with whole plots random.")
                       : BULLACE_SENTENCE("Remark",
                                          "An error of whole plots or sub-plots does not vary, so "
                                          "nothing is compared."),
             {}});
    }
    return result;
}

} // namespace bullace::trials
