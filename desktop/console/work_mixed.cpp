// `bullace work mixed`: a mixed model of any fixed and random terms, with predictions, through a
// pedigree and over the trends of a block where that is asked for.
#include "console/pedigree_file.hpp"
#include "console/trial_file.hpp"
#include "console/work.hpp"

#include "core/breeding/related.hpp"
#include "core/trials/descriptor_correlation.hpp"
#include "core/trials/heritability.hpp"
#include "core/trials/mixed_model.hpp"
#include "core/trials/surface.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <memory>
#include <set>

namespace bullace::console {

namespace {

struct MixedChoice {
    std::string path;
    std::string response;
    std::vector<std::string> fixed; // each a list of columns with commas between
    std::vector<std::string> random;
    std::vector<std::string> slopes; // the columns of a term, then the covariate
    std::vector<std::string> numbers;
    bool areSlopesApart = false;
    std::string pedigree;
    std::string relatedBy;
    std::string surface; // two columns
    std::string heritabilityOf;
    std::string correlatedWith;
    bool testsRandom = false;
    bool isWithoutMean = false;
    std::vector<double> known;
};

trials::Term listOf(const std::string& words) {
    trials::Term term;
    std::size_t from = 0;
    for (std::size_t to = 0; to != std::string::npos; from = to + 1) {
        to = words.find(',', from);
        term.push_back(words.substr(from, to - from));
    }
    return term;
}

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), {}};
}

// The model's terms; the related one first among the random ones.
Result<trials::MixedSpec> specOf(const MixedChoice& choice, Terminal& terminal) {
    trials::MixedSpec spec;
    spec.hasIntercept = !choice.isWithoutMean;
    if (!choice.pedigree.empty()) {
        if (choice.relatedBy.empty()) {
            return wrong("--pedigree needs --related with the column that names its individuals.");
        }
        const auto file = readPedigree(choice.pedigree, {}, terminal);
        if (!file) {
            return file.error();
        }
        spec.random.push_back({{choice.relatedBy},
                               {},
                               true,
                               breeding::relatedThrough(file->pedigree),
                               choice.relatedBy + " through the pedigree"});
    }
    std::ranges::transform(choice.fixed, std::back_inserter(spec.fixed), listOf);
    for (const std::string& words : choice.random) {
        spec.random.push_back({listOf(words), {}, !choice.areSlopesApart, {}, {}});
    }
    for (const std::string& words : choice.slopes) {
        trials::Term term = listOf(words);
        if (term.size() < 2) {
            return wrong("--random-slope takes the columns of a random term, then the one of the "
                         "slope, with commas between.");
        }
        const std::string covariate = term.back();
        term.pop_back();
        const auto found = std::ranges::find_if(
            spec.random, [&](const trials::RandomTerm& random) { return random.factors == term; });
        if (found == spec.random.end()) {
            return wrong("--random-slope " + words + " needs --random " +
                         words.substr(0, words.rfind(',')) + " as well.");
        }
        found->slopes.push_back(covariate);
    }
    return spec;
}

// Every column that the model names, as a factor or a number.
TrialColumns columnsOf(const MixedChoice& choice, const trials::MixedSpec& spec) {
    std::set<std::string> numbers(choice.numbers.begin(), choice.numbers.end());
    std::vector<std::string> names;
    const auto add = [&names](const std::string& name) {
        if (std::ranges::find(names, name) == names.end()) {
            names.push_back(name);
        }
    };
    for (const trials::Term& term : spec.fixed) {
        std::ranges::for_each(term, add);
    }
    for (const trials::RandomTerm& term : spec.random) {
        std::ranges::for_each(term.factors, add);
        std::ranges::for_each(term.slopes, add);
        numbers.insert(term.slopes.begin(), term.slopes.end());
    }
    TrialColumns columns{choice.response, {}, {}};
    for (const std::string& name : names) {
        (numbers.contains(name) ? columns.covariates : columns.factors).push_back(name);
    }
    return columns;
}

Result<std::vector<double>> numbersOf(const WorkFile& file, const std::string& name) {
    const auto table = trialTableOf(file, {name, {}, {}});
    return table ? Result<std::vector<double>>(table->response) : table.error();
}

void describe(const trials::MixedFit& fit, Document& into) {
    into.text("method", "restricted maximum likelihood by average information");
    into.count("records", fit.n).count("left out", fit.leftOut);
    into.count("degrees of freedom after the fixed effects", fit.n - fit.fixedRank);
    into.truth("converged", fit.hasConverged);
    into.count("evaluations", static_cast<std::uint64_t>(fit.evaluations));
    into.number("log-likelihood", fit.logLikelihood);
    into.number("log-likelihood whatever the coding", fit.invariantLogLikelihood);
    DocumentList& variances = into.list("variances");
    for (const trials::VarianceComponent& component : fit.variances) {
        Document& of = variances.add();
        of.text("term", component.name);
        if (!component.of.empty()) {
            of.text("of", component.of);
        }
        of.number("variance", component.value);
        of.number("standard error", component.standardError);
        of.number("standard error by average information", component.averageStandardError);
        of.truth("on its boundary", component.isAtBoundary);
    }
}

void describeFixed(const trials::MixedFit& fit, Document& into) {
    DocumentList& effects = into.list("fixed effects");
    for (const trials::FixedEffect& effect : fit.fixed) {
        Document& of = effects.add();
        of.text("effect", effect.name).number("value", effect.value);
        of.number("standard error", effect.standardError);
        of.number("degrees of freedom", effect.degreesOfFreedom).number("p", effect.p);
    }
    DocumentList& tests = into.list("tests of fixed terms");
    for (const trials::FixedTest& test : fit.fixedTests) {
        Document& of = tests.add();
        of.text("term", test.term).count("degrees of freedom", test.numerator);
        of.number("F", test.f).number("second degrees of freedom", test.denominator);
        of.number("p", test.p);
    }
    DocumentList& terms = into.list("means");
    for (const trials::FixedMeans& means : fit.fixedMeans) {
        Document& of = terms.add();
        of.text("term", means.term);
        of.number("mean variance of a difference", means.meanVarianceOfDifference);
        DocumentList& levels = of.list("levels");
        for (const trials::FixedMean& mean : means.means) {
            levels.add()
                .text("level", mean.level)
                .number("mean", mean.value)
                .number("standard error", mean.standardError);
        }
    }
}

void describePredictions(const trials::MixedFit& fit, Document& into) {
    DocumentList& terms = into.list("predictions");
    for (const trials::RandomPredictions& predictions : fit.predictions) {
        Document& of = terms.add();
        of.text("term", predictions.name);
        if (!predictions.of.empty()) {
            of.text("of", predictions.of);
        }
        of.number("mean variance of a difference", predictions.meanVarianceOfDifference);
        DocumentList& levels = of.list("levels");
        for (const trials::Prediction& each : predictions.levels) {
            Document& level = levels.add();
            level.text("level", each.level).number("effect", each.value);
            level.number("prediction error variance", each.predictionErrorVariance);
            level.number("reliability", each.reliability);
            level.number("mean and effect", each.total);
            level.number("standard error of mean and effect", each.totalStandardError);
        }
    }
    DocumentList& tests = into.list("tests of random terms");
    for (const trials::RandomTest& test : fit.randomTests) {
        tests.add()
            .text("term", test.name)
            .number("likelihood ratio", test.likelihoodRatio)
            .number("p", test.p);
    }
}

void describe(const trials::Heritability& told, Document& into) {
    Document& of = into.object("heritability");
    of.text("of", told.term).number("by Cullis", told.cullis).number("by Piepho", told.piepho);
    of.number("of entry means", told.entryMean).number("of single plots", told.singlePlot);
    of.number("mean reliability", told.meanReliability);
    of.number("mean variance of a difference of predictions", told.meanVarianceOfPredictions);
    of.number("mean variance of a difference of means", told.meanVarianceOfMeans);
    DocumentList& divisors = of.list("divisors of entry means");
    for (const trials::Heritability::Divisor& divisor : told.divisors) {
        divisors.add().text("of", divisor.of).number("value", divisor.value);
    }
}

void describe(std::string_view name,
              const std::optional<trials::Correlation>& correlation,
              Document& into) {
    if (!correlation) {
        return;
    }
    Document& of = into.object(name);
    of.number("value", correlation->value).number("standard error", correlation->standardError);
    of.truth("on its boundary", correlation->isAtBoundary);
}

void describe(const trials::DescriptorCorrelation& told, Document& into) {
    into.text("one", told.one).text("other", told.other);
    into.count("plots with both", told.both).count("with the one alone", told.oneAlone);
    into.count("with the other alone", told.otherAlone).truth("converged", told.hasConverged);
    into.number("log-likelihood of both, each over its deviation", told.logLikelihood);
    DocumentList& terms = into.list("terms");
    for (const trials::TermCorrelation& term : told.terms) {
        Document& of = terms.add();
        of.text("term", term.name).number("variance of the one", term.oneVariance);
        of.number("variance of the other", term.otherVariance);
        of.number("covariance", term.covariance);
        describe("correlation", term.correlation, of);
    }
    describe("correlation of single plots", told.phenotypic, into);
}

int tellCorrelation(const MixedChoice& choice,
                    const WorkFile& file,
                    const trials::MixedSpec& spec,
                    Terminal& terminal) {
    const auto table = trialTableOf(file, columnsOf(choice, spec));
    const auto other = table ? numbersOf(file, choice.correlatedWith) : table.error();
    if (!other) {
        return tellFailure(terminal.err, other.error());
    }
    const auto told = trials::correlateDescriptors(*table, choice.correlatedWith, *other, spec);
    if (!told) {
        return tellFailure(terminal.err, told.error());
    }
    Document document;
    document.text("computation", "mixed");
    describe(*told, document);
    document.remarks(told->remarks);
    return tell(document, terminal);
}

// The surface's columns and terms, where one is asked for.
Status addTrends(const MixedChoice& choice,
                 const WorkFile& file,
                 trials::TrialTable& table,
                 trials::MixedSpec& spec) {
    if (choice.surface.empty()) {
        return {};
    }
    const trials::Term names = listOf(choice.surface);
    if (names.size() != 2) {
        return wrong("--surface takes two columns: the row's number and the place in it.");
    }
    const auto row = numbersOf(file, names[0]);
    const auto place = row ? numbersOf(file, names[1]) : row.error();
    if (!place) {
        return place.error();
    }
    const auto surface = trials::surfaceOf(*row, *place);
    if (!surface) {
        return surface.error();
    }
    trials::addSurface(*surface, table, spec);
    return {};
}

int tellModel(const MixedChoice& choice,
              const WorkFile& file,
              trials::MixedSpec spec,
              Terminal& terminal) {
    auto table = trialTableOf(file, columnsOf(choice, spec));
    if (!table) {
        return tellFailure(terminal.err, table.error());
    }
    if (const auto added = addTrends(choice, file, *table, spec); !added) {
        return tellFailure(terminal.err, added.error());
    }
    trials::MixedOptions options;
    options.knownVariances = choice.known;
    options.hasTestsOfRandomTerms = choice.testsRandom;
    const auto fit = trials::fitMixed(*table, spec, options);
    if (!fit) {
        return tellFailure(terminal.err, fit.error());
    }
    Document document;
    document.text("computation", "mixed").text("response", choice.response);
    describe(*fit, document);
    describeFixed(*fit, document);
    describePredictions(*fit, document);
    Remarks remarks = fit->remarks;
    if (!choice.heritabilityOf.empty()) {
        const auto told = trials::heritability(*table, spec, *fit, choice.heritabilityOf);
        if (!told) {
            return tellFailure(terminal.err, told.error());
        }
        describe(*told, document);
        remarks.insert(remarks.end(), told->remarks.begin(), told->remarks.end());
    }
    document.remarks(remarks);
    return tell(document, terminal);
}

int mixed(const MixedChoice& choice, Terminal& terminal) {
    const auto file = WorkFile::read(choice.path, terminal);
    const auto spec = file ? specOf(choice, terminal) : file.error();
    if (!spec) {
        return tellFailure(terminal.err, spec.error());
    }
    return choice.correlatedWith.empty() ? tellModel(choice, *file, *spec, terminal)
                                         : tellCorrelation(choice, *file, *spec, terminal);
}

} // namespace

void addMixed(CLI::App& methods, Work& work) {
    auto choice = std::make_shared<MixedChoice>();
    CLI::App* command = methods.add_subcommand(
        "mixed", "Variances, means and predictions by a mixed model, through a pedigree if wanted");
    command->add_option("FILE", choice->path, "CSV, one record a line; - is standard input")
        ->required();
    command->add_option("--response", choice->response, "Column of the values")->required();
    command->add_option(
        "--fixed",
        choice->fixed,
        "A fixed term: columns with commas between->allow_extra_args(false); as often as wanted");
    command->add_option("--random", choice->random, "A random term, likewise")
        ->allow_extra_args(false);
    command
        ->add_option("--random-slope",
                     choice->slopes,
                     "The columns of a random term, then the column with which its levels have "
                     "slopes of their own")
        ->allow_extra_args(false);
    command->add_flag(
        "--slopes-apart", choice->areSlopesApart, "Slopes are not correlated with intercepts");
    command
        ->add_option(
            "--number", choice->numbers, "A column of a fixed term that is a number and no factor")
        ->allow_extra_args(false);
    command->add_flag("--without-mean", choice->isWithoutMean, "No general mean");
    command->add_option("--pedigree", choice->pedigree, "CSV: id, mother, father");
    command->add_option(
        "--related", choice->relatedBy, "Column whose levels are related through the pedigree");
    command->add_option("--surface",
                        choice->surface,
                        "Columns of the row and of the place in it, for trends over the block");
    command->add_option("--heritability", choice->heritabilityOf, "Of this random term");
    command->add_option("--correlated-with",
                        choice->correlatedWith,
                        "Another column of values: the correlation of both, term by term");
    command->add_flag("--test-random", choice->testsRandom, "Each random term left out once");
    command
        ->add_option("--known-variance",
                     choice->known,
                     "Of each random term in their order (related first), then of the residual")
        ->allow_extra_args(false);
    command->footer("Example:\n  bullace work mixed trial.csv --response yield --fixed year "
                    "--random accession --random accession,year --heritability accession");
    command->callback([choice, &work] {
        work = [choice](Terminal& terminal) { return mixed(*choice, terminal); };
    });
}

} // namespace bullace::console
