// `bullace work pedigree`: inbreeding, generations, founders, species and kinships of a pedigree.
#include "console/pedigree_file.hpp"

#include "core/breeding/genetic_origin.hpp"
#include "core/breeding/relationship.hpp"

#include <CLI/CLI.hpp>
#include <memory>
#include <numeric>

namespace bullace::console {

namespace {

using breeding::Pedigree;

struct PedigreeChoice {
    std::string path;
    std::vector<std::string> focus;
    std::string clones;
};

std::size_t at(std::int32_t i) {
    return static_cast<std::size_t>(i);
}

// Everybody where nobody is asked for.
Result<std::vector<std::int32_t>> focusOf(const PedigreeChoice& choice, const Pedigree& pedigree) {
    std::vector<std::int32_t> members;
    for (const std::string& name : choice.focus) {
        const auto found = pedigree.find(name);
        if (!found) {
            return Error{ErrorCode::NotFound, name + " is not in the pedigree.", ""};
        }
        members.push_back(*found);
    }
    if (members.empty()) {
        members.resize(pedigree.size());
        std::iota(members.begin(), members.end(), 0);
    }
    return members;
}

void describeFounders(const Pedigree& pedigree, std::int32_t member, Document& into) {
    const auto shares = breeding::founderShares(pedigree, {&member, 1});
    DocumentList& founders = into.list("founders");
    for (const breeding::FounderShare& share : shares.founders) {
        Document& of = founders.add();
        of.text("founder", pedigree.names[at(share.founder)]).number("share", share.share);
    }
    into.number("share of unknown founders", shares.unknownShare);
}

void describeKinships(const Pedigree& pedigree,
                      const std::vector<double>& inbreeding,
                      const std::vector<std::int32_t>& members,
                      Document& into) {
    const auto matrix = breeding::kinshipMatrix(pedigree, inbreeding, members);
    DocumentList& list = into.list("kinships");
    for (std::size_t i = 0; i < members.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            Document& of = list.add();
            of.text("one", pedigree.names[at(members[j])]);
            of.text("other", pedigree.names[at(members[i])]);
            of.number("kinship", matrix[i * members.size() + j]);
        }
    }
}

void describeMember(const PedigreeFile& file,
                    std::int32_t member,
                    const std::optional<breeding::SpeciesShares>& species,
                    Document& of) {
    const Pedigree& pedigree = file.pedigree;
    const auto named = [&pedigree](std::int32_t i) {
        return i == breeding::kUnknown ? std::string() : pedigree.names[at(i)];
    };
    of.text("id", pedigree.names[at(member)]);
    of.text("mother", named(pedigree.mother[at(member)]));
    of.text("father", named(pedigree.father[at(member)]));
    for (std::size_t t = 0; species && t < species->taxa.size(); ++t) {
        of.number("share of " + species->taxa[t], species->of(at(member), t));
    }
    if (species) {
        of.number("share of unknown species", species->unknown[at(member)]);
    }
}

Status describe(const PedigreeFile& file, const PedigreeChoice& choice, Document& document) {
    const Pedigree& pedigree = file.pedigree;
    const auto members = focusOf(choice, pedigree);
    if (!members) {
        return members.error();
    }
    const auto inbreeding = breeding::inbreeding(pedigree);
    const auto known = breeding::generations(pedigree);
    std::size_t founders = 0;
    for (std::size_t i = 0; i < pedigree.size(); ++i) {
        founders += pedigree.isFounder(i) ? 1U : 0U;
    }
    document.count("individuals", pedigree.size()).count("founders", founders);
    document.count("named only as a parent", pedigree.namedOnlyAsParent);
    document.count("repeated lines", pedigree.repeatedLines);
    std::optional<breeding::SpeciesShares> species;
    if (!file.taxa.empty()) {
        auto shares = breeding::speciesShares(pedigree, file.taxa);
        if (!shares) {
            return shares.error();
        }
        species = std::move(*shares);
    }
    DocumentList& list = document.list("accessions");
    for (const std::int32_t member : *members) {
        Document& of = list.add();
        describeMember(file, member, species, of);
        of.number("inbreeding", inbreeding[at(member)]);
        of.number("expected heterozygosity", 1 - inbreeding[at(member)]);
        of.whole("complete generations", known[at(member)].complete);
        of.whole("most generations", known[at(member)].most);
        of.number("equivalent complete generations", known[at(member)].equivalent);
        if (!choice.focus.empty()) {
            describeFounders(pedigree, member, of);
        }
    }
    if (!choice.focus.empty()) {
        describeKinships(pedigree, inbreeding, *members, document);
    }
    if (!members->empty()) {
        document.number("effective founders",
                        breeding::founderShares(pedigree, *members).effectiveFounders);
        document.number("mean kinship", breeding::meanKinship(pedigree, inbreeding, *members));
    }
    document.number("logarithm of the determinant of the relationships",
                    breeding::inverseRelationship(pedigree, inbreeding).logDeterminant);
    document.remarks(species ? species->remarks : Remarks{});
    return {};
}

int pedigreeOf(const PedigreeChoice& choice, Terminal& terminal) {
    const auto file = readPedigree(choice.path, choice.clones, terminal);
    if (!file) {
        return tellFailure(terminal.err, file.error());
    }
    Document document;
    document.text("computation", "pedigree");
    document.text("method", "columns of the relationship matrix among parents");
    if (const Status described = describe(*file, choice, document); !described) {
        return tellFailure(terminal.err, described.error());
    }
    return tell(document, terminal);
}

} // namespace

void addPedigree(CLI::App& methods, Work& work) {
    auto choice = std::make_shared<PedigreeChoice>();
    CLI::App* command =
        methods.add_subcommand("pedigree", "Inbreeding, kinship, founders and species by descent");
    command->add_option("FILE", choice->path, "CSV; - is standard input")->required();
    command->add_option("--focus",
                        choice->focus,
                        "An accession to tell of, with its founders and its kinship with the "
                        "others named; may be repeated. Without it all are told of");
    command->add_option("--clones", choice->clones, "CSV of clones and sports: id, genotype");
    command->footer("Columns: id, mother, father (an empty one is unknown); if there, taxon of "
                    "founders.\nExample:\n  id,mother,father\n  A12,A3,A7\n  A31,A12,A12");
    command->callback([choice, &work] {
        work = [choice](Terminal& terminal) { return pedigreeOf(*choice, terminal); };
    });
}

} // namespace bullace::console
