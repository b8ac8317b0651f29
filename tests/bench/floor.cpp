#include "bench/floor.hpp"

#include "bench/measure.hpp"

#include <sqlite3.h>

#include <algorithm>

namespace bullace::bench {

namespace {

void run(sqlite3* database, const char* sql) {
    must(sqlite3_exec(database, sql, nullptr, nullptr, nullptr) == SQLITE_OK, sql);
}

} // namespace

double plainInsertRate(const Walk& walk, std::size_t batch) {
    const Folder folder;
    sqlite3* database = nullptr;
    must(sqlite3_open(folder.file("floor.db").c_str(), &database) == SQLITE_OK,
         "opening the floor");
    run(database,
        "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA cache_size=-65536; "
        "PRAGMA wal_autocheckpoint=8000;"
        "CREATE TABLE plain(origin INTEGER, seq INTEGER, subject TEXT, bytes BLOB, "
        "PRIMARY KEY(origin, seq)) WITHOUT ROWID; CREATE INDEX by_subject ON plain(subject)");
    sqlite3_stmt* insert = nullptr;
    must(sqlite3_prepare_v2(
             database, "INSERT INTO plain VALUES(1, ?1, ?2, ?3)", -1, &insert, nullptr) ==
             SQLITE_OK,
         "preparing");
    const double seconds = secondsOf([&] {
        for (std::size_t i = 0; i < walk.entries.size();) {
            run(database, "BEGIN IMMEDIATE");
            for (const std::size_t end = std::min(i + batch, walk.entries.size()); i < end; ++i) {
                const std::string& subject = walk.subjects[i];
                const Bytes& bytes = walk.entries[i];
                sqlite3_bind_int64(insert, 1, static_cast<std::int64_t>(i) + 1);
                sqlite3_bind_text(
                    insert, 2, subject.data(), static_cast<int>(subject.size()), SQLITE_STATIC);
                sqlite3_bind_blob(
                    insert, 3, bytes.data(), static_cast<int>(bytes.size()), SQLITE_STATIC);
                must(sqlite3_step(insert) == SQLITE_DONE, "inserting");
                sqlite3_reset(insert);
            }
            run(database, "COMMIT");
        }
    });
    sqlite3_finalize(insert);
    sqlite3_close(database);
    return static_cast<double>(walk.entries.size()) / seconds;
}

BareCommits::BareCommits(const std::string& path) {
    must(sqlite3_open(path.c_str(), &database_) == SQLITE_OK, "opening the bare file");
    run(database_,
        "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; CREATE TABLE bare(bytes BLOB)");
    must(sqlite3_prepare_v2(database_, "INSERT INTO bare VALUES(?1)", -1, &insert_, nullptr) ==
             SQLITE_OK,
         "preparing");
}

BareCommits::~BareCommits() {
    sqlite3_finalize(insert_);
    sqlite3_close(database_);
}

void BareCommits::commit(BytesView bytes) {
    sqlite3_bind_blob(insert_, 1, bytes.data(), static_cast<int>(bytes.size()), SQLITE_STATIC);
    must(sqlite3_step(insert_) == SQLITE_DONE, "committing");
    sqlite3_reset(insert_);
}

} // namespace bullace::bench
