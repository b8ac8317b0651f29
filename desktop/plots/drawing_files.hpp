// Drawings as files: a page of PDF, SVG whose words are outlines, and CSV.
#pragma once

#include "core/base/result.hpp"
#include "core/report/drawing.hpp"

#include <QByteArray>
#include <QPageSize>
#include <QString>

namespace bullace::plots {

// One landscape page. Where the drawing does not fit it with letters of six points and more, the
// page is as large as the drawing with letters of nine: it is printed in parts or on a roll.
// Errors: InvalidInput where checkDrawing() refuses the drawing; Io where the file cannot be
// written.
[[nodiscard]] Status writeDrawingPdf(const QString& path,
                                     const report::Drawing& drawing,
                                     const QString& family,
                                     QPageSize::PageSizeId paper = QPageSize::Letter);

// As large as the drawing with letters of nine points, at most 2,000 mm. Errors: those of
// checkDrawing().
[[nodiscard]] Result<QByteArray> drawingSvg(const report::Drawing& drawing, const QString& family);

// The table of the drawing as CSV (RFC 4180, UTF-8), with a first row of titles.
[[nodiscard]] QByteArray drawingCsv(const report::Drawing& drawing);

} // namespace bullace::plots
