// The codes on vine labels: seven symbols and a check symbol, typed or scanned. A mistyped code is
// never another vine's: each single wrong symbol and each exchange of two is seen.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bullace::vineyard {

// Digits and letters without B, I, L, O and U, which are taken for others when read or heard.
inline constexpr std::string_view kLabelSymbols = "0123456789ACDEFGHJKMNPQRSTVWXYZ";

// How many codes there are: 21 letters for the first symbol, 31 symbols for six more.
inline constexpr std::uint64_t kLabelCodes = 21ULL * 887'503'681ULL;

// What is wrong with a typed code, in the order in which it is looked for.
enum class LabelFault {
    None,
    Empty,
    NeverUsed, // it holds B, I, L, O or U, which no code does: 8, 1, 0 or V may be meant
    NoSymbol,  // it holds something else that is neither letter nor digit
    TooShort,
    TooLong,
    FirstIsDigit, // a code begins with a letter
    WrongCheck,   // a symbol is wrong, or two changed places
};

[[nodiscard]] LabelFault labelFaultOf(std::string_view text);

// The code in upper case without spaces; nothing where labelFaultOf() finds a fault. Nothing is
// guessed: O is not turned into 0, since that might make another vine's code.
[[nodiscard]] std::optional<std::string> readLabelCode(std::string_view text);

// The code of a number below kLabelCodes, each number its own; an empty text for a greater one.
// The last symbol is the sum of i·v over the first seven, i from 1, v the symbol's place in
// kLabelSymbols, modulo 31.
[[nodiscard]] std::string labelCode(std::uint64_t number);

} // namespace bullace::vineyard
