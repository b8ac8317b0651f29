// `bullace work design`: a planting plan for a block's positions and a list of entries.
#include "console/work.hpp"

#include "core/trials/layout.hpp"
#include "core/vineyard/position.hpp"

#include <CLI/CLI.hpp>
#include <memory>

namespace bullace::console {

namespace {

struct DesignChoice {
    std::string path;
    std::string entries;
    std::string design = "blocks";
    unsigned replicates = 2;
    std::uint64_t seed = 1;
    bool wantsCsv = false;
};

// yes and no, in the ways in which people mark a column.
Result<bool> truthOf(const WorkFile& file, std::size_t row, std::size_t column) {
    const std::string& cell = file.text(row, column);
    if (cell == "yes" || cell == "1" || cell == "true") {
        return true;
    }
    if (cell == "no" || cell == "0" || cell == "false") {
        return false;
    }
    return file.wrong(row, column, "\"" + cell + "\" is neither yes nor no");
}

// What stands in a column of positions, or in three of block, row and vine.
class PositionColumns {
public:
    [[nodiscard]] static Result<PositionColumns> of(const WorkFile& file) {
        PositionColumns columns;
        columns.usable_ = file.columnIfThere("usable");
        columns.position_ = file.columnIfThere("position");
        if (columns.position_) {
            return columns;
        }
        const auto row = file.column("row");
        const auto vine = file.column("vine");
        if (!row || !vine) {
            return row ? vine.error() : row.error();
        }
        columns.block_ = file.columnIfThere("block");
        columns.row_ = *row;
        columns.vine_ = *vine;
        return columns;
    }

    [[nodiscard]] Result<trials::LayoutPosition> read(const WorkFile& file, std::size_t row) const {
        auto position = position_ ? ofCode(file, row) : ofNumbers(file, row);
        if (position && usable_) {
            const auto isUsable = truthOf(file, row, *usable_);
            if (!isUsable) {
                return isUsable.error();
            }
            position->isUsable = *isUsable;
        }
        return position;
    }

private:
    [[nodiscard]] Result<trials::LayoutPosition> ofCode(const WorkFile& file,
                                                        std::size_t row) const {
        const std::string& cell = file.text(row, *position_);
        const auto read = vineyard::readPosition(cell);
        if (!read) {
            return file.wrong(row, *position_, "\"" + cell + "\" is no position like B2-07-14");
        }
        if (read->letter != 0) {
            return file.wrong(
                row, *position_, "\"" + cell + "\" stands between two vines and is not laid out");
        }
        return trials::LayoutPosition{std::string(read->block), read->row, read->vine};
    }

    [[nodiscard]] Result<trials::LayoutPosition> ofNumbers(const WorkFile& file,
                                                           std::size_t row) const {
        const auto number = file.count(row, row_);
        const auto vine = file.count(row, vine_);
        if (!number || !vine) {
            return number ? vine.error() : number.error();
        }
        if (*number > vineyard::kGreatestNumber || *vine > vineyard::kGreatestNumber) {
            return file.wrong(row,
                              *number > vineyard::kGreatestNumber ? row_ : vine_,
                              "no row or vine has such a number");
        }
        return trials::LayoutPosition{block_ ? file.text(row, *block_) : std::string(),
                                      static_cast<std::uint32_t>(*number),
                                      static_cast<std::uint32_t>(*vine)};
    }

    std::optional<std::size_t> position_;
    std::optional<std::size_t> block_;
    std::optional<std::size_t> usable_;
    std::size_t row_ = 0;
    std::size_t vine_ = 0;
};

Status readPositions(const WorkFile& file, trials::LayoutRequest& request) {
    const auto columns = PositionColumns::of(file);
    if (!columns) {
        return columns.error();
    }
    for (std::size_t row = 0; row < file.rows(); ++row) {
        auto position = columns->read(file, row);
        if (!position) {
            return position.error();
        }
        request.positions.push_back(std::move(*position));
    }
    return {};
}

Status readEntries(const WorkFile& file, trials::LayoutRequest& request) {
    const auto entry = file.column("entry");
    if (!entry) {
        return entry.error();
    }
    const auto check = file.columnIfThere("check");
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const auto isCheck = check ? truthOf(file, row, *check) : Result<bool>(false);
        if (!isCheck) {
            return isCheck.error();
        }
        (*isCheck ? request.checks : request.entries).push_back(file.text(row, *entry));
    }
    return {};
}

std::string placeOf(const trials::LayoutPosition& at) {
    return vineyard::writePosition({at.block, at.row, at.vine});
}

void describe(const trials::Layout& layout, const trials::LayoutRequest& request, Document& into) {
    into.text("method", layout.method).count("seed", request.seed);
    into.count("entries", request.entries.size()).count("checks", request.checks.size());
    into.count("replicates", request.replicates).count("vines", layout.vines.size());
    into.count("spare positions", layout.spare.size());
    into.count("positions without a vine", layout.lost.size());
    into.number("variance of a difference, of one vine's", layout.differenceVariance);
    into.number("efficiency beside complete blocks", layout.efficiency);
    into.number("variance of two checks", layout.twoChecksVariance);
    into.number("variance of two selections of one block", layout.sameBlockVariance);
    into.number("variance of a selection and a check", layout.withCheckVariance);
    DocumentList& plan = into.list("plan");
    for (const trials::PlannedVine& vine : layout.vines) {
        Document& of = plan.add();
        of.text("position", placeOf(request.positions[vine.position])).text("entry", vine.entry);
        of.count("replicate", vine.replicate).truth("check", vine.isCheck);
    }
    DocumentList& spare = into.list("spare");
    for (const std::size_t position : layout.spare) {
        spare.add(placeOf(request.positions[position]));
    }
    into.remarks(layout.remarks);
}

int tellCsv(const trials::Layout& layout,
            const trials::LayoutRequest& request,
            Terminal& terminal) {
    std::string out;
    report::appendCsvRow(out, {"position", "entry", "replicate", "check"});
    for (const trials::PlannedVine& vine : layout.vines) {
        report::appendCsvRow(out,
                             {placeOf(request.positions[vine.position]),
                              vine.entry,
                              std::to_string(vine.replicate),
                              vine.isCheck ? "yes" : "no"});
    }
    terminal.out << out;
    return 0;
}

int designOf(const DesignChoice& choice, Terminal& terminal) {
    trials::LayoutRequest request;
    request.kind = choice.design == "augmented"          ? trials::LayoutKind::Augmented
                   : choice.design == "rows-and-columns" ? trials::LayoutKind::RowsAndColumns
                                                         : trials::LayoutKind::CompleteBlocks;
    request.replicates = choice.replicates;
    request.seed = choice.seed;
    const auto positions = WorkFile::read(choice.path, terminal);
    const Status placed = positions ? readPositions(*positions, request) : positions.error();
    if (!placed) {
        return tellFailure(terminal.err, placed.error());
    }
    const auto entries = WorkFile::read(choice.entries, terminal);
    const Status listed = entries ? readEntries(*entries, request) : entries.error();
    if (!listed) {
        return tellFailure(terminal.err, listed.error());
    }
    const auto layout = trials::planLayout(request);
    if (!layout) {
        return tellFailure(terminal.err, layout.error());
    }
    if (choice.wantsCsv) {
        return tellCsv(*layout, request, terminal);
    }
    Document document;
    document.text("computation", "design");
    describe(*layout, request, document);
    return tell(document, terminal);
}

} // namespace

void addDesign(CLI::App& methods, Work& work) {
    auto choice = std::make_shared<DesignChoice>();
    CLI::App* command =
        methods.add_subcommand("design", "A planting plan for the positions of a block");
    command->add_option("FILE", choice->path, "CSV of positions; - is standard input")->required();
    command->add_option("--entries", choice->entries, "CSV of what is to be planted")->required();
    command->add_option("--design", choice->design, "How the entries are laid out")
        ->check(CLI::IsMember({"blocks", "augmented", "rows-and-columns"}))
        ->capture_default_str();
    command
        ->add_option("--replicates",
                     choice->replicates,
                     "Of every entry; in an augmented design the number of blocks")
        ->capture_default_str();
    command->add_option("--seed", choice->seed, "The same seed gives the same plan")
        ->capture_default_str();
    command->add_flag("--csv", choice->wantsCsv, "The plan alone, as a CSV file");
    command->footer("Columns of positions: position (B2-07-14), or row and vine and, if there, "
                    "block; if there, usable (yes or no).\n"
                    "Columns of entries: entry; if there, check (yes or no).\n"
                    "Example:\n  position,usable\n  B2-07-01,yes\n  B2-07-02,no\n\n"
                    "  entry,check\n  S001,no\n  CHECK1,yes");
    command->callback([choice, &work] {
        work = [choice](Terminal& terminal) { return designOf(*choice, terminal); };
    });
}

} // namespace bullace::console
