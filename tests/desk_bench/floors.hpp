// What the least is that a page has to do: the bare query, or the file read once.
#pragma once

#include <string>
#include <vector>

struct sqlite3;

namespace bullace::desk_bench {

// A connection of SQLite's own to the station's file, beside all that the desk has.
class BareReader {
public:
    explicit BareReader(const std::string& path);
    ~BareReader();
    BareReader(const BareReader&) = delete;
    BareReader& operator=(const BareReader&) = delete;
    BareReader(BareReader&&) = delete;
    BareReader& operator=(BareReader&&) = delete;

    // Milliseconds to step through all rows and fetch every column, from preparing on.
    double query(const std::string& sql);
    // The same for what is noted below "obs/" + place: place is a position, or "B1-" for a block.
    double notedAt(const std::string& place);

private:
    sqlite3* database_ = nullptr;
};

// Milliseconds to read the file from its beginning to its end.
[[nodiscard]] double readingFile(const std::string& path);

} // namespace bullace::desk_bench
