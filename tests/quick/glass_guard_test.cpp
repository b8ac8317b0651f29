// Palms and rain on the glass.
#include "support/screen.hpp"

#include <QSignalSpy>

#include <doctest/doctest.h>

using bullace::support::Screen;

namespace {

constexpr auto kGuardedKey = R"(
import QtQuick
import Bullace.Controls
Item {
    id: page
    FieldKey { objectName: "key"; text: "5"; x: 100; y: 100; width: 100; height: 80 }
    GlassGuard { id: guard; window: page.Window.window }
    NoticeStripe { objectName: "stripe"; visible: guard.isHeld; text: "Glass touched by three or more: waiting" }
})";

struct WetGlass {
    Screen screen{kGuardedKey};
    QSignalSpy tapped{&screen.item("key"), SIGNAL(tapped())};
    QPoint onKey = Screen::middleOf(screen.item("key"));

    bool isHeld() { return screen.item("stripe").isVisible(); }
    bool keyIsDown() { return screen.item("key").property("isDown").toBool(); }
};

} // namespace

TEST_CASE("one finger and two are heard") {
    WetGlass glass;
    glass.screen.tap(glass.onKey);
    glass.screen.press(1, glass.onKey);
    glass.screen.press(2, {600, 400});
    CHECK_FALSE(glass.isHeld());
    glass.screen.wait(100);
    glass.screen.lift(2, {600, 400});
    glass.screen.lift(1, glass.onKey);
    CHECK(glass.tapped.count() == 2);
}

TEST_CASE("at the third contact what was begun is cancelled, and a stripe says so") {
    WetGlass glass;
    glass.screen.press(1, glass.onKey);
    glass.screen.press(2, {600, 400});
    CHECK(glass.keyIsDown());
    glass.screen.press(3, {700, 450});
    CHECK(glass.isHeld());
    CHECK_FALSE(glass.keyIsDown());
    glass.screen.wait(100);
    glass.screen.lift(1, glass.onKey);
    CHECK(glass.tapped.count() == 0);
    CHECK(glass.isHeld());
    glass.screen.lift(2, {600, 400});
    glass.screen.lift(3, {700, 450});
    CHECK_FALSE(glass.isHeld());
}

TEST_CASE("until the glass is clear a finger does nothing; then it is heard again") {
    WetGlass glass;
    for (int drop = 2; drop <= 4; ++drop) {
        glass.screen.press(drop, {500 + 50 * drop, 400});
    }
    glass.screen.lift(4, {700, 400});
    glass.screen.lift(3, {650, 400});
    CHECK(glass.isHeld());
    glass.screen.press(1, glass.onKey);
    glass.screen.wait(100);
    glass.screen.lift(1, glass.onKey);
    CHECK(glass.tapped.count() == 0);
    glass.screen.lift(2, {600, 400});
    CHECK_FALSE(glass.isHeld());
    glass.screen.tap(glass.onKey);
    CHECK(glass.tapped.count() == 1);
}
