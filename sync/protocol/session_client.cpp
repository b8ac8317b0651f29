// The device's side of a session.
#include "core/base/planted.hpp"
#include "sync/protocol/session.hpp"

#include <algorithm>
#include <utility>

namespace bullace::sync {

ClientSession::ClientSession(const ClientSetup& setup, Millis now)
    : Session(now, kIdleMs),
      setup_(setup) {}

Actions ClientSession::start(Millis /*now*/) {
    ask(GreetAsk{});
    return take();
}

void ClientSession::onPlanning(AnswerBody answer) {
    if (auto* greeting = std::get_if<Greeting>(&answer);
        greeting != nullptr && state_ == State::Asking) {
        greet(*greeting);
    } else if (auto* plan = std::get_if<Plan>(&answer);
               plan != nullptr && state_ == State::Planning) {
        onPlan(std::move(*plan));
    }
}

void ClientSession::greet(const Greeting& greeting) {
    helloAt_ = now();
    lacksPhotos_ = greeting.lacksPhotos;
    mine_ = greeting.ends;
    const auto isCurrent = [this](const journal::BranchEnd& end) {
        return end.origin == setup_.current;
    };
    if (std::count_if(mine_.begin(), mine_.end(), isCurrent) > 1) {
        demandEpoch();
    }
    Hello hello;
    hello.leastVersion = kLeastVersion;
    hello.greatestVersion = kGreatestVersion;
    hello.letter = setup_.letter;
    hello.device = setup_.device;
    hello.knownHistory = setup_.knownHistory;
    hello.wallMs = setup_.wallMs;
    hello.lacksPhotos = lacksPhotos_;
    hello.ends = mine_;
    send(encode(hello));
    state_ = State::AwaitingReply;
}

void ClientSession::onGreeting(const FrameView& frame) {
    if (state_ == State::AwaitingReply && frame.is(FrameType::Equal)) {
        if (const auto equal = decodeEqual(frame.payload)) {
            onEqual(*equal);
            return;
        }
    } else if (state_ == State::AwaitingReply && frame.is(FrameType::HelloReply)) {
        auto reply = decodeHelloReply(frame.payload);
        if (reply && reply->held.size() == mine_.size()) {
            onReply(std::move(*reply));
            return;
        }
    }
    quit(Reason::BrokenFrame);
}

void ClientSession::noteStation(const StationWord& word) {
    summary_.stationHistory = word.history;
    summary_.greatestEpoch = word.greatestEpoch;
    // The answer took its way back: half of the time that both ways took.
    const Millis here = setup_.wallMs + (now() - helloAt_) / 2;
    summary_.clockDifferenceMs = clockDifference(word.wallMs, here);
}

void ClientSession::demandEpoch() {
    if (!planted(Bug::EpochNotTaken)) {
        summary_.needsNewEpoch = true;
    }
}

void ClientSession::noteForked(const journal::Origin& origin) {
    if (origin == setup_.current) {
        demandEpoch();
    }
}

void ClientSession::onEqual(const Equal& equal) {
    noteStation(equal.station);
    state_ = State::Flowing;
    if (lacksPhotos_ || equal.station.lacksPhotos) {
        beginPhotosOnly();
    } else {
        finish();
    }
}

void ClientSession::onReply(HelloReply reply) {
    noteStation(reply.station);
    summary_.wasRelayed = reply.isRelay;
    theirs_ = reply.ends;
    state_ = State::Planning;
    ask(ClientPlanAsk{setup_.letter,
                      setup_.device,
                      reply.isRelay,
                      std::exchange(mine_, {}),
                      std::move(reply.held),
                      std::move(reply.ends)});
}

void ClientSession::onPlan(Plan plan) {
    for (const std::uint32_t number : plan.wanted) {
        const journal::Origin& origin = theirs_[number].origin;
        if (wanted_.empty() || wanted_.back() != origin) {
            wanted_.push_back(origin);
        }
        // The station remembers what this journal does not: it was restored, copied or forked.
        noteForked(origin);
    }
    theirs_ = {};
    send(encode(Want{std::move(plan.wanted)}));
    state_ = State::Flowing;
    beginFlow(std::move(plan.parts));
}

bool ClientSession::accepts(const journal::Origin& origin) const {
    return std::binary_search(wanted_.begin(), wanted_.end(), origin);
}

} // namespace bullace::sync
