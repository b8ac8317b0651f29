#include "plots/drawing_painter.hpp"

#include "plots/plot_style.hpp"

#include "quick/words.hpp"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace bullace::plots {

namespace {

using quick::fromText;
using report::DrawingBox;
using report::DrawingLine;

constexpr qreal kReadable = 0.72; // of the natural scale
constexpr qreal kLargest = 3;
constexpr qreal kPadMm = 1.2;    // between a box's edge and its words
constexpr qreal kMarginMm = 1.5; // around the drawing, so that edges are not cut

// One drawing being painted.
struct Canvas {
    QPainter& painter;
    const report::Drawing& drawing;
    const PlotLook& look; // of title, key and notes
    PlotLook inner;       // of the drawing itself: a millimetre is the drawing's
    QPointF origin;       // of the drawing, in the painter's units

    [[nodiscard]] QPointF at(report::DrawingPoint point) const {
        return origin + QPointF(point.x, point.y) * inner.pxPerMm;
    }
    [[nodiscard]] QRectF rect(const DrawingBox& box) const {
        return {at(box.at), QSizeF(box.width, box.height) * inner.pxPerMm};
    }
};

qreal wrappedHeight(const PlotLook& look, qreal width, const QString& text, bool isBold) {
    const QFontMetricsF metrics(fontOf(look, isBold));
    return metrics.boundingRect(QRectF(0, 0, width, 1e6), Qt::TextWordWrap, text).height();
}

QPen linePen(const PlotLook& look, DrawingLine::Kind kind) {
    QPen pen(look.ink, std::max(1.0, mm(look, 0.35)));
    pen.setJoinStyle(Qt::RoundJoin);
    pen.setCapStyle(kind == DrawingLine::Dashed ? Qt::FlatCap : Qt::RoundCap);
    if (kind == DrawingLine::Dashed) {
        pen.setDashPattern({4, 3});
    }
    return pen;
}

// Two thin lines beside one another: a thick one with the paper in its middle.
void drawDouble(QPainter& painter, const PlotLook& look, const QPolygonF& points) {
    QPen pen = linePen(look, DrawingLine::Solid);
    const qreal thin = pen.widthF();
    pen.setWidthF(thin * 3.6);
    pen.setCapStyle(Qt::FlatCap);
    painter.setPen(pen);
    painter.drawPolyline(points);
    pen.setWidthF(thin * 1.6);
    pen.setColor(look.paper);
    painter.setPen(pen);
    painter.drawPolyline(points);
}

void drawPoints(QPainter& painter,
                const PlotLook& look,
                DrawingLine::Kind kind,
                const QPolygonF& points) {
    painter.setBrush(Qt::NoBrush);
    if (kind == DrawingLine::Double) {
        drawDouble(painter, look, points);
        return;
    }
    painter.setPen(linePen(look, kind));
    painter.drawPolyline(points);
}

void drawLine(const Canvas& on, const DrawingLine& line) {
    QPolygonF points;
    for (const report::DrawingPoint& point : line.points) {
        points << on.at(point);
    }
    drawPoints(on.painter, on.inner, line.kind, points);
}

void drawEdge(QPainter& painter, const PlotLook& look, DrawingBox::Kind kind, const QRectF& box) {
    QPen pen(look.ink, std::max(1.0, mm(look, kind == DrawingBox::Strong ? 0.9 : 0.3)));
    if (kind == DrawingBox::Faint) {
        pen.setDashPattern({3, 2});
    }
    pen.setJoinStyle(Qt::MiterJoin);
    painter.setPen(pen);
    painter.setBrush(kind == DrawingBox::Knot ? look.ink : look.paper);
    if (kind == DrawingBox::Knot) {
        painter.drawEllipse(box);
    } else {
        painter.drawRect(box);
    }
}

void drawWords(const Canvas& on, const QRectF& box, const std::vector<std::string>& words) {
    const qreal pad = mm(on.inner, kPadMm);
    const QRectF room = box.adjusted(pad, pad / 2, -pad, -pad / 2);
    const qreal high = room.height() / static_cast<qreal>(words.size());
    for (std::size_t i = 0; i < words.size(); ++i) {
        const QFont font = fontOf(on.inner, i == 0);
        const QString text =
            QFontMetricsF(font).elidedText(fromText(words[i]), Qt::ElideRight, room.width());
        on.painter.setFont(font);
        on.painter.setPen(on.inner.ink);
        on.painter.drawText(
            QRectF(room.left(), room.top() + high * static_cast<qreal>(i), room.width(), high),
            Qt::AlignCenter | Qt::TextSingleLine,
            text);
    }
}

void drawInside(const Canvas& on, const QRectF& room) {
    on.painter.save();
    on.painter.setClipRect(room, Qt::IntersectClip);
    for (const DrawingLine& line : on.drawing.lines) {
        drawLine(on, line);
    }
    const QRectF near = room.adjusted(-2, -2, 2, 2);
    for (const DrawingBox& box : on.drawing.boxes) {
        const QRectF at = on.rect(box);
        if (at.intersects(near)) {
            drawEdge(on.painter, on.inner, box.kind, at);
            drawWords(on, at, box.words);
        }
    }
    for (const report::DrawingText& text : on.drawing.texts) {
        const QSizeF size(mm(on.inner, 200), lineHeight(on.inner));
        on.painter.setFont(fontOf(on.inner));
        on.painter.setPen(on.inner.ink);
        on.painter.drawText(QRectF(on.at(text.at) - QPointF(size.width(), size.height()) / 2, size),
                            Qt::AlignCenter | Qt::TextSingleLine,
                            fromText(text.words));
    }
    on.painter.restore();
}

struct KeyPlace {
    std::size_t entry = 0;
    QRectF box;
};

std::vector<KeyPlace>
keyPlaces(const report::Drawing& drawing, const PlotLook& look, qreal width, qreal top) {
    std::vector<KeyPlace> places;
    const qreal high = lineHeight(look);
    QPointF at(0, top);
    for (std::size_t i = 0; i < drawing.key.size(); ++i) {
        const qreal words =
            QFontMetricsF(fontOf(look)).horizontalAdvance(fromText(drawing.key[i].words));
        const qreal wide = std::min(width, mm(look, 14) + words);
        if (at.x() > 0 && at.x() + wide > width) {
            at = QPointF(0, at.y() + high);
        }
        places.push_back({i, QRectF(at, QSizeF(wide, high))});
        at.rx() += wide;
    }
    return places;
}

qreal footHeight(const report::Drawing& drawing, const PlotLook& look, qreal width) {
    const auto key = keyPlaces(drawing, look, width, 0);
    qreal height = key.empty() ? 0 : key.back().box.bottom();
    for (const std::string& note : drawing.notes) {
        height += wrappedHeight(look, width, fromText(note), false);
    }
    return height > 0 ? height + mm(look, 1.5) : 0;
}

void drawFoot(const Canvas& on, QSizeF size) {
    const PlotLook& look = on.look;
    qreal top = size.height() - footHeight(on.drawing, look, size.width()) + mm(look, 1.5);
    const auto key = keyPlaces(on.drawing, look, size.width(), top);
    on.painter.setFont(fontOf(look));
    for (const KeyPlace& place : key) {
        const report::DrawingKey& entry = on.drawing.key[place.entry];
        const QRectF sample(place.box.left() + mm(look, 1),
                            place.box.top() + place.box.height() * 0.2,
                            mm(look, 7),
                            place.box.height() * 0.6);
        if (entry.line) {
            const qreal y = sample.center().y();
            drawPoints(on.painter,
                       look,
                       *entry.line,
                       {{QPointF(sample.left(), y), QPointF(sample.right(), y)}});
        }
        if (entry.box == DrawingBox::Knot) {
            const qreal side = mm(look, 1.8);
            drawEdge(on.painter,
                     look,
                     *entry.box,
                     {sample.center() - QPointF(side, side) / 2, QSizeF(side, side)});
        } else if (entry.box) {
            drawEdge(on.painter, look, *entry.box, sample);
        }
        on.painter.setPen(look.ink);
        on.painter.drawText(place.box.adjusted(mm(look, 9.5), 0, 0, 0),
                            Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine,
                            fromText(entry.words));
        top = place.box.bottom();
    }
    on.painter.setPen(look.ink);
    for (const std::string& note : on.drawing.notes) {
        const qreal high = wrappedHeight(look, size.width(), fromText(note), false);
        on.painter.drawText(QRectF(0, top, size.width(), high), Qt::TextWordWrap, fromText(note));
        top += high;
    }
}

qreal titleHeight(const report::Drawing& drawing,
                  const PlotLook& look,
                  qreal width,
                  DrawingTitle title) {
    return title == DrawingTitle::Left || drawing.title.empty()
               ? 0
               : wrappedHeight(look, width, fromText(drawing.title), true) + mm(look, 1);
}

PlotLook lookAtScale(const PlotLook& look, qreal scale) {
    PlotLook inner = look;
    inner.pxPerMm = scale;
    inner.textPx = std::max(1, qRound(report::kDrawingTextMm * scale));
    return inner;
}

} // namespace

qreal naturalScale(const PlotLook& look) {
    return look.textPx / report::kDrawingTextMm;
}

QRectF
drawingRoom(const report::Drawing& drawing, const PlotLook& look, QSizeF size, DrawingTitle title) {
    const qreal top = titleHeight(drawing, look, size.width(), title);
    const qreal foot = footHeight(drawing, look, size.width());
    return {0, top, size.width(), std::max(1.0, size.height() - top - foot)};
}

DrawingView wholeView(const report::Drawing& drawing, const PlotLook& look, QSizeF room) {
    const qreal wide = drawing.width + 2 * kMarginMm;
    const qreal high = drawing.height + 2 * kMarginMm;
    return {std::min({naturalScale(look), room.width() / wide, room.height() / high}),
            QPointF(drawing.width, drawing.height) / 2};
}

DrawingView firstView(const report::Drawing& drawing, const PlotLook& look, QSizeF room) {
    const DrawingView whole = wholeView(drawing, look, room);
    const qreal natural = naturalScale(look);
    if (whole.scale >= kReadable * natural) {
        return whole;
    }
    DrawingView view{natural, whole.middle};
    const auto strong = std::ranges::find(drawing.boxes, DrawingBox::Strong, &DrawingBox::kind);
    if (strong != drawing.boxes.end()) {
        view.middle = QPointF(strong->at.x + strong->width / 2, strong->at.y + strong->height / 2);
    }
    return keptInside(drawing, look, room, view);
}

DrawingView keptInside(const report::Drawing& drawing,
                       const PlotLook& look,
                       QSizeF room,
                       const DrawingView& view) {
    const DrawingView whole = wholeView(drawing, look, room);
    DrawingView kept = view;
    kept.scale =
        std::clamp(view.scale, whole.scale, std::max(whole.scale, kLargest * naturalScale(look)));
    const auto inside = [&kept](qreal middle, qreal length, qreal side) {
        const qreal half = side / kept.scale / 2;
        const qreal least = half - kMarginMm;
        const qreal most = length + kMarginMm - half;
        return least < most ? std::clamp(middle, least, most) : length / 2;
    };
    kept.middle = {inside(view.middle.x(), drawing.width, room.width()),
                   inside(view.middle.y(), drawing.height, room.height())};
    return kept;
}

void paintDrawing(QPainter& painter,
                  const report::Drawing& drawing,
                  const PlotLook& look,
                  QSizeF size,
                  const DrawingView& view,
                  DrawingTitle title) {
    painter.save();
    painter.fillRect(QRectF(QPointF(), size), look.paper);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(fontOf(look, true));
    painter.setPen(look.ink);
    const Status fine = report::checkDrawing(drawing);
    if (!fine) {
        painter.drawText(QRectF(QPointF(), size),
                         Qt::AlignCenter | Qt::TextWordWrap,
                         quick::errorWords(fine.error()));
    } else {
        const QRectF room = drawingRoom(drawing, look, size, title);
        if (title == DrawingTitle::Shown) {
            painter.drawText(
                QRectF(0, 0, size.width(), room.top()), Qt::TextWordWrap, fromText(drawing.title));
        }
        const Canvas on{painter,
                        drawing,
                        look,
                        lookAtScale(look, view.scale),
                        room.center() - view.middle * view.scale};
        drawInside(on, room);
        drawFoot(on, size);
    }
    painter.restore();
}

} // namespace bullace::plots
