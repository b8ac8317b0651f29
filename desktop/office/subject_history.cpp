// The history of one subject, entry by entry.
#include "office/vine_file.hpp"

#include "core/journal/json_value.hpp"
#include "store/peers.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace bullace::office {

using journal::EntryView;
using journal::Place;

namespace {

// What undo entries that count take back, worked from the newest on: an undo can be undone itself.
std::set<Place> undoneOf(const std::vector<EntryView>& ascending) {
    std::set<Place> undone;
    for (auto entry = ascending.rbegin(); entry != ascending.rend(); ++entry) {
        if (entry->kind == journal::Kind::Undo && undone.count(entry->place()) == 0) {
            const std::vector<Place> edges = entry->edges();
            undone.insert(edges.begin(), edges.end());
        }
    }
    return undone;
}

Side sideOf(const EntryView& entry,
            const Digest& digest,
            const std::map<std::string, std::string>& names) {
    const std::string device = journal::deviceText(entry.origin.letter, entry.origin.device);
    const auto name = names.find(device);
    Side side;
    side.place = entry.place();
    side.digest = digest;
    side.author = entry.author;
    side.device = name == names.end() ? device : name->second;
    side.wall = entry.wall;
    side.kind = entry.kind;
    side.value = Bytes(entry.value);
    side.why = entry.why ? std::optional(std::string(*entry.why)) : std::nullopt;
    side.as = entry.as ? std::optional(std::string(*entry.as)) : std::nullopt;
    return side;
}

} // namespace

Result<SubjectHistory> readHistory(store::Database& database, const std::string& subject) {
    SubjectHistory history;
    history.subject = subject;
    const auto rows = database.entries(subject);
    auto state = database.state(subject);
    const auto devices = store::devices(database);
    if (!rows || !state || !devices) {
        return !rows ? rows.error() : !state ? state.error() : devices.error();
    }
    history.state = std::move(*state);
    std::map<std::string, std::string> names;
    for (const store::DeviceRow& row : *devices) {
        names[journal::deviceText(row.letter, row.device)] = row.name;
    }
    std::vector<EntryView> entries;
    for (const store::EntryRow& row : *rows) {
        const auto entry = journal::readEntry(row.entry);
        if (entry && !row.uncounted) {
            entries.push_back(*entry);
        }
    }
    const std::set<Place> undone = undoneOf(entries);
    std::map<Place, std::vector<Place>> replacedBy;
    for (const EntryView& entry : entries) {
        for (const Place& edge :
             undone.count(entry.place()) == 0 && entry.kind != journal::Kind::Undo
                 ? entry.edges()
                 : std::vector<Place>{}) {
            replacedBy[edge].push_back(entry.place());
        }
    }
    for (auto row = rows->rbegin(); row != rows->rend(); ++row) {
        const auto entry = journal::readEntry(row->entry);
        if (!entry) {
            continue;
        }
        HistoryLine line;
        line.entry = sideOf(*entry, row->digest, names);
        line.uncounted = row->uncounted;
        line.isUndone = undone.count(entry->place()) > 0;
        line.over = entry->edges();
        line.replacedBy = replacedBy[entry->place()];
        line.isHead = history.state && std::binary_search(history.state->heads.begin(),
                                                          history.state->heads.end(),
                                                          entry->place());
        history.lines.push_back(std::move(line));
    }
    return history;
}

} // namespace bullace::office
