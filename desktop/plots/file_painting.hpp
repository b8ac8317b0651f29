// What plots and drawings share when they become files.
#pragma once

#include "plots/plot_painter.hpp"

#include "core/base/result.hpp"

#include <QByteArray>
#include <QPageLayout>
#include <QString>

#include <functional>

namespace bullace::plots {

inline constexpr double kFileMarginMm = 15;

// Letters of nine points, black on white.
[[nodiscard]] PlotLook fileLook(const QString& family, double dotsPerInch);

// Paints into the room inside the margins.
using PaintInto = std::function<void(QPainter& painter, const PlotLook& look, QSizeF size)>;

// One page of PDF. Errors: Io where the file cannot be written.
[[nodiscard]] Status writePdfPage(const QString& path,
                                  const QString& title,
                                  const QString& family,
                                  const QPageLayout& layout,
                                  const PaintInto& paint);

struct SvgWords {
    QString title;
    QString description;
    QString family;
};
// An SVG picture whose words are outlines. Errors: InvalidInput where a side is not 20 to 2,000 mm.
[[nodiscard]] Result<QByteArray>
svgPicture(const SvgWords& words, QSizeF sizeMm, const PaintInto& paint);

} // namespace bullace::plots
