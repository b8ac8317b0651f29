// `bullace work identify`: which taxon each vine is, from its own values and those of verified
// vines.
#include "console/work.hpp"

#include "core/fruit/identity.hpp"

#include <CLI/CLI.hpp>
#include <cmath>
#include <map>
#include <memory>

namespace bullace::console {

namespace {

struct IdentifyOptions {
    std::string path;
    double wrong = 5;  // percent
    double missed = 5; // percent
};

struct VineRows {
    std::string accession;
    std::string taxon; // of a verified vine; empty for one to be identified
    fruit::VineValues values;
};
using Vines = std::map<std::string, VineRows>;

struct Columns {
    std::size_t vine = 0;
    std::size_t character = 0;
    std::size_t value = 0;
    std::optional<std::size_t> accession;
    std::optional<std::size_t> taxon;
};

Result<Columns> columnsOf(const WorkFile& file) {
    const auto vine = file.column("vine");
    const auto character = file.column("character");
    const auto value = file.column("value");
    for (const auto* column : {&vine, &character, &value}) {
        if (!*column) {
            return column->error();
        }
    }
    return Columns{
        *vine, *character, *value, file.columnIfThere("accession"), file.columnIfThere("taxon")};
}

Result<Vines> vinesOf(const WorkFile& file) {
    const Result<Columns> columns = columnsOf(file);
    if (!columns) {
        return columns.error();
    }
    Vines vines;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const auto value = file.numberIfThere(row, columns->value);
        if (!value) {
            return value.error();
        }
        const std::string& name = file.text(row, columns->vine);
        const bool isNew = !vines.contains(name);
        VineRows& vine = vines[name];
        const std::string taxon = columns->taxon ? file.text(row, *columns->taxon) : "";
        if (!isNew && taxon != vine.taxon) {
            return file.wrong(row,
                              *columns->taxon,
                              "the vine \"" + name + "\" was of \"" + vine.taxon + "\" before");
        }
        vine.taxon = taxon;
        vine.accession = columns->accession ? file.text(row, *columns->accession) : name;
        if (*value) {
            vine.values[file.text(row, columns->character)].push_back(**value);
        }
    }
    return vines;
}

std::vector<fruit::VerifiedAccession> verifiedOf(const Vines& vines) {
    std::map<std::pair<std::string, std::string>, fruit::VerifiedAccession> accessions;
    for (const auto& [name, vine] : vines) {
        if (vine.taxon.empty()) {
            continue;
        }
        fruit::VerifiedAccession& accession = accessions[{vine.taxon, vine.accession}];
        accession.taxon = vine.taxon;
        for (const auto& [character, values] : vine.values) {
            accession.vines[character].push_back(values);
        }
    }
    std::vector<fruit::VerifiedAccession> verified;
    for (auto& [key, accession] : accessions) {
        verified.push_back(std::move(accession));
    }
    return verified;
}

const char* wordOf(fruit::Verdict verdict) {
    switch (verdict) {
    case fruit::Verdict::NothingToGoBy:
        return "nothing to go by";
    case fruit::Verdict::Undecided:
        return "undecided";
    case fruit::Verdict::Decided:
        return "decided";
    case fruit::Verdict::Contradictory:
        return "contradictory";
    case fruit::Verdict::Hybrid:
        return "hybrid with subgenus Vitis";
    }
    return "";
}

void describeCharacters(const fruit::Identity& identity,
                        const std::vector<fruit::TaxonProfile>& profiles,
                        DocumentList& list) {
    for (const fruit::CharacterEvidence& evidence : identity.characters) {
        Document& one = list.add();
        one.text("character", evidence.character).count("values", evidence.n);
        one.number("mean", evidence.mean);
        DocumentList& taxa = one.list("taxa");
        for (std::size_t i = 0; i < profiles.size(); ++i) {
            if (evidence.logLikelihoods[i]) {
                taxa.add()
                    .text("taxon", profiles[i].taxon)
                    .number("log-likelihood", evidence.logLikelihoods[i])
                    .number("standard deviations away", evidence.distances[i]);
            }
        }
    }
}

void describe(const VineRows& vine,
              const std::vector<fruit::TaxonProfile>& profiles,
              const fruit::DecisionRisk& risk,
              Document& into) {
    const fruit::Identity identity = fruit::identify(profiles, vine.values, risk);
    into.text("verdict", wordOf(identity.verdict));
    into.text("method", "sequential probability ratio test, vines' means integrated out");
    const bool hasLeading = identity.leading.has_value();
    into.text("leading taxon", hasLeading ? profiles[*identity.leading].taxon : "");
    into.number("ratio that decides", std::pow(10, identity.bound));
    DocumentList& ratios = into.list("times likelier than");
    for (std::size_t i = 0; hasLeading && i < profiles.size(); ++i) {
        if (i != *identity.leading && identity.isRival[i]) {
            ratios.add()
                .text("taxon", profiles[i].taxon)
                .number("log10 ratio", identity.ratios[*identity.leading][i]);
        }
    }
    into.text("by the published ranges", identity.byPublishedRanges.value_or("undecided"));
    into.text("by the rule of thumb (common practice, no source)",
              identity.byRuleOfThumb.value_or("undecided"));
    describeCharacters(identity, profiles, into.list("characters"));
    const auto more = fruit::stillNeeded(profiles, vine.values, fruit::kBerriesPerCluster, risk);
    into.number("more clusters expected to decide",
                more.more ? std::optional(static_cast<double>(*more.more)) : std::nullopt);
    into.remarks(identity.remarks);
}

int identify(const IdentifyOptions& options, Terminal& terminal) {
    const auto file = WorkFile::read(options.path, terminal);
    const auto vines = file ? vinesOf(*file) : file.error();
    if (!vines) {
        return tellFailure(terminal.err, vines.error());
    }
    const auto profiles = fruit::profilesWith(verifiedOf(*vines));
    Document document;
    document.text("computation", "identify");
    document.text("caution",
                  "This assumes a muscadine; wild vines have poisonous look-alikes. Never taste to "
                  "identify.");
    DocumentList& list = document.list("vines");
    for (const auto& [name, vine] : *vines) {
        if (vine.taxon.empty()) {
            Document& one = list.add();
            one.text("vine", name);
            describe(vine, profiles, {options.wrong / 100, options.missed / 100}, one);
        }
    }
    return tell(document, terminal);
}

} // namespace

void addIdentify(CLI::App& methods, Work& work) {
    auto options = std::make_shared<IdentifyOptions>();
    CLI::App* command =
        methods.add_subcommand("identify", "Which taxon a vine is, with the evidence for each");
    command->add_option("FILE", options->path, "CSV; - is standard input")->required();
    command
        ->add_option(
            "--wrong", options->wrong, "Percent of decisions that may be for a wrong taxon")
        ->check(CLI::Range(0.001, 49.0))
        ->capture_default_str();
    command
        ->add_option(
            "--missed", options->missed, "Percent of vines that may be missed for the right one")
        ->check(CLI::Range(0.001, 49.0))
        ->capture_default_str();
    command->footer(
        "Columns: vine, character, value; if there, accession and taxon. Rows with a taxon are\n"
        "verified vines, from which each taxon's own figures are made where there are enough.\n"
        "Characters: berries-per-cluster, berry-diameter (mm), seeds-per-berry, seed-length (mm),\n"
        "skin-thickness, lenticels (1-9), chromosomes, bloom-offset (days), growth-end (day of "
        "year).\n"
        "Example:\n  vine,character,value\n  N1-03-05,berries-per-cluster,6\n"
        "  N1-03-05,berry-diameter,19.5");
    command->callback([options, &work] {
        work = [options](Terminal& terminal) { return identify(*options, terminal); };
    });
}

} // namespace bullace::console
