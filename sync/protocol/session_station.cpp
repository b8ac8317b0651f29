// The station's side of a session.
#include "sync/protocol/session.hpp"

#include <algorithm>
#include <utility>

namespace bullace::sync {

StationSession::StationSession(const StationSetup& setup, Millis now)
    : Session(now, kFirstFrameMs),
      setup_(setup),
      startedAt_(now) {}

Actions StationSession::start(Millis /*now*/) {
    return {};
}

void StationSession::onGreeting(const FrameView& frame) {
    if (state_ == State::AwaitingHello && frame.is(FrameType::Hello)) {
        if (auto hello = decodeHello(frame.payload)) {
            onHello(std::move(*hello));
            return;
        }
    } else if (state_ == State::AwaitingWant && frame.is(FrameType::Want)) {
        const auto want = decodeWant(frame.payload);
        if (want && (want->ends.empty() || want->ends.back() < listed_.size())) {
            onWant(*want);
            return;
        }
    }
    quit(Reason::BrokenFrame);
}

void StationSession::onHello(Hello hello) {
    if (hello.leastVersion > kGreatestVersion || hello.greatestVersion < kLeastVersion) {
        quit(Reason::Version);
        return;
    }
    if (hello.letter != setup_.letter || hello.device != setup_.device) {
        quit(Reason::NotYours);
        return;
    }
    const Millis here = setup_.wallMs + (now() - startedAt_);
    summary_.clockDifferenceMs = clockDifference(hello.wallMs, here);
    knownHistory_ = hello.knownHistory;
    clientLacksPhotos_ = hello.lacksPhotos;
    theirs_ = hello.ends;
    state_ = State::Comparing;
    ask(CompareAsk{std::move(hello)});
}

void StationSession::onPlanning(AnswerBody answer) {
    if (auto* comparison = std::get_if<Comparison>(&answer);
        comparison != nullptr && state_ == State::Comparing) {
        onComparison(std::move(*comparison));
    } else if (auto* plan = std::get_if<Plan>(&answer);
               plan != nullptr && state_ == State::Planning) {
        state_ = State::Flowing;
        beginFlow(std::move(plan->parts));
    }
}

void StationSession::onComparison(Comparison comparison) {
    StationWord word;
    word.version = kGreatestVersion;
    word.history = comparison.history;
    word.wallMs = setup_.wallMs + (now() - startedAt_);
    word.greatestEpoch = comparison.greatestEpoch;
    word.lacksPhotos = comparison.lacksPhotos;
    summary_.stationHistory = comparison.history;
    summary_.greatestEpoch = comparison.greatestEpoch;
    if (comparison.isEqual) {
        send(encode(Equal{word}));
        state_ = State::Flowing;
        if (clientLacksPhotos_ || comparison.lacksPhotos) {
            beginPhotosOnly();
        } else {
            finish();
        }
        return;
    }
    isRelay_ = knownHistory_ != HistoryId{} && knownHistory_ != comparison.history;
    summary_.wasRelayed = isRelay_;
    held_ = comparison.held;
    listed_ = comparison.ends;
    state_ = State::AwaitingWant;
    send(
        encode(HelloReply{word, isRelay_, std::move(comparison.held), std::move(comparison.ends)}));
}

void StationSession::onWant(const Want& want) {
    state_ = State::Planning;
    ask(StationPlanAsk{std::exchange(theirs_, {}),
                       std::exchange(held_, {}),
                       std::exchange(listed_, {}),
                       want.ends});
}

bool StationSession::accepts(const journal::Origin& origin) const {
    return isRelay_ || isOwnOrigin(origin, setup_.letter, setup_.device);
}

Sender StationSession::sender() const {
    return {isRelay_ ? Way::Relayed : Way::FromDevice, setup_.letter, setup_.device};
}

} // namespace bullace::sync
