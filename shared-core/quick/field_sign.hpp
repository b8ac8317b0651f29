// The few shapes that stand before words, so that no state is told by colour alone.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace bullace::quick {

class FieldSign : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(Sign sign READ sign WRITE setSign NOTIFY changed)
    Q_PROPERTY(QColor ink READ ink WRITE setInk NOTIFY changed)

public:
    // Done: a filled square; Open: a ring; Marked: a filled triangle; Withdrawn: a cross; Waiting:
    // two bars; Erase: a tag that points at what it takes away; Back: a hook back to where one was.
    enum Sign { Done, Open, Marked, Withdrawn, Waiting, Erase, Back };
    Q_ENUM(Sign)

    explicit FieldSign(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}

    [[nodiscard]] Sign sign() const { return sign_; }
    void setSign(Sign value);
    [[nodiscard]] QColor ink() const { return ink_; }
    void setInk(const QColor& value);

    void paint(QPainter* painter) override;

signals:
    void changed();

private:
    Sign sign_ = Open;
    QColor ink_ = Qt::black;
};

// Draws the sign into the largest square in the middle of `box`; leaves the painter as it was.
void paintSign(QPainter& painter, FieldSign::Sign sign, const QColor& ink, const QRectF& box);

} // namespace bullace::quick
