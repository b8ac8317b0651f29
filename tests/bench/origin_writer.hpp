// Entries of one device for a benchmark, chained, and merged batch by batch as a sync would.
#pragma once

#include "core/journal/entry.hpp"
#include "core/journal/exchange.hpp"
#include "store/database.hpp"

#include <cstdint>
#include <string>

namespace bullace::bench {

// Ends the benchmark where a batch is not taken.
class OriginWriter {
public:
    OriginWriter(store::Database& database, journal::Origin origin)
        : database_(database),
          run_{origin, 1, {}, {}} {}

    // The entry replaces nothing.
    void write(const char* author, journal::Kind kind, std::string subject, Bytes value);
    void flush();
    [[nodiscard]] std::uint64_t written() const { return seq_; }

private:
    store::Database& database_;
    journal::Run run_;
    std::uint64_t seq_ = 0;
};

} // namespace bullace::bench
