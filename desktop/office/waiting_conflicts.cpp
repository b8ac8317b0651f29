// The list of conflicts that wait for a person.
#include "office/case_file.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <tuple>

namespace bullace::office {

using journal::EntryView;

namespace {

// A conflict with its subject read once; the views are of the row that it was read from.
struct Line {
    journal::Subject subject;
    Waiting waiting;
};

// Observations lie along the rows, everything else behind them.
bool comesBefore(const Line& a, const Line& b) {
    if (a.waiting.cause != b.waiting.cause) {
        return a.waiting.cause < b.waiting.cause;
    }
    const journal::Subject& one = a.subject;
    const journal::Subject& two = b.subject;
    if (one.descriptor != two.descriptor) {
        return one.descriptor < two.descriptor;
    }
    if (one.position && two.position && one.id != two.id) {
        return vineyard::compareAlongRows(*one.position, *two.position) < 0;
    }
    return a.waiting.subject < b.waiting.subject;
}

Result<Waiting> waitingOf(store::Database& database, const store::StateRow& row) {
    const auto rows = database.entries(row.subject);
    if (!rows) {
        return rows.error();
    }
    Waiting waiting{row.subject};
    std::vector<EntryView> heads;
    for (const store::EntryRow& stored : *rows) {
        const auto entry = journal::readEntry(stored.entry);
        if (!entry) {
            continue;
        }
        if (std::binary_search(row.heads.begin(), row.heads.end(), entry->place())) {
            heads.push_back(*entry);
            waiting.sinceMs = std::max(waiting.sinceMs, entry->wall ? entry->wall->ms : 0);
        }
        waiting.isLookedAgain =
            waiting.isLookedAgain || (entry->kind == journal::Kind::Remark &&
                                      journal::memberOf(entry->value, "look-again").has_value());
    }
    if (heads.size() > 1) {
        waiting.cause = causeOf(journal::readSubject(row.subject), heads, database.rulebook());
    }
    return waiting;
}

} // namespace

Result<std::vector<Waiting>> waitingConflicts(store::Database& database, const Token& token) {
    std::vector<store::StateRow> open;
    const Status read = database.eachConflict("", [&](const store::StateRow& row) {
        open.push_back(row);
        return !token.isCancelled();
    });
    if (!read) {
        return read.error();
    }
    std::vector<Line> lines;
    lines.reserve(open.size());
    for (const store::StateRow& row : open) {
        if (token.isCancelled()) {
            return Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
        }
        Result<Waiting> waiting = waitingOf(database, row);
        if (!waiting) {
            return waiting.error();
        }
        lines.push_back({journal::readSubject(row.subject), std::move(*waiting)});
    }
    std::sort(lines.begin(), lines.end(), comesBefore);
    std::vector<Waiting> all;
    all.reserve(lines.size());
    for (Line& line : lines) {
        all.push_back(std::move(line.waiting));
    }
    return all;
}

} // namespace bullace::office
