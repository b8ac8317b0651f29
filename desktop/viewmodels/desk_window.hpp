// The desk's window: made from the app's pages, and dressed as its settings say. The program and
// the tests make it in the same way.
#pragma once

#include "desk/desk_app.hpp"

#include "quick/language.hpp"

#include <QObject>
#include <QQmlEngine>
#include <QQuickWindow>

#include <memory>

namespace bullace::desk {

class DeskWindow : public QObject {
    Q_OBJECT

public:
    // Both must outlive this. `window()` is null where the pages did not load; the engine's
    // warnings say why. pxPerMm as the screen claims; 0: as Qt says.
    DeskWindow(QQmlEngine& engine, DeskApp& app, qreal pxPerMm = 0);

    [[nodiscard]] QQuickWindow* window() const { return window_.get(); }

private:
    void dress();
    void speak();

    QQmlEngine& engine_;
    DeskApp& app_;
    quick::Language language_;
    std::unique_ptr<QQuickWindow> window_;
};

} // namespace bullace::desk
