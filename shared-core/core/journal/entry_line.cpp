#include "core/journal/entry_line.hpp"

#include "core/journal/json_value.hpp"

#include <string_view>

namespace bullace::journal {

namespace {

void appendPair(std::string& out, std::int64_t first, std::int64_t second) {
    out += '[';
    out += std::to_string(first);
    out += ',';
    out += std::to_string(second);
    out += ']';
}

void appendText(std::string& out, std::string_view name, std::string_view text) {
    out += name;
    appendJsonText(out, text);
}

void appendEdges(std::string& out, const EntryView& entry) {
    out += ",\"over\":[";
    bool isFirst = true;
    for (const Place& place : entry.edges()) {
        out += isFirst ? "[\"" : ",[\"";
        place.origin.appendTo(out);
        out += "\",";
        out += std::to_string(place.seq);
        out += ']';
        isFirst = false;
    }
    out += ']';
}

} // namespace

void appendEntryLine(std::string& out, const EntryView& entry, const Digest& digest) {
    out += "{\"origin\":\"";
    entry.origin.appendTo(out);
    out += "\",\"seq\":";
    out += std::to_string(entry.seq);
    out += ",\"count\":";
    out += std::to_string(entry.count);
    if (entry.wall) {
        out += ",\"wall\":";
        appendPair(out, entry.wall->ms, entry.wall->minutes);
    }
    appendText(out, ",\"author\":", entry.author);
    appendText(out, ",\"kind\":", entry.kindText);
    appendText(out, ",\"subject\":", entry.subject);
    out += ",\"value\":";
    out += valueToJson(entry.value);
    appendEdges(out, entry);
    if (entry.group) {
        out += ",\"group\":";
        appendPair(out,
                   static_cast<std::int64_t>(entry.group->first),
                   static_cast<std::int64_t>(entry.group->n));
    }
    if (entry.why) {
        appendText(out, ",\"why\":", *entry.why);
    }
    if (entry.as) {
        appendText(out, ",\"as\":", *entry.as);
    }
    if (!entry.extra.empty()) {
        const std::string extra = valueToJson(entry.extra);
        out += ',';
        out.append(extra, 1, extra.size() - 2);
    }
    out += ",\"digest\":\"";
    out += digest.hex();
    out += "\"}\n";
}

} // namespace bullace::journal
