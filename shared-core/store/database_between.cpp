// Reading stretches of the subjects, each between two bounds: what a walk asks vine by vine.
#include "store/database.hpp"
#include "store/rows.hpp"

#include <algorithm>
#include <tuple>

namespace bullace::store {

namespace {

constexpr const char* kStates = "SELECT id, path, state, value, rule, head FROM subjects "
                                "WHERE path >= ?1 AND path < ?2 AND state IS NOT NULL "
                                "ORDER BY path";
constexpr const char* kEntries =
    "SELECT e.id, e.digest, e.bytes, u.reason FROM "
    "(SELECT entry FROM subjects WHERE path = ?1 UNION "
    "SELECT m.entry FROM subjects s JOIN subject_entries m ON m.subject = s.id WHERE s.path = ?1) "
    "x "
    "JOIN entries e ON e.id = x.entry LEFT JOIN uncounted u ON u.entry = e.id";
constexpr const char* kContested =
    "SELECT h.subject, s.path, s.state, e.id, e.digest, e.bytes FROM subject_heads h "
    "JOIN subjects s ON s.id = h.subject JOIN entries e ON e.id = h.entry "
    "WHERE s.state IN (3, 4) ORDER BY h.subject";
constexpr const char* kPaths = "SELECT path FROM subjects WHERE path >= ?1 AND path < ?2 "
                               "ORDER BY path";

} // namespace

Status Database::eachStateBetween(const std::string& low,
                                  const std::string& high,
                                  const std::function<bool(const StateRow&)>& row) {
    const PathStretch stretch{low, high};
    return eachStateIn({&stretch, 1}, row);
}

Status Database::eachStateIn(std::span<const PathStretch> stretches,
                             const std::function<bool(const StateRow&)>& row) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare(kStates);
    if (!rows) {
        return rows.error();
    }
    bool isWanted = true;
    for (const PathStretch& stretch : stretches) {
        rows->reset();
        rows->bindText(1, stretch.low).bindText(2, stretch.high);
        const Status read = forEach(*rows, [&]() -> Result<bool> {
            const Result<StateRow> made = rowAt(*rows);
            if (!made) {
                return made.error();
            }
            isWanted = row(*made);
            return isWanted;
        });
        if (!read || !isWanted) {
            return read;
        }
    }
    return {};
}

EntryRow Database::entryAt(const Statement& rows, int first) const {
    EntryRow row{placeOf(rows.integer(first)),
                 Digest::fromBytes(rows.bytes(first + 1)).value_or(Digest{}),
                 Bytes(rows.bytes(first + 2)),
                 std::nullopt};
    if (!rows.isNull(first + 3)) {
        row.uncounted = static_cast<journal::Standing>(rows.integer(first + 3));
    }
    return row;
}

Result<std::vector<EntryRow>> Database::entries(const std::string& subject) {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    Result<Statement> rows = connection_->prepare(kEntries);
    if (!rows) {
        return rows.error();
    }
    rows->bindText(1, subject);
    std::vector<std::pair<std::uint64_t, EntryRow>> found; // with the count
    const Status read = forEach(*rows, [&]() -> Result<bool> {
        EntryRow row = entryAt(*rows, 0);
        const Result<journal::EntryView> entry = journal::readEntry(row.entry);
        if (entry) {
            found.emplace_back(entry->count, std::move(row));
        }
        return true;
    });
    if (!read) {
        return read.error();
    }
    std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
        return std::tie(a.first, a.second.place, a.second.digest) <
               std::tie(b.first, b.second.place, b.second.digest);
    });
    std::vector<EntryRow> all;
    all.reserve(found.size());
    for (auto& [count, row] : found) {
        all.push_back(std::move(row));
    }
    return all;
}

Status Database::eachContested(
    const std::function<bool(std::string_view, merge::State, const std::vector<HeadRow>&)>& row) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare(kContested);
    if (!rows) {
        return rows.error();
    }
    std::string path;
    merge::State state = merge::State::Open;
    std::vector<HeadRow> heads;
    const auto add = [&] {
        path = rows->text(1);
        state = static_cast<merge::State>(rows->integer(2));
        heads.push_back({placeOf(rows->integer(3)),
                         Digest::fromBytes(rows->bytes(4)).value_or(Digest{}),
                         Bytes(rows->bytes(5))});
    };
    return forEachSubject(*rows, add, [&] {
        const bool isWanted = row(path, state, heads);
        heads.clear();
        return isWanted;
    });
}

Result<std::optional<StateRow>> Database::state(const std::string& subject) {
    std::optional<StateRow> found;
    // No text of an entry holds a zero byte: that subject alone lies between the two.
    const Status read = eachStateBetween(subject, subject + '\0', [&found](const StateRow& row) {
        found = row;
        return false;
    });
    if (!read) {
        return read.error();
    }
    return found;
}

Status Database::eachSubjectBetween(const std::string& low,
                                    const std::string& high,
                                    const std::function<bool(std::string_view)>& subject) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare(kPaths);
    if (!rows) {
        return rows.error();
    }
    rows->bindText(1, low).bindText(2, high);
    return forEach(*rows, [&]() -> Result<bool> { return subject(rows->text(0)); });
}

} // namespace bullace::store
