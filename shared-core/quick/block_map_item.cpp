#include "quick/block_map_item.hpp"

#include "quick/block_map_layout.hpp"
#include "quick/theme.hpp"

#include <QGuiApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QQmlEngine>
#include <QStyleHints>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace bullace::quick {

namespace {

constexpr double kMostZoom = 12;
constexpr double kZoomStep = 1.25;
constexpr double kWheelStep = 120; // eighths of a degree: one notch of a wheel
constexpr int kPage = 10;          // rows

QPointF between(QPointF value, QPointF greatest) {
    return {std::clamp(value.x(), 0.0, std::max(0.0, greatest.x())),
            std::clamp(value.y(), 0.0, std::max(0.0, greatest.y()))};
}

} // namespace

void BlockMapSource::setPicture(BlockMapPicture picture) {
    picture_ = std::move(picture);
    emit changed();
}

BlockMapItem::BlockMapItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAcceptedMouseButtons(Qt::LeftButton);
    setOpaquePainting(true);
}

BlockMapItem::~BlockMapItem() = default;

void BlockMapItem::setSource(BlockMapSource* source) {
    if (source == source_) {
        return;
    }
    if (source_ != nullptr) {
        source_->disconnect(this);
    }
    source_ = source;
    if (source_ != nullptr) {
        connect(source_, &BlockMapSource::changed, this, &BlockMapItem::takePicture);
    }
    takePicture();
    emit sourceChanged();
}

const BlockMapPicture& BlockMapItem::picture() const {
    static const BlockMapPicture kNothing;
    return source_ == nullptr ? kNothing : source_->picture();
}

const BlockMapLayout& BlockMapItem::layout() const {
    if (layout_ == nullptr) {
        layout_ = std::make_unique<BlockMapLayout>(picture(), look_, size());
    }
    return *layout_;
}

// The cursor stays at its position where the new picture has it, too.
void BlockMapItem::takePicture() {
    const auto& rows = picture().rows;
    const auto before = cursor_;
    cursor_.reset();
    layout_.reset();
    if (before && before->row < rows.size() && !rows[before->row].cells.empty()) {
        cursor_ =
            BlockMapPlace{before->row, std::min(before->cell, rows[before->row].cells.size() - 1)};
    }
    for (std::size_t row = 0; !cursor_ && row < rows.size(); ++row) {
        cursor_ = rows[row].cells.empty() ? std::nullopt : std::optional(BlockMapPlace{row, 0});
    }
    keepInside();
    renew();
    emit pictureChanged();
}

void BlockMapItem::renew() {
    if (theme_ != nullptr) {
        look_.ink = theme_->ink();
        look_.paper = theme_->paper();
        look_.family = theme_->deskFamily();
        look_.textPx = theme_->deskSmallPx();
        look_.pxPerMm = theme_->pxPerMm();
    }
    layout_.reset();
    update();
    emit viewChanged();
    emit cursorMoved();
}

void BlockMapItem::keepInside() {
    look_.pan = between(look_.pan, layout().mostPan());
    layout_.reset();
}

void BlockMapItem::panTo(QPointF pan) {
    const QPointF inside = between(pan, layout().mostPan());
    if (inside != look_.pan) {
        look_.pan = inside;
        renew();
    }
}

// What lies under `point` stays there.
void BlockMapItem::zoomAbout(QPointF point, double zoom) {
    const double inside = std::isfinite(zoom) ? std::clamp(zoom, 1.0, kMostZoom) : 1.0;
    if (qFuzzyCompare(inside, look_.zoom)) {
        return;
    }
    const QPointF origin = layout().field().topLeft();
    const QPointF share = (point - origin + look_.pan) / look_.zoom;
    look_.zoom = inside;
    look_.pan = share * inside - (point - origin);
    layout_.reset();
    keepInside();
    renew();
}

void BlockMapItem::setZoom(double value) {
    const QRectF box = cursorBox();
    zoomAbout(box.isEmpty() ? layout().field().center() : box.center(), value);
    showCursor();
}

QString BlockMapItem::cursor() const {
    return cursor_ ? picture().rows[cursor_->row].cells[cursor_->cell].position : QString();
}

void BlockMapItem::setCursor(const QString& position) {
    const auto& rows = picture().rows;
    for (std::size_t row = 0; row < rows.size(); ++row) {
        const auto& cells = rows[row].cells;
        const auto at = std::find_if(cells.begin(), cells.end(), [&](const BlockMapCell& cell) {
            return cell.position == position;
        });
        if (at != cells.end()) {
            placeCursor({row, static_cast<std::size_t>(at - cells.begin())});
            return;
        }
    }
}

QString BlockMapItem::cursorWords() const {
    return cursor_ ? blockMapWords(picture(), *cursor_) : QString();
}

QRectF BlockMapItem::cursorBox() const {
    return cursor_ ? layout().placeBox(*cursor_).intersected(layout().field()) : QRectF();
}

QString BlockMapItem::summary() const {
    return blockMapSummary(picture());
}

void BlockMapItem::placeCursor(BlockMapPlace place) {
    if (cursor_ == place) {
        return;
    }
    cursor_ = place;
    showCursor();
    emit cursorMoved();
}

// Moves what is seen as little as shows the cursor's cell whole.
void BlockMapItem::showCursor() {
    if (!cursor_) {
        return;
    }
    const QRectF box = layout().placeBox(*cursor_);
    const QRectF field = layout().field();
    const auto missing = [](qreal from, qreal to, qreal least, qreal greatest) {
        return from < least ? from - least : std::max(0.0, to - greatest);
    };
    panTo(look_.pan + QPointF(missing(box.left(), box.right(), field.left(), field.right()),
                              missing(box.top(), box.bottom(), field.top(), field.bottom())));
}

std::optional<BlockMapPlace> BlockMapItem::nearest(std::size_t row, double vine) const {
    const auto& cells = picture().rows[row].cells;
    const auto at = std::min_element(
        cells.begin(), cells.end(), [vine](const BlockMapCell& one, const BlockMapCell& other) {
            return std::abs(one.vine - vine) < std::abs(other.vine - vine);
        });
    if (at == cells.end()) {
        return std::nullopt;
    }
    return BlockMapPlace{row, static_cast<std::size_t>(at - cells.begin())};
}

// The row `by` rows on, or the last before the map ends.
std::size_t BlockMapItem::rowBeside(int by) const {
    const auto last = static_cast<std::ptrdiff_t>(picture().rows.size()) - 1;
    const auto row = static_cast<std::ptrdiff_t>(cursor_->row) + by;
    return static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(row, 0, last));
}

bool BlockMapItem::moveCursor(int key) {
    if (!cursor_) {
        return false;
    }
    const auto& cells = picture().rows[cursor_->row].cells;
    BlockMapPlace to = *cursor_;
    int rows = 0;
    switch (key) {
    case Qt::Key_Left:
        to.cell -= to.cell > 0 ? 1 : 0;
        break;
    case Qt::Key_Right:
        to.cell = std::min(to.cell + 1, cells.size() - 1);
        break;
    case Qt::Key_Home:
        to.cell = 0;
        break;
    case Qt::Key_End:
        to.cell = cells.size() - 1;
        break;
    case Qt::Key_Up:
    case Qt::Key_Down:
        rows = key == Qt::Key_Up ? -1 : 1;
        break;
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
        rows = key == Qt::Key_PageUp ? -kPage : kPage;
        break;
    default:
        return false;
    }
    if (rows != 0) {
        to = nearest(rowBeside(rows), cells[cursor_->cell].vine).value_or(*cursor_);
    }
    placeCursor(to);
    return true;
}

void BlockMapItem::choose() {
    if (cursor_) {
        emit chosen(cursor());
    }
}

void BlockMapItem::keyPressEvent(QKeyEvent* event) {
    const bool isPlain = (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) == 0;
    bool isTaken = isPlain && moveCursor(event->key());
    if (isPlain && !isTaken) {
        isTaken = true;
        switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            choose();
            break;
        case Qt::Key_Plus:
        case Qt::Key_Equal: // the same key without Shift on many keyboards
            setZoom(look_.zoom * kZoomStep);
            break;
        case Qt::Key_Minus:
            setZoom(look_.zoom / kZoomStep);
            break;
        case Qt::Key_0:
            setZoom(1);
            break;
        default:
            isTaken = false;
        }
    }
    event->setAccepted(isTaken);
}

void BlockMapItem::wheelEvent(QWheelEvent* event) {
    const QPointF turned = QPointF(event->angleDelta()) / kWheelStep;
    if ((event->modifiers() & Qt::ControlModifier) != 0) {
        zoomAbout(event->position(), look_.zoom * std::pow(kZoomStep, turned.y()));
        event->accept();
        return;
    }
    const QPointF most = layout().mostPan();
    const qreal step = 3 * layout().rowHeight();
    const bool isSideways = (event->modifiers() & Qt::ShiftModifier) != 0;
    const QPointF by = isSideways ? QPointF(turned.y(), 0) : turned;
    event->setAccepted(most.x() > 0 || most.y() > 0);
    panTo(look_.pan - by * step);
}

void BlockMapItem::mousePressEvent(QMouseEvent* event) {
    forceActiveFocus(Qt::MouseFocusReason);
    pressedAt_ = event->position();
    pannedAt_ = look_.pan;
    isDragged_ = false;
    event->accept();
}

void BlockMapItem::mouseMoveEvent(QMouseEvent* event) {
    const QPointF by = event->position() - pressedAt_;
    isDragged_ =
        isDragged_ || by.manhattanLength() >= QGuiApplication::styleHints()->startDragDistance();
    if (isDragged_) {
        panTo(pannedAt_ - by);
    }
}

void BlockMapItem::mouseReleaseEvent(QMouseEvent* event) {
    const auto place = isDragged_ ? std::nullopt : layout().cellAt(event->position());
    if (place) {
        placeCursor(*place);
        choose();
    }
}

void BlockMapItem::paint(QPainter* painter) {
    ++paintings_;
    paintBlockMap(*painter, picture(), look_, size());
}

void BlockMapItem::componentComplete() {
    QQuickPaintedItem::componentComplete();
    QQmlEngine* engine = qmlEngine(this);
    theme_ = engine == nullptr ? nullptr : &themeOf(*engine);
    if (theme_ != nullptr) {
        connect(theme_, &Theme::changed, this, &BlockMapItem::renew);
    }
    renew();
}

void BlockMapItem::geometryChange(const QRectF& now, const QRectF& before) {
    QQuickPaintedItem::geometryChange(now, before);
    if (now.size() != before.size()) {
        layout_.reset();
        keepInside();
        renew();
    }
}

} // namespace bullace::quick
