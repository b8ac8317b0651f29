// What a journal does with what is written on its own device, and with what others send.
#include "support/journals.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using journal::noneValue;
using journal::nullValue;
using journal::Place;
using journal::RunOutcome;
using journal::textValue;
using store::Database;
using store::Draft;
using store::Grouping;
using store::Role;

namespace {

const std::string kVine = test::kSubject;

std::vector<std::uint64_t> countsOf(Journal& journal) {
    std::vector<std::uint64_t> counts;
    REQUIRE(journal
                ->eachEntry([&counts](const Digest&, BytesView bytes) {
                    counts.push_back(journal::readEntry(bytes)->count);
                    return true;
                })
                .ok());
    return counts;
}

std::vector<std::string> uncountedOf(Journal& journal) {
    std::vector<std::string> reasons;
    REQUIRE(journal
                ->eachUncounted([&reasons](const store::UncountedRow& row) {
                    reasons.emplace_back(journal::standingWord(row.reason));
                    return true;
                })
                .ok());
    return reasons;
}

} // namespace

TEST_CASE("notes on one tablet are numbered without gaps, and its counter goes up") {
    Journal tablet(Role::Field, 1);
    CHECK(tablet.write(act(kVine, integerValue(5))) == Place{{'t', 1, 1}, 1});
    CHECK(tablet.write(act(kVine, integerValue(6), {{{'t', 1, 1}, 1}})) == Place{{'t', 1, 1}, 2});
    CHECK(tablet
              .write({act("obs/B2-07-15/2026-05-12/vigour", integerValue(1)),
                      act("obs/B2-07-16/2026-05-12/vigour", integerValue(2))})[1]
              .seq == 4);
    CHECK(countsOf(tablet) == std::vector<std::uint64_t>{1, 2, 3, 4});
    CHECK(tablet.says(kVine) == "settled 6");
    tablet.reopen();
    CHECK(tablet.write(act(kVine, integerValue(7))).seq == 5);
    tablet.checkSound();
}

TEST_CASE("a note's counter is greater than that of everything the tablet holds") {
    Journal first(Role::Field, 1);
    Journal second(Role::Field, 2);
    for (int i = 0; i < 7; ++i) {
        first.write(act(kVine, integerValue(i)));
    }
    second.takeAllOf(first);
    const Place place = second.write(act(kVine, integerValue(9)));
    CHECK(place.seq == 1);
    CHECK(countsOf(second).back() == 8);
}

TEST_CASE("what would count for nothing is refused at the tap, and takes no number") {
    Journal tablet(Role::Field, 1);
    tablet.write(act(kVine, integerValue(5)));
    const Draft refused[] = {
        ruling(kVine, integerValue(5), {{{'t', 1, 1}, 1}}),
        act("rulebook/1", record({{"rule", textValue("later")}})),
        act("accession/W-17/title", textValue("x")),
        act(kVine, nullValue()),
        act("obs/" + std::string(600, 'a'), integerValue(1)),
        undo(kVine, {{{'t', 2, 1}, 1}}),
        act(kVine, Bytes("\xFF")),
        act(kVine, textValue(Bytes("a\0b", 3))),
    };
    for (const Draft& draft : refused) {
        CAPTURE(draft.subject);
        const auto written = tablet->append({&draft, 1}, std::nullopt);
        REQUIRE_FALSE(written.ok());
        CHECK(written.error().code == ErrorCode::InvalidInput);
        CHECK(written.error().message.ends_with('.'));
    }
    CHECK(tablet.write(act(kVine, integerValue(6))).seq == 2);
    tablet.checkSound();
}

TEST_CASE("one bad note in an act of several leaves all of them unwritten") {
    Journal tablet(Role::Field, 1);
    const std::vector<Draft> acts{act(kVine, integerValue(5)), act(kVine, nullValue())};
    CHECK_FALSE(tablet->append(acts, std::nullopt, Grouping::OneAct).ok());
    CHECK(tablet->vector().empty());
    CHECK(tablet.says(kVine).empty());
    tablet.checkSound();
}

TEST_CASE("a ruling needs a reason, and one key is enough") {
    Journal office(Role::Station, 9);
    const Place head = office.write(act(kVine, integerValue(5)));
    Draft draft = ruling(kVine, integerValue(6), {head});
    draft.why.reset();
    CHECK_FALSE(office->append({&draft, 1}, std::nullopt).ok());
    draft.why = "";
    CHECK_FALSE(office->append({&draft, 1}, std::nullopt).ok());
    draft.why = "x";
    CHECK(office->append({&draft, 1}, std::nullopt).ok());
    CHECK(office.says(kVine) == "settled 6");
}

TEST_CASE("an act of several entries counts only when all of it is here") {
    Journal tablet(Role::Field, 1);
    std::vector<Draft> acts;
    for (int vine = 11; vine <= 15; ++vine) {
        acts.push_back(act("obs/B2-07-" + std::to_string(vine) + "/2026-05-12/vigour",
                           integerValue(vine - 10)));
    }
    tablet.write(acts, Grouping::OneAct);
    CHECK(tablet.says("obs/B2-07-11/2026-05-12/vigour") == "settled 1");

    Journal station(Role::Station, 9);
    const auto segments = tablet->segments({'t', 1, 1});
    REQUIRE(segments.size() == 1);
    const auto most = tablet->readRun(segments[0], 1, 4, 1'000'000);
    REQUIRE(most.ok());
    REQUIRE(station->merge({*most}, {.isStation = true}).ok());
    CHECK(station.state().empty());
    CHECK(uncountedOf(station) == std::vector<std::string>(4, "group"));
    station.checkSound();
    CHECK(station.takeAllOf(tablet) == 1);
    CHECK(station.state() == tablet.state());
    CHECK(uncountedOf(station).empty());
    station.checkSound();
}

TEST_CASE("of a group in which one entry has no right none counts, and what follows does") {
    const std::string start =
        R"({"origin":"t0000000000000001.1","author":"mk","kind":"observe","over":[],)";
    Journal station(Role::Station, 9);
    const auto report = station.import(
        start +
        R"("seq":1,"count":1,"group":[1,2],"subject":"obs/B2-07-11/2026-05-12/rot","value":1})" +
        "\n" + start + R"("seq":2,"count":2,"group":[1,2],"subject":"rulebook/1","value":2})" +
        "\n" + start + R"("seq":3,"count":3,"subject":"obs/B2-07-12/2026-05-12/rot","value":3})" +
        "\n");
    CHECK(report.taken == 3);
    CHECK(uncountedOf(station) == std::vector<std::string>{"group", "right"});
    CHECK(station.state() == "obs/B2-07-12/2026-05-12/rot settled 3\n");
    station.checkSound();
}

TEST_CASE("of a group whose entries do not say the same of it, or whose first has no right, none "
          "counts") {
    const std::string start =
        R"({"origin":"t0000000000000001.1","author":"mk","kind":"observe","value":1,)";
    const std::string end = start + R"("seq":2,"count":2,"group":[1,2],)" +
                            R"("subject":"obs/B2-07-12/2026-05-12/rot"})" + "\n";
    for (const char* first : {R"("group":[1,3],"subject":"obs/B2-07-11/2026-05-12/rot"})",
                              R"("group":[1,2],"subject":"rulebook/1"})"}) {
        CAPTURE(first);
        Journal station(Role::Station, 9);
        CHECK(station.import(start + R"("seq":1,"count":1,)" + first + "\n" + end).taken == 2);
        CHECK(station.state().empty());
        CHECK(uncountedOf(station).size() == 2);
        station.checkSound();
    }
}

TEST_CASE("what lies below a path is listed, and not what only begins like it") {
    Journal office(Role::Station, 9);
    for (const char* subject : {"accession/W/title",
                                "accession/W-17/title",
                                "accession/W.1/title",
                                "accession/W/from",
                                "accession/W0/title",
                                "accession/V/title"}) {
        office.write(act(subject, textValue("x")));
    }
    std::vector<std::string> listed;
    const auto keep = [&listed](const store::StateRow& row) {
        listed.push_back(row.subject);
        return true;
    };
    REQUIRE(office->eachState("accession/W", keep).ok());
    CHECK(listed == std::vector<std::string>{"accession/W/from", "accession/W/title"});
    listed.clear();
    REQUIRE(office->eachState("accession/W/from", keep).ok());
    CHECK(listed == std::vector<std::string>{"accession/W/from"});
}

TEST_CASE("two people who noted the same vine apart are in conflict, and a ruling settles it") {
    Journal first(Role::Field, 1);
    Journal second(Role::Field, 2);
    Journal office(Role::Station, 9);
    first.write(act(kVine, integerValue(3)));
    second.write(act(kVine, integerValue(7)));
    office.takeAllOf(first);
    CHECK(office.says(kVine) == "settled 3");
    office.takeAllOf(second);
    CHECK(office.says(kVine) == "open");
    REQUIRE(office->counts()->open == 1);

    const Place ruled = office.write(ruling(kVine, integerValue(7), office.headsOf(kVine)));
    CHECK(office.says(kVine) == "settled 7");
    CHECK(office->counts()->open == 0);

    // An edit by somebody who had not seen the ruling opens it again; one who had replaces it.
    second.write(act(kVine, integerValue(8), {{{'t', 2, 1}, 1}}));
    office.takeAllOf(second);
    CHECK(office.says(kVine) == "open");
    first.takeAllOf(office);
    CHECK(first.says(kVine) == "open");
    first.write(act(kVine, integerValue(2), first.headsOf(kVine)));
    CHECK(first.says(kVine) == "settled 2");
    office.takeAllOf(first);
    CHECK(office.says(kVine) == "settled 2");
    CHECK(ruled.origin.letter == 's');
    office.checkSound();
}

TEST_CASE("undoing a ruling gives the conflict back") {
    Journal first(Role::Field, 1);
    Journal office(Role::Station, 9);
    first.write(act(kVine, integerValue(3)));
    office.takeAllOf(first);
    office.write(act(kVine, integerValue(9)));
    CHECK(office.says(kVine) == "open");
    const Place ruled = office.write(ruling(kVine, integerValue(9), office.headsOf(kVine)));
    CHECK(office.says(kVine) == "settled 9");
    office.write(undo(kVine, {ruled}));
    CHECK(office.says(kVine) == "open");
    CHECK(office.headsOf(kVine).size() == 2);
    office.checkSound();
}

TEST_CASE("keeping both values of a conflict is one act: nothing for the subject, a sample each") {
    Journal first(Role::Field, 1);
    Journal office(Role::Station, 9);
    first.write(act(kVine, integerValue(3)));
    office.takeAllOf(first);
    office.write(act(kVine, integerValue(9)));
    office.write({ruling(kVine, nullValue(), office.headsOf(kVine)),
                  act(kVine + "/s0000000000000009.1,1", integerValue(3)),
                  act(kVine + "/s0000000000000009.1,2", integerValue(9))},
                 Grouping::OneAct);
    CHECK(office.says(kVine) == "retracted");
    CHECK(office.says(kVine + "/s0000000000000009.1,1") == "settled 3");
    CHECK(office.says(kVine + "/s0000000000000009.1,2") == "settled 9");
    office.checkSound();
}

TEST_CASE("a retraction against an edit waits for a person") {
    Journal first(Role::Field, 1);
    Journal second(Role::Field, 2);
    const Place noted = first.write(act(kVine, integerValue(5)));
    second.takeAllOf(first);
    first.write(retraction(kVine, {noted}));
    second.write(act(kVine, integerValue(6), {noted}));
    first.takeAllOf(second);
    second.takeAllOf(first);
    CHECK(first.says(kVine) == "open");
    CHECK(first.state() == second.state());
    CHECK(first.exported() == second.exported());
}

TEST_CASE("a changed rulebook settles at once, and loses nothing when it is taken back") {
    Journal first(Role::Field, 1);
    Journal office(Role::Station, 9);
    for (int vine = 11; vine <= 20; ++vine) {
        const std::string subject = "obs/B2-07-" + std::to_string(vine) + "/2026-05-12/yield";
        first.write(act(subject, integerValue(vine)));
        office.write(act(subject, integerValue(vine + 4)));
    }
    office.takeAllOf(first);
    const std::string before = office.state();
    CHECK(office->counts()->open == 10);
    const Place rule = office.write(
        act("rulebook/1", record({{"rule", textValue("mean")}, {"where", textValue("B2-07-*")}})));
    CHECK(office->counts()->open == 0);
    CHECK(office.says("obs/B2-07-11/2026-05-12/yield") == "ruled 13 mean");
    CHECK(office.headsOf("obs/B2-07-11/2026-05-12/yield").size() == 2);
    office.checkSound();
    const Place narrower =
        office.write(act("rulebook/1",
                         record({{"rule", textValue("mean")}, {"where", textValue("B2-07-15")}}),
                         {rule}));
    CHECK(office->counts()->open == 9);
    office.write(undo("rulebook/1", {narrower, rule}));
    CHECK(office.state() == before);
    office.checkSound();
}

TEST_CASE("the station's word for a descriptor's rule holds for conflicts that were there before") {
    Journal office(Role::Station, 9);
    Journal first(Role::Field, 1);
    first.write(act("obs/B2-07-14/2026-05-12/bark", textValue("tan")));
    office.write(act("obs/B2-07-14/2026-05-12/bark", textValue("green")));
    office.takeAllOf(first);
    CHECK(office.says("obs/B2-07-14/2026-05-12/bark") == "open");
    office.write(
        {act("descriptor/bark/kind", textValue("stage")),
         act("descriptor/bark/codes", journal::listValue({textValue("green"), textValue("tan")})),
         act("descriptor/bark/rule", record({{"rule", textValue("advanced")}}))});
    CHECK(office.says("obs/B2-07-14/2026-05-12/bark") == "ruled \"tan\" advanced");
    first.takeAllOf(office);
    CHECK(first.says("obs/B2-07-14/2026-05-12/bark") == "ruled \"tan\" advanced");
    first.checkSound();
}

TEST_CASE("what an entry wanted to replace and did not is told with the reason") {
    Journal station(Role::Station, 9);
    const std::string start =
        R"({"origin":"t0000000000000001.1","author":"mk","kind":"observe","value":1,)";
    station.import(start + R"("seq":1,"count":5,"subject":"obs/B2-07-11/2026-05-12/rot"})" + "\n" +
                   start + R"("seq":2,"count":5,"subject":"obs/B2-07-12/2026-05-12/rot"})" + "\n" +
                   start +
                   R"("seq":3,"count":6,"subject":"obs/B2-07-12/2026-05-12/rot",)"
                   R"("over":[["t0000000000000001.1",1],["t0000000000000002.1",1]]})"
                   "\n" +
                   start +
                   R"("seq":4,"count":5,"subject":"obs/B2-07-12/2026-05-12/rot",)"
                   R"("over":[["t0000000000000001.1",2]]})"
                   "\n");
    std::vector<store::LooseReason> reasons;
    REQUIRE(station
                ->eachLooseEdge([&reasons](const store::LooseRow& row) {
                    reasons.push_back(row.reason);
                    return true;
                })
                .ok());
    CHECK(reasons == std::vector<store::LooseReason>{store::LooseReason::OtherSubject,
                                                     store::LooseReason::NotHere,
                                                     store::LooseReason::NotEarlier});
    station.checkSound();
}
