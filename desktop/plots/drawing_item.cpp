#include "plots/drawing_item.hpp"

#include "plots/drawing_words.hpp"

#include "quick/theme.hpp"
#include "quick/words.hpp"

#include <QPainter>
#include <QQmlEngine>
#include <QQuickWindow>

#include <utility>

namespace bullace::plots {

void DrawingSource::setDrawing(report::Drawing drawing) {
    drawing_ = std::move(drawing);
    emit changed();
}

QString DrawingSource::title() const {
    return quick::fromText(drawing_.title);
}

QString DrawingSource::summary() const {
    return drawingSummary(drawing_);
}

void DrawingItem::setSource(DrawingSource* source) {
    if (source == source_) {
        return;
    }
    if (source_ != nullptr) {
        source_->disconnect(this);
    }
    source_ = source;
    if (source_ != nullptr) {
        connect(source_, &DrawingSource::changed, this, &DrawingItem::begin);
    }
    begin();
    emit changed();
}

bool DrawingItem::isReady() const {
    return theme_ != nullptr && source_ != nullptr && width() >= 1 && height() >= 1;
}

PlotLook DrawingItem::look() const {
    return {theme_->ink(),
            theme_->paper(),
            theme_->deskFamily(),
            theme_->deskSmallPx(),
            theme_->pxPerMm()};
}

QSizeF DrawingItem::room() const {
    return drawingRoom(source_->drawing(), look(), size(), DrawingTitle::Left).size();
}

bool DrawingItem::isPart() const {
    return isReady() && view_ &&
           view_->scale > wholeView(source_->drawing(), look(), room()).scale * 1.001;
}

void DrawingItem::begin() {
    view_.reset();
    polish();
    update();
}

void DrawingItem::see(const DrawingView& view) {
    view_ = keptInside(source_->drawing(), look(), room(), view);
    polish();
    update();
    emit viewChanged();
}

void DrawingItem::move(qreal right, qreal down) {
    if (isReady() && view_) {
        see({view_->scale, view_->middle + QPointF(right, down) / view_->scale});
    }
}

void DrawingItem::step(qreal right, qreal down) {
    if (isReady()) {
        move(right * room().width() / 4, down * room().height() / 4);
    }
}

void DrawingItem::enlarge(qreal times) {
    if (isReady() && view_) {
        see({view_->scale * times, view_->middle});
    }
}

void DrawingItem::showAll() {
    if (isReady()) {
        see(wholeView(source_->drawing(), look(), room()));
    }
}

void DrawingItem::updatePolish() {
    picture_ = QImage();
    if (!isReady()) {
        return;
    }
    if (!view_) {
        view_ = firstView(source_->drawing(), look(), room());
        emit viewChanged();
    }
    const PlotLook now = look();
    const qreal perPixel = window() == nullptr ? 1 : window()->effectiveDevicePixelRatio();
    picture_ = QImage((size() * perPixel).toSize(), QImage::Format_ARGB32_Premultiplied);
    picture_.setDevicePixelRatio(perPixel);
    picture_.fill(now.paper);
    QPainter painter(&picture_);
    paintDrawing(painter, source_->drawing(), now, size(), *view_, DrawingTitle::Left);
}

void DrawingItem::paint(QPainter* painter) {
    painter->drawImage(QPointF(), picture_);
}

void DrawingItem::componentComplete() {
    QQuickPaintedItem::componentComplete();
    QQmlEngine* engine = qmlEngine(this);
    theme_ = engine == nullptr ? nullptr : &quick::themeOf(*engine);
    if (theme_ != nullptr) {
        connect(theme_, &quick::Theme::changed, this, &DrawingItem::begin);
    }
    begin();
}

void DrawingItem::geometryChange(const QRectF& now, const QRectF& before) {
    QQuickPaintedItem::geometryChange(now, before);
    if (now.size() != before.size()) {
        begin();
    }
}

} // namespace bullace::plots
