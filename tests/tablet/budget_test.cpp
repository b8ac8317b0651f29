// The budget of taps at one vine, held exactly: by fingers, and by a keyboard alone.
// What was tapped is what stands in the journal.
#include "support/tablet_walker.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;
using tablet::TabletApp;

TEST_CASE("a stage is one tap") {
    Walker ida("a-stage");
    ida.tap({"65"});
    CHECK(ida.glass->taps == 1);
    CHECK(ida.at(kFirst, "stage") == "settled 65");
}

TEST_CASE("a score is one tap, and the next vine is asked") {
    Walker ida("b-score");
    ida.tap({"7"});
    CHECK(ida.glass->taps == 1);
    CHECK(ida.at(kFirst, "vigour") == "settled 7");
    CHECK(ida.here() == "B2-01-02");
}

TEST_CASE("a cluster count of two digits is three taps") {
    Walker ida("c-count");
    ida.tap({"4", "2", "Next"});
    CHECK(ida.glass->taps == 3);
    CHECK(ida.at(kFirst, "clusters") == "settled 42");
    CHECK(ida.here() == "B2-01-02");
}

TEST_CASE("a berry diameter of three digits and the point is five taps") {
    Walker ida("d-berry");
    ida.tap({"2", "4", ".", "5", "Next"});
    CHECK(ida.glass->taps == 5);
    CHECK(ida.sample(kFirst, "berry-diameter", 1) == "settled 24.5");
}

TEST_CASE("no vine is one tap, and a dead one two") {
    Walker ida("b-score");
    ida.tap({"No vine"});
    CHECK(ida.glass->taps == 1);
    CHECK(ida.at(kFirst, "vine") == R"(settled "missing")");
    CHECK(ida.at(kFirst, "vigour") == R"(settled {"none":"no-vine"})");
    ida.glass->taps = 0;
    ida.tap({"None …", "dead"});
    CHECK(ida.glass->taps == 2);
    CHECK(ida.at(kSecond, "vine") == R"(settled "dead")");
    CHECK(ida.at(kSecond, "vigour") == R"(settled {"none":"dead"})");
}

TEST_CASE("not observed is two taps, and says nothing about the vine") {
    Walker ida("b-score");
    ida.tap({"None …", "not observed"});
    CHECK(ida.glass->taps == 2);
    CHECK(ida.at(kFirst, "vigour") == R"(settled {"none":"not-observed"})");
    CHECK(ida.at(kFirst, "vine").empty());
    CHECK(ida.here() == "B2-01-02");
}

TEST_CASE("a photo is two taps, and the page comes back by itself") {
    Walker ida("b-score");
    ida.tap({"Also"});
    ida.showPicture();
    CHECK(ida.glass->item("besideView").isVisible());
    for (const QString& fault : ida.glass->faults()) {
        FAIL_CHECK(fault.toStdString());
    }
    ida.tap({"Photo"});
    CHECK(ida.glass->taps == 2);
    ida.checkPhotoIsKept();
    CHECK(ida.glass->says(QStringLiteral("7"))); // the score is asked as before
}

TEST_CASE("a photo whose camera is slow is kept on a page of its own") {
    Walker ida("b-score");
    ida.tap({"Also", "Photo"});
    REQUIRE(ida.glass->app().page() == TabletApp::Photo);
    CHECK(ida.at(kFirst, "photo").empty());
    ida.showPicture();
    ida.tap({"Keep it"});
    ida.checkPhotoIsKept();
}

TEST_CASE("the camera sleeps while nothing beside is looked for") {
    Walker ida("b-score");
    CHECK_FALSE(ida.glass->camera().isOpen());
    ida.tap({"Also"});
    CHECK(ida.glass->camera().isOpen());
    ida.tap({"Also"});
    CHECK_FALSE(ida.glass->camera().isOpen());
    ida.tap({"Also", "Note"});
    CHECK_FALSE(ida.glass->camera().isOpen());
}

TEST_CASE("the last score is taken back and entered anew with two taps") {
    Walker ida("b-score");
    ida.tap({"7"});
    ida.glass->taps = 0;
    ida.tap({"Undo", "6"});
    CHECK(ida.glass->taps == 2);
    CHECK(ida.at(kFirst, "vigour") == "settled 6");
    CHECK(ida.here() == "B2-01-02");
}

TEST_CASE("from a cold start four taps begin a walk") {
    TempFolder folder;
    FixedClock clock;
    layStation(folder.path(), clock);
    TabletGlass glass(folder.path(), clock);
    for (const char* text : {"Ida Pellworth", "Vigour", "B2 row 2", "Vine 12"}) {
        glass.tapText(QString::fromUtf8(text));
    }
    CHECK(glass.taps == 4);
    REQUIRE(glass.app().page() == TabletApp::Stop);
    CHECK(glass.book().walk()->here().position == "B2-02-12");
    CHECK(glass.book().walk()->plan().author == "im");
}

TEST_CASE("a keyboard alone begins a walk with four keys") {
    TempFolder folder;
    FixedClock clock;
    layStation(folder.path(), clock);
    TabletGlass glass(folder.path(), clock);
    glass.type(QStringLiteral("1222")); // who, which round, which row, which end
    REQUIRE(glass.app().page() == TabletApp::Stop);
    CHECK(glass.book().walk()->here().position == "B2-02-12");
    CHECK(glass.book().walk()->asked().descriptor == "vigour");
    CHECK(glass.taps == 0);
}

TEST_CASE("a keyboard alone notes stages, scores, counts and measures") {
    SUBCASE("a stage is its two digits") {
        Walker ida("a-stage");
        ida.glass->type(QStringLiteral("65"));
        CHECK(ida.at(kFirst, "stage") == "settled 65");
    }
    SUBCASE("a score is its digit") {
        Walker ida("b-score");
        ida.glass->type(QStringLiteral("7"));
        CHECK(ida.at(kFirst, "vigour") == "settled 7");
        CHECK(ida.here() == "B2-01-02");
    }
    SUBCASE("a count is its digits and Enter") {
        Walker ida("c-count");
        ida.glass->type(QStringLiteral("42"));
        CHECK(ida.at(kFirst, "clusters").empty());
        ida.glass->press(Qt::Key_Enter);
        CHECK(ida.at(kFirst, "clusters") == "settled 42");
    }
    SUBCASE("a measure is its digits with the point, and Enter") {
        Walker ida("d-berry");
        ida.glass->type(QStringLiteral("24.5"));
        ida.glass->press(Qt::Key_Return);
        CHECK(ida.sample(kFirst, "berry-diameter", 1) == "settled 24.5");
    }
}

TEST_CASE("a keyboard alone says that there is nothing, and why") {
    Walker ida("b-score");
    ida.glass->type(QStringLiteral("-"));
    CHECK(ida.at(kFirst, "vine") == R"(settled "missing")");
    ida.glass->type(QStringLiteral("+3"));
    CHECK(ida.at(kSecond, "vine") == R"(settled "dead")");
    ida.glass->type(QStringLiteral("+1"));
    CHECK(ida.at("obs/B2-01-03/2026-05-12/", "vigour") == R"(settled {"none":"not-observed"})");
    CHECK(ida.at("obs/B2-01-03/2026-05-12/", "vine").empty());
    CHECK(ida.glass->taps == 0);
}

TEST_CASE("a keyboard alone takes the last score back and enters it anew with two keys") {
    Walker ida("b-score");
    ida.glass->type(QStringLiteral("7"));
    ida.glass->press(Qt::Key_Backspace);
    CHECK(ida.at(kFirst, "vigour").empty());
    CHECK(ida.here() == "B2-01-01");
    ida.glass->type(QStringLiteral("6"));
    CHECK(ida.at(kFirst, "vigour") == "settled 6");
}

TEST_CASE("Backspace erases what is typed before it takes back what is noted") {
    Walker ida("c-count");
    ida.glass->type(QStringLiteral("42"));
    ida.glass->press(Qt::Key_Return);
    ida.glass->type(QStringLiteral("3"));
    ida.glass->press(Qt::Key_Backspace);
    CHECK(ida.at(kFirst, "clusters") == "settled 42");
    CHECK(ida.here() == "B2-01-02");
    ida.glass->press(Qt::Key_Backspace);
    CHECK(ida.at(kFirst, "clusters").empty());
    CHECK(ida.here() == "B2-01-01");
}

TEST_CASE("a keyboard alone takes a photo with two keys") {
    Walker ida("b-score");
    ida.glass->type(QStringLiteral("*"));
    REQUIRE(ida.glass->app().page() == TabletApp::Photo);
    ida.showPicture();
    ida.glass->type(QStringLiteral("*"));
    ida.checkPhotoIsKept();
}

TEST_CASE("a keyboard alone reaches what stands beside, and the end of the row") {
    Walker ida("b-score");
    ida.glass->type(QStringLiteral(":1wire down"));
    CHECK(ida.at(kFirst, "note").empty());
    ida.glass->press(Qt::Key_Return);
    CHECK(ida.at(kFirst, "note") == R"(settled "wire down")");
    CHECK(ida.here() == "B2-01-01");
    ida.glass->type(QStringLiteral("/"));
    CHECK(ida.glass->app().page() == TabletApp::RowEnd);
    ida.glass->type(QStringLiteral("1"));
    CHECK(ida.glass->app().page() == TabletApp::Stop);
    CHECK(ida.here() == "B2-02-12");
}
