// Passes over the whole station, in no order, for whoever takes everything in.
#include "store/database.hpp"
#include "store/rows.hpp"

namespace bullace::store {

namespace {

// Along the rows as they lie, not along the index of paths.
constexpr const char* kUnordered = "SELECT path, state, value FROM subjects NOT INDEXED "
                                   "WHERE state IS NOT NULL AND path >= ?1 AND path < ?2";
constexpr const char* kSeveral =
    "SELECT x.subject, s.path, e.id, e.digest, e.bytes, u.reason FROM "
    "(SELECT id AS subject, entry FROM subjects WHERE entry_count > 1 UNION "
    "SELECT subject, entry FROM subject_entries) x "
    "JOIN subjects s ON s.id = x.subject JOIN entries e ON e.id = x.entry "
    "LEFT JOIN uncounted u ON u.entry = e.id "
    "WHERE s.path >= ?1 AND s.path < ?2 ORDER BY x.subject";

} // namespace

Status Database::eachStateUnordered(
    const std::string& low,
    const std::string& high,
    const std::function<bool(std::string_view, merge::State, std::string_view)>& row) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare(kUnordered);
    if (!rows) {
        return rows.error();
    }
    rows->bindText(1, low).bindText(2, high);
    return forEach(*rows, [&]() -> Result<bool> {
        return row(rows->text(0), static_cast<merge::State>(rows->integer(1)), rows->text(2));
    });
}

Status Database::eachWithSeveralEntries(
    const std::string& low,
    const std::string& high,
    const std::function<bool(std::string_view, const std::vector<EntryRow>&)>& row) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare(kSeveral);
    if (!rows) {
        return rows.error();
    }
    rows->bindText(1, low).bindText(2, high);
    std::string path;
    std::vector<EntryRow> entries;
    const auto add = [&] {
        path = rows->text(1);
        entries.push_back(entryAt(*rows, 2));
    };
    return forEachSubject(*rows, add, [&] {
        const bool isWanted = row(path, entries);
        entries.clear();
        return isWanted;
    });
}

} // namespace bullace::store
