// Backups of the station: which are kept, that they are whole, and the way back from one.
#include "office/backups.hpp"

#include "core/journal/json_value.hpp"
#include "support/desk_stations.hpp"

#include <filesystem>
#include <fstream>

using namespace bullace;
using namespace bullace::office;
using namespace bullace::test;

namespace {

CivilDate day(const char* text) {
    return *readDate(text);
}

const char* const kSubject = "obs/B2-01-01/2026-05-12/clusters";

void makeSmall(const std::string& path) {
    makeStationFile(path, lineOf({"t0000000000000001.1", 1, "im", "observe", kSubject, "41"}));
}

std::string valueAt(const std::string& path) {
    auto database = store::Database::open(path, false, store::fileSurroundings());
    REQUIRE(database.ok());
    const auto row = (*database)->state(kSubject);
    REQUIRE(row.ok());
    return *row ? (*row)->valueJson : std::string{};
}

} // namespace

TEST_CASE("of two years of daily backups seven days, four weeks and twelve months are kept") {
    std::vector<CivilDate> dates;
    for (int back = 0; back < 730; ++back) {
        dates.push_back(addDays(day("2026-11-25"), -back));
    }
    const auto kept = keptBackups(dates);
    CHECK(kept.size() <= 7 + 4 + 12);
    for (std::size_t i = 0; i < 7; ++i) {
        CHECK(kept[i] == dates[i]);
    }
    // No two neighbours lie more than a month apart, back to a year ago.
    for (std::size_t i = 1; i < kept.size(); ++i) {
        CHECK(daysBetween(kept[i], kept[i - 1]) <= 31);
    }
    CHECK(daysBetween(kept.back(), dates.front()) >= 300);
    CHECK(keptBackups({}).empty());
    CHECK(keptBackups({day("2026-01-01")}).size() == 1);
}

TEST_CASE("a day has one backup, checked, and old ones go only after it") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeSmall(path);
    auto database = store::Database::open(path, true, store::fileSurroundings());
    REQUIRE(database.ok());
    for (int on = 0; on < 40; ++on) {
        const auto done = backUpDaily(**database, addDays(day("2026-01-01"), on), {});
        REQUIRE(done.ok());
        CHECK(done->isNew);
        CHECK(std::filesystem::exists(done->path));
    }
    const auto again = backUpDaily(**database, addDays(day("2026-01-01"), 39), {});
    REQUIRE(again.ok());
    CHECK_FALSE(again->isNew);
    const auto backups = backupsOf(path);
    CHECK(backups.size() <= 7 + 4 + 2);
    CHECK(backups.front().date == addDays(day("2026-01-01"), 39));
    CHECK(valueAt(backups.front().path) == "41");
}

TEST_CASE(
    "a damaged database is put aside whole, and the backup takes its place with a new epoch") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeSmall(path);
    std::string own;
    {
        auto database = store::Database::open(path, true, store::fileSurroundings());
        REQUIRE(database.ok());
        own = (*database)->about().own.text();
        REQUIRE(backUpDaily(**database, day("2026-05-13"), {}).ok());
    }
    for (const char* end : {"", "-wal"}) {
        std::ofstream(path + end, std::ios::binary | std::ios::trunc) << "no database any more";
    }
    CHECK_FALSE(store::Database::open(path, false, store::fileSurroundings()).ok());
    const auto aside = restoreBackup(path, backupsOf(path).front().path, 1'778'600'000'000);
    REQUIRE(aside.ok());
    CHECK(std::filesystem::exists(*aside));
    CHECK(valueAt(path) == "41");
    auto database = store::Database::open(path, true, store::fileSurroundings());
    REQUIRE(database.ok());
    CHECK((*database)->about().tookNewEpoch);
    CHECK((*database)->about().own.text() != own);
}

TEST_CASE(
    "a backup that does not hold against its own digests is refused, and nothing is changed") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeSmall(path);
    const std::string bad = folder.file("bad.db");
    std::ofstream(bad, std::ios::binary) << "not a backup";
    CHECK_FALSE(restoreBackup(path, bad, 1).ok());
    CHECK_FALSE(restoreBackup(path, folder.file("none.db"), 1).ok());
    CHECK(valueAt(path) == "41");
}
