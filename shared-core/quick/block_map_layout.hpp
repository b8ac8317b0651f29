// Where everything of a block map lies; worked out once for a picture, a look and a size, and asked
// by whoever paints it and by whoever points at it.
#pragma once

#include "quick/block_map.hpp"

#include <QFont>

namespace bullace::quick {

class BlockMapLayout {
public:
    // Both must outlive the layout.
    BlockMapLayout(const BlockMapPicture& picture, const BlockMapLook& look, QSizeF size);

    // The cell whose place holds `point`; nothing beside the cells and where they are not seen.
    [[nodiscard]] std::optional<BlockMapPlace> cellAt(QPointF point) const;
    // Where the cell lies, seen or not. Its place is the box with the gap round it.
    [[nodiscard]] QRectF placeBox(const BlockMapPlace& place) const;
    [[nodiscard]] QRectF cellBox(const BlockMapPlace& place) const;

    [[nodiscard]] const QRectF& field() const { return field_; } // where cells are seen
    [[nodiscard]] const QRectF& legend() const { return legend_; }
    [[nodiscard]] const QRectF& head() const { return head_; } // title and notes
    [[nodiscard]] const QStringList& noteLines() const { return noteLines_; }
    [[nodiscard]] std::size_t legendColumns() const { return legendColumns_; }
    [[nodiscard]] qreal lineHeight() const { return lineHeight_; }
    [[nodiscard]] qreal cellWidth() const { return cellWidth_; }
    [[nodiscard]] qreal rowHeight() const { return rowHeight_; }
    [[nodiscard]] int firstVine() const { return firstVine_; }
    [[nodiscard]] int lastVine() const { return lastVine_; }
    // The middle of the place with that number, and the top of a row, in the painter's units.
    [[nodiscard]] qreal vineX(double vine) const;
    [[nodiscard]] qreal rowY(std::size_t row) const { return contentY() + rowTops_[row]; }
    [[nodiscard]] bool hasHeading(std::size_t row) const;
    // How far the cells may be moved: from nothing to this.
    [[nodiscard]] QPointF mostPan() const;
    [[nodiscard]] QFont font(bool isBold = false) const;
    [[nodiscard]] qreal mm(qreal length) const { return length * look_.pxPerMm; }

private:
    struct Span { // of a cell, in places along the wire
        double from = 0;
        double to = 1;
    };
    void spanRows();
    void placeHead(QSizeF size);
    void placeLegend(QSizeF size);
    void placeField(QSizeF size);
    [[nodiscard]] qreal contentX() const { return field_.left() + mm(kPostMm) - look_.pan.x(); }
    [[nodiscard]] qreal contentY() const { return field_.top() - look_.pan.y(); }

    static constexpr qreal kPostMm = 3.5; // beside the cells, for the post and the arrow

    const BlockMapPicture& picture_;
    const BlockMapLook& look_;
    std::vector<std::vector<Span>> spans_;
    std::vector<qreal> rowTops_;
    qreal contentHeight_ = 0;
    int firstVine_ = 1;
    int lastVine_ = 1;
    QRectF head_;
    QStringList noteLines_;
    QRectF legend_;
    QRectF field_;
    std::size_t legendColumns_ = 1;
    qreal lineHeight_ = 0;
    qreal cellWidth_ = 1;
    qreal rowHeight_ = 1;
};

// A line of the legend: a sample of a cell, its words and how often it is there.
struct BlockMapLegendLine {
    BlockMapCell sample;
    QString words;
    int count = 0;
};
[[nodiscard]] std::vector<BlockMapLegendLine> legendOf(const BlockMapPicture& picture);
// Above the lines: what the fills tell; empty for a plain scale without a title.
[[nodiscard]] QString legendTitle(const BlockMapScale& scale);
[[nodiscard]] QString northWord(); // beside the arrow

} // namespace bullace::quick
