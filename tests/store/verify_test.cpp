// What verify finds, and what making the state anew can mend.
#include "store/sqlite.hpp"
#include "support/journals.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using journal::textValue;
using store::Role;

namespace {

// A station with settled, agreed, ruled, open and retracted subjects, a group, an undo, an entry
// without a right and a loose edge.
struct Station {
    Journal station{Role::Station, 9};

    Station() {
        Journal tablet(Role::Field, 1);
        for (int vine = 11; vine <= 15; ++vine) {
            const std::string subject = "obs/B2-07-" + std::to_string(vine) + "/2026-05-12/vigour";
            tablet.write(act(subject, integerValue(5)));
            station.write(act(subject, integerValue(vine == 12 ? 9 : vine == 13 ? 5 : 6)));
        }
        station.takeAllOf(tablet);
        const std::string first = "obs/B2-07-11/2026-05-12/vigour";
        const auto ruled = station.write(ruling(first, integerValue(6), station.headsOf(first)));
        station.write(undo(first, {ruled}));
        const std::string last = "obs/B2-07-15/2026-05-12/vigour";
        station.write(retraction(last, station.headsOf(last)));
        station.import(
            R"({"origin":"t0000000000000002.1","seq":1,"count":1,"author":"mk","kind":"ruling",)"
            R"("subject":"obs/B2-07-16/2026-05-12/photo","value":1,"over":[]})"
            "\n"
            R"({"origin":"t0000000000000002.1","seq":2,"count":2,"author":"mk","kind":"observe",)"
            R"("subject":"obs/B2-07-16/2026-05-12/photo","value":")" +
            sha256("x").hex() + R"(","over":[["t0000000000000002.1",9]]})" + "\n");
        station.checkSound();
    }

    void run(const char* sql) { REQUIRE(station->connection().run(sql).ok()); }
    [[nodiscard]] std::vector<std::string> faults() {
        const auto verdict = station->verify({});
        REQUIRE_MESSAGE(verdict.ok(), (verdict ? "" : verdict.error().message));
        return verdict->faults;
    }
};

} // namespace

TEST_CASE("verify counts what it looked at") {
    Station station;
    const auto verdict = station.station->verify({});
    REQUIRE(verdict.ok());
    CHECK(verdict->entries == 15);
    CHECK(verdict->subjects == 6);
    CHECK(verdict->faults.empty());
}

TEST_CASE("a changed entry is named by its journal and number, once") {
    Station station;
    station.run("UPDATE entries SET bytes = replace(bytes, 'mk', 'mj') WHERE id = "
                "(SELECT b.id << 40 | 3 FROM branches b JOIN origins o ON o.id = b.origin "
                "WHERE o.origin = 't0000000000000001.1')");
    // The replaced bytes are text to SQLite; as bytes they are what was meant.
    station.run("UPDATE entries SET bytes = CAST(bytes AS BLOB)");
    CHECK(station.faults() ==
          std::vector<std::string>{"t0000000000000001.1 number 3 does not agree with its digest: "
                                   "its bytes were changed."});
}

TEST_CASE("a lost entry and a lost end are named") {
    {
        Station station;
        station.run("DELETE FROM entries WHERE id & 1099511627775 = 3");
        const auto faults = station.faults();
        CHECK(std::count(
                  faults.begin(), faults.end(), "t0000000000000001.1 number 3 is missing.") == 1);
        CHECK(std::count(
                  faults.begin(), faults.end(), "s0000000000000009.1 number 3 is missing.") == 1);
    }
    {
        Station station;
        station.run("DELETE FROM entries WHERE id = (SELECT b.id << 40 | 5 FROM branches b JOIN "
                    "origins o ON o.id = b.origin WHERE o.origin = 't0000000000000001.1')");
        const auto faults = station.faults();
        REQUIRE_FALSE(faults.empty());
        CHECK(faults[0].find("t0000000000000001.1 should end with number 5") != std::string::npos);
    }
}

TEST_CASE("every derived row that is wrong, lacking or too many is found, and made anew") {
    const char* const damages[] = {
        "UPDATE subjects SET value = '7' WHERE state = 0",
        "UPDATE subjects SET state = 0 WHERE state = 4",
        "UPDATE subjects SET rule = 1 WHERE state = 3",
        "UPDATE subjects SET head = head + 1 WHERE state = 1",
        "UPDATE subjects SET state = NULL WHERE state = 2",
        "UPDATE subjects SET entry_count = entry_count + 1 WHERE path LIKE '%-12/2026%'",
        "UPDATE subjects SET path = 'obs/elsewhere' WHERE state = 2",
        "DELETE FROM subjects WHERE state = 3",
        "INSERT INTO subjects(path, entry, entry_count) VALUES('obs/nothing', 1, 1)",
        "DELETE FROM subject_heads",
        "INSERT INTO subject_heads SELECT id, 12345 FROM subjects WHERE state = 4",
        "DELETE FROM subject_entries",
        "DELETE FROM uncounted",
        "UPDATE uncounted SET reason = 4",
        "DELETE FROM loose_edges",
        "UPDATE loose_edges SET seq = 8",
        "DELETE FROM named_photos",
        "INSERT INTO named_photos VALUES(zeroblob(32))",
    };
    for (const char* damage : damages) {
        CAPTURE(damage);
        Station station;
        const std::string before = station.station.state();
        station.run(damage);
        CHECK_FALSE(station.faults().empty());
        REQUIRE(station.station->rebuild({}).ok());
        CHECK(station.faults().empty());
        CHECK(station.station.state() == before);
    }
}

TEST_CASE("a verify or a rebuild that is stopped changes nothing") {
    Journal station(Role::Station, 9);
    std::string lines;
    for (int i = 1; i <= 20'001; ++i) {
        lines += R"({"origin":"t0000000000000001.1","seq":)" + std::to_string(i) + R"(,"count":)" +
                 std::to_string(i) + R"(,"author":"mk","kind":"observe","subject":"obs/B2-07-)" +
                 std::to_string(10 + i % 80) + R"(/2026-05-12/rot","value":1})" + "\n";
    }
    station.import(lines);
    const std::string before = station.state();
    const auto stop = [](std::uint64_t, std::uint64_t) { return false; };
    const auto stopped = station->verify(stop);
    REQUIRE_FALSE(stopped.ok());
    CHECK(stopped.error().code == ErrorCode::Cancelled);
    const Status rebuilt = station->rebuild(stop);
    REQUIRE_FALSE(rebuilt.ok());
    CHECK(rebuilt.error().code == ErrorCode::Cancelled);
    CHECK(station.state() == before);
    station.checkSound();
}
