#include "quick/glass_guard.hpp"

#include <QCoreApplication>
#include <QTouchEvent>

#include <algorithm>

namespace bullace::quick {

namespace {

bool isTouch(QEvent::Type type) {
    return type == QEvent::TouchBegin || type == QEvent::TouchUpdate || type == QEvent::TouchEnd ||
           type == QEvent::TouchCancel;
}

qsizetype contactsAfter(const QTouchEvent& event) {
    const auto& points = event.points();
    return std::count_if(points.begin(), points.end(), [](const QEventPoint& point) {
        return point.state() != QEventPoint::Released;
    });
}

} // namespace

void GlassGuard::setWindow(QQuickWindow* window) {
    if (window == window_) {
        return;
    }
    if (window_ != nullptr) {
        window_->removeEventFilter(this);
    }
    window_ = window;
    if (window_ != nullptr) {
        window_->installEventFilter(this);
    }
    setHeld(false);
    emit windowChanged();
}

bool GlassGuard::eventFilter(QObject* watched, QEvent* event) {
    if (watched != window_ || isCancelling_ || !isTouch(event->type())) {
        return QObject::eventFilter(watched, event);
    }
    const bool isTaken = takes(static_cast<QTouchEvent*>(event));
    // Taken means accepted: else Qt would make mouse events of it.
    event->setAccepted(isTaken || event->isAccepted());
    return isTaken;
}

bool GlassGuard::takes(QTouchEvent* event) {
    if (event->type() == QEvent::TouchCancel) {
        setHeld(false);
        return false;
    }
    const qsizetype contacts = contactsAfter(*event);
    if (!isHeld_ && contacts >= kTooMany) {
        cancelAll(*event);
        setHeld(true);
        return true;
    }
    const bool isNew = event->type() == QEvent::TouchBegin && contacts < kTooMany;
    const bool wasHeld = isHeld_ && !isNew;
    if (isNew || contacts == 0) {
        setHeld(false);
    }
    return wasHeld;
}

void GlassGuard::cancelAll(const QTouchEvent& event) {
    isCancelling_ = true;
    QTouchEvent cancel(QEvent::TouchCancel, event.pointingDevice());
    cancel.setTimestamp(event.timestamp());
    QCoreApplication::sendEvent(window_, &cancel);
    isCancelling_ = false;
}

void GlassGuard::setHeld(bool value) {
    if (value != isHeld_) {
        isHeld_ = value;
        emit isHeldChanged();
    }
}

} // namespace bullace::quick
