// A journal that cannot be read or written: the one page that blocks. It says what is safe and what
// to do, and once the cause is gone, Try again goes on at the same vine with all that was shown.
#include "support/tablet_glass.hpp"
#include "support/tablet_station.hpp"

#include <doctest/doctest.h>
#include <sqlite3.h>

#include <array>
#include <cerrno>
#include <optional>
#include <string>
#include <sys/types.h>

using namespace bullace;
using namespace bullace::test;
using tablet::TabletApp;

namespace {

constexpr const char* kFirstVigour = "obs/B2-01-01/2026-05-12/vigour";
constexpr const char* kSecondVigour = "obs/B2-01-02/2026-05-12/vigour";
constexpr const char* kThirdVigour = "obs/B2-01-03/2026-05-12/vigour";

// A disk without room, for every file that SQLite writes in this program, until makeRoom().
class FullDisk {
public:
    FullDisk() {
        // The name depends on how SQLite was built; at least one of them is how it writes.
        bool isSet = false;
        for (const char* call : kWrites) {
            isSet = set(call, reinterpret_cast<sqlite3_syscall_ptr>(&takesNothing)) || isSet;
        }
        REQUIRE(isSet);
    }
    ~FullDisk() { makeRoom(); }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

    void makeRoom() {
        for (const char* call : kWrites) {
            set(call, nullptr); // the system's own again
        }
    }

private:
    static constexpr std::array<const char*, 2> kWrites{"pwrite", "pwrite64"};

    static ssize_t
    takesNothing(int /*file*/, const void* /*bytes*/, std::size_t /*count*/, off_t /*at*/) {
        errno = ENOSPC;
        return -1;
    }
    static bool set(const char* call, sqlite3_syscall_ptr function) {
        sqlite3_vfs* system = sqlite3_vfs_find(nullptr);
        REQUIRE(system != nullptr);
        return system->xSetSystemCall(system, call, function) == SQLITE_OK;
    }
};

// A tablet in the middle of a walk: 7 and 5 were noted, and the third vine is asked.
struct Tablet {
    Tablet() {
        layStation(folder.path(), clock);
        glass.emplace(folder.path(), clock);
        beginRound(glass->book(), "b-score");
        glass->reopenWalk();
        tap("7");
        tap("5");
        REQUIRE(here() == "B2-01-03");
    }
    void tap(const char* text) { glass->tapText(QString::fromLatin1(text)); }
    void switchOff() { glass.reset(); }
    void switchOn() { glass.emplace(folder.path(), clock); }

    [[nodiscard]] std::string journal() const { return folder.file("journal.db"); }
    [[nodiscard]] std::string here() { return glass->book().walk()->here().position; }
    [[nodiscard]] bool blocks() { return glass->app().page() == TabletApp::Trouble; }
    [[nodiscard]] bool says(const char* words) {
        const auto& label = glass->item("trouble");
        return label.isVisible() &&
               label.property("text").toString().contains(QLatin1String(words));
    }
    void checkNothingIsLost() {
        CHECK(glass->at(kFirstVigour) == "settled 7");
        CHECK(glass->at(kSecondVigour) == "settled 5");
    }
    void checkItGoesOn() {
        REQUIRE_FALSE(blocks());
        REQUIRE(glass->app().page() == TabletApp::Stop);
        CHECK(here() == "B2-01-03");
        checkNothingIsLost();
        CHECK(glass->at(kThirdVigour).empty());
        tap("6");
        CHECK(glass->at(kThirdVigour) == "settled 6");
        CHECK(here() == "B2-01-04");
    }

    TempFolder folder;
    FixedClock clock;
    std::optional<TabletGlass> glass;
};

// The journal's files as another disk would give them back; the write-ahead file with it.
struct Backup {
    explicit Backup(const std::string& path)
        : path_(path),
          journal_(bytesOf(path)),
          ahead_(bytesOf(path + "-wal")) {}
    void restore() const {
        setBytes(path_, journal_);
        setBytes(path_ + "-wal", ahead_);
    }
    // These bytes of the journal are not what was written there.
    void damage(std::size_t from, std::size_t count) const {
        std::string bytes = journal_;
        REQUIRE(from + count <= bytes.size());
        bytes.replace(from, count, count, '\x55');
        setBytes(path_, bytes);
        setBytes(path_ + "-wal", {});
    }

private:
    std::string path_;
    std::string journal_;
    std::string ahead_;
};

} // namespace

TEST_CASE("a damaged journal at start blocks with what is safe and what to do; once it is back, "
          "Try again goes on at the same vine") {
    Tablet ida;
    ida.switchOff();
    const Backup backup(ida.journal());
    SUBCASE("its beginning is no journal's") {
        backup.damage(0, 100);
    }
    SUBCASE("its tables are gone") {
        backup.damage(100, 60'000);
    }
    const std::string damaged = bytesOf(ida.journal());
    ida.switchOn();
    REQUIRE(ida.blocks());
    CHECK(ida.says("journal.db"));
    CHECK(ida.says("Every note that was shown as recorded is in the journal's file."));
    CHECK(ida.says("Nothing was changed."));
    CHECK(ida.says("take the tablet to the office."));
    CHECK(ida.glass->faults().join(QLatin1Char('\n')).toStdString().empty());

    ida.tap("Try again");
    CHECK(ida.blocks()); // as long as it is damaged
    CHECK(bytesOf(ida.journal()) == damaged);
    backup.restore();
    ida.tap("Try again");
    ida.checkItGoesOn();
}

TEST_CASE("a journal that another program has open blocks until that one is closed") {
    Tablet ida;
    ida.switchOff();
    auto other = field::FieldBook::open(ida.journal(), "Etc/GMT+5", ida.clock);
    REQUIRE(other.ok());
    ida.switchOn();
    REQUIRE(ida.blocks());
    CHECK(ida.says("is open for writing in another program"));
    CHECK(ida.says("Close that one"));
    CHECK(ida.says("Nothing was changed."));
    ida.glass->press(Qt::Key_Return); // Try again, on a keyboard
    CHECK(ida.blocks());

    other->reset();
    ida.glass->press(Qt::Key_Return);
    ida.checkItGoesOn();
}

TEST_CASE("a disk that is full while walking blocks; nothing that was shown is lost, and with room "
          "Try again goes on at the same vine") {
    Tablet ida;
    FullDisk disk;
    ida.tap("9");
    REQUIRE(ida.blocks());
    CHECK(ida.says("There is no room left on the disk"));
    CHECK(ida.says("make room"));
    CHECK(ida.says("What was shown as recorded is safe; the last tap is not."));
    CHECK(ida.glass->faults().join(QLatin1Char('\n')).toStdString().empty());

    ida.tap("Try again");
    CHECK_FALSE(ida.blocks()); // it can be read
    CHECK(ida.here() == "B2-01-03");
    ida.tap("9");
    CHECK(ida.blocks()); // and not be written
    CHECK(ida.glass->at(kThirdVigour).empty());

    disk.makeRoom();
    ida.tap("Try again");
    ida.checkItGoesOn();
    ida.switchOff();
    ida.switchOn();
    CHECK(ida.here() == "B2-01-04");
    ida.checkNothingIsLost();
    CHECK(ida.glass->at(kThirdVigour) == "settled 6");
}

TEST_CASE("a disk that is full at start blocks, and with room Try again goes on at the same vine") {
    Tablet ida;
    ida.switchOff();
    FullDisk disk;
    ida.switchOn();
    REQUIRE(ida.blocks());
    CHECK(ida.says("journal.db"));
    CHECK(ida.says("There is no room left on the disk"));
    CHECK(ida.says("Every note that was shown as recorded is in the journal's file."));
    disk.makeRoom();
    ida.tap("Try again");
    ida.checkItGoesOn();
}

TEST_CASE("where the disk is full an undo takes nothing back, and the value stands") {
    Tablet ida;
    FullDisk disk;
    ida.tap("Undo");
    REQUIRE(ida.blocks());
    disk.makeRoom();
    ida.tap("Try again");
    ida.checkNothingIsLost();
    ida.tap("Undo");
    CHECK(ida.glass->at(kSecondVigour).empty());
    CHECK(ida.here() == "B2-01-02");
}
