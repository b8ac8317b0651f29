// Labels, row sheets and the map as files, through the window.
#include "core/vineyard/label_code.hpp"
#include "support/desk_glass.hpp"

using namespace bullace;
using namespace bullace::test;

namespace {

struct Station {
    Station() {
        const char* office = "s00000000000000ff.1";
        std::string lines = lineOf({office, 1, "hq", "catalog", "block/B2/rows", "[[1,3],[2,3]]"});
        lines += lineOf({office, 2, "hq", "catalog", "person/im/name", R"("Ines Moor")"});
        lines += lineOf({office, 3, "hq", "catalog", "lot/S1/kind", R"("seed")"});
        lines += lineOf({office,
                         4,
                         "hq",
                         "catalog",
                         "block/B2/label-01-02",
                         "\"" + vineyard::labelCode(1) + "\""});
        lines += lineOf(
            {"t0000000000000001.1", 1, "im", "observe", "obs/B2-01-01/2026-05-11/clusters", "40"});
        makeStationFile(path, lines);
    }
    TempFolder folder;
    std::string path = folder.file("station.db");
    FixedClock clock;
};

void printInto(DeskGlass& desk, const std::string& file) {
    desk.press("p");
    REQUIRE(desk.page().isAsking());
    desk.answer(QString::fromStdString(file));
}

std::uint64_t entriesIn(const std::string& path) {
    auto database = store::Database::open(path, false, store::fileSurroundings());
    REQUIRE(database.ok());
    const auto counts = (*database)->counts();
    REQUIRE(counts.ok());
    return counts->entries;
}

} // namespace

TEST_CASE("labels of a row are written as a PDF; vines without a code get one, once") {
    Station station;
    DeskGlass desk(station.path, station.clock);
    desk.sit("im");
    desk.press(Qt::Key_8, Qt::ControlModifier);
    desk.press("l");
    REQUIRE(desk.app().page() == desk::DeskApp::Print);
    desk.press("o");
    desk.answer(QStringLiteral("B7-01"));
    CHECK(desk.page().isAsking()); // no such row
    desk.press(Qt::Key_A, Qt::ControlModifier);
    desk.answer(QStringLiteral("B2-01"));
    desk.look("print");
    const std::string before = desk.at("block/B2/label-01-02");
    const std::uint64_t entries = entriesIn(station.path);
    const std::string file = station.folder.file("labels.pdf");
    printInto(desk, file);
    CHECK(bytesOf(file).starts_with("%PDF"));
    CHECK(desk.at("block/B2/label-01-02") == before);
    CHECK_FALSE(desk.at("block/B2/label-01-01").empty());
    CHECK(desk.at("block/B2/label-01-01") != desk.at("block/B2/label-01-03"));
    CHECK(entriesIn(station.path) == entries + 2);
    printInto(desk, station.folder.file("again.pdf"));
    CHECK(entriesIn(station.path) == entries + 2);
}

TEST_CASE("row sheets, row ends, seed lots and a test page are written; a bad path is told") {
    Station station;
    DeskGlass desk(station.path, station.clock);
    desk.sit("im");
    desk.press(Qt::Key_8, Qt::ControlModifier);
    desk.press("l");
    const auto choose = [&desk](int kind) {
        desk.page().table()->setCurrent(kind);
        desk.press(Qt::Key_Return);
    };
    const auto of = [&desk](const char* text) {
        desk.press("o");
        desk.answer(QLatin1String(text));
        CHECK_FALSE(desk.page().isAsking());
    };
    choose(7);
    of("B2");
    desk.look("print-sheets");
    printInto(desk, station.folder.file("sheets.pdf"));
    CHECK(bytesOf(station.folder.file("sheets.pdf")).starts_with("%PDF"));
    choose(1);
    printInto(desk, station.folder.file("ends.pdf"));
    CHECK(bytesOf(station.folder.file("ends.pdf")).starts_with("%PDF"));
    choose(5);
    of("seed");
    printInto(desk, station.folder.file("seed.pdf"));
    CHECK(bytesOf(station.folder.file("seed.pdf")).starts_with("%PDF"));
    CHECK_FALSE(desk.at("lot/S1/label").empty());
    desk.press("t");
    desk.answer(QString::fromStdString(station.folder.file("test.pdf")));
    CHECK(bytesOf(station.folder.file("test.pdf")).starts_with("%PDF"));
    printInto(desk, "/nowhere/at/all.pdf");
    CHECK(desk.app().notice().contains(QStringLiteral("/nowhere/at/all.pdf")));
}

TEST_CASE("the map is written as a page, and a vine on it leads to its page") {
    Station station;
    DeskGlass desk(station.path, station.clock);
    desk.press(Qt::Key_7, Qt::ControlModifier);
    REQUIRE(desk.app().page() == desk::DeskApp::Map);
    CHECK(desk.app().map()->wish().descriptor == "clusters");
    const quick::BlockMapPicture& picture = desk.app().map()->map()->picture();
    REQUIRE(picture.rows.size() == 2);
    CHECK(picture.rows[0].cells[0].text == QStringLiteral("40"));
    CHECK(picture.rows[0].cells[1].state == quick::BlockMapCell::Empty); // nothing planted
    printInto(desk, station.folder.file("map.pdf"));
    CHECK(bytesOf(station.folder.file("map.pdf")).starts_with("%PDF"));
    desk.item("blockMap").forceActiveFocus();
    desk.press(Qt::Key_Home);
    desk.press(Qt::Key_Return);
    CHECK(desk.app().page() == desk::DeskApp::Vine);
    CHECK(desk.page().title().contains(QStringLiteral("B2")));
    desk.press(Qt::Key_Escape); // puts the notice away
    desk.press(Qt::Key_Escape);
    CHECK(desk.app().page() == desk::DeskApp::Map);
}
