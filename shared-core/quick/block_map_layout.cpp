#include "quick/block_map_layout.hpp"

#include <QFontMetricsF>
#include <QLocale>

#include <algorithm>
#include <cmath>

namespace bullace::quick {

namespace {

constexpr qreal kGreatestCellMm = 13;
constexpr qreal kGreatestRowMm = 9;
constexpr qreal kGapMm = 3; // between the parts of the picture

} // namespace

BlockMapLayout::BlockMapLayout(const BlockMapPicture& picture,
                               const BlockMapLook& look,
                               QSizeF size)
    : picture_(picture),
      look_(look),
      lineHeight_(std::ceil(QFontMetricsF(font()).height() * 1.2)) {
    spanRows();
    placeHead(size);
    placeLegend(size);
    placeField(size);
}

QFont BlockMapLayout::font(bool isBold) const {
    QFont font(look_.family);
    font.setPixelSize(std::max(1, look_.textPx));
    font.setBold(isBold);
    return font;
}

// Vines planted between two share the place of the vine before them, in their order.
void BlockMapLayout::spanRows() {
    bool isFirst = true;
    for (const BlockMapRow& row : picture_.rows) {
        auto& spans = spans_.emplace_back(row.cells.size());
        for (std::size_t from = 0; from < row.cells.size();) {
            std::size_t to = from;
            while (to < row.cells.size() && row.cells[to].vine == row.cells[from].vine) {
                ++to;
            }
            const auto sharing = static_cast<double>(to - from);
            for (std::size_t i = from; i < to; ++i) {
                const double left =
                    row.cells[i].vine - 0.5 + static_cast<double>(i - from) / sharing;
                spans[i] = {left, left + 1 / sharing};
            }
            const int vine = row.cells[from].vine;
            firstVine_ = isFirst ? vine : std::min(firstVine_, vine);
            lastVine_ = isFirst ? vine : std::max(lastVine_, vine);
            isFirst = false;
            from = to;
        }
    }
}

bool BlockMapLayout::hasHeading(std::size_t row) const {
    const QString& block = picture_.rows[row].block;
    return !block.isEmpty() && (row == 0 || picture_.rows[row - 1].block != block);
}

// Notes are broken between words where they are longer than the picture is wide.
void BlockMapLayout::placeHead(QSizeF size) {
    const QFontMetricsF metrics(font());
    for (const QString& note : picture_.notes) {
        QString line;
        for (const QString& word : note.split(QLatin1Char(' '))) {
            const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
            if (!line.isEmpty() && metrics.horizontalAdvance(longer) > size.width()) {
                noteLines_ << line;
                line = word;
            } else {
                line = longer;
            }
        }
        noteLines_ << line;
    }
    const auto lines =
        (picture_.title.isEmpty() ? 0 : 1.25) + 0.95 * static_cast<double>(noteLines_.size());
    const qreal height = lines * lineHeight_ + (lines > 0 ? mm(kGapMm / 2) : 0);
    head_ = QRectF(0, 0, size.width(), height);
}

// Beside the map where the picture is wider than high, else below it.
void BlockMapLayout::placeLegend(QSizeF size) {
    const auto lines = legendOf(picture_);
    const QFontMetricsF metrics(font());
    qreal widest = 0;
    for (const BlockMapLegendLine& line : lines) {
        widest = std::max(widest, metrics.horizontalAdvance(line.words));
    }
    const qreal count = metrics.horizontalAdvance(QLocale().toString(88888));
    const qreal title =
        QFontMetricsF(font(true)).horizontalAdvance(legendTitle(picture_.scale)) + mm(1);
    const qreal column = widest + count + 1.6 * lineHeight_ + mm(kGapMm);
    const bool hasNorth = picture_.northDegrees.has_value();
    if (size.width() > 1.05 * size.height()) {
        const qreal width = std::min(std::max(column, title), size.width() * 0.4);
        legend_ =
            QRectF(size.width() - width, head_.bottom(), width, size.height() - head_.height());
        return;
    }
    legendColumns_ = std::clamp<std::size_t>(
        static_cast<std::size_t>(size.width() / column), 1, std::max<std::size_t>(1, lines.size()));
    const auto deep = (lines.size() + legendColumns_ - 1) / legendColumns_;
    const qreal height = (static_cast<qreal>(deep) + 1.3) * lineHeight_ + (hasNorth ? mm(9) : 0);
    legend_ = QRectF(0, size.height() - height, size.width(), height);
}

void BlockMapLayout::placeField(QSizeF size) {
    const QFontMetricsF metrics(font());
    qreal numbers = 0;
    int headings = 0;
    for (std::size_t row = 0; row < picture_.rows.size(); ++row) {
        numbers = std::max(numbers, metrics.horizontalAdvance(picture_.rows[row].number));
        headings += hasHeading(row) ? 1 : 0;
    }
    const bool isBeside = legend_.top() <= head_.bottom();
    const qreal left = numbers + mm(1.5);
    const qreal top = head_.bottom() + lineHeight_;
    field_ = QRectF(QPointF(left, top),
                    QPointF(isBeside ? legend_.left() - mm(kGapMm) : size.width(),
                            (isBeside ? size.height() : legend_.top()) - mm(kGapMm / 2)));
    field_.setSize({std::max(1.0, field_.width()), std::max(1.0, field_.height())});
    const auto rows = std::max<qreal>(1, static_cast<qreal>(picture_.rows.size()));
    const qreal zoom = std::max(1.0, look_.zoom);
    const qreal wide = (field_.width() - 2 * mm(kPostMm)) / (lastVine_ - firstVine_ + 1);
    const qreal high = (field_.height() - headings * lineHeight_) / rows;
    cellWidth_ = std::clamp(wide, 0.5, mm(kGreatestCellMm)) * zoom;
    rowHeight_ = std::clamp(high, 0.5, mm(kGreatestRowMm)) * zoom;
    for (std::size_t row = 0; row < picture_.rows.size(); ++row) {
        contentHeight_ += hasHeading(row) ? lineHeight_ : 0;
        rowTops_.push_back(contentHeight_);
        contentHeight_ += rowHeight_;
    }
    field_.setHeight(std::min(field_.height(), contentHeight_ + mm(0.5)));
    const qreal content = (lastVine_ - firstVine_ + 1) * cellWidth_ + 2 * mm(kPostMm);
    field_.setWidth(std::min(field_.width(), content));
}

QPointF BlockMapLayout::mostPan() const {
    const qreal content = (lastVine_ - firstVine_ + 1) * cellWidth_ + 2 * mm(kPostMm);
    return {std::max(0.0, content - field_.width()),
            std::max(0.0, contentHeight_ - field_.height())};
}

qreal BlockMapLayout::vineX(double vine) const {
    return contentX() + (vine - firstVine_ + 0.5) * cellWidth_;
}

QRectF BlockMapLayout::placeBox(const BlockMapPlace& place) const {
    const Span& span = spans_[place.row][place.cell];
    const qreal left = vineX(span.from);
    return {left, rowY(place.row), vineX(span.to) - left, rowHeight_};
}

// The gaps are whole units, so that all cells look alike on a screen.
QRectF BlockMapLayout::cellBox(const BlockMapPlace& place) const {
    const QRectF box = placeBox(place);
    const qreal unit = std::max(1.0, look_.pxPerMm / 4);
    const qreal side = box.width() >= 5 * unit ? std::max(unit, box.width() * 0.05) : 0;
    const qreal above = box.height() >= 5 * unit ? std::max(unit, box.height() * 0.1) : 0;
    return box.adjusted(side / 2, above / 2, -side / 2, -above / 2);
}

std::optional<BlockMapPlace> BlockMapLayout::cellAt(QPointF point) const {
    if (!field_.contains(point) || rowTops_.empty()) {
        return std::nullopt;
    }
    const qreal y = point.y() - contentY();
    const auto below = std::upper_bound(rowTops_.begin(), rowTops_.end(), y);
    if (below == rowTops_.begin()) {
        return std::nullopt;
    }
    const auto row = static_cast<std::size_t>(below - rowTops_.begin()) - 1;
    const double vine = (point.x() - contentX()) / cellWidth_ + firstVine_ - 0.5;
    const auto& spans = spans_[row];
    const auto behind =
        std::upper_bound(spans.begin(), spans.end(), vine, [](double at, const Span& span) {
            return at < span.from;
        });
    if (y >= rowTops_[row] + rowHeight_ || behind == spans.begin() || vine >= (behind - 1)->to) {
        return std::nullopt;
    }
    return BlockMapPlace{row, static_cast<std::size_t>(behind - spans.begin()) - 1};
}

} // namespace bullace::quick
