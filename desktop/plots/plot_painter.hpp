// Plots painted by one function: on the glass, on paper and in a test. Needs a QApplication, and is
// to be called in its thread.
#pragma once

#include "core/report/plot.hpp"

#include <QColor>
#include <QSizeF>
#include <QString>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace bullace::plots {

struct PlotLook {
    QColor ink = Qt::black;
    QColor paper = Qt::white;
    QString family;
    int textPx = 12;   // of all words, in the painter's units
    qreal pxPerMm = 4; // the painter's units in a millimetre
};

// Draws the plot into `size` at the painter's origin and leaves the painter as it was: its title, a
// key of what has no room at a line's end, axes with titles and units, the data, and its notes
// below. Up to eight lines carry their names at their ends; faint series are grey. Series differ in
// marker or dash as well as in colour. A plot that checkPlot() refuses is drawn as the message, one
// without any point as a sentence that there is none.
void paintPlot(QPainter& painter, const report::Plot& plot, const PlotLook& look, QSizeF size);

} // namespace bullace::plots
