// What the heads of a subject come to: a value, or a conflict for a person (DESIGN §6.2-6.5).
// Writes nothing.
#pragma once

#include "core/merge/heads.hpp"
#include "core/merge/rulebook.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace bullace::merge {

enum class State { Settled, Agreed, Retracted, Ruled, Open };

[[nodiscard]] std::string_view stateWord(State state);

struct Outcome {
    State state = State::Open;
    Bytes value;                               // CBOR; empty where there is none (open, retracted)
    std::optional<descriptors::RuleName> rule; // where a rule decided
};

// heads  At least one, in the order of comesBefore.
[[nodiscard]] Outcome
settle(std::string_view subject, std::span<const Member> heads, const Rulebook& rulebook);

} // namespace bullace::merge
