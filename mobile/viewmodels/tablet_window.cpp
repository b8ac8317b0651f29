#include "tablet/tablet_window.hpp"

#include "quick/theme.hpp"

#include <QCoreApplication>
#include <QQmlComponent>

#include <cmath>

// What qt_add_qml_module writes; named here so that the linker keeps it.
extern void qml_register_types_Bullace_Tablet();

namespace bullace::tablet {

namespace {

constexpr qreal kSmallGlassMm = 228; // 9 inches along the diagonal

} // namespace

TabletWindow::TabletWindow(QQmlEngine& engine, TabletApp& app, qreal pxPerMm)
    : engine_(engine),
      app_(app),
      language_(*QCoreApplication::instance()),
      claimedPxPerMm_(pxPerMm) {
    quick::registerControls(engine_);
    // Named so that the linker keeps it; it registers itself when the module is imported.
    [[maybe_unused]] static void (*const volatile kept)() = &qml_register_types_Bullace_Tablet;
    quick::Theme& theme = quick::themeOf(engine_);
    if (claimedPxPerMm_ <= 0) {
        claimedPxPerMm_ = theme.pxPerMm();
    }
    theme.setShowsHints(false); // until somebody uses a keyboard
    dress();
    speak();
    QQmlComponent component(&engine_, QUrl(QStringLiteral("qrc:/qt/qml/Bullace/Tablet/Main.qml")));
    QObject* made = component.createWithInitialProperties(
        {{QStringLiteral("app"), QVariant::fromValue(&app_)}});
    if (made == nullptr) {
        qWarning("%s", qPrintable(component.errorString()));
    }
    window_.reset(qobject_cast<QQuickWindow*>(made));
    if (window_ == nullptr) {
        return;
    }
    connect(&app_, &TabletApp::settingsChanged, this, &TabletWindow::dress);
    connect(&app_, &TabletApp::settingsChanged, this, &TabletWindow::speak);
    connect(window_.get(), &QWindow::widthChanged, this, &TabletWindow::dress);
    connect(window_.get(), &QWindow::heightChanged, this, &TabletWindow::dress);
}

void TabletWindow::speak() {
    if (language_.choose(QString::fromStdString(app_.language()))) {
        engine_.retranslate();
        app_.speakAgain();
    }
}

void TabletWindow::dress() {
    quick::Theme& theme = quick::themeOf(engine_);
    theme.setPxPerMm(claimedPxPerMm_ * app_.glassFactor());
    theme.setTextScale(app_.textScale());
    theme.setDusk(app_.isDusk());
    theme.setLeftHanded(app_.isLeftHanded());
    theme.setLayout(static_cast<quick::Theme::Layout>(app_.layout()));
    if (window_ != nullptr) {
        const qreal diagonal = std::hypot(window_->width(), window_->height());
        theme.setSmallGlass(diagonal / theme.pxPerMm() < kSmallGlassMm);
    }
}

} // namespace bullace::tablet
