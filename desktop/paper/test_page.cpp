// The page by which a printer's offset is measured.
#include "paper/label_sheet.hpp"
#include "paper/paper_words.hpp"

#include <algorithm>

namespace bullace::paper {

namespace {

constexpr int kRulerMm = 150;

PageItem stroke(QPointF from, QPointF to, double strokeMm) {
    PageItem item;
    item.kind = PageItem::Line;
    item.boxMm = QRectF(from, to);
    item.strokeMm = strokeMm;
    return item;
}

PageItem words(const QRectF& box, const QString& text, double capsMm, Qt::Alignment alignment) {
    PageItem item;
    item.boxMm = box;
    item.words = text;
    item.capsMm = capsMm;
    item.alignment = alignment;
    return item;
}

double tickMm(int at) {
    return at % 10 == 0 ? 5 : (at % 5 == 0 ? 3.5 : 2);
}

// From 0 to 150 mm along one axis, every millimetre a stroke, every ten its number.
void addRuler(std::vector<PageItem>& items, QPointF zero, bool isDown) {
    const auto along = [&](double mm) {
        return isDown ? zero + QPointF(0, mm) : zero + QPointF(mm, 0);
    };
    const auto across = [&](double mm) { return isDown ? QPointF(mm, 0) : QPointF(0, mm); };
    items.push_back(stroke(along(0), along(kRulerMm), 0.2));
    for (int at = 0; at <= kRulerMm; ++at) {
        items.push_back(stroke(along(at), along(at) + across(tickMm(at)), 0.15));
        if (at % 10 == 0 && !(isDown && at == 0)) {
            const double aside = at == 0 ? 2.5 : 0; // beside the other ruler's strokes
            const QPointF foot = along(at) + across(isDown ? 9.5 : 6.8) - QPointF(aside, 0);
            const QRectF box(foot - QPointF(4, 1.5), QSizeF(8, 3));
            items.push_back(words(box, QString::number(at), 1.6, Qt::AlignCenter));
        }
    }
}

void addHelp(std::vector<PageItem>& items, QPointF corner, double widthMm) {
    double y = corner.y();
    const QStringList lines = PaperWords::testPageHelp();
    for (qsizetype i = 0; i < lines.size(); ++i) {
        const double caps = i == 0 ? 3.2 : 2.4;
        const QStringList wrapped = wrappedWords(lines[i], widthMm, caps, i == 0);
        for (const QString& line : wrapped) {
            const QRectF box(corner.x(), y, widthMm, lineMm(caps));
            items.push_back(words(box, line, caps, Qt::AlignLeft | Qt::AlignVCenter));
            items.back().isBold = i == 0;
            y += lineMm(caps);
        }
        y += 1.2;
    }
}

// The label's number, in a corner that nothing covers.
void addNumber(std::vector<PageItem>& items,
               const QRectF& box,
               int number,
               const QList<QRectF>& covers) {
    const double caps = std::min(3.0, box.height() / 5);
    const QSizeF size(5 * caps, 1.6 * caps);
    const QRectF first(box.topLeft() + QPointF(1, 1), size);
    const QRectF last(box.bottomRight() - QPointF(1 + size.width(), 1 + size.height()), size);
    const auto isFree = [&](const QRectF& place) {
        return std::none_of(covers.begin(), covers.end(), [&](const QRectF& cover) {
            return cover.intersects(place);
        });
    };
    if (isFree(first)) {
        items.push_back(words(first, QString::number(number), caps, Qt::AlignLeft | Qt::AlignTop));
    } else if (isFree(last)) {
        items.push_back(
            words(last, QString::number(number), caps, Qt::AlignRight | Qt::AlignBottom));
    }
}

} // namespace

Page testPage(const LabelSheet& sheet) {
    Page page{sheet.paper, {}};
    LabelSheet plain = sheet;
    plain.printerOffset = QPointF();
    plain.startCell = 0;
    const QSizeF paper = sizeMm(sheet.paper);
    const double left = (paper.width() - kRulerMm - 10) / 2;
    const double top = (paper.height() - kRulerMm - 10) / 2;
    const QList<QRectF> covers{{left - 3, top - 3, kRulerMm + 14, 56},
                               {left - 3, top - 3, 20, kRulerMm + 14}};
    const int cells = sheet.columns * sheet.rows;
    for (int i = 0; i < cells; ++i) {
        PageItem frame;
        frame.kind = PageItem::Frame;
        frame.boxMm = placeOf(plain, static_cast<std::size_t>(i)).boxMm;
        page.items.push_back(frame);
        addNumber(page.items, frame.boxMm, i + 1, covers);
    }
    for (const QRectF& cover : covers) {
        PageItem blank;
        blank.kind = PageItem::Blank;
        blank.boxMm = cover;
        page.items.push_back(blank);
    }
    addRuler(page.items, {left + 3, top + 3}, false);
    addRuler(page.items, {left + 3, top + 3}, true);
    addHelp(page.items, {left + 20, top + 15}, kRulerMm - 26);
    return page;
}

} // namespace bullace::paper
