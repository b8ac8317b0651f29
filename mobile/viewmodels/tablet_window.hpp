// The tablet's window: made from the app's pages, and dressed as its settings say. The program and
// the tests make it in the same way.
#pragma once

#include "tablet/tablet_app.hpp"

#include "quick/language.hpp"

#include <QObject>
#include <QQmlEngine>
#include <QQuickWindow>

#include <memory>

namespace bullace::tablet {

class TabletWindow : public QObject {
    Q_OBJECT

public:
    // Both must outlive this. `window()` is null where the pages did not load; the engine's
    // warnings say why. pxPerMm as the glass claims; 0: as the screen says.
    TabletWindow(QQmlEngine& engine, TabletApp& app, qreal pxPerMm = 0);

    [[nodiscard]] QQuickWindow* window() const { return window_.get(); }

private:
    void dress();
    void speak();

    QQmlEngine& engine_;
    TabletApp& app_;
    quick::Language language_;
    qreal claimedPxPerMm_;
    std::unique_ptr<QQuickWindow> window_;
};

} // namespace bullace::tablet
