// The station's conflict rules, and what its descriptors say of their own: read from settled
// subjects, asked for each conflict.
#pragma once

#include "core/descriptors/catalog.hpp"
#include "core/descriptors/rule.hpp"
#include "core/journal/subject.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace bullace::merge {

// One rule of the rulebook.
struct BookRule {
    std::string where = "*";         // a position pattern
    std::optional<std::string> from; // dates, inclusive; they compare as text
    std::optional<std::string> to;
    std::optional<std::vector<std::string>> descriptors; // nothing: all
    descriptors::Rule rule;

    [[nodiscard]] bool matches(const journal::Subject& subject) const;
};

// Reads {"where", "from", "to", "descriptors", "rule", "within"}; nothing where the value has
// another shape, an unknown part or an unknown rule: such an entry is passed over.
[[nodiscard]] std::optional<BookRule> readBookRule(BytesView value);

// Reads {"rule", "within"}.
[[nodiscard]] std::optional<descriptors::Rule> readOwnRule(BytesView value);

// Whether the subject is one of those that the rulebook is made of: rulebook/N and
// descriptor/CODE/rule, /kind, /codes.
[[nodiscard]] bool shapesRulebook(const journal::Subject& subject);

class Rulebook {
public:
    // What a subject that shapes the rulebook says now. `value` is empty where it is open,
    // retracted or gone.
    void apply(std::string_view subjectText, BytesView value, bool isOpen);

    // The rule for an observation: the first that matches, else the descriptor's own, else `ask`.
    [[nodiscard]] descriptors::Rule ruleFor(const journal::Subject& observation) const {
        return matchFor(observation).rule;
    }
    struct Match {
        std::optional<std::uint64_t> number; // in the rulebook; nothing: the descriptor's own
        descriptors::Rule rule;
    };
    [[nodiscard]] Match matchFor(const journal::Subject& observation) const;
    // The rules by their numbers, in the order in which they are tried.
    [[nodiscard]] const std::map<std::uint64_t, BookRule>& rules() const { return rules_; }

    // The descriptor's kind: the station's word for it, else the built-in one; nothing for a
    // descriptor nobody knows.
    [[nodiscard]] std::optional<descriptors::DescriptorKind>
    kindOf(std::string_view descriptor) const;

    // The step of a stage value along its descriptor's list of codes; nothing where the list does
    // not hold it.
    [[nodiscard]] std::optional<std::size_t> stepOf(std::string_view descriptor,
                                                    BytesView value) const;

private:
    struct OwnSettings {
        std::optional<descriptors::Rule> rule;
        std::optional<descriptors::DescriptorKind> kind;
        std::optional<std::vector<Bytes>> codes; // comparable bytes, in order
    };

    std::map<std::uint64_t, BookRule> rules_; // by N
    std::map<std::string, OwnSettings, std::less<>> descriptors_;
};

} // namespace bullace::merge
