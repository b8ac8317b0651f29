#include "quick/text_fit.hpp"

#include <QFontMetricsF>
#include <QStringList>
#include <QTextLayout>
#include <QTextOption>

#include <algorithm>
#include <cmath>

namespace bullace::quick {

namespace {

constexpr qreal kNoLimit = 1e6;

// One paragraph, laid out as Qt Quick's Text lays it out.
QSizeF paragraphSize(const QString& paragraph, const QFont& font, qreal width) {
    QTextLayout layout(paragraph, font);
    QTextOption option;
    option.setWrapMode(QTextOption::WordWrap);
    option.setUseDesignMetrics(true);
    layout.setTextOption(option);
    layout.beginLayout();
    qreal height = 0;
    qreal widest = 0;
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(width);
        height += std::ceil(line.height());
        widest = std::max(widest, line.naturalTextWidth());
    }
    layout.endLayout();
    return {std::ceil(widest), height};
}

} // namespace

qreal widestWordPx(const QString& text, const QFont& font) {
    qreal widest = 0;
    const QStringList words = text.split(QChar::Space, Qt::SkipEmptyParts);
    for (const QString& word : words) {
        widest = std::max(widest, paragraphSize(word, font, kNoLimit).width());
    }
    return widest;
}

QSizeF wrappedSize(const QString& text, const QFont& font, qreal width) {
    if (text.isEmpty()) {
        return {0, 0};
    }
    QSizeF size(0, 0);
    const QStringList paragraphs = text.split(QChar::LineFeed);
    for (const QString& paragraph : paragraphs) {
        const QSizeF part = paragraphSize(paragraph, font, width);
        size = {std::max(size.width(), part.width()), size.height() + part.height()};
    }
    return size;
}

int fittingPx(const QString& text, QFont font, int leastPx, int mostPx, QSizeF room) {
    int fits = leastPx;
    int above = std::max(leastPx, mostPx) + 1;
    while (fits + 1 < above) {
        const int tried = fits + (above - fits) / 2;
        font.setPixelSize(tried);
        const QSizeF size = wrappedSize(text, font, room.width());
        if (size.width() <= room.width() && size.height() <= room.height()) {
            fits = tried;
        } else {
            above = tried;
        }
    }
    return fits;
}

} // namespace bullace::quick
