#include "demo/json_lines.hpp"

#include "demo/bench_lines.hpp"
#include "demo/breeding_lines.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/json_value.hpp"

#include <string_view>

namespace bullace::demo {

namespace {

using journal::appendJsonText;
using journal::integerValue;
using journal::listValue;
using journal::MapValue;
using journal::numberValue;
using journal::textValue;

void appendKey(std::string& line, std::string_view key) {
    line += line.size() == 1 ? "" : ",";
    appendJsonText(line, key);
    line += ':';
}

void appendText(std::string& line, std::string_view key, std::string_view text) {
    appendKey(line, key);
    appendJsonText(line, text);
}

template<typename Number>
void appendNumber(std::string& line, std::string_view key, Number number) {
    appendKey(line, key);
    line += std::to_string(number);
}

template<typename First, typename Second>
void appendPair(std::string& line, std::string_view key, First first, Second second) {
    appendKey(line, key);
    line += '[' + std::to_string(first) + ',' + std::to_string(second) + ']';
}

void appendOver(std::string& line, const std::vector<journal::Place>& over) {
    appendKey(line, "over");
    line += '[';
    for (const journal::Place& place : over) {
        line += line.back() == '[' ? "[" : ",[";
        appendJsonText(line, place.origin.text());
        line += ',' + std::to_string(place.seq) + ']';
    }
    line += ']';
}

Bytes conflictValue(const PlantedConflict& conflict) {
    MapValue map;
    map.add("subject", textValue(conflict.subject)).add("kind", textValue(conflict.kind));
    map.add("status", textValue(conflict.isOpen ? "open" : "ruled"));
    if (!conflict.within.empty()) {
        map.add("within", textValue(conflict.within));
    }
    if (!conflict.right.empty()) {
        map.add("right", conflict.right);
    }
    return map.bytes();
}

Bytes textsValue(const std::vector<std::string>& texts) {
    std::vector<Bytes> items;
    items.reserve(texts.size());
    for (const std::string& text : texts) {
        items.push_back(textValue(text));
    }
    return listValue(items);
}

Bytes shiftedValue(const ShiftedRow& row) {
    MapValue map;
    map.add("block", textValue(row.block)).add("row", integerValue(row.row));
    map.add("date", textValue(row.date)).add("descriptor", textValue(row.descriptor));
    map.add("along", integerValue(row.along));
    map.add("put_right", journal::booleanValue(row.isPutRight));
    return map.add("subjects", textsValue(row.subjects)).bytes();
}

Bytes seasonValue(const VineSeason& season, int year) {
    MapValue map;
    map.add("year", integerValue(year)).add("clusters", integerValue(season.clusters));
    map.add("bears", journal::booleanValue(season.bears));
    map.add("berries_per_cluster", numberValue(rounded(season.berriesPerCluster, 2)));
    map.add("berry_diameter_mm", numberValue(rounded(season.diameterMm, 2)));
    map.add("soluble_solids_brix", numberValue(rounded(season.brix, 2)));
    map.add("pruning_weight_kg", numberValue(rounded(season.pruningKg, 2)));
    map.add("vigour", integerValue(season.vigour)).add("flavour", integerValue(season.flavour));
    map.add("bud_break_day", integerValue(season.budBreakDay));
    map.add("bloom_day", integerValue(season.bloomDay));
    return map.add("ripe_day", integerValue(season.ripeDay)).bytes();
}

Bytes vineValue(const Vine& vine) {
    std::vector<Bytes> plantings;
    for (const vineyard::Planting& planting : vine.plantings) {
        MapValue one;
        one.add("accession", textValue(planting.accession));
        one.add("from", textValue(writeDate(planting.from)));
        if (planting.until) {
            one.add("until", textValue(writeDate(*planting.until)));
        }
        plantings.push_back(one.bytes());
    }
    std::vector<Bytes> seasons;
    for (std::size_t i = 0; i < kYears.size(); ++i) {
        if (vine.seasons[i].stands) {
            seasons.push_back(seasonValue(vine.seasons[i], kYears[i]));
        }
    }
    MapValue map;
    map.add("position", textValue(vine.position)).add("plantings", listValue(plantings));
    return map.add("seasons", listValue(seasons)).bytes();
}

Bytes journalsValue(const DemoStation& station) {
    std::vector<Bytes> items;
    for (const Journal& journal : station.journals) {
        MapValue map;
        map.add("file", textValue(journal.file)).add("about", textValue(journal.about));
        map.add("origin", textValue(journal.entries.front().origin.text()));
        map.add("season", integerValue(journal.season));
        map.add("entries", integerValue(static_cast<std::int64_t>(journal.entries.size())));
        items.push_back(map.bytes());
    }
    return listValue(items);
}

template<typename Item, typename ToValue>
Bytes listOf(const std::vector<Item>& items, ToValue&& toValue) {
    std::vector<Bytes> values;
    values.reserve(items.size());
    for (const Item& item : items) {
        values.push_back(toValue(item));
    }
    return listValue(values);
}

} // namespace

std::string entryLine(const journal::Entry& entry, const Digest& digest) {
    std::string line = "{";
    appendText(line, "origin", entry.origin.text());
    appendNumber(line, "seq", entry.seq);
    appendNumber(line, "count", entry.count);
    if (entry.wall) {
        appendPair(line, "wall", entry.wall->ms, entry.wall->minutes);
    }
    appendText(line, "author", entry.author);
    appendText(line, "kind", entry.kind);
    appendText(line, "subject", entry.subject);
    appendKey(line, "value");
    line += journal::valueToJson(entry.value);
    appendOver(line, entry.over);
    if (entry.group) {
        appendPair(line, "group", entry.group->first, entry.group->n);
    }
    if (entry.why) {
        appendText(line, "why", *entry.why);
    }
    if (entry.as) {
        appendText(line, "as", *entry.as);
    }
    appendText(line, "digest", digest.hex());
    line += "}\n";
    return line;
}

std::string journalLines(const std::vector<journal::Entry>& entries) {
    std::string lines;
    Digest digest;
    for (const journal::Entry& entry : entries) {
        digest = journal::chainDigest(digest, entry.encode());
        lines += entryLine(entry, digest);
    }
    return lines;
}

std::string truthDocument(const DemoStation& station, std::uint64_t seed) {
    const Truth& truth = station.truth;
    MapValue document;
    document.add("station", textValue(kStationName));
    document.add("seed", integerValue(static_cast<std::int64_t>(seed)));
    document.add("journals", journalsValue(station));
    document.add("conflicts", listOf(truth.conflicts, conflictValue));
    document.add("agreed", textsValue(truth.agreed));
    document.add("shifted_rows", listOf(truth.shiftedRows, shiftedValue));
    document.add("slip",
                 MapValue()
                     .add("subject", textValue(truth.slip.subject))
                     .add("typed", truth.slip.typed)
                     .add("right", truth.slip.right)
                     .bytes());
    document.add("wrong_clock",
                 MapValue()
                     .add("origin", textValue(truth.wrongClock))
                     .add("days", integerValue(truth.wrongClockDays))
                     .bytes());
    document.add(
        "restored",
        MapValue()
            .add("origin", textValue(truth.restored))
            .add("common_until_seq", integerValue(static_cast<std::int64_t>(truth.restoredAfter)))
            .bytes());
    document.add("bench", benchValue(station.orchard.collection, truth.bench));
    document.add("breeding", breedingValue(truth.breeding));
    document.add("vines", listOf(station.orchard.vines, vineValue));
    return journal::valueToJson(document.bytes()) + "\n";
}

} // namespace bullace::demo
