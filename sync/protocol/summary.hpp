// What a session has done, for its driver and for the person who waits for it.
#pragma once

#include "core/journal/origin.hpp"
#include "sync/protocol/wire.hpp"

#include <cstdint>
#include <vector>

namespace bullace::sync {

struct Summary {
    bool isComplete = false; // everything that was missing went both ways, and is durable

    HistoryId stationHistory{};      // to be remembered by a device that mayRememberHistory()
    bool wasRelayed = false;         // the station's database had been restored, and was refilled
    std::uint32_t greatestEpoch = 0; // of the device's digits, as the station knows it
    bool needsNewEpoch = false;      // device: before it writes again, it takes a new epoch
    std::int64_t clockDifferenceMs = 0; // the other side's clock less ours

    std::uint64_t toSend = 0;          // entries, as planned; seen while a sync goes on
    std::uint64_t sentEntries = 0;     // acknowledged as durable there
    std::uint64_t newThere = 0;        // of them, new there
    std::uint64_t receivedEntries = 0; // durable here
    std::uint64_t newHere = 0;
    std::uint64_t photosSent = 0;
    std::uint64_t photosReceived = 0;
    std::uint64_t photosDamaged =
        0; // came otherwise than their SHA-256 says; asked for again next time
    std::uint64_t bytesSent = 0; // frames; without the TLS around them
    std::uint64_t bytesReceived = 0;

    // Origins, each once, of which something did not go through.
    std::vector<journal::Origin> unlinkedThere; // the other side could not join it to what it holds
    std::vector<journal::Origin> unlinkedHere;
    std::vector<journal::Origin> apartThere; // waits there for someone at the office
    std::vector<journal::Origin> apartHere;
    std::vector<journal::Origin> forked;  // has more than one branch, found by this sync
    std::vector<journal::Origin> damaged; // could not be read here

    // Whether the station has, taken or waiting, all that this device had for it: what ended early
    // would not be asked for again by a station whose history the device knows.
    [[nodiscard]] bool mayRememberHistory() const {
        return isComplete && unlinkedThere.empty() && damaged.empty();
    }
};

// The other side's clock less ours. A clock that is absurdly far off gives the farthest number
// there is.
[[nodiscard]] std::int64_t clockDifference(std::int64_t theirsMs, std::int64_t oursMs);

// Adds an origin to one of the lists, once.
void noteOnce(std::vector<journal::Origin>& list, const journal::Origin& origin);

} // namespace bullace::sync
