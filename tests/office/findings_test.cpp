// What the station is told of on the demo: what was planted there is found, with the right repair,
// and little else.
#include "office/settling.hpp"
#include "office/station_findings.hpp"

#include "core/journal/json_value.hpp"
#include "store/read_catalogue.hpp"
#include "support/desk_stations.hpp"
#include "support/fixed_clock.hpp"

#include <algorithm>
#include <map>
#include <set>

using namespace bullace;
using namespace bullace::office;
using namespace bullace::test;
using merge::Finding;
using merge::FindingKind;

namespace {

struct DemoDesk {
    DemoDesk() {
        makeDemoFile(folder.file("demo.db"));
        auto opened =
            store::Database::open(folder.file("demo.db"), true, store::fileSurroundings());
        REQUIRE(opened.ok());
        database = std::move(*opened);
        auto read = store::readCatalogue(*database);
        REQUIRE(read.ok());
        catalogue = std::move(*read);
    }
    std::vector<Finding> look() {
        auto found = stationFindings(*database, *catalogue, *readDate("2025-10-01"), {});
        REQUIRE(found.ok());
        return *found;
    }

    TempFolder folder;
    std::unique_ptr<store::Database> database;
    std::unique_ptr<vineyard::Catalogue> catalogue;
    FixedClock clock;
};

} // namespace

TEST_CASE("the demo's shifted row, its slip of the point and its wrong clock are found") {
    DemoDesk desk;
    const auto found = desk.look();
    const demo::Truth& truth = demoStation().truth;
    const auto slip = std::find_if(found.begin(), found.end(), [&](const Finding& finding) {
        return finding.kind == FindingKind::TenTimes &&
               finding.subjects.front() == truth.slip.subject;
    });
    REQUIRE(slip != found.end());
    REQUIRE(slip->repair.size() == 1);
    CHECK(journal::isSameValue(slip->repair.front().value, truth.slip.right));
    const auto clock = std::find_if(found.begin(), found.end(), [&](const Finding& finding) {
        return finding.kind == FindingKind::ClockOff && finding.device == truth.wrongClock;
    });
    REQUIRE(clock != found.end());
    CHECK(clock->off == truth.wrongClockDays);
    for (const demo::ShiftedRow& row : truth.shiftedRows) {
        const auto shifted = std::find_if(found.begin(), found.end(), [&](const Finding& finding) {
            return finding.kind == FindingKind::ShiftedRow &&
                   std::find(row.subjects.begin(), row.subjects.end(), finding.subjects.front()) !=
                       row.subjects.end();
        });
        INFO(row.block << " row " << row.row << " " << row.date);
        CHECK((shifted != found.end()) == !row.isPutRight);
        if (shifted != found.end()) {
            CHECK(shifted->run->along == row.along);
        }
    }
    // What else is told of is little: a person reads all of it in minutes.
    const auto shiftedRows = std::count_if(found.begin(), found.end(), [](const Finding& finding) {
        return finding.kind == FindingKind::ShiftedRow;
    });
    CHECK(shiftedRows <= 2);
    CHECK(found.size() < 40);
}

TEST_CASE(
    "the repair of the shifted row moves every value one vine back, and its undo gives all back") {
    DemoDesk desk;
    const auto found = desk.look();
    const demo::Truth& truth = demoStation().truth;
    const auto shifted = std::find_if(found.begin(), found.end(), [&](const Finding& finding) {
        return finding.kind == FindingKind::ShiftedRow &&
               finding.subjects.front().find("/clusters") != std::string::npos;
    });
    REQUIRE(shifted != found.end());
    CHECK(shifted->subjects == truth.shiftedRows.back().subjects);
    const auto valuesNow = [&] {
        std::map<std::string, std::string> values;
        REQUIRE(desk.database
                    ->eachState("obs",
                                [&values](const store::StateRow& row) {
                                    values[row.subject] = row.valueJson;
                                    return true;
                                })
                    .ok());
        return values;
    };
    const auto before = valuesNow();
    const auto act = repairAct(*desk.database, *shifted, "hl", "began at the second vine");
    REQUIRE(act.ok());
    const auto written = perform(*desk.database, *act, desk.clock);
    REQUIRE(written.ok());
    const auto after = valuesNow();
    // Each value stands one place back now, also where the row has a hole.
    const auto backOf = [](const std::string& subject) {
        const auto position = *vineyard::readPosition(subject.substr(4, subject.find('/', 4) - 4));
        return "obs/" +
               vineyard::writePosition({position.block, position.row, position.vine - 1, 0}) +
               subject.substr(subject.find('/', 4));
    };
    std::set<std::string> filled;
    for (const std::string& subject : shifted->subjects) {
        CHECK(after.at(backOf(subject)) == before.at(subject));
        filled.insert(backOf(subject));
    }
    for (const std::string& subject : shifted->subjects) {
        CHECK((filled.count(subject) > 0 || after.at(subject).empty()));
    }
    // It is not told of again, and nothing new is.
    for (const Finding& finding : desk.look()) {
        CHECK(finding.subjects != shifted->subjects);
    }
    REQUIRE(undoLast(*desk.database, "hl", desk.clock).ok());
    const auto undone = valuesNow();
    for (const auto& [subject, value] : before) {
        CHECK(undone.at(subject) == value);
    }
}

TEST_CASE("a finding that a person calls right is not told again, until somebody writes there") {
    DemoDesk desk;
    auto found = desk.look();
    const auto slip = std::find_if(found.begin(), found.end(), [](const Finding& finding) {
        return finding.kind == FindingKind::TenTimes;
    });
    REQUIRE(slip != found.end());
    const std::string subject = slip->subjects.front();
    const auto act = asideAct(*desk.database, *slip, "hl");
    REQUIRE(act.ok());
    REQUIRE(perform(*desk.database, *act, desk.clock).ok());
    const auto isTold = [&] {
        const auto now = desk.look();
        return std::any_of(now.begin(), now.end(), [&](const Finding& finding) {
            return !finding.subjects.empty() && finding.subjects.front() == subject;
        });
    };
    CHECK_FALSE(isTold());
    store::Draft again;
    again.author = "im";
    again.subject = subject;
    again.value = journal::numberValue(38.5);
    again.over = *headsOf(*desk.database, subject);
    REQUIRE(desk.database->append(std::vector{again}, std::nullopt).ok());
    CHECK(isTold());
}

TEST_CASE("a clock that somebody knows of is put away, until the device notes by it again") {
    constexpr std::int64_t kWrong = 1'747'000'000'000; // 2025-05-11
    constexpr std::int64_t kRight = 1'778'500'000'000; // 2026-05-11
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    int seq = 0;
    const auto noteAt = [&seq](std::int64_t wallMs) {
        ++seq;
        const std::string vine = (seq < 10 ? "0" : "") + std::to_string(seq);
        return lineOf({"t0000000000000001.1",
                       seq,
                       "im",
                       "observe",
                       "obs/B2-01-" + vine + "/2026-05-11/clusters",
                       "40",
                       "[]",
                       wallMs + seq * 60'000});
    };
    std::string lines =
        lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,30]]"});
    for (int i = 0; i < 9; ++i) {
        lines += noteAt(kWrong);
    }
    makeStationFile(path, lines);
    auto database = std::move(*store::Database::open(path, true, store::fileSurroundings()));
    const auto catalogue = std::move(*store::readCatalogue(*database));
    const auto clockOff = [&]() -> std::optional<Finding> {
        const auto found = stationFindings(*database, *catalogue, *readDate("2026-05-12"), {});
        REQUIRE(found.ok());
        const auto clock = std::find_if(found->begin(), found->end(), [](const Finding& finding) {
            return finding.kind == FindingKind::ClockOff;
        });
        return clock == found->end() ? std::nullopt : std::optional(*clock);
    };
    const auto arrives = [&](const std::string& line) {
        std::istringstream in(line);
        REQUIRE(database->importLines(in, "tablet", {}).ok());
    };
    const FixedClock clock;
    const std::optional<Finding> told = clockOff();
    REQUIRE(told.has_value());
    CHECK(told->off == -365);
    const auto act = asideAct(*database, *told, "hl");
    REQUIRE(act.ok());
    REQUIRE(perform(*database, *act, clock).ok());
    CHECK_FALSE(clockOff().has_value());
    arrives(noteAt(kRight)); // it was put right
    CHECK_FALSE(clockOff().has_value());
    arrives(noteAt(kWrong)); // it was not
    CHECK(clockOff().has_value());
}
