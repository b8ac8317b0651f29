// How often people decided otherwise than a rule would have: what stands below a rule's text, for
// whoever asks herself whether to trust it.
#pragma once

#include "office/desk.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <utility>

namespace bullace::office {

// A rule of the rulebook by its number, else the own rule of a descriptor.
using RuleOf = std::pair<std::optional<std::uint64_t>, std::string>;
[[nodiscard]] RuleOf ruleOf(std::optional<std::uint64_t> number, std::string_view descriptor);

struct Overruled {
    std::size_t proposals = 0; // where the rule decides, or would have
    std::size_t overruled = 0; // of them, where a person gave another value
};

// By the rules as they are now, over all values that ever stood against each other. Errors: those
// of reading; Cancelled.
[[nodiscard]] Result<std::map<RuleOf, Overruled>> readOverruled(store::Database& database,
                                                                const Token& token);

} // namespace bullace::office
