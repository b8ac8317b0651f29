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
};

// Columns and key size for `count` keys of at least `least` with `gap` between them: as few columns
// as let all rows into `room`, so that words have width; the keys fill the room, but are never more
// than twice their least height. Where not all fit, as many columns as the width allows, and the
// height is more than the room's. At least one column.
[[nodiscard]] GridPlan planGrid(int count, QSizeF room, QSizeF least, qreal gap);

class KeyGrid : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(int count MEMBER count_ NOTIFY changed)
    Q_PROPERTY(QSizeF room MEMBER room_ NOTIFY changed)
    Q_PROPERTY(QSizeF least MEMBER least_ NOTIFY changed)
    Q_PROPERTY(qreal gap MEMBER gap_ NOTIFY changed)
    Q_PROPERTY(int columns READ columns NOTIFY changed)
    Q_PROPERTY(qreal keyWidth READ keyWidth NOTIFY changed)
    Q_PROPERTY(qreal keyHeight READ keyHeight NOTIFY changed)
    Q_PROPERTY(qreal neededHeight READ neededHeight NOTIFY changed)

public:
    explicit KeyGrid(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] int columns() const { return plan().columns; }
    [[nodiscard]] qreal keyWidth() const { return plan().keyWidth; }
    [[nodiscard]] qreal keyHeight() const { return plan().keyHeight; }
    [[nodiscard]] qreal neededHeight() const;
    // Top left corner of the key at `index`, in reading order.
    Q_INVOKABLE [[nodiscard]] qreal keyX(int index) const;
    Q_INVOKABLE [[nodiscard]] qreal keyY(int index) const;

signals:
    void changed();

private:
    [[nodiscard]] GridPlan plan() const { return planGrid(count_, room_, least_, gap_); }

    int count_ = 0;
    QSizeF room_;
    QSizeF least_;
    qreal gap_ = 0;
};

} // namespace bullace::quick
