// What the QR codes at a row's ends and on its paper sheets say.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace bullace::paper {

// ROW/B2-07 at a row's post; ROW/B2-07/L/2 on the second page of the row's sheet that is walked
// from the last vine (L) or the first (F); ROW/B2-07/L/2/bloom-2027 where the sheet is for a round.
// The block's code keeps its letters as they are. Without a round it has at most 20 symbols for
// blocks of up to eight, which a small QR code holds.
struct RowCode {
    std::string block;
    unsigned row = 0;
    bool isFromLast = false;
    unsigned page = 0; // from 1; 0 at a post
    std::string round; // ID; empty for none, and at a post

    friend bool operator==(const RowCode&, const RowCode&) = default;
};

[[nodiscard]] std::string writeRowCode(const RowCode& code);
// Nothing where the text is no row code.
[[nodiscard]] std::optional<RowCode> readRowCode(std::string_view text);

} // namespace bullace::paper
