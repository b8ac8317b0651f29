#include "sync/net/door.hpp"

#include <doctest/doctest.h>

using namespace bullace::sync;
using net::Door;

TEST_CASE("a full station takes in nobody more, and again when somebody has left") {
    Door door;
    for (std::size_t i = 0; i < kConnections; ++i) {
        CHECK(door.enter("10.0.0." + std::to_string(i % 7), 0));
    }
    CHECK_FALSE(door.enter("10.0.1.1", 0));
    door.leave("10.0.0.3");
    CHECK(door.enter("10.0.1.1", 0));
    CHECK(door.connections() == kConnections);
}

TEST_CASE("a fifth handshake from one address waits, another address does not") {
    Door door;
    for (std::size_t i = 0; i < kUnknownPerAddress; ++i) {
        REQUIRE(door.enter("10.0.0.1", 0));
        CHECK(door.mayBegin("10.0.0.1"));
        door.begin("10.0.0.1");
    }
    CHECK_FALSE(door.mayBegin("10.0.0.1"));
    CHECK(door.mayBegin("10.0.0.2"));
    door.end("10.0.0.1", false, 0);
    CHECK(door.mayBegin("10.0.0.1"));
}

TEST_CASE("an address with ten refused keys in a minute is not let in for the next") {
    Door door;
    const auto fail = [&door](Millis now) {
        REQUIRE(door.enter("10.0.0.1", now));
        door.begin("10.0.0.1");
        door.end("10.0.0.1", true, now);
        door.leave("10.0.0.1");
    };
    for (std::size_t i = 0; i < kFailuresPerMinute; ++i) {
        fail(100'000 + static_cast<Millis>(i));
    }
    CHECK_FALSE(door.enter("10.0.0.1", 101'000));
    CHECK(door.enter("10.0.0.2", 101'000));
    CHECK(door.enter("10.0.0.1", 100'009 + kSilenceMs));
}

TEST_CASE("refused keys that are spread over hours silence nobody") {
    Door door;
    for (Millis now = 100'000; now < 100'000 + 40 * 3'600'000; now += 3'600'000) {
        REQUIRE(door.enter("10.0.0.1", now));
        door.begin("10.0.0.1");
        door.end("10.0.0.1", true, now);
        door.leave("10.0.0.1");
    }
}

TEST_CASE("the log gets one line a minute for an address") {
    Door door;
    CHECK(door.isNews("10.0.0.1", 0));
    CHECK_FALSE(door.isNews("10.0.0.1", 59'999));
    CHECK(door.isNews("10.0.0.2", 1'000));
    CHECK(door.isNews("10.0.0.1", 60'000));
}
