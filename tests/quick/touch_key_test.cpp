// The rules of touching a key.
#include "quick/touch_key.hpp"

#include "support/screen.hpp"

#include <QSignalSpy>

#include <doctest/doctest.h>

using bullace::quick::TouchKey;
using bullace::support::Screen;

namespace {

constexpr auto kTwoKeys = R"(
import QtQuick
import Bullace.Controls
Item {
    FieldKey { objectName: "left"; text: "5"; x: 100; y: 100; width: 100; height: 80 }
    FieldKey { objectName: "right"; text: "Next"; x: 210; y: 100; width: 100; height: 80; guardsRepeat: true }
})";

struct Glass {
    Screen screen{kTwoKeys};
    QSignalSpy left{&screen.item("left"), SIGNAL(tapped())};
    QSignalSpy right{&screen.item("right"), SIGNAL(tapped())};
    QPoint onLeft = Screen::middleOf(screen.item("left"));
    QPoint onRight = Screen::middleOf(screen.item("right"));

    void touch(QPoint at, quint64 forMs) {
        screen.press(1, at);
        screen.wait(forMs);
        screen.lift(1, at);
    }
    bool leftIsDown() { return screen.item("left").property("isDown").toBool(); }
};

} // namespace

TEST_CASE("a key acts when the finger is lifted on it, and not before") {
    Glass glass;
    glass.screen.press(1, glass.onLeft);
    glass.screen.wait(120);
    CHECK(glass.left.count() == 0);
    CHECK(glass.leftIsDown());
    glass.screen.lift(1, glass.onLeft);
    CHECK(glass.left.count() == 1);
    CHECK_FALSE(glass.leftIsDown());
}

TEST_CASE("a finger that slides off a key before it is lifted has done nothing") {
    Glass glass;
    glass.screen.press(1, glass.onLeft);
    glass.screen.wait(120);
    glass.screen.move(1, glass.onLeft + QPoint(0, 200));
    QCoreApplication::processEvents();
    glass.screen.lift(1, glass.onLeft + QPoint(0, 200));
    CHECK(glass.left.count() == 0);
    CHECK_FALSE(glass.leftIsDown());
}

TEST_CASE("a finger that slides onto the neighbour has pressed neither") {
    Glass glass;
    glass.screen.press(1, glass.onLeft);
    glass.screen.wait(120);
    glass.screen.move(1, glass.onRight);
    glass.screen.lift(1, glass.onRight);
    CHECK(glass.left.count() == 0);
    CHECK(glass.right.count() == 0);
}

TEST_CASE("a contact shorter than 50 ms is a drop of rain, one of 50 ms a finger") {
    Glass glass;
    glass.touch(glass.onLeft, 49);
    CHECK(glass.left.count() == 0);
    glass.touch(glass.onLeft, 50);
    CHECK(glass.left.count() == 1);
}

TEST_CASE("Next cannot be tapped twice by one bounce of a finger; a digit can be typed twice") {
    Glass glass;
    glass.touch(glass.onRight, 60);
    glass.screen.wait(80);
    glass.touch(glass.onRight, 60);
    CHECK(glass.right.count() == 1);
    glass.screen.wait(91);
    glass.touch(glass.onRight, 60);
    CHECK(glass.right.count() == 2);

    glass.touch(glass.onLeft, 60);
    glass.screen.wait(10);
    glass.touch(glass.onLeft, 60);
    CHECK(glass.left.count() == 2);
}

TEST_CASE("a second finger on the same key is not a second tap") {
    Glass glass;
    glass.screen.press(1, glass.onLeft);
    glass.screen.wait(30);
    glass.screen.press(2, glass.onLeft + QPoint(10, 10));
    glass.screen.wait(100);
    glass.screen.lift(2, glass.onLeft + QPoint(10, 10));
    CHECK(glass.left.count() == 0);
    glass.screen.lift(1, glass.onLeft);
    CHECK(glass.left.count() == 1);
}

TEST_CASE("two fingers on two keys are two taps") {
    Glass glass;
    glass.screen.press(1, glass.onLeft);
    glass.screen.press(2, glass.onRight);
    glass.screen.wait(100);
    glass.screen.lift(1, glass.onLeft);
    glass.screen.lift(2, glass.onRight);
    CHECK(glass.left.count() == 1);
    CHECK(glass.right.count() == 1);
}

TEST_CASE("the gap between two keys belongs to the keys") {
    Glass glass;
    glass.touch(QPoint(203, 140), 100); // the gap is 200 to 210
    glass.touch(QPoint(207, 140), 100);
    CHECK(glass.left.count() == 1);
    CHECK(glass.right.count() == 1);
}

TEST_CASE("a mouse click needs no 50 ms") {
    Glass glass;
    QTest::mouseClick(&glass.screen.window(), Qt::LeftButton, {}, glass.onLeft);
    CHECK(glass.left.count() == 1);
}

TEST_CASE("Space and Enter press the key that has the focus, and Tab goes to the next one") {
    Glass glass;
    glass.screen.item("left").forceActiveFocus();
    glass.screen.key(Qt::Key_Space);
    glass.screen.key(Qt::Key_Return);
    glass.screen.key(Qt::Key_Enter);
    CHECK(glass.left.count() == 3);
    glass.screen.key(Qt::Key_Tab);
    CHECK(glass.screen.item("right").hasActiveFocus());
    glass.screen.key(Qt::Key_Space);
    CHECK(glass.right.count() == 1);
}

TEST_CASE("a key held down on the keyboard is one press") {
    Glass glass;
    glass.screen.item("left").forceActiveFocus();
    QKeyEvent first(QEvent::KeyPress, Qt::Key_Space, Qt::NoModifier, " ");
    QKeyEvent again(QEvent::KeyPress, Qt::Key_Space, Qt::NoModifier, " ", true);
    QCoreApplication::sendEvent(&glass.screen.window(), &first);
    QCoreApplication::sendEvent(&glass.screen.window(), &again);
    CHECK(glass.left.count() == 1);
}

TEST_CASE("a key that is off does nothing, and one that goes away under the finger neither") {
    Glass glass;
    glass.screen.item("left").setEnabled(false);
    glass.touch(glass.onLeft, 100);
    CHECK(glass.left.count() == 0);
    glass.screen.item("left").setEnabled(true);
    glass.screen.press(1, glass.onLeft);
    glass.screen.item("left").setVisible(false);
    glass.screen.item("left").setVisible(true);
    glass.screen.wait(100);
    glass.screen.lift(1, glass.onLeft);
    CHECK(glass.left.count() == 0);
}

TEST_CASE("in the rain a key wants a finger that stays: 150 ms") {
    Glass glass;
    glass.screen.theme().setLayout(bullace::quick::Theme::Rain);
    glass.screen.settle();
    const QPoint at = Screen::middleOf(glass.screen.item("left"));
    glass.touch(at, 149);
    CHECK(glass.left.count() == 0);
    glass.touch(at, 150);
    CHECK(glass.left.count() == 1);
}
