// The conflict rules by name, as the rulebook and the descriptors use them (what they do:
// core/merge).
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace bullace::descriptors {

enum class RuleName { Ask, Later, Advanced, Greatest, Least, Mean, All };

inline constexpr std::array<std::pair<RuleName, std::string_view>, 7> kRuleWords{
    {{RuleName::Ask, "ask"},
     {RuleName::Later, "later"},
     {RuleName::Advanced, "advanced"},
     {RuleName::Greatest, "greatest"},
     {RuleName::Least, "least"},
     {RuleName::Mean, "mean"},
     {RuleName::All, "all"}}};

[[nodiscard]] constexpr std::string_view ruleWord(RuleName name) {
    return kRuleWords[static_cast<std::size_t>(name)].second;
}

[[nodiscard]] constexpr std::optional<RuleName> readRuleWord(std::string_view word) {
    for (const auto& [name, text] : kRuleWords) {
        if (text == word) {
            return name;
        }
    }
    return std::nullopt;
}

// How far the heads may lie apart: a number in the descriptor's unit (for stages: steps along the
// list of codes), or percent of the heads' mean. Not negative.
struct Within {
    double amount = 0;
    bool isPercent = false;
};

struct Rule {
    RuleName name = RuleName::Ask;
    std::optional<Within> within;
};

} // namespace bullace::descriptors
