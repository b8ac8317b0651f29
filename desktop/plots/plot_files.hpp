// Plots as files: a page of PDF with its typeface, and SVG whose words are outlines.
#pragma once

#include "plots/plot_painter.hpp"

#include "core/base/result.hpp"

#include <QByteArray>
#include <QPageSize>
#include <QString>

namespace bullace::plots {

// One landscape page, black on white, `family` embedded; the plot fills it inside its margins.
// Errors: InvalidInput where checkPlot() refuses the plot; Io where the file cannot be written.
[[nodiscard]] Status writePlotPdf(const QString& path,
                                  const report::Plot& plot,
                                  const QString& family,
                                  QPageSize::PageSizeId paper = QPageSize::Letter);

// An SVG picture of that size, without a reference to any typeface. Errors: those of checkPlot();
// InvalidInput where a side is not 20 to 2,000 mm.
[[nodiscard]] Result<QByteArray>
plotSvg(const report::Plot& plot, const QString& family, QSizeF sizeMm);

// The table of the plot's data as CSV (RFC 4180, UTF-8, numbers with a point), with a first row of
// titles.
[[nodiscard]] QByteArray plotCsv(const report::Plot& plot);

} // namespace bullace::plots
