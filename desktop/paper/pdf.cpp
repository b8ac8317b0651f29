#include "paper/pdf.hpp"

#include "paper/paper_words.hpp"

#include "quick/words.hpp"

#include <QBuffer>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

namespace bullace::paper {

QByteArray
paintedPdf(const PdfForm& form, int pages, const std::function<void(QPainter&, int)>& paint) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setTitle(form.title);
    writer.setCreator(QStringLiteral("Bullace"));
    writer.setResolution(600); // kPdfPxPerMm
    const bool isLetter = form.size == PaperSize::Letter;
    writer.setPageSize(QPageSize(isLetter ? QPageSize::Letter : QPageSize::A4));
    writer.setPageOrientation(form.isLying ? QPageLayout::Landscape : QPageLayout::Portrait);
    writer.setPageMargins(QMarginsF(0, 0, 0, 0));
    QPainter painter(&writer);
    for (int page = 0; page < pages; ++page) {
        if (page > 0) {
            writer.newPage();
        }
        paint(painter, page);
    }
    painter.end(); // before the writer goes
    return bytes;
}

Status writeFile(const QString& path, const QByteArray& bytes) {
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit()) {
        return Error{ErrorCode::Io,
                     quick::toText(PaperWords::cannotWrite(path)),
                     quick::toText(file.errorString())};
    }
    return {};
}

} // namespace bullace::paper
