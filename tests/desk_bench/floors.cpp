#include "floors.hpp"

#include "bench/measure.hpp"

#include <sqlite3.h>

#include <fstream>

namespace bullace::desk_bench {

namespace {

constexpr double kMs = 1000;

} // namespace

BareReader::BareReader(const std::string& path) {
    bench::must(sqlite3_open_v2(path.c_str(), &database_, SQLITE_OPEN_READONLY, nullptr) ==
                    SQLITE_OK,
                "opening the station with SQLite alone");
}

BareReader::~BareReader() {
    sqlite3_close(database_);
}

double BareReader::query(const std::string& sql) {
    return kMs * bench::secondsOf([&] {
               sqlite3_stmt* rows = nullptr;
               bench::must(sqlite3_prepare_v2(database_, sql.c_str(), -1, &rows, nullptr) ==
                               SQLITE_OK,
                           sql);
               int state = sqlite3_step(rows);
               while (state == SQLITE_ROW) {
                   for (int column = 0; column < sqlite3_column_count(rows); ++column) {
                       sqlite3_column_blob(rows, column);
                   }
                   state = sqlite3_step(rows);
               }
               bench::must(state == SQLITE_DONE, sql);
               sqlite3_finalize(rows);
           });
}

double BareReader::notedAt(const std::string& place) {
    std::string beyond = "obs/" + place;
    ++beyond.back();
    return query("SELECT path, state, value FROM subjects WHERE path >= 'obs/" + place +
                 "' AND path < '" + beyond + "' ORDER BY path");
}

double readingFile(const std::string& path) {
    return kMs * bench::secondsOf([&] {
               std::ifstream in(path, std::ios::binary);
               std::vector<char> piece(std::size_t{1} << 20);
               while (in.read(piece.data(), static_cast<std::streamsize>(piece.size()))) {
               }
               bench::must(in.eof(), "reading the file");
           });
}

} // namespace bullace::desk_bench
