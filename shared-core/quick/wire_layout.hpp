// Sizes that the wire's layout and its painter share.
#pragma once

#include "quick/wire.hpp"

#include <QFont>

namespace bullace::quick {

constexpr qreal kPostMm = 6;  // room of an end post, in mm
constexpr qreal kVineMm = 14; // least height of a vine, wire to ground, in mm
constexpr qreal kStringMm =
    5; // between the ground and a tag, with the mark beside the string, in mm

// The horizontal bands of the picture, in pixels from top to bottom: places, vines (what is left),
// tags.
struct WireRows {
    qreal places = 0;
    qreal tags = 0;
    qreal needed = 0; // height for all of it
};

[[nodiscard]] WireRows wireRows(const WireScene& scene, const WireStyle& style, QSizeF size);
[[nodiscard]] QFont wireFont(const WireStyle& style, bool isHere);

} // namespace bullace::quick
