// What people write: observations, edits, retractions, undoing, groups, rulings and rules, all from
// chance.
#pragma once

#include "sim/ledger.hpp"

#include <string>
#include <vector>

namespace bullace::test {

struct Act {
    std::vector<store::Draft> drafts;
    store::Grouping grouping = store::Grouping::Single;
    std::string words; // for the trace
};

class Writer {
public:
    Writer(Dice& dice, const Ledger& ledger) : dice_(dice), ledger_(ledger) {}

    // One act that this machine's journal must take.
    [[nodiscard]] Act act(Machine& machine);
    // A clock: right, absent, or wild.
    [[nodiscard]] std::optional<journal::Wall> wall();
    // The entries of a device that keeps to no rule, in the order of their seq: edges in cycles and
    // to anywhere, groups with holes, kinds and letters that nobody knows, forks.
    [[nodiscard]] std::vector<const LedgerEntry*> strangerEntries(Ledger& ledger);

private:
    [[nodiscard]] std::string subjectFor(const Machine& machine);
    [[nodiscard]] Bytes valueFor(const std::string& subject);
    [[nodiscard]] Bytes observationOf(const std::string& descriptor);
    [[nodiscard]] Bytes bookRule();
    [[nodiscard]] store::Draft draft(Machine& machine);
    [[nodiscard]] bool retractOrEdit(Machine& machine, store::Draft& draft);
    [[nodiscard]] bool undo(Machine& machine, store::Draft& draft);
    [[nodiscard]] bool ruling(Machine& machine, store::Draft& draft);
    [[nodiscard]] journal::Entry strangerEntry(const journal::Origin& origin, std::uint64_t seq);

    Dice& dice_;
    const Ledger& ledger_;
};

} // namespace bullace::test
