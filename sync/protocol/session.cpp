// What both roles of a session share until entries flow: its ends, its deadlines, its bookkeeping.
#include "sync/protocol/session.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace bullace::sync {

Session::Session(Millis now, Millis firstFrameMs) : deadlines_(now, firstFrameMs), now_(now) {}

Actions Session::take() {
    return std::exchange(actions_, {});
}

void Session::send(Bytes frame) {
    deadlines_.onQueued(now_, outbound_);
    outbound_ += frame.size();
    summary_.bytesSent += frame.size();
    actions_.emplace_back(Send{std::move(frame)});
}

void Session::ask(AskBody body) {
    tickets_.push_back(nextTicket_);
    actions_.emplace_back(Ask{nextTicket_++, std::move(body)});
}

void Session::finish() {
    isClosed_ = true;
    summary_.isComplete = true;
    actions_.emplace_back(Close{Status{}});
}

void Session::fail(Error error) {
    if (!isClosed_) {
        isClosed_ = true;
        actions_.emplace_back(Close{Status{std::move(error)}});
    }
}

void Session::quit(Reason reason) {
    if (isClosed_) {
        return;
    }
    Error error = goodbyeError(static_cast<std::uint8_t>(reason));
    send(encode(Goodbye{static_cast<std::uint8_t>(reason), error.message}));
    fail(std::move(error));
}

bool Session::wantsInput() const {
    // Before entries flow each word is worked off before the next is looked at.
    const bool isThinking = !isFlowing_ && !tickets_.empty();
    return !isClosed_ && stopReason_ == 0 && !isThinking && storing_.size() < kStoresAtOnce &&
           outbound_ < kOutboundBytes;
}

Actions Session::onBytes(BytesView bytes, Millis now) {
    now_ = now;
    if (isClosed_) {
        return {};
    }
    summary_.bytesReceived += bytes.size();
    reader_.append(bytes);
    drain();
    deadlines_.onBytes(now, bytes.size(), reader_.isOpen());
    return take();
}

// Works off whole frames as long as there is room for what they bring.
void Session::drain() {
    while (wantsInput()) {
        const std::optional<FrameView> frame = reader_.next();
        if (!frame) {
            break;
        }
        if (frame->type >= kFirstOptionalType) {
            continue;
        }
        deadlines_.onFrame(now_);
        if (frame->is(FrameType::Goodbye)) {
            onGoodbye(frame->payload);
        } else if (isFlowing_) {
            onFlowFrame(*frame);
        } else {
            onGreeting(*frame);
        }
    }
    if (reader_.isBroken()) {
        quit(Reason::BrokenFrame);
    }
    pump();
}

void Session::onGoodbye(BytesView payload) {
    const auto goodbye = decodeGoodbye(payload);
    if (!goodbye) {
        quit(Reason::BrokenFrame);
        return;
    }
    Error error = goodbyeError(goodbye->reason);
    error.detail = "goodbye " + std::to_string(goodbye->reason) + ": " + goodbye->text;
    fail(std::move(error));
}

Actions Session::onAnswer(Answer answer, Millis now) {
    now_ = now;
    if (isClosed_ || tickets_.empty() || tickets_.front() != answer.ticket) {
        return {};
    }
    tickets_.pop_front();
    deadlines_.onProgress(now);
    if (std::holds_alternative<Error>(answer.body)) {
        onFailedAnswer(std::get<Error>(answer.body));
    } else if (isFlowing_) {
        onFlowAnswer(std::move(answer.body));
    } else {
        onPlanning(std::move(answer.body));
    }
    drain();
    return take();
}

Actions Session::onSent(std::size_t bytes, Millis now) {
    now_ = now;
    outbound_ -= std::min(bytes, outbound_);
    deadlines_.onWritten(now, outbound_);
    if (!isClosed_) {
        drain();
    }
    return take();
}

Actions Session::onTick(Millis now) {
    now_ = now;
    if (!isClosed_ && deadlines_.isTooSlow(now, !tickets_.empty())) {
        quit(Reason::TooSlow);
    }
    return take();
}

Actions Session::onStop(Reason reason, Millis now) {
    now_ = now;
    if (stopReason_ == 0) {
        stopReason_ = static_cast<std::uint8_t>(reason);
    }
    pump();
    return take();
}

Actions Session::onBroken(Error error, Millis now) {
    now_ = now;
    fail(std::move(error));
    return take();
}

} // namespace bullace::sync
