#include "field/settings.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace bullace::field {

using journal::booleanValue;
using journal::integerValue;
using journal::itemsOf;
using journal::listValue;
using journal::MapValue;
using journal::memberOf;
using journal::textOf;
using journal::textValue;

namespace {

constexpr const char* kMark = "settings";

constexpr std::array<std::pair<std::string_view, bool Settings::*>, 3> kFlags{
    {{"set-up", &Settings::isSetUp},
     {"left-handed", &Settings::isLeftHanded},
     {"dusk", &Settings::isDusk}}};
constexpr std::array<std::pair<std::string_view, bool UnitWishes::*>, 5> kUnits{
    {{"fahrenheit", &UnitWishes::fahrenheit},
     {"inches", &UnitWishes::inches},
     {"feet", &UnitWishes::feet},
     {"pounds", &UnitWishes::pounds},
     {"percent-acid", &UnitWishes::percent}}};

bool isTrue(BytesView map, std::string_view key) {
    const auto member = memberOf(map, key);
    return member && *member == booleanValue(true);
}

std::string textAt(BytesView map, std::string_view key) {
    const auto member = memberOf(map, key);
    return member ? std::string(textOf(*member).value_or("")) : std::string{};
}

double numberAt(BytesView map, std::string_view key, double otherwise) {
    const auto member = memberOf(map, key);
    return member ? journal::numberOf(*member).value_or(otherwise) : otherwise;
}

Bytes writeUnits(const std::map<std::string, UnitWishes>& units) {
    MapValue all;
    for (const auto& [author, choice] : units) {
        MapValue one;
        for (const auto& [key, flag] : kUnits) {
            one.add(key, booleanValue(choice.*flag));
        }
        all.add(author, one.bytes());
    }
    return all.bytes();
}

std::map<std::string, UnitWishes> readUnits(BytesView map) {
    std::map<std::string, UnitWishes> units;
    CborReader reader(map);
    std::size_t count = 0;
    if (!reader.map(count)) {
        return units;
    }
    for (std::size_t i = 0; i < count; ++i) {
        std::string_view author;
        BytesView choice;
        if (!reader.text(author) || !reader.any(choice)) {
            return units;
        }
        for (const auto& [key, flag] : kUnits) {
            units[std::string(author)].*flag = isTrue(choice, key);
        }
    }
    return units;
}

Bytes writeBlock(const vineyard::Block& block) {
    std::vector<Bytes> rows;
    for (const vineyard::Row& row : block.rows) {
        rows.push_back(listValue({integerValue(row.number), integerValue(row.vines)}));
    }
    return MapValue()
        .add("code", textValue(block.code))
        .add("name", textValue(block.name))
        .add("rows", listValue(rows))
        .bytes();
}

vineyard::Block readBlock(BytesView item) {
    vineyard::Block block;
    block.code = textAt(item, "code");
    block.name = textAt(item, "name");
    const auto rows = memberOf(item, "rows");
    for (const BytesView row :
         itemsOf(rows.value_or(BytesView{})).value_or(std::vector<BytesView>{})) {
        const auto pair = itemsOf(row);
        if (pair && pair->size() == 2) {
            block.rows.push_back(
                {static_cast<unsigned>(journal::wholeNumberOf((*pair)[0]).value_or(0)),
                 static_cast<unsigned>(journal::wholeNumberOf((*pair)[1]).value_or(0))});
        }
    }
    return block;
}

} // namespace

Result<Settings> readSettings(store::Database& database) {
    const Result<Bytes> bytes = database.kept(kMark);
    if (!bytes) {
        return bytes.error();
    }
    Settings settings;
    for (const auto& [key, flag] : kFlags) {
        settings.*flag = isTrue(*bytes, key);
    }
    settings.glassFactor = std::clamp(numberAt(*bytes, "glass-factor", 1), 0.2, 5.0);
    settings.textScale = std::clamp(numberAt(*bytes, "text-scale", 1), 1.0, 2.0);
    settings.layout =
        static_cast<KeyLayout>(std::clamp(static_cast<int>(numberAt(*bytes, "layout", 0)), 0, 2));
    settings.language = textAt(*bytes, "language");
    settings.lastAuthor = textAt(*bytes, "last-author");
    settings.clockCorrectionMs =
        static_cast<std::int64_t>(numberAt(*bytes, "clock-correction-ms", 0));
    settings.sentEntries = static_cast<std::uint64_t>(numberAt(*bytes, "sent-entries", 0));
    settings.units = readUnits(memberOf(*bytes, "units").value_or(BytesView{}));
    const auto blocks = memberOf(*bytes, "own-blocks");
    for (const BytesView item :
         itemsOf(blocks.value_or(BytesView{})).value_or(std::vector<BytesView>{})) {
        settings.ownBlocks.push_back(readBlock(item));
    }
    const auto notes = memberOf(*bytes, "recent-notes");
    for (const BytesView item :
         itemsOf(notes.value_or(BytesView{})).value_or(std::vector<BytesView>{})) {
        settings.recentNotes.emplace_back(textOf(item).value_or(""));
    }
    return settings;
}

Status keepSettings(store::Database& database, const Settings& settings) {
    MapValue map;
    for (const auto& [key, flag] : kFlags) {
        map.add(key, booleanValue(settings.*flag));
    }
    map.add("glass-factor", journal::floatValue(settings.glassFactor));
    map.add("text-scale", journal::floatValue(settings.textScale));
    map.add("layout", integerValue(static_cast<int>(settings.layout)));
    map.add("language", textValue(settings.language));
    map.add("last-author", textValue(settings.lastAuthor));
    map.add("clock-correction-ms", integerValue(settings.clockCorrectionMs));
    map.add("sent-entries", integerValue(static_cast<std::int64_t>(settings.sentEntries)));
    map.add("units", writeUnits(settings.units));
    std::vector<Bytes> blocks;
    for (const vineyard::Block& block : settings.ownBlocks) {
        blocks.push_back(writeBlock(block));
    }
    map.add("own-blocks", listValue(blocks));
    std::vector<Bytes> notes;
    for (const std::string& note : settings.recentNotes) {
        notes.push_back(textValue(note));
    }
    map.add("recent-notes", listValue(notes));
    const std::array<store::Bookmark, 1> marks{{{kMark, map.bytes()}}};
    return database.keep(marks);
}

} // namespace bullace::field
