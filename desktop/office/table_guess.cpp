// What a spreadsheet seems to hold, by the titles of its columns.
#include "office/search_index.hpp"
#include "office/table_import.hpp"

#include "core/vineyard/passport.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace bullace::office {

namespace {

struct Titles {
    const char* field;
    std::array<const char*, 8> titles;
};

// As folded() writes them.
constexpr std::array kTitles{
    Titles{"position", {"position", "vine", "place", "posicion", "cepa", "planta", nullptr}},
    Titles{"lot", {"lot", "lote", "sample id", nullptr}},
    Titles{"date", {"date", "day", "fecha", "dia", "observed on", nullptr}},
    Titles{"descriptor", {"descriptor", "trait", "what", "variable", "descriptor code", nullptr}},
    Titles{"value", {"value", "valor", "result", nullptr}},
    Titles{"observer",
           {"observer", "who", "author", "observador", "persona", "collector", nullptr}},
    Titles{"sample", {"sample", "muestra", nullptr}},
    Titles{"accession", {"accession", "accession number", "accenumb", "accesion", nullptr}},
    Titles{"from", {"from", "planted", "planted on", "desde", "plantada", nullptr}},
    Titles{"until", {"until", "to", "removed", "removed on", "hasta", nullptr}},
    Titles{"block", {"block", "bloque", nullptr}},
    Titles{"row", {"row", "fila", "hilera", nullptr}},
    Titles{"vines", {"vines", "places", "cepas", nullptr}},
    Titles{"code", {"code", "codigo", "person", nullptr}},
    Titles{"name", {"name", "nombre", nullptr}},
};

std::string fieldTitled(const std::string& title) {
    for (const Titles& known : kTitles) {
        for (const char* one : known.titles) {
            if (one != nullptr && title == one) {
                return known.field;
            }
        }
    }
    return {};
}

std::string descriptorTitled(const std::string& title, const vineyard::Catalogue& catalogue) {
    for (const vineyard::Asked* asked : catalogue.descriptors()) {
        if (title == asked->known.code || title == folded(asked->known.title)) {
            return std::string(asked->known.code);
        }
    }
    return {};
}

TableKind kindOf(const std::set<std::string>& fields, std::size_t descriptors, bool hasPassport) {
    const auto has = [&fields](const char* field) { return fields.count(field) > 0; };
    const bool hasPlace = has("position") || has("lot");
    return hasPlace && has("descriptor") && has("value") ? TableKind::ObservationsLong
           : hasPlace && has("date") && descriptors > 0  ? TableKind::ObservationsWide
           : has("position") && has("accession")         ? TableKind::Plantings
           : has("block") && has("row") && has("vines")  ? TableKind::Rows
           : hasPassport || has("accession")             ? TableKind::Accessions
           : has("code") && has("name")                  ? TableKind::People
           : hasPlace                                    ? TableKind::ObservationsWide
                                                         : TableKind::Accessions;
}

// The field of an accession that a title is for.
std::string accessionField(const std::string& title) {
    if (title == "accenumb" || title == "id" || title == "number" ||
        fieldTitled(title) == "accession") {
        return "id";
    }
    if (const vineyard::PassportField* passport = vineyard::findPassportField(title)) {
        return std::string(passport->field);
    }
    for (const char* own : {"name", "taxon", "status", "mother", "father", "flower-sex"}) {
        if (title == own) {
            return own;
        }
    }
    return {};
}

} // namespace

std::vector<TableField> fieldsOf(TableKind kind, const vineyard::Catalogue& catalogue) {
    std::vector<TableField> fields;
    switch (kind) {
    case TableKind::ObservationsLong:
        return {{"date", true},
                {"descriptor", true},
                {"value", true},
                {"position", false},
                {"lot", false},
                {"observer", false},
                {"sample", false}};
    case TableKind::ObservationsWide:
        fields = {{"date", true}, {"position", false}, {"lot", false}, {"observer", false}};
        for (const vineyard::Asked* asked : catalogue.descriptors()) {
            fields.push_back({std::string(asked->known.code), false});
        }
        return fields;
    case TableKind::Accessions:
        fields = {{"id", true},
                  {"taxon", false},
                  {"status", false},
                  {"mother", false},
                  {"father", false},
                  {"flower-sex", false}};
        for (const vineyard::PassportField& passport : vineyard::passportFields()) {
            fields.push_back({std::string(passport.field), false});
        }
        return fields;
    case TableKind::Plantings:
        return {{"position", true}, {"accession", true}, {"from", true}, {"until", false}};
    case TableKind::Rows:
        return {{"block", true}, {"row", true}, {"vines", true}};
    case TableKind::People:
        return {{"code", true}, {"name", true}};
    }
    return fields;
}

TableWish guessWish(const report::CsvTable& table, const vineyard::Catalogue& catalogue) {
    TableWish wish;
    std::set<std::string> fields;
    std::size_t descriptors = 0;
    bool hasPassport = false;
    std::vector<std::string> titles;
    for (std::size_t i = 0; i < table.header.size(); ++i) {
        titles.push_back(folded(table.header[i]));
        fields.insert(fieldTitled(titles[i]));
        descriptors += descriptorTitled(titles[i], catalogue).empty() ? 0U : 1U;
        const auto* passport = vineyard::findPassportField(titles[i]);
        hasPassport = hasPassport || titles[i] == "accenumb" ||
                      (passport != nullptr && passport->field != "name");
    }
    wish.kind = kindOf(fields, descriptors, hasPassport);
    std::set<std::string> allowed;
    for (const TableField& field : fieldsOf(wish.kind, catalogue)) {
        allowed.insert(field.field);
    }
    std::set<std::string> taken;
    for (std::size_t i = 0; i < table.header.size(); ++i) {
        std::string field =
            wish.kind == TableKind::Accessions ? accessionField(titles[i]) : fieldTitled(titles[i]);
        if (wish.kind == TableKind::ObservationsWide && allowed.count(field) == 0) {
            field = descriptorTitled(titles[i], catalogue);
        }
        if (allowed.count(field) == 0 || !taken.insert(field).second) {
            field.clear();
        }
        wish.columns.push_back({table.header[i], report::guessColumn(table, i), std::move(field)});
    }
    return wish;
}

} // namespace bullace::office
