// The messages of a sync: what each frame's payload says. PROTOCOL.md gives them to the byte.
#pragma once

#include "core/base/bytes.hpp"
#include "core/journal/exchange.hpp"
#include "sync/protocol/wire.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::sync {

// The client's first word. Its first two bytes keep their meaning in every version.
struct Hello {
    std::uint8_t leastVersion = 0;
    std::uint8_t greatestVersion = 0;
    char letter = 't'; // of the device, as paired
    std::uint64_t device = 0;
    HistoryId knownHistory{}; // of this station's database at the last whole sync; zero: none
    std::int64_t wallMs = 0;  // the client's clock now, UTC
    bool lacksPhotos = false;
    journal::Vector ends; // strictly ascending
};

// What the station says of itself in both of its answers.
struct StationWord {
    std::uint8_t version = 0;
    HistoryId history{};
    std::int64_t wallMs = 0;
    std::uint32_t greatestEpoch = 0; // of the device's digits, whatever the letter; 0: none known
    bool lacksPhotos = false;
};

// Both hold the same entries.
struct Equal {
    StationWord station;
};

struct HelloReply {
    StationWord station;
    bool isRelay = false;   // the client shall send other devices' origins too
    std::vector<bool> held; // for each end of the client's, in its order: the station holds it
    journal::Vector ends;   // the station's, of all origins whose ends differ; strictly ascending
};

// Which ends of the reply the client does not hold: their numbers from 0, strictly ascending. All
// others it holds.
struct Want {
    std::vector<std::uint32_t> ends;
};

struct Ack {
    std::uint64_t number = 0;
    std::vector<journal::RunReport> runs;
};

struct End {
    std::uint64_t batches = 0;
    std::uint64_t entries = 0;
};

// Asks for one piece of a photo, from `offset` on.
struct PieceWant {
    Digest photo;
    std::uint64_t offset = 0;
};

// The answer, in the order of asking. total 0: the photo is not here, and there are no bytes.
struct Piece {
    Digest photo;
    std::uint64_t total = 0;
    std::uint64_t offset = 0;
    Bytes bytes;
};

enum class Reason : std::uint8_t {
    Closing = 1,  // the station is being stopped
    NoRoom = 2,   // its disk is full; try again later
    Version = 3,  // no version in common
    Revoked = 4,  // the office took the device off its list
    Replaced = 5, // a newer session of the same device goes on instead
    BrokenFrame = 6,
    TooSlow = 7,
    Failed = 8,   // it could not read or write its own journal
    NotYours = 9, // the letter and digits, or a pushed origin, are not this device's
    Crowded = 10, // too many connections; try again later
};

struct Goodbye {
    std::uint8_t reason = 0; // of Reason; others may come with a later version
    std::string text;        // one or two sentences for a person
};

// Whole frames, ready to be sent.
[[nodiscard]] Bytes encode(const Hello& message);
[[nodiscard]] Bytes encode(const Equal& message);
[[nodiscard]] Bytes encode(const HelloReply& message);
[[nodiscard]] Bytes encode(const Want& message);
[[nodiscard]] Bytes encodeBatch(std::uint64_t number, const journal::Batch& batch);
[[nodiscard]] Bytes encode(const Ack& message);
[[nodiscard]] Bytes encode(const End& message);
[[nodiscard]] Bytes encodeDone();
[[nodiscard]] Bytes encode(const PieceWant& message);
[[nodiscard]] Bytes encode(const Piece& message);
[[nodiscard]] Bytes encode(const Goodbye& message);

struct NumberedBatch {
    std::uint64_t number = 0;
    std::uint64_t entries = 0;
    journal::Batch runs;
};

// Payloads taken apart; nothing where a payload is not exactly of the form or beyond a limit.
// A Hello with no version of ours is read no further than its versions.
[[nodiscard]] std::optional<Hello> decodeHello(BytesView payload);
[[nodiscard]] std::optional<Equal> decodeEqual(BytesView payload);
[[nodiscard]] std::optional<HelloReply> decodeHelloReply(BytesView payload);
[[nodiscard]] std::optional<Want> decodeWant(BytesView payload);
[[nodiscard]] std::optional<NumberedBatch> decodeBatch(BytesView payload);
[[nodiscard]] std::optional<Ack> decodeAck(BytesView payload);
[[nodiscard]] std::optional<End> decodeEnd(BytesView payload);
[[nodiscard]] std::optional<PieceWant> decodePieceWant(BytesView payload);
[[nodiscard]] std::optional<Piece> decodePiece(BytesView payload);
[[nodiscard]] std::optional<Goodbye> decodeGoodbye(BytesView payload);

} // namespace bullace::sync
