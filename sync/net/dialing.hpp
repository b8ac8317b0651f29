// How a device comes to a connection: resolve, connect, shake hands, within one deadline, and to be
// cancelled. Inside sync/net only.
#pragma once

#include "core/base/result.hpp"
#include "sync/net/asio.hpp"
#include "sync/net/client.hpp"
#include "sync/net/link.hpp"
#include "sync/net/tls.hpp"

#include <functional>
#include <memory>
#include <string>

namespace bullace::sync::net {

class Dialing {
public:
    // `expected`: the station's key, where it is known. `cancel` outlives this.
    Dialing(std::unique_ptr<asio::ssl::context> context,
            StationPlace place,
            std::optional<Digest> expected,
            Purpose purpose,
            const Cancel& cancel);

    // Within kHandshakeMs for all of it.
    awaitable<Status> connect();

    // Runs next to what is done with the connection, until end(): closes it where its deadline is
    // over or a person cancels before `tick` has taken over, and calls `tick` five times a second.
    awaitable<void> watch();
    void end();

    [[nodiscard]] asio::io_context& io() { return io_; }
    [[nodiscard]] TlsStream& stream() { return stream_; }
    [[nodiscard]] const Meeting& meeting() const { return meeting_; }
    [[nodiscard]] std::string place() const;
    [[nodiscard]] bool isCancelled() const { return cancel_.isCancelled(); }
    // An error of reading or writing, for the person who waits.
    [[nodiscard]] Error describe(const error_code& error) const;
    void closeAt(Millis moment) { closeAt_ = moment; }
    void onTick(std::function<void()> tick) { tick_ = std::move(tick); }

private:
    Error nobodyThere(const error_code& error) const;

    asio::io_context io_{1};
    std::unique_ptr<asio::ssl::context> context_;
    StationPlace place_;
    Meeting meeting_; // before the stream, which looks into it
    TlsStream stream_;
    tcp::resolver resolver_;
    asio::steady_timer ticker_;
    const Cancel& cancel_;
    std::function<void()> tick_;
    Millis closeAt_ = 0;
    bool isEnded_ = false;
};

// "There was a mistake in this program": whatever exception came out of a replica.
[[nodiscard]] Answer performOnDevice(Replica& replica, const Ask& ask);

} // namespace bullace::sync::net
