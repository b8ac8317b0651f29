// What plots and drawings on the glass have in common: a picture in the theme's ink, made when what
// it shows, its size or the theme changes.
#pragma once

#include "plots/plot_painter.hpp"

#include <QImage>
#include <QPointer>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

#include <functional>

namespace bullace::quick {
class Theme;
}

namespace bullace::plots {

// What draws runs in the thread of the windows, and only its picture is handed to the one that
// paints.
class ThemedItem : public QQuickPaintedItem {
    Q_OBJECT
    QML_ANONYMOUS

public:
    explicit ThemedItem(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}
    void paint(QPainter* painter) override;

protected:
    void componentComplete() override;
    void geometryChange(const QRectF& now, const QRectF& before) override;

    // Something of what it shows is another now.
    virtual void renew();
    [[nodiscard]] bool hasRoom() const; // and a theme
    [[nodiscard]] PlotLook look() const;
    void forgetPicture() { picture_ = QImage(); }
    // Makes the picture; only where there is room.
    void draw(const std::function<void(QPainter& painter, const PlotLook& look)>& what);

private:
    QPointer<quick::Theme> theme_;
    QImage picture_;
};

} // namespace bullace::plots
