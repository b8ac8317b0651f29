// The journal on a disk that fails at every single operation of a whole session, one after the
// other.
#include "core/journal/entry_line.hpp"
#include "core/journal/json_value.hpp"
#include "store/database.hpp"
#include "support/disk_surroundings.hpp"

#include <doctest/doctest.h>

#include <functional>
#include <memory>
#include <sstream>
#include <vector>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using store::Database;
using store::Draft;

namespace {

constexpr const char* kPath = "journal.db";
constexpr std::uint64_t kMostInFlight = 10; // entries of the greatest transaction below

Draft observation(int vine, int value) {
    return {"mk",
            journal::Kind::Observe,
            "obs/B2-07-" + std::to_string(vine) + "/2026-05-12/vigour",
            integerValue(value),
            {},
            {},
            {}};
}

// `count` entries of another device from `first` on; `flavour` makes another branch of them.
journal::Run runOf(std::uint64_t device, std::size_t count, int flavour, std::size_t same = 0) {
    journal::Run run{{'t', device, 1}, 1, {}, {}};
    for (std::size_t i = 0; i < count; ++i) {
        const int value = i < same ? 1 : flavour;
        const journal::Entry entry{run.origin,
                                   i + 1,
                                   i + 1,
                                   {},
                                   "jr",
                                   "observe",
                                   "obs/B2-07-" + std::to_string(10 + i) + "/2026-05-12/vigour",
                                   integerValue(value),
                                   {},
                                   {},
                                   {},
                                   {},
                                   {}};
        run.entries.push_back(entry.encode());
        run.lastDigest = journal::chainDigest(run.lastDigest, run.entries.back());
    }
    return run;
}

std::string linesOf(std::uint64_t device, std::size_t first, std::size_t last) {
    std::string lines;
    Digest digest;
    for (std::size_t i = 1; i <= last; ++i) {
        const journal::Entry entry{{'t', device, 1},
                                   i,
                                   i,
                                   {},
                                   "an",
                                   "observe",
                                   "obs/B3-01-" + std::to_string(10 + i) + "/2026-05-12/rot",
                                   integerValue(2),
                                   {},
                                   {},
                                   {},
                                   {},
                                   {}};
        const Bytes bytes = entry.encode();
        digest = journal::chainDigest(digest, bytes);
        if (i >= first) {
            journal::appendEntryLine(lines, *journal::readEntry(bytes), digest);
        }
    }
    return lines;
}

// A session from making the journal to writing in it after it was opened again. What a step that
// succeeded has left counts as promised.
class Session {
public:
    explicit Session(FaultDisk& disk) : disk_(disk) {}

    // Goes on after a failure where `goesOn`, as a program whose disk failed once; else ends there,
    // as one that died.
    void run(bool goesOn) {
        const std::function<Status()> steps[] = {
            [this] { return create(); },
            [this] { return write({observation(14, 5)}); },
            [this] { return write({observation(15, 6)}); },
            [this] {
                return write({observation(16, 1), observation(17, 2), observation(18, 3)});
            },
            [this] { return merge({runOf(0xAA, 5, 3)}); },
            [this] { return merge({runOf(0xBB, 6, 4, 3)}); },
            [this] {
                return merge({runOf(0xBB, 8, 7, 3), runOf(0xAA, 10, 3)});
            }, // a fork, and more of the first
            [this] { return import(linesOf(0xCC, 4, 6)); },
            [this] { return import(linesOf(0xCC, 1, 3)); },
            [this] { return database_->takeNewEpoch(0); },
            [this] { return write({observation(19, 7)}); },
            [this] { return reopen(); },
            [this] { return write({observation(20, 8)}); },
        };
        for (const auto& step : steps) {
            if (database_ == nullptr && isCreated_ && goesOn) {
                if (!reopen()) {
                    continue;
                }
            }
            if (database_ == nullptr && isCreated_) {
                return;
            }
            if (step()) {
                promise();
            } else if (!goesOn || !isCreated_) {
                return;
            }
        }
        isWhole_ = true;
    }

    void close() { database_.reset(); }
    [[nodiscard]] bool isCreated() const { return isCreated_; }
    [[nodiscard]] bool isWhole() const { return isWhole_; }
    [[nodiscard]] const journal::Vector& promised() const { return promised_; }
    [[nodiscard]] std::uint64_t promisedEntries() const { return entries_; }

private:
    std::unique_ptr<DiskSurroundings> surroundings() {
        return std::make_unique<DiskSurroundings>(disk_);
    }

    Status create() {
        auto made = Database::create(kPath, {store::Role::Field, {}, {}, 0x11}, surroundings());
        if (!made) {
            return made.error();
        }
        database_ = std::move(*made);
        isCreated_ = true;
        return {};
    }
    Status reopen() {
        database_.reset();
        auto opened = Database::open(kPath, true, surroundings());
        if (!opened) {
            return opened.error();
        }
        database_ = std::move(*opened);
        return {};
    }
    Status write(const std::vector<Draft>& acts) {
        const auto written =
            database_->append(acts, journal::Wall{1'780'000'000'000, 0}, store::Grouping::OneAct);
        return written ? Status{} : Status{written.error()};
    }
    Status merge(const journal::Batch& batch) {
        const auto reports = database_->merge(batch, {.isStation = true});
        return reports ? Status{} : Status{reports.error()};
    }
    Status import(const std::string& lines) {
        std::istringstream in(lines);
        const auto report = database_->importLines(in, "lines", {});
        return report ? Status{} : Status{report.error()};
    }
    void promise() {
        promised_ = database_->vector();
        entries_ = 0;
        const Status read =
            database_->eachEntry([this](const Digest&, BytesView) { return ++entries_ > 0; });
        static_cast<void>(read); // where it fails, the next step's own reading fails too
    }

    FaultDisk& disk_;
    std::unique_ptr<Database> database_;
    journal::Vector promised_;
    std::uint64_t entries_ = 0;
    bool isCreated_ = false;
    bool isWhole_ = false;
};

std::uint64_t countEntries(Database& database) {
    std::uint64_t count = 0;
    REQUIRE(database.eachEntry([&count](const Digest&, BytesView) { return ++count > 0; }).ok());
    return count;
}

void checkSound(Database& database, const Session& session) {
    for (const journal::BranchEnd& end : session.promised()) {
        const auto held = database.holds(end);
        REQUIRE(held.ok());
        REQUIRE_MESSAGE(
            *held, "an acknowledged entry is missing: " << end.origin.text() << " " << end.seq);
    }
    const auto verdict = database.verify({});
    REQUIRE_MESSAGE(verdict.ok(), (verdict ? "" : verdict.error().message));
    REQUIRE_MESSAGE(verdict->faults.empty(), (verdict->faults.empty() ? "" : verdict->faults[0]));
    REQUIRE(countEntries(database) >= session.promisedEntries());
}

// What the next start of the program finds.
void checkAfter(FaultDisk& disk, const Session& session) {
    auto opened = Database::open(kPath, true, std::make_unique<DiskSurroundings>(disk));
    if (!session.isCreated() && !opened) {
        return; // it was never said to be there
    }
    REQUIRE_MESSAGE(opened.ok(),
                    (opened ? "" : opened.error().message + " " + opened.error().detail));
    Database& database = **opened;
    checkSound(database, session);
    REQUIRE(countEntries(database) <= session.promisedEntries() + kMostInFlight);
    const Draft draft = observation(30, 9);
    const auto written = database.append({&draft, 1}, std::nullopt);
    REQUIRE_MESSAGE(written.ok(), (written ? "" : written.error().message));
    std::uint64_t seq = 0;
    for (const journal::BranchEnd& end : database.vector()) {
        seq = end.origin == (*written)[0].origin ? end.seq : seq;
    }
    REQUIRE((*written)[0].seq == seq);
    checkSound(database, session);
}

// Runs the session with the fault at operation 1, 2, 3 … until it comes through without meeting it.
std::uint64_t sweep(FaultPlan plan, bool goesOn, std::uint64_t step = 1) {
    for (plan.at = 1;; plan.at += step) {
        FaultDisk disk(plan.at);
        CAPTURE(plan.at);
        disk.plan(plan);
        Session session(disk);
        session.run(goesOn);
        const bool isMet = disk.failures() > 0;
        session.close();
        if (disk.isPowerOff()) {
            disk.restart();
        } else {
            disk.noPlan();
        }
        checkAfter(disk, session);
        if (!isMet) {
            REQUIRE(session.isWhole());
            return plan.at - 1;
        }
    }
}

} // namespace

TEST_CASE("after a power loss at any operation of a session nothing acknowledged is missing, "
          "whatever the disk kept") {
    for (const WriteModel model :
         {WriteModel::AllLost, WriteModel::Torn, WriteModel::Reordered, WriteModel::AllKept}) {
        const std::uint64_t operations =
            sweep({.fault = Fault::PowerLoss, .model = model, .counted = kChanging}, false);
        MESSAGE("power lost at each of " << operations << " operations");
        CHECK(operations > 100);
    }
}

TEST_CASE("a disk that fails once at any operation loses nothing acknowledged, and the next writes "
          "go through") {
    for (const Fault fault : {Fault::IoError, Fault::Full}) {
        const std::uint64_t operations = sweep({.fault = fault, .counted = kChanging}, true);
        MESSAGE("failed once at each of " << operations << " operations");
        CHECK(operations > 100);
    }
    CHECK(sweep({.fault = Fault::IoError,
                 .counted = only(Operation::Read) | only(Operation::Lock) | only(Operation::Size)},
                true) > 10);
}

TEST_CASE("a disk that fails for ever from any operation on has what was acknowledged before, once "
          "it is mended") {
    for (const Fault fault : {Fault::IoError, Fault::Full, Fault::CannotOpen}) {
        CHECK(sweep({.fault = fault, .isForEver = true, .counted = kChanging}, false) > 100);
    }
}

TEST_CASE("a sync that fails once and cleans its pages all the same is told as a failure, and "
          "leaves no hole") {
    for (std::uint64_t at = 1;; ++at) {
        FaultDisk disk(at);
        CAPTURE(at);
        disk.setAfterFailedSync(AfterFailedSync::MarkedClean);
        disk.plan({.at = at, .fault = Fault::IoError, .counted = only(Operation::Sync)});
        Session session(disk);
        session.run(true);
        const bool isMet = disk.failures() > 0;
        session.close();
        disk.noPlan();
        checkAfter(disk, session);
        if (!isMet) {
            break;
        }
    }
}

TEST_CASE("a full disk refuses whole steps, keeps what is there, and takes the next ones once "
          "there is room") {
    for (std::uint64_t capacity = 20'000; capacity < 600'000; capacity += 9'000) {
        FaultDisk disk(capacity);
        CAPTURE(capacity);
        disk.setCapacity(capacity);
        Session session(disk);
        session.run(true);
        session.close();
        disk.setUnlimited();
        checkAfter(disk, session);
    }
}

TEST_CASE("an old copy put back, with or without its token, is written on under another number or "
          "found out by the chain") {
    FaultDisk disk;
    Session session(disk);
    session.run(false);
    REQUIRE(session.isWhole());
    session.close();
    const FileSet old = disk.snapshot();
    const std::string token = disk.read(std::string(kPath) + "-token");
    {
        auto opened = Database::open(kPath, true, std::make_unique<DiskSurroundings>(disk));
        REQUIRE(opened.ok());
        CHECK_FALSE((*opened)->about().tookNewEpoch);
        const Draft draft = observation(40, 1);
        REQUIRE((*opened)->append({&draft, 1}, std::nullopt).ok());
    }
    const std::string newToken = disk.read(std::string(kPath) + "-token");
    CHECK(newToken != token);
    disk.restore(old);
    disk.write(std::string(kPath) + "-token", newToken);
    auto opened = Database::open(kPath, true, std::make_unique<DiskSurroundings>(disk));
    REQUIRE(opened.ok());
    CHECK((*opened)->about().tookNewEpoch);
    opened->reset();
    auto cloned = Database::open(kPath, true, std::make_unique<DiskSurroundings>(disk, "2"));
    REQUIRE(cloned.ok());
    CHECK((*cloned)->about().tookNewEpoch);
}

TEST_CASE("a bit that flips in any page of the file is seen: the file is refused, or verify names "
          "what does not agree") {
    FaultDisk disk;
    Session session(disk);
    session.run(false);
    session.close();
    const std::string wal = std::string(kPath) + "-wal";
    { // with everything in the file itself, as after a checkpoint
        auto opened = Database::open(kPath, true, std::make_unique<DiskSurroundings>(disk));
        REQUIRE(opened.ok());
    }
    disk.remove(wal);
    const FileSet sound = disk.snapshot();
    std::uint64_t seen = 0;
    std::uint64_t flipped = 0;
    const std::uint64_t size = disk.size(kPath);
    for (std::uint64_t offset = 101; offset < size; offset += 397) {
        disk.restore(sound);
        REQUIRE(disk.flipBit(kPath, offset, static_cast<unsigned>(offset % 8)));
        ++flipped;
        const auto opened = Database::open(kPath, false, std::make_unique<DiskSurroundings>(disk));
        const auto verdict =
            opened ? (*opened)->verify({}) : Result<store::Verdict>(opened.error());
        const bool isSame = verdict && verdict->faults.empty() &&
                            (*opened)->vector() == session.promised() &&
                            countEntries(**opened) == session.promisedEntries();
        seen += verdict && verdict->faults.empty() ? 0U : 1U;
        // What verify does not see may only be room that holds nothing: every entry is there as it
        // was.
        const bool isTold = !verdict || !verdict->faults.empty();
        CHECK((isTold || isSame));
    }
    MESSAGE(seen << " of " << flipped << " flipped bits lay where something stands, and were seen");
    CHECK(seen > 10);
}
