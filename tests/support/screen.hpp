// A window without a display, with one QML item in it, and synthetic fingers whose events carry the
// times that the test says: nothing waits, and a contact of 49 ms is one of 49 ms on every machine.
#pragma once

#include "quick/theme.hpp"

#include <QGuiApplication>
#include <QPointingDevice>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <QTest>
#include <QTouchEvent>

#include <doctest/doctest.h>

#include <map>
#include <memory>

namespace bullace::support {

// Gives every touch and mouse event the time that the test says; goes before all other filters that
// were there already.
class EventTimes : public QObject {
public:
    explicit EventTimes(QObject& target) { target.installEventFilter(this); }
    static inline quint64 nowMs = 1000; // one for all glasses of a test

protected:
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->isPointerEvent()) {
            static_cast<QInputEvent*>(event)->setTimestamp(nowMs);
        }
        return QObject::eventFilter(watched, event);
    }
};

// A glass that is touched: fingers and keys on one window. Nothing waits; times are the test's.
class Glass {
public:
    Glass(const Glass&) = delete;
    Glass& operator=(const Glass&) = delete;

    quick::Theme& theme() { return quick::themeOf(engine_); }
    QQuickWindow& window() { return *glass_; }
    QQmlEngine& engine() { return engine_; }

    // Null where there is none. Of several of that name one that is seen.
    QQuickItem* found(const char* objectName) {
        const QString name = QString::fromLatin1(objectName);
        QQuickItem* seen = find(glass_->contentItem(), name, true);
        return seen != nullptr ? seen : find(glass_->contentItem(), name, false);
    }
    QQuickItem& item(const char* objectName) {
        auto* there = found(objectName);
        INFO(objectName);
        REQUIRE(there != nullptr);
        return *there;
    }

    // Lets bindings, layout and painting come to rest.
    void settle() {
        glass_->setColor(theme().paper());
        QCoreApplication::processEvents();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        glass_->grabWindow();
        QCoreApplication::processEvents();
    }
    QImage picture() {
        settle();
        return glass_->grabWindow();
    }

    void wait(quint64 ms) { times_.nowMs += ms; }
    static QPoint middleOf(const QQuickItem& of) {
        return of.mapToScene(QPointF(of.width() / 2, of.height() / 2)).toPoint();
    }

    // Contacts by number; they happen at the present time. As from a real glass, each event names
    // all contacts on it.
    void press(int contact, QPoint at) {
        auto event = others(contact);
        event.press(contact, at, glass_).commit();
        onGlass_[contact] = at;
    }
    void move(int contact, QPoint at) {
        auto event = others(contact);
        event.move(contact, at, glass_).commit();
        onGlass_[contact] = at;
    }
    void lift(int contact, QPoint at) {
        auto event = others(contact);
        event.release(contact, at, glass_).commit();
        onGlass_.erase(contact);
    }

    // A tap as a finger makes it: 120 ms on the glass, 447 ms until the next (a tap takes 567 ms:
    // Appl. Ergon. 2016, 10.1016/j.apergo.2016.06.004).
    void tap(QPoint at) {
        press(1, at);
        wait(120);
        lift(1, at);
        wait(447);
        QCoreApplication::processEvents();
    }
    void tap(const char* objectName) { tap(middleOf(item(objectName))); }

    void key(Qt::Key which) {
        QTest::keyClick(glass_, which);
        QCoreApplication::processEvents();
    }

    static QPointingDevice& glass() {
        static QPointingDevice* device = QTest::createTouchDevice();
        return *device;
    }

protected:
    // Any QML warning fails the test.
    Glass() : times_(*qGuiApp) {
        QObject::connect(&engine_, &QQmlEngine::warnings, [](const QList<QQmlError>& errors) {
            for (const QQmlError& error : errors) {
                FAIL_CHECK(error.toString().toStdString());
            }
        });
    }
    ~Glass() = default;
    void setGlass(QQuickWindow* window) { glass_ = window; }

private:
    QTest::QTouchEventSequence others(int contact) {
        auto event = QTest::touchEvent(glass_, &glass(), false);
        for (const auto& [other, at] : onGlass_) {
            if (other != contact) {
                event.move(other, at, glass_); // where it was: Qt sees that it rests
            }
        }
        return event;
    }

    // Repeaters' items have no QObject parent in the tree of the page, so it is the tree of items
    // that is walked.
    static QQuickItem* find(QQuickItem* from, const QString& name, bool isSeen) {
        if (isSeen && !from->isVisible()) {
            return nullptr;
        }
        if (from->objectName() == name) {
            return from;
        }
        const auto children = from->childItems();
        for (auto* child : children) {
            if (auto* found = find(child, name, isSeen)) {
                return found;
            }
        }
        return nullptr;
    }

    EventTimes times_;
    std::map<int, QPoint> onGlass_;
    QQmlEngine engine_;
    QQuickWindow* glass_ = nullptr;
};

// One glass: a window of `sizeMm` at `pxPerMm`, shown offscreen. `qml` is the source of a
// component; its root fills the window. A component that does not load fails the test.
class Screen : public Glass {
public:
    explicit Screen(const QByteArray& qml, QSizeF sizeMm = {210, 130}, qreal pxPerMm = 5)
        : window_(std::make_unique<QQuickWindow>()) {
        quick::registerControls(engine());
        theme().setPxPerMm(pxPerMm);
        window_->resize((sizeMm * pxPerMm).toSize());
        window_->setColor(theme().paper());
        QQmlComponent component(&engine());
        component.setData(qml, QUrl(QStringLiteral("qrc:/test/Screen.qml")));
        INFO(component.errorString().toStdString());
        root_.reset(qobject_cast<QQuickItem*>(component.create()));
        REQUIRE(root_ != nullptr);
        root_->setParentItem(window_->contentItem());
        root_->setSize(window_->size());
        window_->show();
        window_->requestActivate();
        setGlass(window_.get());
        settle();
    }
    ~Screen() { window_->close(); }
    Screen(const Screen&) = delete;
    Screen& operator=(const Screen&) = delete;

    QQuickItem& root() { return *root_; }

private:
    std::unique_ptr<QQuickWindow> window_;
    std::unique_ptr<QQuickItem> root_;
};

} // namespace bullace::support
