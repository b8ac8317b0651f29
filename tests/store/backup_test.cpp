// Backups: checked copies or none, whatever the disks do; and what a flipped bit in the WAL leaves.
#include "store/photos.hpp"
#include "support/journals.hpp"
#include "support/temp_folder.hpp"

#include <doctest/doctest.h>

#include <csignal>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using store::Database;
using store::Role;

namespace {

// A station with a conflict, a group and a waiting line.
struct Kept {
    Journal station{Role::Station, 9};
    Journal tablet{Role::Field, 1};

    Kept() {
        tablet.write(
            {act(kSubject, integerValue(5)), act("obs/B2-07-15/2026-05-12/yield", integerValue(1))},
            store::Grouping::OneAct);
        station.write(act("obs/B2-07-15/2026-05-12/yield", integerValue(2)));
        station.takeAllOf(tablet);
        station.import(R"({"origin":"t0000000000000002.1","seq":2,"count":2,"author":"mk",)"
                       R"("kind":"observe","subject":"obs/B2-07-14/2026-05-12/rot","value":1})"
                       "\n");
    }
};

std::size_t filesIn(const TempFolder& folder) {
    std::size_t count = 0;
    for (const auto& file : std::filesystem::directory_iterator(folder.path())) {
        count += file.is_regular_file() ? 1U : 0U;
    }
    return count;
}

std::string exportOf(Database& database) {
    std::ostringstream out;
    REQUIRE(database.exportLines(out, {}).ok());
    return out.str();
}

// Runs `part` in a process whose files can grow to `bytes` and no further; its status.
template<typename Part>
int withRoomFor(std::size_t bytes, Part part) {
    const pid_t child = ::fork();
    if (child == 0) {
        ::signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{bytes, bytes};
        ::_exit(::setrlimit(RLIMIT_FSIZE, &limit) == 0 ? part() : 99);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFEXITED(status));
    return WEXITSTATUS(status);
}

} // namespace

TEST_CASE("a backup is the whole journal in one file, and goes on under a new number") {
    TempFolder folder;
    Kept kept;
    const std::string target = folder.file("copy.db");
    REQUIRE(kept.station->backUp(target, {}).ok());
    CHECK(filesIn(folder) == 1);
    {
        const auto copy = Database::open(target, false, store::fileSurroundings());
        REQUIRE(copy.ok());
        CHECK(exportOf(**copy) == kept.station.exported());
        CHECK((*copy)->counts()->waiting == 1);
        CHECK((*copy)->counts()->open == 1);
        CHECK((*copy)->verify({})->faults.empty());
    }
    const auto restored = Database::open(target, true, store::fileSurroundings());
    REQUIRE(restored.ok());
    CHECK((*restored)->about().tookNewEpoch);
    CHECK((*restored)->about().own.epoch == 2);
    CHECK((*restored)->about().history != kept.station->about().history);
    CHECK(exportOf(**restored) == kept.station.exported());
}

TEST_CASE(
    "a backup that is copied over the journal itself is found out, though all that lies beside "
    "it is the journal's own") {
    TempFolder folder;
    const std::string path = folder.file("journal.db");
    const store::Draft note = act(kSubject, integerValue(5));
    {
        const auto made =
            Database::create(path, {Role::Field, {}, {}, 1}, store::fileSurroundings());
        REQUIRE(made.ok());
        REQUIRE((*made)->append({&note, 1}, std::nullopt).ok());
        REQUIRE((*made)->backUp(folder.file("copy.db"), {}).ok());
        REQUIRE((*made)->append({&note, 1}, std::nullopt).ok());
    }
    setBytes(path, bytesOf(folder.file("copy.db"))); // the same file to the disk, with its token
    std::filesystem::remove(path + "-wal");
    std::filesystem::remove(path + "-shm");
    const auto opened = Database::open(path, true, store::fileSurroundings());
    REQUIRE(opened.ok());
    CHECK((*opened)->about().tookNewEpoch);
    CHECK((*opened)->append({&note, 1}, std::nullopt)->front() == journal::Place{{'t', 1, 2}, 1});
}

TEST_CASE(
    "a backup never takes the place of a file that is there, and says where it cannot write") {
    TempFolder folder;
    const auto made = Database::create(
        folder.file("journal.db"), {Role::Field, {}, {}, 1}, store::fileSurroundings());
    REQUIRE(made.ok());
    const std::size_t before = filesIn(folder);
    setBytes(folder.file("notes.txt"), "something");
    for (const std::string& target : {folder.file("journal.db"), folder.file("notes.txt")}) {
        const Status there = (*made)->backUp(target, {});
        REQUIRE_FALSE(there.ok());
        CHECK(there.error().code == ErrorCode::AlreadyThere);
    }
    CHECK(bytesOf(folder.file("notes.txt")) == "something");
    const Status nowhere = (*made)->backUp(folder.file("no folder/copy.db"), {});
    REQUIRE_FALSE(nowhere.ok());
    CHECK(nowhere.error().message.find("no folder/copy.db") != std::string::npos);
    CHECK(filesIn(folder) == before + 1);
    CHECK((*made)->verify({})->faults.empty());
}

TEST_CASE("a backup that is stopped leaves no file") {
    TempFolder folder;
    Kept kept;
    // Large enough that there is something to stop: a photo of which a part has come.
    REQUIRE(store::addPhotoPiece(
                kept.station.database(), sha256("x"), 40'000'000, 0, Bytes(20'000'000, 'p'))
                .ok());
    const Status stopped = kept.station->backUp(folder.file("copy.db"),
                                                [](std::uint64_t, std::uint64_t) { return false; });
    REQUIRE_FALSE(stopped.ok());
    CHECK(stopped.error().code == ErrorCode::Cancelled);
    CHECK(filesIn(folder) == 0);
}

TEST_CASE(
    "where the journal cannot be read at any one operation there is a checked backup or none") {
    std::uint64_t failed = 0;
    for (std::uint64_t at = 1;; ++at) {
        CAPTURE(at);
        TempFolder folder;
        Kept kept;
        const std::string before = kept.station.exported();
        const std::uint64_t sofar = kept.station.disk().failures();
        kept.station.disk().plan({.at = at, .fault = Fault::IoError});
        const Status made = kept.station->backUp(folder.file("copy.db"), {});
        const bool isMet = kept.station.disk().failures() > sofar;
        kept.station.disk().noPlan();
        REQUIRE(filesIn(folder) == (made ? 1U : 0U));
        if (made) {
            const auto copy =
                Database::open(folder.file("copy.db"), false, store::fileSurroundings());
            REQUIRE(copy.ok());
            REQUIRE(exportOf(**copy) == before);
        }
        failed += made ? 0U : 1U;
        REQUIRE(kept.station.exported() == before);
        if (!isMet) {
            break;
        }
    }
    CHECK(failed > 5);
}

TEST_CASE("on a full disk there is a checked backup or none, however much room there is") {
    Kept kept;
    int made = 0;
    int refused = 0;
    for (std::size_t room = 0; room < 240 * 1024; room += 8 * 1024) {
        CAPTURE(room);
        TempFolder folder;
        const int status = withRoomFor(
            room, [&] { return kept.station->backUp(folder.file("copy.db"), {}).ok() ? 0 : 1; });
        REQUIRE((status == 0 || status == 1));
        REQUIRE(filesIn(folder) == (status == 0 ? 1U : 0U));
        if (status == 0) {
            const auto copy =
                Database::open(folder.file("copy.db"), false, store::fileSurroundings());
            REQUIRE(copy.ok());
            REQUIRE((*copy)->verify({})->faults.empty());
        }
        (status == 0 ? made : refused) += 1;
    }
    CHECK(made > 0);
    CHECK(refused > 5);
}

TEST_CASE("a bit that flips in the WAL, which SQLite passes over in silence, is noticed by the "
          "number of the last entry that somebody else remembers") {
    FaultDisk disk;
    const auto surroundings = [&disk] { return std::make_unique<DiskSurroundings>(disk); };
    journal::Vector promised;
    std::string exported;
    FileSet dead;
    {
        auto made = Database::create("journal.db", {Role::Field, {}, {}, 1}, surroundings());
        REQUIRE(made.ok());
        for (int vine = 10; vine < 30; ++vine) {
            const store::Draft note =
                act("obs/B2-07-" + std::to_string(vine) + "/2026-05-12/vigour", integerValue(5));
            REQUIRE((*made)->append({&note, 1}, std::nullopt).ok());
        }
        promised = (*made)->vector();
        exported = exportOf(**made);
        dead = disk.snapshot(); // the program dies here
    }
    const std::string wal = "journal.db-wal";
    REQUIRE(promised.size() == 1);
    int shorter = 0;
    disk.restore(dead);
    const std::uint64_t size = disk.size(wal);
    for (std::uint64_t offset = 0; offset < size; offset += 1009) {
        CAPTURE(offset);
        disk.restore(dead);
        REQUIRE(disk.flipBit(wal, offset, static_cast<unsigned>(offset % 8)));
        const auto opened = Database::open("journal.db", true, surroundings());
        if (!opened) {
            continue; // so little is left that it is no journal: told
        }
        const auto verdict = (*opened)->verify({});
        REQUIRE(verdict.ok());
        REQUIRE(verdict->faults.empty());
        const std::string left = exportOf(**opened);
        const auto isHeld = (*opened)->holds(promised[0]);
        REQUIRE(isHeld.ok());
        REQUIRE(exported.substr(0, left.size()) == left); // a beginning, never something else
        REQUIRE(*isHeld == (left == exported));           // and whoever has the vector can tell
        shorter += *isHeld ? 0 : 1;
    }
    CHECK(shorter > 20);
}
