// Drawings (report::Drawing) painted by one function: on the glass, on paper and in a test. Needs a
// QApplication, and is to be called in its thread.
#pragma once

#include "plots/plot_painter.hpp"

#include "core/report/drawing.hpp"

#include <QPointF>
#include <QRectF>

namespace bullace::plots {

// Which part of a drawing is seen, and how large.
struct DrawingView {
    qreal scale = 1; // the painter's units in a millimetre of the drawing
    QPointF middle;  // mm: the place of the drawing in the middle of the room
};

// Letters of this view are as large as the look wants them.
[[nodiscard]] qreal naturalScale(const PlotLook& look);

enum class DrawingTitle { Shown, Left };
// What is left of `size` for the drawing itself, above its key and notes and below its title.
[[nodiscard]] QRectF
drawingRoom(const report::Drawing& drawing, const PlotLook& look, QSizeF size, DrawingTitle title);
// All of it, its letters not larger than the look wants them.
[[nodiscard]] DrawingView
wholeView(const report::Drawing& drawing, const PlotLook& look, QSizeF room);
// Where a person begins to read: all of it where its letters are readable then, else letters as
// the look wants them, with the first strong box in the middle.
[[nodiscard]] DrawingView
firstView(const report::Drawing& drawing, const PlotLook& look, QSizeF room);
// The nearest view that has no more free room than it must, and a scale between that of all and
// three times the natural one.
[[nodiscard]] DrawingView keptInside(const report::Drawing& drawing,
                                     const PlotLook& look,
                                     QSizeF room,
                                     const DrawingView& view);

// Draws into `size` at the painter's origin and leaves the painter as it was: title, the part that
// the view shows, key and notes. A drawing that checkDrawing() refuses is drawn as the message.
void paintDrawing(QPainter& painter,
                  const report::Drawing& drawing,
                  const PlotLook& look,
                  QSizeF size,
                  const DrawingView& view,
                  DrawingTitle title = DrawingTitle::Shown);

} // namespace bullace::plots
