#include "plots/drawing_item.hpp"

#include "plots/drawing_words.hpp"

#include "quick/words.hpp"

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
        connect(source_, &DrawingSource::changed, this, [this] { renew(); });
    }
    renew();
    emit changed();
}

bool DrawingItem::isReady() const {
    return source_ != nullptr && hasRoom();
}

QSizeF DrawingItem::room() const {
    return drawingRoom(source_->drawing(), look(), size(), DrawingTitle::Left).size();
}

bool DrawingItem::isPart() const {
    return isReady() && view_ &&
           view_->scale > wholeView(source_->drawing(), look(), room()).scale * 1.001;
}

void DrawingItem::renew() {
    view_.reset();
    ThemedItem::renew();
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
    forgetPicture();
    if (!isReady()) {
        return;
    }
    if (!view_) {
        view_ = firstView(source_->drawing(), look(), room());
        emit viewChanged();
    }
    draw([this](QPainter& painter, const PlotLook& look) {
        paintDrawing(painter, source_->drawing(), look, size(), *view_, DrawingTitle::Left);
    });
}

} // namespace bullace::plots
