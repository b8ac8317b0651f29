// Which devices came, when, and with what: a short list that the station keeps beside the entries,
// for the people at the office. It is never sent.
#pragma once

#include "store/database.hpp"
#include "sync/net/server.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace bullace::server {

struct Arrival {
    std::int64_t atMs = 0; // UTC milliseconds since 1970, by the station's clock
    std::string device;    // letter and digits
    std::string name;
    std::uint64_t newHere = 0;     // entries that the station did not have
    std::uint64_t newThere = 0;    // entries that the device did not have
    std::uint64_t photos = 0;      // that came
    std::uint64_t apart = 0;       // origins of which something was laid apart or did not join
    std::uint64_t forked = 0;      // origins that went two ways
    std::int64_t clockAheadMs = 0; // the device's clock before the station's
    bool isComplete = false;
    std::string trouble; // why it broke off, in words; empty where it did not
};

inline constexpr std::size_t kMostArrivals = 200; // older ones are forgotten

[[nodiscard]] Arrival arrivalOf(const sync::net::KnownDevice& device,
                                const sync::Summary& summary,
                                const std::string& trouble,
                                std::int64_t nowMs);
// Errors: those of reading and writing.
[[nodiscard]] Status keepArrival(store::Database& database, const Arrival& arrival);
// The newest first. Errors: those of reading.
[[nodiscard]] Result<std::vector<Arrival>> arrivals(store::Database& database);

} // namespace bullace::server
