#include "plots/plot_style.hpp"

#include "core/report/palettes.hpp"
#include "quick/palette.hpp"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>

namespace bullace::plots {

namespace {

const std::array<QList<qreal>, 4> kDashes{QList<qreal>{}, {5, 2.5}, {8, 2.5, 1.5, 2.5}, {2.5, 2}};
constexpr qreal kHairSpacing = 0.02; // below 1/64 it counts as none
const QList<qreal> kGuessed{0.8, 2.6};

// Category by its number, in a colour that is seen on the paper: black is the ink's.
QColor categoryOn(const PlotLook& look, std::size_t number) {
    const auto colours = report::categoryColours();
    const QColor colour = quick::colourOf(colours[number % colours.size()]);
    return colour == QColor(Qt::black) ? look.ink : colour;
}

} // namespace

std::vector<SeriesStyle> stylesOf(const report::Plot& plot, const PlotLook& look) {
    std::map<std::size_t, std::size_t> numbers; // by the plot's own groups
    std::size_t next = 0;
    std::vector<SeriesStyle> styles;
    for (const report::PlotSeries& series : plot.series) {
        std::size_t number = 0;
        if (series.isFaint) {
            number = 0;
        } else if (series.group) {
            const auto known = numbers.find(*series.group);
            number = known == numbers.end() ? next++ : known->second;
            numbers[*series.group] = number;
        } else {
            number = next++;
        }
        SeriesStyle style;
        style.group = number;
        style.colour = series.isFaint ? tint(look, 0.38) : categoryOn(look, number);
        // Colours come again after eight, and then with another dash.
        style.dashes =
            series.isFaint ? QList<qreal>{} : kDashes[(number + number / 8) % kDashes.size()];
        style.dashes = series.isGuessed ? kGuessed : style.dashes;
        style.isOpen = series.isGuessed;
        styles.push_back(std::move(style));
    }
    return styles;
}

QFont fontOf(const PlotLook& look, bool isBold) {
    QFont font(look.family);
    font.setPixelSize(std::max(1, look.textPx));
    font.setBold(isBold);
    // A hair of spacing keeps "fi" two letters: as one sign it is not found when a PDF is searched.
    font.setLetterSpacing(QFont::AbsoluteSpacing, kHairSpacing);
    return font;
}

qreal lineHeight(const PlotLook& look) {
    return std::ceil(QFontMetricsF(fontOf(look)).height() * 1.15);
}

QPen penOf(const SeriesStyle& style, const PlotLook& look, qreal widthMm) {
    QPen pen(style.colour, std::max(1.0, mm(look, widthMm)));
    pen.setCapStyle(style.dashes.isEmpty() ? Qt::RoundCap : Qt::FlatCap);
    pen.setJoinStyle(Qt::RoundJoin);
    if (!style.dashes.isEmpty()) {
        pen.setDashPattern(style.dashes);
    }
    return pen;
}

QColor tint(const PlotLook& look, double share) {
    const auto mixed = [share](int ink, int paper) {
        return static_cast<int>(std::lround(share * ink + (1 - share) * paper));
    };
    return QColor(mixed(look.ink.red(), look.paper.red()),
                  mixed(look.ink.green(), look.paper.green()),
                  mixed(look.ink.blue(), look.paper.blue()));
}

QPolygonF markerOf(std::size_t group) {
    struct Shape {
        int corners;
        double turn; // of the first corner, in turns from the right
        double dent; // radius of every second corner
    };
    static constexpr std::array<Shape, 8> kShapes{{{24, 0, 1},        // disc
                                                   {4, 0.125, 1},     // square
                                                   {3, -0.25, 1},     // triangle
                                                   {4, 0, 1},         // diamond
                                                   {3, 0.25, 1},      // triangle on its point
                                                   {8, 0, 0.4},       // four rays
                                                   {8, 0.125, 0.4},   // four slanting rays
                                                   {12, 0.25, 0.5}}}; // six rays
    const Shape& shape = kShapes[group % kShapes.size()];
    QPolygonF marker;
    for (int i = 0; i < shape.corners; ++i) {
        const double angle =
            (shape.turn + static_cast<double>(i) / shape.corners) * 2 * std::numbers::pi;
        const double reach = i % 2 == 1 ? shape.dent : 1;
        marker << QPointF(std::cos(angle), std::sin(angle)) * reach;
    }
    return marker;
}

void drawMarker(
    QPainter& painter, const SeriesStyle& style, const PlotLook& look, QPointF at, qreal radius) {
    QPolygonF marker = markerOf(style.group);
    for (QPointF& corner : marker) {
        corner = at + corner * radius;
    }
    const qreal edge = std::max(1.0, mm(look, style.isOpen ? 0.35 : 0.12));
    painter.setPen(QPen(style.isOpen ? style.colour : look.ink, edge));
    painter.setBrush(style.isOpen ? QBrush(look.paper) : QBrush(style.colour));
    painter.drawPolygon(marker);
}

} // namespace bullace::plots
