// The desk's pages on the demo station: drawn, heard and looked at.
#include "core/base/digest.hpp"
#include "core/journal/json_value.hpp"
#include "store/photos.hpp"
#include "store/sqlite.hpp"
#include "support/desk_glass.hpp"

#include <QBuffer>

using namespace bullace;
using namespace bullace::test;

TEST_CASE("every page of the desk opens on the demo station, says its name and cuts no word") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeDemoFile(path);
    FixedClock clock(1'760'000'000'000); // 2025-10-09
    DeskGlass desk(path, clock);
    desk.sit("hl");
    struct Page {
        desk::DeskApp::Page page;
        const char* name;
    };
    for (const Page& page : {Page{desk::DeskApp::Arrivals, "arrivals"},
                             Page{desk::DeskApp::Conflicts, "conflicts"},
                             Page{desk::DeskApp::Findings, "findings"},
                             Page{desk::DeskApp::Rulebook, "rulebook"},
                             Page{desk::DeskApp::Map, "map"},
                             Page{desk::DeskApp::Collection, "collection"},
                             Page{desk::DeskApp::Settings, "settings"}}) {
        desk.go(page.page);
        CHECK_FALSE(desk.page().title().isEmpty());
        desk.look(page.name);
    }
    desk.go(desk::DeskApp::Collection);
    desk.press("3");
    desk.press(Qt::Key_Return);
    desk.look("card");
    desk.press(Qt::Key_Escape);
    desk.press("i");
    const std::string csv = folder.file("old.csv");
    std::ofstream(csv)
        << "Vine;Date;clusters;ph\nB2-01-01;45880;41;3,35\nB2-01-02;45880;many;3,4\n";
    CHECK(desk.app().importPage().takeFile(QString::fromStdString(csv)).isEmpty());
    desk.rest();
    desk.look("import");
    desk.press(Qt::Key_F, Qt::ControlModifier);
    desk.type(QStringLiteral("night"));
    CHECK(desk.app().page() == desk::DeskApp::Search);
    CHECK(desk.item("searchLine").property("text").toString() == QStringLiteral("night"));
    desk.look("search");
    desk.press(Qt::Key_Down);
    desk.press(Qt::Key_Return);
    CHECK(desk.app().page() == desk::DeskApp::Vine);
    desk.look("accession");
    emit desk.app().session().asked(QStringLiteral("vine"), QStringLiteral("B1-02-01"));
    desk.rest();
    desk.look("vine");
    desk.press("h");
    desk.look("history");
}

TEST_CASE("the demo's shifted row is repaired through the page, and taken back") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeDemoFile(path);
    FixedClock clock(1'760'000'000'000);
    DeskGlass desk(path, clock);
    desk.sit("hl");
    desk.press(Qt::Key_3, Qt::ControlModifier);
    const std::size_t before = desk.app().findings().found().size();
    REQUIRE(before > 0);
    const merge::Finding first = desk.app().findings().found().front();
    REQUIRE(first.kind == merge::FindingKind::ShiftedRow);
    const std::string moved = desk.at(first.repair.front().subject);
    desk.press("r");
    desk.answer(QStringLiteral("began at the second vine"));
    CHECK(desk.at(first.repair.front().subject) ==
          "settled " + journal::valueToJson(first.repair.front().value));
    CHECK(desk.app().findings().found().size() < before);
    desk.press(Qt::Key_Z, Qt::ControlModifier);
    CHECK(desk.at(first.repair.front().subject) == moved);
    CHECK(desk.app().findings().found().size() == before);
}

TEST_CASE(
    "a database that another program holds is opened for reading only, and says which holds it") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(
        path, lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,12]]"}));
    auto holder = store::Database::open(path, true, store::fileSurroundings());
    REQUIRE(holder.ok());
    FixedClock clock;
    DeskGlass desk(path, clock);
    CHECK(desk.app().page() == desk::DeskApp::Trouble);
    CHECK(desk.page().words().contains(QString::number(QCoreApplication::applicationPid())));
    desk.look("trouble");
    desk.press("r");
    CHECK(desk.app().page() == desk::DeskApp::Arrivals);
    CHECK(desk.app().stationText().contains(QStringLiteral("reading only")));
    desk.press(Qt::Key_2, Qt::ControlModifier);
    CHECK(desk.app().page() == desk::DeskApp::Conflicts);
}

TEST_CASE(
    "a damaged database is told of, its backups are offered, and the chosen one takes its place") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(
        path, lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,12]]"}));
    FixedClock clock;
    {
        DeskGlass desk(path, clock); // makes today's backup
        CHECK(desk.app().page() == desk::DeskApp::Arrivals);
    }
    for (const char* end : {"", "-wal"}) {
        std::ofstream(path + end, std::ios::binary | std::ios::trunc) << "no database any more";
    }
    DeskGlass desk(path, clock);
    CHECK(desk.app().page() == desk::DeskApp::Trouble);
    CHECK(desk.page().table()->count() == 1);
    desk.look("damaged");
    desk.press("b");
    CHECK(desk.app().page() == desk::DeskApp::Arrivals);
    CHECK(desk.at("block/B2/rows") == "settled [[1,12]]");
}

TEST_CASE("one descriptor at a vine is plotted over its seasons, and written as a file") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeDemoFile(path);
    FixedClock clock(1'760'000'000'000);
    DeskGlass desk(path, clock);
    emit desk.app().session().asked(QStringLiteral("vine"), QStringLiteral("B1-02-01"));
    desk.rest();
    CHECK_FALSE(desk.app().vine()->hasPlot());
    desk::GridModel& table = *desk.page().table();
    for (int row = 0; row < table.count(); ++row) {
        if (table.at(row).key.endsWith(QStringLiteral("/stage"))) {
            table.setCurrent(row);
        }
    }
    desk.press("d");
    REQUIRE(desk.app().vine()->hasPlot());
    const report::Plot& plot = desk.app().vine()->plot()->plot();
    CHECK(plot.series.size() == 3); // a line for each season
    CHECK(plot.x.kind == report::PlotAxis::Dates);
    desk.look("vine-plot");
    for (const auto& [name, head] : {std::pair{"plot.pdf", "%PDF"},
                                     std::pair{"plot.svg", "<?xml"},
                                     std::pair{"plot.csv", "Series"}}) {
        INFO(name);
        desk.press("p");
        desk.answer(QString::fromStdString(folder.file(name)));
        CHECK(bytesOf(folder.file(name)).starts_with(head));
    }
    desk.press("p");
    desk.answer(QString::fromStdString(folder.file("plot.doc")));
    CHECK_FALSE(desk.page().refusal().isEmpty());
}

TEST_CASE("the photo of a vine is seen on its line, and beside a conflict of its day") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    QImage leaf(800, 600, QImage::Format_RGB32);
    leaf.fill(QColor(40, 120, 40));
    QByteArray jpeg;
    QBuffer buffer(&jpeg);
    REQUIRE(leaf.save(&buffer, "JPG"));
    const Bytes bytes(jpeg.constData(), static_cast<std::size_t>(jpeg.size()));
    const std::string digest = sha256(bytes).hex();
    const std::string vine = "obs/B2-01-01/2026-05-11/";
    makeStationFile(
        path,
        lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,12]]"}) +
            lineOf(
                {"t0000000000000001.1", 1, "im", "observe", vine + "photo", '"' + digest + '"'}) +
            lineOf({"t0000000000000001.1", 2, "im", "observe", vine + "clusters", "40"}) +
            lineOf({"t0000000000000002.1", 1, "tf", "observe", vine + "clusters", "140"}));
    {
        auto database = store::Database::open(path, true, store::fileSurroundings());
        REQUIRE(database.ok());
        REQUIRE(store::addPhotoPiece(**database, sha256(bytes), bytes.size(), 0, bytes).ok());
    }
    FixedClock clock;
    DeskGlass desk(path, clock);
    desk.press(Qt::Key_2, Qt::ControlModifier);
    CHECK(desk.app().conflicts()->photos()->count() == 1);
    desk.look("conflict-photo");
    desk.press("v");
    desk::GridModel& table = *desk.page().table();
    const int row = table.rowOf(QString::fromStdString(vine + "photo"));
    REQUIRE(row >= 0);
    table.setCurrent(row);
    desk.rest();
    REQUIRE(desk.app().vine()->photos()->count() == 1);
    CHECK(desk.app().vine()->photos()->picture().width() == 800);
    desk.look("vine-photo");
}

TEST_CASE("a newer version's database is opened for reading only, once a person asks for it") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(
        path, lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,12]]"}));
    {
        auto connection = store::Connection::open(path, store::Access::Write);
        REQUIRE(connection.ok());
        REQUIRE(connection->run("PRAGMA user_version=99").ok());
    }
    FixedClock clock;
    DeskGlass desk(path, clock);
    CHECK(desk.app().page() == desk::DeskApp::Trouble);
    CHECK(desk.page().words().contains(QStringLiteral("newer version")));
    desk.look("newer");
    desk.press("r");
    CHECK(desk.app().page() == desk::DeskApp::Arrivals);
    CHECK(desk.app().stationText().contains(QStringLiteral("reading only")));
}

TEST_CASE("a conflict's values stand on the vine's season, and the list says how long it waits") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    const std::string vine = "obs/B2-01-01/2026-0";
    const char* one = "t0000000000000001.1";
    makeStationFile(
        path,
        lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,12]]"}) +
            lineOf({one, 1, "im", "observe", vine + "4-01/coloured", "5"}) +
            lineOf({one, 2, "im", "observe", vine + "5-11/coloured", "20"}) +
            lineOf({one, 3, "im", "observe", vine + "6-01/coloured", "80"}) +
            lineOf({"t0000000000000002.1", 1, "tf", "observe", vine + "5-11/coloured", "60"}));
    FixedClock clock(1'779'200'000'000); // 2026-05-19
    DeskGlass desk(path, clock);
    desk.go(desk::DeskApp::Conflicts);
    CHECK(desk.page().words().contains(QStringLiteral("The oldest waits for 7 days")));
    REQUIRE(desk.app().conflicts()->hasPlot());
    const report::Plot& plot = desk.app().conflicts()->plot()->plot();
    REQUIRE(plot.series.size() == 3); // the season, and both values
    CHECK(plot.series[0].points.size() == 2);
    CHECK(plot.series[1].points.front().x == plot.series[2].points.front().x);
    CHECK(plot.series[1].points.front().y + plot.series[2].points.front().y == 80);
    desk.look("conflict-season");
}

TEST_CASE("thousands of observations stand in one list that is read page by page") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeDemoFile(path);
    FixedClock clock(1'760'000'000'000);
    DeskGlass desk(path, clock);
    desk.go(desk::DeskApp::Collection);
    desk.press("o");
    REQUIRE(desk.app().page() == desk::DeskApp::Observations);
    desk::GridModel& table = *desk.page().table();
    std::vector<std::string> all;
    {
        auto database = store::Database::open(path, false, store::fileSurroundings());
        REQUIRE(database.ok());
        REQUIRE((*database)
                    ->eachSubjectBetween("obs/",
                                         "obs0",
                                         [&all](std::string_view subject) {
                                             all.emplace_back(subject);
                                             return true;
                                         })
                    .ok());
    }
    REQUIRE(all.size() > 5'000);
    CHECK(table.count() == static_cast<int>(all.size()));
    desk.press(Qt::Key_End);
    CHECK(table.currentKey().toStdString() == all.back());
    // Every line is the one that it should be, whichever page it is on.
    for (const std::size_t row :
         {std::size_t{0}, std::size_t{199}, std::size_t{200}, all.size() / 2}) {
        table.setCurrent(static_cast<int>(row));
        desk.rest();
        CHECK(table.currentKey().toStdString() == all[row]);
    }
    desk.look("observations");
    const std::string subject = table.currentKey().toStdString();
    desk.press("d");
    CHECK(table.count() < static_cast<int>(all.size()));
    CHECK(table.count() > 0);
    desk.press("d");
    CHECK(table.count() == static_cast<int>(all.size()));
    desk.press(Qt::Key_Return);
    CHECK(desk.app().page() == desk::DeskApp::Vine);
    CHECK(desk.app().vine()->history().has_value());
}
