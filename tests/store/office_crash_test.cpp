// The office's work on a disk that fails at every operation: rulings, the rulebook, pairing,
// revocation, photos, what waits apart. Each step is whole or not there, and what was told as done
// stays done.
#include "store/peers.hpp"
#include "store/photos.hpp"
#include "support/journals.hpp"

#include <doctest/doctest.h>

#include <functional>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using journal::Place;
using journal::textValue;
using store::Database;
using store::Draft;
using store::Role;

namespace {

constexpr const char* kPath = "journal.db";
const std::string kVine = kSubject;
const Bytes kPicture(6000, 'p');

// What tablets and an older life of the station send, made once.
struct Sent {
    journal::Run tablet;
    journal::Run office;

    Sent() {
        Journal field(Role::Field, 1);
        Journal station(Role::Station, 9);
        field.write(act(kVine, integerValue(2)));
        field.write({act("obs/B2-07-15/2026-05-12/yield", integerValue(1)),
                     act("obs/B2-07-16/2026-05-12/yield", integerValue(2)),
                     act("obs/B2-07-16/2026-05-12/photo", textValue(sha256(kPicture).hex()))},
                    store::Grouping::OneAct);
        station.write({act("accession/W-17/title", textValue("x")),
                       act("obs/B2-07-16/2026-05-12/yield", integerValue(7))});
        tablet = runOf(field, {'t', 1, 1});
        office = runOf(station, {'s', 9, 1});
    }
    static journal::Run runOf(Journal& from, const journal::Origin& origin) {
        const auto run = from->readRun(from->segments(origin)[0], 1, 100, 1'000'000);
        REQUIRE(run.ok());
        return *run;
    }
};

// What was told as done: none of it may be less after the next start.
struct Promise {
    journal::Vector ends;
    std::uint64_t entries = 0;
    std::uint32_t epoch = 0;
    std::uint64_t photoBytes = 0;
    std::size_t devices = 0;
    bool isRevoked = false;
    std::string stationName = "Invented"; // as the journal is made
    bool hasApart = false;
};

std::uint64_t photoBytesIn(Database& database) {
    const auto whole = store::photoPart(database, sha256(kPicture), 0, kPicture.size());
    if (whole && whole->total > 0) {
        return whole->bytes == kPicture ? kPicture.size() : 0;
    }
    const auto lacking = store::lackingPhotos(database, Digest{}, 10);
    return lacking && !lacking->empty() ? (*lacking)[0].held : 0;
}

Promise promiseOf(Database& database) {
    Promise promise;
    promise.ends = database.vector();
    const auto counts = database.counts();
    promise.entries = counts ? counts->entries : 0;
    promise.hasApart = counts && counts->apart > 0;
    promise.epoch = database.about().own.epoch;
    promise.stationName = database.about().station;
    promise.photoBytes = photoBytesIn(database);
    const auto devices = store::devices(database);
    promise.devices = devices ? devices->size() : 0;
    promise.isRevoked = devices && !devices->empty() && (*devices)[0].revokedAtMs.has_value();
    return promise;
}

class Session {
public:
    Session(FaultDisk& disk, const Sent& sent) : disk_(disk), sent_(sent) {}

    // Ends at the first failure, or goes on with the next step where `goesOn`.
    void run(bool goesOn) {
        for (const auto& step : steps()) {
            if (database_ == nullptr && isCreated_) {
                return;
            }
            if (step()) {
                promise_ = promiseOf(*database_);
            } else if (!goesOn || !isCreated_) {
                return;
            }
        }
        isWhole_ = true;
    }
    void close() { database_.reset(); }
    [[nodiscard]] bool isCreated() const { return isCreated_; }
    [[nodiscard]] bool isWhole() const { return isWhole_; }
    [[nodiscard]] const Promise& promise() const { return promise_; }

private:
    std::vector<std::function<Status()>> steps() {
        const store::Source tablet{.letter = 't', .device = 1};
        const store::Source relay{.letter = 't', .device = 1, .isRelay = true};
        return {
            [this] { return create(); },
            [this] {
                return store::addDevice(*database_, {"aa", 't', 1, "first", 1, {}, {}, {}});
            },
            [this, tablet] { return statusOf(database_->merge({sent_.tablet}, tablet)); },
            [this] { return store::noteDeviceSync(*database_, "aa", 2, 60'000); },
            [this] { return write(act(kVine, integerValue(9))); },
            [this] { return rule(); },
            [this] {
                return write(act("rulebook/1", record({{"rule", textValue("mean")}})));
            },
            [this] { return piece(0, 2500); },
            [this] { return piece(2500, 3500); },
            [this] { return database_->takeNewEpoch(3); },
            [this] { return database_->takeNewHistory(); },
            [this, relay] { return statusOf(database_->merge({sent_.office}, relay)); },
            [this] { return statusOf(database_->takeInApart(1)); },
            [this] { return takeBack(); },
            [this] { return statusOf(store::revokeDevice(*database_, "first", 5)); },
            [this] {
                return store::setStation(*database_, {"bb", "Other", "", {}, {}});
            },
            [this] { return database_->adopt('s', "Invented Hill", "UTC"); },
            [this] { return database_->rebuild({}); },
            [this] { return write(act(kVine, integerValue(4))); },
        };
    }

    template<typename T>
    static Status statusOf(const Result<T>& result) {
        return result ? Status{} : Status{result.error()};
    }
    Status create() {
        auto made = Database::create(kPath,
                                     {Role::Station, "Invented", "UTC", 9},
                                     std::make_unique<DiskSurroundings>(disk_));
        if (!made) {
            return made.error();
        }
        database_ = std::move(*made);
        isCreated_ = true;
        return {};
    }
    Status write(const Draft& draft) {
        return statusOf(database_->append({&draft, 1}, std::nullopt));
    }
    Status rule() {
        const auto row = database_->state(kVine);
        if (!row || !*row) {
            return row ? Error{ErrorCode::NotFound, "No heads.", {}} : row.error();
        }
        return write(ruling(kVine, integerValue(9), (*row)->heads));
    }
    Status takeBack() { return write(undo(kVine, {Place{{'s', 9, 1}, 2}})); }
    Status piece(std::uint64_t offset, std::size_t length) {
        return store::addPhotoPiece(*database_,
                                    sha256(kPicture),
                                    kPicture.size(),
                                    offset,
                                    kPicture.substr(static_cast<std::size_t>(offset), length));
    }

    FaultDisk& disk_;
    const Sent& sent_;
    std::unique_ptr<Database> database_;
    Promise promise_;
    bool isCreated_ = false;
    bool isWhole_ = false;
};

void checkKept(Database& database, const Promise& promise) {
    const Promise found = promiseOf(database);
    for (const journal::BranchEnd& end : promise.ends) {
        const auto held = database.holds(end);
        REQUIRE((held.ok() && *held));
    }
    REQUIRE(found.entries >= promise.entries);
    REQUIRE(found.epoch >= promise.epoch);
    REQUIRE(found.photoBytes >= promise.photoBytes);
    REQUIRE(found.devices >= promise.devices);
    REQUIRE((found.isRevoked || !promise.isRevoked));
    REQUIRE((found.stationName == promise.stationName || found.stationName == "Invented Hill"));
    // What lay apart is still there, or was taken in.
    REQUIRE((!promise.hasApart || found.hasApart || found.entries > promise.entries));
    const auto verdict = database.verify({});
    REQUIRE(verdict.ok());
    REQUIRE_MESSAGE(verdict->faults.empty(), (verdict->faults.empty() ? "" : verdict->faults[0]));
}

void checkAfter(FaultDisk& disk, const Session& session) {
    auto opened = Database::open(kPath, true, std::make_unique<DiskSurroundings>(disk));
    if (!session.isCreated() && !opened) {
        return; // it was never said to be there
    }
    REQUIRE_MESSAGE(opened.ok(), (opened ? "" : opened.error().message));
    checkKept(**opened, session.promise());
    const Draft draft = act("obs/B2-07-30/2026-05-12/vigour", integerValue(9));
    REQUIRE((*opened)->append({&draft, 1}, std::nullopt).ok());
    checkKept(**opened, session.promise());
}

// The fault at operation 1, 2, 3 … until a session comes through without meeting it.
std::uint64_t sweep(FaultPlan plan, bool goesOn) {
    const Sent sent;
    for (plan.at = 1;; ++plan.at) {
        FaultDisk disk(plan.at);
        CAPTURE(plan.at);
        disk.plan(plan);
        Session session(disk, sent);
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
            REQUIRE(session.promise().photoBytes == kPicture.size());
            REQUIRE(session.promise().isRevoked);
            REQUIRE(session.promise().epoch == 4);
            return plan.at - 1;
        }
    }
}

} // namespace

TEST_CASE(
    "after a power loss at any operation of the office's work, what was told as done is done") {
    for (const WriteModel model : {WriteModel::AllLost, WriteModel::Torn, WriteModel::Reordered}) {
        const std::uint64_t operations =
            sweep({.fault = Fault::PowerLoss, .model = model, .counted = kChanging}, false);
        MESSAGE("power lost at each of " << operations << " operations");
        CHECK(operations > 100);
    }
}

TEST_CASE("a disk that fails once anywhere in the office's work leaves whole steps, and the next "
          "ones go through") {
    for (const Fault fault : {Fault::IoError, Fault::Full}) {
        CHECK(sweep({.fault = fault, .counted = kChanging}, true) > 100);
    }
}

TEST_CASE("a disk that fails for ever is told at every step, and nothing is shown as done") {
    CHECK(sweep({.fault = Fault::IoError, .isForEver = true}, true) > 100);
    for (const Fault fault : {Fault::Full, Fault::CannotOpen}) {
        CHECK(sweep({.fault = fault, .isForEver = true, .counted = kChanging}, true) > 100);
    }
}
