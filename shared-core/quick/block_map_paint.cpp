// Draws what block_map_layout.cpp has placed: heads, wires and posts, and the legend; the cells
// themselves are drawn by block_map_cells.cpp.
#include "quick/block_map_cells.hpp"

#include <QFontMetricsF>
#include <QLocale>
#include <QPainter>
#include <QPolygonF>

#include <algorithm>
#include <cmath>

namespace bullace::quick {

namespace {

// One picture being drawn.
struct MapDrawing {
    QPainter& painter;
    const BlockMapPicture& picture;
    const BlockMapLook& look;
    const BlockMapLayout& layout;

    void words(const QRectF& box, int flags, const QString& text, bool isBold = false) const {
        painter.setFont(layout.font(isBold));
        painter.setPen(look.ink);
        painter.drawText(box, flags | Qt::TextSingleLine, text);
    }
    void line(QPointF from, QPointF to, qreal widthMm) const {
        painter.setPen(
            QPen(look.ink, std::max(1.0, layout.mm(widthMm)), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(from, to);
    }
};

void drawHead(const MapDrawing& on) {
    QRectF box = on.layout.head();
    box.setHeight(on.layout.lineHeight());
    if (!on.picture.title.isEmpty()) {
        on.words(box, Qt::AlignLeft | Qt::AlignTop, on.picture.title, true);
        box.translate(0, on.layout.lineHeight() * 1.15);
    }
    for (const QString& note : on.layout.noteLines()) {
        on.words(box, Qt::AlignLeft | Qt::AlignTop, note);
        box.translate(0, on.layout.lineHeight() * 0.95);
    }
}

// 1, 2, 5, 10, 20, …: the one behind the i-th.
int nextRoundStep(int step, int i) {
    return i % 3 == 1 ? step / 2 * 5 : step * 2;
}

// Of 1, 2, 5, 10, 20, …: the least at which the vines' numbers keep apart.
int numberStep(const MapDrawing& on) {
    const QString widest = QString::number(on.layout.lastVine());
    const qreal room =
        QFontMetricsF(on.layout.font()).horizontalAdvance(widest) + on.layout.mm(1.5);
    int step = 1;
    for (int i = 0; step * on.layout.cellWidth() < room && step < 1'000'000; ++i) {
        step = nextRoundStep(step, i);
    }
    return step;
}

void drawVineNumbers(const MapDrawing& on) {
    const QRectF& field = on.layout.field();
    const int step = numberStep(on);
    const qreal half = step * on.layout.cellWidth() / 2;
    const int first = on.layout.firstVine();
    for (int vine = first; vine <= on.layout.lastVine(); ++vine) {
        const qreal x = on.layout.vineX(vine);
        const bool isTold = vine % step == 0 || (vine == first && first % step == 1);
        const bool isCrowded = vine == step && first == 1 && step == 2;
        if (isTold && !isCrowded && x >= field.left() && x <= field.right()) {
            const qreal high = on.layout.lineHeight();
            on.words(QRectF(x - half, field.top() - high, 2 * half, high),
                     Qt::AlignHCenter | Qt::AlignVCenter,
                     QString::number(vine));
        }
    }
}

// Where not all have room: the first of each block, and every second, fifth, tenth… from it.
void drawRowNumbers(const MapDrawing& on) {
    const QRectF& field = on.layout.field();
    const qreal high = QFontMetricsF(on.layout.font()).height() * 0.9;
    int step = 1;
    for (int i = 0; step * on.layout.rowHeight() < high && step < 1'000'000; ++i) {
        step = nextRoundStep(step, i);
    }
    int inBlock = 0;
    for (std::size_t row = 0; row < on.picture.rows.size(); ++row) {
        inBlock = on.layout.hasHeading(row) ? 1 : inBlock + 1;
        const qreal middle = on.layout.rowY(row) + on.layout.rowHeight() / 2;
        const bool isTold = inBlock == 1 || (inBlock % step == 0 && inBlock > 1);
        if (!isTold || middle < field.top() || middle > field.bottom()) {
            continue;
        }
        on.words(QRectF(0, middle - high, field.left() - on.layout.mm(0.5), 2 * high),
                 Qt::AlignRight | Qt::AlignVCenter,
                 on.picture.rows[row].number);
    }
}

void drawArrow(const MapDrawing& on, QPointF post, qreal towards) {
    const qreal half = std::min(on.layout.rowHeight() * 0.35, on.layout.mm(1.1));
    const qreal foot = post.x() - towards * on.layout.mm(0.6);
    on.painter.setPen(Qt::NoPen);
    on.painter.setBrush(on.look.ink);
    on.painter.drawPolygon(QPolygonF({QPointF(foot, post.y()),
                                      QPointF(foot - towards * 1.8 * half, post.y() - half),
                                      QPointF(foot - towards * 1.8 * half, post.y() + half)}));
}

// The wire from post to post, behind the cells, and where the walk begins.
void drawWire(const MapDrawing& on, std::size_t row) {
    const BlockMapRow& told = on.picture.rows[row];
    if (told.cells.empty()) {
        return;
    }
    const QRectF first = on.layout.placeBox({row, 0});
    const QRectF last = on.layout.placeBox({row, told.cells.size() - 1});
    const qreal y = first.center().y();
    const qreal half = std::min(on.layout.rowHeight() * 0.4, on.layout.mm(2.5));
    const QPointF begin(first.left() - on.layout.mm(0.7), y);
    const QPointF end(last.right() + on.layout.mm(0.7), y);
    on.line(begin, end, 0.15);
    for (const QPointF& post : {begin, end}) {
        on.line(post - QPointF(0, half), post + QPointF(0, half), 0.5);
    }
    if (told.walk == BlockMapRow::FromFirst) {
        drawArrow(on, begin, 1);
    } else if (told.walk == BlockMapRow::FromLast) {
        drawArrow(on, end, -1);
    }
}

void drawHeading(const MapDrawing& on, std::size_t row) {
    const qreal high = on.layout.lineHeight();
    on.words(QRectF(on.layout.field().left() + on.layout.mm(1),
                    on.layout.rowY(row) - high,
                    on.layout.field().width(),
                    high),
             Qt::AlignLeft | Qt::AlignVCenter,
             on.picture.rows[row].block,
             true);
}

void drawRows(const MapDrawing& on) {
    const QRectF& field = on.layout.field();
    BlockMapCells cells(on.painter, on.picture, on.look, on.layout);
    cells.setPlaceSize({on.layout.cellWidth(), on.layout.rowHeight()});
    cells.fitTexts();
    on.painter.save();
    on.painter.setClipRect(field, Qt::IntersectClip);
    for (std::size_t row = 0; row < on.picture.rows.size(); ++row) {
        const qreal top = on.layout.rowY(row);
        if (top > field.bottom() || top + on.layout.rowHeight() < field.top()) {
            continue;
        }
        on.layout.hasHeading(row) ? drawHeading(on, row) : void();
        drawWire(on, row);
        const auto& told = on.picture.rows[row].cells;
        for (std::size_t cell = 0; cell < told.size(); ++cell) {
            const QRectF box = on.layout.cellBox({row, cell});
            if (box.right() >= field.left() && box.left() <= field.right()) {
                cells.take(told[cell], box);
            }
        }
    }
    cells.draw();
    on.painter.restore();
}

void drawNorth(const MapDrawing& on, QPointF middle) {
    const qreal reach = on.layout.mm(4);
    on.painter.save();
    on.painter.translate(middle);
    on.painter.rotate(*on.picture.northDegrees);
    on.line({0, reach}, {0, -reach}, 0.4);
    on.painter.setPen(Qt::NoPen);
    on.painter.setBrush(on.look.ink);
    on.painter.drawPolygon(QPolygonF({QPointF(0, -reach),
                                      QPointF(-reach * 0.35, -reach * 0.3),
                                      QPointF(reach * 0.35, -reach * 0.3)}));
    on.painter.restore();
    on.words(QRectF(middle.x() + reach, middle.y() - reach, reach * 2, 2 * reach),
             Qt::AlignLeft | Qt::AlignVCenter,
             northWord(),
             true);
}

void drawLegend(const MapDrawing& on) {
    const auto lines = legendOf(on.picture);
    const QRectF& box = on.layout.legend();
    const qreal high = on.layout.lineHeight();
    const auto columns = on.layout.legendColumns();
    const auto deep = (lines.size() + columns - 1) / columns;
    const qreal wide = box.width() / static_cast<qreal>(columns);
    on.words(QRectF(box.left(), box.top(), box.width(), high),
             Qt::AlignLeft | Qt::AlignVCenter,
             legendTitle(on.picture.scale),
             true);
    BlockMapCells samples(on.painter, on.picture, on.look, on.layout);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const QPointF at(box.left() + static_cast<qreal>(i / deep) * wide,
                         box.top() + (static_cast<qreal>(i % deep) + 1.2) * high);
        const QRectF sample(at + QPointF(0, high * 0.1), QSizeF(high * 1.1, high * 0.8));
        samples.take(lines[i].sample, sample);
        const QRectF words(at.x() + high * 1.5, at.y(), wide - high * 1.5 - on.layout.mm(2), high);
        on.words(words, Qt::AlignLeft | Qt::AlignVCenter, lines[i].words);
        on.words(words, Qt::AlignRight | Qt::AlignVCenter, QLocale().toString(lines[i].count));
    }
    samples.draw();
    if (on.picture.northDegrees) {
        const qreal below = box.top() + (static_cast<qreal>(deep) + 1.6) * high;
        drawNorth(on, {box.left() + on.layout.mm(5), below + on.layout.mm(4)});
    }
}

} // namespace

void paintBlockMap(QPainter& painter,
                   const BlockMapPicture& picture,
                   const BlockMapLook& look,
                   QSizeF size) {
    const BlockMapLayout layout(picture, look, size);
    const MapDrawing on{painter, picture, look, layout};
    painter.save();
    painter.fillRect(QRectF(QPointF(), size), look.paper);
    painter.setRenderHint(QPainter::Antialiasing);
    drawHead(on);
    drawRows(on);
    drawVineNumbers(on);
    drawRowNumbers(on);
    drawLegend(on);
    painter.restore();
}

} // namespace bullace::quick
