// What was noted of one descriptor at a vine or of an accession, as a plot.
#pragma once

#include "office/vine_file.hpp"

#include "core/base/units.hpp"
#include "core/report/drawing.hpp"
#include "core/report/plot.hpp"

#include <QString>

#include <optional>

namespace bullace::desk {

// Where some season has values of at least three days, one line for each season over the days of
// the year; else a point for each value over the seasons. Nothing where there are not two numbers.
[[nodiscard]] std::optional<report::Plot>
vinePlot(const office::VineFile& file, const vineyard::Asked& asked, const UnitWishes& wishes);

// As its name's end says: .pdf, .svg or .csv. Errors: InvalidInput for another end; those of
// writing.
[[nodiscard]] Status writePlotFile(const QString& path, const report::Plot& plot, bool isA4);
[[nodiscard]] Status
writeDrawingFile(const QString& path, const report::Drawing& drawing, bool isA4);

} // namespace bullace::desk
