// A printed page as data: what stands where, in millimetres from the sheet's upper left corner. One
// painter draws it on paper, into a preview and for a test.
#pragma once

#include "core/base/result.hpp"

#include <QByteArray>
#include <QRectF>
#include <QSizeF>
#include <QString>

#include <span>
#include <vector>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace bullace::paper {

enum class PaperSize { Letter, A4 }; // both upright

[[nodiscard]] QSizeF sizeMm(PaperSize size); // 215.9 x 279.4 and 210 x 297

struct PageItem {
    enum Kind {
        Words, // one line
        Code,  // a QR code with its quiet zone, as large as the box
        Frame, // the box's four sides, lines of `strokeMm` with their middle on them
        Line,  // from the box's upper left corner to its lower right one
        Fill,  // the box in black
        Blank, // the box in white, over what stands before it
    };

    Kind kind = Words;
    QRectF boxMm;
    QString words;       // of Words; of Code what it says
    double capsMm = 2.2; // height of a capital
    bool isBold = false;
    Qt::Alignment alignment = Qt::AlignLeft | Qt::AlignVCenter;
    double strokeMm = 0.25;
    bool isDashed = false; // of Frame and Line
};

struct Page {
    PaperSize size = PaperSize::Letter;
    std::vector<PageItem> items;
};

// The face that pages are set in, with a bold weight; loaded from the program itself where the
// machine has it not. A QGuiApplication must be there.
[[nodiscard]] const QString& printFace();

// How wide one line of words is on paper, whatever the printer; without room on either side.
[[nodiscard]] double wordsWidthMm(const QString& words, double capsMm, bool isBold);
// The greatest height of capitals from least to most at which the words are not wider than the
// room; `leastCapsMm` where none is.
[[nodiscard]] double fittingCapsMm(
    const QString& words, double roomMm, double leastCapsMm, double mostCapsMm, bool isBold);
// The words in lines between words, none wider than the room unless a single word is.
[[nodiscard]] QStringList
wrappedWords(const QString& words, double roomMm, double capsMm, bool isBold);
// Of a line of words with such capitals, from one to the next.
[[nodiscard]] double lineMm(double capsMm);

// Draws the page with its corner at the painter's origin; `pxPerMm` of the painter's units are a
// millimetre. Leaves the painter as it was.
void paintPage(QPainter& painter, const Page& page, double pxPerMm);

// All pages, of one size, as a PDF with its fonts embedded. Errors: InvalidInput where there are
// none.
[[nodiscard]] Result<QByteArray> pdfOf(std::span<const Page> pages, const QString& title);
// The same into a file, which is replaced only when all of it is written. Errors: those above; Io
// where the file cannot be written.
[[nodiscard]] Status
writePdf(const QString& path, std::span<const Page> pages, const QString& title);

} // namespace bullace::paper
