#include "sync/protocol/pairing_session.hpp"

#include <utility>

namespace bullace::sync {

namespace {

Error brokenPairing() {
    return {ErrorCode::Network,
            "What came over the line is no message of a pairing. Check the address, and that both "
            "programs are up to date.",
            {}};
}

Error slowPairing() {
    return {ErrorCode::Network,
            "The other side was silent for too long. Go nearer to the station's network and pair "
            "again.",
            {}};
}

Error refusalError(PairRefusal refusal, unsigned triesLeft) {
    switch (refusal) {
    case PairRefusal::WrongCode:
        return {ErrorCode::Refused,
                triesLeft > 0
                    ? "The code is not the one that the station shows. Look at it again: " +
                          std::to_string(triesLeft) + " of three tries are left."
                    : "The code was wrong three times and is used up. Have the station "
                      "armed again, and use the new code.",
                {}};
    case PairRefusal::NotArmed:
        return {ErrorCode::Refused,
                "The station is not waiting for a device: nobody armed it, or the code was used or "
                "is older than five minutes. Arm it again.",
                {}};
    case PairRefusal::DigitsTaken:
        return {ErrorCode::AlreadyThere,
                "The station knows another device with the same digits. This journal seems to be a "
                "copy: start a new journal on this device.",
                {}};
    case PairRefusal::Version:
        return {ErrorCode::WrongVersion,
                "The device and the station speak different versions of the sync. Update the older "
                "of the two programs.",
                {}};
    case PairRefusal::Failed:
        break;
    }
    return {ErrorCode::Io,
            "The station could not write the device down. Check its disk, and pair again.",
            {}};
}

} // namespace

void Arming::arm(Millis now, PairingSecrets secrets, char letter) {
    secrets_ = std::move(secrets);
    until_ = now + kArmedMs;
    triesLeft_ = kPairingTries;
    letter_ = letter;
    isArmed_ = true;
}

Arming::Outcome Arming::tryProof(Millis now, const PairHello& hello, const Binding& binding) {
    if (!isArmed(now)) {
        return Outcome::NotArmed;
    }
    const Digest right = deviceProof(secret(hello.kind), binding, hello.letter, hello.device);
    if (sameInConstantTime(right, hello.proof)) {
        return Outcome::Right;
    }
    --triesLeft_;
    if (triesLeft_ == 0) {
        disarm();
    }
    return Outcome::Wrong;
}

PairingStation::PairingStation(Arming& arming, Setup setup, Millis now)
    : arming_(arming),
      setup_(std::move(setup)),
      startedAt_(now) {}

PairActions PairingStation::refuse(PairRefusal refusal) {
    isOver_ = true;
    const unsigned tries = refusal == PairRefusal::WrongCode ? arming_.triesLeft() : 0;
    PairActions actions;
    actions.emplace_back(PairSend{
        encode(PairNo{static_cast<std::uint8_t>(refusal), static_cast<std::uint8_t>(tries)})});
    actions.emplace_back(PairClose{Status{refusalError(refusal, tries)}});
    return actions;
}

PairActions PairingStation::onBytes(BytesView bytes, Millis now) {
    if (isOver_ || isRegistering_) {
        return {};
    }
    reader_.append(bytes);
    const auto frame = reader_.next();
    if (!frame && !reader_.isBroken()) {
        return {};
    }
    const auto hello =
        frame && frame->is(FrameType::PairHello) ? decodePairHello(frame->payload) : std::nullopt;
    if (!hello) {
        isOver_ = true;
        return {PairClose{Status{brokenPairing()}}};
    }
    return onHello(*hello, now);
}

PairActions PairingStation::onHello(const PairHello& hello, Millis now) {
    if (hello.leastVersion > kGreatestVersion || hello.greatestVersion < kLeastVersion) {
        return refuse(PairRefusal::Version);
    }
    switch (arming_.tryProof(now, hello, setup_.binding)) {
    case Arming::Outcome::NotArmed:
        return refuse(PairRefusal::NotArmed);
    case Arming::Outcome::Wrong:
        return refuse(PairRefusal::WrongCode);
    case Arming::Outcome::Right:
        break;
    }
    hello_ = hello;
    proof_ =
        stationProof(arming_.secret(hello.kind), setup_.binding, arming_.letter(), hello.device);
    hello_.letter = arming_.letter();
    // One code takes in one device, also where a second one proves it at the same moment.
    arming_.disarm();
    isRegistering_ = true;
    return {PairRegister{
        NewDevice{setup_.binding.deviceKey, hello_.letter, hello_.device, hello_.name}}};
}

PairActions PairingStation::onRegistered(const Result<HistoryId>& history) {
    if (isOver_) {
        return {};
    }
    if (!history) {
        return refuse(history.error().code == ErrorCode::AlreadyThere ? PairRefusal::DigitsTaken
                                                                      : PairRefusal::Failed);
    }
    isOver_ = true;
    PairActions actions;
    actions.emplace_back(PairSend{
        encode(PairOk{kGreatestVersion, hello_.letter, *history, proof_, setup_.stationName})});
    actions.emplace_back(PairClose{Status{}});
    return actions;
}

PairActions PairingStation::onTick(Millis now) {
    if (isOver_ || isRegistering_ || now - startedAt_ < kFirstFrameMs) {
        return {};
    }
    isOver_ = true;
    return {PairClose{Status{slowPairing()}}};
}

PairingDevice::PairingDevice(Setup setup, Millis now) : setup_(std::move(setup)), startedAt_(now) {}

PairActions PairingDevice::start() {
    PairHello hello;
    hello.letter = setup_.letter;
    hello.device = setup_.device;
    hello.kind = setup_.kind;
    hello.proof = deviceProof(setup_.secret, setup_.binding, setup_.letter, setup_.device);
    hello.name = setup_.name;
    return {PairSend{encode(hello)}};
}

PairActions PairingDevice::close(Status status) {
    isOver_ = true;
    return {PairClose{std::move(status)}};
}

PairActions PairingDevice::onOk(const PairOk& ok) {
    const Digest right = stationProof(setup_.secret, setup_.binding, ok.letter, setup_.device);
    if (!sameInConstantTime(right, ok.proof)) {
        return close(
            Error{ErrorCode::WrongKey,
                  "What answered does not know the code, so it is not your station. Nothing "
                  "was sent; check the address.",
                  {}});
    }
    paired_ = {ok.letter, setup_.binding.stationKey, ok.stationName, ok.history};
    return close({});
}

PairActions PairingDevice::onBytes(BytesView bytes, Millis /*now*/) {
    if (isOver_) {
        return {};
    }
    reader_.append(bytes);
    const auto frame = reader_.next();
    if (!frame && !reader_.isBroken()) {
        return {};
    }
    if (frame && frame->is(FrameType::PairOk)) {
        if (const auto ok = decodePairOk(frame->payload)) {
            return onOk(*ok);
        }
    } else if (frame && frame->is(FrameType::PairNo)) {
        if (const auto no = decodePairNo(frame->payload)) {
            return close(refusalError(static_cast<PairRefusal>(no->refusal), no->triesLeft));
        }
    }
    return close(brokenPairing());
}

PairActions PairingDevice::onTick(Millis now) {
    if (isOver_ || now - startedAt_ < kIdleMs) {
        return {};
    }
    return close(slowPairing());
}

} // namespace bullace::sync
