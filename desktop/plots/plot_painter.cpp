#include "plots/plot_painter.hpp"

#include "plots/plot_canvas.hpp"
#include "plots/plot_words.hpp"

#include "quick/palette.hpp"
#include "quick/words.hpp"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::plots {

namespace {

using quick::fromText;
using report::PlotSeries;

constexpr std::size_t kMostNamed = 8; // lines with their names at their ends

// One plot being drawn.
struct Drawing {
    QPainter& painter;
    const report::Plot& plot;
    const PlotLook& look;
    std::vector<SeriesStyle> styles;

    [[nodiscard]] qreal mm(qreal length) const { return plots::mm(look, length); }
    [[nodiscard]] qreal advance(const QString& text) const {
        return QFontMetricsF(fontOf(look)).horizontalAdvance(text);
    }
    void words(const QRectF& box, int flags, const QString& text, bool isBold = false) const {
        painter.setFont(fontOf(look, isBold));
        painter.setPen(look.ink);
        painter.drawText(box, flags, text);
    }
    // The height of words that are wrapped at `width`.
    [[nodiscard]] qreal wrapped(qreal width, const QString& text, bool isBold = false) const {
        const QFontMetricsF metrics(fontOf(look, isBold));
        return metrics.boundingRect(QRectF(0, 0, width, 1e6), Qt::TextWordWrap, text).height();
    }
};

bool isLine(const PlotSeries& series) {
    return series.kind == PlotSeries::Line || series.kind == PlotSeries::Steps;
}

// Whether lines carry their names at their ends.
bool namesAtEnds(const report::Plot& plot) {
    const auto named =
        std::count_if(plot.series.begin(), plot.series.end(), [](const PlotSeries& series) {
            return isLine(series) && !series.isFaint && !series.name.empty();
        });
    return named > 0 && static_cast<std::size_t>(named) <= kMostNamed;
}

bool isNamedAtEnd(const report::Plot& plot, const PlotSeries& series) {
    return namesAtEnds(plot) && isLine(series) && !series.isFaint && !series.isGuessed &&
           !series.name.empty() && !series.points.empty();
}

struct KeyEntry {
    std::size_t series = 0;
    QRectF box; // the sample at its left, the words behind
};

// What has no name at a line's end, in lines from left to right below `top`.
std::vector<KeyEntry> keyOf(const Drawing& on, QRectF room) {
    std::vector<KeyEntry> entries;
    std::set<std::pair<std::string, int>> told;
    const qreal high = lineHeight(on.look);
    QPointF at = room.topLeft();
    for (std::size_t i = 0; i < on.plot.series.size(); ++i) {
        const PlotSeries& series = on.plot.series[i];
        if (series.name.empty() || isNamedAtEnd(on.plot, series) ||
            !told.insert({series.name, series.kind}).second) {
            continue;
        }
        const qreal wide =
            std::min(room.width(), on.mm(9) + on.advance(fromText(series.name)) + on.mm(3));
        if (at.x() > room.left() && at.x() + wide > room.right()) {
            at = QPointF(room.left(), at.y() + high);
        }
        entries.push_back({i, QRectF(at, QSizeF(wide, high))});
        at.rx() += wide;
    }
    return entries;
}

void drawSample(const Drawing& on, std::size_t number, const QRectF& box) {
    const PlotSeries& series = on.plot.series[number];
    const SeriesStyle& style = on.styles[number];
    const QPointF middle = box.center();
    if (series.kind == PlotSeries::Points) {
        drawMarker(on.painter, style, on.look, middle, on.mm(1));
    } else if (isLine(series)) {
        on.painter.setPen(penOf(style, on.look, series.isFaint ? 0.3 : 0.55));
        on.painter.drawLine(QPointF(box.left(), middle.y()), QPointF(box.right(), middle.y()));
    } else {
        QColor fill = style.colour;
        fill.setAlphaF(series.kind == PlotSeries::Band    ? 0.22F
                       : series.kind == PlotSeries::Boxes ? 0.3F
                                                          : 1.0F);
        const bool hasEdge = series.kind != PlotSeries::Band;
        on.painter.setPen(hasEdge ? QPen(on.look.ink, std::max(1.0, on.mm(0.15)))
                                  : QPen(Qt::NoPen));
        on.painter.setBrush(fill);
        on.painter.drawRect(QRectF(box.left(), middle.y() - on.mm(1.2), box.width(), on.mm(2.4)));
    }
}

void drawKey(const Drawing& on, const std::vector<KeyEntry>& entries) {
    for (const KeyEntry& entry : entries) {
        QRectF sample = entry.box;
        sample.setWidth(on.mm(6));
        drawSample(on, entry.series, sample);
        const QRectF words = entry.box.adjusted(on.mm(7.5), 0, 0, 0);
        const QString name = QFontMetricsF(fontOf(on.look))
                                 .elidedText(fromText(on.plot.series[entry.series].name),
                                             Qt::ElideRight,
                                             words.width());
        on.words(words, Qt::AlignLeft | Qt::AlignVCenter, name);
    }
}

struct EndName {
    std::size_t series = 0;
    qreal lineX = 0;
    qreal lineY = 0;
    qreal y = 0; // where the words' middle is, so that none lies on another
};

std::vector<EndName> endNames(const Drawing& on, const PlotCanvas& canvas) {
    std::vector<EndName> names;
    for (std::size_t i = 0; i < on.plot.series.size(); ++i) {
        if (isNamedAtEnd(on.plot, on.plot.series[i])) {
            const auto& points = on.plot.series[i].points;
            const auto& last = on.plot.x.isReversed ? points.front() : points.back();
            const qreal y =
                std::clamp(canvas.yAt(last.y), canvas.axes().top(), canvas.axes().bottom());
            names.push_back({i, std::min(canvas.xAt(last.x), canvas.axes().right()), y, y});
        }
    }
    std::stable_sort(names.begin(), names.end(), [](const EndName& one, const EndName& other) {
        return one.lineY < other.lineY;
    });
    const qreal high = lineHeight(on.look);
    for (std::size_t i = 1; i < names.size(); ++i) {
        names[i].y = std::max(names[i].y, names[i - 1].y + high);
    }
    qreal lowest = canvas.axes().bottom();
    for (auto name = names.rbegin(); name != names.rend(); ++name) {
        name->y = std::min(name->y, lowest);
        lowest = name->y - high;
    }
    return names;
}

void drawEndNames(const Drawing& on, const PlotCanvas& canvas, qreal room) {
    const qreal left = canvas.axes().right() + on.mm(1);
    const qreal high = lineHeight(on.look);
    for (const EndName& name : endNames(on, canvas)) {
        const PlotSeries& series = on.plot.series[name.series];
        const QPointF end(name.lineX, name.lineY);
        on.painter.setPen(QPen(tint(on.look, 0.4), std::max(1.0, on.mm(0.15))));
        on.painter.drawLine(end, QPointF(left + on.mm(0.5), name.y));
        on.painter.setPen(penOf(on.styles[name.series], on.look, 0.7));
        on.painter.drawLine(QPointF(left + on.mm(0.5), name.y), QPointF(left + on.mm(6), name.y));
        const QRectF words(left + on.mm(7), name.y - high / 2, room - on.mm(8), high);
        const QString text = QFontMetricsF(fontOf(on.look))
                                 .elidedText(fromText(series.name), Qt::ElideRight, words.width());
        on.words(words, Qt::AlignLeft | Qt::AlignVCenter, text);
    }
}

void drawSpans(const Drawing& on, const PlotCanvas& canvas) {
    for (std::size_t i = 0; i < on.plot.series.size(); ++i) {
        const PlotSeries& series = on.plot.series[i];
        if (series.kind != PlotSeries::Spans) {
            continue;
        }
        const qreal half = std::min(std::abs(canvas.yAt(0) - canvas.yAt(1)) * 0.3, on.mm(2.2));
        for (const report::PlotPoint& point : series.points) {
            const qreal y = canvas.yAt(point.y);
            const qreal from = canvas.xAt(*point.xLow);
            const qreal to = canvas.xAt(*point.xHigh);
            const QColor fill = on.styles[i].colour;
            on.painter.setPen(QPen(on.look.ink, std::max(1.0, on.mm(0.15))));
            on.painter.setBrush(series.isGuessed ? QBrush(fill, Qt::BDiagPattern) : QBrush(fill));
            on.painter.drawRect(
                QRectF(QPointF(from, y - half), QPointF(to, y + half)).normalized());
            const qreal x = canvas.xAt(point.x);
            on.painter.setPen(
                QPen(quick::inkOn(fill), std::max(1.0, on.mm(0.8)), Qt::SolidLine, Qt::FlatCap));
            on.painter.drawLine(QPointF(x, y - half), QPointF(x, y + half));
        }
    }
}

void drawRug(const Drawing& on, const PlotCanvas& canvas) {
    on.painter.setPen(QPen(on.look.ink, std::max(1.0, on.mm(0.25)), Qt::SolidLine, Qt::FlatCap));
    for (const double visit : on.plot.rug) {
        const qreal x = canvas.xAt(visit);
        on.painter.drawLine(QPointF(x, canvas.axes().bottom()),
                            QPointF(x, canvas.axes().bottom() - on.mm(1.8)));
    }
}

// Words on the data: the paper shines through behind them.
void drawMarkWords(const Drawing& on, QRectF box, int flags, const QString& text) {
    QColor ground = on.look.paper;
    ground.setAlphaF(0.8F);
    on.painter.fillRect(box, ground);
    on.words(box, flags | Qt::TextWordWrap, text);
}

// A lying line has its words above its right end, or below it where there is no room; a standing
// one beside its upper end, on the wider side where they do not fit on the right one.
void drawMark(const Drawing& on, const QRectF& axes, const report::PlotMark& mark, QPointF at) {
    const QString text = fromText(mark.words);
    const qreal gap = on.mm(0.7);
    const qreal wanted = on.advance(text) + on.mm(0.5);
    const QLineF line = mark.isOnY ? QLineF(axes.left(), at.y(), axes.right(), at.y())
                                   : QLineF(at.x(), axes.top(), at.x(), axes.bottom());
    QPen pen(on.look.ink, std::max(1.0, on.mm(0.3)));
    pen.setDashPattern({3, 3});
    on.painter.setPen(pen);
    on.painter.drawLine(line);
    const bool isAtRight = axes.right() - at.x() >= std::min(wanted + gap, axes.width() / 2);
    const qreal room = mark.isOnY
                           ? axes.width()
                           : (isAtRight ? axes.right() - at.x() : at.x() - axes.left()) - gap;
    const qreal wide = std::min(wanted, room);
    const qreal high = on.wrapped(wide, text);
    if (mark.isOnY) {
        const qreal top = at.y() - high >= axes.top() ? at.y() - high : at.y();
        drawMarkWords(on, {axes.right() - wide, top, wide, high}, Qt::AlignRight, text);
        return;
    }
    const qreal left = isAtRight ? at.x() + gap : at.x() - gap - wide;
    drawMarkWords(
        on, {left, axes.top(), wide, high}, isAtRight ? Qt::AlignLeft : Qt::AlignRight, text);
}

void drawMarks(const Drawing& on, const PlotCanvas& canvas) {
    for (const report::PlotMark& mark : on.plot.marks) {
        drawMark(
            on,
            canvas.axes(),
            mark,
            QPointF(mark.isOnY ? 0 : canvas.xAt(mark.at), mark.isOnY ? canvas.yAt(mark.at) : 0));
    }
}

qreal endRoom(const Drawing& on, qreal width) {
    qreal widest = 0;
    for (const PlotSeries& series : on.plot.series) {
        if (isNamedAtEnd(on.plot, series)) {
            widest = std::max(widest, on.advance(fromText(series.name)));
        }
    }
    return widest > 0 ? std::min(widest + on.mm(9), width * 0.4) : on.mm(3);
}

void drawCanvas(const Drawing& on, const QRectF& box) {
    const qreal room = endRoom(on, box.width());
    on.painter.save();
    on.painter.translate(box.topLeft());
    const PlotCanvas canvas(on.painter, on.plot, on.look, box.size().toSize(), room);
    on.painter.save();
    on.painter.setClipRect(canvas.axes(), Qt::IntersectClip);
    drawSpans(on, canvas);
    drawRug(on, canvas);
    drawMarks(on, canvas);
    on.painter.restore();
    drawEndNames(on, canvas, room);
    on.painter.restore();
}

// The lines below the plot, from the foot of `page` upwards; how high they are.
qreal drawNotes(const Drawing& on, const QRectF& page) {
    const QStringList lines = noteLines(on.plot.notes);
    qreal height = 0;
    for (const QString& line : lines) {
        height += on.wrapped(page.width(), line);
    }
    qreal top = page.bottom() - height;
    for (const QString& line : lines) {
        const qreal high = on.wrapped(page.width(), line);
        on.words(QRectF(page.left(), top, page.width(), high), Qt::TextWordWrap, line);
        top += high;
    }
    return height > 0 ? height + on.mm(1.5) : 0;
}

bool hasPoints(const report::Plot& plot) {
    return std::any_of(plot.series.begin(), plot.series.end(), [](const PlotSeries& series) {
        return !series.points.empty();
    });
}

void drawAll(const Drawing& on, QRectF page) {
    const QString title = fromText(on.plot.title);
    if (!title.isEmpty()) {
        const qreal high = on.wrapped(page.width(), title, true);
        on.words(QRectF(page.topLeft(), QSizeF(page.width(), high)), Qt::TextWordWrap, title, true);
        page.setTop(page.top() + high + on.mm(1));
    }
    page.setBottom(page.bottom() - drawNotes(on, page));
    const Status status = report::checkPlot(on.plot);
    if (!status.ok() || !hasPoints(on.plot)) {
        on.words(page,
                 Qt::AlignCenter | Qt::TextWordWrap,
                 status.ok() ? nothingNoted() : quick::errorWords(status.error()));
        return;
    }
    const auto key = keyOf(on, page);
    drawKey(on, key);
    page.setTop(key.empty() ? page.top() : key.back().box.bottom() + on.mm(0.5));
    if (page.height() > 4 * lineHeight(on.look) && page.width() > on.mm(25)) {
        drawCanvas(on, page);
    }
}

} // namespace

void paintPlot(QPainter& painter, const report::Plot& plot, const PlotLook& look, QSizeF size) {
    const Drawing on{painter, plot, look, stylesOf(plot, look)};
    painter.save();
    painter.fillRect(QRectF(QPointF(), size), look.paper);
    painter.setRenderHint(QPainter::Antialiasing);
    drawAll(on, QRectF(QPointF(), size));
    painter.restore();
}

} // namespace bullace::plots
