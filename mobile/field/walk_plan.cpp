#include "field/walk_plan.hpp"

#include "core/journal/json_value.hpp"

#include <array>
#include <limits>
#include <utility>

namespace bullace::field {

using journal::booleanValue;
using journal::integerValue;
using journal::itemsOf;
using journal::listValue;
using journal::memberOf;
using journal::textOf;
using journal::textValue;

namespace {

constexpr std::array<std::pair<std::string_view, bool WalkPlan::*>, 6> kFlags{
    {{"one-way", &WalkPlan::isOneWay},
     {"blind", &WalkPlan::isBlind},
     {"decision", &WalkPlan::isDecision},
     {"only-what-stands-out", &WalkPlan::isOnlyWhatStandsOut},
     {"repeat", &WalkPlan::isRepeat},
     {"list", &WalkPlan::isList}}};
constexpr std::array<std::pair<std::string_view, std::string WalkPlan::*>, 3> kTexts{
    {{"round", &WalkPlan::round}, {"title", &WalkPlan::title}, {"author", &WalkPlan::author}}};

Bytes writeAsk(const Ask& ask) {
    std::vector<Bytes> parts{textValue(ask.descriptor), integerValue(ask.samples)};
    if (ask.precisionPercent) {
        parts.push_back(journal::floatValue(*ask.precisionPercent));
    }
    return listValue(parts);
}

std::optional<Ask> readAsk(BytesView item) {
    const auto parts = itemsOf(item);
    if (!parts || parts->size() < 2) {
        return {};
    }
    const auto code = textOf((*parts)[0]);
    const auto samples = journal::wholeNumberOf((*parts)[1]);
    if (!code || !samples || *samples < 1) {
        return {};
    }
    Ask ask{std::string(*code), static_cast<unsigned>(*samples), {}};
    if (parts->size() > 2) {
        ask.precisionPercent = journal::numberOf((*parts)[2]);
    }
    return ask;
}

Bytes writeStop(const walk::Stop& stop) {
    return listValue({textValue(stop.position), integerValue(static_cast<int>(stop.side))});
}

std::optional<walk::Stop> readStop(BytesView item) {
    const auto parts = itemsOf(item);
    if (!parts || parts->size() != 2) {
        return {};
    }
    const auto position = textOf((*parts)[0]);
    const auto side = journal::wholeNumberOf((*parts)[1]);
    if (!position || !side || *side < 0 || *side > 2) {
        return {};
    }
    return walk::Stop{std::string(*position), static_cast<walk::Side>(*side)};
}

Bytes writeStage(std::int64_t code) {
    return integerValue(code);
}

std::optional<std::int64_t> readStage(BytesView item) {
    return journal::wholeNumberOf(item);
}

Bytes writeEnd(const journal::BranchEnd& end) {
    return listValue({textValue(end.origin.text()),
                      integerValue(static_cast<std::int64_t>(end.seq)),
                      textValue(end.digest.hex())});
}

std::optional<journal::BranchEnd> readEnd(BytesView item) {
    const auto parts = itemsOf(item);
    if (!parts || parts->size() != 3) {
        return {};
    }
    const auto origin = journal::readOrigin(textOf((*parts)[0]).value_or(""));
    const auto seq = journal::wholeNumberOf((*parts)[1]);
    const auto bytes = fromHex(textOf((*parts)[2]).value_or(""));
    const auto digest = bytes ? Digest::fromBytes(*bytes) : std::nullopt;
    if (!origin || !seq || *seq < 0 || !digest) {
        return {};
    }
    return journal::BranchEnd{*origin, static_cast<std::uint64_t>(*seq), *digest};
}

template<typename T>
Bytes writeList(const std::vector<T>& list, Bytes (*write)(T)) {
    std::vector<Bytes> items;
    for (const T& item : list) {
        items.push_back(write(item));
    }
    return listValue(items);
}
template<typename T>
Bytes writeList(const std::vector<T>& list, Bytes (*write)(const T&)) {
    std::vector<Bytes> items;
    for (const T& item : list) {
        items.push_back(write(item));
    }
    return listValue(items);
}

template<typename T>
bool readList(BytesView map,
              std::string_view key,
              std::optional<T> (*read)(BytesView),
              std::vector<T>& list) {
    const auto member = memberOf(map, key);
    const auto items = member ? itemsOf(*member) : std::nullopt;
    if (!items) {
        return false;
    }
    for (const BytesView item : *items) {
        std::optional<T> one = read(item);
        if (!one) {
            return false;
        }
        list.push_back(std::move(*one));
    }
    return true;
}

bool isTrue(BytesView map, std::string_view key) {
    const auto member = memberOf(map, key);
    return member && *member == booleanValue(true);
}

} // namespace

Bytes writePlan(const WalkPlan& plan) {
    journal::MapValue map;
    for (const auto& [key, text] : kTexts) {
        map.add(key, textValue(plan.*text));
    }
    for (const auto& [key, flag] : kFlags) {
        map.add(key, booleanValue(plan.*flag));
    }
    map.add("date", textValue(writeDate(plan.date)));
    map.add("asks", writeList(plan.asks, writeAsk));
    map.add("stages", writeList(plan.stages, writeStage));
    map.add("stops", writeList(plan.stops, writeStop));
    map.add("before", writeList(plan.before, writeEnd));
    return map.bytes();
}

std::optional<WalkPlan> readPlan(BytesView bytes) {
    WalkPlan plan;
    for (const auto& [key, text] : kTexts) {
        const auto member = memberOf(bytes, key);
        const auto value = member ? textOf(*member) : std::nullopt;
        if (!value) {
            return {};
        }
        plan.*text = *value;
    }
    for (const auto& [key, flag] : kFlags) {
        plan.*flag = isTrue(bytes, key);
    }
    const auto member = memberOf(bytes, "date");
    const auto date = readDate(member ? textOf(*member).value_or("") : "");
    const bool isWhole = date && readList(bytes, "asks", readAsk, plan.asks) &&
                         readList(bytes, "stages", readStage, plan.stages) &&
                         readList(bytes, "stops", readStop, plan.stops) &&
                         readList(bytes, "before", readEnd, plan.before);
    if (!isWhole || plan.stops.empty() || plan.asks.empty()) {
        return {};
    }
    plan.date = *date;
    return plan;
}

Bytes writeFooting(const Footing& footing) {
    return listValue({integerValue(static_cast<std::int64_t>(footing.stop)),
                      integerValue(static_cast<std::int64_t>(footing.ask)),
                      booleanValue(footing.isAtRowEnd),
                      integerValue(static_cast<std::int64_t>(footing.front))});
}

std::optional<Footing> readFooting(BytesView bytes) {
    const auto parts = itemsOf(bytes);
    if (!parts || parts->size() != 4) {
        return {};
    }
    const auto stop = journal::wholeNumberOf((*parts)[0]);
    const auto ask = journal::wholeNumberOf((*parts)[1]);
    const auto front = journal::wholeNumberOf((*parts)[3]);
    if (!stop || !ask || !front || *stop < 0 || *ask < 0 || *front < 0) {
        return {};
    }
    return Footing{static_cast<std::size_t>(*stop),
                   static_cast<std::size_t>(*ask),
                   (*parts)[2] == booleanValue(true),
                   static_cast<std::size_t>(*front)};
}

Bytes writeMoreSamples(const MoreSamples& more) {
    std::vector<Bytes> items;
    for (const auto& [at, samples] : more) {
        items.push_back(listValue({integerValue(static_cast<std::int64_t>(at.first)),
                                   integerValue(static_cast<std::int64_t>(at.second)),
                                   integerValue(samples)}));
    }
    return items.empty() ? Bytes{} : listValue(items);
}

std::optional<MoreSamples> readMoreSamples(BytesView bytes) {
    MoreSamples more;
    const auto items = bytes.empty() ? std::vector<BytesView>{} : itemsOf(bytes);
    for (const BytesView item : items.value_or(std::vector<BytesView>{})) {
        const auto parts = itemsOf(item);
        if (!parts || parts->size() != 3) {
            return {};
        }
        const auto stop = journal::wholeNumberOf((*parts)[0]);
        const auto ask = journal::wholeNumberOf((*parts)[1]);
        const auto samples = journal::wholeNumberOf((*parts)[2]);
        if (!stop || !ask || !samples || *stop < 0 || *ask < 0 || *samples < 0 ||
            *samples > std::numeric_limits<unsigned>::max()) {
            return {};
        }
        more[{static_cast<std::size_t>(*stop), static_cast<std::size_t>(*ask)}] =
            static_cast<unsigned>(*samples);
    }
    return items ? std::optional(std::move(more)) : std::nullopt;
}

} // namespace bullace::field
