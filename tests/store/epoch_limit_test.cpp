// Numbers of a device's lives that somebody drove to their limit.
#include "support/journals.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using journal::kGreatestEpoch;
using journal::Origin;
using store::Role;

namespace {

// An entry under the last number that a device can have.
journal::Run lastLifeOf(Origin origin) {
    origin.epoch = kGreatestEpoch;
    journal::Entry entry;
    entry.origin = origin;
    entry.seq = 1;
    entry.count = 3;
    entry.author = "zz";
    entry.kind = "remark";
    entry.subject = kSubject;
    entry.value = integerValue(1);
    const Bytes bytes = entry.encode();
    return {origin, 1, {bytes}, journal::chainDigest({}, bytes)};
}

} // namespace

TEST_CASE("a station that is told of the last number there is goes on under one that it can read") {
    Journal station(Role::Station, 9);
    station.write(act(kSubject, integerValue(5)));
    REQUIRE(station->takeNewEpoch(kGreatestEpoch).ok());
    CHECK(station->about().own == Origin{'s', 9, 2});
    station.reopen();
    CHECK(station->about().own == Origin{'s', 9, 2});
    station.write(act(kSubject, integerValue(6)));
    station.checkSound();
}

TEST_CASE("a tablet whose last number came to it on a stick can still be restored and written to") {
    Journal tablet(Role::Field, 1);
    tablet.write(act(kSubject, integerValue(5)));
    REQUIRE(tablet->merge({lastLifeOf(tablet->about().own)}, {.isStation = true}).ok());
    for (const std::uint32_t epoch : {2U, 3U}) {
        tablet.reopen(std::to_string(epoch)); // the bytes at another place: a copy
        CHECK(tablet->about().own == Origin{'t', 1, epoch});
        tablet.write(act(kSubject, integerValue(epoch)));
    }
    tablet.checkSound();
}

TEST_CASE("a number that is held already is passed over where none is left above") {
    Journal tablet(Role::Field, 1);
    Journal twin(Role::Field, 1);
    REQUIRE(twin->takeNewEpoch(1).ok());
    twin.write(act(kSubject, integerValue(7)));
    tablet.takeAllOf(twin); // under number 2
    REQUIRE(tablet->merge({lastLifeOf(tablet->about().own)}, {.isStation = true}).ok());
    REQUIRE(tablet->takeNewEpoch(0).ok());
    CHECK(tablet->about().own == Origin{'t', 1, 3});
}
