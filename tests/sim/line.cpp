#include "sim/line.hpp"

#include "sync/protocol/limits.hpp"

#include <algorithm>

namespace bullace::test {

using journal::RunOutcome;

namespace {

sync::ClientSetup clientSetup(Machine& device, std::int64_t clock) {
    sync::ClientSetup setup;
    setup.letter = device.letter();
    setup.device = device.device();
    setup.current = device.database().about().own;
    setup.wallMs = clock;
    const auto known = store::station(device.database());
    if (known.ok() && *known) {
        const Bytes& history = (*known)->history;
        std::copy_n(history.begin(),
                    std::min(history.size(), setup.knownHistory.size()),
                    setup.knownHistory.begin());
    }
    return setup;
}

} // namespace

Line::Line(Machine& device,
           Machine& station,
           const Ledger& ledger,
           std::int64_t deviceClock,
           std::int64_t stationClock)
    : device_(device),
      station_(station),
      ledger_(ledger),
      stationSetup_{device.letter(), device.device(), stationClock} {
    client_.machine = &device;
    client_.replica = std::make_unique<server::StoreReplica>(device.database());
    client_.session = std::make_unique<sync::ClientSession>(clientSetup(device, deviceClock), now_);
    server_.machine = &station;
    server_.replica = std::make_unique<server::StoreReplica>(station.database());
    server_.session = std::make_unique<sync::StationSession>(stationSetup_, now_);
    take(client_, server_, client_.session->start(now_));
    take(server_, client_, server_.session->start(now_));
}

void Line::take(Side& side, Side& other, sync::Actions actions) {
    for (sync::Action& action : actions) {
        if (auto* send = std::get_if<sync::Send>(&action)) {
            listen(side, other, send->bytes);
            side.outbox += send->bytes;
        } else if (auto* ask = std::get_if<sync::Ask>(&action)) {
            side.asks.push_back(std::move(*ask));
        } else if (!side.closed) {
            side.closed = std::get<sync::Close>(action).status;
        }
    }
}

// What a side says is heard at once: a batch is kept in mind, and an acknowledgement binds whoever
// gives it, wherever its bytes get to.
void Line::listen(Side& side, Side& other, BytesView bytes) {
    side.tap.append(bytes);
    while (const auto frame = side.tap.next()) {
        if (frame->is(sync::FrameType::Batch)) {
            const auto batch = sync::decodeBatch(frame->payload);
            for (const journal::Run& run : batch->runs) {
                side.batches[batch->number].emplace_back(run.end(), run.entries.size());
            }
        } else if (frame->is(sync::FrameType::Ack)) {
            const auto ack = sync::decodeAck(frame->payload);
            const auto& runs = other.batches[ack->number];
            for (std::size_t i = 0; i < runs.size() && i < ack->runs.size(); ++i) {
                const RunOutcome outcome = ack->runs[i].outcome;
                if (outcome == RunOutcome::Taken || outcome == RunOutcome::Held) {
                    const auto marks = ledger_.marksUpTo(runs[i].first, runs[i].second);
                    side.machine->promised.insert(marks.begin(), marks.end());
                    side.machine->isToCheck = true;
                }
            }
        }
    }
}

bool Line::answer(Side& side, Side& other) {
    if (side.asks.empty() || side.closed) {
        return false;
    }
    const sync::Ask ask = std::move(side.asks.front());
    side.asks.pop_front();
    take(side, other, side.session->onAnswer(sync::perform(*side.replica, ask), now_));
    return true;
}

void Line::damage(Bytes& piece, Dice& dice) {
    // Inside the entries: behind a subject's first letters, so that the frame and its numbers stay
    // whole.
    const std::size_t at = piece.find("obs/");
    if (!isDamageDue_ || at == Bytes::npos || at + 5 >= piece.size()) {
        return;
    }
    piece[at + 4] = static_cast<char>(piece[at + 4] ^ static_cast<char>(1 << dice.below(3)));
    isDamageDue_ = false;
}

bool Line::deliver(Side& from, Side& to, Dice& dice) {
    if (from.outbox.empty() || to.closed || !to.session->wantsInput()) {
        return false;
    }
    const std::size_t most = dice.isOne(1, 4) ? 1 + dice.below(200) : std::size_t{65'536};
    Bytes piece = from.outbox.substr(0, most);
    from.outbox.erase(0, piece.size());
    if (&from == &client_) {
        spoken_ += piece;
    }
    damage(piece, dice);
    if (!from.closed) {
        take(from, to, from.session->onSent(piece.size(), now_));
    }
    take(to, from, to.session->onBytes(piece, now_));
    return true;
}

bool Line::step(Dice& dice) {
    const std::uint64_t first = dice.below(4);
    for (std::uint64_t i = 0; i < 4; ++i) {
        bool isDone = false;
        switch ((first + i) % 4) {
        case 0:
            isDone = answer(client_, server_);
            break;
        case 1:
            isDone = answer(server_, client_);
            break;
        case 2:
            isDone = deliver(client_, server_, dice);
            break;
        default:
            isDone = deliver(server_, client_, dice);
        }
        if (isDone) {
            ++now_;
            return true;
        }
    }
    // One has hung up, and all that it said has arrived.
    if (client_.closed.has_value() != server_.closed.has_value()) {
        cut();
        return true;
    }
    return false;
}

void Line::cut() {
    for (Side* side : {&client_, &server_}) {
        if (!side->closed) {
            Side& other = side == &client_ ? server_ : client_;
            take(*side,
                 other,
                 side->session->onBroken(Error{ErrorCode::Network, "The line broke.", {}}, now_));
        }
        side->outbox.clear();
        side->asks.clear();
    }
}

void Line::dismiss(sync::Reason reason) {
    if (!server_.closed) {
        take(server_, client_, server_.session->onStop(reason, now_));
    }
}

void Line::tick(sync::Millis by) {
    now_ += by;
    for (Side* side : {&client_, &server_}) {
        if (!side->closed) {
            Side& other = side == &client_ ? server_ : client_;
            take(*side, other, side->session->onTick(now_));
        }
    }
}

} // namespace bullace::test
