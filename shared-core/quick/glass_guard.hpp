// Palms and rain: when three or more contacts lie on the glass, none of them is a finger that means
// something.
#pragma once

#include <QObject>
#include <QPointer>
#include <QQuickWindow>
#include <QtQml/qqmlregistration.h>

namespace bullace::quick {

// Watches the touches of one window. At the third contact at the same time everything in progress
// is cancelled, and nothing reaches the page until the glass is clear. It opens no dialog: a page
// shows a stripe while `isHeld`.
class GlassGuard : public QObject {
    Q_OBJECT
    QML_ELEMENT
    // Borrowed; may go before the guard does.
    Q_PROPERTY(QQuickWindow* window READ window WRITE setWindow NOTIFY windowChanged)
    Q_PROPERTY(bool isHeld READ isHeld NOTIFY isHeldChanged)

public:
    static constexpr int kTooMany = 3;

    explicit GlassGuard(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] QQuickWindow* window() const { return window_; }
    void setWindow(QQuickWindow* window);
    [[nodiscard]] bool isHeld() const { return isHeld_; }

    bool eventFilter(QObject* watched, QEvent* event) override;

signals:
    void windowChanged();
    void isHeldChanged();

private:
    bool takes(QTouchEvent* event);
    void cancelAll(const QTouchEvent& event);
    void setHeld(bool value);

    QPointer<QQuickWindow> window_;
    bool isHeld_ = false;
    bool isCancelling_ = false;
};

} // namespace bullace::quick
