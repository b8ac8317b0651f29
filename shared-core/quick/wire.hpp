// A row drawn as its trellis wire with its vines in place: what is where, and the picture of it.
// Plain functions over plain tables, so that the same picture goes on the glass, on paper and
// through a test.
#pragma once

#include <QColor>
#include <QRectF>
#include <QString>

#include <optional>
#include <vector>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace bullace::quick {

struct WireVine {
    enum Kind { Plain, Missing, Dead, NotObserved, WalkedPast };

    QString place; // the vine's number in its row, as it is said
    QString tag;   // what was just recorded there; empty for nothing
    Kind kind = Plain;
    bool isMarked = false;
    bool isHere = false; // where one stands; at most one

    bool operator==(const WireVine&) const = default;
};

struct WireScene {
    // The side of the wire that is walked, seen by somebody who looks along the row from its first
    // vine.
    enum Side { Whole, Left, Right };

    std::vector<WireVine> vines; // in walking order, neighbours next to each other
    int direction = 1; // +1: the next stops lie to the right of where one stands, -1: to the left
    Side side = Whole;
    bool hasFirstPost = false; // whether the row ends before the first of `vines`
    bool hasLastPost = false;  // whether the row ends behind the last of them

    bool operator==(const WireScene&) const = default;
};

struct WireStyle {
    QColor ink;
    QColor paper;
    QString family;
    int smallPx = 12; // places and tags
    int herePx = 16;  // place and tag of the vine where one stands
    qreal pxPerMm = 4;
};

// One vine's part of the picture: it owns the whole height, and its touch area with it.
struct WireSlot {
    int vine = 0; // index into WireScene::vines
    QRectF box;
};

// Where each vine stands in a picture of `size` pixels, from left to right. A slot is at least 9 mm
// wide and as wide as its words; where not all fit, the stops farthest from where one stands are
// left out, never a word cut.
[[nodiscard]] std::vector<WireSlot>
wireSlots(const WireScene& scene, const WireStyle& style, QSizeF size);

// The height in pixels that the picture needs at `width`, for all words to be whole.
[[nodiscard]] qreal wireHeight(const WireScene& scene, const WireStyle& style, qreal width);

// The index of the vine whose slot holds `point`; none beside the slots.
[[nodiscard]] std::optional<int>
vineAt(const WireScene& scene, const WireStyle& style, QSizeF size, QPointF point);

// Draws the picture at the painter's origin; leaves the painter as it was. Two posts where the
// row's ends are in sight, one taut wire, each vine a trunk with its cordon on the wire, its place
// above, its tag below. The vine where one stands is larger and framed; the foot of the frame is
// whole, or its left or right half, for the side that is walked; its beak points to the next stop.
// Missing: an open frame with a cross. Dead: a filled dot on a bare trunk. Not observed: hatch.
// Walked past: a dash below. Marked: a triangle above the tag.
void paintWire(QPainter& painter, const WireScene& scene, const WireStyle& style, QSizeF size);

// A whole row of `vines` vines between its two posts, at the painter's origin; more vines than can
// be told apart are drawn as many as can.
void paintRow(QPainter& painter, int vines, const WireStyle& style, QSizeF size);

} // namespace bullace::quick
