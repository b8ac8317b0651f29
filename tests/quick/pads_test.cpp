// Number pad, letters, choices, stripes and the row's ends: what each says when it is pressed, and
// by which hand.
#include "controls_page.hpp"

#include "support/screen.hpp"

#include <QSignalSpy>

#include <doctest/doctest.h>

using bullace::quick::Theme;
using bullace::support::Screen;
using namespace bullace::tests;

namespace {

constexpr auto kPad = R"(
import QtQuick
import Bullace.Controls
Item {
    property string said
    property alias canCommit: pad.canCommit
    NumberKeys {
        id: pad
        objectName: "pad"
        hasPoint: true
        x: 20; y: 20; width: 600; height: implicitHeight
        onDigit: (character) => { parent.said += character; }
        onPoint: { parent.said += "."; }
        onErase: { parent.said += "<"; }
        onNext: { parent.said += ";"; }
        onNudge: (by) => { parent.said += by > 0 ? "+" : "-"; }
    }
})";

QString said(Screen& screen) {
    return screen.root().property("said").toString();
}

} // namespace

TEST_CASE("a number is typed with one tap for each digit and one for Next") {
    Screen screen(kPad);
    for (const char* key : {"digit2", "digit4", "point", "digit5", "next"}) {
        screen.tap(key);
    }
    CHECK(said(screen) == "24.5;");
    for (const char* key :
         {"digit0", "digit1", "digit3", "digit6", "digit7", "digit8", "digit9", "erase"}) {
        screen.tap(key);
    }
    screen.tap("nudgeUp");
    screen.tap("nudgeDown");
    CHECK(said(screen) == "24.5;0136789<+-");
}

TEST_CASE("Next does nothing while what is typed cannot be recorded") {
    Screen screen(kPad);
    screen.root().setProperty("canCommit", false);
    screen.tap("next");
    CHECK(said(screen).isEmpty());
    screen.root().setProperty("canCommit", true);
    screen.tap("next");
    CHECK(said(screen) == ";");
}

TEST_CASE("the pad works from the keyboard alone: Tab visits every key once and comes round") {
    Screen screen(kPad);
    screen.item("digit1").forceActiveFocus();
    QStringList visited;
    for (int i = 0; i < 15; ++i) {
        visited << screen.window().activeFocusItem()->objectName();
        screen.key(Qt::Key_Space);
        screen.key(Qt::Key_Tab);
    }
    CHECK(visited.size() == 15);
    CHECK(QSet<QString>(visited.begin(), visited.end()).size() == 15);
    CHECK(screen.item("digit1").hasActiveFocus());
    CHECK(said(screen).size() == 15);
}

TEST_CASE("for the left hand Next stands at the left, and the digits keep their order") {
    Screen screen(kPad);
    CHECK(screen.item("next").x() > screen.item("digit9").x());
    screen.theme().setLeftHanded(true);
    screen.settle();
    CHECK(screen.item("next").x() < screen.item("digit7").x());
    CHECK(screen.item("digit7").x() < screen.item("digit9").x());
}

TEST_CASE("the touch areas of the pad leave no gap between its keys") {
    Screen screen(kPad);
    const QQuickItem& pad = screen.item("pad");
    int taps = 0;
    for (int y = 20; y < 20 + int(pad.height()); y += 13) {
        const int x = 20 + (y * 37) % int(pad.width());
        screen.tap(QPoint(x, y));
        CHECK(said(screen).size() == ++taps);
    }
}

TEST_CASE("a stage is chosen with one tap on its word") {
    const auto stages = stageKeys();
    Screen screen(R"(
import QtQuick
import Bullace.Controls
Item {
    property QtObject stages
    property int picked: -1
    ChoiceKeys {
        objectName: "choices"
        x: 20; y: 20; width: 900; height: 500
        model: parent.stages
        onChosen: (index) => { parent.picked = index; }
    }
})");
    screen.root().setProperty("stages", QVariant::fromValue<QObject*>(stages.get()));
    screen.settle();
    screen.tap("choice6");
    CHECK(screen.root().property("picked").toInt() == 6);
    QQuickItem& choices = screen.item("choices");
    CHECK(choices.property("fits").toBool());
    CHECK(screen.item("choice3").property("isChosen").toBool());
    stages->item(8)->setData(true, Qt::UserRole + 3);
    CHECK(screen.item("choice8").property("isChosen").toBool());
}

TEST_CASE("all keys of a scale are equally large, whatever their words") {
    const auto stages = stageKeys();
    stages->add({"Berries as large as peas and touching", "75", "", false, "Berries touch"});
    Screen screen(R"(
import QtQuick
import Bullace.Controls
Item {
    property QtObject stages
    ChoiceKeys { x: 20; y: 20; width: 700; height: implicitHeight; model: parent.stages }
})");
    screen.root().setProperty("stages", QVariant::fromValue<QObject*>(stages.get()));
    screen.settle();
    const QSizeF first = screen.item("choice0").size();
    for (int i = 1; i < 10; ++i) {
        CHECK(screen.item(qPrintable(QStringLiteral("choice%1").arg(i))).size() == first);
    }
}

TEST_CASE("a position is typed in letters and digits") {
    Screen screen(R"(
import QtQuick
import Bullace.Controls
Item {
    property string said
    LetterKeys {
        x: 20; y: 20; width: 900; height: implicitHeight
        others: "-"
        onCharacter: (text) => { parent.said += text; }
        onErase: { parent.said += "<"; }
        onDone: { parent.said += ";"; }
    }
})");
    for (const char* key : {"letterB", "letter2", "letter-", "letter7", "space", "erase", "done"}) {
        screen.tap(key);
    }
    CHECK(said(screen) == "B2-7 <;");
}

TEST_CASE("a stripe offers up to two keys and takes no focus for itself") {
    Screen screen(R"(
import QtQuick
import Bullace.Controls
Item {
    property string said
    NoticeStripe {
        x: 20; y: 20; width: 700; height: implicitHeight
        text: "5 after 7 on 3 May"
        firstText: "Keep"
        secondText: "Fix"
        onFirst: { parent.said += "keep "; }
        onSecond: { parent.said += "fix "; }
    }
})");
    screen.tap("noticeFirst");
    screen.tap("noticeSecond");
    CHECK(said(screen) == "keep fix ");
    CHECK_FALSE(screen.item("noticeFirst").hasActiveFocus());
}

TEST_CASE("one stands at the end of the row that was tapped") {
    Screen screen(R"(
import QtQuick
import Bullace.Controls
Item {
    property string said
    RowPicture {
        x: 20; y: 20; width: 900; height: implicitHeight
        vineCount: 34; firstText: "Vine 1"; lastText: "Vine 34"
        onFirstEnd: { parent.said += "first "; }
        onLastEnd: { parent.said += "last "; }
    }
})");
    screen.tap("lastEnd");
    screen.tap("firstEnd");
    CHECK(said(screen) == "last first ");
    const qreal density = screen.theme().pxPerMm();
    CHECK(screen.item("firstEnd").width() >= 30 * density);
}

TEST_CASE("where a scale does not fit, a last key turns to the next ones, and round again") {
    const auto stages = stageKeys();
    Screen screen(R"(
import QtQuick
import Bullace.Controls
Item {
    property QtObject stages
    property int picked: -1
    ChoiceKeys {
        objectName: "choices"
        x: 20; y: 20; width: 320; height: 260
        model: parent.stages
        onChosen: (index) => { parent.picked = index; }
    }
})");
    screen.root().setProperty("stages", QVariant::fromValue<QObject*>(stages.get()));
    screen.settle();
    CHECK_FALSE(screen.item("choices").property("fits").toBool());
    CHECK_FALSE(screen.item("choice8").isVisible());
    for (int page = 0; page < 9 && !screen.item("choice8").isVisible(); ++page) {
        screen.tap("moreChoices");
        screen.settle();
    }
    REQUIRE(screen.item("choice8").isVisible());
    screen.tap("choice8");
    CHECK(screen.root().property("picked").toInt() == 8);
    screen.tap("moreChoices");
    screen.settle();
    CHECK(screen.item("choice0").isVisible());
}
