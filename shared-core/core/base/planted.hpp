// Deliberate bugs for measuring the tests: each can be switched on by the simulator, and must then
// be caught.
//
// Only code compiled with BULLACE_PLANTED (the test variants of the libraries) has the switch; in
// programs the function is the constant false and costs nothing.
#pragma once

namespace bullace {

enum class Bug {
    None,
    AckBeforeCommit,       // a batch is acknowledged before it is stored
    SkipWithoutDigest,     // a known (origin, seq) is skipped without comparing its digest
    SeqOutsideTransaction, // seq is counted in memory, and goes on after a failed commit
    HeadsByClock,          // the head is the entry with the latest clock
    VectorPastHole,        // the vector tells of entries behind a batch that was not stored
    EdgeCycleTaken,        // an edge counts though its target's count is not smaller
    RetractionDropped,     // a retraction is stored, but is no head
    GroupHalfApplied,      // entries of an incomplete group count
    UndoIgnoresCounts,     // an undo takes effect though it was itself undone
    UnlinkedAccepted,      // entries that do not follow from what is held are taken
    ForkBranchDropped,     // the second branch of a fork is thrown away
    EpochNotTaken,         // a restored device goes on in its old epoch
    ResendDropsRest, // after a broken sync the sender goes on behind what it sent, not what was
                     // stored
};

#ifdef BULLACE_PLANTED
extern thread_local Bug plantedBug;
inline bool planted(Bug bug) {
    return plantedBug == bug;
}
#else
constexpr bool planted(Bug /*bug*/) {
    return false;
}
#endif

} // namespace bullace
