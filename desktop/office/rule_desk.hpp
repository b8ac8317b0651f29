// The rulebook at the desk: its rules as fields that a person fills in, and what a change would do
// before it is written.
#pragma once

#include "office/act.hpp"
#include "office/desk.hpp"

#include "core/merge/settle.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::office {

// One rule as it is typed. Empty fields match everything.
struct RuleDraft {
    std::string where;       // "B2-07-14", "B2-07-*", "B2-*"
    std::string from;        // YYYY-MM-DD, inclusive
    std::string to;          // likewise
    std::string descriptors; // codes with commas between them
    std::string rule = "ask";
    std::string within; // "2", or "5 %" of the mean; empty: any distance
};

struct RuleLine {
    std::uint64_t number = 0;
    RuleDraft draft;
    std::vector<journal::Place> heads;
    bool isOpen = false;     // two people changed it apart: a person has to settle that first
    bool isReadable = false; // false: of another shape, passed over
};

// All rules by their numbers, also those that are open or of another shape. Errors: those of
// reading.
[[nodiscard]] Result<std::vector<RuleLine>> readRules(store::Database& database);

// The value of a rulebook entry. Errors: InvalidInput; the message names the field and what it
// takes.
[[nodiscard]] Result<Bytes> ruleValue(const RuleDraft& draft);
[[nodiscard]] RuleDraft draftOf(const merge::BookRule& rule);

// A change to the rulebook: entries by number; an empty value takes the rule away.
struct RuleChange {
    std::uint64_t number = 0;
    Bytes value;
    std::vector<journal::Place> heads; // as they were seen
};

// What becomes of one subject.
struct RuleEffect {
    std::string subject;
    merge::State before = merge::State::Open;
    Bytes valueBefore; // empty where open
    merge::State after = merge::State::Open;
    Bytes valueAfter;
};
struct RulePreview {
    std::size_t contested = 0;      // subjects whose heads do not agree
    std::size_t becomeSettled = 0;  // open before
    std::size_t becomeOpen = 0;     // settled by a rule before
    std::size_t changeValue = 0;    // settled before and after, otherwise
    std::vector<RuleEffect> sample; // at most kMostEffects, spread over all of them
};
inline constexpr std::size_t kMostEffects = 200;

// Errors: those of reading; Cancelled.
[[nodiscard]] Result<RulePreview>
previewRules(store::Database& database, const std::vector<RuleChange>& changes, const Token& token);

// Errors: InvalidInput without a change.
[[nodiscard]] Result<Act>
ruleAct(const std::vector<RuleChange>& changes, const std::string& author, const std::string& why);

} // namespace bullace::office
