#include "plots/plot_files.hpp"

#include "plots/plot_words.hpp"
#include "plots/relay_device.hpp"

#include "core/base/numbers.hpp"
#include "core/report/csv.hpp"
#include "quick/words.hpp"

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include <cmath>

namespace bullace::plots {

namespace {

constexpr int kPdfDotsPerInch = 1200;
constexpr double kMmPerInch = 25.4;
constexpr double kTextMm = 3.3; // height of a line's letters with their tails: 9 points
constexpr double kMarginMm = 15;
constexpr int kSvgDotsPerInch = 288; // whole units then are fine enough for lines
constexpr double kLeastSideMm = 20;
constexpr double kMostSideMm = 2000;

PlotLook lookAt(const QString& family, double dotsPerInch) {
    const double unitsPerMm = dotsPerInch / kMmPerInch;
    return {Qt::black, Qt::white, family, qRound(kTextMm * unitsPerMm), unitsPerMm};
}

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
    QPdfWriter writer(path);
    writer.setResolution(kPdfDotsPerInch);
    writer.setPageLayout(QPageLayout(QPageSize(paper),
                                     QPageLayout::Landscape,
                                     QMarginsF(kMarginMm, kMarginMm, kMarginMm, kMarginMm),
                                     QPageLayout::Millimeter));
    writer.setTitle(quick::fromText(plot.title));
    QPainter painter;
    if (!painter.begin(&writer)) {
        return Error{
            ErrorCode::Io,
            "The file " + quick::toText(path) +
                " cannot be written. Choose another folder, or see whether the disk is full.",
            {}};
    }
    paintPlot(
        painter, plot, lookAt(family, kPdfDotsPerInch), QSizeF(writer.width(), writer.height()));
    if (!painter.end()) {
        return Error{
            ErrorCode::Io, "The file " + quick::toText(path) + " was not written whole.", {}};
    }
    return {};
}

Result<QByteArray> plotSvg(const report::Plot& plot, const QString& family, QSizeF sizeMm) {
    if (const Status fine = report::checkPlot(plot); !fine) {
        return fine.error();
    }
    const auto isSide = [](double mm) { return mm >= kLeastSideMm && mm <= kMostSideMm; };
    if (!isSide(sizeMm.width()) || !isSide(sizeMm.height())) {
        return Error{ErrorCode::InvalidInput, "A picture is 20 to 2,000 mm wide and high.", {}};
    }
    const PlotLook look = lookAt(family, kSvgDotsPerInch);
    const QSize size = (sizeMm * look.pxPerMm).toSize();
    QBuffer file;
    file.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&file);
    generator.setResolution(kSvgDotsPerInch);
    generator.setSize(size);
    generator.setViewBox(QRect(QPoint(), size));
    generator.setTitle(quick::fromText(plot.title));
    generator.setDescription(plotSummary(plot));
    QPainter into(&generator);
    RelayDevice outlines(into, size, RelayDevice::Words::AsOutlines);
    QPainter painter(&outlines);
    paintPlot(painter, plot, look, size);
    painter.end();
    into.end();
    return file.data();
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
