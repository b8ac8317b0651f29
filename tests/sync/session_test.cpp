#include "sync/protocol/session.hpp"

#include "model_replica.hpp"
#include "talk.hpp"

#include "sync/protocol/limits.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;

namespace {

constexpr std::uint64_t kFirst = 0x00c5a91be2f0417d;
constexpr std::uint64_t kSecond = 0x1122334455667788;

void syncWhole(ModelReplica& device, ModelReplica& station, const Talk::Setup& setup) {
    Talk talk(device, station, setup);
    talk.run();
    REQUIRE(talk.isComplete());
}

} // namespace

TEST_CASE("a tablet's first sync brings all of its entries to an empty station") {
    ModelReplica tablet;
    ModelReplica station;
    tablet.write(origin('t', kFirst), 12'345);
    Talk talk(tablet, station, setupOf('t', kFirst));
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(station.entries() == tablet.entries());
    CHECK(talk.summary().sentEntries == 12'345);
    CHECK(talk.summary().newThere == 12'345);
    CHECK(talk.stationSummary().newHere == 12'345);
    CHECK_FALSE(talk.summary().needsNewEpoch);
}

TEST_CASE("a tablet learns what the station has from others") {
    ModelReplica tablet;
    ModelReplica station;
    station.write(origin('t', kSecond), 5000);
    station.write(origin('s', kSecond + 1), 7);
    Talk talk(tablet, station, setupOf('t', kFirst));
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(tablet.entries() == station.entries());
    CHECK(talk.summary().newHere == 5007);
}

TEST_CASE("nothing new costs one exchange of little more than the vector") {
    ModelReplica tablet;
    ModelReplica station;
    for (std::uint64_t i = 0; i < 30; ++i) {
        station.write(origin('t', kSecond + i), 40);
    }
    station.write(origin('t', kFirst), 3);
    syncWhole(tablet, station, setupOf('t', kFirst));
    Talk talk(tablet, station, setupOf('t', kFirst));
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(talk.bytesMoved() < 4096);
    CHECK(talk.summary().bytesReceived < 64); // one EQUAL
    CHECK(talk.summary().receivedEntries == 0);
    CHECK(talk.summary().stationHistory == *station.history());
}

TEST_CASE("a sync cut after any number of bytes loses nothing, and the next goes on from there") {
    ModelReplica whole;
    whole.write(origin('t', kFirst), 30);
    ModelReplica wholeStation;
    wholeStation.write(origin('t', kSecond), 20);
    Talk reference(whole, wholeStation, setupOf('t', kFirst));
    reference.run();
    REQUIRE(reference.isComplete());
    for (std::size_t cut = 0; cut <= reference.bytesMoved(); cut += 7) {
        ModelReplica tablet;
        ModelReplica station;
        tablet.write(origin('t', kFirst), 30);
        station.write(origin('t', kSecond), 20);
        Talk::Setup setup = setupOf('t', kFirst);
        setup.pieceBytes = 13;
        setup.cutAfterBytes = cut;
        Talk broken(tablet, station, setup);
        broken.run();
        // What was acknowledged is there.
        CHECK(broken.summary().sentEntries <= station.count(origin('t', kFirst)));
        syncWhole(tablet, station, setupOf('t', kFirst));
        CHECK(station.entries() == tablet.entries());
        CHECK(station.entries() == wholeStation.entries());
    }
}

TEST_CASE("a long sync that breaks again and again still goes forward") {
    ModelReplica tablet;
    ModelReplica station;
    tablet.write(origin('t', kFirst), 20'000);
    std::size_t moved = 0;
    for (int round = 0; round < 20 && station.count() < 20'000; ++round) {
        const std::size_t before = station.count();
        Talk::Setup setup = setupOf('t', kFirst);
        setup.cutAfterBytes = 600'000;
        Talk broken(tablet, station, setup);
        broken.run();
        CHECK(station.count() > before);
        moved += broken.bytesMoved();
    }
    CHECK(station.entries() == tablet.entries());
    CHECK(moved < 20'000 * 140 * 3 / 2);
}

TEST_CASE("a restored tablet gets its lost entries back and is told to take a new epoch") {
    ModelReplica tablet;
    ModelReplica station;
    tablet.write(origin('t', kFirst), 10);
    tablet.write(origin('t', kFirst), 5);
    syncWhole(tablet, station, setupOf('t', kFirst));
    ModelReplica restored;
    restored.write(origin('t', kFirst), 10); // the same bytes as the first ten
    Talk talk(restored, station, setupOf('t', kFirst));
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(talk.summary().needsNewEpoch);
    CHECK(talk.summary().greatestEpoch == 1);
    CHECK(restored.entries() == station.entries());
}

TEST_CASE("where a restored tablet wrote on, both branches end up on both sides") {
    ModelReplica tablet;
    ModelReplica station;
    tablet.write(origin('t', kFirst), 3000);
    syncWhole(tablet, station, setupOf('t', kFirst));
    ModelReplica restored;
    restored.write(origin('t', kFirst), 2500);
    restored.write(origin('t', kFirst), 800, "rj");
    Talk talk(restored, station, setupOf('t', kFirst));
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(talk.summary().needsNewEpoch);
    REQUIRE(talk.summary().forked.size() == 1);
    CHECK(station.count() == 3800);
    CHECK(restored.entries() == station.entries());
    SUBCASE("and a third device learns both") {
        ModelReplica other;
        syncWhole(other, station, setupOf('t', kSecond));
        CHECK(other.entries() == station.entries());
    }
    SUBCASE("and the tablet that had only the first branch gets the second") {
        Talk again(tablet, station, setupOf('t', kFirst));
        again.run();
        REQUIRE(again.isComplete());
        CHECK(again.summary().needsNewEpoch);
        CHECK(tablet.entries() == station.entries());
    }
}

TEST_CASE("what another device wrote goes up only when the station's database was restored") {
    ModelReplica tablet;
    ModelReplica station(1);
    tablet.write(origin('t', kFirst), 4);
    station.write(origin('t', kSecond), 50);
    station.write(origin('s', kSecond + 1), 6);
    syncWhole(tablet, station, setupOf('t', kFirst));
    const sync::HistoryId known = *station.history();
    ModelReplica restored(2);
    Talk::Setup setup = setupOf('t', kFirst);
    SUBCASE("a station that this tablet never met gets the tablet's own entries") {
        Talk talk(tablet, restored, setup);
        talk.run();
        REQUIRE(talk.isComplete());
        CHECK(restored.count() == 4);
        CHECK_FALSE(talk.summary().wasRelayed);
    }
    SUBCASE("the restored one gets all, and the office's entries wait apart") {
        setup.client.knownHistory = known;
        Talk talk(tablet, restored, setup);
        talk.run();
        REQUIRE(talk.isComplete());
        CHECK(talk.summary().wasRelayed);
        CHECK(restored.count(origin('t', kFirst)) == 4);
        CHECK(restored.count(origin('t', kSecond)) == 50);
        CHECK(restored.count(origin('s', kSecond + 1)) == 0);
        REQUIRE(talk.summary().apartThere.size() == 1);
        CHECK(talk.summary().apartThere[0] == origin('s', kSecond + 1));
    }
}

TEST_CASE("a tablet whose relay could not be read whole does not remember the station's history") {
    ModelReplica tablet;
    ModelReplica station(1);
    tablet.write(origin('t', kFirst), 4);
    station.write(origin('t', kSecond), 50);
    syncWhole(tablet, station, setupOf('t', kFirst));
    ModelReplica restored(2);
    Talk::Setup setup = setupOf('t', kFirst);
    setup.client.knownHistory = *station.history();
    tablet.damage(origin('t', kSecond));
    Talk talk(tablet, restored, setup);
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(talk.summary().wasRelayed);
    CHECK(restored.count(origin('t', kSecond)) == 0);
    CHECK_FALSE(talk.summary().mayRememberHistory());
}

namespace {

// A station that was put back to an older copy of itself without a sign of it.
class UnnoticedCopy : public ModelReplica {
public:
    explicit UnnoticedCopy(const journal::Origin& own) : ModelReplica(1), own_(own) {}
    Result<sync::HistoryId> history() override {
        return isNoticed_ ? sync::HistoryId{2} : sync::HistoryId{1};
    }
    Status onUnknownEnds(const journal::Vector& ends) override {
        for (const journal::BranchEnd& end : ends) {
            isNoticed_ = isNoticed_ || end.origin == own_;
        }
        return {};
    }

private:
    journal::Origin own_;
    bool isNoticed_ = false;
};

} // namespace

TEST_CASE("a station that learns from a tablet that it is an older copy has itself refilled at "
          "once") {
    ModelReplica tablet;
    tablet.write(origin('t', kFirst), 4);
    tablet.write(origin('t', kSecond), 50);
    const journal::Origin own = origin('s', kSecond + 1);
    Talk::Setup setup = setupOf('t', kFirst);
    setup.client.knownHistory = sync::HistoryId{1};
    UnnoticedCopy station(own);
    SUBCASE("the tablet knows no more of the station's own journal, so nothing is noticed") {
        Talk talk(tablet, station, setup);
        talk.run();
        REQUIRE(talk.isComplete());
        CHECK_FALSE(talk.summary().wasRelayed);
        CHECK(station.count(origin('t', kSecond)) == 0);
    }
    SUBCASE("the tablet remembers what the station wrote and has not") {
        tablet.write(own, 6);
        Talk talk(tablet, station, setup);
        talk.run();
        REQUIRE(talk.isComplete());
        CHECK(talk.summary().wasRelayed);
        CHECK(talk.summary().stationHistory == sync::HistoryId{2});
        CHECK(station.count(origin('t', kSecond)) == 50);
        CHECK(talk.summary().apartThere.size() == 1);
    }
}

TEST_CASE("an office device may also push what it wrote as a field device") {
    ModelReplica office;
    ModelReplica station;
    office.write(origin('t', kFirst), 4);
    office.write(origin('s', kFirst, 2), 9);
    Talk talk(office, station, setupOf('s', kFirst, 2));
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(station.count() == 13);
}

TEST_CASE("an origin that cannot be read ends for this sync, and the others go through") {
    ModelReplica tablet;
    ModelReplica station;
    tablet.write(origin('t', kFirst), 40);
    station.write(origin('t', kSecond), 30);
    station.write(origin('t', kSecond + 1), 20);
    station.damage(origin('t', kSecond));
    Talk talk(tablet, station, setupOf('t', kFirst));
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(station.count(origin('t', kFirst)) == 40);
    CHECK(tablet.count(origin('t', kSecond + 1)) == 20);
    CHECK(tablet.count(origin('t', kSecond)) == 0);
    CHECK(talk.stationSummary().damaged.size() == 1);
}

TEST_CASE("a full disk at the station ends the sync with its reason, and nothing is acknowledged") {
    ModelReplica tablet;
    ModelReplica station;
    tablet.write(origin('t', kFirst), 40);
    station.failNextStore(
        Error{ErrorCode::DiskFull, "There is no room on the station's disk.", {}});
    Talk talk(tablet, station, setupOf('t', kFirst));
    talk.run();
    REQUIRE(talk.client.closed);
    REQUIRE_FALSE(talk.client.closed->ok());
    CHECK(talk.client.closed->error().code == ErrorCode::DiskFull);
    CHECK(talk.summary().sentEntries == 0);
    syncWhole(tablet, station, setupOf('t', kFirst));
    CHECK(station.entries() == tablet.entries());
}

TEST_CASE("a station that is being stopped stores and acknowledges what it has in hand first") {
    ModelReplica tablet;
    ModelReplica station;
    tablet.write(origin('t', kFirst), 10);
    Talk talk(tablet, station, setupOf('t', kFirst));
    // By hand until the station has been asked to store.
    talk.client.take(talk.client.session->start(talk.now));
    for (int i = 0; i < 20; ++i) {
        const bool isStoring = !talk.station.asks.empty() && std::holds_alternative<sync::StoreAsk>(
                                                                 talk.station.asks.front().body);
        if (isStoring) {
            break;
        }
        talk.client.answerOne(talk.now);
        talk.station.take(
            talk.station.session->onBytes(std::exchange(talk.client.outbox, {}), talk.now));
        talk.station.answerOne(talk.now);
        talk.client.take(
            talk.client.session->onBytes(std::exchange(talk.station.outbox, {}), talk.now));
        talk.client.answerOne(talk.now);
        talk.station.take(
            talk.station.session->onBytes(std::exchange(talk.client.outbox, {}), talk.now));
    }
    REQUIRE_FALSE(talk.station.asks.empty());
    talk.station.take(talk.station.session->onStop(sync::Reason::Closing, talk.now));
    CHECK_FALSE(talk.station.closed);
    while (talk.station.answerOne(talk.now)) {
    }
    REQUIRE(talk.station.closed);
    talk.client.take(
        talk.client.session->onBytes(std::exchange(talk.station.outbox, {}), talk.now));
    REQUIRE(talk.client.closed);
    CHECK(talk.client.closed->error().code == ErrorCode::Cancelled);
    CHECK(talk.summary().sentEntries == 10);
    CHECK(station.count() == 10);
}

TEST_CASE("a device that says it is another one is turned away") {
    ModelReplica tablet;
    ModelReplica station;
    tablet.write(origin('t', kFirst), 10);
    Talk::Setup setup = setupOf('t', kFirst);
    setup.station.device = kSecond;
    Talk talk(tablet, station, setup);
    talk.run();
    REQUIRE(talk.client.closed);
    CHECK(talk.client.closed->error().code == ErrorCode::Refused);
    CHECK(station.count() == 0);
}

TEST_CASE("photos follow the entries in pieces, and a broken transfer goes on where it stopped") {
    ModelReplica tablet;
    ModelReplica station;
    const Bytes picture(300'000, '\x42');
    const Digest name = sha256(picture);
    tablet.addPhoto(picture);
    station.lackPhoto(name);
    station.lackPhoto(sha256("nobody has this one"));
    Talk::Setup setup = setupOf('t', kFirst);
    setup.cutAfterBytes = 200'000;
    Talk broken(tablet, station, setup);
    broken.run();
    CHECK_FALSE(station.hasPhoto(name));
    Talk talk(tablet, station, setupOf('t', kFirst));
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(station.hasPhoto(name));
    CHECK(talk.summary().photosSent == 1);
    CHECK(talk.stationSummary().photosReceived == 1);
    CHECK(talk.bytesMoved() < 250'000);
}
