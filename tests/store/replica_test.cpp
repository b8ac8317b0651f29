// What journals take from one another: branches, numbers of a second life, and what waits apart.
#include "support/journals.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using journal::Place;
using journal::RunOutcome;
using store::Role;

namespace {

const std::string kVine = kSubject;
const std::string kNext = "obs/B2-07-15/2026-05-12/vigour";

// All of one journal of `from`, from number `first` on, as one run.
journal::Run runOf(Journal& from, const journal::Origin& origin, std::uint64_t first = 1) {
    const auto segments = from->segments(origin);
    REQUIRE(segments.size() == 1);
    const auto run = from->readRun(segments[0], first, 10'000, 10'000'000);
    REQUIRE(run.ok());
    return *run;
}

journal::RunReport take(Journal& into, const journal::Run& run, const store::Source& source) {
    const auto reports = into->merge({run}, source);
    REQUIRE_MESSAGE(reports.ok(), (reports ? "" : reports.error().message));
    REQUIRE(reports->size() == 1);
    return (*reports)[0];
}

std::vector<store::ApartRow> apartOf(Journal& journal) {
    std::vector<store::ApartRow> rows;
    REQUIRE(journal
                ->eachApart([&rows](const store::ApartRow& row) {
                    rows.push_back(row);
                    return true;
                })
                .ok());
    return rows;
}

const store::Source kAny{.isStation = true};

} // namespace

TEST_CASE("what was sent before is held already, and writes nothing") {
    Journal tablet(Role::Field, 1);
    Journal station(Role::Station, 9);
    tablet.write({act(kVine, integerValue(5)), act(kNext, integerValue(6))});
    const journal::Run run = runOf(tablet, {'t', 1, 1});
    CHECK(take(station, run, kAny).outcome == RunOutcome::Taken);
    const auto before = station.disk().operations(only(Operation::Write));
    const journal::RunReport again = take(station, run, kAny);
    CHECK(again.outcome == RunOutcome::Held);
    CHECK(again.added == 0);
    CHECK(station.disk().operations(only(Operation::Write)) == before);
    CHECK(station.takeAllOf(tablet) == 0);
}

TEST_CASE("a run that overlaps what is held adds only what is new") {
    Journal tablet(Role::Field, 1);
    Journal station(Role::Station, 9);
    tablet.write({act(kVine, integerValue(5)), act(kNext, integerValue(6))});
    station.takeAllOf(tablet);
    tablet.write({act(kVine, integerValue(7)), act(kNext, integerValue(8))});
    CHECK(take(station, runOf(tablet, {'t', 1, 1}, 2), kAny).added == 2);
    CHECK(station.exported() == tablet.exported());
    station.checkSound();
}

TEST_CASE("a run behind a gap is not taken, lies apart, and keeps nothing back") {
    Journal tablet(Role::Field, 1);
    Journal station(Role::Station, 9);
    tablet.write(
        {act(kVine, integerValue(5)), act(kNext, integerValue(6)), act(kVine, integerValue(7))});
    const journal::Run late = runOf(tablet, {'t', 1, 1}, 3);
    CHECK(take(station, late, kAny).outcome == RunOutcome::Unlinked);
    CHECK(station->vector().empty());
    REQUIRE(apartOf(station).size() == 1);
    CHECK(apartOf(station)[0].reason == "unlinked");
    CHECK(apartOf(station)[0].first == 3);
    CHECK(take(station, late, kAny).outcome == RunOutcome::Unlinked);
    CHECK(apartOf(station).size() == 1);
    CHECK(station.takeAllOf(tablet) == 3);
    station.checkSound();
}

TEST_CASE("a changed byte, a lost entry and a wrong last digest are all noticed") {
    Journal tablet(Role::Field, 1);
    tablet.write(
        {act(kVine, integerValue(5)), act(kNext, integerValue(6)), act(kVine, integerValue(7))});
    const journal::Run good = runOf(tablet, {'t', 1, 1});
    std::vector<journal::Run> bad(4, good);
    bad[0].entries[1].back() = static_cast<char>(bad[0].entries[1].back() ^ 1);
    bad[1].entries.erase(bad[1].entries.begin() + 1);
    bad[2].lastDigest.bytes[0] ^= 1U;
    std::swap(bad[3].entries[0], bad[3].entries[1]);
    for (const journal::Run& run : bad) {
        Journal station(Role::Station, 9);
        CHECK(take(station, run, kAny).outcome == RunOutcome::Unlinked);
        CHECK(station->vector().empty());
        CHECK(station.takeAllOf(tablet) == 3);
        station.checkSound();
    }
}

TEST_CASE(
    "entries that hang together but stand at another number or in another journal than they say "
    "are not taken") {
    for (const auto& [seq, device] : {std::pair{3, 1}, {1, 1}, {2, 7}}) {
        CAPTURE(seq);
        journal::Run run{{'t', 1, 1}, 1, {}, {}};
        run.entries.push_back(entryOf({}).encode());
        run.entries.push_back(entryOf({.origin = {'t', static_cast<std::uint64_t>(device), 1},
                                       .seq = static_cast<std::uint64_t>(seq),
                                       .count = 2})
                                  .encode());
        for (const Bytes& bytes : run.entries) {
            run.lastDigest = journal::chainDigest(run.lastDigest, bytes);
        }
        Journal station(Role::Station, 9);
        CHECK(take(station, run, kAny).outcome == RunOutcome::Unlinked);
        CHECK(station->counts()->entries == 1);
        station.checkSound();
    }
}

TEST_CASE("a bad run ends its own journal, and the others of the same batch go through") {
    Journal first(Role::Field, 1);
    Journal second(Role::Field, 2);
    Journal station(Role::Station, 9);
    first.write({act(kVine, integerValue(5)), act(kNext, integerValue(6))});
    second.write(act(kVine, integerValue(5)));
    journal::Run bad = runOf(first, {'t', 1, 1});
    bad.lastDigest.bytes[31] ^= 1U;
    const auto reports = station->merge({bad, runOf(second, {'t', 2, 1})}, kAny);
    REQUIRE(reports.ok());
    CHECK((*reports)[0].outcome == RunOutcome::Unlinked);
    CHECK((*reports)[1].outcome == RunOutcome::Taken);
    CHECK(station->vector() == second->vector());
}

TEST_CASE("a number used twice is a fork: both branches stay, count, and are sent on") {
    Journal tablet(Role::Field, 1);
    Journal station(Role::Station, 9);
    tablet.write(act(kVine, integerValue(5)));
    const FileSet old = tablet.copy();
    tablet.write({act(kNext, integerValue(6)), act(kVine, integerValue(7))});
    station.takeAllOf(tablet);
    tablet.putBack(old); // with its token: nothing tells the tablet
    CHECK_FALSE(tablet->about().tookNewEpoch);
    CHECK(tablet.write(act(kNext, integerValue(1))) == Place{{'t', 1, 1}, 2});
    const journal::RunReport report = take(station, runOf(tablet, {'t', 1, 1}), kAny);
    CHECK(report.isForked);
    CHECK(report.added == 1);
    CHECK(station->vector().size() == 2);
    CHECK(station.says(kNext) == "open");
    CHECK(station.headsOf(kNext).size() == 2);
    station.checkSound();

    // Another station takes both, in whatever order the branches come.
    Journal other(Role::Station, 8);
    other.takeAllOf(station);
    CHECK(other->vector() == station->vector());
    CHECK(other.exported() == station.exported());
    CHECK(other.state() == station.state());
    // The tablet hears of its other branch and goes on under a new number, with nothing lost.
    tablet.takeAllOf(station);
    CHECK(tablet.exported() == station.exported());
    CHECK(tablet.write(act(kVine, integerValue(2), tablet.headsOf(kVine))) ==
          Place{{'t', 1, 2}, 1});
    tablet.reopen();
    CHECK(tablet->about().own == journal::Origin{'t', 1, 2});
    tablet.checkSound();
}

TEST_CASE("whether all of a branch is held is judged by its digest, not by its number") {
    Journal tablet(Role::Field, 1);
    tablet.write({act(kVine, integerValue(5)), act(kNext, integerValue(6))});
    const journal::BranchEnd end = tablet->vector()[0];
    CHECK(*tablet->holds(end));
    CHECK(*tablet->holds(
        {end.origin, 1, journal::chainDigest({}, runOf(tablet, end.origin).entries[0])}));
    CHECK_FALSE(*tablet->holds({end.origin, 1, end.digest}));
    CHECK_FALSE(*tablet->holds({end.origin, 3, end.digest}));
    CHECK_FALSE(*tablet->holds({{'t', 2, 1}, 2, end.digest}));
}

TEST_CASE("a copied or restored file goes on under a new number, and the old entries stay") {
    Journal tablet(Role::Field, 1);
    tablet.write(act(kVine, integerValue(5)));
    tablet.reopen("another file"); // the bytes and the token, at another place
    CHECK(tablet->about().tookNewEpoch);
    CHECK(tablet->about().own == journal::Origin{'t', 1, 2});
    CHECK(tablet.write(act(kNext, integerValue(6))) == Place{{'t', 1, 2}, 1});
    CHECK(tablet.says(kVine) == "settled 5");
    tablet.disk().remove("journal.db-token");
    tablet.reopen("another file");
    CHECK(tablet->about().own.epoch == 3);
    tablet.reopen("another file");
    CHECK_FALSE(tablet->about().tookNewEpoch);
    tablet.checkSound();
}

TEST_CASE("a station whose file is a copy takes another history as well") {
    Journal station(Role::Station, 9);
    const Bytes history = station->about().history;
    station.reopen();
    CHECK(station->about().history == history);
    station.reopen("another file");
    CHECK(station->about().history != history);
}

TEST_CASE("a new number is above every one that is known of the device, here or elsewhere") {
    Journal tablet(Role::Field, 1);
    Journal other(Role::Field, 1);
    REQUIRE(other->takeNewEpoch(6).ok());
    CHECK(other->about().own.epoch == 7);
    other.write(act(kVine, integerValue(5)));
    tablet.takeAllOf(other);
    CHECK(tablet->greatestEpoch(1) == 7);
    REQUIRE(tablet->takeNewEpoch(0).ok());
    CHECK(tablet->about().own.epoch == 8);
    REQUIRE(tablet->takeNewEpoch(40).ok());
    CHECK(tablet->about().own.epoch == 41);
    tablet.reopen();
    CHECK(tablet->about().own.epoch == 41);
}

TEST_CASE("letter and station are fixed at pairing and stay") {
    Journal tablet(Role::Field, 1);
    REQUIRE(tablet->adopt('s', "Invented Hill", "America/New_York").ok());
    tablet.reopen();
    CHECK(tablet->about().own == journal::Origin{'s', 1, 1});
    CHECK(tablet->about().station == "Invented Hill");
    CHECK(tablet->about().zone == "America/New_York");
    CHECK(tablet.write(act("rulebook/1", record({{"rule", journal::textValue("later")}}))).seq ==
          1);
}

TEST_CASE("a device gets in only what is its own, and entries of others are not taken from it") {
    Journal first(Role::Field, 1);
    Journal second(Role::Field, 2);
    Journal station(Role::Station, 9);
    first.write(act(kVine, integerValue(5)));
    second.write(act(kVine, integerValue(6)));
    const store::Source source{.letter = 't', .device = 1};
    CHECK(take(station, runOf(first, {'t', 1, 1}), source).outcome == RunOutcome::Taken);
    CHECK(take(station, runOf(second, {'t', 2, 1}), source).outcome == RunOutcome::Unlinked);
    CHECK(station->vector() == first->vector());
}

TEST_CASE("office entries that come back after a restore wait apart until somebody takes them in") {
    Journal tablet(Role::Field, 1);
    Journal station(Role::Station, 9);
    tablet.write(act(kVine, integerValue(5)));
    station.takeAllOf(tablet);
    station.write(ruling(kVine, integerValue(7), station.headsOf(kVine)));
    station.write(act("accession/W-17/title", journal::textValue("x")));
    tablet.takeAllOf(station);

    Journal restored(Role::Station, 9);
    REQUIRE(restored->takeNewEpoch(1).ok());
    const store::Source relay{.letter = 't', .device = 1, .isRelay = true};
    CHECK(take(restored, runOf(tablet, {'t', 1, 1}), relay).outcome == RunOutcome::Taken);
    const journal::Run ours = runOf(tablet, {'s', 9, 1});
    CHECK(take(restored, ours, relay).outcome == RunOutcome::Apart);
    CHECK(take(restored, ours, relay).outcome == RunOutcome::Apart); // told again, kept once
    CHECK(restored.says(kVine) == "settled 5");
    const auto rows = apartOf(restored);
    REQUIRE(rows.size() == 1);
    CHECK(rows[0].reason == "resent");
    CHECK(rows[0].origin == "s0000000000000009.1");
    CHECK(rows[0].device == "t0000000000000001");
    CHECK(rows[0].last == 2);

    const auto taken = restored->takeInApart(rows[0].id);
    REQUIRE(taken.ok());
    CHECK(*taken == 2);
    CHECK(restored.says(kVine) == "settled 7");
    CHECK(restored.exported() == tablet.exported());
    CHECK(apartOf(restored).empty());
    CHECK_FALSE(restored->takeInApart(rows[0].id).ok());
    CHECK(take(restored, ours, relay).outcome == RunOutcome::Held);
    restored.checkSound();
}

TEST_CASE("what comes back to a restored station waits only where it follows from what is there") {
    Journal station(Role::Station, 9);
    for (int i = 1; i <= 6; ++i) {
        station.write(act("accession/W-17/title", integerValue(i)));
    }
    const journal::Segment whole = station->segments({'s', 9, 1})[0];
    const auto part = [&](std::uint64_t from, std::uint64_t count) {
        return *station->readRun(whole, from, count, 100'000);
    };
    Journal restored(Role::Station, 9);
    REQUIRE(restored->takeNewEpoch(1).ok());
    const store::Source relay{.letter = 't', .device = 1, .isRelay = true};

    journal::Run damaged = part(1, 3);
    damaged.entries[1].back() = static_cast<char>(damaged.entries[1].back() ^ 1);
    CHECK(take(restored, damaged, relay).outcome == RunOutcome::Unlinked);
    CHECK(take(restored, part(4, 3), relay).outcome == RunOutcome::Unlinked);
    CHECK(take(restored, part(1, 3), relay).outcome == RunOutcome::Apart);
    CHECK(take(restored, part(4, 3), relay).outcome == RunOutcome::Apart);
    CHECK(take(restored, part(2, 4), relay).outcome == RunOutcome::Apart); // from the midst of one
    damaged = part(2, 3);
    damaged.entries[0].back() = static_cast<char>(damaged.entries[0].back() ^ 1);
    CHECK(take(restored, damaged, relay).outcome == RunOutcome::Unlinked);

    for (const store::ApartRow& row : apartOf(restored)) {
        if (row.reason == "resent") {
            CHECK(restored->takeInApart(row.id).ok());
        }
    }
    CHECK(restored.exported() == station.exported());
    restored.checkSound();
}
