#include "paper/page.hpp"

#include "paper/paper_words.hpp"
#include "paper/pdf.hpp"

#include "quick/qr_code.hpp"
#include "quick/words.hpp"

#include <QFontDatabase>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace bullace::paper {

namespace {

constexpr int kMeasuredPx = 1000; // of the font that words are measured with
constexpr int kCodeModulePx =
    12; // of a code's picture: viewers that smooth it change its edges only
constexpr double kLineShare = 1.75;

QFont fontOf(double px, bool isBold) {
    QFont font(printFace());
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(px))));
    font.setBold(isBold);
    font.setHintingPreference(QFont::PreferNoHinting); // widths are the same at every size
    // Next to nothing, but with it Qt makes no ligatures: "first" is found in the PDF as it is
    // written.
    font.setLetterSpacing(QFont::AbsoluteSpacing, 0.02);
    return font;
}

// Height of a capital as a share of the font's size.
double capsShare() {
    static const double share = QFontMetricsF(fontOf(kMeasuredPx, true)).capHeight() / kMeasuredPx;
    return share > 0.4 && share < 1 ? share : 0.73;
}

void paintWords(QPainter& painter, const PageItem& item, const QRectF& box, double pxPerMm) {
    painter.setPen(Qt::black);
    painter.setFont(fontOf(item.capsMm * pxPerMm / capsShare(), item.isBold));
    painter.drawText(
        box, static_cast<int>(item.alignment) | Qt::TextSingleLine | Qt::TextDontClip, item.words);
}

void paintItem(QPainter& painter, const PageItem& item, double pxPerMm) {
    const QRectF box(item.boxMm.topLeft() * pxPerMm, item.boxMm.size() * pxPerMm);
    QPen pen(Qt::black, item.strokeMm * pxPerMm, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    if (item.isDashed) {
        pen.setDashPattern({4, 4});
    }
    switch (item.kind) {
    case PageItem::Words:
        return paintWords(painter, item, box, pxPerMm);
    case PageItem::Code:
        painter.drawImage(box, quick::qrPicture(item.words.toStdString(), kCodeModulePx));
        return;
    case PageItem::Fill:
        painter.fillRect(box, Qt::black);
        return;
    case PageItem::Blank:
        painter.fillRect(box, Qt::white);
        return;
    case PageItem::Frame:
        painter.setPen(pen);
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(box);
        return;
    case PageItem::Line:
        painter.setPen(pen);
        painter.drawLine(box.topLeft(), box.bottomRight());
        return;
    }
}

} // namespace

QSizeF sizeMm(PaperSize size) {
    return size == PaperSize::Letter ? QSizeF(215.9, 279.4) : QSizeF(210, 297);
}

const QString& printFace() {
    static const QString face = [] {
        QString family;
        for (const char* file : {"DejaVuSans.ttf", "DejaVuSans-Bold.ttf"}) {
            const int id = QFontDatabase::addApplicationFont(QStringLiteral(":/bullace/typeface/") +
                                                             QLatin1String(file));
            const QStringList families =
                id < 0 ? QStringList() : QFontDatabase::applicationFontFamilies(id);
            family = families.isEmpty() ? family : families.first();
        }
        return family.isEmpty() ? QFontInfo(QFont(QStringLiteral("DejaVu Sans"))).family() : family;
    }();
    return face;
}

double wordsWidthMm(const QString& words, double capsMm, bool isBold) {
    const double px = QFontMetricsF(fontOf(kMeasuredPx, isBold)).horizontalAdvance(words);
    return px / kMeasuredPx * capsMm / capsShare();
}

double fittingCapsMm(
    const QString& words, double roomMm, double leastCapsMm, double mostCapsMm, bool isBold) {
    const double perMm = wordsWidthMm(words, 1, isBold);
    const double fitting = perMm > 0 ? roomMm / perMm : mostCapsMm;
    return std::max(leastCapsMm, std::min(mostCapsMm, fitting));
}

QStringList wrappedWords(const QString& words, double roomMm, double capsMm, bool isBold) {
    QStringList lines;
    QString line;
    const QStringList parts = words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (const QString& word : parts) {
        const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
        if (!line.isEmpty() && wordsWidthMm(longer, capsMm, isBold) > roomMm) {
            lines << line;
            line = word;
        } else {
            line = longer;
        }
    }
    return line.isEmpty() ? lines : lines << line;
}

double lineMm(double capsMm) {
    return kLineShare * capsMm;
}

void paintPage(QPainter& painter, const Page& page, double pxPerMm) {
    painter.save();
    for (const PageItem& item : page.items) {
        paintItem(painter, item, pxPerMm);
    }
    painter.restore();
}

Result<QByteArray> pdfOf(std::span<const Page> pages, const QString& title) {
    if (pages.empty()) {
        return Error{ErrorCode::InvalidInput, quick::toText(PaperWords::nothingToPrint()), {}};
    }
    const auto count = static_cast<int>(pages.size());
    return paintedPdf({pages.front().size, false, title}, count, [&](QPainter& painter, int page) {
        paintPage(painter, pages[static_cast<std::size_t>(page)], kPdfPxPerMm);
    });
}

Status writePdf(const QString& path, std::span<const Page> pages, const QString& title) {
    const auto bytes = pdfOf(pages, title);
    return bytes ? writeFile(path, *bytes) : Status(bytes.error());
}

} // namespace bullace::paper
