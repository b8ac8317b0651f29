#include "store/schema.hpp"

#include <algorithm>
#include <set>
#include <string>

namespace bullace::store {

namespace {

// The facts. An entry's id is its branch's number times 2^40 plus its seq, so that a branch lies
// together in its order.
constexpr const char* kFacts = R"sql(
CREATE TABLE about(key TEXT PRIMARY KEY, value) WITHOUT ROWID;
CREATE TABLE origins(id INTEGER PRIMARY KEY, origin TEXT NOT NULL UNIQUE);
CREATE TABLE branches(
  id INTEGER PRIMARY KEY,
  origin INTEGER NOT NULL REFERENCES origins(id),
  parent INTEGER NOT NULL,          -- the branch that it left, 0 for one that begins at seq 1
  first INTEGER NOT NULL,           -- its first own seq
  last INTEGER NOT NULL,            -- its last seq; the entry of that seq is there
  last_digest BLOB NOT NULL,
  greatest_count INTEGER NOT NULL); -- of its entries with a right standing: the device's counter goes by it
CREATE TABLE entries(id INTEGER PRIMARY KEY, digest BLOB NOT NULL, bytes BLOB NOT NULL);
-- Lines that were imported before what stands in front of them: outside the set and the vector.
CREATE TABLE waiting(
  id INTEGER PRIMARY KEY, origin TEXT NOT NULL, seq INTEGER NOT NULL,
  digest BLOB, bytes BLOB NOT NULL, place TEXT NOT NULL);
CREATE UNIQUE INDEX waiting_order ON waiting(origin, seq, bytes, ifnull(digest, ''));
-- Bytes that came and were not taken: what did not follow, and office entries that came back after a restore.
CREATE TABLE apart(
  id INTEGER PRIMARY KEY, origin TEXT NOT NULL, first INTEGER NOT NULL, last INTEGER NOT NULL,
  last_digest BLOB NOT NULL, device TEXT NOT NULL, reason TEXT NOT NULL, bytes BLOB NOT NULL,
  UNIQUE(origin, first, last_digest));
CREATE TABLE devices(
  key_hash TEXT PRIMARY KEY, letter TEXT NOT NULL, device TEXT NOT NULL, name TEXT NOT NULL,
  paired_at INTEGER NOT NULL, revoked_at INTEGER, last_sync INTEGER, clock_ahead_ms INTEGER) WITHOUT ROWID;
CREATE TABLE stations(
  key_hash TEXT PRIMARY KEY, name TEXT NOT NULL, address TEXT NOT NULL, history BLOB NOT NULL,
  last_sync INTEGER) WITHOUT ROWID;
CREATE TABLE photos(
  digest BLOB PRIMARY KEY, size INTEGER NOT NULL, held INTEGER NOT NULL) WITHOUT ROWID; -- whole where held = size
CREATE TABLE photo_pieces(digest BLOB, start INTEGER, bytes BLOB NOT NULL, PRIMARY KEY(digest, start)) WITHOUT ROWID;
)sql";

constexpr const char* kDerived = R"sql(
CREATE TABLE subjects(
  id INTEGER PRIMARY KEY,
  path TEXT NOT NULL UNIQUE,
  entry INTEGER NOT NULL,              -- one of its entries; the others stand in subject_entries
  entry_count INTEGER NOT NULL,
  state INTEGER,                       -- 0 settled, 1 agreed, 2 retracted, 3 ruled, 4 open; null without a head
  head INTEGER,                        -- its first head
  value TEXT,                          -- JSON; null where open or retracted
  rule INTEGER);                       -- where ruled: the rule's number in core/descriptors/rule.hpp
CREATE TABLE subject_entries(subject INTEGER, entry INTEGER, PRIMARY KEY(subject, entry)) WITHOUT ROWID;
CREATE TABLE subject_heads(subject INTEGER, entry INTEGER, PRIMARY KEY(subject, entry)) WITHOUT ROWID;
CREATE TABLE uncounted(entry INTEGER PRIMARY KEY, reason INTEGER NOT NULL);
CREATE TABLE loose_edges(
  entry INTEGER, origin TEXT, seq INTEGER, PRIMARY KEY(entry, origin, seq)) WITHOUT ROWID;
CREATE TABLE named_photos(digest BLOB PRIMARY KEY) WITHOUT ROWID; -- that some entry names
CREATE INDEX open_subjects ON subjects(path) WHERE state = 4;
)sql";

// For any SQLite tool. FORMAT.md beside this file explains them with examples.
constexpr const char* kViews = R"sql(
CREATE VIEW state AS
  SELECT path AS subject,
         CASE state WHEN 0 THEN 'settled' WHEN 1 THEN 'agreed' WHEN 2 THEN 'retracted'
                    WHEN 3 THEN 'ruled' WHEN 4 THEN 'open' END AS status,
         value,
         CASE rule WHEN 0 THEN 'ask' WHEN 1 THEN 'later' WHEN 2 THEN 'advanced' WHEN 3 THEN 'greatest'
                   WHEN 4 THEN 'least' WHEN 5 THEN 'mean' WHEN 6 THEN 'all' END AS rule
  FROM subjects WHERE state IS NOT NULL;
CREATE VIEW observations AS
  WITH
    cut1 AS (SELECT substr(path, 5) AS rest, state, value FROM subjects
             WHERE path >= 'obs/' AND path < 'obs0' AND state IN (0, 1, 3)),
    cut2 AS (SELECT substr(rest, 1, instr(rest, '/') - 1) AS place,
                    substr(rest, instr(rest, '/') + 1) AS rest, state, value FROM cut1),
    cut3 AS (SELECT place, substr(rest, 1, 10) AS date, substr(rest, 12) AS rest, state, value FROM cut2)
  SELECT place, date,
         CASE instr(rest, '/') WHEN 0 THEN rest ELSE substr(rest, 1, instr(rest, '/') - 1) END AS descriptor,
         CASE instr(rest, '/') WHEN 0 THEN NULL ELSE substr(rest, instr(rest, '/') + 1) END AS sample,
         value,
         CASE WHEN json_type(value) IN ('integer', 'real') THEN json_extract(value, '$') END AS number,
         CASE WHEN json_type(value) = 'object' THEN json_extract(value, '$.none') END AS none_reason,
         CASE state WHEN 0 THEN 'settled' WHEN 1 THEN 'agreed' WHEN 3 THEN 'ruled' END AS status
  FROM cut3;
CREATE VIEW conflicts AS SELECT path AS subject FROM subjects WHERE state = 4;
)sql";

} // namespace

Status createScratchTables(Connection& connection) {
    constexpr std::string_view kTable = "CREATE TABLE ";
    constexpr std::string_view kTemporary = "CREATE TEMP TABLE ";
    std::string sql = kDerived;
    for (std::size_t at = sql.find(kTable); at != std::string::npos;
         at = sql.find(kTable, at + kTemporary.size())) {
        sql.replace(at, kTable.size(), kTemporary);
    }
    constexpr std::string_view kIndex = "CREATE INDEX ";
    sql.replace(sql.find(kIndex), kIndex.size(), "CREATE INDEX temp.");
    return connection.run(sql.c_str());
}

Status createSchema(Connection& connection) {
    for (const char* part : {kFacts, kDerived, kViews}) {
        if (Status made = connection.run(part); !made) {
            return made;
        }
    }
    const std::string stamps = "PRAGMA application_id=" + std::to_string(kApplicationId) +
                               "; PRAGMA user_version=" + std::to_string(kSchemaVersion);
    return connection.run(stamps.c_str());
}

namespace {

// Every column of a file as "table.column", without the views; those of SQLite itself left out.
Result<std::set<std::string>> columnsOf(Connection& connection) {
    Result<Statement> rows = connection.prepare(
        "SELECT t.name || '.' || c.name FROM sqlite_schema t JOIN pragma_table_info(t.name) c "
        "WHERE t.type = 'table' AND t.name NOT LIKE 'sqlite_%'");
    if (!rows) {
        return rows.error();
    }
    std::set<std::string> columns;
    while (true) {
        const Result<bool> row = rows->step();
        if (!row) {
            return row.error();
        }
        if (!*row) {
            return columns;
        }
        columns.emplace(rows->text(0));
    }
}

// Whether all that this version's file has is there.
Result<bool> hasOurColumns(Connection& connection) {
    Result<Connection> ours = Connection::open(":memory:", Access::Create);
    if (!ours) {
        return ours.error();
    }
    if (Status made = createSchema(*ours); !made) {
        return made.error();
    }
    const auto wanted = columnsOf(*ours);
    const auto there = columnsOf(connection);
    if (!wanted || !there) {
        return wanted ? there.error() : wanted.error();
    }
    return std::includes(there->begin(), there->end(), wanted->begin(), wanted->end());
}

Error writtenByNewer(const Connection& connection, std::int64_t version, Access access) {
    return {ErrorCode::NewerVersion,
            "\"" + connection.path() + "\" was written by a newer version of Bullace. " +
                (access == Access::Read
                     ? "Update this one to read it; nothing in it was changed."
                     : "Update this one to write to it; nothing in it was changed."),
            "schema " + std::to_string(version)};
}

} // namespace

Status checkSchema(Connection& connection, Access access) {
    const Result<std::int64_t> application = connection.number("PRAGMA application_id");
    if (!application) {
        return application.error();
    }
    const Result<std::int64_t> version = connection.number("PRAGMA user_version");
    if (!version) {
        return version.error();
    }
    if (*application != kApplicationId || *version < 1) {
        return Error{
            ErrorCode::Damaged,
            "\"" + connection.path() +
                "\" is no Bullace journal. Check the name of the file; nothing in it was changed.",
            {}};
    }
    if (*version <= kSchemaVersion) {
        return {};
    }
    if (access == Access::Read) {
        const Result<bool> isReadable = hasOurColumns(connection);
        if (!isReadable || *isReadable) {
            return isReadable ? Status() : Status(isReadable.error());
        }
    }
    return writtenByNewer(connection, *version, access);
}

} // namespace bullace::store
