// The row drawn as its wire.
#include "quick/wire.hpp"

#include "controls_page.hpp"

#include "support/screen.hpp"

#include <QImage>
#include <QPainter>
#include <QSignalSpy>

#include <doctest/doctest.h>

#include <set>

using namespace bullace::quick;
using bullace::support::Screen;
using bullace::tests::wireVines;

namespace {

const WireStyle kStyle{Qt::black, Qt::white, "B612", 15, 20, 4};
constexpr QSizeF kWide(800, 160);

WireVine vine(const char* place, WireVine::Kind kind = WireVine::Plain, const char* tag = "") {
    return {QString::fromLatin1(place), QString::fromLatin1(tag), kind, false, false};
}

WireScene sevenVines() {
    WireScene scene;
    scene.vines = {vine("1"), vine("2"), vine("3"), vine("4"), vine("5"), vine("6"), vine("7")};
    scene.vines[3].isHere = true;
    return scene;
}

QImage pictureOf(const WireScene& scene, QSizeF size = kWide) {
    QImage image(size.toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintWire(painter, scene, kStyle, size);
    return image;
}

QByteArray bytesOf(const QImage& image) {
    return {reinterpret_cast<const char*>(image.constBits()), image.sizeInBytes()};
}

std::vector<int> shownVines(const WireScene& scene, QSizeF size = kWide) {
    std::vector<int> shown;
    for (const WireSlot& slot : wireSlots(scene, kStyle, size)) {
        shown.push_back(slot.vine);
    }
    return shown;
}

} // namespace

TEST_CASE("what is sound, missing, dead, not observed and walked past has each its own picture") {
    std::set<QByteArray> pictures;
    for (const auto kind : {WireVine::Plain,
                            WireVine::Missing,
                            WireVine::Dead,
                            WireVine::NotObserved,
                            WireVine::WalkedPast}) {
        WireScene scene = sevenVines();
        scene.vines[1].kind = kind;
        pictures.insert(bytesOf(pictureOf(scene)));
    }
    CHECK(pictures.size() == 5);
}

TEST_CASE("a mark, a tag, the side walked, the direction and the posts are each seen") {
    const QByteArray plain = bytesOf(pictureOf(sevenVines()));
    const auto differs = [&plain](auto&& change) {
        WireScene scene = sevenVines();
        change(scene);
        return bytesOf(pictureOf(scene)) != plain;
    };
    CHECK(differs([](WireScene& scene) { scene.vines[2].isMarked = true; }));
    CHECK(differs([](WireScene& scene) { scene.vines[2].tag = "5"; }));
    CHECK(differs([](WireScene& scene) { scene.side = WireScene::Left; }));
    CHECK(differs([](WireScene& scene) { scene.direction = -1; }));
    CHECK(differs([](WireScene& scene) { scene.hasFirstPost = true; }));
    CHECK(differs([](WireScene& scene) { scene.hasLastPost = true; }));
    WireScene left = sevenVines();
    left.side = WireScene::Left;
    WireScene right = sevenVines();
    right.side = WireScene::Right;
    CHECK(bytesOf(pictureOf(left)) != bytesOf(pictureOf(right)));
}

TEST_CASE("a tag hangs in a box below its vine, for the dead vine too") {
    for (const auto kind : {WireVine::Plain, WireVine::Dead, WireVine::Missing}) {
        CAPTURE(kind);
        WireScene bare = sevenVines();
        bare.vines[1].kind = kind;
        WireScene tagged = bare;
        tagged.vines[1].tag = "55";
        const QRectF box = wireSlots(tagged, kStyle, kWide)[1].box;
        const QImage picture = pictureOf(tagged);
        int framed = 0; // rows in which the box's left and right sides are both dark
        for (int y = picture.height() / 2; y < picture.height(); ++y) {
            int darkColumns = 0;
            for (int x = int(box.left()); x < int(box.right()); ++x) {
                darkColumns += qGray(picture.pixel(x, y)) < 100 ? 1 : 0;
            }
            framed += darkColumns > 20 ? 1 : 0;
        }
        CHECK(framed >= 3); // the box's upper and lower side
    }
}

TEST_CASE("walking left, the next stops are drawn to the left") {
    WireScene scene = sevenVines();
    CHECK(shownVines(scene) == std::vector<int>{0, 1, 2, 3, 4, 5, 6});
    scene.direction = -1;
    CHECK(shownVines(scene) == std::vector<int>{6, 5, 4, 3, 2, 1, 0});
}

TEST_CASE("on a narrow glass the farthest stops are left out, and no word is cut") {
    WireScene scene = sevenVines();
    scene.vines[2].tag = "not observed";
    const auto shown = shownVines(scene, {300, 160});
    REQUIRE(shown.size() < 7);
    CHECK(std::find(shown.begin(), shown.end(), 3) != shown.end());
    for (const WireSlot& slot : wireSlots(scene, kStyle, {300, 160})) {
        CHECK(slot.box.width() >= 9 * kStyle.pxPerMm);
        CHECK(slot.box.right() <= 300.5);
    }
}

TEST_CASE("a touch anywhere in a vine's strip is a touch of that vine") {
    const WireScene scene = sevenVines();
    for (const WireSlot& slot : wireSlots(scene, kStyle, kWide)) {
        CHECK(vineAt(scene, kStyle, kWide, slot.box.center()) == slot.vine);
        CHECK(vineAt(scene, kStyle, kWide, {slot.box.center().x(), 1}) == slot.vine);
    }
    CHECK_FALSE(vineAt(scene, kStyle, kWide, {-5, 20}).has_value());
    CHECK_FALSE(vineAt(WireScene{}, kStyle, kWide, {20, 20}).has_value());
}

TEST_CASE("longer tags make the picture higher, so that they hang whole") {
    WireScene scene = sevenVines();
    const qreal plain = wireHeight(scene, kStyle, 400);
    scene.vines[0].tag = "out of reach";
    CHECK(wireHeight(scene, kStyle, 400) > plain);
}

TEST_CASE(
    "the wire on the glass follows its model, says it in words, and tells which vine was tapped") {
    const auto vines = wireVines();
    Screen screen(R"(
import QtQuick
import Bullace.Controls
Item {
    property alias vines: wire.vines
    FieldWire { id: wire; objectName: "wire"; width: 1000; height: implicitHeight }
})");
    screen.root().setProperty("vines", QVariant::fromValue<QObject*>(vines.get()));
    screen.settle();
    QQuickItem& wire = screen.item("wire");
    const QString words = wire.property("summary").toString();
    CHECK(words.contains("Vine 34, you stand here."));
    CHECK(words.contains("Vine 31, 24.5, marked."));
    CHECK(words.contains("Vine 32, missing, no vine."));

    QSignalSpy tapped(&wire, SIGNAL(vineTapped(int)));
    screen.tap("stop1");
    REQUIRE(tapped.count() == 1);
    CHECK(tapped.first().first().toInt() == 1);

    vines->item(4)->setData("61", Qt::UserRole + 1);
    CHECK(wire.property("summary").toString().contains("Vine 34, you stand here, 61."));
}
