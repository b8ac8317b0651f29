// The floors: what plain SQLite does with the same bytes, in the same run.
#pragma once

#include "bench/walk.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

struct sqlite3;
struct sqlite3_stmt;

namespace bullace::bench {

// Entries a second of plain prepared INSERTs into one table with primary key (origin number, seq)
// and one index on the subject, 64 MB cache, WAL, synchronous=FULL, one transaction a batch.
[[nodiscard]] double plainInsertRate(const Walk& walk, std::size_t batch);

// One row committed at a time into a table of its own, WAL, synchronous=FULL.
class BareCommits {
public:
    explicit BareCommits(const std::string& path);
    ~BareCommits();
    BareCommits(const BareCommits&) = delete;
    BareCommits& operator=(const BareCommits&) = delete;
    BareCommits(BareCommits&&) = delete;
    BareCommits& operator=(BareCommits&&) = delete;
    void commit(BytesView bytes);

private:
    sqlite3* database_ = nullptr;
    sqlite3_stmt* insert_ = nullptr;
};

} // namespace bullace::bench
