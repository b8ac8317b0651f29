// The block map: what it tells, how it is drawn, how it is moved through, and how long it takes.
#include "quick/block_map.hpp"

#include "quick/block_map_item.hpp"
#include "quick/block_map_layout.hpp"
#include "quick/palette.hpp"
#include "support/screen.hpp"

#include <QDir>
#include <QElapsedTimer>
#include <QFileInfo>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>
#include <QSignalSpy>

#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>
#include <set>

using namespace bullace::quick;
using bullace::support::Screen;

namespace {

constexpr QSizeF kSize(900, 520);

BlockMapLook look(Light light = Light::Day) {
    const Palette palette = paletteOf(light);
    return {palette.ink, palette.paper, QStringLiteral("DejaVu Sans"), 13, 3.78, 1, {}};
}

BlockMapCell cell(int row, int vine, BlockMapCell::State state, double value = 0) {
    BlockMapCell made;
    made.position =
        QStringLiteral("B2-%1-%2").arg(row, 2, 10, QChar(u'0')).arg(vine, 2, 10, QChar(u'0'));
    made.vine = vine;
    made.state = state;
    if (state == BlockMapCell::Value) {
        made.value = value;
        made.text = QString::number(value);
    }
    return made;
}

// Rows of values from 0 to 69 that drift along the block, with every state here and there.
BlockMapPicture block(int rows, int vines) {
    BlockMapPicture picture;
    picture.title = QStringLiteral("Block B2, stage on 14 May 2026");
    picture.notes = {
        QStringLiteral("What was not observed is left out of the counts of the stages.")};
    picture.scale = {BlockMapScale::Ordered, QStringLiteral("Stage"), {}, orderedSteps(0, 70, 7)};
    picture.northDegrees = 20;
    for (int row = 1; row <= rows; ++row) {
        BlockMapRow made;
        made.number = QString::number(row);
        made.walk = row % 2 == 1 ? BlockMapRow::FromFirst : BlockMapRow::FromLast;
        for (int vine = 1; vine <= vines; ++vine) {
            const int dice = (row * 7919 + vine * 104729) % 97;
            const auto state = dice < 4    ? BlockMapCell::Missing
                               : dice < 7  ? BlockMapCell::Dead
                               : dice < 13 ? BlockMapCell::NotObserved
                               : dice < 15 ? BlockMapCell::Open
                               : dice < 17 ? BlockMapCell::Empty
                                           : BlockMapCell::Value;
            made.cells.push_back(cell(row, vine, state, (row * 2 + vine + dice / 8) % 70));
            made.cells.back().isMarked = dice % 40 == 20;
        }
        picture.rows.push_back(std::move(made));
    }
    return picture;
}

QImage
pictureOf(const BlockMapPicture& picture, const BlockMapLook& with = look(), QSizeF size = kSize) {
    QImage image(size.toSize(), QImage::Format_RGB32);
    image.fill(with.paper);
    QPainter painter(&image);
    paintBlockMap(painter, picture, with, size);
    return image;
}

QByteArray bytesOf(const QImage& image) {
    return {reinterpret_cast<const char*>(image.constBits()), image.sizeInBytes()};
}

void keep(const QImage& image, const char* name) {
    REQUIRE(QDir().mkpath(QStringLiteral(BULLACE_PICTURES)));
    CHECK(
        image.save(QStringLiteral(BULLACE_PICTURES "/block-map-%1.png").arg(QLatin1String(name))));
}

double medianMs(const BlockMapPicture& picture, const BlockMapLook& with, QSizeF size) {
    QImage image(size.toSize(), QImage::Format_ARGB32_Premultiplied); // what Qt Quick paints into
    std::vector<double> times;
    for (int i = 0; i < 15; ++i) {
        QElapsedTimer timer;
        timer.start();
        QPainter painter(&image);
        paintBlockMap(painter, picture, with, size);
        painter.end();
        times.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    }
    std::nth_element(times.begin(), times.begin() + 7, times.end());
    return times[7];
}

} // namespace

TEST_CASE(
    "each state of a vine has a shape of its own, also printed in one colour, large and small") {
    for (const int vines : {8, 90}) {
        CAPTURE(vines);
        std::set<QByteArray> looks;
        for (int state = 0; state < static_cast<int>(kBlockMapStates); ++state) {
            BlockMapPicture picture = block(vines, vines);
            picture.scale.kind = BlockMapScale::Plain;
            for (BlockMapRow& row : picture.rows) {
                for (BlockMapCell& vine : row.cells) {
                    vine = cell(1, vine.vine, BlockMapCell::Value);
                    vine.text.clear();
                }
            }
            picture.rows[2].cells[3].state = static_cast<BlockMapCell::State>(state);
            const BlockMapLook with = look();
            const BlockMapLayout layout(picture, with, kSize);
            const QRect box = layout.placeBox({2, 3}).toAlignedRect();
            const QImage mono = pictureOf(picture).copy(box).convertToFormat(
                QImage::Format_Mono, Qt::MonoOnly | Qt::ThresholdDither);
            looks.insert(bytesOf(mono.convertToFormat(QImage::Format_Grayscale8)));
        }
        CHECK(looks.size() == kBlockMapStates);
    }
}

TEST_CASE("a finding is seen on every fill, by day and at dusk") {
    for (const Light light : {Light::Day, Light::Dusk}) {
        for (double value = 5; value < 70; value += 10) {
            BlockMapPicture picture = block(6, 10);
            picture.rows[2].cells[3] = cell(3, 4, BlockMapCell::Value, value);
            const QImage without = pictureOf(picture, look(light));
            picture.rows[2].cells[3].isMarked = true;
            const QImage with = pictureOf(picture, look(light));
            const BlockMapLook how = look(light);
            const QRectF box = BlockMapLayout(picture, how, kSize).cellBox({2, 3});
            const QPoint corner = (box.topRight() + QPointF(-3, 3)).toPoint();
            CHECK(std::abs(qGray(with.pixel(corner)) - qGray(without.pixel(corner))) > 60);
        }
    }
}

TEST_CASE("every vine is counted once in the legend") {
    for (const auto kind : {BlockMapScale::Plain,
                            BlockMapScale::Ordered,
                            BlockMapScale::Classes,
                            BlockMapScale::Diverging}) {
        CAPTURE(kind);
        BlockMapPicture picture = block(12, 30);
        picture.scale.kind = kind;
        const auto lines = legendOf(picture);
        const int marked = countsOf(picture).marked;
        CHECK(marked > 0);
        const int sum = std::accumulate(
            lines.begin(), lines.end(), 0, [](int so, const BlockMapLegendLine& line) {
                return so + line.count;
            });
        CHECK(sum == 12 * 30 + marked);
    }
}

TEST_CASE("each step stands in the legend in its own colour") {
    for (const auto kind :
         {BlockMapScale::Ordered, BlockMapScale::Classes, BlockMapScale::Diverging}) {
        CAPTURE(kind);
        BlockMapPicture picture = block(3, 30);
        picture.scale.kind = kind;
        picture.scale.steps =
            kind == BlockMapScale::Diverging ? divergingSteps(6) : orderedSteps(0, 70, 7);
        const auto lines = legendOf(picture);
        REQUIRE(lines.size() >= 7);
        for (std::size_t step = 0; step < 7; ++step) {
            CHECK(stepOf(picture.scale, lines[step].sample.value) == step);
            CHECK(lines[step].words == picture.scale.steps[step].label);
        }
    }
}

TEST_CASE(
    "steps begin and end at round numbers, take every value, and are at most as many as asked") {
    for (const auto& [least, greatest, most] : {std::tuple{0.0, 70.0, 7},
                                                {12.3, 19.9, 7},
                                                {0.0, 1.0, 5},
                                                {-3.0, 40.0, 6},
                                                {5.0, 5.1, 3}}) {
        CAPTURE(least);
        BlockMapScale scale{BlockMapScale::Ordered, {}, {}, {}};
        scale.steps = orderedSteps(least, greatest, static_cast<std::size_t>(most));
        REQUIRE(!scale.steps.empty());
        CHECK(scale.steps.size() <= static_cast<std::size_t>(most));
        CHECK(scale.steps.back().upTo >= greatest - 1e-9);
        CHECK(stepOf(scale, least) == 0);
        CHECK(stepOf(scale, greatest) == scale.steps.size() - 1);
    }
    CHECK(orderedSteps(7, 7, 7).size() == 1);
    CHECK(orderedSteps(0, 70, 7).front().label == QStringLiteral("0 to 10"));
}

TEST_CASE(
    "no difference lies in the middle of a diverging scale, and equal ones at equal distance") {
    BlockMapScale scale{BlockMapScale::Diverging, {}, {}, divergingSteps(9)};
    REQUIRE(scale.steps.size() == 7);
    CHECK(stepOf(scale, 0) == 3);
    for (const double difference : {0.5, 3.0, 6.0, 9.0, 50.0}) {
        const auto up = stepOf(scale, difference);
        const auto down = stepOf(scale, -difference);
        REQUIRE((up && down));
        CHECK(*up + *down == 6);
    }
    CHECK(stepOf(scale, 9) == 6);
}

TEST_CASE("a value that is none, and a class that nobody knows, have no fill") {
    const BlockMapScale classes{BlockMapScale::Classes,
                                {},
                                {},
                                {{QStringLiteral("male"), 0}, {QStringLiteral("perfect"), 0}}};
    CHECK(stepOf(classes, 1) == 1);
    CHECK_FALSE(stepOf(classes, 2));
    CHECK_FALSE(stepOf(classes, -1));
    CHECK_FALSE(stepOf(classes, std::nullopt));
    CHECK_FALSE(stepOf({}, 3));
}

TEST_CASE("what is pointed at is the cell that is drawn there, zoomed and moved, too") {
    const BlockMapPicture picture = block(20, 40);
    for (const double zoom : {1.0, 3.0}) {
        BlockMapLook with = look();
        with.zoom = zoom;
        with.pan = zoom > 1 ? QPointF(211, 97) : QPointF();
        const BlockMapLayout layout(picture, with, kSize);
        int seen = 0;
        for (std::size_t row = 0; row < 20; ++row) {
            for (std::size_t vine = 0; vine < 40; ++vine) {
                const QPointF middle = layout.placeBox({row, vine}).center();
                const auto at = layout.cellAt(middle);
                if (layout.field().contains(middle)) {
                    ++seen;
                    CHECK(at == BlockMapPlace{row, vine});
                } else {
                    CHECK_FALSE(at);
                }
            }
        }
        CHECK((zoom > 1 ? seen < 800 && seen > 40 : seen == 800));
        CHECK_FALSE(layout.cellAt({2, 2}));
        CHECK_FALSE(layout.cellAt(layout.legend().center()));
    }
}

TEST_CASE(
    "a vine planted between two shares the place of the one before, and the others keep in line") {
    BlockMapPicture picture = block(2, 20);
    auto& cells = picture.rows[0].cells;
    BlockMapCell between = cells[13];
    between.position += QLatin1Char('a');
    cells.insert(cells.begin() + 14, between);
    const BlockMapLook with = look();
    const BlockMapLayout layout(picture, with, kSize);
    const QRectF before = layout.placeBox({0, 13});
    const QRectF after = layout.placeBox({0, 14});
    CHECK(before.right() == doctest::Approx(after.left()));
    CHECK(before.width() == doctest::Approx(after.width()));
    CHECK(layout.placeBox({0, 15}).left() == doctest::Approx(layout.placeBox({1, 14}).left()));
    CHECK(layout.cellAt(after.center()) == BlockMapPlace{0, 14});
}

TEST_CASE("map, legend and heads never lie over one another, on wide and upright pages") {
    for (const QSizeF size : {QSizeF(900, 520), QSizeF(500, 700), QSizeF(320, 300)}) {
        for (const auto& [rows, vines] : {std::pair{3, 8}, {40, 120}, {100, 20}}) {
            CAPTURE(size.width());
            CAPTURE(rows);
            const BlockMapPicture picture = block(rows, vines);
            const BlockMapLook with = look();
            const BlockMapLayout layout(picture, with, size);
            const QRectF page(QPointF(), size);
            CHECK_FALSE(layout.field().intersects(layout.legend()));
            CHECK_FALSE(layout.field().intersects(layout.head()));
            CHECK(page.contains(layout.field()));
            CHECK(page.adjusted(-1, -1, 1, 1).contains(layout.legend()));
        }
    }
}

TEST_CASE("the map in words tells its counts and the cell under the cursor") {
    BlockMapPicture picture = block(2, 3);
    picture.rows[0].cells[0] = cell(1, 1, BlockMapCell::Value, 65);
    picture.rows[0].cells[0].isMarked = true;
    picture.rows[0].cells[1] = cell(1, 2, BlockMapCell::Missing);
    CHECK(blockMapWords(picture, {0, 0}) == QStringLiteral("B2 · row 1 · vine 1: 65, marked"));
    CHECK(blockMapWords(picture, {0, 1}) == QStringLiteral("B2 · row 1 · vine 2: Missing"));
    const QString words = blockMapSummary(picture);
    CHECK(words.startsWith(picture.title));
    for (const BlockMapLegendLine& line : legendOf(picture)) {
        CHECK(words.contains(QStringLiteral("%1: %2.").arg(line.words).arg(line.count)));
    }
}

TEST_CASE("a map of no rows is drawn without a fault") {
    CHECK_FALSE(pictureOf({}).isNull());
    BlockMapPicture empty;
    empty.rows.resize(3);
    CHECK_FALSE(pictureOf(empty).isNull());
    const BlockMapLook with = look();
    CHECK_FALSE(BlockMapLayout(empty, with, kSize).cellAt({300, 200}));
}

TEST_CASE("12,000 vines are painted anew within a frame, whatever is to be told of them") {
    const QSizeF size(1200, 720);
    BlockMapPicture picture = block(100, 120);
    const double mixed = medianMs(picture, look(), size);
    const double dusk = medianMs(picture, look(Light::Dusk), size);
    BlockMapLook zoomed = look();
    zoomed.zoom = 3;
    const double near = medianMs(picture, zoomed, size);
    const auto allOf = [&picture, size](BlockMapCell::State state) {
        for (BlockMapRow& row : picture.rows) {
            for (BlockMapCell& vine : row.cells) {
                vine.state = state;
            }
        }
        return medianMs(picture, look(), size);
    };
    const double hatched = allOf(BlockMapCell::NotObserved);
    const double dead = allOf(BlockMapCell::Dead);
    const double missing = allOf(BlockMapCell::Missing);
    MESSAGE("ms for 12,000 cells: ",
            mixed,
            ", dusk ",
            dusk,
            ", zoomed ",
            near,
            ", all hatched ",
            hatched,
            ", all dead ",
            dead,
            ", all missing ",
            missing);
#ifdef NDEBUG
    CHECK(std::max({mixed, dusk, near, hatched, dead, missing}) < 16);
#endif
}

TEST_CASE("maps of every kind are drawn to be looked at") {
    BlockMapPicture picture = block(14, 34);
    keep(pictureOf(picture), "ordered-day");
    keep(pictureOf(picture, look(Light::Dusk)), "ordered-dusk");
    picture.scale = {BlockMapScale::Classes, QStringLiteral("Flower sex"), {}, {}};
    for (const char* name :
         {"male, erect", "male, reflexed", "perfect", "female", "not sure", "5", "6", "7"}) {
        picture.scale.steps.push_back({QString::fromLatin1(name), 0});
    }
    for (BlockMapRow& row : picture.rows) {
        for (BlockMapCell& vine : row.cells) {
            vine.value =
                vine.value ? std::optional(static_cast<int>(*vine.value) % 8) : std::nullopt;
            vine.text.clear();
        }
    }
    keep(pictureOf(picture), "classes-day");
    picture.scale = {BlockMapScale::Diverging,
                     QStringLiteral("Clusters, difference from 2 May"),
                     QStringLiteral("clusters"),
                     divergingSteps(9)};
    for (BlockMapRow& row : picture.rows) {
        for (BlockMapCell& vine : row.cells) {
            vine.value = vine.value ? std::optional(*vine.value * 3 - 10) : std::nullopt;
            vine.text = vine.value ? QString::number(*vine.value) : QString();
        }
    }
    keep(pictureOf(picture), "diverging-day");
    keep(pictureOf(picture, look(Light::Dusk)), "diverging-dusk");
    keep(pictureOf(picture, look(), {520, 680}), "diverging-upright");
    picture = block(100, 120);
    keep(pictureOf(picture, look(), {1200, 720}), "station");
    BlockMapLook near = look();
    near.zoom = 4;
    near.pan = {300, 500};
    keep(pictureOf(picture, near, {1200, 720}), "station-near");
}

namespace {

constexpr auto kMap = R"(
    import QtQuick
    import Bullace.Controls
    BlockMap { objectName: "map"; focus: true }
)";

struct MapGlass {
    BlockMapSource source;
    Screen screen{kMap, {220, 130}, 4};
    BlockMapItem& map = *qobject_cast<BlockMapItem*>(&screen.root());
    QSignalSpy chosen{&map, &BlockMapItem::chosen};

    MapGlass() {
        source.setPicture(block(12, 30));
        map.setSource(&source);
        map.forceActiveFocus();
        screen.settle();
    }
};

} // namespace

TEST_CASE("arrows move from vine to vine and Enter chooses, without painting the map anew") {
    MapGlass glass;
    CHECK(glass.map.cursor() == QStringLiteral("B2-01-01"));
    const int before = glass.map.paintings();
    glass.screen.key(Qt::Key_Right);
    glass.screen.key(Qt::Key_Down);
    glass.screen.settle();
    CHECK(glass.map.cursor() == QStringLiteral("B2-02-02"));
    glass.screen.key(Qt::Key_End);
    glass.screen.key(Qt::Key_PageDown);
    CHECK(glass.map.cursor() == QStringLiteral("B2-12-30"));
    glass.screen.key(Qt::Key_Right);
    glass.screen.key(Qt::Key_Down);
    CHECK(glass.map.cursor() == QStringLiteral("B2-12-30"));
    glass.screen.key(Qt::Key_Home);
    glass.screen.key(Qt::Key_Return);
    glass.screen.settle();
    CHECK(glass.map.paintings() == before);
    REQUIRE(glass.chosen.count() == 1);
    CHECK(glass.chosen[0][0].toString() == QStringLiteral("B2-12-01"));
}

TEST_CASE("a click chooses the vine under it, and a drag chooses nothing") {
    MapGlass glass;
    glass.map.setCursor(QStringLiteral("B2-05-17"));
    const QPoint there = glass.map.cursorBox().center().toPoint();
    glass.map.setCursor(QStringLiteral("B2-01-01"));
    QTest::mouseClick(&glass.screen.window(), Qt::LeftButton, {}, there);
    REQUIRE(glass.chosen.count() == 1);
    CHECK(glass.chosen[0][0].toString() == QStringLiteral("B2-05-17"));
    QTest::mousePress(&glass.screen.window(), Qt::LeftButton, {}, there);
    QTest::mouseMove(&glass.screen.window(), there + QPoint(40, 25));
    QTest::mouseRelease(&glass.screen.window(), Qt::LeftButton, {}, there + QPoint(40, 25));
    CHECK(glass.chosen.count() == 1);
}

TEST_CASE("plus zooms about the cursor, which is never lost from sight, and 0 shows all again") {
    MapGlass glass;
    glass.map.setCursor(QStringLiteral("B2-12-30"));
    for (int i = 0; i < 8; ++i) {
        glass.screen.key(Qt::Key_Plus);
        CHECK(glass.map.cursorBox().width() > 5);
    }
    CHECK(glass.map.zoom() > 4);
    glass.screen.key(Qt::Key_Home);
    CHECK(glass.map.cursorBox().width() > 5);
    glass.screen.key(Qt::Key_PageUp);
    CHECK(glass.map.cursorBox().height() > 5);
    keep(glass.screen.picture(), "item-near");
    glass.screen.key(Qt::Key_0);
    CHECK(glass.map.zoom() == doctest::Approx(1));
    keep(glass.screen.picture(), "item");
}

TEST_CASE("a map that changes keeps the cursor in place; one without vines has none") {
    MapGlass glass;
    glass.map.setCursor(QStringLiteral("B2-05-17"));
    glass.source.setPicture(block(12, 30));
    CHECK(glass.map.cursor() == QStringLiteral("B2-05-17"));
    glass.source.setPicture({});
    CHECK(glass.map.cursor().isEmpty());
    glass.screen.key(Qt::Key_Down);
    glass.screen.key(Qt::Key_Return);
    CHECK(glass.chosen.count() == 0);
}

TEST_CASE("on paper the map's words stay words") {
    REQUIRE(QDir().mkpath(QStringLiteral(BULLACE_PICTURES)));
    const QString path = QStringLiteral(BULLACE_PICTURES "/block-map.pdf");
    QPdfWriter writer(path);
    writer.setResolution(600);
    writer.setPageSize(QPageSize(QPageSize::Letter));
    writer.setPageOrientation(QPageLayout::Landscape);
    const qreal pxPerMm = 600 / 25.4;
    BlockMapLook with{
        Qt::black, Qt::white, QStringLiteral("DejaVu Sans"), qRound(3.4 * pxPerMm), pxPerMm, 1, {}};
    QPainter painter(&writer);
    paintBlockMap(painter, block(40, 120), with, QSizeF(writer.width(), writer.height()));
    CHECK(painter.end());
    CHECK(QFileInfo(path).size() < 1'000'000);
}
