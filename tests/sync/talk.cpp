#include "talk.hpp"

#include <algorithm>

namespace bullace::test {

void Side::take(sync::Actions actions) {
    for (sync::Action& action : actions) {
        if (auto* send = std::get_if<sync::Send>(&action)) {
            outbox += send->bytes;
        } else if (auto* ask = std::get_if<sync::Ask>(&action)) {
            asks.push_back(std::move(*ask));
        } else if (!closed) {
            closed = std::get<sync::Close>(action).status;
        }
    }
}

bool Side::answerOne(sync::Millis now) {
    if (asks.empty() || closed) {
        return false;
    }
    const sync::Ask ask = std::move(asks.front());
    asks.pop_front();
    take(session->onAnswer(sync::perform(*replica, ask), now));
    return true;
}

Talk::Talk(sync::Replica& device, sync::Replica& stationReplica, const Setup& setup)
    : setup_(setup) {
    client.session = std::make_unique<sync::ClientSession>(setup.client, now);
    client.replica = &device;
    station.session = std::make_unique<sync::StationSession>(setup.station, now);
    station.replica = &stationReplica;
}

bool Talk::deliver(Side& from, Side& to) {
    if (from.outbox.empty() || to.closed || !to.session->wantsInput()) {
        return false;
    }
    const std::size_t size =
        std::min({from.outbox.size(), setup_.pieceBytes, setup_.cutAfterBytes - moved_});
    const Bytes piece = from.outbox.substr(0, size);
    from.outbox.erase(0, size);
    moved_ += size;
    from.take(from.session->onSent(size, now));
    to.take(to.session->onBytes(piece, now));
    if (moved_ == setup_.cutAfterBytes) {
        cut();
        return false;
    }
    return true;
}

void Talk::cut() {
    for (Side* side : {&client, &station}) {
        if (!side->closed) {
            side->take(
                side->session->onBroken(Error{ErrorCode::Network, "The line broke.", {}}, now));
        }
        side->outbox.clear();
    }
}

void Talk::run() {
    client.take(client.session->start(now));
    station.take(station.session->start(now));
    for (bool isMoving = true; isMoving;) {
        isMoving = client.answerOne(now);
        isMoving = station.answerOne(now) || isMoving;
        isMoving = deliver(client, station) || isMoving;
        isMoving = deliver(station, client) || isMoving;
    }
}

Talk::Setup setupOf(char letter, std::uint64_t device, std::uint32_t epoch) {
    Talk::Setup setup;
    setup.client.letter = letter;
    setup.client.device = device;
    setup.client.current = {letter, device, epoch};
    setup.client.wallMs = 1'700'000'000'000;
    setup.station.letter = letter;
    setup.station.device = device;
    setup.station.wallMs = 1'700'000'000'000;
    return setup;
}

} // namespace bullace::test
