#include "sync/protocol/pairing.hpp"

#include "sync/protocol/pairing_session.hpp"

#include <doctest/doctest.h>

#include <cctype>

using namespace bullace;
using namespace bullace::sync;

namespace {

constexpr std::uint64_t kDevice = 0x00c5a91be2f0417d;

PairingSecrets someSecrets() {
    return {Bytes("0123456789"), Bytes("0123456789abcdef")};
}

Binding someBinding() {
    return {sha256("exporter"), sha256("device key"), sha256("station key")};
}

struct Attempt {
    SecretKind kind = SecretKind::Typed;
    Bytes secret;
    Binding device = someBinding();
    Millis now = 1'000;
    Result<HistoryId> registered = HistoryId{};
};

struct Outcome {
    std::optional<Status> device;
    std::optional<Status> station;
    std::optional<NewDevice> written;
    Paired paired;
};

Outcome pair(Arming& arming, const Attempt& attempt) {
    PairingStation station(arming, {someBinding(), "Invented Station"}, attempt.now);
    PairingDevice device(
        {attempt.device, 't', kDevice, "tablet of the north rows", attempt.kind, attempt.secret},
        attempt.now);
    Outcome outcome;
    const auto carry = [&](const PairActions& actions, std::optional<Status>& closed) {
        Bytes sent;
        for (const PairAction& action : actions) {
            if (const auto* send = std::get_if<PairSend>(&action)) {
                sent += send->bytes;
            } else if (const auto* close = std::get_if<PairClose>(&action)) {
                closed = close->status;
            } else {
                outcome.written = std::get<PairRegister>(action).device;
            }
        }
        return sent;
    };
    const Bytes hello = carry(device.start(), outcome.device);
    Bytes answer = carry(station.onBytes(hello, attempt.now), outcome.station);
    if (outcome.written) {
        answer += carry(station.onRegistered(attempt.registered), outcome.station);
    }
    carry(device.onBytes(answer, attempt.now), outcome.device);
    outcome.paired = device.paired();
    REQUIRE(outcome.device);
    REQUIRE(outcome.station);
    return outcome;
}

} // namespace

TEST_CASE("a typed code is read as people write it") {
    const Bytes secret("\x00\x01\x7F\x80\xFF\x10\x42\x99\xAB\xCD", 10);
    const std::string code = spellTypedCode(secret);
    CHECK(code.size() == 19);
    CHECK(readTypedCode(code) == secret);
    std::string loose = " ";
    for (const char c : code) {
        loose += c == 'O'   ? '0'
                 : c == 'I' ? '1'
                 : c == 'B' ? '8'
                 : c == '-' ? ' '
                            : static_cast<char>(std::tolower(c));
    }
    CHECK(readTypedCode(loose) == secret);
    CHECK_FALSE(readTypedCode(code.substr(1)));
    CHECK_FALSE(readTypedCode(code + "A"));
    CHECK_FALSE(readTypedCode("9999-9999-9999-9999"));
    CHECK_FALSE(readTypedCode(""));
}

TEST_CASE("base-32 is that of RFC 4648") {
    // RFC 4648 §10: "foobar" is MZXW6YTBOI; with "fooo" behind it there are ten bytes.
    CHECK(spellTypedCode("foobarfooo") == "MZXW-6YTB-OJTG-633P");
}

TEST_CASE("what the station's square says is read back, and nothing else is") {
    QrOffer offer{
        {"192.168.4.20:47180", "[fe80::1]:47180"}, sha256("key"), Bytes("0123456789abcdef")};
    const auto read = readQrOffer(offer.text());
    REQUIRE(read);
    CHECK(read->addresses == offer.addresses);
    CHECK(read->stationKey == offer.stationKey);
    CHECK(read->secret == offer.secret);
    CHECK_FALSE(readQrOffer(""));
    CHECK_FALSE(readQrOffer("bullace1|||"));
    CHECK_FALSE(readQrOffer(offer.text() + "A"));
    CHECK_FALSE(readQrOffer("bullace2" + offer.text().substr(8)));
}

TEST_CASE("the right code pairs a device, with the letter that the office gave") {
    for (const SecretKind kind : {SecretKind::Typed, SecretKind::Qr}) {
        Arming arming;
        arming.arm(0, someSecrets(), 's');
        const Outcome outcome = pair(arming, {.kind = kind, .secret = Bytes(arming.secret(kind))});
        CHECK(outcome.device->ok());
        CHECK(outcome.station->ok());
        REQUIRE(outcome.written);
        CHECK(outcome.written->letter == 's');
        CHECK(outcome.written->device == kDevice);
        CHECK(outcome.written->key == someBinding().deviceKey);
        CHECK(outcome.paired.letter == 's');
        CHECK(outcome.paired.stationName == "Invented Station");
        CHECK(outcome.paired.stationKey == someBinding().stationKey);
    }
}

TEST_CASE("a used code pairs no second device") {
    Arming arming;
    arming.arm(0, someSecrets(), 't');
    CHECK(pair(arming, {.secret = someSecrets().typed}).device->ok());
    const Outcome second = pair(arming, {.secret = someSecrets().typed});
    CHECK(second.device->error().code == ErrorCode::Refused);
    CHECK_FALSE(second.written);
}

TEST_CASE("a code is too late after five minutes") {
    Arming arming;
    arming.arm(0, someSecrets(), 't');
    CHECK(arming.isArmed(kArmedMs - 1));
    CHECK_FALSE(arming.isArmed(kArmedMs));
    const Outcome late = pair(arming, {.secret = someSecrets().typed, .now = kArmedMs});
    CHECK_FALSE(late.device->ok());
    CHECK_FALSE(late.written);
}

TEST_CASE("three wrong tries end the code, also for who knows it then") {
    Arming arming;
    arming.arm(0, someSecrets(), 't');
    for (unsigned left = 3; left > 0; --left) {
        CHECK(arming.triesLeft() == left);
        const Outcome wrong = pair(arming, {.secret = Bytes("9876543210")});
        CHECK(wrong.device->error().code == ErrorCode::Refused);
        CHECK_FALSE(wrong.written);
    }
    CHECK_FALSE(arming.isArmed(1'000));
    CHECK_FALSE(pair(arming, {.secret = someSecrets().typed}).device->ok());
}

TEST_CASE("someone between the two, with a key of his own on each side, gets nothing") {
    Arming arming;
    arming.arm(0, someSecrets(), 't');
    Attempt attempt{.secret = someSecrets().typed};
    SUBCASE("another connection") {
        attempt.device.exporter = sha256("another");
    }
    SUBCASE("another station key") {
        attempt.device.stationKey = sha256("his");
    }
    SUBCASE("another device key") {
        attempt.device.deviceKey = sha256("his");
    }
    const Outcome outcome = pair(arming, attempt);
    CHECK_FALSE(outcome.device->ok());
    CHECK_FALSE(outcome.written);
}

TEST_CASE("a station that does not know the code is no station") {
    PairingDevice device({someBinding(), 't', kDevice, "tablet", SecretKind::Typed, "0123456789"},
                         0);
    PairOk ok;
    ok.proof = stationProof("9876543210", someBinding(), 't', kDevice);
    const auto actions = device.onBytes(encode(ok), 0);
    REQUIRE(actions.size() == 1);
    CHECK(std::get<PairClose>(actions[0]).status.error().code == ErrorCode::WrongKey);
}

TEST_CASE("digits that belong to another key are refused") {
    Arming arming;
    arming.arm(0, someSecrets(), 't');
    const Outcome outcome = pair(
        arming,
        {.secret = someSecrets().typed,
         .registered = Error{ErrorCode::AlreadyThere, "Another device has these digits.", {}}});
    CHECK(outcome.device->error().code == ErrorCode::AlreadyThere);
}

TEST_CASE("pairing bytes of any shape are refused in peace") {
    Arming arming;
    for (const Bytes& bytes : {Bytes("\x00\x00\x10\x01", 4),
                               Bytes("\0\0\0\1\x10", 5),
                               Bytes("\0\0\0\1\x01", 5),
                               Bytes("GET / HTTP/1.1\r\n\r\n")}) {
        arming.arm(0, someSecrets(), 't');
        PairingStation station(arming, {someBinding(), "Invented Station"}, 0);
        const auto actions = station.onBytes(bytes, 0);
        REQUIRE(actions.size() == 1);
        CHECK_FALSE(std::get<PairClose>(actions[0]).status.ok());
        CHECK(arming.triesLeft() == 3);
    }
    PairingStation silent(arming, {someBinding(), "Invented Station"}, 0);
    CHECK(silent.onTick(kFirstFrameMs - 1).empty());
    CHECK(silent.onTick(kFirstFrameMs).size() == 1);
}
