#include "sync/net/dialing.hpp"

#include "core/base/numbers.hpp"

#include <algorithm>
#include <exception>
#include <utility>

namespace bullace::sync::net {

namespace {

constexpr auto kToken = asio::use_awaitable;
constexpr auto kTick = std::chrono::milliseconds(50);

} // namespace

std::optional<StationPlace> readPlace(std::string_view text) {
    StationPlace place;
    std::string_view port;
    if (text.starts_with('[')) {
        const std::size_t end = text.find(']');
        if (end == std::string_view::npos) {
            return std::nullopt;
        }
        place.host = text.substr(1, end - 1);
        port = text.substr(end + 1);
    } else {
        const std::size_t colon = std::min(text.find(':'), text.size());
        place.host = text.substr(0, colon);
        port = text.substr(colon);
    }
    if (place.host.empty() || place.host.find_first_of(" /@") != std::string::npos) {
        return std::nullopt;
    }
    if (port.empty()) {
        return place;
    }
    const auto number = readCount(port.substr(1), 65'535);
    if (port[0] != ':' || !number || *number == 0) {
        return std::nullopt;
    }
    place.port = static_cast<std::uint16_t>(*number);
    return place;
}

Dialing::Dialing(std::unique_ptr<asio::ssl::context> context,
                 StationPlace place,
                 std::optional<Digest> expected,
                 Purpose purpose,
                 const Cancel& cancel)
    : context_(std::move(context)),
      place_(std::move(place)),
      stream_(io_, *context_),
      resolver_(io_),
      ticker_(io_),
      cancel_(cancel) {
    meeting_.purpose = purpose;
    meeting_.judge = [expected](Purpose, const Digest& key) {
        return !expected || *expected == key ? Verdict::Welcome : Verdict::OtherKey;
    };
}

std::string Dialing::place() const {
    return place_.host + ", port " + std::to_string(place_.port);
}

Error Dialing::nobodyThere(const error_code& error) const {
    if (isCancelled()) {
        return goodbyeError(static_cast<std::uint8_t>(Reason::Closing));
    }
    return {ErrorCode::Network,
            "No station answers at " + place() +
                ". Check that it is on, that this device is in its network, and the address.",
            error.message()};
}

Error Dialing::describe(const error_code& error) const {
    return isCancelled() ? goodbyeError(static_cast<std::uint8_t>(Reason::Closing))
                         : handshakeError(error, meeting_, place());
}

awaitable<Status> Dialing::connect() {
    closeAt_ = monotonicNow() + kHandshakeMs;
    error_code error;
    const auto found = co_await resolver_.async_resolve(
        place_.host, std::to_string(place_.port), asio::redirect_error(kToken, error));
    if (error) {
        co_return nobodyThere(error);
    }
    co_await asio::async_connect(stream_.next_layer(), found, asio::redirect_error(kToken, error));
    if (error || isCancelled()) {
        co_return nobodyThere(error);
    }
    stream_.next_layer().set_option(tcp::no_delay(true), error);
    tie(stream_, meeting_);
    askFor(stream_, meeting_.purpose);
    co_await stream_.async_handshake(asio::ssl::stream_base::client,
                                     asio::redirect_error(kToken, error));
    if (error) {
        co_return describe(error);
    }
    if (agreedPurpose(stream_) != meeting_.purpose || meeting_.verdict != Verdict::Welcome) {
        co_return goodbyeError(static_cast<std::uint8_t>(Reason::Version));
    }
    closeAt_ = 0;
    co_return Status{};
}

awaitable<void> Dialing::watch() {
    while (!isEnded_) {
        error_code ignored;
        ticker_.expires_after(kTick);
        co_await ticker_.async_wait(asio::redirect_error(kToken, ignored));
        const bool isLate = closeAt_ != 0 && monotonicNow() >= closeAt_;
        if (!tick_ && (isCancelled() || isLate)) {
            resolver_.cancel();
            stream_.next_layer().close(ignored);
        } else if (tick_) {
            tick_();
        }
    }
}

void Dialing::end() {
    isEnded_ = true;
    ticker_.cancel();
}

Answer performOnDevice(Replica& replica, const Ask& ask) {
    try {
        return perform(replica, ask);
    } catch (const std::exception& failure) {
        return {
            ask.ticket,
            Error{ErrorCode::Internal,
                  "This program ran into a mistake of its own. What was noted is kept; restart it "
                  "and sync again.",
                  failure.what()}};
    }
}

} // namespace bullace::sync::net
