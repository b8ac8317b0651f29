// All controls on the glass: pictures of them, nothing cut, nothing without a name.
#include "controls_page.hpp"

#include "quick/accessible_audit.hpp"
#include "support/screen.hpp"

#include <QDir>
#include <QSignalSpy>

#include <doctest/doctest.h>

using bullace::support::Screen;
using namespace bullace::tests;

namespace {

void audit(Screen& screen) {
    const auto faults = bullace::quick::faultsOf(screen.window(), {screen.theme().pxPerMm(), 9, 3});
    for (const QString& fault : faults) {
        FAIL_CHECK(fault.toStdString());
    }
}

void keepPicture(Screen& screen, const QString& name) {
    QDir().mkpath(BULLACE_PICTURES);
    CHECK(screen.picture().save(QStringLiteral(BULLACE_PICTURES "/controls-%1.png").arg(name)));
}

struct Look {
    std::string name;
    qreal textScale;
    bool isDusk;
    bool isLeftHanded;
    bullace::quick::Theme::Layout layout;
};

const Look kLooks[] = {{"day-100", 1, false, false, bullace::quick::Theme::Bare},
                       {"day-200", 2, false, true, bullace::quick::Theme::Bare},
                       {"dusk-100", 1, true, true, bullace::quick::Theme::Glove},
                       {"dusk-200", 2, true, false, bullace::quick::Theme::Bare},
                       {"day-rain", 1, false, false, bullace::quick::Theme::Rain}};

void show(Screen& screen, const Look& look) {
    screen.theme().setTextScale(look.textScale);
    screen.theme().setDusk(look.isDusk);
    screen.theme().setLeftHanded(look.isLeftHanded);
    screen.theme().setLayout(look.layout);
    screen.settle();
}

} // namespace

TEST_CASE("every control in every look: nothing cut, nothing over another, everything named") {
    const auto stages = stageKeys();
    const auto vines = wireVines();
    for (const Look& look : kLooks) {
        CAPTURE(look.name);
        Screen screen(kControlsPage, {160, 330}, 4);
        screen.root().setProperty("stages", QVariant::fromValue<QObject*>(stages.get()));
        screen.root().setProperty("vines", QVariant::fromValue<QObject*>(vines.get()));
        show(screen, look);
        audit(screen);
        keepPicture(screen, QStringLiteral("page-%1").arg(QString::fromStdString(look.name)));
    }
}

TEST_CASE(
    "everything to type with in every look: nothing cut, nothing over another, everything named") {
    for (const Look& look : kLooks) {
        CAPTURE(look.name);
        Screen screen(kTypingPage, {160, 330}, 4);
        show(screen, look);
        screen.item("focused").forceActiveFocus();
        audit(screen);
        keepPicture(screen, QStringLiteral("typing-%1").arg(QString::fromStdString(look.name)));
    }
}
