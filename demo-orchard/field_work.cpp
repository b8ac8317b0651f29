// What the office prepared in the third season for those who walk: rounds, labels, a block that was
// sprayed, crosses and their pollen.
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"
#include "core/vineyard/label_code.hpp"

#include <array>
#include <cstdint>
#include <set>
#include <utility>
#include <vector>

namespace bullace::demo {

namespace {

using journal::booleanValue;
using journal::integerValue;
using journal::listValue;
using journal::MapValue;
using journal::textValue;

constexpr std::size_t kThird = 2;         // of the seasons
constexpr std::size_t kRepeats = 12;      // vines that are noted twice
constexpr std::size_t kRepeatStride = 13; // bearing vines from one to the next
constexpr const char* kPollenLot = "P25-1";

Bytes texts(const std::vector<std::string>& items) {
    std::vector<Bytes> values;
    for (const std::string& item : items) {
        values.push_back(textValue(item));
    }
    return listValue(values);
}

// A round that is being written: its number in the season and its next field.
class RoundPen {
public:
    RoundPen(Pen& office, int number)
        : office_(office),
          above_("round/R25-" + std::to_string(number) + "/") {}

    RoundPen& says(const char* field, Bytes value) {
        office_.catalog(above_ + field, std::move(value));
        return *this;
    }
    RoundPen& is(const char* field) { return says(field, booleanValue(true)); }
    RoundPen& about(const char* title,
                    const std::vector<std::string>& where,
                    const std::vector<std::string>& descriptors) {
        return says("title", textValue(title))
            .says("where", texts(where))
            .says("descriptors", texts(descriptors));
    }
    RoundPen& between(CivilDate from, CivilDate by) {
        return says("from", textValue(writeDate(from))).says("by", textValue(writeDate(by)));
    }

private:
    Pen& office_;
    std::string above_;
};

// Bud break to the end of bloom, as many as fit on one hand of keys.
Bytes springStages() {
    std::vector<Bytes> stages;
    for (const std::int64_t code : {9, 13, 55, 57, 61, 65, 69}) {
        stages.push_back(integerValue(code));
    }
    return listValue(stages);
}

const Accession& accessionOf(const Orchard& orchard, const Vine& vine) {
    return orchard.collection[vine.seasons[kThird].accession];
}

// The first bearing vine of each wild accession.
std::vector<std::string> wildBearers(const Orchard& orchard) {
    std::vector<std::string> places;
    std::set<std::size_t> known;
    for (const Vine* const vine : orchard.row("N1", 0)) {
        const VineSeason& season = vine->seasons[kThird];
        const bool isWild = accessionOf(orchard, *vine).status == demo::Status::Wild;
        if (isWild && season.bears && known.insert(season.accession).second) {
            places.push_back(vine->position);
        }
    }
    return places;
}

std::vector<std::string> vinesToRepeat(const Orchard& orchard) {
    std::vector<std::string> places;
    std::size_t bearing = 0;
    for (const Vine* const vine : orchard.row("B1", 0)) {
        if (vine->seasons[kThird].bears && bearing++ % kRepeatStride == 0 &&
            places.size() < kRepeats) {
            places.push_back(vine->position);
        }
    }
    return places;
}

// A cross as the office plans it: where its mother stands, and whose pollen she gets.
struct PlannedCross {
    const Vine* mother = nullptr;
    std::string father;
    bool isFromLot = false;
};

// A male wild vine that stands; null where there is none.
const Vine* pollenVine(const Orchard& orchard) {
    for (const Vine* const vine : orchard.row("N1", 0)) {
        if (vine->seasons[kThird].stands && accessionOf(orchard, *vine).isMale()) {
            return vine;
        }
    }
    return nullptr;
}

// One bearing vine of each accession of B1 with this flower sex.
std::vector<const Vine*> bearersOf(const Orchard& orchard, int flowerSex) {
    std::vector<const Vine*> vines;
    std::set<std::size_t> known;
    for (const Vine* const vine : orchard.row("B1", 0)) {
        const VineSeason& season = vine->seasons[kThird];
        if (season.bears && accessionOf(orchard, *vine).flowerSex == flowerSex &&
            known.insert(season.accession).second) {
            vines.push_back(vine);
        }
    }
    return vines;
}

// Two female cultivars with a wild male's pollen from the lot, two with a perfect cultivar's, and a
// perfect one that has to be emasculated first.
std::vector<PlannedCross> plannedCrosses(const Orchard& orchard) {
    const auto females = bearersOf(orchard, 4);
    const auto perfect = bearersOf(orchard, 3);
    const Vine* const male = pollenVine(orchard);
    std::vector<PlannedCross> crosses;
    for (std::size_t i = 0; i < females.size() && crosses.size() < 4; ++i) {
        const bool isFromLot = i < 2 && male != nullptr;
        const Vine& father = isFromLot ? *male : *perfect[i % perfect.size()];
        crosses.push_back({females[i], accessionOf(orchard, father).id, isFromLot});
    }
    crosses.push_back({perfect[0], accessionOf(orchard, *perfect[1]).id, false});
    return crosses;
}

void writeCrosses(const Orchard& orchard, Pen& office) {
    const Vine* const male = pollenVine(orchard);
    if (male != nullptr) {
        const std::string lot = std::string("lot/") + kPollenLot + "/";
        office.catalog(lot + "kind", textValue("pollen"));
        office.catalog(lot + "from", textValue(male->position));
        office.catalog(lot + "accession", textValue(accessionOf(orchard, *male).id));
        office.catalog(lot + "date", textValue(writeDate(day(2025, 5, 5))));
        office.catalog(lot + "label", textValue(vineyard::labelCode(orchard.vines.size() + 1)));
    }
    int number = 0;
    for (const PlannedCross& cross : plannedCrosses(orchard)) {
        const std::string name = "25-" + std::to_string(++number);
        const std::string subject = "cross/X" + name + "/";
        office.catalog(subject + "number", textValue(name));
        office.catalog(subject + "mother", textValue(accessionOf(orchard, *cross.mother).id));
        office.catalog(subject + "father", textValue(cross.father));
        office.catalog(subject + "mother-at", textValue(cross.mother->position));
        if (cross.isFromLot) {
            office.catalog(subject + "pollen-lot", textValue(kPollenLot));
        }
    }
}

// Some are offered long before they are due, so that each kind of round can be tried in spring.
void writeRounds(const Orchard& orchard, Pen& office) {
    const CivilDate spring = day(2025, 3, 20);
    const CivilDate now = day(2025, 5, 5);
    RoundPen(office, 1)
        .about("Stages, bud break to bloom", {"B1-*", "B2-*", "B3-*"}, {"stage"})
        .says("stages", springStages())
        .between(spring, day(2025, 5, 31));
    RoundPen(office, 2)
        .about("Stages of the wild vines, foremost and hindmost", {"N1-*"}, {"stage"})
        .says("stages", springStages())
        .is("least")
        .between(spring, day(2025, 6, 7));
    RoundPen(office, 3)
        .about("Cluster counts", {"B1-*", "B3-*"}, {"clusters"})
        .between(now, day(2025, 6, 20));
    RoundPen(office, 4)
        .about("Berry diameters of the wild vines", wildBearers(orchard), {"berry-diameter"})
        .says("samples", MapValue().add("berry-diameter", integerValue(10)).bytes())
        .says("precision", MapValue().add("berry-diameter", integerValue(5)).bytes())
        .between(now, day(2025, 8, 29));
    RoundPen(office, 5)
        .about("Vigour again, blind", vinesToRepeat(orchard), {"vigour"})
        .is("repeat")
        .is("blind")
        .between(now, day(2025, 7, 18));
    RoundPen(office, 6)
        .about("Rot, where it stands out", {"B2-*"}, {"rot"})
        .is("only-what-stands-out")
        .between(now, day(2025, 9, 5));
    RoundPen(office, 7)
        .about("Which seedlings stay", {"B2-*"}, {"verdict"})
        .is("decision")
        .between(now, day(2025, 9, 19));
    RoundPen(office, 8)
        .about("Bud break in the two rows at the fence", {"B1-07-*", "B1-08-*"}, {"bud-break"})
        .between(spring, day(2025, 4, 11));
    std::vector<std::string> mothers;
    for (const PlannedCross& cross : plannedCrosses(orchard)) {
        mothers.push_back(cross.mother->position);
    }
    RoundPen(office, 9)
        .about("Crosses in bloom", mothers, {"stage", "cross-work"})
        .says("stages", springStages())
        .between(now, day(2025, 6, 14));
}

void writeLabels(const Orchard& orchard, Pen& office) {
    std::uint64_t number = 0;
    for (const Vine& vine : orchard.vines) {
        const std::string& code = orchard.blocks[vine.block].code;
        office.catalog("block/" + code + "/label-" + vine.position.substr(code.size() + 1),
                       textValue(vineyard::labelCode(++number)));
    }
}

} // namespace

void writeFieldWork(const Orchard& orchard, Pen& office) {
    office.begin(kHesper, day(2025, 5, 5), 13, 0, 3);
    writeRounds(orchard, office);
    writeLabels(orchard, office);
    office.catalog("block/B3/closed-until", textValue(writeDate(day(2025, 5, 13))));
    office.catalog("block/B3/no-tasting-until", textValue(writeDate(day(2025, 6, 2))));
    writeCrosses(orchard, office);
}

} // namespace bullace::demo
