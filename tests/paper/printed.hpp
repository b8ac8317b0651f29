// Pages as they come out of a printer: as pictures, as PDF files, and what poppler-utils says of
// those.
#pragma once

#include "paper/page.hpp"
#include "paper/pdf.hpp"

#include <QDir>
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QProcess>
#include <QTemporaryDir>

#include <doctest/doctest.h>

#include <span>
#include <string>
#include <vector>

namespace bullace::tests {

inline constexpr double kPxPerMm = 8; // 203 dots per inch

inline QImage printed(const paper::Page& page, double pxPerMm = kPxPerMm) {
    const QSizeF size = paper::sizeMm(page.size) * pxPerMm;
    QImage picture(size.toSize(), QImage::Format_RGB32);
    picture.fill(Qt::white);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    paper::paintPage(painter, page, pxPerMm);
    return picture;
}

inline QImage partOf(const QImage& picture, const QRectF& boxMm, double pxPerMm = kPxPerMm) {
    return picture.copy(QRectF(boxMm.topLeft() * pxPerMm, boxMm.size() * pxPerMm).toAlignedRect());
}

// To be looked at.
inline void keep(const QImage& picture, const char* name) {
    QDir().mkpath(QStringLiteral(BULLACE_PICTURES "/paper"));
    CHECK(picture.save(QStringLiteral(BULLACE_PICTURES "/paper/%1.png").arg(QLatin1String(name))));
}

// A PDF in a folder of its own, which goes with it.
class PdfFile {
public:
    explicit PdfFile(std::span<const paper::Page> pages) {
        const Status status = paper::writePdf(path(), pages, QStringLiteral("Labels"));
        REQUIRE(status.ok());
    }
    explicit PdfFile(const QByteArray& bytes) { REQUIRE(paper::writeFile(path(), bytes).ok()); }
    [[nodiscard]] QString path() const { return folder_.filePath(QStringLiteral("page.pdf")); }

    // What the tool of poppler-utils writes about the file.
    [[nodiscard]] QString said(const QString& tool, QStringList more = {}) const {
        QProcess process;
        process.start(tool,
                      more << path() << (tool == "pdftotext" ? QStringList("-") : QStringList()));
        const bool isDone = process.waitForFinished(60'000);
        INFO(tool.toStdString());
        REQUIRE(isDone);
        REQUIRE(process.exitCode() == 0);
        return QString::fromUtf8(process.readAllStandardOutput());
    }
    // The pages as another program draws them.
    [[nodiscard]] QImage drawn(int page, int perInch) const {
        QProcess process;
        const QString stem = folder_.filePath(QStringLiteral("drawn"));
        process.start(QStringLiteral("pdftoppm"),
                      {"-png",
                       "-singlefile",
                       "-r",
                       QString::number(perInch),
                       "-f",
                       QString::number(page),
                       path(),
                       stem});
        REQUIRE(process.waitForFinished(60'000));
        return QImage(stem + QStringLiteral(".png"));
    }

private:
    QTemporaryDir folder_;
};

// Whether every line of pdffonts has its font embedded; at least one is there.
inline bool hasOnlyEmbeddedFonts(const QString& pdffonts) {
    const QStringList lines = pdffonts.split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    bool isGood = lines.size() > 2;
    for (qsizetype i = 2; i < lines.size(); ++i) {
        // name, type, encoding, emb, sub, uni, object ID: counted from the end
        const QStringList words = lines[i].simplified().split(QLatin1Char(' '));
        isGood = isGood && words.size() > 5 && words[words.size() - 5] == QLatin1String("yes");
    }
    return isGood;
}

// Words that are wider than their box, or lie off the paper; items over one another where they must
// not be (codes and words).
inline std::vector<std::string> faultsOf(const paper::Page& page) {
    std::vector<std::string> faults;
    const QRectF paper(QPointF(), paper::sizeMm(page.size));
    std::vector<const paper::PageItem*> solid;
    for (const paper::PageItem& item : page.items) {
        const std::string words = item.words.toStdString();
        if (!paper.adjusted(-0.01, -0.01, 0.01, 0.01).contains(item.boxMm.normalized()) &&
            !item.boxMm.isEmpty()) {
            faults.push_back("off the paper: " + words);
        }
        if (item.kind == paper::PageItem::Words) {
            const double width = paper::wordsWidthMm(item.words, item.capsMm, item.isBold);
            if (width > item.boxMm.width() + 0.05) {
                faults.push_back("cut: " + words);
            }
            if (item.boxMm.height() < 1.2 * item.capsMm) {
                faults.push_back("too low: " + words);
            }
        }
        if (item.kind == paper::PageItem::Words || item.kind == paper::PageItem::Code) {
            solid.push_back(&item);
        }
    }
    for (std::size_t i = 0; i < solid.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const QRectF both = solid[i]->boxMm & solid[j]->boxMm;
            if (both.width() > 0.05 && both.height() > 0.05) {
                faults.push_back(solid[i]->words.toStdString() + " over " +
                                 solid[j]->words.toStdString());
            }
        }
    }
    return faults;
}

} // namespace bullace::tests
