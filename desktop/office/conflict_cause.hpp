// Why heads of one subject stand against each other, from the entries themselves.
#pragma once

#include "core/journal/entry.hpp"
#include "core/journal/subject.hpp"
#include "core/merge/rulebook.hpp"

#include <optional>
#include <span>

namespace bullace::office {

// Why the values stand against each other: computed, in the order in which the desk offers them.
enum class Cause {
    TwoRulings, // decided twice, apart
    VineState,  // one says dead, missing or no vine, another has a value
    Removed,    // taken back by one, kept by another
    TenTimes,   // one is ten times the other: a point was left out
    UnitSlip,   // one is 25.4 times the other: inches and millimetres
    OnePerson,  // the same person, on one day
    Apart,      // two people, or two tablets, do not agree
    Collection, // no observation: a field of the collection that two people changed
};

// heads  At least two, of one subject.
[[nodiscard]] Cause causeOf(const journal::Subject& subject,
                            std::span<const journal::EntryView> heads,
                            const merge::Rulebook& rulebook);

// How far the numbers among the values lie apart; of stages, in steps along the list of codes.
// Nothing where fewer than two can be compared.
[[nodiscard]] std::optional<double> spreadOf(const journal::Subject& subject,
                                             std::span<const BytesView> values,
                                             const merge::Rulebook& rulebook);

} // namespace bullace::office
