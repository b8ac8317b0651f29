// Draws what wire_layout.cpp has placed.
#include "quick/field_sign.hpp"
#include "quick/wire_layout.hpp"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace bullace::quick {

namespace {

// One vine's drawing: a brush with the sizes of this picture.
struct Drawing {
    QPainter& painter;
    const WireStyle& style;
    qreal wireY = 0;
    qreal groundY = 0;

    [[nodiscard]] qreal mm(qreal length) const { return length * style.pxPerMm; }
    void line(QPointF from, QPointF to, qreal widthMm) const {
        painter.setPen(QPen(style.ink, mm(widthMm), Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(from, to);
    }
    void words(const QString& text, const QRectF& box, int flags, bool isHere) const {
        painter.setPen(style.ink);
        painter.setFont(wireFont(style, isHere));
        painter.drawText(box, flags | Qt::TextWordWrap, text);
    }
};

void paintPost(const Drawing& on, qreal x) {
    on.line({x, on.wireY - on.mm(2.5)}, {x, on.groundY}, 1.6);
    on.line({x - on.mm(1.6), on.groundY}, {x + on.mm(1.6), on.groundY}, 0.8);
}

// A trunk with two arms of a cordon along the wire, and spurs on them.
void paintLiving(const Drawing& on, qreal x, qreal halfArm, qreal trunkMm) {
    QPainterPath trunk({x - on.mm(0.4), on.groundY});
    trunk.cubicTo({x + on.mm(0.8), on.groundY - on.mm(3)},
                  {x - on.mm(0.8), on.wireY + on.mm(4)},
                  {x, on.wireY});
    on.painter.setBrush(Qt::NoBrush);
    on.painter.setPen(QPen(on.style.ink, on.mm(trunkMm), Qt::SolidLine, Qt::RoundCap));
    on.painter.drawPath(trunk);
    on.line({x - halfArm, on.wireY}, {x + halfArm, on.wireY}, trunkMm * 0.8);
    for (const qreal share : {-0.85, -0.45, 0.45, 0.85}) {
        const qreal foot = x + share * halfArm;
        on.line(
            {foot, on.wireY}, {foot + on.mm(share > 0 ? 0.5 : -0.5), on.wireY - on.mm(1.6)}, 0.5);
    }
}

void paintMissing(const Drawing& on, qreal x, qreal halfArm) {
    const qreal side = std::min(2 * halfArm, (on.groundY - on.wireY) * 0.7);
    const QRectF hole(x - side / 2, on.groundY - side - on.mm(0.6), side, side);
    on.painter.setBrush(on.style.paper);
    on.painter.setPen(QPen(on.style.ink, on.mm(0.5)));
    on.painter.drawRect(hole);
    const QRectF cross = hole.adjusted(side * 0.22, side * 0.22, -side * 0.22, -side * 0.22);
    on.line(cross.topLeft(), cross.bottomRight(), 0.8);
    on.line(cross.bottomLeft(), cross.topRight(), 0.8);
}

void paintDead(const Drawing& on, qreal x) {
    const qreal top = on.wireY + (on.groundY - on.wireY) * 0.3;
    on.line({x, on.groundY}, {x, top}, 0.9);
    on.painter.setBrush(on.style.ink);
    on.painter.setPen(Qt::NoPen);
    on.painter.drawEllipse(QPointF(x, (top + on.groundY) / 2), on.mm(2), on.mm(2));
}

void paintKind(const Drawing& on, const WireVine& vine, const QRectF& box) {
    const qreal x = box.center().x();
    const qreal halfArm = std::min(box.width() * 0.36, on.mm(vine.isHere ? 9 : 6));
    if (vine.kind == WireVine::Missing) {
        paintMissing(on, x, halfArm);
        return;
    }
    if (vine.kind == WireVine::Dead) {
        paintDead(on, x);
        return;
    }
    paintLiving(on, x, halfArm, vine.isHere ? 1.6 : 0.9);
    if (vine.kind == WireVine::NotObserved) {
        const QRectF hatch(
            x - halfArm, on.wireY - on.mm(2), 2 * halfArm, on.groundY - on.wireY + on.mm(2));
        on.painter.save();
        on.painter.setClipRect(hatch);
        for (qreal foot = hatch.left() - hatch.height(); foot < hatch.right(); foot += on.mm(2)) {
            on.line({foot, hatch.bottom()}, {foot + hatch.height(), hatch.top()}, 0.35);
        }
        on.painter.restore();
    } else if (vine.kind == WireVine::WalkedPast) {
        on.line(
            {x - on.mm(2), on.groundY + on.mm(1.6)}, {x + on.mm(2), on.groundY + on.mm(1.6)}, 0.7);
    }
}

void paintTag(const Drawing& on, const WireVine& vine, const QRectF& box, qreal padding) {
    const qreal top = on.groundY + on.mm(kStringMm);
    const qreal x = box.center().x();
    if (vine.isMarked) {
        paintSign(on.painter,
                  FieldSign::Marked,
                  on.style.ink,
                  QRectF(x + on.mm(0.8), on.groundY + on.mm(1), on.mm(3.4), on.mm(3.4)));
    }
    if (vine.tag.isEmpty()) {
        return;
    }
    const QRectF most(
        box.left() + 2 * padding, top, box.width() - 4 * padding, box.bottom() - top - padding);
    on.painter.setPen(on.style.ink); // without a pen Qt measures no words
    on.painter.setFont(wireFont(on.style, vine.isHere));
    const QRectF words =
        on.painter.boundingRect(most, Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap, vine.tag);
    on.line({x, on.groundY + on.mm(0.5)}, {x, top}, 0.35);
    on.painter.setBrush(on.style.paper);
    on.painter.setPen(QPen(on.style.ink, on.mm(0.5), Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    on.painter.drawRect(words.adjusted(-padding, 0, padding, padding * 0.5));
    on.words(vine.tag, most, Qt::AlignHCenter | Qt::AlignTop, vine.isHere);
}

// The frame round the vine where one stands, with its foot and its beak.
void paintFrame(const Drawing& on, const WireScene& scene, const QRectF& box, bool hasNext) {
    const qreal inset = on.mm(0.5);
    const QRectF frame(
        box.left() + inset, inset, box.width() - 2 * inset, on.groundY + on.mm(1.6) - inset);
    on.painter.setBrush(Qt::NoBrush);
    on.painter.setPen(QPen(on.style.ink, on.mm(0.8), Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    on.painter.drawRect(frame);
    const qreal left = scene.side == WireScene::Right ? frame.center().x() : frame.left();
    const qreal right = scene.side == WireScene::Left ? frame.center().x() : frame.right();
    on.painter.fillRect(QRectF(left, frame.bottom() - on.mm(0.4), right - left, on.mm(1.8)),
                        on.style.ink);
    if (hasNext) {
        const bool isRight = scene.direction >= 0;
        const qreal x = isRight ? frame.right() : frame.left();
        const qreal y = (on.wireY + on.groundY) / 2;
        const qreal tip = x + on.mm(isRight ? 2 : -2);
        on.painter.setPen(Qt::NoPen);
        on.painter.setBrush(on.style.ink);
        on.painter.drawPolygon(QPolygonF({{x, y - on.mm(1.8)}, {tip, y}, {x, y + on.mm(1.8)}}));
    }
}

void paintLines(const Drawing& on, const WireScene& scene, QSizeF size) {
    const bool isForward = scene.direction >= 0;
    const bool hasLeft = isForward ? scene.hasFirstPost : scene.hasLastPost;
    const bool hasRight = isForward ? scene.hasLastPost : scene.hasFirstPost;
    const qreal post = on.mm(kPostMm) / 2;
    const qreal left = hasLeft ? post : 0;
    const qreal right = hasRight ? size.width() - post : size.width();
    on.line({left, on.wireY}, {right, on.wireY}, 0.4);
    on.line({0, on.groundY}, {size.width(), on.groundY}, 0.25);
    if (hasLeft) {
        paintPost(on, left);
    }
    if (hasRight) {
        paintPost(on, right);
    }
}

} // namespace

void paintWire(QPainter& painter, const WireScene& scene, const WireStyle& style, QSizeF size) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const WireRows rows = wireRows(scene, style, size);
    Drawing on{painter, style};
    const qreal padding = on.mm(1);
    on.groundY = std::max(rows.places + on.mm(6), size.height() - rows.tags - 2 * padding);
    on.wireY = rows.places + on.mm(2.5);
    paintLines(on, scene, size);
    for (const WireSlot& slot : wireSlots(scene, style, size)) {
        const auto index = static_cast<std::size_t>(slot.vine);
        const WireVine& vine = scene.vines[index];
        on.words(vine.place,
                 slot.box.adjusted(padding, 1.5 * padding, -padding, 0),
                 Qt::AlignHCenter | Qt::AlignTop,
                 vine.isHere);
        paintKind(on, vine, slot.box);
        paintTag(on, vine, slot.box, padding);
        if (vine.isHere) {
            paintFrame(on, scene, slot.box, index + 1 < scene.vines.size());
        }
    }
    painter.restore();
}

void paintRow(QPainter& painter, int vines, const WireStyle& style, QSizeF size) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    Drawing on{painter, style};
    on.groundY = size.height() - on.mm(1);
    on.wireY = std::max(on.mm(3), on.groundY - on.mm(kVineMm));
    WireScene whole;
    whole.hasFirstPost = whole.hasLastPost = true;
    paintLines(on, whole, size);
    const qreal room = size.width() - 2 * on.mm(kPostMm);
    const int drawn = std::clamp(static_cast<int>(room / on.mm(3.5)), 1, std::max(1, vines));
    for (int i = 0; i < drawn && vines > 0; ++i) {
        const qreal step = room / drawn;
        paintLiving(on, on.mm(kPostMm) + (i + 0.5) * step, std::min(step * 0.36, on.mm(6)), 0.7);
    }
    painter.restore();
}

} // namespace bullace::quick
