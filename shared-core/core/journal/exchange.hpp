// What two replicas tell one another of their journals: how far they reach, and runs of entries.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/digest.hpp"
#include "core/journal/origin.hpp"

#include <cstdint>
#include <vector>

namespace bullace::journal {

// The end of one branch of an origin: its last entry, and by the chain everything before it.
struct BranchEnd {
    Origin origin;
    std::uint64_t seq = 0;
    Digest digest;

    friend bool operator==(const BranchEnd&, const BranchEnd&) = default;
    friend auto operator<=>(const BranchEnd&, const BranchEnd&) = default;
};

// All ends that a replica holds, ascending by (origin, seq, digest). An origin has one, or more
// where it is forked.
using Vector = std::vector<BranchEnd>;

// A stretch of an origin that is its own: the whole origin, or, where it is forked, the part from
// where a branch leaves the one before. Segments of an origin are listed so that what an entry
// follows on stands in the same or an earlier one.
struct Segment {
    Origin origin;
    std::uint64_t first = 1;
    std::uint64_t last = 0;
    Digest lastDigest;
};

// A stretch that is to be sent: the segment from seq `from` (segment.first ≤ from ≤ segment.last)
// on.
struct Part {
    Segment segment;
    std::uint64_t from = 1;
};

// Consecutive entries of one branch, from seq `first` on. The digest is that of the last: whoever
// holds what stands before `first` computes the chain through the bytes and must arrive there, so
// that neither a gap nor a changed byte gets in.
struct Run {
    Origin origin;
    std::uint64_t first = 1;
    std::vector<Bytes> entries;
    Digest lastDigest;

    [[nodiscard]] std::uint64_t last() const { return first + entries.size() - 1; }
    [[nodiscard]] BranchEnd end() const { return {origin, last(), lastDigest}; }
};

// Entries that are stored together, in one transaction.
using Batch = std::vector<Run>;

// What became of one run.
enum class RunOutcome {
    Taken,    // now held, at least one entry of it new
    Held,     // all of it was held already
    Unlinked, // does not follow from anything held: nothing taken, the bytes lie apart, the origin
              // ends for this sync
    Apart,    // waits apart for someone at the office (`s` entries that came back after a restore)
};

struct RunReport {
    RunOutcome outcome = RunOutcome::Unlinked;
    std::uint64_t added = 0; // entries that are new here
    bool isForked = false;   // the origin has, by this run, more than one branch
};

} // namespace bullace::journal
