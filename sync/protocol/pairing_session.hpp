// Both sides of a pairing as state machines, and the station's arming. Drivers treat them like a
// Session: bytes and ticks in, actions out.
#pragma once

#include "core/base/result.hpp"
#include "sync/protocol/frames.hpp"
#include "sync/protocol/pairing.hpp"

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace bullace::sync {

struct PairingSecrets {
    Bytes typed; // 10 random bytes
    Bytes qr;    // 16 random bytes; either pairs, and both end together
};

// The station's readiness to take in one device: five minutes, three wrong tries, one device.
class Arming {
public:
    // `letter`: what the device will be, 't' or 's'.
    void arm(Millis now, PairingSecrets secrets, char letter);
    void disarm() { isArmed_ = false; }

    [[nodiscard]] bool isArmed(Millis now) const { return isArmed_ && now < until_; }
    // Milliseconds until the code is too late; 0 where nothing is armed.
    [[nodiscard]] Millis left(Millis now) const { return isArmed(now) ? until_ - now : 0; }
    [[nodiscard]] unsigned triesLeft() const { return triesLeft_; }
    [[nodiscard]] char letter() const { return letter_; }
    [[nodiscard]] BytesView secret(SecretKind kind) const {
        return kind == SecretKind::Qr ? secrets_.qr : secrets_.typed;
    }

    enum class Outcome { Right, Wrong, NotArmed };
    // A wrong proof costs a try; the third ends the code.
    [[nodiscard]] Outcome tryProof(Millis now, const PairHello& hello, const Binding& binding);

private:
    PairingSecrets secrets_;
    Millis until_ = 0;
    unsigned triesLeft_ = 0;
    char letter_ = 't';
    bool isArmed_ = false;
};

// A device as the station has to write it down, durably, before it says yes.
struct NewDevice {
    Digest key; // SHA-256 of its public key
    char letter = 't';
    std::uint64_t device = 0;
    std::string name;
};

struct PairSend {
    Bytes bytes;
};
struct PairRegister {
    NewDevice device;
};
struct PairClose {
    Status status;
};
using PairAction = std::variant<PairSend, PairRegister, PairClose>;
using PairActions = std::vector<PairAction>;

class PairingStation {
public:
    struct Setup {
        Binding binding;
        std::string stationName;
    };
    // `arming` outlives this.
    PairingStation(Arming& arming, Setup setup, Millis now);

    PairActions onBytes(BytesView bytes, Millis now);
    // The device is written down; the station's history. Error AlreadyThere: another key has the
    // digits.
    PairActions onRegistered(const Result<HistoryId>& history);
    PairActions onTick(Millis now);

private:
    PairActions onHello(const PairHello& hello, Millis now);
    PairActions refuse(PairRefusal refusal);

    Arming& arming_;
    Setup setup_;
    Millis startedAt_;
    FrameReader reader_{kFrameBytesUnpaired};
    PairHello hello_;
    Digest proof_;
    bool isRegistering_ = false;
    bool isOver_ = false;
};

// What a device remembers of a pairing.
struct Paired {
    char letter = 't';
    Digest stationKey;
    std::string stationName;
    HistoryId history{}; // to be shown; what is remembered for relaying comes from whole syncs only
};

class PairingDevice {
public:
    struct Setup {
        Binding binding;
        char letter = 't';
        std::uint64_t device = 0;
        std::string name;
        SecretKind kind = SecretKind::Typed;
        Bytes secret;
    };
    PairingDevice(Setup setup, Millis now);

    PairActions start();
    PairActions onBytes(BytesView bytes, Millis now);
    PairActions onTick(Millis now);
    // After a Close that is ok.
    [[nodiscard]] const Paired& paired() const { return paired_; }

private:
    PairActions close(Status status);
    PairActions onOk(const PairOk& ok);

    Setup setup_;
    Millis startedAt_;
    FrameReader reader_{kFrameBytesUnpaired};
    Paired paired_;
    bool isOver_ = false;
};

} // namespace bullace::sync
