#include "sync/net/link.hpp"

#include <utility>

namespace bullace::sync::net {

namespace {

constexpr auto kToken = asio::use_awaitable;

// Waits until the gate is cancelled.
awaitable<void> waitAt(asio::steady_timer& gate) {
    error_code ignored;
    gate.expires_at(asio::steady_timer::time_point::max());
    co_await gate.async_wait(asio::redirect_error(kToken, ignored));
}

} // namespace

Millis monotonicNow() {
    const auto now = std::chrono::steady_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
}

std::int64_t wallNow() {
    const auto now = std::chrono::system_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
}

Link::Link(TlsStream& stream, std::unique_ptr<Session> session, Hooks hooks)
    : stream_(stream),
      session_(std::move(session)),
      hooks_(std::move(hooks)),
      inputGate_(stream.get_executor()),
      outputGate_(stream.get_executor()),
      endGate_(stream.get_executor()) {}

awaitable<void> Link::run(std::shared_ptr<Link> self) {
    const auto executor = co_await asio::this_coro::executor;
    isReading_ = true;
    isWriting_ = true;
    asio::co_spawn(executor, reading(self), asio::detached);
    asio::co_spawn(executor, writing(self), asio::detached);
    apply(session_->start(monotonicNow()));
    while (isReading_ || isWriting_) {
        co_await waitAt(endGate_);
    }
    co_await shutDown();
}

awaitable<void> Link::reading(std::shared_ptr<Link> self) {
    try {
        co_await self->readOn();
    } catch (...) {
        // Only memory that ran out comes here: this connection ends, the others go on.
        self->broken(asio::error::no_memory);
    }
    self->isReading_ = false;
    self->wake();
}

awaitable<void> Link::writing(std::shared_ptr<Link> self) {
    try {
        co_await self->writeOn();
    } catch (...) {
        self->broken(asio::error::no_memory);
    }
    self->isWriting_ = false;
    self->wake();
}

awaitable<void> Link::readOn() {
    Bytes buffer(kReadBytes, '\0');
    while (!status_) {
        if (!session_->wantsInput()) {
            co_await waitAt(inputGate_);
            continue;
        }
        error_code error;
        const std::size_t size = co_await stream_.async_read_some(
            asio::buffer(buffer), asio::redirect_error(kToken, error));
        if (status_) {
            break;
        }
        if (error) {
            broken(error); // an end without a Close of ours is a broken line, in order or not
            break;
        }
        apply(session_->onBytes(BytesView(buffer).substr(0, size), monotonicNow()));
    }
}

awaitable<void> Link::writeOn() {
    while (!isBroken_) {
        if (outbox_.empty() || writeError_) {
            if (status_) {
                break;
            }
            co_await waitAt(outputGate_);
            continue;
        }
        const Bytes bytes = std::move(outbox_.front());
        outbox_.pop_front();
        error_code error;
        co_await asio::async_write(
            stream_, asio::buffer(bytes), asio::redirect_error(kToken, error));
        if (error) {
            writeError_ = error;
            writeErrorAt_ = monotonicNow();
        } else {
            apply(session_->onSent(bytes.size(), monotonicNow()));
        }
    }
    // Everything was said: whatever is still being read is of no use.
    error_code ignored;
    stream_.next_layer().cancel(ignored);
}

awaitable<void> Link::shutDown() {
    auto& socket = stream_.next_layer();
    error_code error;
    if (!isBroken_ && !writeError_) {
        co_await stream_.async_shutdown(asio::redirect_error(kToken, error));
        if (error && error != asio::error::eof && socket.is_open()) {
            // The other side is still sending. Closing now would take from it what we said last.
            socket.shutdown(tcp::socket::shutdown_send, error);
            Bytes buffer(kReadBytes, '\0');
            while (!error) {
                co_await socket.async_read_some(asio::buffer(buffer),
                                                asio::redirect_error(kToken, error));
            }
        }
    }
    socket.close(error);
}

void Link::apply(Actions actions) {
    for (Action& action : actions) {
        if (auto* send = std::get_if<Send>(&action)) {
            outbox_.push_back(std::move(send->bytes));
        } else if (auto* ask = std::get_if<Ask>(&action)) {
            hooks_.ask(std::move(*ask));
        } else if (!status_) {
            status_ = std::get<Close>(action).status;
            overAt_ = monotonicNow();
            hooks_.closed(*status_);
        }
    }
    wake();
}

void Link::wake() {
    inputGate_.cancel();
    outputGate_.cancel();
    endGate_.cancel();
}

void Link::broken(const error_code& error) {
    isBroken_ = true;
    apply(session_->onBroken(hooks_.describe(error), monotonicNow()));
    error_code ignored;
    stream_.next_layer().cancel(ignored);
}

void Link::cut() {
    if (!status_) {
        broken(asio::error::connection_reset);
    }
}

void Link::answer(Answer answer) {
    if (!status_) {
        apply(session_->onAnswer(std::move(answer), monotonicNow()));
    }
}

void Link::tick() {
    const Millis now = monotonicNow();
    if (!status_ && writeError_ && now - writeErrorAt_ >= kShutdownMs) {
        broken(*writeError_);
    } else if (!status_) {
        apply(session_->onTick(now));
    }
    error_code ignored;
    if (status_ && now - overAt_ >= kShutdownMs) {
        stream_.next_layer().close(ignored);
    } else if (status_ && !isWriting_ && isReading_) {
        stream_.next_layer().cancel(ignored); // it was between two readings when it was cancelled
    }
}

void Link::stop(Reason reason) {
    if (!status_) {
        apply(session_->onStop(reason, monotonicNow()));
    }
}

} // namespace bullace::sync::net
