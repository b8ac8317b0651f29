// PDF files of painted pages, with their fonts embedded, and files that are whole or not there.
#pragma once

#include "paper/page.hpp"

#include "core/base/result.hpp"

#include <QByteArray>
#include <QString>

#include <functional>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace bullace::paper {

struct PdfForm {
    PaperSize size = PaperSize::Letter;
    bool isLying = false; // the paper's long side below
    QString title;
};

// Of the painter that paintedPdf() hands out.
inline constexpr double kPdfPxPerMm = 600 / 25.4;

// `pages` pages without margins, each painted by `paint` with its index from 0; at least 1.
[[nodiscard]] QByteArray
paintedPdf(const PdfForm& form, int pages, const std::function<void(QPainter&, int)>& paint);

// The file is replaced only when all of it is written. Errors: Io.
[[nodiscard]] Status writeFile(const QString& path, const QByteArray& bytes);

} // namespace bullace::paper
