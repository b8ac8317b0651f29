// Every bound and deadline of the sync, in one place. PROTOCOL.md lists the same numbers; a test
// compares them.
#pragma once

#include "core/journal/entry.hpp"
#include "core/journal/standing.hpp"

#include <cstddef>
#include <cstdint>

namespace bullace::sync {

// Moments and durations of the protocol: milliseconds of a clock that never runs backward.
using Millis = std::int64_t;

inline constexpr std::uint8_t kLeastVersion = 1;
inline constexpr std::uint8_t kGreatestVersion = 1;
inline constexpr std::uint16_t kDefaultPort = 47180;

// Frames: type and payload counted, the four bytes of the length not.
inline constexpr std::size_t kFrameBytesUnpaired = 4096;
inline constexpr std::size_t kFrameBytes = 524'288;
inline constexpr std::size_t kBatchBytes = 262'144;
inline constexpr std::size_t kBatchEntries = 2000;
inline constexpr std::size_t kBatchRuns = 256;
inline constexpr std::size_t kVectorEnds = 10'000;
inline constexpr std::size_t kPieceBytes = 65'536;
inline constexpr std::size_t kNameBytes = 128;
inline constexpr std::size_t kReasonBytes = 512;
using journal::kGreatestSeq;
inline constexpr std::uint64_t kGreatestPhotoBytes = std::uint64_t{1} << 30U;

// What may be under way in one session.
inline constexpr std::size_t kWindow = 4;       // batches sent and not yet acknowledged
inline constexpr std::size_t kStoresAtOnce = 2; // batches handed to the database, not yet stored
inline constexpr std::size_t kPiecesAtOnce = 4; // pieces of photos asked for and not yet here
inline constexpr std::size_t kOutboundBytes = 1'310'720; // beyond it nothing more is read

// Deadlines.
inline constexpr Millis kHandshakeMs = 10'000;
inline constexpr Millis kFirstFrameMs = 5'000;
inline constexpr Millis kIdleMs = 60'000;
inline constexpr Millis kProgressMs = 60'000; // what waits to be written must shrink within it
inline constexpr Millis kSlowFrameMs = 20'000;
inline constexpr std::size_t kSlowFrameBytes = 20'480; // at least this in kSlowFrameMs
inline constexpr Millis kShutdownMs = 2'000;
inline constexpr Millis kStopMs = 10'000;

// The server as a whole.
inline constexpr std::size_t kConnections = 64;
inline constexpr std::size_t kUnknownPerAddress = 4;
inline constexpr std::size_t kDatabaseQueue = 8;
inline constexpr std::size_t kFailuresPerMinute = 10;
inline constexpr Millis kSilenceMs = 60'000;
inline constexpr Millis kAcceptPauseMs = 100;
inline constexpr std::size_t kReadBytes = 65'536; // taken from a connection at once

// Pairing.
inline constexpr Millis kArmedMs = 300'000;
inline constexpr unsigned kPairingTries = 3;

// The most that one session can hold in memory. An entry as an object of its own costs up to as
// much again as its bytes; a vector's end and a part to send take 64 and 88 bytes.
inline constexpr std::size_t kSessionBytes =
    kFrameBytes + kReadBytes +        // what came and is not yet a whole frame
    2 * kStoresAtOnce * kBatchBytes + // batches on their way into the database
    kOutboundBytes +                  // what waits to be written
    kVectorEnds * 88 +                // the parts to send
    32'768;                           // TLS records and the session itself
inline constexpr std::size_t kServerBytes =
    kConnections * kSessionBytes + 2 * kDatabaseQueue * kBatchBytes;
static_assert(kServerBytes < std::size_t{256} * 1024 * 1024);
static_assert(journal::kGreatestEntryBytes + 128 < kBatchBytes);
static_assert(kVectorEnds * 48 + 4096 < kFrameBytes);
static_assert((kWindow + 1) * kBatchBytes <= kOutboundBytes);

} // namespace bullace::sync
