// Two sessions talking in memory: bytes in pieces of any size, a line that can be cut anywhere.
#pragma once

#include "model_replica.hpp"

#include "sync/protocol/session.hpp"

#include <deque>
#include <limits>
#include <memory>
#include <optional>

namespace bullace::test {

// One side: its session, its database, and what is on its way between them.
struct Side {
    std::unique_ptr<sync::Session> session;
    sync::Replica* replica = nullptr;
    std::deque<sync::Ask> asks;
    Bytes outbox;
    std::optional<Status> closed;

    void take(sync::Actions actions);
    // Performs one ask; false where there is none.
    bool answerOne(sync::Millis now);
};

class Talk {
public:
    struct Setup {
        sync::ClientSetup client;
        sync::StationSetup station;
        std::size_t pieceBytes = 65536;                                      // delivered at once
        std::size_t cutAfterBytes = std::numeric_limits<std::size_t>::max(); // both ways together
    };
    Talk(sync::Replica& device, sync::Replica& station, const Setup& setup);

    // Until both are closed, or nothing moves any more.
    void run();

    [[nodiscard]] const sync::Summary& summary() const { return client.session->summary(); }
    [[nodiscard]] const sync::Summary& stationSummary() const { return station.session->summary(); }
    [[nodiscard]] bool isComplete() const {
        return client.closed && client.closed->ok() && station.closed && station.closed->ok();
    }
    [[nodiscard]] std::size_t bytesMoved() const { return moved_; }

    Side client;
    Side station;
    sync::Millis now = 1000;

private:
    bool deliver(Side& from, Side& to);
    void cut();

    Setup setup_;
    std::size_t moved_ = 0;
};

// What a device of these digits says of itself: it writes into epoch 1 and knows no station yet.
[[nodiscard]] Talk::Setup setupOf(char letter, std::uint64_t device, std::uint32_t epoch = 1);

} // namespace bullace::test
