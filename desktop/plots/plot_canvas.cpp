#include "plots/plot_canvas.hpp"

#include "plots/plot_words.hpp"
#include "plots/relay_device.hpp"

#include <QFontMetricsF>
#include <QSharedPointer>
#include <QtMath>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace bullace::plots {

namespace {

using report::PlotPoint;
using report::PlotSeries;

constexpr qreal kLineMm = 0.55;
constexpr qreal kFaintMm = 0.3;
constexpr qreal kMarkerMm = 1.0; // radius
constexpr int kSizes = 6;        // of markers, by how many observations they are made of

// One QCustomPlot being filled. All that is added to it is owned by it.
struct Filling {
    QCustomPlot& into;
    const report::Plot& plot;
    const PlotLook& look;

    [[nodiscard]] qreal mm(qreal length) const { return plots::mm(look, length); }
    [[nodiscard]] qreal lineMm(const PlotSeries& series) const {
        return series.isFaint ? kFaintMm : kLineMm;
    }
};

std::vector<PlotPoint> byX(std::vector<PlotPoint> points) {
    std::stable_sort(points.begin(),
                     points.end(),
                     [](const PlotPoint& one, const PlotPoint& other) { return one.x < other.x; });
    return points;
}

// Markers on the edge of the axes are whole.
class WholeMarkers : public QCPGraph {
public:
    WholeMarkers(QCustomPlot& plot, int room) : QCPGraph(plot.xAxis, plot.yAxis), room_(room) {}

protected:
    [[nodiscard]] QRect clipRect() const override {
        return QCPGraph::clipRect().adjusted(-room_, -room_, room_, room_);
    }

private:
    int room_;
};

QCPGraph& graphOf(const Filling& on, const std::vector<PlotPoint>& points, qreal markerRadius = 0) {
    QList<double> keys;
    QList<double> values;
    for (const PlotPoint& point : points) {
        keys << point.x;
        values << point.y;
    }
    auto* graph = new WholeMarkers(on.into, qCeil(markerRadius));
    graph->setData(keys, values, true);
    graph->setLineStyle(QCPGraph::lsNone);
    return *graph;
}

QCPScatterStyle scatterOf(const Filling& on, const SeriesStyle& style, qreal radius) {
    QPainterPath marker;
    QPolygonF corners = markerOf(style.group);
    for (QPointF& corner : corners) {
        corner *= 3; // the library draws a path of 6 units at its size
    }
    marker.addPolygon(corners);
    marker.closeSubpath();
    const qreal edge = std::max(1.0, on.mm(style.isOpen ? 0.35 : 0.12)) * 3 / radius;
    QCPScatterStyle scatter(marker,
                            QPen(style.isOpen ? style.colour : on.look.ink, edge),
                            style.isOpen ? on.look.paper : style.colour,
                            2 * radius);
    return scatter;
}

// A point's size by its weight: equal areas for equal numbers, in a few steps.
int sizeStep(const PlotPoint& point, double greatest) {
    if (!point.weight || greatest <= 0) {
        return kSizes;
    }
    const double share = std::sqrt(std::clamp(*point.weight / greatest, 0.0, 1.0));
    return std::clamp(static_cast<int>(std::ceil(share * kSizes)), 1, kSizes);
}

void addWhiskers(const Filling& on,
                 const PlotSeries& series,
                 const SeriesStyle& style,
                 bool isAlongX) {
    std::vector<PlotPoint> points;
    QList<double> minus;
    QList<double> plus;
    for (const PlotPoint& point : byX(series.points)) {
        const auto& low = isAlongX ? point.xLow : point.yLow;
        const auto& high = isAlongX ? point.xHigh : point.yHigh;
        const double middle = isAlongX ? point.x : point.y;
        if (low && high) {
            points.push_back(point);
            minus << middle - *low;
            plus << *high - middle;
        }
    }
    if (points.empty()) {
        return;
    }
    QCPGraph& carrier = graphOf(on, points);
    auto* bars = new QCPErrorBars(on.into.xAxis, on.into.yAxis);
    bars->setErrorType(isAlongX ? QCPErrorBars::etKeyError : QCPErrorBars::etValueError);
    bars->setDataPlottable(&carrier);
    bars->setData(minus, plus);
    bars->setSymbolGap(0);
    bars->setWhiskerWidth(on.mm(1.8));
    bars->setPen(QPen(style.colour, std::max(1.0, on.mm(0.3))));
}

void addPoints(const Filling& on, const PlotSeries& series, const SeriesStyle& style) {
    double greatest = 0;
    for (const PlotPoint& point : series.points) {
        greatest = std::max(greatest, point.weight.value_or(0));
    }
    std::array<std::vector<PlotPoint>, kSizes + 1> bySize;
    for (const PlotPoint& point : byX(series.points)) {
        bySize[static_cast<std::size_t>(sizeStep(point, greatest))].push_back(point);
    }
    const qreal most = on.mm(greatest > 0 ? 2.0 : kMarkerMm);
    for (std::size_t step = 1; step <= kSizes; ++step) {
        if (!bySize[step].empty()) {
            const qreal radius = most * static_cast<qreal>(step) / kSizes;
            graphOf(on, bySize[step], radius).setScatterStyle(scatterOf(on, style, radius));
        }
    }
}

void addLine(const Filling& on, const PlotSeries& series, const SeriesStyle& style) {
    QCPGraph& graph = graphOf(on, series.points);
    graph.setLineStyle(series.kind == PlotSeries::Steps ? QCPGraph::lsStepLeft : QCPGraph::lsLine);
    graph.setPen(penOf(style, on.look, on.lineMm(series)));
}

void addBars(const Filling& on, const PlotSeries& series, const SeriesStyle& style) {
    const auto points = byX(series.points);
    QList<double> keys;
    QList<double> values;
    for (std::size_t i = 0; i < points.size(); ++i) {
        keys << points[i].x;
        values << points[i].y;
    }
    auto* bars = new QCPBars(on.into.xAxis, on.into.yAxis);
    bars->setData(keys, values, true);
    bars->setWidth(report::barGap(series) * 0.7);
    bars->setPen(QPen(on.look.ink, std::max(1.0, on.mm(0.15))));
    bars->setBrush(series.isGuessed ? QBrush(style.colour, Qt::BDiagPattern)
                                    : QBrush(style.colour));
}

void addBand(const Filling& on, const PlotSeries& series, const SeriesStyle& style) {
    auto low = series.points;
    auto high = series.points;
    for (std::size_t i = 0; i < low.size(); ++i) {
        low[i].y = *low[i].yLow;
        high[i].y = *high[i].yHigh;
    }
    QColor fill = style.colour;
    fill.setAlphaF(series.isGuessed ? 0.1F : 0.22F);
    QCPGraph& lower = graphOf(on, low);
    QCPGraph& upper = graphOf(on, high);
    for (QCPGraph* graph : {&lower, &upper}) {
        graph->setLineStyle(QCPGraph::lsLine);
        graph->setPen(Qt::NoPen);
    }
    upper.setBrush(fill);
    upper.setChannelFillGraph(&lower);
}

void addBoxes(const Filling& on, const PlotSeries& series, const SeriesStyle& style) {
    auto* boxes = new QCPStatisticalBox(on.into.xAxis, on.into.yAxis);
    for (const PlotPoint& point : byX(series.points)) {
        boxes->addData(point.x, *point.yLow, *point.boxLow, point.y, *point.boxHigh, *point.yHigh);
    }
    QColor fill = style.colour;
    fill.setAlphaF(0.3F);
    const QPen thin(on.look.ink, std::max(1.0, on.mm(0.25)));
    boxes->setWidth(0.5);
    boxes->setWhiskerWidth(0.25);
    boxes->setPen(thin);
    boxes->setBrush(fill);
    boxes->setWhiskerPen(thin);
    boxes->setWhiskerBarPen(thin);
    boxes->setMedianPen(QPen(on.look.ink, std::max(1.0, on.mm(0.7)), Qt::SolidLine, Qt::FlatCap));
}

void addSeries(const Filling& on, const PlotSeries& series, const SeriesStyle& style) {
    switch (series.kind) {
    case PlotSeries::Points:
        addWhiskers(on, series, style, true);
        addWhiskers(on, series, style, false);
        addPoints(on, series, style);
        break;
    case PlotSeries::Line:
    case PlotSeries::Steps:
        addLine(on, series, style);
        break;
    case PlotSeries::Bars:
        addBars(on, series, style);
        addWhiskers(on, series, {on.look.ink, 0, {}, false}, false);
        break;
    case PlotSeries::Band:
        addBand(on, series, style);
        break;
    case PlotSeries::Boxes:
        addBoxes(on, series, style);
        break;
    case PlotSeries::Spans: // drawn by the painter, behind all of this
        break;
    }
}

// The words in lines of at most `room`, broken between words only.
QString brokenAt(const Filling& on, const QString& words, qreal room) {
    const QFontMetricsF metrics(fontOf(on.look, true));
    QStringList lines;
    const auto all = words.split(QLatin1Char(' '));
    for (const QString& word : all) {
        const QString longer = lines.isEmpty() ? word : lines.last() + QLatin1Char(' ') + word;
        if (lines.isEmpty() || metrics.horizontalAdvance(longer) > room) {
            lines << word;
        } else {
            lines.last() = longer;
        }
    }
    return lines.join(QLatin1Char('\n'));
}

void setLook(const Filling& on, QCPAxis& axis, const report::PlotAxis& told, qreal room) {
    const QPen line(on.look.ink, std::max(1.0, on.mm(0.25)));
    axis.setBasePen(line);
    axis.setTickPen(line);
    axis.setSubTicks(false);
    axis.setTickLength(0, qRound(on.mm(1)));
    axis.setTickLabelFont(fontOf(on.look));
    axis.setTickLabelColor(on.look.ink);
    axis.setTickLabelPadding(qRound(on.mm(1)));
    axis.setLabelFont(fontOf(on.look, true));
    axis.setLabelColor(on.look.ink);
    axis.setLabelPadding(qRound(on.mm(1)));
    axis.setPadding(qRound(on.mm(0.5)));
    axis.setLabel(brokenAt(on, axisTitle(told), room));
    axis.grid()->setPen(QPen(tint(on.look, 0.16), std::max(1.0, on.mm(0.15))));
    axis.grid()->setZeroLinePen(QPen(tint(on.look, 0.5), std::max(1.0, on.mm(0.15))));
}

qreal widestTick(const Filling& on, const std::vector<report::PlotTick>& ticks) {
    const QFontMetricsF metrics(fontOf(on.look));
    qreal widest = 0;
    for (const report::PlotTick& tick : ticks) {
        widest = std::max(widest, metrics.horizontalAdvance(tickWords(tick)));
    }
    return widest;
}

// As many ticks as have room; names that have none side by side are turned.
void setXTicks(const Filling& on, const report::PlotLimits& limits, qreal width) {
    std::vector<report::PlotTick> ticks;
    for (int most = 12; most >= 2; --most) {
        ticks = report::ticksOf(on.plot.x, limits, most);
        const auto count = static_cast<qreal>(std::max<std::size_t>(1, ticks.size()));
        const qreal place = width / count;
        if (widestTick(on, ticks) + on.mm(3) <= place) {
            break;
        }
    }
    const bool isCrowded = on.plot.x.kind == report::PlotAxis::Names &&
                           widestTick(on, ticks) + on.mm(2) >
                               width / static_cast<qreal>(std::max<std::size_t>(1, ticks.size()));
    auto ticker = QSharedPointer<QCPAxisTickerText>::create();
    for (const report::PlotTick& tick : ticks) {
        ticker->addTick(tick.at, tickWords(tick));
    }
    on.into.xAxis->setTicker(ticker);
    on.into.xAxis->setTickLabelRotation(isCrowded ? 90 : 0);
}

void setYTicks(const Filling& on, const report::PlotLimits& limits, qreal height) {
    const int most = std::clamp(static_cast<int>(height / (2.2 * lineHeight(on.look))), 2, 9);
    auto ticker = QSharedPointer<QCPAxisTickerText>::create();
    for (const report::PlotTick& tick : report::ticksOf(on.plot.y, limits, most)) {
        ticker->addTick(tick.at, tickWords(tick));
    }
    on.into.yAxis->setTicker(ticker);
}

} // namespace

PlotCanvas::PlotCanvas(
    QPainter& painter, const report::Plot& plot, const PlotLook& look, QSize size, qreal rightRoom)
    : x_(report::limitsOf(plot, report::PlotSide::X)),
      y_(report::limitsOf(plot, report::PlotSide::Y)),
      isXReversed_(plot.x.isReversed),
      isYReversed_(plot.y.isReversed) {
    QCustomPlot drawn;
    const Filling on{drawn, plot, look};
    drawn.setBackground(Qt::NoBrush);
    drawn.setAntialiasedElements(QCP::aeAll);
    drawn.plotLayout()->setMargins(QMargins());
    setLook(on, *drawn.xAxis, plot.x, size.width() - rightRoom);
    setLook(on, *drawn.yAxis, plot.y, size.height() - 2 * lineHeight(look));
    drawn.xAxis->setRange(x_.least, x_.greatest);
    drawn.yAxis->setRange(y_.least, y_.greatest);
    drawn.xAxis->setRangeReversed(isXReversed_);
    drawn.yAxis->setRangeReversed(isYReversed_);
    setXTicks(on, x_, size.width() - rightRoom - mm(look, 16));
    setYTicks(on, y_, size.height() - 3 * lineHeight(look));
    drawn.xAxis->grid()->setVisible(plot.x.kind != report::PlotAxis::Names);
    drawn.yAxis->grid()->setVisible(plot.y.kind != report::PlotAxis::Names);
    QCPAxisRect& rect = *drawn.axisRect();
    rect.setAutoMargins(QCP::msLeft | QCP::msBottom);
    rect.setMargins(QMargins(0, qRound(lineHeight(look) * 0.5), qRound(rightRoom), 0));
    const auto styles = stylesOf(plot, look);
    for (const bool isFaint : {true, false}) { // what is faint lies behind
        for (std::size_t i = 0; i < plot.series.size(); ++i) {
            plot.series[i].isFaint == isFaint ? addSeries(on, plot.series[i], styles[i]) : void();
        }
    }
    // The library draws with a painter of its own.
    RelayDevice relay(painter, size, RelayDevice::Words::AsWords);
    QCPPainter own;
    own.begin(&relay);
    own.setModes(QCPPainter::pmVectorized | QCPPainter::pmNoCaching);
    drawn.setViewport(QRect(QPoint(), size));
    drawn.toPainter(&own, size.width(), size.height());
    own.end();
    // The library counts from the last row of pixels inside.
    axes_ = QRectF(rect.left(), rect.bottom() - rect.height(), rect.width(), rect.height());
}

qreal PlotCanvas::xAt(double x) const {
    const double share = (x - x_.least) / (x_.greatest - x_.least);
    return axes_.left() + axes_.width() * (isXReversed_ ? 1 - share : share);
}

qreal PlotCanvas::yAt(double y) const {
    const double share = (y - y_.least) / (y_.greatest - y_.least);
    return axes_.bottom() - axes_.height() * (isYReversed_ ? 1 - share : share);
}

} // namespace bullace::plots
