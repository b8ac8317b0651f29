// The cells of a block map, gathered by what they look like and drawn together in a few strokes: so
// a station of 12,000 vines is painted anew within one frame.
#pragma once

#include "quick/block_map_layout.hpp"

#include <QHash>
#include <QLineF>
#include <QPainterPath>
#include <QStaticText>

namespace bullace::quick {

class BlockMapCells {
public:
    // Borrows all of them.
    BlockMapCells(QPainter& painter,
                  const BlockMapPicture& picture,
                  const BlockMapLook& look,
                  const BlockMapLayout& layout);

    // `placeSize` is that of a whole place: cells of small ones are drawn without smoothing, which
    // costs most and blurs them.
    void setPlaceSize(QSizeF placeSize);
    // Texts get one size, at which all short ones fit; where that were too small none is written.
    void fitTexts();
    void take(const BlockMapCell& cell, const QRectF& box);
    void draw(); // what was taken since the last time

private:
    enum Ink { Black, White, Own, kInks }; // Own: that of the page

    void takeValue(const BlockMapCell& cell, const QRectF& box);
    [[nodiscard]] bool takeText(const BlockMapCell& cell, const QRectF& box, Ink ink);
    void takeMarker(std::size_t step, const QRectF& box);
    void takeHatch(const QRectF& box);
    void takeMissing(const QRectF& box);
    void takeMark(const BlockMapCell& cell, const QRectF& box);
    void drawFills();
    void drawShapes();
    void drawDots();
    void drawInks();
    void forget();
    [[nodiscard]] qreal stroke() const;
    [[nodiscard]] QRectF inside(const QRectF& box) const;
    [[nodiscard]] Ink inkAt(const std::optional<std::size_t>& step) const;
    [[nodiscard]] QColor colourOfInk(Ink ink) const;
    [[nodiscard]] QFont textFont() const;

    struct Word {
        QPointF at;
        QString text;
    };

    QPainter& painter_;
    const BlockMapPicture& picture_;
    const BlockMapLook& look_;
    const BlockMapLayout& layout_;
    QSizeF placeSize_;
    bool isSmall_ = false;
    int textPx_ = 0;                       // 0: nothing is written
    std::vector<QColor> fills_;            // by step
    std::vector<Ink> stepInks_;            // what stands out on them
    std::vector<QList<QRectF>> fillRects_; // by step; the last for values without a fill
    QHash<QString, QStaticText> texts_;
    QList<QRectF> grounds_;
    QList<QRectF> frames_;
    QList<QRectF> dots_;
    QList<QRectF> halves_;
    QList<QLineF> crosses_;
    QList<QLineF> hatch_;
    QList<QLineF> dashes_;
    std::array<QPainterPath, kInks> shapes_; // markers and marks
    std::array<std::vector<Word>, kInks> words_;
};

} // namespace bullace::quick
