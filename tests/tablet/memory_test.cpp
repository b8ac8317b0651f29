// What the page tells of earlier notes, and when: nothing before the value is in, what looks wrong
// behind it; undo over restarts and rows; a person's own units.
#include "support/tablet_walker.hpp"

#include <doctest/doctest.h>

#include <sstream>

using namespace bullace;
using namespace bullace::test;
using tablet::TabletApp;

namespace {

constexpr const char* kThird = "obs/B2-01-03/2026-05-12/";

// Noted at the first two vines on four earlier days, and by another person today.
void layPast(Walker& ida) {
    Says past;
    for (const char* date : {"2025-05-02", "2025-05-20", "2026-04-20", "2026-05-03"}) {
        for (const char* vine : {"B2-01-01", "B2-01-02"}) {
            past.emplace_back("obs/" + std::string(vine) + "/" + date + "/clusters", "137");
        }
    }
    past.emplace_back(std::string(kFirst) + "clusters", "139");
    past.emplace_back(std::string(kFirst) + "note", R"("canker at the knee")");
    officeSays(ida.glass->book(), past);
    ida.glass->reopenWalk();
}

void noteCount(Walker& ida, const char* digits) {
    ida.glass->type(QString::fromLatin1(digits));
    ida.tap({"Next"});
}

// Every line of the journal, as it is exported.
std::string journalOf(Walker& ida) {
    std::ostringstream out;
    REQUIRE(ida.glass->book().database().exportLines(out, {}).ok());
    return out.str();
}

} // namespace

TEST_CASE(
    "before a value is in, no earlier one is on the page, nor what another person noted today") {
    Walker ida("c-count");
    layPast(ida);
    CHECK(ida.reads("Brindlecap")); // words are seen at all
    CHECK_FALSE(ida.reads("137"));
    CHECK_FALSE(ida.reads("139"));
    CHECK_FALSE(ida.reads("canker"));
    CHECK_FALSE(ida.reads("3 May"));
    ida.glass->type(QStringLiteral("12")); // typed, but not in
    CHECK_FALSE(ida.reads("137"));
    CHECK_FALSE(ida.reads("139"));
}

TEST_CASE("what is noted beside another person's value leaves both standing") {
    Walker ida("c-count");
    layPast(ida);
    noteCount(ida, "136");
    CHECK(ida.at(kFirst, "clusters").starts_with("ruled")); // 136 and 139 lie within 5 percent
    CHECK_FALSE(ida.reads("139"));
}

TEST_CASE("a value unlike the vine's past is marked with words, and Keep takes the mark away") {
    Walker ida("c-count");
    layPast(ida);
    ida.glass->press(Qt::Key_Return); // past the vine that another person noted as well
    noteCount(ida, "13");
    CHECK(ida.here() == "B2-01-03"); // it waits for no answer
    CHECK(ida.stripe() == "Vine 2: 13: was 130 meant?");
    CHECK(ida.glass->book().walk()->legReport(1).marked == std::vector<std::size_t>{1});
    ida.tap({"Keep"});
    CHECK(ida.stripe().empty());
    CHECK(ida.glass->book().walk()->legReport(1).marked.empty());
    CHECK(ida.at(kSecond, "clusters") == "settled 13");
}

TEST_CASE("a stage behind an earlier one is marked with both, and only after it is in") {
    Walker ida("a-stage");
    officeSays(ida.glass->book(), {{"obs/B2-01-01/2026-05-03/stage", "73"}});
    ida.glass->reopenWalk();
    CHECK_FALSE(ida.reads("3 May"));
    CHECK(ida.stripe().empty());
    ida.tap({"65"});
    CHECK(ida.stripe() == "Vine 1: 65 after 73 on 3 May 2026.");
    CHECK(ida.at(kFirst, "stage") == "settled 65");
}

TEST_CASE("walking on keeps a marked value, and its mark is told at the end of the row") {
    Walker ida("c-count");
    layPast(ida);
    ida.glass->press(Qt::Key_Return);
    noteCount(ida, "13");
    noteCount(ida, "40");
    CHECK_FALSE(ida.reads("was 130 meant"));
    CHECK(ida.at(kSecond, "clusters") == "settled 13");
    CHECK(ida.at(kThird, "clusters") == "settled 40");
    ida.glass->type(QStringLiteral("/"));
    CHECK(ida.reads("Marked: vine 2."));
    CHECK(ida.glass->says(QStringLiteral("Look at vine 2")));
}

TEST_CASE("Fix goes back to the vine, and what is entered anew replaces the value") {
    Walker ida("c-count");
    layPast(ida);
    ida.glass->press(Qt::Key_Return);
    noteCount(ida, "13");
    ida.tap({"Fix"});
    CHECK(ida.here() == "B2-01-02");
    CHECK(ida.at(kSecond, "clusters") == "settled 13");
    noteCount(ida, "132");
    CHECK(ida.at(kSecond, "clusters") == "settled 132");
    CHECK_FALSE(ida.reads("137"));
    CHECK(ida.glass->book().walk()->legReport(1).marked.empty());
}

TEST_CASE("a blind round hides who grows here as well") {
    TempFolder folder;
    FixedClock clock;
    layStation(folder.path(), clock);
    TabletGlass glass(folder.path(), clock);
    officeSays(glass.book(),
               {{"round/k-blind/title", R"("Blind vigour")"},
                {"round/k-blind/where", R"(["B2-*"])"},
                {"round/k-blind/descriptors", R"(["vigour"])"},
                {"round/k-blind/blind", "true"},
                {"obs/B2-01-01/2026-05-03/vigour", "8"}});
    REQUIRE(glass.book().reload().ok());
    beginRound(glass.book(), "b-score");
    glass.reopenWalk();
    CHECK(reads(glass, "Brindlecap"));
    beginRound(glass.book(), "k-blind");
    glass.reopenWalk();
    CHECK(reads(glass, "blind round"));
    CHECK_FALSE(reads(glass, "Brindlecap"));
    CHECK_FALSE(reads(glass, "A022"));
    glass.tapText(QStringLiteral("2"));
    CHECK(glass.book().walk()->here().position == "B2-01-02");
    CHECK_FALSE(reads(glass, "Brindlecap"));
}

TEST_CASE("undo goes back over a restart, to the first note of the walk") {
    Walker ida("b-score");
    ida.tap({"7", "8", "9"});
    ida.restart();
    REQUIRE(ida.glass->app().page() == TabletApp::Stop);
    CHECK(ida.here() == "B2-01-04");
    ida.tap({"Undo"});
    CHECK(ida.stripe() == "Taken back: B2 · row 1 · vine 3, Vigour 9.");
    CHECK(ida.here() == "B2-01-03");
    ida.restart();
    ida.tap({"Undo", "Undo"});
    CHECK(ida.here() == "B2-01-01");
    CHECK(ida.at(kFirst, "vigour").empty());
    CHECK(ida.at(kSecond, "vigour").empty());
    ida.tap({"Undo"});
    CHECK(ida.reads("Nothing was written here yet."));
}

TEST_CASE("undo goes back over the end of a row") {
    Walker ida("b-score");
    ida.glass->type(QStringLiteral("555555555555"));
    REQUIRE(ida.glass->app().page() == TabletApp::RowEnd);
    CHECK(ida.reads("12 of 12 stops are done."));
    SUBCASE("at the end itself") {
        ida.tap({"Undo"});
    }
    SUBCASE("from the next row") {
        ida.tap({"Row 2"});
        REQUIRE(ida.here() == "B2-02-12");
        ida.tap({"Undo"});
    }
    SUBCASE("after a restart there") {
        ida.restart();
        REQUIRE(ida.glass->app().page() == TabletApp::RowEnd);
        ida.tap({"Undo"});
    }
    REQUIRE(ida.glass->app().page() == TabletApp::Stop);
    CHECK(ida.here() == "B2-01-12");
    CHECK(ida.at("obs/B2-01-12/2026-05-12/", "vigour").empty());
    CHECK(ida.at("obs/B2-01-11/2026-05-12/", "vigour") == "settled 5");
}

TEST_CASE("a berry typed in inches is stored in mm, and what was typed is kept beside it") {
    Walker ida("d-berry");
    field::Settings settings = ida.glass->book().settings();
    settings.units["im"].inches = true;
    REQUIRE(ida.glass->book().change(settings).ok());
    ida.restart();
    ida.glass->type(QStringLiteral("0.96"));
    CHECK(ida.reads("0.96 in"));
    ida.tap({"Next"});
    CHECK(ida.sample(kFirst, "berry-diameter", 1) == "settled 24.4");
    CHECK(journalOf(ida).find(R"("as":"0.96 in")") != std::string::npos);
}

TEST_CASE("what berries say of the taxon is told once the samples are in, and not before") {
    Walker ida("d-berry");
    const auto noteBerry = [&ida](const char* mm) {
        ida.glass->type(QString::fromLatin1(mm));
        ida.glass->press(Qt::Key_Return);
    };
    noteBerry("19.5");
    noteBerry("21");
    CHECK(ida.here() == "B2-01-01");
    CHECK(ida.stripe().empty());
    CHECK_FALSE(ida.reads("rotundifolia"));
    noteBerry("20");
    INFO(ida.stripe());
    CHECK(ida.stripe().find("V. rotundifolia > 1000 : 1.") != std::string::npos);
    for (const char* mm : {"13.5", "13.6", "13.4"}) { // between the taxa
        noteBerry(mm);
    }
    INFO(ida.stripe());
    CHECK(ida.stripe().find("unusual for it: undecided") != std::string::npos);
}
