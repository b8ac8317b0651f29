// Decisions about selections, as entries with who and why.
#include "office/verdicts.hpp"

#include "office/station_notes_reading.hpp"

#include "core/journal/json_value.hpp"
#include "store/read_catalogue.hpp"
#include "support/desk_stations.hpp"
#include "support/fixed_clock.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace bullace;
using namespace bullace::office;
using namespace bullace::test;

namespace {

constexpr CivilDate kDay = std::chrono::year(2025) / 12 / 9;

struct Meeting {
    Meeting() {
        makeDemoFile(folder.file("demo.db"));
        auto opened =
            store::Database::open(folder.file("demo.db"), true, store::fileSurroundings());
        REQUIRE(opened.ok());
        database = std::move(*opened);
    }

    [[nodiscard]] season::StationNotes notes() {
        const auto catalogue = store::readCatalogue(*database);
        REQUIRE(catalogue.ok());
        auto read = readStationNotes(*database, **catalogue, {});
        REQUIRE(read.ok());
        return std::move(*read);
    }
    [[nodiscard]] std::vector<VerdictNote> verdicts() {
        auto read = readVerdicts(*database, notes());
        REQUIRE(read.ok());
        return std::move(*read);
    }
    Result<std::vector<journal::Place>> decide(const std::vector<std::string>& positions,
                                               const std::string& word,
                                               const std::string& why) {
        return perform(*database, verdictAct(*database, positions, kDay, word, "hl", why), clock);
    }

    TempFolder folder;
    std::unique_ptr<store::Database> database;
    FixedClock clock;
};

} // namespace

TEST_CASE("a decision stands at every vine of the selection, with who decided it and why") {
    Meeting meeting;
    const std::size_t before = meeting.verdicts().size();
    const auto written =
        meeting.decide({"T1-01-01", "T1-03-02"}, "take-on", "firm berries in all three years");
    REQUIRE_MESSAGE(written.ok(), (written.ok() ? "" : written.error().message));
    CHECK(written->size() == 2);
    const auto verdicts = meeting.verdicts();
    REQUIRE(verdicts.size() == before + 2);
    CHECK(verdicts.front().date == kDay);
    CHECK(verdicts.front().word == "take-on");
    CHECK(verdicts.front().author == "hl");
    CHECK(verdicts.front().why == "firm berries in all three years");
    CHECK_FALSE(verdicts.front().isOpen);
}

TEST_CASE("a later decision of the same day replaces the one that was seen") {
    Meeting meeting;
    const std::size_t before = meeting.verdicts().size();
    REQUIRE(meeting.decide({"T1-01-01"}, "take-on", "heavy crops").ok());
    REQUIRE(meeting.decide({"T1-01-01"}, "look-again", "rot in the last picking").ok());
    const auto verdicts = meeting.verdicts();
    REQUIRE(verdicts.size() == before + 1);
    CHECK(verdicts.front().word == "look-again");
    CHECK(verdicts.front().why == "rot in the last picking");
}

TEST_CASE("a decision that was made on what has changed since is not written") {
    Meeting meeting;
    const auto act = verdictAct(
        *meeting.database, std::vector<std::string>{"T1-01-01"}, kDay, "pull", "hl", "weak");
    REQUIRE(act.ok());
    REQUIRE(meeting.decide({"T1-01-01"}, "take-on", "heavy crops").ok());
    const auto written = perform(*meeting.database, *act, meeting.clock);
    REQUIRE_FALSE(written.ok());
    CHECK(written.error().code == ErrorCode::Outdated);
}

TEST_CASE("a decision without a reason, a vine or a known word is refused in plain words") {
    Meeting meeting;
    CHECK(meeting.decide({"T1-01-01"}, "take-on", "").error().message ==
          "A decision needs its reason, so that it can be understood later.");
    CHECK(meeting.decide({}, "take-on", "good").error().message ==
          "The selection stands at no vine: there is no place to record a decision at.");
    CHECK(meeting.decide({"T1-01-01"}, "keep", "good").error().message ==
          "A decision is pull, look-again or take-on.");
}
