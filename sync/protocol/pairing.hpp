// Pairing: how a device and a station, with a one-time secret carried by a person, come to know
// each other's keys. The proofs are bound to the TLS connection and to both keys, so that whoever
// stands between the two gets nothing of use.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/digest.hpp"
#include "sync/protocol/limits.hpp"
#include "sync/protocol/wire.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::sync {

inline constexpr std::size_t kTypedSecretBytes = 10; // 80 bits: 16 characters
inline constexpr std::size_t kQrSecretBytes = 16;    // 128 bits

enum class SecretKind : std::uint8_t { Typed = 1, Qr = 2 };

// The typed code: RFC 4648 base-32 in four groups, "K7QM-2ZXA-…". `secret` has 10 bytes.
[[nodiscard]] std::string spellTypedCode(BytesView secret);
// Lower case, spaces and dashes anywhere, 0 for O, 1 for I and 8 for B are read too; anything else,
// or another number of characters, is nothing.
[[nodiscard]] std::optional<Bytes> readTypedCode(std::string_view text);

// What the station's QR code says: "bullace1|HOST:PORT,HOST:PORT|KEY HASH IN HEX|SECRET IN
// BASE-32".
struct QrOffer {
    std::vector<std::string> addresses; // 1 to 8, each at most 128 bytes, printable ASCII
    Digest stationKey;
    Bytes secret; // 16 bytes

    [[nodiscard]] std::string text() const;
};
[[nodiscard]] std::optional<QrOffer> readQrOffer(std::string_view text);

// What ties a proof to this one connection.
struct Binding {
    Digest exporter;   // 32 bytes of the TLS exporter "EXPORTER-bullace-pairing", without a context
    Digest deviceKey;  // SHA-256 of the device's public key (SPKI, DER)
    Digest stationKey; // likewise of the station's
};

// HMAC-SHA-256 under the secret of "bullace pair device 1", the exporter, the device's letter and
// digits as text (17 bytes), the device's and the station's key hash; the station's has "station"
// for "device".
[[nodiscard]] Digest
deviceProof(BytesView secret, const Binding& binding, char letter, std::uint64_t device);
[[nodiscard]] Digest
stationProof(BytesView secret, const Binding& binding, char letter, std::uint64_t device);

struct PairHello {
    std::uint8_t leastVersion = kLeastVersion;
    std::uint8_t greatestVersion = kGreatestVersion;
    char letter = 't'; // as the device would like it
    std::uint64_t device = 0;
    SecretKind kind = SecretKind::Typed;
    Digest proof;
    std::string name; // of the device, for people; at most 128 bytes
};

struct PairOk {
    std::uint8_t version = kGreatestVersion;
    char letter = 't'; // as the station grants it
    HistoryId history{};
    Digest proof;
    std::string stationName;
};

enum class PairRefusal : std::uint8_t {
    WrongCode = 1,
    NotArmed = 2,    // nobody armed it, or the code is too late, used or ended by wrong tries
    DigitsTaken = 3, // another key has these digits
    Version = 4,
    Failed = 5, // the station could not write the device down
};

struct PairNo {
    std::uint8_t refusal = 0; // of PairRefusal
    std::uint8_t triesLeft = 0;
};

[[nodiscard]] Bytes encode(const PairHello& message);
[[nodiscard]] Bytes encode(const PairOk& message);
[[nodiscard]] Bytes encode(const PairNo& message);
[[nodiscard]] std::optional<PairHello> decodePairHello(BytesView payload);
[[nodiscard]] std::optional<PairOk> decodePairOk(BytesView payload);
[[nodiscard]] std::optional<PairNo> decodePairNo(BytesView payload);

} // namespace bullace::sync
