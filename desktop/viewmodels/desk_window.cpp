#include "desk/desk_window.hpp"

#include "plots/plot_item.hpp"

#include "quick/theme.hpp"

#include <QCoreApplication>
#include <QQmlComponent>

// What qt_add_qml_module writes; named here so that the linker keeps it.
extern void qml_register_types_Bullace_Desk();

namespace bullace::desk {

DeskWindow::DeskWindow(QQmlEngine& engine, DeskApp& app, qreal pxPerMm)
    : engine_(engine),
      app_(app),
      language_(*QCoreApplication::instance()) {
    quick::registerControls(engine_);
    plots::registerPlots(engine_);
    [[maybe_unused]] static void (*const volatile kept)() = &qml_register_types_Bullace_Desk;
    if (pxPerMm > 0) {
        quick::themeOf(engine_).setPxPerMm(pxPerMm);
    }
    dress();
    speak();
    QQmlComponent component(&engine_,
                            QUrl(QStringLiteral("qrc:/qt/qml/Bullace/Desk/DeskMain.qml")));
    QObject* made = component.createWithInitialProperties(
        {{QStringLiteral("app"), QVariant::fromValue(&app_)}});
    if (made == nullptr) {
        qWarning("%s", qPrintable(component.errorString()));
    }
    window_.reset(qobject_cast<QQuickWindow*>(made));
    if (window_ == nullptr) {
        return;
    }
    connect(&app_, &DeskApp::settingsChanged, this, &DeskWindow::dress);
    connect(&app_, &DeskApp::settingsChanged, this, &DeskWindow::speak);
}

void DeskWindow::speak() {
    if (language_.choose(QString::fromStdString(app_.language()))) {
        engine_.retranslate();
        app_.speakAgain();
    }
}

void DeskWindow::dress() {
    quick::Theme& theme = quick::themeOf(engine_);
    theme.setTextScale(app_.textScale());
    theme.setDusk(app_.isDusk());
}

} // namespace bullace::desk
