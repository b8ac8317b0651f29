#include "sync/protocol/deadlines.hpp"

#include "model_replica.hpp"
#include "talk.hpp"

#include "sync/protocol/limits.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;
using sync::Deadlines;

TEST_CASE("a client that says nothing is dropped after five seconds") {
    Deadlines deadlines(0, sync::kFirstFrameMs);
    CHECK_FALSE(deadlines.isTooSlow(4'999, false));
    CHECK(deadlines.isTooSlow(5'000, false));
}

TEST_CASE("a frame that drips in is dropped, one that comes over a slow line is not") {
    Deadlines dripping(0, sync::kIdleMs);
    dripping.onFrame(0);
    Deadlines slow = dripping;
    bool isDropped = false;
    for (sync::Millis now = 1'000; now <= 300'000; now += 1'000) {
        dripping.onBytes(now, 1, true);
        slow.onBytes(now, 2'048, true);
        isDropped = isDropped || dripping.isTooSlow(now, false);
        CHECK_FALSE(slow.isTooSlow(now, false));
    }
    CHECK(isDropped);
}

TEST_CASE("silence between frames is borne for a minute, and while our own disk works") {
    Deadlines deadlines(0, sync::kIdleMs);
    deadlines.onFrame(1'000);
    CHECK_FALSE(deadlines.isTooSlow(60'999, false));
    CHECK_FALSE(deadlines.isTooSlow(200'000, true));
    CHECK_FALSE(deadlines.isTooSlow(259'999, false));
    CHECK(deadlines.isTooSlow(260'000, false));
}

TEST_CASE("who does not take what is written for it is dropped after a minute") {
    Deadlines deadlines(0, sync::kIdleMs);
    deadlines.onFrame(0);
    deadlines.onQueued(10'000, 0);
    CHECK_FALSE(deadlines.isTooSlow(69'999, true));
    CHECK(deadlines.isTooSlow(70'000, true));
    deadlines.onWritten(70'000, 5);
    CHECK_FALSE(deadlines.isTooSlow(129'999, true));
    deadlines.onWritten(129'999, 0);
    CHECK_FALSE(deadlines.isTooSlow(900'000, true));
}

TEST_CASE("a session that is too slow ends with a plain word") {
    ModelReplica device;
    ModelReplica station;
    Talk talk(device, station, setupOf('t', 5));
    talk.client.take(talk.client.session->start(talk.now));
    talk.client.answerOne(talk.now);
    talk.client.take(talk.client.session->onSent(talk.client.outbox.size(), talk.now));
    talk.client.take(talk.client.session->onTick(talk.now + sync::kIdleMs));
    REQUIRE(talk.client.closed);
    CHECK(talk.client.closed->error().code == ErrorCode::Network);
}

TEST_CASE("while too much waits to be written, nothing more is read") {
    ModelReplica device;
    ModelReplica station;
    device.write(origin('t', 5), 9'000);
    Talk talk(device, station, setupOf('t', 5));
    // Nothing that the client says gets through: it stops at its window.
    talk.client.take(talk.client.session->start(talk.now));
    talk.client.answerOne(talk.now);
    const Bytes hello = std::exchange(talk.client.outbox, {});
    talk.station.take(talk.station.session->onBytes(hello, talk.now));
    talk.station.answerOne(talk.now);
    talk.client.take(talk.client.session->onBytes(talk.station.outbox, talk.now));
    while (talk.client.answerOne(talk.now)) {
    }
    CHECK(talk.client.outbox.size() > 3 * sync::kBatchBytes / 2);
    CHECK(talk.client.outbox.size() <= (sync::kWindow + 1) * sync::kBatchBytes);
}

TEST_CASE("fifty tablets at once, and the fourteen that may come besides, fit into 256 MiB") {
    CHECK(sync::kServerBytes < std::size_t{256} * 1024 * 1024);
    CHECK(sync::kServerBytes >= sync::kConnections * sync::kSessionBytes);
    CHECK(sync::kSessionBytes >=
          sync::kFrameBytes + sync::kOutboundBytes + 2 * sync::kStoresAtOnce * sync::kBatchBytes);
}
