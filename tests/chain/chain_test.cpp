// The whole chain: the tablet's pages by fingers, a server of its own process, the office's
// console; what was tapped is what the station says.
#include "process/programs.hpp"

#include "support/tablet_glass.hpp"
#include "support/tablet_station.hpp"

#include <QElapsedTimer>

#include <doctest/doctest.h>

#include <algorithm>

using namespace bullace;
using namespace bullace::test;

namespace {

// Until the sync is over; a minute is for a machine that does other things as well.
void waitForSync(TabletGlass& tablet) {
    QElapsedTimer elapsed;
    elapsed.start();
    while (tablet.app().syncPage().isBusy() && elapsed.elapsed() < 60'000) {
        QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
    }
    REQUIRE_FALSE(tablet.app().syncPage().isBusy());
    tablet.settle();
}

void syncNow(TabletGlass& tablet) {
    tablet.app().go(tablet::TabletApp::Sync);
    tablet.settle();
    tablet.tapText(QStringLiteral("Sync now"));
    waitForSync(tablet);
}

void pair(TabletGlass& tablet, const Server& server, const std::string& station) {
    tablet.app().go(tablet::TabletApp::Sync);
    tablet.settle();
    tablet.tapText(QStringLiteral("Pair"));
    tablet.type(QString::fromStdString(server.address()));
    tablet.press(Qt::Key_Return);
    tablet.type(QString::fromStdString(server.code(station)));
    tablet.press(Qt::Key_Return);
    waitForSync(tablet);
    INFO(tablet.app().syncPage().words().toStdString());
    REQUIRE(tablet.app().syncPage().words().contains(QStringLiteral("Paired with Chain")));
}

std::string officeLines() {
    std::string lines;
    std::uint64_t seq = 0;
    for (const auto& [subject, json] : stationSays()) {
        lines += officeLine(++seq, subject, json);
    }
    return lines;
}

// "obs/… value" of every settled observation, ascending.
std::vector<std::string> observationsIn(const std::string& state) {
    std::vector<std::string> all;
    std::istringstream lines(state);
    for (std::string line; std::getline(lines, line);) {
        if (line.find(R"("subject":"obs/)") != std::string::npos) {
            all.push_back(line);
        }
    }
    return all;
}

} // namespace

TEST_CASE("what fingers tapped on two tablets is what the station says after their syncs") {
    TempFolder folder;
    const std::string station = folder.file("station.db");
    REQUIRE(console({"create", station, "--station", "Chain", "--zone", "Etc/GMT+5"}).status == 0);
    REQUIRE(console({"import", station, "-"}, officeLines()).status == 0);
    Server server(station);

    FixedClock clock;
    TempFolder first;
    TempFolder second;
    TabletGlass one(first.path(), clock);
    TabletGlass two(second.path(), clock, k8Upright);
    for (TabletGlass* tablet : {&one, &two}) {
        tablet->setUp();
        pair(*tablet, server, station);
        syncNow(*tablet);
        CHECK(tablet->book().waiting() <= 1); // the own block that is offered
        tablet->app().go(tablet::TabletApp::Choose);
        tablet->settle();
    }
    // The first counts clusters along row 1, with a missing and a dead vine; the second scores
    // row 2.
    one.tapText(QStringLiteral("Ida Pellworth"));
    one.tapText(QStringLiteral("Cluster counts"));
    one.tapText(QStringLiteral("B2 row 1"));
    one.tapText(QStringLiteral("Vine 1"));
    for (const char* digits : {"42", "7", "130"}) {
        for (const char* digit = digits; *digit != 0; ++digit) {
            one.tapKey((std::string("digit") + *digit).c_str());
        }
        one.tapKey("next");
    }
    one.tapKey("noVine");
    one.tapKey("why");
    one.tapText(QStringLiteral("dead"));
    two.tapText(QStringLiteral("Tobias Quern"));
    two.tapText(QStringLiteral("Vigour"));
    two.tapText(QStringLiteral("B2 row 2"));
    two.tapText(QStringLiteral("Vine 12"));
    for (const char* score : {"7", "5", "9"}) {
        two.tapText(QString::fromLatin1(score));
    }
    two.tapKey("undo");
    two.tapText(QStringLiteral("8"));
    CHECK(one.book().waiting() > 0);
    syncNow(one);
    syncNow(two);
    CHECK(one.book().waiting() == 0);
    CHECK(two.book().waiting() == 0);
    syncNow(one); // has what the second noted
    CHECK(one.at("obs/B2-02-10/2026-05-12/vigour") == "settled 8");
    REQUIRE(server.stop().status == 0);

    const std::vector<std::string> said = observationsIn(console({"state", station}).out);
    const std::vector<std::pair<std::string, std::string>> tapped{
        {"B2-01-01/2026-05-12/clusters", "42"},
        {"B2-01-02/2026-05-12/clusters", "7"},
        {"B2-01-03/2026-05-12/clusters", "130"},
        {"B2-01-04/2026-05-12/clusters", R"({"none":"no-vine"})"},
        {"B2-01-04/2026-05-12/vine", R"("missing")"},
        {"B2-01-05/2026-05-12/clusters", R"({"none":"dead"})"},
        {"B2-01-05/2026-05-12/vine", R"("dead")"},
        {"B2-02-10/2026-05-12/vigour", "8"},
        {"B2-02-11/2026-05-12/vigour", "5"},
        {"B2-02-12/2026-05-12/vigour", "7"}};
    REQUIRE(said.size() == tapped.size());
    for (std::size_t i = 0; i < said.size(); ++i) {
        INFO(said[i]);
        CHECK(said[i].find(R"("subject":"obs/)" + tapped[i].first + "\"") != std::string::npos);
        CHECK(said[i].find(R"("status":"settled","value":)" + tapped[i].second) !=
              std::string::npos);
    }
    CHECK(console({"verify", station}).status == 0);
}

TEST_CASE("the office hears of a block that was walked before there was an office") {
    TempFolder folder;
    const std::string station = folder.file("station.db");
    REQUIRE(console({"create", station, "--station", "Chain", "--zone", "Etc/GMT+5"}).status == 0);
    Server server(station);
    FixedClock clock;
    TempFolder tabletFolder;
    TabletGlass tablet(tabletFolder.path(), clock);
    tablet.setUp(QStringLiteral("2x3"));
    pair(tablet, server, station);
    syncNow(tablet);
    CHECK(tablet.book().waiting() == 0);
    REQUIRE(server.stop().status == 0);
    CHECK(console({"export", station})
              .out.find(R"("subject":"block/F1/rows","value":[[1,3],[2,3]])") != std::string::npos);
}

TEST_CASE("a tablet that syncs goes on recording, and stopping the sync loses nothing") {
    TempFolder folder;
    const std::string station = folder.file("station.db");
    REQUIRE(console({"create", station, "--station", "Chain", "--zone", "Etc/GMT+5"}).status == 0);
    LineMaker maker{0xC4A1};
    std::string lines = officeLines();
    REQUIRE(console({"import", station, "-"}, lines).status == 0);
    REQUIRE(console({"import", station, "-"}, maker.next(30'000)).status == 0);
    Server server(station);
    FixedClock clock;
    TempFolder tabletFolder;
    layStation(tabletFolder.path(), clock);
    TabletGlass tablet(tabletFolder.path(), clock);
    pair(tablet, server, station);
    beginRound(tablet.book(), "b-score");
    tablet.app().go(tablet::TabletApp::Sync);
    tablet.settle();
    tablet.tapText(QStringLiteral("Sync now"));
    // The pages are there while 30,000 entries come: go back to the vine and note.
    tablet.press(Qt::Key_Escape);
    REQUIRE(tablet.app().page() == tablet::TabletApp::Stop);
    int notedWhileBusy = 0;
    for (int i = 0; i < 5; ++i) {
        notedWhileBusy += tablet.app().syncPage().isBusy() ? 1 : 0;
        tablet.tapText(QString::number(4 + i));
    }
    CHECK(notedWhileBusy > 0);
    waitForSync(tablet);
    CHECK(tablet.book().walk()->here().position == "B2-01-06");
    CHECK(tablet.at("obs/B2-01-05/2026-05-12/vigour") == "settled 8");
    syncNow(tablet);
    CHECK(tablet.book().waiting() == 0);
    REQUIRE(server.stop().status == 0);
    CHECK(console({"export", station}).out.find("obs/B2-01-05/2026-05-12/vigour") !=
          std::string::npos);
}
