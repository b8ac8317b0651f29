// Wrong inputs: each is told in plain words with its place, and nothing is lost or half done.
#include "process/programs.hpp"

#include <doctest/doctest.h>

#include <filesystem>

using namespace bullace::test;

namespace {

const std::string kStart = R"({"origin":"t0000000000000001.1","author":"mk","kind":"observe",)";

std::string line(const std::string& rest) {
    return kStart + rest + "}\n";
}

const std::string kFirst =
    line(R"("seq":1,"count":1,"subject":"obs/B2-07-14/2026-05-12/stage","value":65)");

struct Station {
    Folder folder;
    std::string path = folder.file("station.db");
    Station() {
        REQUIRE(console({"create", path, "--station", "Invented", "--zone", "UTC"}).status == 0);
    }

    // Imports the first line and then this; what was refused must leave the first alone.
    Ran add(const std::string& lines) {
        REQUIRE(console({"import", path, "-"}, kFirst).status == 0);
        return console({"import", path, "-"}, lines);
    }
    [[nodiscard]] std::string state() const { return console({"state", path}).out; }
};

bool says(const Ran& ran, const std::string& words) {
    return ran.err.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("a line with a wrong type, no number, or broken text is refused with its number, and the "
          "rest is taken") {
    const std::string second = R"("seq":2,"count":2,"subject":"obs/B2-07-14/2026-05-12/vigour",)";
    const std::string bad[] = {
        line(R"("seq":"2","count":2,"subject":"x","value":1)"),
        line(R"("seq":9223372036854775808,"count":2,"subject":"x","value":1)"),
        line(R"("seq":2.0,"count":2,"subject":"x","value":1)"),
        line(R"("seq":0,"count":2,"subject":"x","value":1)"),
        line(R"("seq":2,"count":-1,"subject":"x","value":1)"),
        line(R"("seq":2,"count":2,"subject":7,"value":1)"),
        line(second + R"("value":NaN)"),
        line(second + R"("value":1e999)"),
        line(second + R"("value":1,"over":[["t1",1]])"),
        line(second + R"("value":1,"over":"all")"),
        line(second + R"("value":1,"value":2)"),
        line(second + R"("value":{"a":1,"a":2})"),
        line(second + R"("value":1,"digest":"00")"),
        line(second + "\"value\":\"\xff\""),
        line(second + "\"value\":\"a\\u0000b\""),
        line(second + "\"value\":" + std::string(40, '[') + std::string(40, ']')),
        "{\"seq\":2\n",
        "seq 2\n",
        "[1,2]\n",
        line(second + "\"value\":\"" + std::string(300'000, 'a') + "\""),
    };
    for (const std::string& each : bad) {
        CAPTURE(each.substr(0, 160));
        Station station;
        const Ran ran = station.add(each + line(second + R"("value":5)"));
        CHECK(ran.status == 1);
        CHECK(says(ran, "standard input, line 1: "));
        CHECK(ran.out.find("1 entry taken") != std::string::npos);
        CHECK(station.state().find(R"(vigour","status":"settled","value":5)") != std::string::npos);
        CHECK(console({"verify", station.path}).status == 0);
    }
}

TEST_CASE(
    "a million overs are more than an entry can hold, and are refused without using much memory") {
    std::string over;
    for (int i = 1; i <= 1'000'000; ++i) {
        over += (i == 1 ? "" : ",") + std::string("[\"t0000000000000001.1\",1]");
    }
    Station station;
    const Ran ran =
        station.add(line(R"("seq":2,"count":2,"subject":"x","value":1,"over":[)" + over + "]"));
    CHECK(ran.status == 1);
    CHECK(says(ran, "64 KiB"));
}

TEST_CASE("unknown kinds, fields, descriptors, places and dates are kept, counted and leave the "
          "status 0") {
    Station station;
    const Ran ran = station.add(
        line(R"("seq":2,"count":2,"subject":"obs/Z9-99-99/2026-05-12/stage","value":61)") +
        line(R"("seq":3,"count":3,"subject":"obs/B2-07-14/2026-05-12/moon-phase","value":"full")") +
        line(R"("seq":4,"count":4,"subject":"obs/B2-07-14/2026-02-30/stage","value":61)") +
        line(R"("seq":5,"count":5,"subject":"obs/B2-07-14/9999-12-31/stage","value":1234)") +
        line(
            R"("seq":6,"count":6,"subject":"obs/B2-07-14/2026-05-13/stage","value":61,"mood":{"good":7.0})") +
        R"({"origin":"t0000000000000001.1","seq":7,"count":7,"author":"mk","kind":"dream","subject":"x","value":[]})"
        "\n" +
        line(
            R"("seq":8,"count":281474976710657,"subject":"obs/B2-07-14/2026-05-14/stage","value":61)"));
    CHECK_MESSAGE(ran.status == 0, ran.err);
    CHECK(ran.out.find("7 entries taken") != std::string::npos);
    CHECK(ran.out.find("Kept as they are: 2 that do not count, 1 with a descriptor nobody knows, 2 "
                       "with a subject of no known "
                       "form, 1 with further fields.") != std::string::npos);
    const Ran exported = console({"export", station.path});
    CHECK(exported.out.find(R"("mood":{"good":7.0})") != std::string::npos);
    CHECK(exported.out.find(R"("kind":"dream")") != std::string::npos);
    CHECK(console({"import", station.path, "-"}, exported.out).out.find("8 here already") !=
          std::string::npos);
}

TEST_CASE("cyclic overs leave their subject with both heads") {
    Station station;
    const std::string subject = R"("subject":"obs/B2-07-14/2026-05-12/vigour",)";
    const Ran ran = station.add(line("\"seq\":2,\"count\":5," + subject +
                                     R"("value":1,"over":[["t0000000000000001.1",3]])") +
                                line("\"seq\":3,\"count\":5," + subject +
                                     R"("value":9,"over":[["t0000000000000001.1",2]])"));
    CHECK(ran.status == 0);
    CHECK(
        station.state().find(
            R"("status":"open","value":null,"rule":null,"heads":[["t0000000000000001.1",2],["t0000000000000001.1",3]])") !=
        std::string::npos);
}

TEST_CASE("lines behind a gap wait, are told, and enter when the gap closes; a second branch "
          "without digests is refused") {
    Station station;
    const Ran gap = station.add(
        line(R"("seq":3,"count":3,"subject":"obs/B2-07-14/2026-05-12/vigour","value":5)"));
    CHECK(gap.status == 1);
    CHECK(says(gap, "waits for t0000000000000001.1 number 2"));
    CHECK(station.state().find("vigour") == std::string::npos);
    const Ran closed =
        console({"import", station.path, "-"},
                line(R"("seq":2,"count":2,"subject":"obs/B2-07-14/2026-05-12/rot","value":1)"));
    CHECK(closed.status == 0);
    CHECK(station.state().find("vigour") != std::string::npos);
    const Ran fork =
        console({"import", station.path, "-"},
                line(R"("seq":2,"count":2,"subject":"obs/B2-07-14/2026-05-12/rot","value":2)"));
    CHECK(fork.status == 1);
    CHECK(says(fork, "line 1: Another entry stands"));
}

TEST_CASE("files that are no journal, empty, newer, cut short or not there are told apart and left "
          "as they are") {
    Station station;
    const std::string text = station.folder.file("notes.txt");
    writeFile(text, "not a journal, but long enough to be looked at as one\n");
    const std::string empty = station.folder.file("empty.db");
    writeFile(empty, "");
    CHECK(says(console({"state", text}), "is no Bullace database"));
    CHECK(says(console({"state", empty}), "is no Bullace journal"));
    CHECK(readFile(empty).empty());
    CHECK(says(console({"state", station.folder.file("none.db")}), "There is no file"));
    CHECK(says(console({"create", station.path, "--station", "x", "--zone", "UTC"}), "already"));
    CHECK(says(console({"import", station.path, station.path}), "is a database, not JSON Lines"));
    CHECK(says(
        console(
            {"create", station.folder.file("a.db"), "--station", "x", "--zone", "Nowhere/At-All"}),
        "time zone"));
    std::filesystem::remove(station.path + "-wal"); // which held all of it once more
    std::filesystem::remove(station.path + "-shm");
    std::filesystem::resize_file(station.path, 20'000);
    const Ran cut = console({"verify", station.path});
    CHECK(cut.status == 1);
    CHECK(says(cut, "damaged"));
}

TEST_CASE("an export that the disk does not take is told, and its status is not 0") {
    Station station;
    station.add("");
    const Ran full =
        runProgram({"sh",
                    "-c",
                    std::string(BULLACE_BIN) + "/bullace export " + station.path + " > /dev/full"});
    CHECK(full.status == 1);
    CHECK(says(full, "written whole"));
}

TEST_CASE("an import that does not fit on the disk is told, changes nothing, and goes in later") {
    Station station;
    LineMaker maker{0xB1};
    const std::string lines = station.folder.file("lines.jsonl");
    writeFile(lines, maker.next(20'000));
    const std::string before = station.state();
    // A bound on the size of files stands for the disk: writing beyond it fails in the same way.
    const Ran full = runProgram({"sh",
                                 "-c",
                                 "trap '' XFSZ; ulimit -f 2000; exec " + std::string(BULLACE_BIN) +
                                     "/bullace import " + station.path + " " + lines});
    CHECK(full.status == 1);
    CHECK(says(full, station.path));
    CHECK(says(full, "not reported as saved is not saved"));
    CHECK(station.state() == before);
    CHECK(console({"verify", station.path}).status == 0);
    const Ran again = console({"import", station.path, lines});
    CHECK(again.status == 0);
    CHECK(again.out.find("20000 entries taken") != std::string::npos);
}

TEST_CASE("a changed byte of an entry is found by verify, which names the entry and what to do") {
    Station station;
    REQUIRE(console({"import", station.path, "-"}, kFirst).status == 0);
    std::filesystem::remove(station.path + "-wal"); // which held all of it once more
    std::filesystem::remove(station.path + "-shm");
    std::string bytes = readFile(station.path);
    const std::string author = "bmk"; // a text of two letters, as it stands in the entry
    std::size_t changed = 0;
    for (std::size_t at = bytes.find(author + "g"); at != std::string::npos;
         at = bytes.find(author + "g", at + 1)) {
        bytes[at + 1] = 'M';
        ++changed;
    }
    REQUIRE(changed > 0);
    writeFile(station.path, bytes);
    const Ran verified = console({"verify", station.path});
    CHECK(verified.status == 1);
    CHECK(says(verified, "t0000000000000001.1"));
    CHECK(says(verified, "go on with the last backup"));
}

TEST_CASE("a command that is not there, and one without its words, are told with where to look") {
    const Ran unknown = console({"prune", "x.db"});
    CHECK(unknown.status == 2);
    CHECK(says(unknown, "There is no command \"prune\""));
    const Ran bare = console({"import"});
    CHECK(bare.status == 2);
    CHECK(says(bare, "`bullace --help` lists the commands"));
}

TEST_CASE("two stations fed the demo's journals in different orders export the same bytes and hold "
          "the same state") {
    Folder folder;
    REQUIRE(runProgram({std::string(BULLACE_BIN) + "/bullace-demo-station", folder.file("demo")})
                .status == 0);
    const std::vector<std::string> names{"office",
                                         "past-1",
                                         "past-2",
                                         "past-2-again",
                                         "tablet-1",
                                         "tablet-2-before",
                                         "tablet-2",
                                         "tablet-3",
                                         "bench"};
    std::string exports[2];
    std::string states[2];
    for (int turn = 0; turn < 2; ++turn) {
        const std::string path = folder.file("station-" + std::to_string(turn));
        REQUIRE(console({"create", path, "--station", "Invented", "--zone", "UTC"}).status == 0);
        for (std::size_t i = 0; i < names.size(); ++i) {
            const std::string& name = names[turn == 0 ? i : names.size() - 1 - i];
            const Ran ran = console({"import", path, folder.file("demo") + "/" + name + ".jsonl"});
            REQUIRE_MESSAGE(ran.status == 0, ran.err);
        }
        exports[turn] = console({"export", path}).out;
        states[turn] = console({"state", path}).out;
    }
    CHECK(exports[0] == exports[1]);
    CHECK(states[0] == states[1]);
    CHECK(states[0].size() > 1'000'000);
}
