// A picture of the camera on the page.
#pragma once

#include <QImage>
#include <QPainter>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace bullace::tablet {

class PictureItem : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QImage picture READ picture WRITE setPicture NOTIFY pictureChanged)

public:
    explicit PictureItem(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}

    [[nodiscard]] QImage picture() const { return picture_; }
    void setPicture(const QImage& picture) {
        picture_ = picture;
        update();
        emit pictureChanged();
    }
    // Whole, in its own proportions, in the middle.
    void paint(QPainter* painter) override {
        if (picture_.isNull()) {
            return;
        }
        const QSizeF drawn = QSizeF(picture_.size()).scaled(size(), Qt::KeepAspectRatio);
        const QPointF corner((width() - drawn.width()) / 2, (height() - drawn.height()) / 2);
        painter->drawImage(QRectF(corner, drawn), picture_);
    }

signals:
    void pictureChanged();

private:
    QImage picture_;
};

} // namespace bullace::tablet
