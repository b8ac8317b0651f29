// A device's side of the network: one sync, or one pairing, from beginning to end.
#pragma once

#include "core/base/result.hpp"
#include "sync/net/identity.hpp"
#include "sync/protocol/pairing_session.hpp"
#include "sync/protocol/replica.hpp"
#include "sync/protocol/summary.hpp"

#include <atomic>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace bullace::sync::net {

// Stops a sync or a pairing from another thread; used once.
class Cancel {
public:
    void cancel() { isCancelled_ = true; }
    [[nodiscard]] bool isCancelled() const { return isCancelled_; }
    // Breaks the line off where it is, without a word to the station, as a lost network does: for
    // showing and testing that the next sync goes on. Looked at after each step of a sync.
    void cut() { isCut_ = true; }
    [[nodiscard]] bool isCut() const { return isCut_; }

private:
    std::atomic<bool> isCancelled_ = false;
    std::atomic<bool> isCut_ = false;
};

struct StationPlace {
    std::string host;
    std::uint16_t port = kDefaultPort;
};
// "HOST:PORT", "HOST", "[IPV6]:PORT"; nothing where it is none of these.
[[nodiscard]] std::optional<StationPlace> readPlace(std::string_view text);

struct SyncOptions {
    StationPlace place;
    Identity identity;
    Digest stationKey; // as it was paired
    char letter = 't'; // likewise
    std::uint64_t device = 0;
    journal::Origin current;  // what the device writes into
    HistoryId knownHistory{}; // of the last complete sync with this station; zero: none
};

// The summary is of use also where the sync failed: needsNewEpoch above all.
struct SyncOutcome {
    Status status;
    Summary summary;
};

// Syncs, and returns when it is over. The replica is used on the calling thread, and so is
// `progress`, which is called after every step. Errors: Network (nobody there, the line broke),
// WrongKey (a hard stop: nothing was sent), WrongVersion, Refused (not paired, revoked), DiskFull,
// Cancelled, and what the replica says.
[[nodiscard]] SyncOutcome syncOnce(const SyncOptions& options,
                                   Replica& replica,
                                   const std::function<void(const Summary&)>& progress,
                                   const Cancel& cancel);

struct PairOptions {
    StationPlace place;
    Identity identity;
    std::optional<Digest> stationKey; // known from a QR code
    SecretKind kind = SecretKind::Typed;
    Bytes secret;
    char letter = 't'; // as the device would like it
    std::uint64_t device = 0;
    std::string name; // for people; at most 128 bytes
};

// Pairs. Nothing of the journal is sent. Errors: as of syncOnce(); Refused (wrong, used or late
// code, or not armed), AlreadyThere (the station knows another device with these digits).
[[nodiscard]] Result<Paired> pair(const PairOptions& options, const Cancel& cancel);

} // namespace bullace::sync::net
