#include "plots/drawing_files.hpp"

#include "plots/drawing_painter.hpp"
#include "plots/drawing_words.hpp"
#include "plots/file_painting.hpp"

#include "core/report/csv.hpp"
#include "quick/words.hpp"

#include <algorithm>

namespace bullace::plots {

namespace {

constexpr double kLeastLetters = 6.0 / 9.0; // of the natural size
constexpr double kLeastWidthMm = 120;       // room for the key and the notes
constexpr double kFrameMm = 4;
constexpr double kMostMm = 2000;
constexpr double kSomeDotsPerInch = 288;

// The drawing with its title, key and notes, letters as they are.
QSizeF ownSizeMm(const report::Drawing& drawing, const QString& family) {
    const PlotLook look = fileLook(family, kSomeDotsPerInch);
    const double width = std::max(drawing.width + kFrameMm, kLeastWidthMm);
    const QSizeF probe(width * look.pxPerMm, 1e6);
    const QRectF room = drawingRoom(drawing, look, probe, DrawingTitle::Shown);
    const double around = (probe.height() - room.height()) / look.pxPerMm;
    return {std::min(kMostMm, width), std::min(kMostMm, drawing.height + kFrameMm + around)};
}

void paintWhole(QPainter& painter,
                const report::Drawing& drawing,
                const PlotLook& look,
                QSizeF size) {
    const QSizeF room = drawingRoom(drawing, look, size, DrawingTitle::Shown).size();
    paintDrawing(painter, drawing, look, size, wholeView(drawing, look, room));
}

bool fits(const report::Drawing& drawing, const QString& family, QSizeF sizeMm) {
    const PlotLook look = fileLook(family, kSomeDotsPerInch);
    const QSizeF room =
        drawingRoom(drawing, look, sizeMm * look.pxPerMm, DrawingTitle::Shown).size();
    return wholeView(drawing, look, room).scale >= kLeastLetters * naturalScale(look);
}

} // namespace

Status writeDrawingPdf(const QString& path,
                       const report::Drawing& drawing,
                       const QString& family,
                       QPageSize::PageSizeId paper) {
    if (Status fine = report::checkDrawing(drawing); !fine) {
        return fine;
    }
    const QMarginsF margins(kFileMarginMm, kFileMarginMm, kFileMarginMm, kFileMarginMm);
    QPageLayout layout(QPageSize(paper), QPageLayout::Landscape, margins, QPageLayout::Millimeter);
    if (!fits(drawing, family, layout.paintRect(QPageLayout::Millimeter).size())) {
        const QSizeF own = ownSizeMm(drawing, family);
        const QSizeF page = own + QSizeF(2 * kFileMarginMm, 2 * kFileMarginMm);
        layout = QPageLayout(QPageSize(page, QPageSize::Millimeter, {}, QPageSize::ExactMatch),
                             QPageLayout::Portrait,
                             margins,
                             QPageLayout::Millimeter);
    }
    return writePdfPage(path,
                        quick::fromText(drawing.title),
                        family,
                        layout,
                        [&drawing](QPainter& painter, const PlotLook& look, QSizeF size) {
                            paintWhole(painter, drawing, look, size);
                        });
}

Result<QByteArray> drawingSvg(const report::Drawing& drawing, const QString& family) {
    if (const Status fine = report::checkDrawing(drawing); !fine) {
        return fine.error();
    }
    return svgPicture({quick::fromText(drawing.title), drawingSummary(drawing), family},
                      ownSizeMm(drawing, family),
                      [&drawing](QPainter& painter, const PlotLook& look, QSizeF size) {
                          paintWhole(painter, drawing, look, size);
                      });
}

QByteArray drawingCsv(const report::Drawing& drawing) {
    const DrawingTableText table = drawingTableText(drawing);
    std::string out;
    const auto add = [&out](const QStringList& row) {
        std::vector<std::string> cells;
        for (const QString& cell : row) {
            cells.push_back(quick::toText(cell));
        }
        report::appendCsvRow(out, cells);
    };
    add(table.header);
    for (const QStringList& row : table.rows) {
        add(row);
    }
    return QByteArray::fromStdString(out);
}

} // namespace bullace::plots
