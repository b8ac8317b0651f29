// What the camera sees, on the page.
#pragma once

#include "tablet/tablet_app.hpp"

#include <QPainter>
#include <QPointer>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace bullace::tablet {

class PictureItem : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(bullace::tablet::TabletApp* app READ app WRITE setApp NOTIFY appChanged)

public:
    explicit PictureItem(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}

    [[nodiscard]] TabletApp* app() const { return app_; }
    void setApp(TabletApp* app) {
        app_ = app;
        if (app_ != nullptr) {
            connect(app_, &TabletApp::pictureChanged, this, [this] { update(); });
        }
        update();
        emit appChanged();
    }
    // Whole, in its own proportions, in the middle.
    void paint(QPainter* painter) override {
        const QImage picture = app_ == nullptr ? QImage() : app_->picture();
        if (picture.isNull()) {
            return;
        }
        const QSizeF drawn = QSizeF(picture.size()).scaled(size(), Qt::KeepAspectRatio);
        const QPointF corner((width() - drawn.width()) / 2, (height() - drawn.height()) / 2);
        painter->drawImage(QRectF(corner, drawn), picture);
    }

signals:
    void appChanged();

private:
    QPointer<TabletApp> app_;
};

} // namespace bullace::tablet
