// How much room words take on the glass: nothing is ever elided or cut, so keys ask before they are
// drawn.
#pragma once

#include <QFont>
#include <QSizeF>
#include <QString>

namespace bullace::quick {

// Width in pixels of the longest single word of `text` (0 for none); rounded up.
[[nodiscard]] qreal widestWordPx(const QString& text, const QFont& font);

// Size in pixels of `text` wrapped between words at `width` pixels; 0 x 0 for no text. A word that
// is wider than `width` keeps its width, so the size may be wider than asked.
[[nodiscard]] QSizeF wrappedSize(const QString& text, const QFont& font, qreal width);

// The greatest pixel size from leastPx to mostPx at which `text` fits into `room`; leastPx where
// none does, and where mostPx is below leastPx.
[[nodiscard]] int fittingPx(const QString& text, QFont font, int leastPx, int mostPx, QSizeF room);

} // namespace bullace::quick
