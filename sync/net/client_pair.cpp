// pair(): small enough to run on the caller's thread alone.
#include "sync/net/client.hpp"
#include "sync/net/dialing.hpp"

#include <utility>

namespace bullace::sync::net {

namespace {

struct Pairing {
    const PairOptions& options;
    Dialing& dialing;
    Result<Paired> outcome{Error{}};
};

// Writes what is to be sent; true where the pairing is over, with its outcome.
awaitable<bool> carryOut(Pairing& pairing, PairingDevice& device, PairActions actions) {
    for (const PairAction& action : actions) {
        error_code error;
        if (const auto* send = std::get_if<PairSend>(&action)) {
            // Where the station has refused us already, the reading that follows tells why.
            co_await asio::async_write(pairing.dialing.stream(),
                                       asio::buffer(send->bytes),
                                       asio::redirect_error(asio::use_awaitable, error));
        } else if (const auto* close = std::get_if<PairClose>(&action)) {
            pairing.outcome = close->status ? Result<Paired>(device.paired())
                                            : Result<Paired>(close->status.error());
            co_return true;
        }
    }
    co_return false;
}

awaitable<void> converse(Pairing& pairing) {
    const PairOptions& options = pairing.options;
    auto& stream = pairing.dialing.stream();
    const auto exporter = pairingExporter(stream);
    if (!exporter) {
        pairing.outcome = Error{ErrorCode::Internal, "The pairing failed. Try it again.", {}};
        co_return;
    }
    const Binding binding{*exporter, options.identity.keyHash, *pairing.dialing.meeting().peerKey};
    PairingDevice device(
        {binding, options.letter, options.device, options.name, options.kind, options.secret},
        monotonicNow());
    pairing.dialing.closeAt(monotonicNow() + kIdleMs);
    Bytes buffer(kFrameBytesUnpaired, '\0');
    error_code error;
    bool isOver = co_await carryOut(pairing, device, device.start());
    while (!isOver) {
        const std::size_t size = co_await stream.async_read_some(
            asio::buffer(buffer), asio::redirect_error(asio::use_awaitable, error));
        if (error) {
            pairing.outcome = pairing.dialing.describe(error);
            co_return;
        }
        isOver = co_await carryOut(
            pairing, device, device.onBytes(BytesView(buffer).substr(0, size), monotonicNow()));
    }
    pairing.dialing.closeAt(monotonicNow() + kShutdownMs);
    co_await stream.async_shutdown(asio::redirect_error(asio::use_awaitable, error));
}

awaitable<void> pairing(Pairing& pairing) {
    const Status status = co_await pairing.dialing.connect();
    if (status) {
        co_await converse(pairing);
    } else {
        pairing.outcome = status.error();
    }
    error_code ignored;
    pairing.dialing.stream().next_layer().close(ignored);
    pairing.dialing.end();
}

} // namespace

Result<Paired> pair(const PairOptions& options, const Cancel& cancel) {
    auto context = makeContext(options.identity);
    if (!context) {
        return context.error();
    }
    Dialing dialing(
        std::move(*context), options.place, options.stationKey, Purpose::Pairing, cancel);
    Pairing state{options, dialing};
    asio::co_spawn(dialing.io(), pairing(state), asio::detached);
    asio::co_spawn(dialing.io(), dialing.watch(), asio::detached);
    dialing.io().run();
    return std::move(state.outcome);
}

} // namespace bullace::sync::net
