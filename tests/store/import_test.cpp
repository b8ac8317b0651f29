// Journals as text: out and in again, in any order, with gaps and two branches.
#include "support/journals.hpp"
#include "support/random_values.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using journal::textValue;
using store::Grouping;
using store::Role;

namespace {

const std::string kVine = kSubject;

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) {
        lines.push_back(line + "\n");
    }
    return lines;
}

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) {
        text += line;
    }
    return text;
}

std::string withoutDigest(const std::string& line) {
    return line.substr(0, line.rfind(",\"digest\"")) + "}\n";
}

// The lines in an order of chance, some of them twice.
std::vector<std::string> shuffled(const std::string& text, std::uint64_t seed) {
    std::vector<std::string> lines = linesOf(text);
    const std::vector<std::string> some(lines.begin(), lines.begin() + 4);
    lines.insert(lines.end(), some.begin(), some.end());
    std::shuffle(lines.begin(), lines.end(), Chance(seed));
    return lines;
}

// A small season: edits, an undo, a group, a conflict with the office, and a fork of the tablet.
struct Season {
    Journal tablet{Role::Field, 1};
    Journal office{Role::Station, 9};

    Season() {
        const journal::Place first = tablet.write(act(kVine, integerValue(5)));
        tablet.write(act(kVine, integerValue(6), {first}));
        tablet.write({act("obs/B2-07-15/2026-05-12/vigour", integerValue(1)),
                      act("obs/B2-07-16/2026-05-12/vigour", journal::floatValue(2))},
                     Grouping::OneAct);
        office.takeAllOf(tablet);
        office.write(act(kVine, integerValue(9)));
        office.write(act("accession/W-17/title", textValue("\u00fc \"x\"")));
    }

    // The same number twice: the tablet's file was put back, with its token.
    void fork() {
        const FileSet old = tablet.copy();
        tablet.write(act("obs/B2-07-17/2026-05-12/vigour", integerValue(7)));
        office.takeAllOf(tablet);
        tablet.putBack(old);
        tablet.write(act("obs/B2-07-17/2026-05-12/vigour", integerValue(8)));
        tablet.write(act("obs/B2-07-18/2026-05-12/vigour", integerValue(8)));
        office.takeAllOf(tablet);
    }
};

} // namespace

TEST_CASE("an export taken in again is the same journal, byte for byte") {
    Season season;
    season.fork();
    const std::string text = season.office.exported();
    Journal other(Role::Station, 8);
    const auto report = other.import(text);
    CHECK(report.taken == linesOf(text).size());
    CHECK(report.refusedCount == 0);
    CHECK(report.waitingCount == 0);
    CHECK(other.exported() == text);
    CHECK(other.state() == season.office.state());
    CHECK(other->vector() == season.office->vector());
    other.checkSound();
    const auto again = other.import(text);
    CHECK(again.taken == 0);
    CHECK(again.there == report.taken);
    CHECK(other.exported() == text);
}

TEST_CASE("lines in any order, and twice, make the same journal") {
    Season season;
    season.fork();
    const std::string text = season.office.exported();
    CHECK(rc::check([&](std::uint64_t seed) {
        Journal other(Role::Station, 8);
        other.import(joined(shuffled(text, seed)));
        RC_ASSERT(other.exported() == text);
        RC_ASSERT(other.state() == season.office.state());
        RC_ASSERT(other->counts()->waiting == 0U);
    }));
}

TEST_CASE("it does not matter in how many files, and in which, the lines of a journal come") {
    Season season;
    const std::string text = season.office.exported();
    CHECK(rc::check([&](std::uint64_t seed) {
        const std::vector<std::string> lines = shuffled(text, seed);
        Journal other(Role::Station, 8);
        for (std::size_t i = 0; i < lines.size(); i += 3) {
            const auto from = lines.begin() + static_cast<long>(i);
            const auto to = i + 3 < lines.size() ? from + 3 : lines.end();
            RC_ASSERT(other.import(joined({from, to})).refusedCount == 0U);
        }
        RC_ASSERT(other.exported() == text);
        RC_ASSERT(other->counts()->waiting == 0U);
    }));
}

TEST_CASE(
    "of a forked journal in several files the line that hangs on the other branch is refused, "
    "and taken once that is here") {
    Season season;
    season.fork();
    const std::vector<std::string> lines = linesOf(season.office.exported());
    const std::string& other5 = lines[lines.size() - 2]; // of the branch that goes on to 6
    REQUIRE(other5.find("\"value\":8") != std::string::npos);
    Journal station(Role::Station, 8);
    station.import(joined({lines.begin(), lines.end() - 2}));
    const auto early = station.import(lines.back());
    REQUIRE(early.refusedCount == 1);
    CHECK(early.refused[0].message.find("take its other branch in first") != std::string::npos);
    CHECK(station.import(other5).taken == 1);
    CHECK(station.import(lines.back()).taken == 1);
    CHECK(station.exported() == season.office.exported());
    station.checkSound();
}

TEST_CASE("lines behind a gap wait on disk, and enter when the gap closes") {
    Season season;
    std::vector<std::string> lines = linesOf(season.tablet.exported());
    REQUIRE(lines.size() == 4);
    Journal station(Role::Station, 8);
    const auto first = station.import(lines[2] + lines[3]);
    CHECK(first.taken == 0);
    CHECK(first.waitingCount == 2);
    REQUIRE(first.waiting.size() == 2);
    CHECK(first.waiting[0].line == 1);
    CHECK(first.waiting[0].message ==
          "It waits for t0000000000000001.1 number 2, which is not here yet.");
    CHECK(station.exported().empty());
    CHECK(station->vector().empty());
    CHECK(station->counts()->waiting == 2);
    station.reopen();
    CHECK(station->counts()->waiting == 2);
    station.import(lines[1]);
    CHECK(station->counts()->waiting == 3);
    CHECK(station.import(lines[0]).waitingCount == 0);
    CHECK(station->counts()->waiting == 0);
    CHECK(station.exported() == season.tablet.exported());
    station.checkSound();
}

TEST_CASE("lines that wait enter as well when a sync closes the gap") {
    Season season;
    const std::vector<std::string> lines = linesOf(season.tablet.exported());
    Journal station(Role::Station, 8);
    station.import(lines[3]);
    const auto segments = season.tablet->segments({'t', 1, 1});
    const auto run = season.tablet->readRun(segments[0], 1, 3, 1'000'000);
    REQUIRE(run.ok());
    REQUIRE(station->merge({*run}, {.isStation = true}).ok());
    CHECK(station->counts()->waiting == 0);
    CHECK(station.exported() == season.tablet.exported());
    station.checkSound();
}

TEST_CASE("a line without a digest gets it from its chain, and is there already where it agrees") {
    Season season;
    std::vector<std::string> lines = linesOf(season.tablet.exported());
    std::vector<std::string> bare;
    std::transform(lines.begin(), lines.end(), std::back_inserter(bare), withoutDigest);
    Journal station(Role::Station, 8);
    CHECK(station.import(bare[3] + bare[1] + bare[0] + bare[2]).taken == 4);
    CHECK(station.exported() == season.tablet.exported());
    CHECK(station.import(joined(bare)).there == 4);
}

TEST_CASE("a line without a digest never opens a fork, and does not choose a branch") {
    Season season;
    season.fork();
    Journal& office = season.office;
    const std::string before = office.exported();
    const std::string start =
        R"({"origin":"t0000000000000001.1","author":"mk","kind":"observe","over":[],"value":1,)"
        R"("subject":"obs/B2-07-19/2026-05-12/rot",)";
    const auto taken = office.import(start + R"("seq":1,"count":1})" + "\n");
    CHECK(taken.refusedCount == 1);
    CHECK(taken.refused[0].line == 1);
    CHECK(taken.refused[0].message.find("cannot open a fork") != std::string::npos);
    const auto undecided = office.import(start + R"("seq":6,"count":9})" + "\n");
    CHECK(undecided.refusedCount == 1);
    CHECK(office.exported() == before);
    office.checkSound();
}

TEST_CASE(
    "where a journal has parted, a line without a digest does not say which branch it follows") {
    Season season;
    const FileSet old = season.tablet.copy();
    for (const int value : {7, 8}) {
        season.tablet.putBack(old);
        season.tablet.write(act(kVine, integerValue(value)));
        season.office.takeAllOf(season.tablet);
    }
    const auto report = season.office.import(
        R"({"origin":"t0000000000000001.1","seq":6,"count":9,"author":"mk","kind":"observe",)"
        R"("subject":"obs/B2-07-19/2026-05-12/rot","value":1})"
        "\n");
    REQUIRE(report.refusedCount == 1);
    CHECK(report.refused[0].message.find("forked here") != std::string::npos);
    season.office.checkSound();
}

TEST_CASE("a digest that does not fit is refused, and so is what hangs on it") {
    Season season;
    std::vector<std::string> lines = linesOf(season.tablet.exported());
    const std::size_t at = lines[1].find("\"value\":6");
    REQUIRE(at != std::string::npos);
    lines[1].replace(at, 9, "\"value\":8");
    Journal station(Role::Station, 8);
    const auto report = station.import(joined(lines));
    CHECK(report.taken == 1);
    CHECK(report.refusedCount == 1);
    CHECK(report.refused[0].line == 2);
    CHECK(report.waitingCount == 2);
    CHECK(station.says(kVine) == "settled 5");
    station.checkSound();
}

TEST_CASE("a bad line is refused with its number, and the lines around it are taken") {
    Season season;
    const std::vector<std::string> lines = linesOf(season.tablet.exported());
    Journal station(Role::Station, 8);
    const auto report = station.import(lines[0] + "\n" + "not a line\n" + lines[1] + lines[2] +
                                       lines[3].substr(0, lines[3].size() - 1)); // no line feed
    CHECK(report.taken == 4);
    REQUIRE(report.refusedCount == 1);
    CHECK(report.refused[0].line == 3);
    CHECK(report.refused[0].file == "lines");
    CHECK(station.exported() == season.tablet.exported());
}

TEST_CASE("a device that takes in entries of its own from a file goes on under a new number") {
    Season season;
    Journal again(Role::Field, 1);
    again.import(season.tablet.exported());
    CHECK(again->about().own == journal::Origin{'t', 1, 2});
    CHECK(again.write(act(kVine, integerValue(1))) == journal::Place{{'t', 1, 2}, 1});
    season.office.takeAllOf(again);
    season.office.checkSound();
}

TEST_CASE("an import that is stopped keeps what it took, and can be done again") {
    std::string text;
    for (int i = 1; i <= 25'000; ++i) {
        text += R"({"origin":"t0000000000000001.1","seq":)" + std::to_string(i) + R"(,"count":)" +
                std::to_string(i) +
                R"(,"author":"mk","kind":"observe","subject":"obs/B2-07-14/2026-05-12/rot",)"
                R"("value":1,"over":[]})"
                "\n";
    }
    Journal station(Role::Station, 8);
    std::istringstream in(text);
    const auto stopped = station->importLines(
        in, "lines", [](std::uint64_t done, std::uint64_t) { return done < 20'000; });
    REQUIRE(stopped.ok());
    CHECK(stopped->taken == 20'000);
    const auto rest = station.import(text);
    CHECK(rest.there == 20'000);
    CHECK(rest.taken == 5'000);
}
