// Photos on the page: one at a time, as large as it fits, never larger than its own pixels.
#pragma once

#include <QImage>
#include <QPainter>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

#include <utility>
#include <vector>

namespace bullace::quick {

// The photos that there are; a view-model owns one and hands it to the page.
class PictureSource : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("it belongs to a view-model")
    Q_PROPERTY(int count READ count NOTIFY changed)
    Q_PROPERTY(int current READ current NOTIFY changed)

public:
    using QObject::QObject;
    [[nodiscard]] int count() const { return static_cast<int>(pictures_.size()); }
    [[nodiscard]] int current() const { return current_; }
    void setPictures(std::vector<QImage> pictures) {
        pictures_ = std::move(pictures);
        current_ = 0;
        emit changed();
    }
    // The next one; behind the last comes the first.
    Q_INVOKABLE void turn() {
        if (!pictures_.empty()) {
            current_ = (current_ + 1) % count();
            emit changed();
        }
    }
    // Null where there is none.
    [[nodiscard]] QImage picture() const {
        return pictures_.empty() ? QImage() : pictures_[static_cast<std::size_t>(current_)];
    }

signals:
    void changed();

private:
    std::vector<QImage> pictures_;
    int current_ = 0;
};

class PictureItem : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(
        bullace::quick::PictureSource* source READ source WRITE setSource NOTIFY sourceChanged)

public:
    explicit PictureItem(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}

    [[nodiscard]] PictureSource* source() const { return source_; }
    void setSource(PictureSource* source) {
        if (source == source_) {
            return;
        }
        if (source_ != nullptr) {
            disconnect(source_, nullptr, this, nullptr);
        }
        source_ = source;
        if (source_ != nullptr) {
            connect(source_, &PictureSource::changed, this, [this] { update(); });
        }
        update();
        emit sourceChanged();
    }
    void paint(QPainter* painter) override {
        const QImage picture = source_ == nullptr ? QImage() : source_->picture();
        if (picture.isNull()) {
            return;
        }
        const QSizeF room(width(), height());
        QSizeF size = picture.size();
        if (size.width() > room.width() || size.height() > room.height()) {
            size.scale(room, Qt::KeepAspectRatio);
        }
        painter->setRenderHint(QPainter::SmoothPixmapTransform);
        painter->drawImage(QRectF(QPointF(0, 0), size), picture);
    }

signals:
    void sourceChanged();

private:
    PictureSource* source_ = nullptr;
};

} // namespace bullace::quick
