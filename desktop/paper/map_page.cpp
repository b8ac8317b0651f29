#include "paper/map_page.hpp"

#include "paper/paper_words.hpp"
#include "paper/pdf.hpp"

#include <QPainter>

#include <cmath>

namespace bullace::paper {

namespace {

constexpr double kEdgeMm = 12;
constexpr double kFootMm = 7;
constexpr double kTextMm = 3.2; // the map's letters, capitals of 2.3 mm
constexpr double kFootCapsMm = 1.9;

} // namespace

void paintMapPage(QPainter& painter,
                  const quick::BlockMapPicture& picture,
                  PaperSize size,
                  const QString& asOf,
                  double pxPerMm) {
    const QSizeF paper = sizeMm(size).transposed();
    const QSizeF room(paper.width() - 2 * kEdgeMm, paper.height() - 2 * kEdgeMm - kFootMm);
    quick::BlockMapLook look;
    look.family = printFace();
    look.textPx = static_cast<int>(std::lround(kTextMm * pxPerMm));
    look.pxPerMm = pxPerMm;
    painter.save();
    painter.translate(kEdgeMm * pxPerMm, kEdgeMm * pxPerMm);
    quick::paintBlockMap(painter, picture, look, room * pxPerMm);
    painter.restore();

    const QRectF foot(
        kEdgeMm, paper.height() - kEdgeMm - lineMm(kFootCapsMm), room.width(), lineMm(kFootCapsMm));
    PageItem words;
    words.boxMm = foot;
    words.words = PaperWords::asOf(asOf);
    words.capsMm = fittingCapsMm(words.words, foot.width() * 0.7, 0.8, kFootCapsMm, false);
    PageItem number = words;
    number.words = PaperWords::pageOf(1, 1);
    number.capsMm = kFootCapsMm;
    number.alignment = Qt::AlignRight | Qt::AlignVCenter;
    paintPage(painter, {size, {words, number}}, pxPerMm);
}

QByteArray blockMapPdf(const quick::BlockMapPicture& picture, PaperSize size, const QString& asOf) {
    return paintedPdf({size, true, picture.title}, 1, [&](QPainter& painter, int) {
        paintMapPage(painter, picture, size, asOf, kPdfPxPerMm);
    });
}

} // namespace bullace::paper
