// `bullace work index`: selection on several traits at once, and the candidates' order by it.
#include "console/work.hpp"

#include "core/base/numbers.hpp"
#include "core/breeding/selection_index.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

namespace bullace::console {

namespace {

using breeding::Bending;
using breeding::SelectionIndex;
using breeding::TraitVariances;

struct IndexChoice {
    std::string path;
    std::string variances;
    std::vector<std::string> weights;
    std::vector<std::string> gains;
    std::vector<std::string> held;
    bool isBase = false;
    bool mayBend = false;
    std::size_t selected = 0;
};

// Rows: kind (phenotypic or genetic), trait, then the covariances with each trait by its name.
Result<TraitVariances> readVariances(const WorkFile& file) {
    const auto kind = file.column("kind");
    const auto trait = file.column("trait");
    if (!kind || !trait) {
        return kind ? trait.error() : kind.error();
    }
    TraitVariances variances;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        if (file.text(row, *kind) == "phenotypic") {
            variances.traits.push_back(file.text(row, *trait));
        }
    }
    const std::size_t n = variances.traits.size();
    variances.phenotypic.assign(n * n, 0);
    variances.genetic.assign(n * n, 0);
    std::vector<int> seen(2 * n, 0);
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const bool isGenetic = file.text(row, *kind) == "genetic";
        if (!isGenetic && file.text(row, *kind) != "phenotypic") {
            return file.wrong(row, *kind, "the kind is phenotypic or genetic");
        }
        const auto place = std::ranges::find(variances.traits, file.text(row, *trait));
        const auto i = static_cast<std::size_t>(place - variances.traits.begin());
        if (i == n || seen[(isGenetic ? n : 0) + i]++ > 0) {
            return file.wrong(row, *trait, "each trait needs one row of either kind");
        }
        for (std::size_t j = 0; j < n; ++j) {
            const auto column = file.column(variances.traits[j]);
            const auto value = column ? file.number(row, *column) : column.error();
            if (!value) {
                return value.error();
            }
            (isGenetic ? variances.genetic : variances.phenotypic)[i * n + j] = *value;
        }
    }
    if (std::ranges::count(seen, 1) != static_cast<std::ptrdiff_t>(2 * n)) {
        return Error{ErrorCode::InvalidInput, "Each trait needs one row of either kind.", ""};
    }
    return variances;
}

// "yield=2" for each trait once; traits that are not named get 0.
Result<std::vector<double>> numbersByTrait(const std::vector<std::string>& given,
                                           const std::vector<std::string>& traits) {
    std::vector<double> numbers(traits.size(), 0);
    for (const std::string& text : given) {
        const std::size_t equals = text.rfind('=');
        const std::string trait = text.substr(0, equals);
        const auto place = std::ranges::find(traits, trait);
        const auto number =
            equals == std::string::npos ? std::nullopt : readTypedNumber(text.substr(equals + 1));
        if (place == traits.end() || !number) {
            return Error{ErrorCode::InvalidInput,
                         text + " is not a trait of the variances, an equals sign and a number.",
                         ""};
        }
        numbers[static_cast<std::size_t>(place - traits.begin())] = *number;
    }
    return numbers;
}

Result<SelectionIndex> indexOf(const IndexChoice& choice, const TraitVariances& variances) {
    const Bending bending = choice.mayBend ? Bending::Allowed : Bending::Refused;
    const auto numbers =
        numbersByTrait(choice.gains.empty() ? choice.weights : choice.gains, variances.traits);
    if (!numbers) {
        return numbers.error();
    }
    if (!choice.gains.empty()) {
        return breeding::desiredGains(variances, *numbers, bending);
    }
    if (choice.isBase) {
        return breeding::baseIndex(variances, *numbers, bending);
    }
    std::vector<std::size_t> held;
    for (const std::string& trait : choice.held) {
        const auto place = std::ranges::find(variances.traits, trait);
        held.push_back(static_cast<std::size_t>(place - variances.traits.begin()));
    }
    return breeding::restrictedIndex(variances, *numbers, held, bending);
}

Result<std::vector<breeding::IndexCandidate>>
readCandidates(const WorkFile& file, const std::vector<std::string>& traits) {
    const auto id = file.column("id");
    if (!id) {
        return id.error();
    }
    std::vector<breeding::IndexCandidate> candidates;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        breeding::IndexCandidate candidate{file.text(row, *id), {}};
        for (const std::string& trait : traits) {
            const auto column = file.column(trait);
            const auto value = column ? file.numberIfThere(row, *column) : column.error();
            if (!value) {
                return value.error();
            }
            candidate.values.push_back(*value);
        }
        candidates.push_back(std::move(candidate));
    }
    return candidates;
}

void describe(const SelectionIndex& index, Document& into) {
    into.text("method", index.method);
    DocumentList& traits = into.list("traits");
    for (std::size_t t = 0; t < index.traits.size(); ++t) {
        Document& of = traits.add();
        of.text("trait", index.traits[t]).number("coefficient", index.coefficients[t]);
        of.number("response per unit of intensity", index.traitResponse[t]);
    }
    into.number("variance of the index", index.variance);
    into.number("variance of the objective", index.objectiveVariance);
    into.number("accuracy", index.accuracy);
    into.number("heritability of the index", index.heritability);
    into.number("response of the objective per unit of intensity", index.objectiveResponse);
}

void describeSelection(const SelectionIndex& index,
                       std::size_t selected,
                       std::size_t candidates,
                       Document& into) {
    Document& of = into.object("selection");
    of.count("candidates", candidates).count("selected", selected);
    const double exact = breeding::selectionIntensity(selected, candidates);
    of.number("intensity", exact);
    if (selected < candidates) {
        of.number("intensity in an endless population",
                  breeding::selectionIntensity(static_cast<double>(selected) /
                                               static_cast<double>(candidates)));
    }
    if (index.objectiveResponse) {
        of.number("expected response of the objective", *index.objectiveResponse * exact);
    }
    DocumentList& traits = of.list("expected response of the traits");
    for (std::size_t t = 0; t < index.traits.size(); ++t) {
        Document& trait = traits.add();
        trait.text("trait", index.traits[t]);
        trait.number("response", index.traitResponse[t] * exact);
    }
}

Status describeCandidates(const IndexChoice& choice,
                          const SelectionIndex& index,
                          const WorkFile& file,
                          Document& document) {
    const auto candidates = readCandidates(file, index.traits);
    const auto ranked = candidates ? breeding::rankByIndex(index, *candidates) : candidates.error();
    if (!ranked) {
        return ranked.error();
    }
    std::size_t ranks = 0;
    DocumentList& list = document.list("candidates");
    for (const breeding::CandidateIndex& candidate : ranked->candidates) {
        Document& of = list.add();
        of.text("id", candidate.id).number("index", candidate.index);
        if (candidate.rank) {
            of.count("rank", *candidate.rank);
        }
        of.number("accuracy", candidate.accuracy).count("traits measured", candidate.measured);
        ranks += candidate.rank ? 1U : 0U;
    }
    if (choice.selected > ranks) {
        return Error{ErrorCode::InvalidInput,
                     "More are to be selected than there are candidates with an index.",
                     ""};
    }
    if (choice.selected > 0) {
        describeSelection(index, choice.selected, ranks, document);
    }
    Remarks remarks = index.remarks;
    remarks.insert(remarks.end(), ranked->remarks.begin(), ranked->remarks.end());
    document.remarks(remarks);
    return {};
}

int workIndex(const IndexChoice& choice, Terminal& terminal) {
    const auto variancesFile = WorkFile::read(choice.variances, terminal);
    const auto variances = variancesFile ? readVariances(*variancesFile) : variancesFile.error();
    const auto index = variances ? indexOf(choice, *variances) : variances.error();
    const auto file = index ? WorkFile::read(choice.path, terminal) : index.error();
    if (!file) {
        return tellFailure(terminal.err, file.error());
    }
    Document document;
    document.text("computation", "index");
    describe(*index, document);
    if (const Status told = describeCandidates(choice, *index, *file, document); !told) {
        return tellFailure(terminal.err, told.error());
    }
    return tell(document, terminal);
}

} // namespace

void addIndex(CLI::App& methods, Work& work) {
    auto choice = std::make_shared<IndexChoice>();
    CLI::App* command =
        methods.add_subcommand("index", "Candidates ranked on several traits at once");
    command->add_option("FILE", choice->path, "CSV of candidates; - is standard input")->required();
    command
        ->add_option("--variances",
                     choice->variances,
                     "CSV: kind (phenotypic or genetic), trait, and one column a trait")
        ->required();
    CLI::Option* weights = command->add_option(
        "--weight", choice->weights, "TRAIT=NUMBER, the worth of one unit; may be repeated");
    CLI::Option* gains =
        command->add_option("--gain", choice->gains, "TRAIT=NUMBER, the gain that is desired");
    gains->excludes(weights);
    CLI::Option* held =
        command->add_option("--hold", choice->held, "A trait that is not to change");
    held->excludes(gains);
    command->add_flag("--base", choice->isBase, "Put the weights on the traits directly")
        ->excludes(gains)
        ->excludes(held);
    command->add_flag("--bend", choice->mayBend, "Bend variances that contradict one another");
    command->add_option("--select", choice->selected, "How many are selected");
    command->footer("Columns: id, and one for each trait of the variances (an empty cell was not "
                    "measured).");
    command->callback([choice, &work] {
        work = [choice](Terminal& terminal) { return workIndex(*choice, terminal); };
    });
}

} // namespace bullace::console
