// The bench through the window: the grid, a row sheet that is typed twice, numbers for what the
// field opened.
#include "support/desk_glass.hpp"

using namespace bullace;
using namespace bullace::test;

namespace {

constexpr std::int64_t kDay = 1'789'387'200'000; // 2026-09-14, noon in UTC

std::string benchLines() {
    const char* office = "s00000000000000ff.1";
    const char* tablet = "t0000000000000001.1";
    int seq = 0;
    std::string lines;
    const auto add = [&](const char* subject, const char* json) {
        lines += lineOf({office, ++seq, "hq", "catalog", subject, json});
    };
    add("block/B2/rows", "[[1,3]]");
    add("person/im/name", R"("Ines Moor")");
    add("accession/A1/name", R"("Brindlecap")");
    for (const char* place : {"B2-01-01", "B2-01-02", "B2-01-03"}) {
        add((std::string("planting/") + place + "/2020-03-01").c_str(),
            R"({"accession":"A1","until":null})");
    }
    add("lot/J1/kind", R"("juice")");
    add("lot/J1/from", R"("B2-01-01")");
    add("lot/J2/kind", R"("juice")");
    add("lot/J2/from", R"("B2-01-02")");
    add("cross/X1/number", R"("X26-013")");
    lines += lineOf({tablet, 1, "im", "catalog", "cross/000000-1/mother", R"("A1")"});
    return lines;
}

struct Station {
    Station() { makeStationFile(path, benchLines()); }
    TempFolder folder;
    std::string path = folder.file("station.db");
    FixedClock clock{kDay};
};

void choose(DeskGlass& desk, const char* key) {
    desk::GridModel& choices = *desk.app().bench()->choices();
    const int row = choices.rowOf(QLatin1String(key));
    REQUIRE(row >= 0);
    desk.item("benchChoices").forceActiveFocus();
    choices.setCurrent(row);
    desk.press(Qt::Key_Return);
}

} // namespace

TEST_CASE(
    "values of lots are typed into the grid by keys, downwards with Enter and along with Tab") {
    Station station;
    DeskGlass desk(station.path, station.clock);
    desk.sit("im");
    desk.press(Qt::Key_5, Qt::ControlModifier);
    REQUIRE(desk.app().page() == desk::DeskApp::Bench);
    REQUIRE(desk.page().table()->count() == 2);
    desk.press(Qt::Key_Tab); // from the list into the grid
    desk.press(Qt::Key_Home);
    desk.press(Qt::Key_Right);
    desk.press(Qt::Key_Right);
    desk.press("15.5");
    desk.press(Qt::Key_Return);
    desk.press("16,2");
    desk.press(Qt::Key_Tab);
    desk.press("5.25");
    desk.press(Qt::Key_Return);
    const auto& file = *desk.page().table();
    CHECK(file.textAt(0, 2) == QStringLiteral("15.5 °Brix"));
    CHECK(file.textAt(1, 2) == QStringLiteral("16.2 °Brix"));
    CHECK(desk.at("obs/lot:J2/2026-09-14/titratable-acidity") == "settled 5.25");
    desk.look("bench");

    // Another value over it needs a reason; what is no value is refused in words.
    desk.press(Qt::Key_End);
    desk.press("6.5");
    desk.press(Qt::Key_Return);
    CHECK(desk.page().isAsking());
    desk.answer(QStringLiteral("burette misread"));
    CHECK(desk.at("obs/lot:J2/2026-09-14/titratable-acidity") == "settled 6.5");
    desk.press("650");
    desk.press(Qt::Key_Return);
    CHECK_FALSE(desk.app().notice().isEmpty());
    CHECK(desk.at("obs/lot:J2/2026-09-14/titratable-acidity") == "settled 6.5");
    desk.press(Qt::Key_Z, Qt::ControlModifier);
    CHECK(desk.at("obs/lot:J2/2026-09-14/titratable-acidity") == "settled 5.25");
}

TEST_CASE("a scanned label brings its line into the grid") {
    Station station;
    DeskGlass desk(station.path, station.clock);
    desk.sit("im");
    desk.press(Qt::Key_5, Qt::ControlModifier);
    desk.press("g");
    desk.answer(QStringLiteral("B2-01-03"));
    REQUIRE(desk.page().table()->count() == 3);
    CHECK(desk.page().table()->currentKey() == QStringLiteral("B2-01-03"));
    desk.press("g");
    desk.answer(QStringLiteral("B7-99-03"));
    CHECK(desk.page().isAsking());
    CHECK_FALSE(desk.page().refusal().isEmpty());
}

TEST_CASE("a row sheet is typed twice, what differs is put right, and all is written as one act") {
    Station station;
    DeskGlass desk(station.path, station.clock);
    desk.sit("im");
    desk.press(Qt::Key_5, Qt::ControlModifier);
    for (const char* column :
         {"column soluble-solids", "column titratable-acidity", "column ph", "column absorbance"}) {
        choose(desk, column); // off
    }
    choose(desk, "column clusters");
    choose(desk, "sheet");
    desk.answer(QStringLiteral("ROW/B2-01/L/1"));
    desk.answer(QStringLiteral("im"));
    desk.answer(QStringLiteral("2026-09-12"));
    const auto typeAll = [&desk](const std::vector<const char*>& values) {
        desk.item("pageTable").forceActiveFocus();
        desk.press(Qt::Key_Home);
        desk.press(Qt::Key_Right);
        desk.press(Qt::Key_Right);
        for (const char* value : values) {
            desk.press(value);
            desk.press(Qt::Key_Return);
        }
    };
    CHECK(desk.page().table()->at(0).key == QStringLiteral("B2-01-03"));
    typeAll({"31", "22", "13"});
    desk.look("bench-sheet");
    desk.press("n");
    CHECK(desk.page().table()->textAt(0, 2).isEmpty()); // what was typed first is hidden
    typeAll({"31", "32", "13"});
    CHECK(desk.at("obs/B2-01-03/2026-09-12/clusters").empty());
    desk.press("n");
    REQUIRE(desk.page().table()->count() == 1);
    CHECK(desk.page().table()->textAt(0, 2) == QStringLiteral("22"));
    CHECK(desk.page().table()->textAt(0, 3) == QStringLiteral("32"));
    desk.look("bench-differences");
    desk.press("w"); // not yet
    CHECK(desk.at("obs/B2-01-03/2026-09-12/clusters").empty());
    desk.press("2");
    CHECK(desk.page().table()->count() == 0);
    desk.press("w");
    CHECK(desk.at("obs/B2-01-03/2026-09-12/clusters") == "settled 31");
    CHECK(desk.at("obs/B2-01-02/2026-09-12/clusters") == "settled 32");
    CHECK(desk.at("obs/B2-01-01/2026-09-12/clusters") == "settled 13");
    desk.press(Qt::Key_Z, Qt::ControlModifier);
    CHECK(desk.at("obs/B2-01-03/2026-09-12/clusters").empty());
    CHECK(desk.at("obs/B2-01-01/2026-09-12/clusters").empty());
}

TEST_CASE("a sheet that was begun is there after the desk was closed") {
    Station station;
    {
        DeskGlass desk(station.path, station.clock);
        desk.sit("im");
        desk.press(Qt::Key_5, Qt::ControlModifier);
        choose(desk, "sheet");
        desk.answer(QStringLiteral("B2-01"));
        desk.answer(QStringLiteral("nobody"));
        CHECK(desk.page().isAsking()); // whose notes they are has to be known
        desk.press(Qt::Key_Escape);
        choose(desk, "sheet");
        desk.answer(QStringLiteral("B2-01"));
        desk.answer(QStringLiteral("im"));
        desk.press(Qt::Key_Return);
        desk.item("pageTable").forceActiveFocus();
        desk.press(Qt::Key_Home);
        desk.press(Qt::Key_Right);
        desk.press(Qt::Key_Right);
        desk.press("14.5");
        desk.press(Qt::Key_Return);
    }
    DeskGlass desk(station.path, station.clock);
    desk.press(Qt::Key_5, Qt::ControlModifier);
    choose(desk, "sheet");
    CHECK(desk.page().table()->textAt(0, 2) == QStringLiteral("14.5"));
}

TEST_CASE("a cross that was opened on a tablet gets the office's next number") {
    Station station;
    DeskGlass desk(station.path, station.clock);
    desk.sit("im");
    desk.press(Qt::Key_5, Qt::ControlModifier);
    choose(desk, "opened");
    REQUIRE(desk.page().table()->count() == 1);
    desk.look("bench-opened");
    desk.item("pageTable").forceActiveFocus();
    desk.press(Qt::Key_Home);
    desk.press(Qt::Key_Right);
    desk.press(Qt::Key_Right);
    desk.press(Qt::Key_Right);
    desk.press(Qt::Key_Return);
    desk.press(Qt::Key_Return); // takes what is offered
    CHECK(desk.at("cross/000000-1/number") == R"(settled "X26-014")");
    CHECK(desk.page().table()->count() == 0);
}
