#include "quick/touch_key.hpp"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QTouchEvent>

namespace bullace::quick {

TouchKey::TouchKey(QQuickItem* parent) : QQuickItem(parent) {
    setAcceptTouchEvents(true);
    setAcceptedMouseButtons(Qt::LeftButton);
    setActiveFocusOnTab(true);
}

void TouchKey::setGuardsRepeat(bool value) {
    if (value != guardsRepeat_) {
        guardsRepeat_ = value;
        emit guardsRepeatChanged();
    }
}

void TouchKey::setDwellMs(int value) {
    const auto dwell = static_cast<quint64>(qMax(0, value));
    if (dwell != dwellMs_) {
        dwellMs_ = dwell;
        emit dwellMsChanged();
    }
}

void TouchKey::setReach(qreal value) {
    if (!qFuzzyCompare(value + 1, reach_ + 1)) {
        reach_ = value;
        emit reachChanged();
    }
}

bool TouchKey::contains(const QPointF& point) const {
    return boundingRect().adjusted(-reach_, -reach_, reach_, reach_).contains(point);
}

void TouchKey::tap() {
    if (isEnabled()) {
        emit tapped();
    }
}

void TouchKey::touchEvent(QTouchEvent* event) {
    if (event->type() == QEvent::TouchCancel) {
        letGo();
        return;
    }
    for (const QEventPoint& point : event->points()) {
        if (point.state() == QEventPoint::Pressed && !contact_ && contains(point.position())) {
            contact_ = point.id();
            touchedMs_ = event->timestamp();
            setKeepTouchGrab(true);
            setDown(true);
        } else if (contact_ == point.id()) {
            follow(point, event->timestamp());
        }
    }
    event->accept();
}

void TouchKey::follow(const QEventPoint& point, quint64 timeMs) {
    const bool isInside = contains(point.position());
    if (point.state() != QEventPoint::Released) {
        setDown(isInside);
        return;
    }
    letGo();
    if (isInside && timeMs - touchedMs_ >= dwellMs_) {
        act(timeMs);
    }
}

void TouchKey::touchUngrabEvent() {
    letGo();
}

void TouchKey::mousePressEvent(QMouseEvent* event) {
    setKeepMouseGrab(true);
    setDown(true);
    event->accept();
}

void TouchKey::mouseMoveEvent(QMouseEvent* event) {
    setDown(contains(event->position()));
}

void TouchKey::mouseReleaseEvent(QMouseEvent* event) {
    const bool acts = isDown_ && contains(event->position());
    letGo();
    if (acts) {
        act(event->timestamp());
    }
}

void TouchKey::mouseUngrabEvent() {
    letGo();
}

void TouchKey::keyPressEvent(QKeyEvent* event) {
    const bool isOurs = event->key() == Qt::Key_Space || event->key() == Qt::Key_Return ||
                        event->key() == Qt::Key_Enter;
    if (!isOurs || event->modifiers().testFlag(Qt::ControlModifier)) {
        event->ignore();
        return;
    }
    // A key held down is one press: the keyboard's own repeats are swallowed.
    if (!event->isAutoRepeat()) {
        tap();
    }
}

void TouchKey::itemChange(ItemChange change, const ItemChangeData& value) {
    // A key that goes away under the finger must not act when it comes back.
    if ((change == ItemVisibleHasChanged || change == ItemEnabledHasChanged) && !value.boolValue) {
        letGo();
    }
    QQuickItem::itemChange(change, value);
}

void TouchKey::setDown(bool value) {
    if (value != isDown_) {
        isDown_ = value;
        emit isDownChanged();
    }
}

void TouchKey::letGo() {
    contact_.reset();
    setKeepTouchGrab(false);
    setKeepMouseGrab(false);
    setDown(false);
}

void TouchKey::act(quint64 timeMs) {
    const bool isRepeat = guardsRepeat_ && actedMs_ && timeMs - *actedMs_ < kRepeatMs;
    actedMs_ = timeMs;
    if (!isRepeat) {
        tap();
    }
}

} // namespace bullace::quick
