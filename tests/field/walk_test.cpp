// The walk without a screen: what is noted, where one stands afterwards, and what undo gives back.
#include "support/field_books.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;

TEST_CASE("a value is recorded at the vine where one stands, and the walk goes on to the next") {
    Book tablet;
    tablet.plant(2, 3, {{"descriptors", R"(["stage"])"}});
    tablet.begin();
    CHECK(tablet.here() == "B2-01-01");
    tablet.note(65);
    CHECK(tablet.here() == "B2-01-02");
    CHECK(tablet.at("B2-01-01", "stage") == "settled 65");
}

TEST_CASE("several things are asked one after the other before the walk goes on") {
    Book tablet;
    tablet.plant(1, 3, {{"descriptors", R"(["stage","vigour"])"}, {"least", "true"}});
    tablet.begin();
    tablet.note(65);
    CHECK(tablet.walk().asked().descriptor == "stage-least");
    tablet.note(61);
    CHECK(tablet.walk().asked().descriptor == "vigour");
    tablet.note(7);
    CHECK(tablet.here() == "B2-01-02");
    CHECK(tablet.walk().asked().descriptor == "stage");
}

TEST_CASE("at the end of a row the walk stops; the next row is walked from the end where one is") {
    Book tablet;
    tablet.plant(2, 2, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    tablet.note(5);
    tablet.note(6);
    CHECK(tablet.walk().footing().isAtRowEnd);
    CHECK(tablet.walk().legReport(tablet.walk().footing().stop).done == 2);
    REQUIRE(tablet.walk().nextLeg(false).ok());
    CHECK(tablet.here() == "B2-02-02");
    tablet.reopen();
    CHECK(tablet.here() == "B2-02-02");
}

TEST_CASE("a row can be begun at its other end, and what follows turns with it") {
    Book tablet;
    tablet.plant(3, 2, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    tablet.note(5);
    tablet.note(6);
    REQUIRE(tablet.walk().nextLeg(true).ok());
    CHECK(tablet.here() == "B2-02-01");
    tablet.note(4);
    tablet.note(3);
    REQUIRE(tablet.walk().nextLeg(false).ok());
    CHECK(tablet.here() == "B2-03-02");
    CHECK(tablet.at("B2-02-02", "vigour") == "settled 3");
}

TEST_CASE("undo goes back over everything, also after a restart, and gives back the vine") {
    Book tablet;
    tablet.plant(1, 5, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    for (const double value : {3.0, 4.0, 5.0}) {
        tablet.note(value);
    }
    tablet.reopen();
    CHECK(tablet.here() == "B2-01-04");
    for (int vine = 3; vine >= 1; --vine) {
        const auto taken = tablet.walk().undo();
        REQUIRE(taken.ok());
        REQUIRE(taken->has_value());
        CHECK(tablet.here() == "B2-01-0" + std::to_string(vine));
    }
    CHECK(tablet.observations().empty());
    const auto nothing = tablet.walk().undo();
    REQUIRE(nothing.ok());
    CHECK_FALSE(nothing->has_value());
    tablet.note(9);
    CHECK(tablet.here() == "B2-01-02");
    CHECK(tablet.at("B2-01-01", "vigour") == "settled 9");
}

TEST_CASE("undo of a correction gives back the value before it") {
    Book tablet;
    tablet.plant(1, 5, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    tablet.note(3);
    tablet.note(4);
    REQUIRE(tablet.walk().goTo(0).ok());
    tablet.note(8);
    CHECK(tablet.at("B2-01-01", "vigour") == "settled 8");
    CHECK(tablet.here() == "B2-01-03"); // back to where one was
    REQUIRE(tablet.walk().undo().ok());
    CHECK(tablet.at("B2-01-01", "vigour") == "settled 3");
    CHECK(tablet.here() == "B2-01-01");
}

TEST_CASE("each kind of nothing stays what it is") {
    Book tablet;
    tablet.plant(1, 9, {{"descriptors", R"(["clusters"])"}});
    tablet.begin();
    tablet.note(0);
    REQUIRE(tablet.walk().noteNothing("no-crop").ok());
    REQUIRE(tablet.walk().noteNothing("not-observed").ok());
    REQUIRE(tablet.walk().noteNothing("out-of-reach").ok());
    REQUIRE(tablet.walk().markVine("missing").ok());
    REQUIRE(tablet.walk().markVine("dead").ok());
    REQUIRE(tablet.walk().markVine("replanted").ok());
    CHECK(tablet.here() == "B2-01-07"); // a replanted vine is still to be counted
    tablet.note(12);
    REQUIRE(tablet.walk().walkOn().ok());
    CHECK(tablet.at("B2-01-01", "clusters") == "settled 0");
    CHECK(tablet.at("B2-01-02", "clusters") == R"(settled {"none":"no-crop"})");
    CHECK(tablet.at("B2-01-03", "clusters") == R"(settled {"none":"not-observed"})");
    CHECK(tablet.at("B2-01-04", "clusters") == R"(settled {"none":"out-of-reach"})");
    CHECK(tablet.at("B2-01-05", "clusters") == R"(settled {"none":"no-vine"})");
    CHECK(tablet.at("B2-01-05", "vine") == R"(settled "missing")");
    CHECK(tablet.at("B2-01-06", "clusters") == R"(settled {"none":"dead"})");
    CHECK(tablet.at("B2-01-06", "vine") == R"(settled "dead")");
    CHECK(tablet.at("B2-01-07", "vine") == R"(settled "replanted")");
    CHECK(tablet.at("B2-01-07", "clusters") == "settled 12");
    CHECK(tablet.at("B2-01-08", "clusters").empty());
    const auto report = tablet.walk().legReport(0);
    CHECK(report.leftOut == std::vector<std::size_t>{7, 8});
}

TEST_CASE(
    "a dead vine answers everything that is asked there in one act, which one undo takes back") {
    Book tablet;
    tablet.plant(1, 3, {{"descriptors", R"(["stage","clusters"])"}});
    tablet.begin();
    tablet.note(65);
    REQUIRE(tablet.walk().markVine("dead").ok());
    CHECK(tablet.here() == "B2-01-02");
    CHECK(tablet.at("B2-01-01", "stage") == "settled 65");
    CHECK(tablet.at("B2-01-01", "clusters") == R"(settled {"none":"dead"})");
    REQUIRE(tablet.walk().undo().ok());
    CHECK(tablet.here() == "B2-01-01");
    CHECK(tablet.at("B2-01-01", "vine").empty());
    CHECK(tablet.at("B2-01-01", "clusters").empty());
    CHECK(tablet.at("B2-01-01", "stage") == "settled 65");
}

TEST_CASE("samples are noted under numbers of their own until there are enough") {
    Book tablet;
    tablet.plant(
        1, 3, {{"descriptors", R"(["berry-diameter"])"}, {"samples", R"({"berry-diameter":3})"}});
    tablet.begin();
    tablet.note(24.5);
    tablet.note(25);
    CHECK(tablet.here() == "B2-01-01");
    tablet.note(23.8);
    CHECK(tablet.here() == "B2-01-02");
    CHECK(tablet.walk().sheet().at(0, "berry-diameter").size() == 3);
    REQUIRE(tablet.walk().takeMore(0, 0, 2).ok());
    CHECK(tablet.here() == "B2-01-01");
    tablet.note(24);
    tablet.note(24.1);
    CHECK(tablet.here() == "B2-01-02");
    CHECK(tablet.walk().sheet().at(0, "berry-diameter").size() == 5);
}

TEST_CASE("on a walk that notes only what stands out the rest is walked past, and says so") {
    Book tablet;
    tablet.plant(1, 6, {{"descriptors", R"(["rot"])"}, {"only-what-stands-out", "true"}});
    tablet.begin();
    REQUIRE(tablet.walk().walkOn().ok());
    REQUIRE(tablet.walk().goTo(4).ok());
    tablet.note(6);
    CHECK(tablet.at("B2-01-01", "rot") == R"(settled {"none":"walked-past"})");
    CHECK(tablet.at("B2-01-04", "rot") == R"(settled {"none":"walked-past"})");
    CHECK(tablet.at("B2-01-05", "rot") == "settled 6");
    REQUIRE(tablet.walk().undo().ok()); // the value
    REQUIRE(tablet.walk().undo().ok()); // the jump
    CHECK(tablet.at("B2-01-04", "rot").empty());
    CHECK(tablet.at("B2-01-01", "rot") == R"(settled {"none":"walked-past"})");
}

TEST_CASE("both sides of a vine are samples, and neither replaces the other") {
    Book tablet;
    tablet.plant(1, 2, {{"descriptors", R"(["clusters"])"}, {"both-sides", "true"}});
    tablet.begin();
    for (const double value : {40.0, 50.0}) {
        tablet.note(value);
    }
    REQUIRE(tablet.walk().nextLeg(false).ok());
    CHECK(tablet.here() == "B2-01-02");
    tablet.note(55);
    tablet.note(45);
    tablet.reopen();
    const auto& sheet = tablet.walk().sheet();
    REQUIRE(sheet.at(0, "clusters").size() == 1);
    CHECK(sheet.at(0, "clusters")[0]->value == journal::integerValue(40));
    REQUIRE(sheet.at(3, "clusters").size() == 1);
    CHECK(sheet.at(3, "clusters")[0]->value == journal::integerValue(45));
}

TEST_CASE("a run that stands one vine off is moved as one act, and undo gives every value back") {
    Book tablet;
    tablet.plant(1, 8, {{"descriptors", R"(["clusters"])"}});
    tablet.begin();
    for (const double value : {10.0, 20.0, 30.0, 40.0, 50.0}) {
        tablet.note(value);
    }
    REQUIRE(tablet.walk().markVine("missing").ok());
    const std::string before = tablet.observations();
    REQUIRE(tablet.walk().shiftRun(2, 1).ok());
    CHECK(tablet.at("B2-01-02", "clusters") == "settled 20");
    CHECK(tablet.at("B2-01-03", "clusters") == "retracted");
    CHECK(tablet.at("B2-01-04", "clusters") == "settled 30");
    CHECK(tablet.at("B2-01-06", "clusters") == "settled 50");
    CHECK(tablet.at("B2-01-07", "vine") == R"(settled "missing")");
    CHECK(tablet.at("B2-01-06", "vine") == "retracted");
    REQUIRE(tablet.walk().undo().ok());
    CHECK(tablet.observations() == before);
    tablet.reopen();
    CHECK(tablet.observations() == before);
}

TEST_CASE("samples move with their vine") {
    Book tablet;
    tablet.plant(
        1, 5, {{"descriptors", R"(["berry-diameter"])"}, {"samples", R"({"berry-diameter":2})"}});
    tablet.begin();
    for (const double value : {20.0, 21.0, 30.0, 31.0}) {
        tablet.note(value);
    }
    REQUIRE(tablet.walk().shiftRun(1, 1).ok());
    CHECK(tablet.walk().sheet().at(1, "berry-diameter").empty());
    REQUIRE(tablet.walk().sheet().at(2, "berry-diameter").size() == 2);
    CHECK(tablet.walk().sheet().at(2, "berry-diameter")[1]->value == journal::integerValue(31));
    REQUIRE(tablet.walk().undo().ok());
    CHECK(tablet.walk().sheet().at(1, "berry-diameter").size() == 2);
    CHECK(tablet.walk().sheet().at(2, "berry-diameter").empty());
}

TEST_CASE("a value that the descriptor forbids is not recorded, and one stays at the vine") {
    Book tablet;
    tablet.plant(1, 3, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    CHECK_FALSE(tablet.walk().note(journal::integerValue(12)).ok());
    CHECK(tablet.here() == "B2-01-01");
    CHECK(tablet.observations().empty());
}

TEST_CASE("after midnight the values of a walk stay on the day on which it began") {
    Book tablet;
    tablet.plant(1, 3, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    tablet.note(4);
    tablet.clock().pass(24 * 3'600'000);
    tablet.note(5);
    tablet.reopen();
    tablet.note(6);
    CHECK(tablet.at("B2-01-02", "vigour") == "settled 5");
    CHECK(tablet.at("B2-01-03", "vigour") == "settled 6");
}

TEST_CASE("a value unlike the vine's own past is marked after it is in, and can be kept") {
    Book tablet;
    tablet.plant(1, 3, {{"descriptors", R"(["stage"])"}});
    std::istringstream past(
        R"({"origin":"s00000000000000aa.1","seq":1,"count":1,"author":"hq","kind":"observe","subject":"obs/B2-01-01/2026-05-03/stage","value":71,"over":[]})"
        "\n");
    REQUIRE(tablet->database().importLines(past, "past", {}).ok());
    tablet.begin();
    tablet.note(61);
    const auto doubt = tablet.walk().weighLast();
    REQUIRE(doubt.ok());
    REQUIRE(*doubt != nullptr);
    CHECK((*doubt)->doubt->doubt == walk::Doubt::StageBackwards);
    CHECK(tablet.walk().legReport(0).marked == std::vector<std::size_t>{0});
    tablet.walk().keep((*doubt)->subject);
    CHECK(tablet.walk().legReport(0).marked.empty());
    CHECK(tablet.at("B2-01-01", "stage") == "settled 61");
}

TEST_CASE("two people who share a row by every second vine note each vine once") {
    Book first;
    first.plant(1, 6, {{"descriptors", R"(["vigour"])"}});
    field::WalkWish wish;
    wish.share = {0, 2, walk::Share::By::Stops};
    first.begin(wish);
    CHECK(first.walk().plan().stops.size() == 3);
    first.note(4);
    CHECK(first.here() == "B2-01-03");
}

TEST_CASE("a closed block is not walked, and a round without any other row says so") {
    Book tablet;
    tablet.plant(1, 6, {{"descriptors", R"(["vigour"])"}});
    tablet.office({{"block/B2/closed-until", R"("2026-05-13")"}});
    const auto* round = tablet->catalogue().round("r1");
    field::WalkWish wish;
    wish.author = "im";
    const auto plan =
        field::planWalk(tablet->database(), tablet->catalogue(), *round, wish, tablet->today());
    REQUIRE_FALSE(plan.ok());
    CHECK(plan.error().message.find("closed") != std::string::npos);
    CHECK(store::cautionsOf(tablet->catalogue(), *round, tablet->today()).size() == 1);
}

TEST_CASE("what waits for the office is what was written here and is not known to be there") {
    Book tablet;
    tablet.plant(1, 6, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    CHECK(tablet->waiting() == 0);
    tablet.note(4);
    tablet.note(5);
    CHECK(tablet->waiting() == 2);
    REQUIRE(tablet->noteSent(2).ok());
    tablet.note(6);
    tablet.reopen();
    CHECK(tablet->waiting() == 1);
}
