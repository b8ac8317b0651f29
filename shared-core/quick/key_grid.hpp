// Where a number of equal keys stand in a room, so that all of them are seen at once where that is
// possible.
#pragma once

#include <QObject>
#include <QSizeF>
#include <QtQml/qqmlregistration.h>

namespace bullace::quick {

// What a grid of keys comes to; sizes in pixels.
struct GridPlan {
    int columns = 1;
    int rows = 1;
    qreal keyWidth = 0;
    qreal keyHeight = 0;

    bool operator==(const GridPlan&) const = default;
};

// Columns and key size for `count` keys of at least `least` (both sides above 0) with `gap` between
// them: that number of columns at which all rows are in `room` and a key has grown most, in the
// side that grew less; of equals the fewer columns, for words want width. No key is more than twice
// its least height. Where not all fit, as many columns as the width allows, and the height is more
// than the room's. At least one column.
[[nodiscard]] GridPlan planGrid(int count, QSizeF room, QSizeF least, qreal gap);

// The same for a page: tells of each figure only when that figure changes, so that a height may
// follow from `compactHeight` while the room follows from the height.
class KeyGrid : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(int count READ count WRITE setCount NOTIFY countChanged)
    Q_PROPERTY(qreal roomWidth READ roomWidth WRITE setRoomWidth NOTIFY roomWidthChanged)
    Q_PROPERTY(qreal roomHeight READ roomHeight WRITE setRoomHeight NOTIFY roomHeightChanged)
    Q_PROPERTY(QSizeF least READ least WRITE setLeast NOTIFY leastChanged)
    Q_PROPERTY(qreal gap READ gap WRITE setGap NOTIFY gapChanged)
    Q_PROPERTY(int columns READ columns NOTIFY planChanged)
    Q_PROPERTY(qreal keyWidth READ keyWidth NOTIFY planChanged)
    Q_PROPERTY(qreal keyHeight READ keyHeight NOTIFY planChanged)
    // Height of the keys as they stand.
    Q_PROPERTY(qreal neededHeight READ neededHeight NOTIFY planChanged)
    // Height with the keys at their least and as many columns as the width allows; whatever the
    // room's height.
    Q_PROPERTY(qreal compactHeight READ compactHeight NOTIFY compactHeightChanged)

public:
    explicit KeyGrid(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] int count() const { return count_; }
    void setCount(int value);
    [[nodiscard]] qreal roomWidth() const { return room_.width(); }
    void setRoomWidth(qreal value);
    [[nodiscard]] qreal roomHeight() const { return room_.height(); }
    void setRoomHeight(qreal value);
    [[nodiscard]] QSizeF least() const { return least_; }
    void setLeast(QSizeF value);
    [[nodiscard]] qreal gap() const { return gap_; }
    void setGap(qreal value);

    [[nodiscard]] int columns() const { return plan_.columns; }
    [[nodiscard]] qreal keyWidth() const { return plan_.keyWidth; }
    [[nodiscard]] qreal keyHeight() const { return plan_.keyHeight; }
    [[nodiscard]] qreal neededHeight() const;
    [[nodiscard]] qreal compactHeight() const { return compactHeight_; }
    // Left and upper edge of the key at `index`, in reading order.
    Q_INVOKABLE [[nodiscard]] qreal keyX(int index) const;
    Q_INVOKABLE [[nodiscard]] qreal keyY(int index) const;

signals:
    void countChanged();
    void roomWidthChanged();
    void roomHeightChanged();
    void leastChanged();
    void gapChanged();
    void planChanged();
    void compactHeightChanged();

private:
    void renew();

    int count_ = 0;
    QSizeF room_ = {0, 0};
    QSizeF least_ = {1, 1};
    qreal gap_ = 0;
    GridPlan plan_;
    qreal compactHeight_ = 0;
};

} // namespace bullace::quick
