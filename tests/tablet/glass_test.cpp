// What can go wrong on the glass and in the row, as it looks from the page: palms, drops, double
// taps, wrong labels, rounds that nobody can walk, a dead camera. The words appear, and the walk
// goes on.
#include "core/vineyard/label_code.hpp"
#include "support/tablet_glass.hpp"
#include "support/tablet_station.hpp"
#include "support/tablet_walker.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;
using support::Glass;
using tablet::TabletApp;

namespace {

// A contact that stays this long, and then the time until the next.
void touchFor(TabletGlass& glass, QPoint at, quint64 ms, quint64 until) {
    static_cast<Glass&>(glass).press(1, at);
    glass.wait(ms);
    glass.lift(1, at);
    glass.wait(until);
    glass.settle();
}

// To the page that asks for a label, by fingers.
void askLabel(Walker& ida) {
    ida.tap({"Also", "Which vine?"});
    REQUIRE(ida.glass->app().page() == TabletApp::Where);
}

void typeLabel(Walker& ida, const std::string& label) {
    askLabel(ida);
    ida.glass->type(QString::fromStdString(label));
    ida.glass->press(Qt::Key_Return);
}

} // namespace

TEST_CASE(
    "a palm while a digit is held records nothing until the glass is clear, and a stripe says so") {
    Walker ida("b-score");
    const QPoint seven = Glass::middleOf(ida.glass->item("choice6"));
    Glass& hand = *ida.glass;
    hand.press(1, seven);
    hand.press(2, {60, 400});
    hand.press(3, {100, 420});
    ida.glass->settle();
    CHECK(ida.glass->item("glassHeld").isVisible());
    CHECK(ida.reads("Three or more touches"));
    ida.glass->wait(200);
    ida.glass->lift(1, seven);
    ida.glass->lift(2, {60, 400});
    ida.glass->settle();
    CHECK(ida.glass->item("glassHeld").isVisible());
    ida.glass->lift(3, {100, 420});
    ida.glass->wait(400);
    ida.glass->settle();
    CHECK_FALSE(ida.glass->item("glassHeld").isVisible());
    CHECK(ida.at(kFirst, "vigour").empty());
    CHECK(ida.here() == "B2-01-01");
    ida.tap({"7"});
    CHECK(ida.at(kFirst, "vigour") == "settled 7");
}

TEST_CASE("a double tap on Next records once and walks on once") {
    Walker ida("c-count");
    ida.tap({"4", "2"});
    const QPoint next = Glass::middleOf(ida.glass->item("next"));
    touchFor(*ida.glass, next, 70, 60);
    touchFor(*ida.glass, next, 70, 400);
    CHECK(ida.at(kFirst, "clusters") == "settled 42");
    CHECK(ida.at(kSecond, "clusters").empty());
    CHECK(ida.here() == "B2-01-02");
}

TEST_CASE("a double tap on Walk past leaves out one vine, not two") {
    Walker ida("f-rot");
    const QPoint past = Glass::middleOf(ida.glass->item("walkOn"));
    touchFor(*ida.glass, past, 70, 60);
    touchFor(*ida.glass, past, 70, 400);
    CHECK(ida.at(kFirst, "rot") == R"(settled {"none":"walked-past"})");
    CHECK(ida.at(kSecond, "rot").empty());
    CHECK(ida.here() == "B2-01-02");
}

TEST_CASE("eleven is two quick taps on one") {
    Walker ida("c-count");
    const QPoint one = Glass::middleOf(ida.glass->item("digit1"));
    touchFor(*ida.glass, one, 70, 60);
    touchFor(*ida.glass, one, 70, 400);
    ida.tap({"Next"});
    CHECK(ida.at(kFirst, "clusters") == "settled 11");
}

TEST_CASE("a drop of rain that lies for 30 ms is nothing") {
    Walker ida("b-score");
    const QPoint seven = Glass::middleOf(ida.glass->item("choice6"));
    touchFor(*ida.glass, seven, 30, 400);
    CHECK(ida.at(kFirst, "vigour").empty());
    CHECK(ida.here() == "B2-01-01");
    touchFor(*ida.glass, seven, 80, 400);
    CHECK(ida.at(kFirst, "vigour") == "settled 7");
}

TEST_CASE("a wrong label is never another vine: words say what is wrong, and the walk goes on") {
    Walker ida("b-score");
    SUBCASE("a label of another station") {
        const std::string foreign = vineyard::labelCode(77'777);
        typeLabel(ida, foreign);
        CHECK(ida.reads((foreign + " is no label of this station's vines.").c_str()));
    }
    SUBCASE("a character is wrong") {
        typeLabel(ida, "A000002X");
        CHECK(ida.reads("That is no label: a character is wrong, or two changed places."));
    }
    SUBCASE("a letter that no label has") {
        typeLabel(ida, "AOOOOO2W");
        CHECK(ida.reads("No label has B, I, L, O or U."));
    }
    SUBCASE("a vine that the plan does not have") {
        typeLabel(ida, "B2-01-99");
        CHECK(ida.reads("This station's plan has no B2-01-99."));
    }
    CHECK(ida.here() == "B2-01-01");
    ida.tap({"Back", "7"});
    CHECK(ida.at(kFirst, "vigour") == "settled 7");
    CHECK(ida.here() == "B2-01-02");
}

TEST_CASE("the label of a vine further on takes the walk there, and what lies between stays open") {
    Walker ida("b-score");
    typeLabel(ida, "a000002s");
    CHECK(ida.reads("The walk stands at B2 · row 1 · vine 1."));
    ida.tap({"Go on from here"});
    REQUIRE(ida.glass->app().page() == TabletApp::Stop);
    ida.tap({"7"});
    CHECK(ida.at("obs/B2-01-03/2026-05-12/", "vigour") == "settled 7");
    CHECK(ida.at(kFirst, "vigour").empty());
}

TEST_CASE("what a newer office asks for cannot be noted here; words say so, and the walk goes on") {
    Walker ida("i-new");
    CHECK(ida.reads("This is asked by a newer version and cannot be noted here."));
    ida.tap({"Walk on"});
    CHECK(ida.here() == "B2-01-02");
    ida.tap({"No vine"});
    CHECK(ida.at(kSecond, "vine") == R"(settled "missing")");
}

TEST_CASE("a round whose rows are gone is named and not offered; the others are") {
    TempFolder folder;
    FixedClock clock;
    layStation(folder.path(), clock);
    TabletGlass glass(folder.path(), clock);
    officeSays(glass.book(),
               {{"round/z-gone/title", R"("Old rows")"},
                {"round/z-gone/where", R"(["B9-*"])"},
                {"round/z-gone/descriptors", R"(["vigour"])"}});
    REQUIRE(glass.book().reload().ok());
    glass.reopenWalk();
    glass.tapText(QStringLiteral("Ida Pellworth"));
    CHECK(reads(glass, "Old rows: its rows are on no plan any more."));
    CHECK_FALSE(glass.says(QStringLiteral("Old rows")));
    CHECK(glass.says(QStringLiteral("Vigour")));
}

TEST_CASE("where there is no round at all the page says what to do") {
    TempFolder folder;
    FixedClock clock;
    {
        auto book = field::FieldBook::open(folder.file("journal.db"), "Etc/GMT+5", clock);
        REQUIRE(book.ok());
        field::Settings settings = (*book)->settings();
        settings.isSetUp = true;
        REQUIRE((*book)->change(settings).ok());
    }
    TabletGlass glass(folder.path(), clock);
    glass.tapText(QStringLiteral("Somebody else"));
    glass.type(QStringLiteral("Ida"));
    glass.press(Qt::Key_Return);
    CHECK(reads(glass,
                "There is nothing to walk today. Sync with the office, or type a block of your own "
                "in the settings."));
    CHECK(glass.says(QStringLiteral("Crosses")));
}

TEST_CASE("a dead camera says so, and a label can still be typed") {
    Walker ida("b-score");
    ida.glass->camera().breakWith(QStringLiteral("The camera does not answer."));
    SUBCASE("while a label is looked for") {
        askLabel(ida);
        ida.tap({"Scan it"});
        CHECK(ida.reads("The camera does not answer."));
        ida.tap({"Back"});
        ida.glass->type(QStringLiteral("A000002S"));
        ida.glass->press(Qt::Key_Return);
        CHECK(ida.glass->says(QStringLiteral("Go on from here")));
        ida.tap({"Back"});
    }
    SUBCASE("where a photo is wanted") {
        ida.tap({"Also", "Photo"});
        CHECK(ida.reads("The camera does not answer."));
        CHECK_FALSE(ida.glass->item("takePhoto").isEnabled());
        ida.tap({"Back"});
        CHECK(ida.at(kFirst, "photo").empty());
    }
    REQUIRE(ida.glass->app().page() == TabletApp::Stop);
    ida.tap({"7"});
    CHECK(ida.at(kFirst, "vigour") == "settled 7");
}
