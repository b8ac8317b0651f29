// The demo station on a tablet, and entries that travel as a file.
#include "core/vineyard/label_code.hpp"
#include "support/tablet_glass.hpp"
#include "support/tablet_station.hpp"

#include <QDir>
#include <QFile>

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;
using tablet::TabletApp;

TEST_CASE(
    "somebody who tries the tablet notes a vine of the demo station, and leaves no trace of it") {
    TempFolder folder;
    FixedClock clock;
    TabletGlass tablet(folder.path(), clock);
    tablet.tapText(QStringLiteral("The left hand"));
    tablet.tapText(QStringLiteral("It is 50 mm"));
    tablet.tapText(QStringLiteral("Try the demo station"));
    REQUIRE(tablet.app().isDemo());
    tablet.tapKey("choice0"); // who
    tablet.tapKey("choice0"); // which round
    tablet.tapKey("choice0"); // which row
    tablet.tapKey("firstEnd");
    REQUIRE(tablet.app().page() == TabletApp::Stop);
    const std::string position = tablet.book().walk()->here().position;
    const std::string asked = tablet.book().walk()->asked().descriptor;
    tablet.tapKey("choice2");
    CHECK(tablet.at("obs/" + position + "/" + writeDate(demo::startDate()) + "/" + asked)
              .starts_with("settled "));
    for (const QString& fault : tablet.faults()) {
        FAIL_CHECK(fault.toStdString());
    }
    // Invented notes never get among real ones.
    tablet.app().go(TabletApp::Sync);
    tablet.settle();
    CHECK_FALSE(tablet.says(QStringLiteral("Pair")));
    CHECK_FALSE(tablet.says(QStringLiteral("To a file")));
    tablet.app().go(TabletApp::Settings);
    tablet.settle();
    tablet.tapText(QStringLiteral("Leave the demo"));
    CHECK_FALSE(tablet.app().isDemo());
    CHECK(QDir(QString::fromStdString(folder.path()))
              .entryList({QStringLiteral("demo.db*")})
              .isEmpty());
    CHECK(tablet.book().ownEntries() == 0);
    CHECK(tablet.book().catalogue().blocks().empty());
}

TEST_CASE("entries go to a file on a stick, and another tablet takes them from it") {
    TempFolder stick;
    const auto places = [&] {
        return std::vector<tablet::SyncViewModel::Place>{
            {QStringLiteral("Stick"), QString::fromStdString(stick.path())}};
    };
    FixedClock clock;
    TempFolder first;
    {
        layStation(first.path(), clock);
        TabletGlass tablet(first.path(), clock);
        tablet.app().syncPage().setPlaces(places);
        beginRound(tablet.book(), "b-score");
        tablet.reopenWalk();
        tablet.tapText(QStringLiteral("6"));
        tablet.app().go(TabletApp::Sync);
        tablet.settle();
        tablet.tapText(QStringLiteral("To a file"));
        tablet.tapText(QStringLiteral("Stick"));
        CHECK(tablet.app().syncPage().words().contains(QStringLiteral(".jsonl")));
    }
    TempFolder second;
    TabletGlass tablet(second.path(), clock);
    tablet.app().syncPage().setPlaces(places);
    tablet.setUp();
    tablet.app().go(TabletApp::Sync);
    tablet.settle();
    tablet.tapText(QStringLiteral("From a file"));
    tablet.tapKey("choice0");
    CHECK(tablet.at("obs/B2-01-01/2026-05-12/vigour") == "settled 6");
    CHECK(tablet.book().catalogue().round("b-score") != nullptr);
    // The same file twice changes nothing.
    const std::uint64_t own = tablet.book().ownEntries();
    tablet.tapText(QStringLiteral("From a file"));
    tablet.tapKey("choice0");
    CHECK(tablet.app().syncPage().words().startsWith(QStringLiteral("0 entries wait")));
    CHECK(tablet.app().syncPage().words().contains(QStringLiteral("0 entries taken")));
    CHECK(tablet.book().ownEntries() == own);
    // A file that is none of ours is told, and nothing is half taken.
    QFile wrong(QString::fromStdString(stick.file("wrong.jsonl")));
    REQUIRE(wrong.open(QIODevice::WriteOnly));
    wrong.write("this is no entry\n");
    wrong.close();
    tablet.tapText(QStringLiteral("From a file"));
    tablet.tapText(QStringLiteral("wrong.jsonl"));
    CHECK(tablet.app().syncPage().words().contains(QStringLiteral("1 refused")));
}

TEST_CASE("a bag for the bench opens a lot, and its label on the glass is what a camera reads") {
    TempFolder folder;
    FixedClock clock;
    layStation(folder.path(), clock);
    TabletGlass tablet(folder.path(), clock);
    beginRound(tablet.book(), "b-score");
    tablet.reopenWalk();
    tablet.tapKey("beside");
    tablet.tapText(QStringLiteral("Bag or vial"));
    tablet.tapText(QStringLiteral("berries"));
    REQUIRE(tablet.app().page() == TabletApp::Label);
    const auto read = camera::readCode(tablet.picture());
    REQUIRE(read.has_value());
    REQUIRE(tablet.book().reload().ok());
    REQUIRE(tablet.book().catalogue().lots().size() == 1);
    const vineyard::Lot& lot = tablet.book().catalogue().lots().front();
    CHECK(lot.label == *read);
    CHECK(lot.kind == "berries");
    CHECK(lot.from == "B2-01-01");
    CHECK(vineyard::readLabelCode(*read) == lot.label);
}
