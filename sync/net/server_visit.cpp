// One connection at the station: its handshake, and then a session or a pairing.
#include "sync/net/server_core.hpp"

#include <utility>

namespace bullace::sync::net {

namespace {

constexpr auto kToken = asio::use_awaitable;

Error brokenLine(const error_code& error) {
    return {ErrorCode::Network,
            "The line to the device broke. What came through is kept.",
            error.message()};
}

const char* reasonOf(const Meeting& meeting) {
    return meeting.verdict == Verdict::Revoked ? "a device that was taken off the list"
           : meeting.peerKey                   ? "a key that is not paired"
                                               : "no key, or no client of this program";
}

} // namespace

Verdict Server::Core::judge(Purpose purpose, const Digest& key) {
    if (purpose == Purpose::Pairing) {
        return arming_.isArmed(monotonicNow()) ? Verdict::Welcome : Verdict::Unknown;
    }
    const auto device = purpose == Purpose::Sync ? host_.find(key) : std::nullopt;
    return !device ? Verdict::Unknown : device->isRevoked ? Verdict::Revoked : Verdict::Welcome;
}

void Server::Core::turnedAway(const Visit& visit, std::string why) {
    if (door_.isNews(visit.address, monotonicNow())) {
        worker_->post([this, address = visit.address, why = std::move(why)] {
            host_.onTurnedAway(address, why);
        });
    }
}

awaitable<void> Server::Core::visiting(VisitPtr visit) {
    try {
        if (co_await shakeHands(visit)) {
            if (visit->meeting.purpose == Purpose::Pairing) {
                co_await pairing(visit);
            } else {
                co_await syncing(visit);
            }
        }
    } catch (...) {
        // Only memory that ran out comes here: this connection ends, the others go on.
        visit->closeAt = 0;
    }
    error_code ignored;
    visit->stream.next_layer().close(ignored);
    visits_.erase(visit);
    door_.leave(visit->address);
}

awaitable<bool> Server::Core::shakeHands(VisitPtr visit) {
    auto& socket = visit->stream.next_layer();
    error_code error;
    while (!door_.mayBegin(visit->address) && socket.is_open()) {
        doorGate_.expires_at(asio::steady_timer::time_point::max());
        co_await doorGate_.async_wait(asio::redirect_error(kToken, error));
    }
    if (!socket.is_open()) {
        co_return false;
    }
    door_.begin(visit->address);
    tie(visit->stream, visit->meeting);
    visit->meeting.judge = [this](Purpose purpose, const Digest& key) {
        return judge(purpose, key);
    };
    co_await visit->stream.async_handshake(asio::ssl::stream_base::server,
                                           asio::redirect_error(kToken, error));
    const bool isWelcome = !error && visit->meeting.verdict == Verdict::Welcome &&
                           visit->meeting.purpose != Purpose::None;
    const bool isTurnedAway =
        !isWelcome && (!error || error.category() == asio::error::get_ssl_category());
    door_.end(visit->address, isTurnedAway, monotonicNow());
    doorGate_.cancel();
    if (isTurnedAway) {
        turnedAway(*visit, reasonOf(visit->meeting));
        // The alert is on its way; closing with bytes unread would overtake it.
        socket.shutdown(tcp::socket::shutdown_send, error);
        visit->closeAt = monotonicNow() + kShutdownMs;
        Bytes rest(kFrameBytesUnpaired, '\0');
        while (!error) {
            co_await socket.async_read_some(asio::buffer(rest),
                                            asio::redirect_error(kToken, error));
        }
    }
    co_return isWelcome;
}

awaitable<void> Server::Core::syncing(VisitPtr visit) {
    const Digest key = *visit->meeting.peerKey;
    const auto device = host_.find(key);
    if (!device || isStopping_) {
        co_return;
    }
    visit->device = *device;
    const auto older = sessions_[key].lock();
    if (older && older->link) {
        older->link->stop(Reason::Replaced);
    }
    sessions_[key] = visit;
    StationSetup setup{device->letter, device->device, wallNow()};
    Link::Hooks hooks;
    // The visit holds the link; the link must not hold the visit for ever.
    hooks.ask = [this, weak = std::weak_ptr<Visit>(visit)](Ask next) {
        if (const VisitPtr held = weak.lock()) {
            ask(held, std::move(next));
        }
    };
    hooks.closed = [this, weak = std::weak_ptr<Visit>(visit)](const Status& status) {
        if (const VisitPtr held = weak.lock()) {
            worker_->post([this, device = held->device, summary = held->link->summary(), status] {
                host_.onSessionOver(device, summary, status);
            });
        }
    };
    hooks.describe = brokenLine;
    visit->closeAt = 0;
    visit->link = std::make_shared<Link>(
        visit->stream, std::make_unique<StationSession>(setup, monotonicNow()), std::move(hooks));
    co_await visit->link->run(visit->link);
    if (sessions_[key].lock() == visit) {
        sessions_.erase(key);
    }
}

// Writes a device down on the database thread.
awaitable<Result<HistoryId>> Server::Core::written(NewDevice device) {
    const auto executor = co_await asio::this_coro::executor;
    auto gate =
        std::make_shared<asio::steady_timer>(executor, asio::steady_timer::time_point::max());
    auto result = std::make_shared<Result<HistoryId>>(Error{});
    auto isDone = std::make_shared<bool>(false);
    worker_->post([this, device = std::move(device), gate, result, isDone] {
        const Status status = host_.registerDevice(device);
        *result = status ? host_.replica().history() : Result<HistoryId>(status.error());
        asio::post(io_, [gate, isDone] {
            *isDone = true;
            gate->cancel();
        });
    });
    while (!*isDone) {
        error_code ignored;
        co_await gate->async_wait(asio::redirect_error(kToken, ignored));
    }
    co_return *result;
}

awaitable<void> Server::Core::pairing(VisitPtr visit) {
    const auto exporter = pairingExporter(visit->stream);
    if (!exporter) {
        co_return;
    }
    const Binding binding{*exporter, *visit->meeting.peerKey, options_.identity.keyHash};
    PairingStation station(arming_, {binding, options_.stationName}, monotonicNow());
    visit->closeAt = monotonicNow() + kFirstFrameMs;
    Bytes buffer(kFrameBytesUnpaired, '\0');
    error_code error;
    PairActions actions;
    while (actions.empty()) {
        const std::size_t size = co_await visit->stream.async_read_some(
            asio::buffer(buffer), asio::redirect_error(kToken, error));
        if (error) {
            co_return;
        }
        actions = station.onBytes(BytesView(buffer).substr(0, size), monotonicNow());
    }
    co_await carryOut(visit, station, std::move(actions));
}

awaitable<void>
Server::Core::carryOut(VisitPtr visit, PairingStation& station, PairActions actions) {
    visit->closeAt = 0;
    if (const auto* registering = std::get_if<PairRegister>(&actions.front())) {
        actions = station.onRegistered(co_await written(registering->device));
    }
    visit->closeAt = monotonicNow() + kShutdownMs;
    error_code error;
    for (const PairAction& action : actions) {
        if (const auto* send = std::get_if<PairSend>(&action)) {
            co_await asio::async_write(
                visit->stream, asio::buffer(send->bytes), asio::redirect_error(kToken, error));
        } else if (const auto* close = std::get_if<PairClose>(&action);
                   close != nullptr && !close->status) {
            turnedAway(*visit, close->status.error().message);
        }
    }
    if (!error) {
        co_await visit->stream.async_shutdown(asio::redirect_error(kToken, error));
    }
}

} // namespace bullace::sync::net
