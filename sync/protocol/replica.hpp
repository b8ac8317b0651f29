// What a sync asks of the database behind it, be it a device's journal or the station's.
#pragma once

#include "core/base/digest.hpp"
#include "core/base/result.hpp"
#include "core/journal/exchange.hpp"
#include "sync/protocol/wire.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace bullace::sync {

// How entries come in. Whose entries a device may push is checked before; what counts is not.
enum class Way {
    FromStation, // on a device
    FromDevice,  // on the station: a device pushes its own epochs
    Relayed,     // on the station: a device sends what a restored database has lost; `s` entries
                 // that are not of its own digits wait apart
};

struct Sender {
    Way way = Way::FromStation;
    char letter = 't'; // of the device that sends; without meaning where the station does
    std::uint64_t device = 0;
};

using journal::Part;

// A photo that entries name and that is not whole here; `have` bytes of it are.
struct LackedPhoto {
    Digest photo;
    std::uint64_t have = 0;
};

struct PhotoPiece {
    std::uint64_t total = 0; // bytes of the whole photo; 0: not held (whole) here
    Bytes bytes;
};

// One database. All calls come from one thread, one after the other; each leaves the database as it
// was if it fails. The errors' messages are shown to people.
class Replica {
public:
    virtual ~Replica() = default;
    Replica() = default;
    Replica(const Replica&) = delete;
    Replica& operator=(const Replica&) = delete;
    Replica(Replica&&) = delete;
    Replica& operator=(Replica&&) = delete;

    // The random identity of this life of the database; on a device any constant.
    virtual Result<HistoryId> history() = 0;

    // All ends, ascending; at most kVectorEnds of them can be synced. Nothing that lies apart.
    virtual Result<journal::Vector> vector() = 0;

    // Whether the entry (origin, seq) with just this digest is held, at an end or further back.
    virtual Result<bool> holds(const journal::BranchEnd& end) = 0;

    // On the station, before it answers: ends that a client holds and this database does not. One
    // that finds its own journal among them, as far as it has got or further, is an older copy of
    // itself that nobody noticed: it takes a new epoch and a new history.
    virtual Status onUnknownEnds(const journal::Vector& /*ends*/) { return {}; }

    // The greatest epoch that any entry held, or lying apart, has with these digits, whatever the
    // letter; 0 where there is none.
    virtual Result<std::uint32_t> greatestEpoch(std::uint64_t device) = 0;

    // What somebody lacks of an origin who holds the given ends and, by the chain, all before them.
    // Ends that are not held here say nothing. The parts stand in such an order that what an entry
    // follows on is sent before it or is held there. More than is lacking may be given (the whole
    // origin where it is forked), never less.
    virtual Result<std::vector<Part>> missing(const journal::Origin& origin,
                                              std::span<const journal::BranchEnd> held) = 0;

    // The entries of a segment from seq `from` on: at least one, at most `mostEntries`, and after
    // the first only such as keep the sum of the bytes within `mostBytes`. Error Damaged ends that
    // origin for this sync only, any other the sync.
    virtual Result<journal::Run> readRun(const journal::Segment& segment,
                                         std::uint64_t from,
                                         std::size_t mostEntries,
                                         std::size_t mostBytes) = 0;

    // Checks and stores the runs and all that is derived from them in one transaction, durable when
    // this returns; one report for each run, in order. Runs can be repeated, overlap, be unlinked.
    // An error (DiskFull among them) stores nothing.
    virtual Result<std::vector<journal::RunReport>> store(const journal::Batch& batch,
                                                          const Sender& sender) = 0;

    // Photos that are lacking, ascending by SHA-256, behind `after`; at most `most`.
    virtual Result<std::vector<LackedPhoto>> lackedPhotos(const Digest& after,
                                                          std::size_t most) = 0;

    // Up to `most` bytes of a photo held here, from `offset` on.
    virtual Result<PhotoPiece>
    readPiece(const Digest& photo, std::uint64_t offset, std::size_t most) = 0;

    // Puts a piece at the end of what is here of the photo (`offset` bytes). The last piece checks
    // the whole against its SHA-256: error Damaged throws away what was here of it, and it will be
    // asked for again from its beginning at the next sync.
    virtual Status
    storePiece(const Digest& photo, std::uint64_t total, std::uint64_t offset, BytesView bytes) = 0;
};

} // namespace bullace::sync
