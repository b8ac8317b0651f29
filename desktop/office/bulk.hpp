// Settling many conflicts of one kind at once: a condition, what it would do to each, a handful
// that a person decides by hand first, and one act that can be undone for ever.
#pragma once

#include "office/case_file.hpp"
#include "office/settling.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::office {

// What is taken of each conflict that the condition names.
enum class Pick {
    Later,        // noted later, by the tablets' clocks
    Greatest,     // the greatest number, the furthest stage
    Least,        // the least number, the least advanced stage
    Mean,         // of numbers
    Person,       // what one person noted
    Photographed, // where one side's person took a photo of the vine that day
    WithValue,    // not the one that was taken back
    Samples,      // both, as samples
};

struct Condition {
    Cause cause = Cause::Apart;
    std::string descriptor;           // of observations; empty: all
    std::string block;                // empty: all
    std::vector<std::string> authors; // exactly these stand against each other, sorted; empty: any
    std::optional<double> mostApart;  // no further apart than this; stages in steps
    Pick pick = Pick::Later;
    std::string person; // of Pick::Person
};

// What the condition makes of one conflict.
struct BulkOutcome {
    std::string subject;
    std::vector<journal::Place> heads; // as they were read, ascending
    std::vector<Bytes> values;         // of the heads
    Bytes taken;                       // nothing where the condition cannot decide it
    bool keepsSamples = false;
    std::optional<double> spread;
};

// Conflicts that the condition names, those farthest apart first. Errors: those of reading;
// Cancelled.
[[nodiscard]] Result<std::vector<BulkOutcome>>
bulkOutcomes(store::Database& database, const Condition& condition, const Token& token);

inline constexpr std::size_t kByHandFirst = 5;

// Indices of at most kByHandFirst outcomes that the condition decides, at random; the same seed,
// the same ones.
[[nodiscard]] std::vector<std::size_t> byHandFirst(const std::vector<BulkOutcome>& outcomes,
                                                   std::uint64_t seed);

// One act for all that the condition decides, but for those of `except`. Errors: BeyondLimit where
// they are more than one act can hold; InvalidInput where there is none; those of reading.
[[nodiscard]] Result<Act> bulkAct(store::Database& database,
                                  const std::vector<BulkOutcome>& outcomes,
                                  const std::vector<std::string>& except,
                                  const Decider& decider);

} // namespace bullace::office
