#include "plots/plot_files.hpp"

#include "plots/file_painting.hpp"
#include "plots/plot_words.hpp"

#include "core/base/numbers.hpp"
#include "core/report/csv.hpp"
#include "quick/words.hpp"

#include <cmath>

namespace bullace::plots {

namespace {

std::string cellText(const report::PlotTable::Cell& cell) {
    if (const auto* number = std::get_if<double>(&cell)) {
        const bool isWhole = std::abs(*number) < 1e15 && *number == std::floor(*number);
        return isWhole ? std::to_string(static_cast<long long>(*number)) : shortestFloat(*number);
    }
    if (const auto* date = std::get_if<CivilDate>(&cell)) {
        return writeDate(*date);
    }
    const auto* text = std::get_if<std::string>(&cell);
    return text == nullptr ? std::string() : *text;
}

} // namespace

Status writePlotPdf(const QString& path,
                    const report::Plot& plot,
                    const QString& family,
                    QPageSize::PageSizeId paper) {
    if (const Status fine = report::checkPlot(plot); !fine) {
        return fine;
    }
    const QPageLayout layout(QPageSize(paper),
                             QPageLayout::Landscape,
                             QMarginsF(kFileMarginMm, kFileMarginMm, kFileMarginMm, kFileMarginMm),
                             QPageLayout::Millimeter);
    return writePdfPage(path,
                        quick::fromText(plot.title),
                        family,
                        layout,
                        [&plot](QPainter& painter, const PlotLook& look, QSizeF size) {
                            paintPlot(painter, plot, look, size);
                        });
}

Result<QByteArray> plotSvg(const report::Plot& plot, const QString& family, QSizeF sizeMm) {
    if (const Status fine = report::checkPlot(plot); !fine) {
        return fine.error();
    }
    return svgPicture({quick::fromText(plot.title), plotSummary(plot), family},
                      sizeMm,
                      [&plot](QPainter& painter, const PlotLook& look, QSizeF size) {
                          paintPlot(painter, plot, look, size);
                      });
}

QByteArray plotCsv(const report::Plot& plot) {
    const report::PlotTable table = report::tableOf(plot);
    std::vector<std::string> cells;
    for (const QString& title : plotTableText(plot).header) {
        cells.push_back(quick::toText(title));
    }
    std::string out;
    report::appendCsvRow(out, cells);
    for (const auto& row : table.rows) {
        cells.clear();
        for (const auto& cell : row) {
            cells.push_back(cellText(cell));
        }
        report::appendCsvRow(out, cells);
    }
    return QByteArray::fromStdString(out);
}

} // namespace bullace::plots
