// A QR code on the page: black on white in every light, for cameras read nothing else.
#pragma once

#include "quick/qr_code.hpp"

#include <QPainter>
#include <QQuickPaintedItem>
#include <QString>
#include <QtQml/qqmlregistration.h>

namespace bullace::quick {

class CodeItem : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString text READ text WRITE setText NOTIFY textChanged)

public:
    explicit CodeItem(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}

    [[nodiscard]] QString text() const { return text_; }
    void setText(const QString& text) {
        if (text != text_) {
            text_ = text;
            update();
            emit textChanged();
        }
    }
    // As large as whole pixels for each module allow, in the middle.
    void paint(QPainter* painter) override {
        const QImage one = qrPicture(text_.toStdString(), 1);
        if (one.isNull()) {
            return;
        }
        const int modulePx = static_cast<int>(qMin(width(), height())) / one.width();
        const QImage code = qrPicture(text_.toStdString(), qBound(1, modulePx, 64));
        painter->drawImage(QPointF((width() - code.width()) / 2, (height() - code.height()) / 2),
                           code);
    }

signals:
    void textChanged();

private:
    QString text_;
};

} // namespace bullace::quick
