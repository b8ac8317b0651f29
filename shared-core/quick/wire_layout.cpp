// Where things stand on the wire; wire_paint.cpp draws them.
#include "quick/wire_layout.hpp"

#include "quick/text_fit.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::quick {

namespace {

constexpr qreal kLeastSlotMm = 9;
constexpr qreal kPaddingMm = 1;
constexpr qreal kHereShare = 1.6; // the vine where one stands, against the others

// The width that a vine's words ask for, in pixels.
qreal wordsWidth(const WireVine& vine, const WireStyle& style) {
    const QFont font = wireFont(style, vine.isHere);
    return std::max(widestWordPx(vine.place, font), widestWordPx(vine.tag, font)) +
           4 * kPaddingMm * style.pxPerMm;
}

qreal leastWidth(const WireVine& vine, const WireStyle& style) {
    const qreal touch = kLeastSlotMm * style.pxPerMm * (vine.isHere ? kHereShare : 1);
    return std::max(touch, wordsWidth(vine, style));
}

// The part of the vines, [first, last), that fits into `width`: the farthest from where one stands
// go first.
struct Shown {
    std::size_t first = 0;
    std::size_t last = 0;
};

Shown shownOf(const WireScene& scene, const WireStyle& style, qreal width) {
    std::vector<qreal> widths;
    qreal sum = 0;
    std::size_t here = 0;
    for (const WireVine& vine : scene.vines) {
        here = vine.isHere ? widths.size() : here;
        widths.push_back(leastWidth(vine, style));
        sum += widths.back();
    }
    Shown shown{0, widths.size()};
    while (sum > width && shown.last - shown.first > 1) {
        const bool dropsFirst = here - shown.first >= shown.last - 1 - here;
        sum -= dropsFirst ? widths[shown.first++] : widths[--shown.last];
    }
    return shown;
}

qreal postsWidth(const WireScene& scene, const WireStyle& style) {
    const int posts = (scene.hasFirstPost ? 1 : 0) + (scene.hasLastPost ? 1 : 0);
    return posts * kPostMm * style.pxPerMm;
}

} // namespace

QFont wireFont(const WireStyle& style, bool isHere) {
    QFont font(style.family);
    font.setPixelSize(isHere ? style.herePx : style.smallPx);
    font.setBold(true);
    return font;
}

std::vector<WireSlot> wireSlots(const WireScene& scene, const WireStyle& style, QSizeF size) {
    const qreal room = size.width() - postsWidth(scene, style);
    const Shown shown = shownOf(scene, style, room);
    qreal asked = 0;
    for (std::size_t i = shown.first; i < shown.last; ++i) {
        asked += leastWidth(scene.vines[i], style);
    }
    const qreal spare = shown.last > shown.first
                            ? std::max(0.0, room - asked) / double(shown.last - shown.first)
                            : 0;
    const bool isForward = scene.direction >= 0;
    const bool hasLeftPost = isForward ? scene.hasFirstPost : scene.hasLastPost;
    qreal x = hasLeftPost ? kPostMm * style.pxPerMm : 0;
    std::vector<WireSlot> drawn;
    for (std::size_t n = shown.first; n < shown.last; ++n) {
        const std::size_t i = isForward ? n : shown.last - 1 - (n - shown.first);
        const qreal width = leastWidth(scene.vines[i], style) + spare;
        drawn.push_back({static_cast<int>(i), QRectF(x, 0, width, size.height())});
        x += width;
    }
    return drawn;
}

WireRows wireRows(const WireScene& scene, const WireStyle& style, QSizeF size) {
    const qreal padding = kPaddingMm * style.pxPerMm;
    qreal places = 0;
    qreal tags = 0;
    for (const WireSlot& slot : wireSlots(scene, style, {size.width(), 1})) {
        const WireVine& vine = scene.vines[static_cast<std::size_t>(slot.vine)];
        const QFont font = wireFont(style, vine.isHere);
        const qreal inner = slot.box.width() - 4 * padding;
        places = std::max(places, wrappedSize(vine.place, font, inner).height());
        tags = std::max(tags, wrappedSize(vine.tag, font, inner).height());
    }
    WireRows rows;
    rows.places = places + 3 * padding;
    rows.tags =
        tags > 0 ? tags + 2 * padding + kStringMm * style.pxPerMm : kStringMm * style.pxPerMm;
    rows.needed = rows.places + kVineMm * style.pxPerMm + rows.tags + 2 * padding;
    return rows;
}

qreal wireHeight(const WireScene& scene, const WireStyle& style, qreal width) {
    return std::ceil(wireRows(scene, style, {width, 1}).needed);
}

std::optional<int>
vineAt(const WireScene& scene, const WireStyle& style, QSizeF size, QPointF point) {
    for (const WireSlot& slot : wireSlots(scene, style, size)) {
        if (slot.box.contains(point)) {
            return slot.vine;
        }
    }
    return std::nullopt;
}

} // namespace bullace::quick
