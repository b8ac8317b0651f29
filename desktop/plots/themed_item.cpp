#include "plots/themed_item.hpp"

#include "quick/theme.hpp"

#include <QPainter>
#include <QQmlEngine>
#include <QQuickWindow>

namespace bullace::plots {

void ThemedItem::paint(QPainter* painter) {
    painter->drawImage(QPointF(), picture_);
}

void ThemedItem::componentComplete() {
    QQuickPaintedItem::componentComplete();
    QQmlEngine* engine = qmlEngine(this);
    theme_ = engine == nullptr ? nullptr : &quick::themeOf(*engine);
    if (theme_ != nullptr) {
        connect(theme_, &quick::Theme::changed, this, [this] { renew(); });
    }
    renew();
}

void ThemedItem::geometryChange(const QRectF& now, const QRectF& before) {
    QQuickPaintedItem::geometryChange(now, before);
    if (now.size() != before.size()) {
        renew();
    }
}

void ThemedItem::renew() {
    polish();
    update();
}

bool ThemedItem::hasRoom() const {
    return theme_ != nullptr && width() >= 1 && height() >= 1;
}

PlotLook ThemedItem::look() const {
    return {theme_->ink(),
            theme_->paper(),
            theme_->deskFamily(),
            theme_->deskSmallPx(),
            theme_->pxPerMm()};
}

void ThemedItem::draw(const std::function<void(QPainter& painter, const PlotLook& look)>& what) {
    const PlotLook now = look();
    const qreal perPixel = window() == nullptr ? 1 : window()->effectiveDevicePixelRatio();
    picture_ = QImage((size() * perPixel).toSize(), QImage::Format_ARGB32_Premultiplied);
    picture_.setDevicePixelRatio(perPixel);
    picture_.fill(now.paper);
    QPainter painter(&picture_);
    what(painter, now);
}

} // namespace bullace::plots
