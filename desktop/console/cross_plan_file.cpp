// Reads what is there; how it fits together is checked where the plan is made.
#include "console/cross_plan_file.hpp"

#include "console/pedigree_file.hpp"

#include "core/base/numbers.hpp"
#include "core/breeding/relationship.hpp"

#include <algorithm>
#include <utility>

namespace bullace::console {

using namespace breeding;

namespace {

// Whether the cell of a column that may be there was read into `into`.
template<typename Read, typename Into>
Status
readIfThere(const WorkFile& file, const char* name, std::size_t row, const Read& read, Into& into) {
    const auto column = file.columnIfThere(name);
    if (!column || file.isMissing(row, *column)) {
        return {};
    }
    const auto value = (file.*read)(row, *column);
    if (!value) {
        return value.error();
    }
    into = static_cast<Into>(*value);
    return {};
}

Status readNumberIfThere(const WorkFile& file,
                         const char* name,
                         std::size_t row,
                         std::optional<double>& into) {
    const auto column = file.columnIfThere(name);
    if (!column) {
        return {};
    }
    const auto value = file.numberIfThere(row, *column);
    if (!value) {
        return value.error();
    }
    into = *value;
    return {};
}

Status readSex(const WorkFile& file, std::size_t row, CrossParent& parent) {
    const auto column = file.columnIfThere("sex");
    if (!column || file.isMissing(row, *column)) {
        return {};
    }
    const std::string& text = file.text(row, *column);
    for (const FlowerSex sex : {FlowerSex::Male, FlowerSex::Perfect, FlowerSex::Female}) {
        if (text == nameOf(sex)) {
            parent.sex = sex;
        }
    }
    if (const auto code = readCount(text, 9); code && !parent.sex) {
        parent.sex = vineyard::flowerSexOf(static_cast<int>(*code));
    }
    return parent.sex
               ? Status()
               : file.wrong(row, *column, "the sex is male, perfect, female or a code 1 to 4");
}

Result<PlanCandidate>
readCandidate(const WorkFile& file, std::size_t id, std::size_t row, const PlanChoice& choice) {
    PlanCandidate candidate;
    CrossParent& parent = candidate.parent;
    parent.id = file.text(row, id);
    candidate.mostUses = choice.mostUses;
    std::size_t chromosomes = 0;
    const Status read[] = {
        readSex(file, row, parent),
        readNumberIfThere(file, "merit", row, parent.merit),
        readNumberIfThere(file, "error variance", row, parent.meritErrorVariance),
        readNumberIfThere(file, "inbreeding", row, parent.inbreeding),
        readIfThere(file, "chromosomes", row, &WorkFile::count, chromosomes),
        readIfThere(file, "fewest uses", row, &WorkFile::count, candidate.fewestUses),
        readIfThere(file, "most uses", row, &WorkFile::count, candidate.mostUses)};
    for (const Status& status : read) {
        if (!status) {
            return status.error();
        }
    }
    if (chromosomes > 0) {
        parent.chromosomes = static_cast<int>(std::min<std::size_t>(chromosomes, 1000));
    }
    if (const auto colour = file.columnIfThere("colour"); colour) {
        parent.berryColour = file.text(row, *colour);
    }
    for (const SpeciesWish& wish : choice.rules.species) {
        const auto column = file.column(wish.species);
        const auto share = column ? file.numberIfThere(row, *column) : column.error();
        if (!share) {
            return share.error();
        }
        if (*share) {
            candidate.speciesShares.push_back(**share);
        }
    }
    if (candidate.speciesShares.size() != choice.rules.species.size()) {
        candidate.speciesShares.clear();
    }
    return candidate;
}

Status readCandidates(const PlanChoice& choice, Terminal& terminal, PlanFiles& files) {
    const auto file = WorkFile::read(choice.path, terminal);
    const auto id = file ? file->column("id") : file.error();
    if (!id) {
        return id.error();
    }
    for (std::size_t row = 0; row < file->rows(); ++row) {
        auto candidate = readCandidate(*file, *id, row, choice);
        if (!candidate) {
            return candidate.error();
        }
        files.place.emplace(candidate->parent.id, files.candidates.size());
        files.candidates.push_back(std::move(*candidate));
    }
    files.pairs.assign(files.candidates.size() * files.candidates.size(), {});
    return {};
}

// Kinships, and inbreeding where the candidates' file has none, of those that are in the pedigree.
Status readKinships(const PlanChoice& choice, Terminal& terminal, PlanFiles& files) {
    if (choice.pedigree.empty()) {
        return {};
    }
    const auto file = readPedigree(choice.pedigree, "", terminal);
    if (!file) {
        return file.error();
    }
    const auto inbreeding = breeding::inbreeding(file->pedigree);
    std::vector<std::int32_t> members;
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < files.candidates.size(); ++i) {
        CrossParent& parent = files.candidates[i].parent;
        if (const auto member = file->pedigree.find(parent.id)) {
            members.push_back(*member);
            places.push_back(i);
            parent.inbreeding =
                parent.inbreeding.value_or(inbreeding[static_cast<std::size_t>(*member)]);
        }
    }
    const auto matrix = kinshipMatrix(file->pedigree, inbreeding, members);
    for (std::size_t i = 0; i < places.size(); ++i) {
        for (std::size_t j = 0; j < places.size(); ++j) {
            files.pairs[places[i] * files.candidates.size() + places[j]].kinship =
                matrix[i * places.size() + j];
        }
    }
    return {};
}

// Columns mother, father; if there kinship, overlap, stored (yes or empty).
Status readPairs(const PlanChoice& choice, Terminal& terminal, PlanFiles& files) {
    if (choice.pairs.empty()) {
        return {};
    }
    const auto file = WorkFile::read(choice.pairs, terminal);
    const auto mother = file ? file->column("mother") : file.error();
    const auto father = mother ? file->column("father") : mother.error();
    if (!father) {
        return father.error();
    }
    const auto stored = file->columnIfThere("stored");
    for (std::size_t row = 0; row < file->rows(); ++row) {
        const auto one = files.place.find(file->text(row, *mother));
        const auto other = files.place.find(file->text(row, *father));
        if (one == files.place.end() || other == files.place.end()) {
            return file->wrongLine(row, "One of the two is not among the candidates.");
        }
        PairKnown& pair = files.pairs[one->second * files.candidates.size() + other->second];
        for (const Status& status : {readNumberIfThere(*file, "kinship", row, pair.kinship),
                                     readNumberIfThere(*file, "overlap", row, pair.bloomOverlap)}) {
            if (!status) {
                return status.error();
            }
        }
        pair.hasStoredPollen = stored && file->text(row, *stored) == "yes";
    }
    return {};
}

} // namespace

Result<SpeciesWish> wishOf(const std::string& text) {
    std::vector<std::string> parts(1);
    for (const char letter : text) {
        if (letter == ',') {
            parts.emplace_back();
        } else {
            parts.back() += letter;
        }
    }
    const bool isEach = parts.size() == 4 && parts[3] == "each";
    const auto fewest = parts.size() >= 3 ? readTypedNumber(parts[1]) : std::nullopt;
    const auto most = parts.size() >= 3 ? readTypedNumber(parts[2]) : std::nullopt;
    if (!fewest || !most || (parts.size() != 3 && !isEach)) {
        return Error{ErrorCode::InvalidInput,
                     text + " is not a species, its least and its greatest share, like "
                            "munsoniana,0.3,0.6 (and ,each).",
                     ""};
    }
    return SpeciesWish{parts[0], *fewest, *most, isEach};
}

Result<PlanFiles> readPlanFiles(const PlanChoice& choice, Terminal& terminal) {
    PlanFiles files;
    for (const auto& read : {&readCandidates, &readKinships, &readPairs}) {
        if (const Status status = read(choice, terminal, files); !status) {
            return status.error();
        }
    }
    return files;
}

Result<std::vector<OwnCross>> readOwnCrosses(const std::string& path, Terminal& terminal) {
    const auto file = WorkFile::read(path, terminal);
    const auto mother = file ? file->column("mother") : file.error();
    const auto father = mother ? file->column("father") : mother.error();
    if (!father) {
        return father.error();
    }
    std::vector<OwnCross> crosses;
    for (std::size_t row = 0; row < file->rows(); ++row) {
        OwnCross cross{file->text(row, *mother), {}, file->line(row)};
        std::string name;
        for (const char letter : file->text(row, *father) + "+") {
            if (letter != '+') {
                name += letter;
            } else if (!name.empty()) {
                cross.fathers.push_back(std::exchange(name, {}));
            }
        }
        crosses.push_back(std::move(cross));
    }
    return crosses;
}

} // namespace bullace::console
