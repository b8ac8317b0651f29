#include "office/table_export.hpp"

#include "core/journal/json_value.hpp"
#include "core/vineyard/passport.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace bullace::office {

using journal::Subject;

namespace {

// Fields by which a wild vine could be found.
const std::set<std::string, std::less<>> kSites{
    "collsite", "declatitude", "declongitude", "coorduncert"};

std::string plainText(BytesView value) {
    const auto text = journal::textOf(value);
    return text ? std::string(*text) : journal::valueToJson(value);
}

class Out {
public:
    explicit Out(std::ostream& out) : out_(out) {}
    void row(const std::vector<std::string>& cells) {
        text_.clear();
        report::appendCsvRow(text_, cells);
        out_ << text_;
    }
    [[nodiscard]] Status done() {
        out_.flush();
        return out_.good() ? Status{}
                           : Status{Error{ErrorCode::Io, "The file could not be written.", {}}};
    }

private:
    std::ostream& out_;
    std::string text_;
};

std::string observersOf(store::Database& database, const store::StateRow& row) {
    std::string all;
    std::set<std::string> seen;
    const auto heads = database.heads(row.subject);
    for (const store::HeadRow& head : heads ? *heads : std::vector<store::HeadRow>{}) {
        const auto entry = journal::readEntry(head.entry);
        if (entry && seen.insert(std::string(entry->author)).second) {
            all += (all.empty() ? "" : ";") + std::string(entry->author);
        }
    }
    return all;
}

Status
writeObservations(store::Database& database, const vineyard::Catalogue& catalogue, Out& out) {
    out.row(
        {"position", "lot", "date", "descriptor", "sample", "value", "unit", "status", "observer"});
    return database.eachState("obs", [&](const store::StateRow& row) {
        const Subject subject = journal::readSubject(row.subject);
        const Result<Bytes> value = store::readJson(row.valueJson);
        const vineyard::Asked* asked = catalogue.descriptor(subject.descriptor);
        const std::string text = row.valueJson.empty() || !value ? std::string{}
                                 : asked != nullptr              ? typedText(*asked, *value, {})
                                                                 : plainText(*value);
        const std::string place(subject.id);
        out.row({subject.isLot() ? "" : place,
                 subject.isLot() ? place.substr(4) : "",
                 std::string(subject.date),
                 std::string(subject.descriptor),
                 std::string(subject.sample),
                 text,
                 asked == nullptr ? std::string{} : std::string(asked->known.unit),
                 std::string(merge::stateWord(row.state)),
                 observersOf(database, row)});
        return true;
    });
}

// One line for each ID, a column for each field that anybody uses; those of the standard first.
Status writeAccessions(store::Database& database, WildSites sites, Out& out) {
    std::map<std::string, std::map<std::string, std::string>> all;
    std::set<std::string> used;
    const Status read = database.eachState("accession", [&](const store::StateRow& row) {
        const Subject subject = journal::readSubject(row.subject);
        const Result<Bytes> value = store::readJson(row.valueJson);
        const bool isHidden = sites == WildSites::LeftOut && kSites.count(subject.field) > 0;
        if (!row.valueJson.empty() && value && !isHidden) {
            all[std::string(subject.id)][std::string(subject.field)] = plainText(*value);
            used.emplace(subject.field);
        }
        return true;
    });
    if (!read) {
        return read;
    }
    std::vector<std::string> fields;
    std::vector<std::string> header{"ACCENUMB"};
    for (const vineyard::PassportField& passport : vineyard::passportFields()) {
        if (used.erase(std::string(passport.field)) > 0) {
            fields.emplace_back(passport.field);
            header.emplace_back(passport.mcpd);
        }
    }
    for (const std::string& field : used) {
        fields.push_back(field);
        header.push_back(field);
    }
    out.row(header);
    for (const auto& [id, values] : all) {
        std::vector<std::string> cells{id};
        for (const std::string& field : fields) {
            const auto value = values.find(field);
            cells.push_back(value == values.end() ? std::string{} : value->second);
        }
        out.row(cells);
    }
    return {};
}

Status writePlantings(store::Database& database, Out& out) {
    out.row({"position", "accession", "from", "until"});
    return database.eachState("planting", [&out](const store::StateRow& row) {
        const Subject subject = journal::readSubject(row.subject);
        const Result<Bytes> value = store::readJson(row.valueJson);
        const auto member = [&value](const char* name) {
            const auto part = value ? journal::memberOf(*value, name) : std::nullopt;
            return part ? std::string(journal::textOf(*part).value_or("")) : std::string{};
        };
        if (!row.valueJson.empty()) {
            out.row({std::string(subject.id),
                     member("accession"),
                     std::string(subject.date),
                     member("until")});
        }
        return true;
    });
}

} // namespace

Status exportTable(store::Database& database,
                   const vineyard::Catalogue& catalogue,
                   TableKind kind,
                   WildSites sites,
                   std::ostream& stream) {
    Out out(stream);
    Status written;
    switch (kind) {
    case TableKind::ObservationsLong:
    case TableKind::ObservationsWide:
        written = writeObservations(database, catalogue, out);
        break;
    case TableKind::Accessions:
        written = writeAccessions(database, sites, out);
        break;
    case TableKind::Plantings:
        written = writePlantings(database, out);
        break;
    case TableKind::Rows:
        out.row({"block", "row", "vines"});
        for (const vineyard::Block& block : catalogue.blocks()) {
            for (const vineyard::Row& row : block.rows) {
                out.row({block.code, std::to_string(row.number), std::to_string(row.vines)});
            }
        }
        break;
    case TableKind::People:
        out.row({"code", "name"});
        for (const vineyard::Person& person : catalogue.people()) {
            out.row({person.code, person.name});
        }
        break;
    }
    return written ? out.done() : written;
}

} // namespace bullace::office
