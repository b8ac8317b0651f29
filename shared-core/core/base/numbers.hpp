// Reading and writing numbers strictly: what is not wholly a number is nothing.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bullace {

// Integers that every JSON reader and binary64 hold exactly.
inline constexpr std::int64_t kGreatestInteger = (std::int64_t{1} << 53) - 1;

// Decimal digits only, no sign, no leading zero (but "0"), at most `greatest`.
[[nodiscard]] std::optional<std::uint64_t>
readCount(std::string_view text,
          std::uint64_t greatest = static_cast<std::uint64_t>(kGreatestInteger));

// A measurement as a person types it: an optional minus, digits, then optionally a point or a comma
// and digits. A comma is a decimal comma: "1,5" is 1.5. "1,234.5", "1.234,5", "1 234", "1e3", ".5",
// "5." and "NaN" are nothing.
[[nodiscard]] std::optional<double> readTypedNumber(std::string_view text);

// The shortest text that reads back as the same binary64; always with a point or an exponent
// ("7.0"). Finite only.
[[nodiscard]] std::string shortestFloat(double value);

} // namespace bullace
