// How each series of a plot is told from the others, and the sizes that all of a plot shares.
#pragma once

#include "plots/plot_painter.hpp"

#include <QFont>
#include <QList>
#include <QPen>
#include <QPolygonF>

#include <vector>

namespace bullace::plots {

struct SeriesStyle {
    QColor colour;
    std::size_t group = 0; // with which number of colour, marker and dash
    QList<qreal> dashes;   // in widths of the line; empty for a whole one
    bool isOpen = false;   // markers without a fill
};

// One for each series. What is guessed is dotted; what is faint is grey.
[[nodiscard]] std::vector<SeriesStyle> stylesOf(const report::Plot& plot, const PlotLook& look);

[[nodiscard]] inline qreal mm(const PlotLook& look, qreal length) {
    return length * look.pxPerMm;
}
[[nodiscard]] QFont fontOf(const PlotLook& look, bool isBold = false);
[[nodiscard]] qreal lineHeight(const PlotLook& look);
[[nodiscard]] QPen penOf(const SeriesStyle& style, const PlotLook& look, qreal widthMm);
// `share` of the ink on the paper, 0 to 1.
[[nodiscard]] QColor tint(const PlotLook& look, double share);
// The marker of a group about the origin, in a circle of radius 1.
[[nodiscard]] QPolygonF markerOf(std::size_t group);
// Draws it at a place; the edge keeps pale fills from vanishing.
void drawMarker(
    QPainter& painter, const SeriesStyle& style, const PlotLook& look, QPointF at, qreal radius);

} // namespace bullace::plots
