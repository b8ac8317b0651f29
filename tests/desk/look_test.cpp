// The desk's pages on the demo station: drawn, heard and looked at.
#include "support/desk_glass.hpp"

using namespace bullace;
using namespace bullace::test;

namespace {

void keep(DeskGlass& desk, const std::string& name) {
    const QImage picture = desk.picture();
    CHECK(picture.save(QStringLiteral(BULLACE_PICTURES "/desk-") + QString::fromStdString(name) +
                       QStringLiteral(".png")));
}

void checkFaults(DeskGlass& desk, const std::string& name) {
    INFO(name);
    for (const QString& fault : desk.faults()) {
        FAIL_CHECK(fault.toStdString());
    }
}

} // namespace

TEST_CASE("every page of the desk opens on the demo station, says its name and cuts no word") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeDemoFile(path);
    FixedClock clock(1'758'700'000'000); // 2025-09-24
    DeskGlass desk(path, clock);
    desk.sit("hl");
    struct Page {
        desk::DeskApp::Page page;
        const char* name;
    };
    for (const Page& page : {Page{desk::DeskApp::Arrivals, "arrivals"},
                             Page{desk::DeskApp::Conflicts, "conflicts"},
                             Page{desk::DeskApp::Rulebook, "rulebook"},
                             Page{desk::DeskApp::Collection, "collection"},
                             Page{desk::DeskApp::Settings, "settings"}}) {
        desk.go(page.page);
        CHECK_FALSE(desk.page().title().isEmpty());
        checkFaults(desk, page.name);
        keep(desk, page.name);
    }
    desk.go(desk::DeskApp::Collection);
    desk.press("3");
    desk.press(Qt::Key_Return);
    checkFaults(desk, "card");
    keep(desk, "card");
    desk.press(Qt::Key_Escape);
    desk.press("i");
    const std::string csv = folder.file("old.csv");
    std::ofstream(csv)
        << "Vine;Date;clusters;ph\nB2-01-01;45880;41;3,35\nB2-01-02;45880;many;3,4\n";
    CHECK(desk.app().importPage().takeFile(QString::fromStdString(csv)).isEmpty());
    desk.rest();
    checkFaults(desk, "import");
    keep(desk, "import");
    desk.press(Qt::Key_F, Qt::ControlModifier);
    desk.type(QStringLiteral("night"));
    CHECK(desk.app().page() == desk::DeskApp::Search);
    CHECK(desk.item("searchLine").property("text").toString() == QStringLiteral("night"));
    checkFaults(desk, "search");
    keep(desk, "search");
    desk.press(Qt::Key_Down);
    desk.press(Qt::Key_Return);
    CHECK(desk.app().page() == desk::DeskApp::Vine);
    checkFaults(desk, "accession");
    keep(desk, "accession");
    emit desk.app().session().asked(QStringLiteral("vine"), QStringLiteral("B1-02-01"));
    desk.rest();
    checkFaults(desk, "vine");
    keep(desk, "vine");
    desk.press("h");
    checkFaults(desk, "history");
    keep(desk, "history");
}
