// `bullace work trial`: the analysis of variance of a trial: one treatment or a factorial, with or
// without blocks, a split plot, or nested variance components.
#include "console/trial_file.hpp"
#include "console/work.hpp"

#include "core/trials/nested_components.hpp"
#include "core/trials/scale.hpp"
#include "core/trials/split_plot.hpp"
#include "core/trials/trial_analysis.hpp"

#include <CLI/CLI.hpp>
#include <cmath>
#include <memory>

namespace bullace::console {

namespace {

using trials::TrialAnalysis;

struct TrialChoice {
    std::string path;
    std::string response;
    trials::TrialPlan plan;
    std::string reference;
    std::string wholePlot;
    std::string subPlot;
    std::vector<std::string> nested;
    bool wantsRows = false;
    std::string scale = "as-it-is";
    std::string kind = "measurement";
};

trials::ResponseKind kindOf(const std::string& name) {
    return name == "count"        ? trials::ResponseKind::Count
           : name == "percentage" ? trials::ResponseKind::Percentage
           : name == "score"      ? trials::ResponseKind::Score
                                  : trials::ResponseKind::Measurement;
}

// Which scale the records, by treatment, speak for.
void describeAdvice(const trials::TrialTable& table, const TrialChoice& choice, Document& into) {
    std::vector<const trials::Factor*> factors;
    for (const std::string& name : choice.plan.treatments) {
        factors.push_back(table.factor(name));
    }
    const trials::Factor cells = trials::combined(factors);
    std::vector<std::vector<double>> groups(cells.levels.size());
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (cells.of[row] != trials::kNoLevel && std::isfinite(table.response[row])) {
            groups[cells.of[row]].push_back(table.response[row]);
        }
    }
    const trials::ScaleAdvice advice = trials::adviseScale(groups, kindOf(choice.kind));
    Document& of = into.object("advice on the scale");
    of.text("scale", trials::nameOf(advice.scale));
    of.number("slope of log variance on log mean", advice.taylorSlope);
    of.text("reason", inEnglish(advice.reason));
}

// Means of the treatments on the scale of the records.
void describeBack(const TrialAnalysis& analysis,
                  const trials::ScaledResponse& scaled,
                  Document& into) {
    into.text("scale", trials::nameOf(scaled.scale()));
    DocumentList& terms = into.list("means told back");
    for (const trials::TreatmentMeans& each : analysis.treatments) {
        Document& term = terms.add();
        term.text("term", each.means.term);
        DocumentList& levels = term.list("means");
        for (const trials::AdjustedMean& level : each.means.levels) {
            levels.add()
                .text("level", level.level)
                .estimate("mean",
                          level.mean ? std::optional(scaled.back(*level.mean)) : std::nullopt);
        }
    }
}

void describe(std::string_view name, const std::optional<trials::GroupTest>& test, Document& into) {
    if (!test) {
        return;
    }
    Document& of = into.object(name);
    of.number("statistic", test->statistic).number("degrees of freedom", test->degreesOfFreedom);
    of.number("second degrees of freedom", test->denominator).number("p", test->p);
}

void describeModel(const trials::ModelSummary& model, Document& into) {
    into.count("records", model.n).count("left out", model.leftOut).number("mean", model.mean);
    into.number("residual variance", model.residualVariance);
    into.count("degrees of freedom of the residuals", model.degreesOfFreedom);
    into.number("r squared", model.rSquared);
    into.number("coefficient of variation, percent", model.cvPercent);
    describeLines("in order (type I)", model.typeOne, into);
    describeLines("each beside what does not contain it (type II)", model.typeTwo, into);
    describeLines("each beside all others (type III)", model.typeThree, into);
    DocumentList& confounded = into.list("not separable");
    for (const std::string& term : model.notSeparable) {
        confounded.add(term);
    }
}

void describeChecks(const TrialAnalysis& analysis, const WorkFile& file, Document& into) {
    Document& checks = into.object("residuals");
    checks.number("W of Shapiro and Wilk", analysis.checks.shapiroW);
    checks.number("p of Shapiro and Wilk", analysis.checks.shapiroP);
    describe("equal variances by Bartlett", analysis.checks.bartlett, checks);
    describe("equal variances by Brown and Forsythe", analysis.checks.brownForsythe, checks);
    describe("treatments and blocks do not add (Tukey)", analysis.checks.nonAdditivity, checks);
    DocumentList& outliers = checks.list("far off");
    for (const trials::Outlier& outlier : analysis.checks.outliers) {
        Document& of = outliers.add();
        of.count("line", file.line(outlier.row)).number("residual", outlier.residual);
        of.number("studentised", outlier.studentised).number("p after Bonferroni", outlier.p);
    }
}

void describeRows(const TrialAnalysis& analysis, const WorkFile& file, Document& into) {
    DocumentList& rows = into.list("rows");
    for (const trials::FittedRow& row : analysis.rows) {
        Document& of = rows.add();
        of.count("line", file.line(row.row)).number("fitted", row.fitted);
        of.number("residual", row.residual).number("leverage", row.leverage);
        of.number("studentised", row.studentised);
    }
}

void describe(const TrialAnalysis& analysis, const WorkFile& file, Document& into) {
    into.text("method", analysis.method);
    describeModel(analysis.model, into);
    DocumentList& treatments = into.list("treatments");
    for (const trials::TreatmentMeans& each : analysis.treatments) {
        describeMeans(each.means, &each.comparisons, treatments.add());
    }
    DocumentList& blocks = into.list("blocks");
    for (const trials::AdjustedMeans& each : analysis.blocks) {
        describeMeans(each, nullptr, blocks.add());
    }
    DocumentList& efficiencies = into.list("efficiency of blocks");
    for (const trials::BlockEfficiency& each : analysis.efficiencies) {
        efficiencies.add().text("block", each.block).number("relative", each.relative);
    }
    describeChecks(analysis, file, into);
    describe("means by Welch", analysis.welch, into);
    describe("ranks by Kruskal and Wallis", analysis.kruskalWallis, into);
    if (analysis.components) {
        Document& of = into.object("components of variance by moments");
        of.number("within", analysis.components->within);
        of.number("between", analysis.components->between);
        of.number("mean number of records", analysis.components->records);
    }
}

int tellTrial(const TrialChoice& choice, const WorkFile& file, Terminal& terminal) {
    TrialColumns columns{choice.response, choice.plan.treatments, choice.plan.covariates};
    columns.factors.insert(
        columns.factors.end(), choice.plan.blocks.begin(), choice.plan.blocks.end());
    auto table = trialTableOf(file, columns);
    const auto scaled =
        table ? trials::ScaledResponse::of(
                    table->response, trials::scaleOf(choice.scale).value_or(trials::Scale::AsItIs))
              : table.error();
    if (!scaled) {
        return tellFailure(terminal.err, scaled.error());
    }
    const trials::TrialTable asRecorded = *table;
    table->response = scaled->values();
    trials::TrialPlan plan = choice.plan;
    if (!choice.reference.empty()) {
        plan.reference = choice.reference;
    }
    const auto analysis = trials::analyseTrial(*table, plan);
    if (!analysis) {
        return tellFailure(terminal.err, analysis.error());
    }
    Document document;
    document.text("computation", "trial").text("response", choice.response);
    describe(*analysis, file, document);
    describeAdvice(asRecorded, choice, document);
    describeBack(*analysis, *scaled, document);
    if (choice.wantsRows) {
        describeRows(*analysis, file, document);
    }
    Remarks remarks = scaled->remarks();
    remarks.insert(remarks.end(), analysis->remarks.begin(), analysis->remarks.end());
    document.remarks(remarks);
    return tell(document, terminal);
}

void describe(std::string_view name,
              const std::optional<trials::DifferenceKind>& kind,
              Document& into) {
    if (!kind) {
        return;
    }
    Document& of = into.object(name);
    of.number("standard error", kind->standardError);
    of.number("degrees of freedom", kind->degreesOfFreedom);
    of.number("least significant difference", kind->leastSignificant);
}

void describe(const trials::SplitPlotAnalysis& analysis, Document& into) {
    into.text("method", analysis.method).count("records", analysis.n);
    into.count("left out", analysis.leftOut).number("mean", analysis.mean);
    describeLines("blocks", analysis.blocks, into);
    describeLines("whole plots", analysis.wholePlots, into);
    describeLines("sub-plots", analysis.subPlots, into);
    into.number("coefficient of variation of whole plots, percent", analysis.cvWholePercent);
    into.number("coefficient of variation of sub-plots, percent", analysis.cvSubPercent);
    DocumentList& treatments = into.list("treatments");
    for (const auto* means : {&analysis.wholePlotMeans, &analysis.subPlotMeans}) {
        if (*means) {
            describeMeans((*means)->means, &(*means)->comparisons, treatments.add());
        }
    }
    if (analysis.combinations) {
        describeMeans(*analysis.combinations, nullptr, treatments.add());
    }
    Document& differences = into.object("differences of two means");
    describe("of whole plots", analysis.betweenWholePlots, differences);
    describe("of sub-plots", analysis.betweenSubPlots, differences);
    describe("of sub-plots in one kind of whole plot", analysis.subWithinWhole, differences);
    describe("of whole plots at one kind of sub-plot", analysis.wholeAtSub, differences);
    Document& components = into.object("components of variance by moments");
    components.number("blocks", analysis.blockVariance);
    components.number("whole plots", analysis.wholePlotVariance);
    components.number("sub-plots", analysis.subPlotVariance);
    into.remarks(analysis.remarks);
}

int tellSplitPlot(const TrialChoice& choice, const WorkFile& file, Terminal& terminal) {
    if (choice.subPlot.empty() || choice.wholePlot.empty() || choice.plan.blocks.size() != 1) {
        return tellFailure(terminal.err,
                           {ErrorCode::InvalidInput,
                            "A split plot needs --whole-plot, --sub-plot and one --block.",
                            {}});
    }
    const auto table = trialTableOf(
        file,
        {choice.response, {choice.plan.blocks.front(), choice.wholePlot, choice.subPlot}, {}});
    if (!table) {
        return tellFailure(terminal.err, table.error());
    }
    const auto analysis = trials::analyseSplitPlot(
        *table, {choice.plan.blocks.front(), choice.wholePlot, choice.subPlot, choice.plan.alpha});
    if (!analysis) {
        return tellFailure(terminal.err, analysis.error());
    }
    Document document;
    document.text("computation", "trial").text("response", choice.response);
    describe(*analysis, document);
    return tell(document, terminal);
}

int tellNested(const TrialChoice& choice, const WorkFile& file, Terminal& terminal) {
    const auto table = trialTableOf(file, {choice.response, choice.nested, {}});
    if (!table) {
        return tellFailure(terminal.err, table.error());
    }
    const auto result = trials::nestedComponents(*table, choice.nested);
    if (!result) {
        return tellFailure(terminal.err, result.error());
    }
    Document document;
    document.text("computation", "trial").text("response", choice.response);
    document.text("method", "nested components of variance by moments (Henderson's method 1)");
    document.count("records", result->n).count("left out", result->leftOut);
    DocumentList& levels = document.list("levels");
    for (const auto& level : result->levels) {
        Document& of = levels.add();
        of.text("level", level.name).count("degrees of freedom", level.degreesOfFreedom);
        of.number("sum of squares", level.sumOfSquares).number("mean square", level.meanSquare);
        of.number("variance", level.variance);
    }
    document.remarks(result->remarks);
    return tell(document, terminal);
}

int trialOf(const TrialChoice& choice, Terminal& terminal) {
    const auto file = WorkFile::read(choice.path, terminal);
    if (!file) {
        return tellFailure(terminal.err, file.error());
    }
    const bool isStratified = !choice.nested.empty() || !choice.wholePlot.empty();
    if (isStratified && choice.scale != "as-it-is") {
        return tellFailure(terminal.err,
                           {ErrorCode::InvalidInput,
                            "--scale is for trials without whole plots and without --nested.",
                            {}});
    }
    if (!choice.nested.empty()) {
        return tellNested(choice, *file, terminal);
    }
    return choice.wholePlot.empty() && choice.subPlot.empty()
               ? tellTrial(choice, *file, terminal)
               : tellSplitPlot(choice, *file, terminal);
}

} // namespace

void addTrial(CLI::App& methods, Work& work) {
    auto choice = std::make_shared<TrialChoice>();
    CLI::App* command = methods.add_subcommand(
        "trial", "Analysis of variance of a trial, its means and what differs");
    command->add_option("FILE", choice->path, "CSV; - is standard input")->required();
    command->add_option("--response", choice->response, "Column of what was measured")->required();
    command->add_option("--treatment",
                        choice->plan.treatments,
                        "Column of what is compared; again for a factorial");
    command->add_option("--block", choice->plan.blocks, "Column of the blocks; again for more");
    command->add_option("--covariate", choice->plan.covariates, "Column of a number to allow for");
    command->add_option("--reference", choice->reference, "Level that the others are compared to");
    command->add_option("--whole-plot", choice->wholePlot, "Column of a split plot's whole plots");
    command->add_option("--sub-plot", choice->subPlot, "Column of its sub-plots");
    command->add_option(
        "--nested", choice->nested, "Columns for components of variance, the coarsest first");
    command->add_option("--alpha", choice->plan.alpha, "Level of significance")
        ->check(CLI::Range(0.0001, 0.5))
        ->capture_default_str();
    command->add_option("--scale", choice->scale, "Scale of the analysis")
        ->check(CLI::IsMember({"as-it-is", "logarithm", "square-root", "logit", "normal-scores"}))
        ->capture_default_str();
    command->add_option("--kind", choice->kind, "What the response is, for advice on its scale")
        ->check(CLI::IsMember({"measurement", "count", "percentage", "score"}))
        ->capture_default_str();
    command->add_flag("--rows", choice->wantsRows, "Fitted values and residuals of each line, too");
    command->footer(
        "Any columns; their names are given by the options. An empty cell is missing.\n"
        "Example:\n  accession,block,yield\n  A017,1,4.2\n  A017,2,3.9\n  A023,1,5.1\n"
        "  bullace work trial FILE --response yield --treatment accession --block block");
    command->callback([choice, &work] {
        work = [choice](Terminal& terminal) { return trialOf(*choice, terminal); };
    });
}

} // namespace bullace::console
