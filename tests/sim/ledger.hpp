// Everything that was ever written in one simulated station, by whomever: the memory against which
// each machine's journal is held.
#pragma once

#include "sim/machine.hpp"

#include "support/naive_merge.hpp"

#include <deque>
#include <map>
#include <string>
#include <vector>

namespace bullace::test {

struct LedgerEntry {
    Mark mark;
    Bytes bytes;
    Digest before; // zero before seq 1
    NaiveEntry naive;
};

class Ledger {
public:
    // Nothing where no such entry was ever seen.
    [[nodiscard]] const LedgerEntry* find(const Digest& digest) const;
    [[nodiscard]] bool has(const journal::Place& place) const { return byPlace_.count(place) != 0; }
    [[nodiscard]] const std::vector<const LedgerEntry*>& all() const { return all_; }
    [[nodiscard]] std::uint32_t greatestEpoch(std::uint64_t device) const;

    // Adds an entry, if it is new; its predecessor has been added before. Throws a Violation where
    // the digest does not follow from any predecessor, or the bytes are others than before.
    const LedgerEntry& learn(BytesView bytes, const Digest& digest);

    // The marks of `count` entries that end with this one, as far as they are known.
    [[nodiscard]] std::vector<Mark> marksUpTo(const Mark& last, std::uint64_t count) const;

private:
    std::map<Digest, LedgerEntry> entries_;
    std::map<journal::Place, std::vector<Digest>> byPlace_;
    std::vector<const LedgerEntry*> all_;
    std::map<std::uint64_t, std::uint32_t> epochs_;
};

// Reads the whole journal of a machine and holds it against the ledger and its own vector: no entry
// changed, none of the promised missing, no hole, every end told. Gives what is there, in order.
std::vector<const LedgerEntry*> checkJournal(Machine& machine, Ledger& ledger);

// What the machine derives from these entries is what brute force makes of them.
void checkState(Machine& machine, const std::vector<const LedgerEntry*>& held);

// The store's own check finds nothing.
void checkVerify(Machine& machine);

[[nodiscard]] std::string exportOf(Machine& machine);
[[nodiscard]] std::string stateOf(Machine& machine);

} // namespace bullace::test
