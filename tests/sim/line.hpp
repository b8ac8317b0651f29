// A sync between a device and the station over a line of bytes that the simulation moves, cuts and
// damages as it likes.
#pragma once

#include "sim/ledger.hpp"
#include "sim/machine.hpp"

#include "sync/protocol/frames.hpp"
#include "sync/protocol/messages.hpp"
#include "sync/protocol/session.hpp"
#include "sync/server/store_replica.hpp"

#include <deque>
#include <map>
#include <memory>
#include <optional>
#include <vector>

namespace bullace::test {

class Line {
public:
    Line(Machine& device,
         Machine& station,
         const Ledger& ledger,
         std::int64_t deviceClock,
         std::int64_t stationClock);

    // One thing that can happen next, if any can: an ask is performed, bytes arrive.
    bool step(Dice& dice);
    // The line breaks for both, or is only forgotten by one whose machine is down.
    void cut();
    // The station ends this session, as when the device comes anew.
    void dismiss(sync::Reason reason);
    // Time goes on.
    void tick(sync::Millis by);
    // One byte of the next batch of entries that arrives is not what was sent.
    void damageNextBatch() { isDamageDue_ = true; }

    [[nodiscard]] bool isOver() const { return client_.closed && server_.closed; }
    [[nodiscard]] bool isComplete() const {
        return isOver() && client_.closed->ok() && server_.closed->ok();
    }
    [[nodiscard]] bool isClientOver() const { return client_.closed.has_value(); }
    [[nodiscard]] const std::optional<Status>& clientStatus() const { return client_.closed; }
    [[nodiscard]] const std::optional<Status>& serverStatus() const { return server_.closed; }
    [[nodiscard]] const sync::Summary& summary() const { return client_.session->summary(); }
    [[nodiscard]] const sync::Summary& serverSummary() const { return server_.session->summary(); }
    [[nodiscard]] Machine& device() const { return device_; }
    [[nodiscard]] Machine& station() const { return station_; }
    [[nodiscard]] bool touches(const Machine& machine) const {
        return &machine == &device_ || &machine == &station_;
    }
    // All that the device has sent.
    [[nodiscard]] const Bytes& spoken() const { return spoken_; }
    [[nodiscard]] const sync::StationSetup& stationSetup() const { return stationSetup_; }

    // Set once its outcome was carried to the device.
    bool isToldToDevice = false;

private:
    struct Side {
        Machine* machine = nullptr;
        std::unique_ptr<server::StoreReplica> replica;
        std::unique_ptr<sync::Session> session;
        std::deque<sync::Ask> asks;
        Bytes outbox;
        std::optional<Status> closed;
        sync::FrameReader tap{sync::kFrameBytes}; // of what it sends
        std::map<std::uint64_t, std::vector<std::pair<Mark, std::uint64_t>>>
            batches; // sent, not yet acknowledged
    };

    void take(Side& side, Side& other, sync::Actions actions);
    void listen(Side& side, Side& other, BytesView bytes);
    bool answer(Side& side, Side& other);
    bool deliver(Side& from, Side& to, Dice& dice);
    void damage(Bytes& piece, Dice& dice);

    Machine& device_;
    Machine& station_;
    const Ledger& ledger_;
    sync::StationSetup stationSetup_;
    sync::Millis now_ = 1000;
    Side client_;
    Side server_;
    Bytes spoken_;
    bool isDamageDue_ = false;
};

} // namespace bullace::test
