// Where a vine stands: block, row, vine, written B2-07-14.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace bullace::vineyard {

struct Position {
    std::string_view block; // begins with a letter; letters and digits
    unsigned row = 0;
    unsigned vine = 0;
    char letter = 0; // of a vine planted between two: 14a; 0 where there is none

    friend bool operator==(const Position&, const Position&) = default;
};

inline constexpr unsigned kGreatestNumber = 999'999; // of a row or a vine

// Exactly as positions are written: row and vine in decimal, padded to two digits and no further.
// The block's text points into `text`.
[[nodiscard]] std::optional<Position> readPosition(std::string_view text);

[[nodiscard]] bool isBlockCode(std::string_view text);

// {"B2", 7, 14} is "B2-07-14".
[[nodiscard]] std::string writePosition(const Position& position);

// A rule's pattern: "B2-07-14", "B2-07-*", "B2-*" or "*", the star alone or last.
[[nodiscard]] bool isPositionPattern(std::string_view pattern);
// Both must be well-formed. A place that is no position (a lot) matches only "*".
[[nodiscard]] bool matchesPattern(std::string_view pattern, std::string_view place);

} // namespace bullace::vineyard
