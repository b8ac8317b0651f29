// A value as somebody typed it on a keyboard, or as a cell of a spreadsheet has it.
#pragma once

#include "core/base/units.hpp"
#include "core/vineyard/catalogue.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace bullace::office {

struct Typed {
    Bytes value;                     // one CBOR item that the descriptor takes
    std::optional<std::string> as{}; // as typed, where it was typed in another unit
};

// What a word of the screen's language stands for: "púrpura" is "purple". The word itself where it
// stands for nothing.
using WordCode = std::function<std::string(std::string_view)>;

// A number with one decimal mark, a point or a comma, and no mark between thousands: 24.5 and 24,5.
// U+2212 is a minus. Nothing where the text is anything else.
// Source  the decision and its table of wrong readings: QLocale accepts 1,234 as 1234 in one
// language and as 1.234 in another (measured).
[[nodiscard]] std::optional<double> readTypedNumber(std::string_view text);

// Reads `text` for the descriptor: a number in the unit that `wishes` ask for (the unit may be
// typed behind it), a stage, a word of the list, a text; of a record its parts in their order,
// between them spaces, slashes or "of": "3 of 10"; a reason like "dead" or "not observed" for no
// value; "-" for not observed. Errors: InvalidInput, in words that say what the descriptor takes.
[[nodiscard]] Result<Typed> readTyped(const vineyard::Asked& asked,
                                      std::string_view text,
                                      const UnitWishes& wishes,
                                      const WordCode& codeOf = {});

// The value as it would be typed again: for a cell that is edited. A point, never a comma.
[[nodiscard]] std::string
typedText(const vineyard::Asked& asked, BytesView value, const UnitWishes& wishes);

} // namespace bullace::office
