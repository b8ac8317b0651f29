// `bullace work augmented`: unreplicated selections beside replicated checks in blocks.
#include "console/trial_file.hpp"
#include "console/work.hpp"

#include "core/trials/augmented.hpp"

#include <CLI/CLI.hpp>
#include <memory>

namespace bullace::console {

namespace {

struct AugmentedChoice {
    std::string path;
    std::string response;
    std::string block = "block";
    std::string entry = "entry";
    std::vector<std::string> checks;
    std::string selections = "fixed";
    std::string blocks = "fixed";
    double alpha = 0.05;
};

void describe(std::string_view name,
              const std::optional<trials::PairError>& error,
              Document& into) {
    if (!error) {
        return;
    }
    Document& of = into.object(name);
    of.number("standard error", error->standardError).number("least", error->least);
    of.number("greatest", error->greatest);
    of.number("least significant difference", error->leastSignificant);
    of.count("pairs", error->pairs);
}

void describe(const trials::AugmentedAnalysis& analysis, Document& into) {
    into.text("method", analysis.method).count("records", analysis.n);
    into.count("left out", analysis.leftOut).count("selections", analysis.selections);
    into.number("mean", analysis.mean).number("error variance", analysis.errorVariance);
    into.count("degrees of freedom", analysis.degreesOfFreedom);
    into.number("coefficient of variation, percent", analysis.cvPercent);
    describeLines("blocks first", analysis.blocksFirst, into);
    describeLines("entries first", analysis.entriesFirst, into);
    describeLines("entries parted", analysis.parted, into);
    describeMeans(analysis.means, nullptr, into.object("entries"));
    Document& errors = into.object("differences");
    describe("of two checks", analysis.twoChecks, errors);
    describe("of two selections of one block", analysis.sameBlock, errors);
    describe("of two selections of different blocks", analysis.differentBlock, errors);
    describe("of a selection and a check", analysis.withCheck, errors);
    errors.number("mean standard error of all pairs", analysis.meanError);
    DocumentList& effects = into.list("blocks by their checks");
    for (const trials::CheckAdjusted& each : analysis.checkEffects) {
        effects.add().text("block", each.block).number("effect", each.effect);
    }
    into.remarks(analysis.remarks);
}

void describe(const trials::RandomSelections& result, Document& into) {
    into.text("method", "selections random, checks fixed; restricted maximum likelihood");
    into.number("variance of selections", result.selectionVariance);
    into.number("variance of blocks", result.blockVariance);
    into.number("error variance", result.errorVariance);
    into.truth("has converged", result.hasConverged);
    into.number("log-likelihood", result.logLikelihood);
    into.number("mean of selections", result.selectionsMean);
    into.number("heritability", result.heritability);
    DocumentList& selections = into.list("selections");
    for (const trials::SelectionPrediction& each : result.selections) {
        Document& of = selections.add();
        of.text("entry", each.entry).number("effect", each.value);
        of.number("standard error", each.standardError).number("reliability", each.reliability);
        of.number("predicted", each.predicted);
    }
    into.remarks(result.remarks);
}

int augmentedOf(const AugmentedChoice& choice, Terminal& terminal) {
    const auto file = WorkFile::read(choice.path, terminal);
    const auto table =
        file ? trialTableOf(*file, {choice.response, {choice.block, choice.entry}, {}})
             : file.error();
    if (!table) {
        return tellFailure(terminal.err, table.error());
    }
    const trials::AugmentedPlan plan{
        choice.block,
        choice.entry,
        choice.checks.empty() ? trials::repeatedEntries(*table, choice.entry) : choice.checks,
        choice.alpha};
    Document document;
    document.text("computation", "augmented").text("response", choice.response);
    DocumentList& checks = document.list("checks");
    for (const std::string& check : plan.checks) {
        checks.add(check);
    }
    if (choice.selections == "random") {
        const auto result = trials::predictSelections(
            *table,
            plan,
            choice.blocks == "random" ? trials::BlockEffects::Random : trials::BlockEffects::Fixed);
        if (!result) {
            return tellFailure(terminal.err, result.error());
        }
        describe(*result, document);
        return tell(document, terminal);
    }
    if (choice.blocks == "random") {
        return tellFailure(terminal.err,
                           {ErrorCode::InvalidInput,
                            "Random blocks with fixed selections are a mixed model: use \"bullace "
                            "work mixed\".",
                            {}});
    }
    const auto analysis = trials::analyseAugmented(*table, plan);
    if (!analysis) {
        return tellFailure(terminal.err, analysis.error());
    }
    describe(*analysis, document);
    return tell(document, terminal);
}

} // namespace

void addAugmented(CLI::App& methods, Work& work) {
    auto choice = std::make_shared<AugmentedChoice>();
    CLI::App* command = methods.add_subcommand(
        "augmented", "Selections once each beside checks that every block has");
    command->add_option("FILE", choice->path, "CSV; - is standard input")->required();
    command->add_option("--response", choice->response, "Column of what was measured")->required();
    command->add_option("--block", choice->block, "Column of the blocks")->capture_default_str();
    command->add_option("--entry", choice->entry, "Column of the entries")->capture_default_str();
    command->add_option("--check",
                        choice->checks,
                        "An entry that is a check; again for more. Without it, all that stand more "
                        "than once");
    command->add_option("--selections", choice->selections, "Selections as fixed or random")
        ->check(CLI::IsMember({"fixed", "random"}))
        ->capture_default_str();
    command->add_option("--blocks", choice->blocks, "Blocks as fixed or random")
        ->check(CLI::IsMember({"fixed", "random"}))
        ->capture_default_str();
    command->add_option("--alpha", choice->alpha, "Level of significance")
        ->check(CLI::Range(0.0001, 0.5))
        ->capture_default_str();
    command->footer("Example:\n  block,entry,yield\n  1,CHECK1,4.2\n  1,S001,3.9\n"
                    "  2,CHECK1,4.4\n  2,S002,5.1");
    command->callback([choice, &work] {
        work = [choice](Terminal& terminal) { return augmentedOf(*choice, terminal); };
    });
}

} // namespace bullace::console
