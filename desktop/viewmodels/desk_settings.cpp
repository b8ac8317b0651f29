#include "desk/desk_settings.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>

namespace bullace::desk {

using journal::booleanValue;
using journal::memberOf;
using journal::textValue;

namespace {

constexpr const char* kName = "desk";

constexpr std::pair<std::string_view, bool UnitWishes::*> kUnits[] = {
    {"fahrenheit", &UnitWishes::fahrenheit},
    {"inches", &UnitWishes::inches},
    {"pounds", &UnitWishes::pounds},
    {"feet", &UnitWishes::feet},
    {"percent", &UnitWishes::percent},
};

bool isTrue(BytesView map, std::string_view key, bool otherwise) {
    const auto member = memberOf(map, key);
    return member ? *member == booleanValue(true) : otherwise;
}

std::string textIn(BytesView map, std::string_view key) {
    const auto member = memberOf(map, key);
    return member ? std::string(journal::textOf(*member).value_or("")) : std::string{};
}

} // namespace

Result<DeskSettings> readDeskSettings(store::Database& database) {
    const Result<Bytes> kept = database.kept(kName);
    if (!kept) {
        return kept.error();
    }
    DeskSettings settings;
    if (kept->empty()) {
        return settings;
    }
    settings.author = textIn(*kept, "author");
    settings.language = textIn(*kept, "language");
    settings.isDusk = isTrue(*kept, "dusk", false);
    settings.letsSync = isTrue(*kept, "lets_sync", false);
    settings.isA4 = isTrue(*kept, "a4", false);
    settings.showsNames = isTrue(*kept, "names", true);
    const auto scale = memberOf(*kept, "text_scale");
    settings.textScale = std::clamp(scale ? journal::numberOf(*scale).value_or(1) : 1.0, 1.0, 2.0);
    for (const auto& [key, flag] : kUnits) {
        settings.units.*flag = isTrue(*kept, key, false);
    }
    return settings;
}

Status keepDeskSettings(store::Database& database, const DeskSettings& settings) {
    journal::MapValue map;
    map.add("author", textValue(settings.author))
        .add("language", textValue(settings.language))
        .add("dusk", booleanValue(settings.isDusk))
        .add("lets_sync", booleanValue(settings.letsSync))
        .add("a4", booleanValue(settings.isA4))
        .add("names", booleanValue(settings.showsNames))
        .add("text_scale", journal::floatValue(settings.textScale));
    for (const auto& [key, flag] : kUnits) {
        map.add(key, booleanValue(settings.units.*flag));
    }
    const store::Bookmark mark{kName, map.bytes()};
    return database.keep({&mark, 1});
}

} // namespace bullace::desk
