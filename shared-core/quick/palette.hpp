// The colours of both apps' screens, as data: what stands on what, and the fills for categories and
// stages.
#pragma once

#include "core/report/colour.hpp"

#include <QColor>
#include <QList>

namespace bullace::quick {

// Day is pure black on pure white, for nothing else is read in the sun; dusk is light on dark.
enum class Light { Day, Dusk };

struct Palette {
    QColor ink;   // words and lines on the paper
    QColor paper; // the page
    QColor keyInk;
    QColor keyFill;
    QColor chosenInk; // a key that is chosen or under the finger
    QColor chosenFill;
    QColor line;  // frames of keys and fields
    QColor focus; // the ring round what the keyboard is at; at least 3:1 against paper
};

[[nodiscard]] Palette paletteOf(Light light);

// core's colour for a screen.
[[nodiscard]] QColor colourOf(const report::Rgb& colour);

// Fills and thick lines for categories, never for words (core/report/palettes.hpp).
[[nodiscard]] const QList<QColor>& categoryFills();

// Fills for ordered stages, early to late (core/report/palettes.hpp).
[[nodiscard]] const QList<QColor>& stageFills();

// Black or white, whichever stands out more on `fill`.
[[nodiscard]] QColor inkOn(const QColor& fill);

} // namespace bullace::quick
