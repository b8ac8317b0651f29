// What the office wrote before anybody walked: the collection, the plan, people and rounds.
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"

#include <array>
#include <utility>
#include <vector>

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::MapValue;
using journal::textValue;

void writePeople(Pen& office) {
    constexpr std::array<std::pair<const char*, const char*>, 4> kPeople{
        {{kIda, "Ida Pellworth"},
         {kTobias, "Tobias Quern"},
         {kWanda, "Wanda Ostrik"},
         {kHesper, "Hesper Lindqvale"}}};
    for (const auto& [code, name] : kPeople) {
        office.catalog(std::string("person/") + code + "/name", textValue(name));
    }
}

void writeAccessions(const Orchard& orchard, Pen& office) {
    for (const Accession& accession : orchard.collection) {
        const std::string subject = "accession/" + accession.id + "/";
        office.catalog(subject + "name", textValue(accession.name));
        office.catalog(subject + "taxon", textValue(taxonOf(accession)));
        office.catalog(subject + "status", textValue(statusWord(accession.status)));
        office.catalog(subject + "flower-sex", integerValue(accession.flowerSex));
        if (accession.mother && accession.father) {
            office.catalog(subject + "mother", textValue(orchard.collection[*accession.mother].id));
            office.catalog(subject + "father", textValue(orchard.collection[*accession.father].id));
        }
    }
}

// The rows of a block, as pairs of a row's number and its places.
Bytes rowsValue(const vineyard::Block& block) {
    std::vector<Bytes> rows;
    for (const vineyard::Row& row : block.rows) {
        rows.push_back(journal::listValue({integerValue(row.number), integerValue(row.vines)}));
    }
    return journal::listValue(rows);
}

void writePlan(const Orchard& orchard, Pen& office) {
    for (const vineyard::Block& block : orchard.blocks) {
        office.catalog("block/" + block.code + "/name", textValue(block.name));
        office.catalog("block/" + block.code + "/rows", rowsValue(block));
    }
    for (const Vine& vine : orchard.vines) {
        for (const vineyard::Planting& planting : vine.plantings) {
            if (planting.from.year() > std::chrono::year(kYears.front())) {
                continue; // not yet planted
            }
            MapValue value;
            value.add("accession", textValue(planting.accession));
            value.add("until", journal::nullValue());
            office.catalog("planting/" + vine.position + "/" + writeDate(planting.from),
                           value.bytes());
        }
    }
}

// A descriptor of the station's own.
void writeOwnDescriptor(Pen& office) {
    office.catalog("descriptor/wasp-damage/title", textValue("Berries opened by wasps"));
    office.catalog("descriptor/wasp-damage/kind", textValue("percent"));
    office.catalog("descriptor/wasp-damage/unit", textValue("%"));
    office.catalog(
        "descriptor/wasp-damage/rule",
        MapValue().add("rule", textValue("mean")).add("within", integerValue(15)).bytes());
}

} // namespace

void writeOffice(const Orchard& orchard, Pen& office) {
    office.begin(kHesper, day(2022, 12, 5), 9, 0, 2);
    writePeople(office);
    writePlan(orchard, office);
    writeAccessions(orchard, office);
    writeOwnDescriptor(office);
}

void updatePlantings(const Orchard& orchard, Pen& office, int year) {
    office.begin(kHesper, day(year, 4, 22), 9, 0, 20);
    for (const Vine& vine : orchard.vines) {
        for (const vineyard::Planting& planting : vine.plantings) {
            const std::string subject =
                "planting/" + vine.position + "/" + writeDate(planting.from);
            MapValue value;
            value.add("accession", textValue(planting.accession));
            if (planting.until && planting.until->year() == std::chrono::year(year)) {
                value.add("until", textValue(writeDate(*planting.until)));
                std::vector<journal::Place> over;
                for (const journal::Entry& entry : office.entries()) {
                    if (entry.subject == subject) {
                        over.push_back({entry.origin, entry.seq});
                    }
                }
                office.write(journal::Kind::Catalog, {subject, value.bytes(), over, {}, {}});
            } else if (planting.from.year() == std::chrono::year(year)) {
                value.add("until", journal::nullValue());
                office.catalog(subject, value.bytes());
            }
        }
    }
}

} // namespace bullace::demo
