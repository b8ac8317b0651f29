// The names of journals.
#include "core/journal/origin.hpp"

#include "support/random_values.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <rapidcheck.h>

using namespace bullace::journal;

TEST_CASE("an origin is a letter, 16 hex digits, a point and an epoch, and reads back as written") {
    const auto origin = readOrigin("t00c5a91be2f0417d.1");
    REQUIRE(origin);
    CHECK(origin->letter == 't');
    CHECK(origin->device == 0x00c5a91be2f0417dU);
    CHECK(origin->epoch == 1);
    CHECK(origin->text() == "t00c5a91be2f0417d.1");
    CHECK(readOrigin("sffffffffffffffff.2000000000") ==
          Origin{'s', 0xFFFFFFFFFFFFFFFFU, 2'000'000'000});
    CHECK(readOrigin("z0000000000000000.7")); // a letter without rights is still an origin
    CHECK(deviceText('t', 0xAB) == "t00000000000000ab");
}

TEST_CASE("an origin that is spelt in any other way is none") {
    for (const char* text : {"",
                             "t",
                             "t00c5a91be2f0417d",
                             "t00c5a91be2f0417d.",
                             "t00c5a91be2f0417d.0",
                             "t00c5a91be2f0417d.01",
                             "t00c5a91be2f0417d.-1",
                             "t00c5a91be2f0417d.1 ",
                             "t00c5a91be2f0417d.2000000001",
                             "T00c5a91be2f0417d.1",
                             "900c5a91be2f0417d.1",
                             "t00C5A91BE2F0417D.1",
                             "t0c5a91be2f0417d.1",
                             "t000c5a91be2f0417d.1",
                             "t00c5a91be2f0417g.1",
                             "t00c5a91be2f0417d,1",
                             "t00c5a91be2f0417d.1.1"}) {
        CAPTURE(text);
        CHECK_FALSE(readOrigin(text));
    }
}

TEST_CASE("origins stand in the order of their texts as bytes") {
    CHECK(Origin{'t', 1, 10} < Origin{'t', 1, 2});
    CHECK(Origin{'s', 9, 1} < Origin{'t', 1, 1});
    CHECK(Origin{'t', 1, 9} < Origin{'t', 2, 1});
    CHECK(rc::check([](std::uint64_t seed) {
        bullace::test::Chance chance(seed);
        const Origin a{
            "ts"[chance() % 2], chance() % 3, 1 + static_cast<std::uint32_t>(chance() % 200)};
        const Origin b{
            "ts"[chance() % 2], chance() % 3, 1 + static_cast<std::uint32_t>(chance() % 200)};
        RC_ASSERT((a < b) == (a.text() < b.text()));
        RC_ASSERT((a == b) == (a.text() == b.text()));
        RC_ASSERT(readOrigin(a.text()) == a);
    }));
}
