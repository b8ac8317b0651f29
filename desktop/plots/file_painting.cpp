#include "plots/file_painting.hpp"

#include "plots/relay_device.hpp"

#include "quick/words.hpp"

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

namespace bullace::plots {

namespace {

constexpr int kPdfDotsPerInch = 1200;
constexpr double kMmPerInch = 25.4;
constexpr double kTextMm = 3.3;      // height of a line's letters with their tails: 9 points
constexpr int kSvgDotsPerInch = 288; // whole units then are fine enough for lines
constexpr double kLeastSideMm = 20;
constexpr double kMostSideMm = 2000;

} // namespace

PlotLook fileLook(const QString& family, double dotsPerInch) {
    const double unitsPerMm = dotsPerInch / kMmPerInch;
    return {Qt::black, Qt::white, family, qRound(kTextMm * unitsPerMm), unitsPerMm};
}

Status writePdfPage(const QString& path,
                    const QString& title,
                    const QString& family,
                    const QPageLayout& layout,
                    const PaintInto& paint) {
    QPdfWriter writer(path);
    writer.setResolution(kPdfDotsPerInch);
    writer.setPageLayout(layout);
    writer.setTitle(title);
    QPainter painter;
    if (!painter.begin(&writer)) {
        return Error{
            ErrorCode::Io,
            "The file " + quick::toText(path) +
                " cannot be written. Choose another folder, or see whether the disk is full.",
            {}};
    }
    paint(painter, fileLook(family, kPdfDotsPerInch), QSizeF(writer.width(), writer.height()));
    if (!painter.end()) {
        return Error{
            ErrorCode::Io, "The file " + quick::toText(path) + " was not written whole.", {}};
    }
    return {};
}

Result<QByteArray> svgPicture(const SvgWords& words, QSizeF sizeMm, const PaintInto& paint) {
    const auto isSide = [](double mm) { return mm >= kLeastSideMm && mm <= kMostSideMm; };
    if (!isSide(sizeMm.width()) || !isSide(sizeMm.height())) {
        return Error{ErrorCode::InvalidInput, "A picture is 20 to 2,000 mm wide and high.", {}};
    }
    const PlotLook look = fileLook(words.family, kSvgDotsPerInch);
    const QSize size = (sizeMm * look.pxPerMm).toSize();
    QBuffer file;
    file.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&file);
    generator.setResolution(kSvgDotsPerInch);
    generator.setSize(size);
    generator.setViewBox(QRect(QPoint(), size));
    generator.setTitle(words.title);
    generator.setDescription(words.description);
    QPainter into(&generator);
    RelayDevice outlines(into, size, RelayDevice::Words::AsOutlines);
    QPainter painter(&outlines);
    paint(painter, look, size);
    painter.end();
    into.end();
    return file.data();
}

} // namespace bullace::plots
