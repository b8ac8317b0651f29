#include "quick/block_map_cells.hpp"

#include "core/report/palettes.hpp"
#include "quick/palette.hpp"

#include <QFontMetricsF>
#include <QPainter>
#include <QPolygonF>
#include <QtMath>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bullace::quick {

namespace {

constexpr qsizetype kShort = 4;     // symbols of a text that has to fit, such as "12.5"
constexpr double kLeastText = 0.75; // of the other words' size

std::vector<QColor> fillsOf(const BlockMapScale& scale) {
    const auto count = scale.kind == BlockMapScale::Plain ? 0 : scale.steps.size();
    std::vector<report::Rgb> colours;
    if (scale.kind == BlockMapScale::Classes) {
        const auto categories = report::categoryColours();
        for (std::size_t i = 0; i < count; ++i) {
            colours.push_back(categories[i % categories.size()]);
        }
    } else {
        colours =
            report::spreadOver(scale.kind == BlockMapScale::Diverging ? report::divergingColours()
                                                                      : report::orderedColours(),
                               count);
    }
    std::vector<QColor> fills;
    std::transform(colours.begin(), colours.end(), std::back_inserter(fills), colourOf);
    return fills;
}

// The shape that stands for a class beside its colour, about `at`.
QPolygonF markerOf(std::size_t classNumber, QPointF at, qreal radius) {
    struct Shape {
        int corners;
        double turn; // of the first corner, in turns from the right
        double dent; // radius of every second corner
    };
    static constexpr std::array<Shape, 8> kShapes{{{16, 0, 1},         // disc
                                                   {4, 0.125, 1},      // square
                                                   {3, -0.25, 1},      // triangle
                                                   {8, 0, 0.3},        // four rays
                                                   {4, 0, 1},          // diamond
                                                   {3, 0.25, 1},       // triangle on its point
                                                   {8, 0.125, 0.3},    // four slanting rays
                                                   {12, 0.25, 0.45}}}; // six rays
    const Shape& shape = kShapes[classNumber % kShapes.size()];
    QPolygonF marker;
    for (int i = 0; i < shape.corners; ++i) {
        const double angle =
            (shape.turn + static_cast<double>(i) / shape.corners) * 2 * std::numbers::pi;
        const double reach = radius * (i % 2 == 1 ? shape.dent : 1);
        marker << at + QPointF(std::cos(angle), std::sin(angle)) * reach;
    }
    return marker;
}

} // namespace

BlockMapCells::BlockMapCells(QPainter& painter,
                             const BlockMapPicture& picture,
                             const BlockMapLook& look,
                             const BlockMapLayout& layout)
    : painter_(painter),
      picture_(picture),
      look_(look),
      layout_(layout),
      fills_(fillsOf(picture.scale)),
      fillRects_(fills_.size() + 1) {
    for (const QColor& fill : fills_) {
        stepInks_.push_back(inkOn(fill) == QColor(Qt::black) ? Black : White);
    }
}

void BlockMapCells::setPlaceSize(QSizeF placeSize) {
    placeSize_ = placeSize;
    isSmall_ = std::min(placeSize.width(), placeSize.height()) < layout_.mm(2.6);
}

void BlockMapCells::fitTexts() {
    QString widest;
    for (const BlockMapRow& row : picture_.rows) {
        for (const BlockMapCell& cell : row.cells) {
            const auto length = cell.text.size();
            if (cell.state == BlockMapCell::Value && length <= kShort && length > widest.size()) {
                widest = cell.text;
            }
        }
    }
    const int least = qCeil(look_.textPx * kLeastText);
    for (textPx_ = look_.textPx; textPx_ >= least; --textPx_) {
        const QFontMetricsF metrics(textFont());
        if (metrics.horizontalAdvance(widest) < placeSize_.width() - layout_.mm(0.8) &&
            metrics.capHeight() * 1.7 < placeSize_.height()) {
            return;
        }
    }
    textPx_ = 0;
}

QFont BlockMapCells::textFont() const {
    QFont font = layout_.font(true);
    font.setPixelSize(std::max(1, textPx_));
    return font;
}

qreal BlockMapCells::stroke() const {
    return std::max(1.0, layout_.mm(isSmall_ ? 0.2 : 0.32));
}

QRectF BlockMapCells::inside(const QRectF& box) const {
    const qreal half = stroke() / 2;
    return box.adjusted(half, half, -half, -half);
}

BlockMapCells::Ink BlockMapCells::inkAt(const std::optional<std::size_t>& step) const {
    return step ? stepInks_[*step] : Own;
}

QColor BlockMapCells::colourOfInk(Ink ink) const {
    return ink == Own ? look_.ink : QColor(ink == Black ? Qt::black : Qt::white);
}

void BlockMapCells::take(const BlockMapCell& cell, const QRectF& box) {
    switch (cell.state) {
    case BlockMapCell::Value:
        takeValue(cell, box);
        break;
    case BlockMapCell::NotObserved:
        takeHatch(box);
        break;
    case BlockMapCell::Missing:
        takeMissing(box);
        break;
    case BlockMapCell::Dead:
        grounds_ << box;
        dots_ << box;
        break;
    case BlockMapCell::Open:
        grounds_ << box;
        frames_ << inside(box);
        halves_ << inside(box);
        break;
    case BlockMapCell::Empty: {
        const QPointF half(box.width() * 0.2, 0);
        dashes_ << QLineF(box.center() - half, box.center() + half);
        break;
    }
    }
    if (cell.isMarked) {
        takeMark(cell, box);
    }
}

void BlockMapCells::takeValue(const BlockMapCell& cell, const QRectF& box) {
    const auto step = stepOf(picture_.scale, cell.value);
    fillRects_[step.value_or(fills_.size())] << box;
    const bool isWritten = !cell.text.isEmpty() && takeText(cell, box, inkAt(step));
    if (step && !isWritten && picture_.scale.kind == BlockMapScale::Classes) {
        takeMarker(*step, box);
    }
}

bool BlockMapCells::takeText(const BlockMapCell& cell, const QRectF& box, Ink ink) {
    if (textPx_ == 0) {
        return false;
    }
    auto known = texts_.find(cell.text);
    if (known == texts_.end()) {
        QStaticText text(cell.text);
        text.setTextFormat(Qt::PlainText);
        text.prepare(QTransform(), textFont());
        known = texts_.insert(cell.text, text);
    }
    const QSizeF size = known->size();
    if (size.width() > box.width() - layout_.mm(0.2)) {
        return false;
    }
    words_[ink].push_back({box.center() - QPointF(size.width() / 2, size.height() / 2), cell.text});
    return true;
}

void BlockMapCells::takeMarker(std::size_t step, const QRectF& box) {
    const qreal side = std::min(box.width(), box.height());
    if (side >= layout_.mm(1.2)) {
        QPainterPath& path = shapes_[stepInks_[step]];
        path.addPolygon(markerOf(step, box.center(), side * 0.34));
        path.closeSubpath();
    }
}

// Lines that rise to the right, cut at the cell's edges.
void BlockMapCells::takeHatch(const QRectF& box) {
    const qreal least = isSmall_ ? 2.5 * stroke() : layout_.mm(1.1);
    const qreal pitch = std::max(least, std::min(layout_.mm(1.6), box.height() / 3));
    grounds_ << box;
    for (qreal along = pitch / 2; along < box.width() + box.height(); along += pitch) {
        const qreal right = std::min(along, box.width());
        const qreal down = std::min(along, box.height());
        hatch_ << QLineF(box.left() + right,
                         box.top() + along - right,
                         box.left() + along - down,
                         box.top() + down);
    }
}

void BlockMapCells::takeMissing(const QRectF& box) {
    const QRectF frame = inside(box);
    const qreal side = std::min(frame.width(), frame.height()) * (isSmall_ ? 1 : 0.56);
    QRectF cross(0, 0, side, side);
    cross.moveCenter(frame.center());
    grounds_ << box;
    frames_ << frame;
    crosses_ << QLineF(cross.topLeft(), cross.bottomRight())
             << QLineF(cross.bottomLeft(), cross.topRight());
}

void BlockMapCells::takeMark(const BlockMapCell& cell, const QRectF& box) {
    const qreal side = std::clamp(std::min(box.width(), box.height()) * 0.5, 2.0, layout_.mm(2.2));
    const bool hasFill = cell.state == BlockMapCell::Value;
    const Ink ink = inkAt(hasFill ? stepOf(picture_.scale, cell.value) : std::nullopt);
    shapes_[ink].addPolygon(QPolygonF(
        {box.topRight() - QPointF(side, 0), box.topRight(), box.topRight() + QPointF(0, side)}));
    shapes_[ink].closeSubpath();
}

void BlockMapCells::draw() {
    painter_.save();
    drawFills();
    painter_.setRenderHint(QPainter::Antialiasing, !isSmall_);
    drawShapes();
    drawInks();
    painter_.restore();
    forget();
}

void BlockMapCells::drawFills() {
    painter_.setRenderHint(QPainter::Antialiasing, false);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(look_.paper);
    painter_.drawRects(grounds_);
    for (std::size_t i = 0; i < fillRects_.size(); ++i) {
        painter_.setBrush(i < fills_.size() ? fills_[i] : look_.paper);
        painter_.drawRects(fillRects_[i]);
    }
    if (isSmall_) {
        return;
    }
    // White, yellow and violet each vanish on one of the two grounds without an edge.
    QColor edge = look_.ink;
    edge.setAlphaF(0.55F);
    painter_.setPen(QPen(edge, std::max(1.0, layout_.mm(0.12))));
    painter_.setBrush(Qt::NoBrush);
    for (const auto& rects : fillRects_) {
        painter_.drawRects(rects);
    }
}

void BlockMapCells::drawShapes() {
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(look_.ink, stroke(), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter_.drawRects(frames_);
    painter_.drawLines(crosses_);
    painter_.drawLines(dashes_);
    painter_.setPen(QPen(look_.ink, std::max(1.0, layout_.mm(0.18))));
    painter_.drawLines(hatch_);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(look_.ink);
    drawDots();
    for (const QRectF& box : halves_) {
        painter_.drawPolygon(QPolygonF({box.topLeft(), box.bottomLeft(), box.bottomRight()}));
    }
}

// Small dots are two bands across each other, which a pixel or two make as round as a circle does,
// in a tenth of the time: a winter may leave thousands of them.
void BlockMapCells::drawDots() {
    QList<QRectF> bands;
    for (const QRectF& box : dots_) {
        const QPointF at = box.center();
        const qreal side = std::min(box.width(), box.height());
        if (!isSmall_) {
            painter_.drawEllipse(at, 0.28 * side, 0.28 * side);
            continue;
        }
        const qreal half = 0.4 * side;
        const qreal inner = 0.24 * side;
        bands << QRectF(at.x() - half, at.y() - inner, 2 * half, 2 * inner)
              << QRectF(at.x() - inner, at.y() - half, 2 * inner, 2 * half);
    }
    painter_.drawRects(bands);
}

void BlockMapCells::drawInks() {
    painter_.setFont(textFont());
    for (const Ink ink : {Black, White, Own}) {
        painter_.fillPath(shapes_[ink], colourOfInk(ink));
        painter_.setPen(colourOfInk(ink));
        for (const Word& word : words_[ink]) {
            painter_.drawStaticText(word.at, texts_[word.text]);
        }
    }
}

void BlockMapCells::forget() {
    for (auto& rects : fillRects_) {
        rects.clear();
    }
    for (QList<QRectF>* rects : {&grounds_, &frames_, &dots_, &halves_}) {
        rects->clear();
    }
    for (QList<QLineF>* lines : {&crosses_, &hatch_, &dashes_}) {
        lines->clear();
    }
    shapes_.fill({});
    words_.fill({});
}

} // namespace bullace::quick
