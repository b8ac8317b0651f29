// The disk that fails as told, tried with SQLite itself.
#include "support/fault_vfs.hpp"

#include <doctest/doctest.h>
#include <sqlite3.h>

#include <chrono>
#include <string>
#include <vector>

namespace bullace::test {

namespace {

// A connection that is closed in any case.
class Database {
public:
    explicit Database(FaultDisk& disk) {
        code_ = sqlite3_open_v2(
            "vines.db", &handle_, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, disk.vfsName());
        if (code_ == SQLITE_OK) {
            code_ = run("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;");
        }
    }
    ~Database() { sqlite3_close(handle_); }
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;
    Database(Database&&) = delete;
    Database& operator=(Database&&) = delete;

    [[nodiscard]] int code() const { return code_; }
    int run(const std::string& sql) {
        return sqlite3_exec(handle_, sql.c_str(), nullptr, nullptr, nullptr);
    }
    // The first column of the first row as text; "-" where there is no answer.
    std::string ask(const char* sql) {
        sqlite3_stmt* statement = nullptr;
        std::string answer = "-";
        if (sqlite3_prepare_v2(handle_, sql, -1, &statement, nullptr) == SQLITE_OK &&
            sqlite3_step(statement) == SQLITE_ROW && sqlite3_column_text(statement, 0) != nullptr) {
            answer = reinterpret_cast<const char*>(sqlite3_column_text(statement, 0));
        }
        sqlite3_finalize(statement);
        return answer;
    }

private:
    sqlite3* handle_ = nullptr;
    int code_ = SQLITE_OK;
};

constexpr const char* kTable = "CREATE TABLE IF NOT EXISTS note(seq INTEGER PRIMARY KEY, text)";

std::string insertion(int seq) {
    return "INSERT INTO note VALUES(" + std::to_string(seq) + ", '" + std::string(300, 'x') + "')";
}

// Ten notes, one transaction each, with a checkpoint after the sixth; how many were acknowledged.
int writeNotes(FaultDisk& disk) {
    Database database(disk);
    if (database.code() != SQLITE_OK || database.run(kTable) != SQLITE_OK) {
        return 0;
    }
    for (int seq = 1; seq <= 10; ++seq) {
        if (database.run(insertion(seq)) != SQLITE_OK) {
            return seq - 1;
        }
        if (seq == 6) {
            database.run("PRAGMA wal_checkpoint(TRUNCATE)");
        }
    }
    return 10;
}

// Rows that are there and sound, or -1.
int countNotes(FaultDisk& disk) {
    Database database(disk);
    if (database.ask("PRAGMA integrity_check") != "ok" || database.run(kTable) != SQLITE_OK) {
        return -1;
    }
    if (database.ask("SELECT coalesce(max(seq), 0) = count(*) FROM note") != "1") {
        return -1;
    }
    return std::stoi(database.ask("SELECT count(*) FROM note"));
}

void checkPowerLossEverywhere(WriteModel model) {
    FaultDisk sound(7);
    REQUIRE(writeNotes(sound) == 10);
    const std::uint64_t all = sound.operations(kChanging);
    REQUIRE(all > 40);
    bool wasOneInFlightKept = false;
    for (std::uint64_t at = 1; at <= all; ++at) {
        FaultDisk disk(at);
        disk.plan({.at = at, .fault = Fault::PowerLoss, .model = model, .counted = kChanging});
        const int acknowledged = writeNotes(disk);
        REQUIRE(disk.isPowerOff());
        disk.restart();
        const int found = countNotes(disk);
        CAPTURE(at);
        CAPTURE(acknowledged);
        CAPTURE(disk.log());
        CHECK(found >= acknowledged);
        CHECK(found <= acknowledged + 1);
        wasOneInFlightKept = wasOneInFlightKept || found > acknowledged;
    }
    // What was never synced can be there only if something of it can survive.
    CHECK(wasOneInFlightKept == (model != WriteModel::AllLost));
}

} // namespace

TEST_CASE("a database in WAL mode is written, closed and read again") {
    FaultDisk disk;
    {
        Database database(disk);
        REQUIRE(database.code() == SQLITE_OK);
        CHECK(database.ask("PRAGMA journal_mode") == "wal");
        REQUIRE(database.run(kTable) == SQLITE_OK);
        REQUIRE(database.run(insertion(1)) == SQLITE_OK);
        CHECK(disk.exists("vines.db-wal"));
    }
    CHECK(countNotes(disk) == 1);
    CHECK(disk.size("vines.db") % 4096 == 0);
    CHECK(disk.operations() > disk.operations(kChanging));
    CHECK(disk.failures() == 0);
}

TEST_CASE("two connections see one another, and only one writes at a time") {
    FaultDisk disk;
    Database first(disk);
    Database second(disk);
    REQUIRE(first.run(kTable) == SQLITE_OK);
    REQUIRE(first.run("BEGIN IMMEDIATE") == SQLITE_OK);
    REQUIRE(first.run(insertion(1)) == SQLITE_OK);
    CHECK(second.run("BEGIN IMMEDIATE") == SQLITE_BUSY);
    CHECK(second.ask("SELECT count(*) FROM note") == "0");
    REQUIRE(first.run("COMMIT") == SQLITE_OK);
    CHECK(second.ask("SELECT count(*) FROM note") == "1");
    CHECK(second.run(insertion(2)) == SQLITE_OK);
}

TEST_CASE("with a rollback journal a second writer waits as well") {
    FaultDisk disk;
    Database first(disk);
    REQUIRE(first.run("PRAGMA journal_mode=DELETE") == SQLITE_OK);
    REQUIRE(first.run(kTable) == SQLITE_OK);
    sqlite3* second = nullptr;
    REQUIRE(sqlite3_open_v2("vines.db", &second, SQLITE_OPEN_READWRITE, disk.vfsName()) ==
            SQLITE_OK);
    REQUIRE(first.run("BEGIN EXCLUSIVE") == SQLITE_OK);
    CHECK(sqlite3_exec(second, "SELECT * FROM note", nullptr, nullptr, nullptr) == SQLITE_BUSY);
    REQUIRE(first.run("COMMIT") == SQLITE_OK);
    CHECK(sqlite3_exec(second, "SELECT * FROM note", nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_close(second);
}

TEST_CASE("committed notes survive a power loss at any operation, uncommitted ones do not") {
    SUBCASE("unsynced writes are lost") {
        checkPowerLossEverywhere(WriteModel::AllLost);
    }
    SUBCASE("unsynced writes are torn") {
        checkPowerLossEverywhere(WriteModel::Torn);
    }
    SUBCASE("unsynced writes arrive in any order") {
        checkPowerLossEverywhere(WriteModel::Reordered);
    }
    SUBCASE("only the program dies") {
        checkPowerLossEverywhere(WriteModel::AllKept);
    }
}

TEST_CASE("without syncs a power loss takes what was acknowledged") {
    // The disk must be able to lose something, or the tests above say nothing.
    FaultDisk disk;
    {
        Database database(disk);
        REQUIRE(database.run(kTable) == SQLITE_OK);
        REQUIRE(database.run("PRAGMA synchronous=OFF") == SQLITE_OK);
        REQUIRE(database.run(insertion(1)) == SQLITE_OK);
        disk.cutPower(WriteModel::AllLost);
        CHECK(database.run(insertion(2)) != SQLITE_OK);
    }
    disk.restart();
    CHECK(countNotes(disk) == 0);
}

TEST_CASE("an operation that fails once is told as an error and harms nothing that was committed") {
    FaultDisk sound(3);
    REQUIRE(writeNotes(sound) == 10);
    for (const Fault fault : {Fault::IoError, Fault::Full, Fault::CannotOpen}) {
        for (std::uint64_t at = 1; at <= sound.operations(); at += 3) {
            FaultDisk disk(at);
            disk.plan({.at = at, .fault = fault});
            const int acknowledged = writeNotes(disk);
            CAPTURE(at);
            CAPTURE(disk.log());
            CHECK(disk.failures() <= 1);
            disk.noPlan();
            const int found = countNotes(disk);
            CHECK(found >= acknowledged);
            CHECK(found <= acknowledged + 1);
        }
    }
}

TEST_CASE("a disk that fails for ever goes on failing until it is mended") {
    FaultDisk disk;
    {
        Database database(disk);
        REQUIRE(database.run(kTable) == SQLITE_OK);
        disk.plan({.at = 1, .isForEver = true, .counted = only(Operation::Sync)});
        CHECK(database.run(insertion(1)) == SQLITE_IOERR);
        CHECK(database.run(insertion(1)) == SQLITE_IOERR);
        disk.noPlan();
        CHECK(database.run(insertion(1)) == SQLITE_OK);
    }
    CHECK(countNotes(disk) == 1);
}

TEST_CASE("after a failed sync the pages may be lost though they can be read") {
    for (const bool isMarkedClean : {false, true}) {
        FaultDisk disk;
        disk.write("slip.txt", "");
        disk.setAfterFailedSync(isMarkedClean ? AfterFailedSync::MarkedClean
                                              : AfterFailedSync::StaysDirty);
        sqlite3_vfs* const vfs = sqlite3_vfs_find(disk.vfsName());
        REQUIRE(vfs != nullptr);
        std::vector<std::uint64_t> memory(static_cast<std::size_t>(vfs->szOsFile) / 8 + 1);
        auto* const file = reinterpret_cast<sqlite3_file*>(memory.data());
        REQUIRE(vfs->xOpen(vfs, "slip.txt", file, SQLITE_OPEN_READWRITE, nullptr) == SQLITE_OK);
        REQUIRE(file->pMethods->xWrite(file, "seven", 5, 0) == SQLITE_OK);
        disk.plan({.at = 1, .counted = only(Operation::Sync)});
        CHECK(file->pMethods->xSync(file, SQLITE_SYNC_NORMAL) == SQLITE_IOERR_FSYNC);
        CHECK(file->pMethods->xSync(file, SQLITE_SYNC_NORMAL) == SQLITE_OK);
        CHECK(disk.read("slip.txt") == "seven");
        disk.cutPower(WriteModel::AllLost);
        file->pMethods->xClose(file);
        disk.restart();
        CHECK(disk.read("slip.txt") == (isMarkedClean ? "" : "seven"));
    }
}

TEST_CASE("a flipped bit in the WAL takes notes away, and SQLite says that all is well") {
    FaultDisk disk;
    FileSet copy;
    {
        Database database(disk);
        REQUIRE(database.run(kTable) == SQLITE_OK);
        for (int seq = 1; seq <= 20; ++seq) {
            REQUIRE(database.run(insertion(seq)) == SQLITE_OK);
        }
        copy = disk.snapshot();
    }
    FaultDisk other;
    other.restore(copy);
    const std::uint64_t size = other.size("vines.db-wal");
    REQUIRE(size > 20 * 4096);
    REQUIRE(other.flipBit("vines.db-wal", size / 2, 3));
    const int found = countNotes(other); // asks for the integrity as well
    CHECK(found > 0);
    CHECK(found < 20);
    CHECK(countNotes(disk) == 20);
    CHECK_FALSE(other.flipBit("vines.db-wal", 1U << 30U, 0));
    CHECK_FALSE(other.flipBit("nothing.db", 0, 0));
}

TEST_CASE("a full disk refuses the note, keeps the others, and takes it once there is room") {
    FaultDisk disk;
    Database database(disk);
    REQUIRE(database.run(kTable) == SQLITE_OK);
    int stored = 0;
    std::uint64_t used = 0;
    for (const std::string& path : disk.paths()) {
        used += disk.size(path);
    }
    disk.setCapacity(used + 40000);
    while (database.run(insertion(stored + 1)) == SQLITE_OK) {
        ++stored;
        REQUIRE(stored < 1000);
    }
    CHECK(stored > 3);
    CHECK(database.run(insertion(stored + 1)) == SQLITE_FULL);
    CHECK(database.ask("SELECT count(*) FROM note") == std::to_string(stored));
    disk.setUnlimited();
    CHECK(database.run(insertion(stored + 1)) == SQLITE_OK);
    CHECK(database.ask("PRAGMA integrity_check") == "ok");
}

TEST_CASE("an old backup is put back and a tablet is copied, and later writes keep apart") {
    FaultDisk disk;
    REQUIRE(writeNotes(disk) == 10);
    const FileSet backup = disk.snapshot();
    {
        Database database(disk);
        REQUIRE(database.run(insertion(11)) == SQLITE_OK);
    }
    FaultDisk twin;
    twin.restore(backup);
    CHECK(countNotes(twin) == 10);
    CHECK(countNotes(disk) == 11);
    disk.restore(backup);
    CHECK(countNotes(disk) == 10);
}

TEST_CASE("a new file or a deletion that the folder was not synced for can be lost") {
    FaultDisk disk;
    disk.write("kept.txt", "a");
    sqlite3_vfs* const vfs = sqlite3_vfs_find(disk.vfsName());
    std::vector<std::uint64_t> memory(static_cast<std::size_t>(vfs->szOsFile) / 8 + 1);
    auto* const file = reinterpret_cast<sqlite3_file*>(memory.data());
    REQUIRE(vfs->xOpen(vfs, "new.txt", file, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr) ==
            SQLITE_OK);
    REQUIRE(vfs->xDelete(vfs, "kept.txt", 0) == SQLITE_OK);
    CHECK(disk.paths() == std::vector<std::string>{"new.txt"});
    file->pMethods->xClose(file);
    disk.restart();
    CHECK(disk.paths() == std::vector<std::string>{"kept.txt"});
    REQUIRE(vfs->xDelete(vfs, "kept.txt", 1) == SQLITE_OK);
    disk.restart();
    CHECK(disk.paths().empty());
    CHECK(vfs->xDelete(vfs, "kept.txt", 1) == SQLITE_IOERR_DELETE_NOENT);
}

TEST_CASE("the same seed and the same calls fail in the same way") {
    std::string logs[2];
    for (std::string& log : logs) {
        FaultDisk disk(99);
        disk.plan({.at = 60, .fault = Fault::PowerLoss, .model = WriteModel::Torn});
        writeNotes(disk);
        disk.restart();
        countNotes(disk);
        log = disk.log();
    }
    CHECK(logs[0] == logs[1]);
    CHECK(logs[0].find("failed: ") != std::string::npos);
}

TEST_CASE("the disk is quick enough for thousands of openings") {
    // No time is asserted, it is shown: an opened, written and closed database in microseconds.
    FaultDisk disk;
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < 500; ++i) {
        Database database(disk);
        REQUIRE(database.run(kTable) == SQLITE_OK);
        REQUIRE(database.run(insertion(i + 1)) == SQLITE_OK);
    }
    const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - start;
    MESSAGE("microseconds for opening, one note and closing: ", took.count() / 500);
    CHECK(countNotes(disk) == 500);
}

} // namespace bullace::test
