// The axes of a plot and what is drawn between them. The library that draws is behind this alone.
#pragma once

#include "plots/plot_style.hpp"

#include <QRectF>

namespace bullace::plots {

class PlotCanvas {
public:
    // Draws a plot that checkPlot() has passed into `size` at the painter's origin, and leaves
    // `rightRoom` beside the axes free.
    PlotCanvas(QPainter& painter,
               const report::Plot& plot,
               const PlotLook& look,
               QSize size,
               qreal rightRoom);

    [[nodiscard]] const QRectF& axes() const { return axes_; }
    // Where a value lies in the picture.
    [[nodiscard]] qreal xAt(double x) const;
    [[nodiscard]] qreal yAt(double y) const;

private:
    QRectF axes_;
    report::PlotLimits x_;
    report::PlotLimits y_;
    bool isXReversed_ = false;
    bool isYReversed_ = false;
};

} // namespace bullace::plots
