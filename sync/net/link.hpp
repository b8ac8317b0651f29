// Carries the bytes of one session over one TLS connection. Inside sync/net only.
#pragma once

#include "sync/net/asio.hpp"
#include "sync/net/tls.hpp"
#include "sync/protocol/session.hpp"

#include <chrono>
#include <deque>
#include <functional>
#include <memory>
#include <optional>

namespace bullace::sync::net {

// The monotonic clock of the protocol.
[[nodiscard]] Millis monotonicNow();
// UTC milliseconds since 1970.
[[nodiscard]] std::int64_t wallNow();

// Reads and writes at the same time, one of each; all on the thread of the stream's io_context.
class Link : public std::enable_shared_from_this<Link> {
public:
    struct Hooks {
        std::function<void(Ask)> ask;              // to be performed; answer() brings the answer
        std::function<void(const Status&)> closed; // once; the last bytes may still be on their way
        std::function<Error(const error_code&)> describe; // a broken connection, for people
    };
    Link(TlsStream& stream, std::unique_ptr<Session> session, Hooks hooks);

    // Until the session is over and the connection shut down in order, or broken.
    awaitable<void> run(std::shared_ptr<Link> self);

    void answer(Answer answer);
    void tick();
    void stop(Reason reason);
    void cut(); // as if the network had broken here
    [[nodiscard]] const Summary& summary() const { return session_->summary(); }
    [[nodiscard]] bool isOver() const { return status_.has_value(); }

private:
    static awaitable<void> reading(std::shared_ptr<Link> self);
    static awaitable<void> writing(std::shared_ptr<Link> self);
    // All of these run inside run(), which holds the link.
    awaitable<void> readOn();
    awaitable<void> writeOn();
    awaitable<void> shutDown();
    void apply(Actions actions);
    void broken(const error_code& error);
    void wake();

    TlsStream& stream_;
    std::unique_ptr<Session> session_;
    Hooks hooks_;
    asio::steady_timer inputGate_;
    asio::steady_timer outputGate_;
    asio::steady_timer endGate_;
    std::deque<Bytes> outbox_;
    std::optional<Status> status_;
    Millis overAt_ = 0;
    std::optional<error_code> writeError_; // the reading side may still learn why
    Millis writeErrorAt_ = 0;
    bool isReading_ = false;
    bool isWriting_ = false;
    bool isBroken_ = false; // nothing more is written, no shutdown
};

} // namespace bullace::sync::net
