// `bullace work counts`: counts of one column, fitted together or for each group.
#include "console/work.hpp"

#include "core/fruit/counts.hpp"

#include <CLI/CLI.hpp>
#include <map>
#include <memory>

namespace bullace::console {

namespace {

struct CountsOptions {
    std::string path;
    double relative = 10; // percent
};

void describe(const fruit::CountFit& fit, double relative, Document& into) {
    into.count("counts", fit.n).number("mean", fit.mean).number("variance", fit.variance);
    into.number("standard error of the mean", fit.meanError);
    into.text("method", fit.k ? "negative binomial, maximum likelihood" : "Poisson");
    into.estimate("k", fit.k).number("k by moments", fit.kByMoments);
    into.number("k by the zero class", fit.kByZeroClass);
    into.number("log-likelihood", fit.logLikelihood);
    into.number("log-likelihood as Poisson", fit.poissonLogLikelihood);
    into.number("likelihood ratio", fit.likelihoodRatio);
    into.number("likelihood ratio p", fit.likelihoodRatioP);
    into.number("dispersion index", fit.dispersionIndex);
    into.number("dispersion index p", fit.dispersionP);
    const auto needed = fruit::countsNeeded(
        fit.mean, fit.k ? std::optional(fit.k->value) : std::nullopt, relative / 100);
    into.number("wanted standard error, percent of the mean", relative);
    into.number("counts needed for it",
                needed ? std::optional(static_cast<double>(*needed)) : std::nullopt);
    DocumentList& expected = into.list("expected frequencies");
    for (const double frequency : fit.expected) {
        expected.add(frequency);
    }
    into.remarks(fit.remarks);
}

using Groups = std::map<std::string, std::vector<fruit::CountFrequency>>;

Result<Groups> groupsOf(const WorkFile& file) {
    const auto column = file.column("count");
    if (!column) {
        return column.error();
    }
    const auto frequency = file.columnIfThere("frequency");
    const auto group = file.columnIfThere("group");
    Groups groups;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const auto count = file.count(row, *column);
        const auto times = frequency ? file.count(row, *frequency) : Result<std::size_t>(1);
        if (!count || !times) {
            return count ? times.error() : count.error();
        }
        groups[group ? file.text(row, *group) : ""].push_back({*count, *times});
    }
    return groups;
}

int counts(const CountsOptions& options, Terminal& terminal) {
    const auto file = WorkFile::read(options.path, terminal);
    const auto groups = file ? groupsOf(*file) : file.error();
    if (!groups) {
        return tellFailure(terminal.err, groups.error());
    }
    Document document;
    document.text("computation", "counts");
    DocumentList& list = document.list("groups");
    for (const auto& [name, counted] : *groups) {
        const auto fit = fruit::fitCounts(counted);
        if (!fit) {
            return tellFailure(terminal.err, fit.error());
        }
        Document& group = list.add();
        group.text("group", name);
        describe(*fit, options.relative, group);
    }
    return tell(document, terminal);
}

} // namespace

void addCounts(CLI::App& methods, Work& work) {
    auto options = std::make_shared<CountsOptions>();
    CLI::App* command = methods.add_subcommand(
        "counts", "Mean and spread of counts that come in heaps (negative binomial)");
    command->add_option("FILE", options->path, "CSV; - is standard input")->required();
    command
        ->add_option(
            "--precision", options->relative, "Wanted standard error of the mean, in percent of it")
        ->check(CLI::PositiveNumber)
        ->capture_default_str();
    command->footer("Columns: count (a whole number); if there, frequency (how often it was met) "
                    "and group.\n"
                    "Example:\n  count,frequency\n  0,70\n  1,38\n  2,17");
    command->callback([options, &work] {
        work = [options](Terminal& terminal) { return counts(*options, terminal); };
    });
}

} // namespace bullace::console
