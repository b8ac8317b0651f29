// The sending half of a session: which batches are read, which are on their way, what became of
// them.
#pragma once

#include "sync/protocol/asks.hpp"
#include "sync/protocol/limits.hpp"
#include "sync/protocol/summary.hpp"

#include <cstdint>
#include <deque>
#include <optional>
#include <vector>

namespace bullace::sync {

class Outgoing {
public:
    void begin(std::vector<Part> parts);

    // The next batch to be read, where the window has room and none is being read.
    [[nodiscard]] std::optional<ReadAsk> nextRead();

    // The frame of the batch that was read; nothing where all of it turned out to be unreadable or
    // its origins ended meanwhile.
    [[nodiscard]] std::optional<Bytes> onRead(ReadBatch read, Summary& summary);

    // False where this is not the answer to the oldest batch on its way.
    [[nodiscard]] bool onAck(const Ack& ack, Summary& summary);

    // Nothing more will be read; what was sent may still be on its way.
    [[nodiscard]] bool isExhausted() const { return isBegun_ && parts_.empty() && !isReading_; }
    [[nodiscard]] bool isAcknowledged() const { return isExhausted() && onTheirWay_.empty(); }
    [[nodiscard]] End end() const { return {nextNumber_ - 1, entries_}; }

private:
    struct Flight {
        std::uint64_t number = 0;
        std::uint64_t entries = 0;
        std::vector<journal::Origin> origins; // one for each run
    };
    void advance(const ReadBatch& read);
    void drop(const journal::Origin& origin);

    std::deque<Part> parts_;
    std::deque<Flight> onTheirWay_;
    std::vector<journal::Origin> ended_;
    std::uint64_t nextNumber_ = 1;
    std::uint64_t entries_ = 0;
    bool isBegun_ = false;
    bool isReading_ = false;
};

#ifdef BULLACE_PLANTED
// What Bug::ResendDropsRest remembers between sessions; a simulation clears it before each seed.
void forgetPlantedSends();
#endif

} // namespace bullace::sync
