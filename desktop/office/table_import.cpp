// Planning an import line by line.
#include "office/table_import.hpp"

#include "office/search_index.hpp"
#include "office/table_drafts.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"
#include "core/vineyard/passport.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::office {

using journal::textValue;
using report::CsvRow;
using report::CsvTable;
using store::Draft;

namespace {

// Reads the lines of one table into drafts.
class Planner {
public:
    Planner(store::Database& database,
            const vineyard::Catalogue& catalogue,
            const CsvTable& table,
            const TableWish& wish)
        : database_(database),
          catalogue_(catalogue),
          table_(table),
          wish_(wish),
          drafts_(database) {
        plan_.wish = wish;
        for (std::size_t i = 0; i < wish.columns.size(); ++i) {
            if (!wish.columns[i].field.empty()) {
                columns_.emplace(wish.columns[i].field, i);
            }
        }
    }

    Result<TablePlan> plan() {
        for (const TableField& field : fieldsOf(wish_.kind, catalogue_)) {
            if (field.isRequired && columns_.count(field.field) == 0) {
                return Error{ErrorCode::InvalidInput,
                             "No column is the \"" + field.field +
                                 "\", which such a table needs. Say which one it is.",
                             {}};
            }
        }
        for (const CsvTable::Problem& problem : table_.problems) {
            complain(problem.line, problem.message);
        }
        for (const CsvRow& row : table_.rows) {
            row_ = &row;
            ++plan_.lines;
            if (Status read = takeRow(); !read) {
                return read.error();
            }
        }
        if (wish_.kind == TableKind::Rows) {
            if (Status read = finishRows(); !read) {
                return read.error();
            }
        }
        std::sort(plan_.problems.begin(), plan_.problems.end(), [](const auto& a, const auto& b) {
            return a.line < b.line;
        });
        plan_.drafts = drafts_.takeDrafts();
        plan_.seen = drafts_.takeSeen();
        plan_.there = drafts_.there();
        plan_.conflicting = drafts_.conflicting();
        return std::move(plan_);
    }

private:
    void complain(std::size_t line, std::string message) {
        ++plan_.problemCount;
        if (plan_.problems.size() < kMostProblems) {
            plan_.problems.push_back({line, std::move(message)});
        }
    }
    void complain(std::string message) { complain(row_->line, std::move(message)); }

    [[nodiscard]] std::string cell(const std::string& field) const {
        const auto column = columns_.find(field);
        return column == columns_.end() ? std::string{} : row_->cells[column->second];
    }
    [[nodiscard]] report::CellKind kindOf(const std::string& field) const {
        const auto column = columns_.find(field);
        return column == columns_.end() ? report::CellKind::Empty
                                        : wish_.columns[column->second].kind;
    }

    Status takeRow() {
        switch (wish_.kind) {
        case TableKind::ObservationsLong:
            return takeLong();
        case TableKind::ObservationsWide:
            return takeWide();
        case TableKind::Accessions:
            return takeAccession();
        case TableKind::Plantings:
            return takePlanting();
        case TableKind::Rows:
            takeBlockRow();
            return {};
        case TableKind::People:
            return takePerson();
        }
        return {};
    }

    // obs/PLACE/DATE of the line; nothing, and told, where it has none.
    std::optional<std::string> placeAndDay() {
        std::string place = cell("position");
        if (place.empty()) {
            const std::string lot = cell("lot");
            place = lot.empty() || lot.starts_with("lot:") ? lot : "lot:" + lot;
        }
        const std::string day = cell("date");
        const auto date = report::readDateCell(day, kindOf("date"));
        if (!place.starts_with("lot:") && !vineyard::readPosition(place)) {
            complain("\"" + place + "\" is no position. Write block, row and vine, like B2-07-14.");
            return std::nullopt;
        }
        if (!date) {
            complain("\"" + day + "\" is no day of the calendar. Write it like 2026-05-14.");
            return std::nullopt;
        }
        return "obs/" + place + "/" + writeDate(*date);
    }

    // The value as the descriptor takes it; stages from the scale that the file is in.
    Result<Typed> typedFor(const vineyard::Asked& asked, const std::string& text) const {
        if (asked.known.kind != descriptors::DescriptorKind::Stage ||
            wish_.scale == StageScale::Bbch) {
            return readTyped(asked, text, wish_.units);
        }
        const auto code = readTypedNumber(text);
        const auto bbch = code && *code == std::floor(*code)
                              ? bbchOfEichhornLorenz(static_cast<std::int64_t>(*code))
                              : std::nullopt;
        if (!bbch) {
            return Error{ErrorCode::InvalidInput,
                         "E-L " + text +
                             " has no stage of its own in the BBCH scale. Look at the "
                             "vine's notes and give the BBCH code.",
                         {}};
        }
        return Typed{journal::integerValue(*bbch), "E-L " + text + " (Coombe 1995)"};
    }

    Status takeLong() {
        const auto above = placeAndDay();
        const std::string code = cell("descriptor");
        const vineyard::Asked* asked = descriptorNamed(code);
        if (asked == nullptr) {
            complain("Nobody here knows the descriptor \"" + code + "\".");
            return {};
        }
        return above ? takeValue(*above, *asked, cell("value")) : Status{};
    }

    Status takeWide() {
        const auto above = placeAndDay();
        for (const TableColumn& column : wish_.columns) {
            const vineyard::Asked* asked = catalogue_.descriptor(column.field);
            if (!above || asked == nullptr) {
                continue;
            }
            const auto index = static_cast<std::size_t>(&column - wish_.columns.data());
            if (Status read = takeValue(*above, *asked, row_->cells[index]); !read) {
                return read;
            }
        }
        return {};
    }

    const vineyard::Asked* descriptorNamed(const std::string& name) const {
        if (const vineyard::Asked* asked = catalogue_.descriptor(name)) {
            return asked;
        }
        for (const vineyard::Asked* asked : catalogue_.descriptors()) {
            if (folded(asked->known.title) == folded(name)) {
                return asked;
            }
        }
        return nullptr;
    }

    Status
    takeValue(const std::string& above, const vineyard::Asked& asked, const std::string& text) {
        if (text.empty()) {
            return {}; // an empty cell says nothing
        }
        const std::string sample = cell("sample");
        const bool hasName = sample.find(',') != std::string::npos; // as this program exports it
        const std::string subject =
            above + "/" + std::string(asked.known.code) + (hasName ? "/" + sample : "");
        const auto isThere = drafts_.isThere(asked, subject, text);
        if (!isThere || *isThere) {
            return isThere ? Status{} : Status{isThere.error()};
        }
        const Result<Typed> typed = typedFor(asked, text);
        if (!typed) {
            complain(std::string(asked.known.title) + ": " + typed.error().message);
            return {};
        }
        Draft draft;
        draft.author = cell("observer").empty() ? wish_.author : cell("observer");
        draft.kind = journal::Kind::Observe;
        draft.subject = subject;
        draft.value = typed->value;
        draft.as = typed->as;
        draft.why = wish_.why;
        if (asked.known.isSampled && !hasName) {
            return drafts_.takeSample(std::move(draft));
        }
        return drafts_.take(std::move(draft), TableDrafts::Beside::Yes);
    }

    Draft catalogDraft(std::string subject, Bytes value) const {
        Draft draft;
        draft.author = wish_.author;
        draft.kind = journal::Kind::Catalog;
        draft.subject = std::move(subject);
        draft.value = std::move(value);
        draft.why = wish_.why;
        return draft;
    }

    bool isId(const std::string& id, const char* what) {
        const bool isGood = !id.empty() && id.size() <= 64 && id.find('/') == std::string::npos;
        if (!isGood) {
            complain("\"" + id + "\" is no " + what + ": 1 to 64 letters without \"/\".");
        }
        return isGood;
    }

    Status takeAccession() {
        const std::string id = cell("id");
        if (!isId(id, "number of an accession")) {
            return {};
        }
        for (std::size_t i = 0; i < wish_.columns.size(); ++i) {
            const std::string& field = wish_.columns[i].field;
            const std::string& text = row_->cells[i];
            if (field.empty() || field == "id" || text.empty()) {
                continue;
            }
            if (const vineyard::PassportField* passport = vineyard::findPassportField(field)) {
                if (const Status is = vineyard::checkPassport(*passport, text); !is) {
                    complain(is.error().message);
                    continue;
                }
            }
            Bytes value = textValue(text);
            if (field == "flower-sex") {
                const double sex = readTypedNumber(text).value_or(0);
                if (sex < 1 || sex > 4) {
                    complain("\"" + text +
                             "\" is no flower sex: 1 and 2 male, 3 perfect, 4 female.");
                    continue;
                }
                value = journal::numberValue(sex);
            }
            if (Status read =
                    drafts_.take(catalogDraft("accession/" + id + "/" + field, std::move(value)),
                                 TableDrafts::Beside::No);
                !read) {
                return read;
            }
        }
        return {};
    }

    Status takePlanting() {
        const std::string position = cell("position");
        const std::string accession = cell("accession");
        const auto from = report::readDateCell(cell("from"), kindOf("from"));
        const std::string last = cell("until");
        const auto until = report::readDateCell(last, kindOf("until"));
        if (!vineyard::readPosition(position)) {
            complain("\"" + position + "\" is no position. Write it like B2-07-14.");
        } else if (!from) {
            complain("\"" + cell("from") + "\" is no day of the calendar.");
        } else if (!last.empty() && (!until || *until < *from)) {
            complain("\"" + last + "\" is no last day of this planting.");
        } else if (isId(accession, "number of an accession")) {
            journal::MapValue value;
            value.add("accession", textValue(accession));
            value.add("until", until ? textValue(writeDate(*until)) : journal::nullValue());
            return drafts_.take(
                catalogDraft("planting/" + position + "/" + writeDate(*from), value.bytes()),
                TableDrafts::Beside::No);
        }
        return {};
    }

    void takeBlockRow() {
        const std::string block = cell("block");
        const auto row = readTypedNumber(cell("row"));
        const auto vines = readTypedNumber(cell("vines"));
        const auto isWhole = [](const std::optional<double>& number) {
            return number && *number >= 1 && *number <= vineyard::kGreatestNumber &&
                   *number == std::floor(*number);
        };
        if (!vineyard::isBlockCode(block)) {
            complain("\"" + block + "\" is no block: a letter first, then letters and digits.");
        } else if (!isWhole(row) || !isWhole(vines)) {
            complain("Row and vines are whole numbers from 1.");
        } else {
            rows_[block][static_cast<unsigned>(*row)] = static_cast<unsigned>(*vines);
        }
    }

    // The rows of the file take the place of those of their number; the block's others stay.
    Status finishRows() {
        for (auto& [code, rows] : rows_) {
            if (const vineyard::Block* block = catalogue_.block(code)) {
                for (const vineyard::Row& row : block->rows) {
                    rows.try_emplace(row.number, row.vines);
                }
            }
            std::vector<Bytes> items;
            for (const auto& [number, vines] : rows) {
                items.push_back(journal::listValue(
                    {journal::integerValue(number), journal::integerValue(vines)}));
            }
            if (Status read =
                    drafts_.take(catalogDraft("block/" + code + "/rows", journal::listValue(items)),
                                 TableDrafts::Beside::No);
                !read) {
                return read;
            }
        }
        return {};
    }

    Status takePerson() {
        const std::string code = cell("code");
        return isId(code, "short code")
                   ? drafts_.take(catalogDraft("person/" + code + "/name", textValue(cell("name"))),
                                  TableDrafts::Beside::No)
                   : Status{};
    }

    store::Database& database_;
    const vineyard::Catalogue& catalogue_;
    const CsvTable& table_;
    const TableWish& wish_;
    const CsvRow* row_ = nullptr;
    TablePlan plan_;
    std::map<std::string, std::size_t> columns_; // by field
    TableDrafts drafts_;
    std::map<std::string, std::map<unsigned, unsigned>> rows_;
};

} // namespace

Result<TablePlan> planTable(store::Database& database,
                            const vineyard::Catalogue& catalogue,
                            const CsvTable& table,
                            const TableWish& wish) {
    return Planner(database, catalogue, table, wish).plan();
}

} // namespace bullace::office
