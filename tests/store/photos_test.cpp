// Photos in pieces, and the devices and the station that a journal knows.
#include "store/photos.hpp"

#include "core/journal/json_value.hpp"
#include "store/peers.hpp"
#include "support/journals.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace bullace;
using namespace bullace::test;
using journal::textValue;
using store::Role;

namespace {

const std::string kPhoto = "obs/B2-07-14/2026-05-12/photo";
const Digest kNone{};

Bytes picture(std::size_t size, char with = 'p') {
    Bytes bytes(size, with);
    for (std::size_t i = 0; i < size; i += 7) {
        bytes[i] = static_cast<char>(i % 251);
    }
    return bytes;
}

} // namespace

TEST_CASE("a photo that a note names is lacking until all its pieces are here") {
    Journal station(Role::Station, 9);
    const Bytes bytes = picture(10'000);
    const Digest digest = sha256(bytes);
    station.write(act(kPhoto, textValue(digest.hex())));
    auto lacking = store::lackingPhotos(station.database(), kNone, 10);
    REQUIRE(lacking.ok());
    REQUIRE(lacking->size() == 1);
    CHECK((*lacking)[0].digest == digest);
    CHECK((*lacking)[0].held == 0);
    for (std::size_t at = 0; at < bytes.size(); at += 4000) {
        CHECK(store::photoPart(station.database(), digest, 0, 1)->total == 0);
        REQUIRE(store::addPhotoPiece(
                    station.database(), digest, bytes.size(), at, bytes.substr(at, 4000))
                    .ok());
        station.reopen(); // a sync broken off here goes on from here
        lacking = store::lackingPhotos(station.database(), kNone, 10);
        REQUIRE(lacking.ok());
        if (at < 8000) {
            REQUIRE(lacking->size() == 1);
            CHECK((*lacking)[0].held == at + 4000);
        }
    }
    CHECK(lacking->empty());
    const auto part = store::photoPart(station.database(), digest, 3999, 4002);
    REQUIRE(part.ok());
    CHECK(part->total == bytes.size());
    CHECK(part->bytes == bytes.substr(3999, 4002));
    CHECK(store::photoPart(station.database(), digest, 9'999, 100)->bytes == bytes.substr(9'999));
    CHECK(store::photoPart(station.database(), digest, 10'000, 100)->bytes.empty());
}

TEST_CASE("a piece out of order, empty, beyond the whole or of another size is refused") {
    Journal station(Role::Station, 9);
    const Bytes bytes = picture(1000);
    const Digest digest = sha256(bytes);
    const auto add = [&](std::uint64_t total, std::uint64_t offset, BytesView piece) {
        return store::addPhotoPiece(station.database(), digest, total, offset, piece).ok();
    };
    CHECK_FALSE(add(1000, 1, "x"));
    CHECK_FALSE(add(1000, 0, ""));
    CHECK_FALSE(add(1000, 0, Bytes(1001, 'x')));
    CHECK_FALSE(add(0, 0, "x"));
    CHECK_FALSE(add(store::kGreatestPhoto + 1, 0, "x"));
    CHECK(add(1000, 0, bytes.substr(0, 500)));
    CHECK_FALSE(add(1001, 500, "x"));
    CHECK_FALSE(add(1000, 0, bytes.substr(0, 500)));
    CHECK_FALSE(add(1000, 500, bytes.substr(0, 501)));
    CHECK(add(1000, 500, bytes.substr(500)));
    CHECK_FALSE(add(1000, 1000, "x"));
}

TEST_CASE("pieces that make another picture are thrown away, and asked for from the beginning") {
    Journal station(Role::Station, 9);
    const Bytes bytes = picture(1000);
    const Digest digest = sha256(bytes);
    station.write(act(kPhoto, textValue(digest.hex())));
    Bytes wrong = bytes;
    wrong[700] = '!';
    REQUIRE(store::addPhotoPiece(station.database(), digest, 1000, 0, wrong.substr(0, 600)).ok());
    const Status last =
        store::addPhotoPiece(station.database(), digest, 1000, 600, wrong.substr(600));
    REQUIRE_FALSE(last.ok());
    CHECK(last.error().code == ErrorCode::Damaged);
    const auto lacking = store::lackingPhotos(station.database(), kNone, 10);
    REQUIRE(lacking.ok());
    REQUIRE(lacking->size() == 1);
    CHECK((*lacking)[0].held == 0);
    CHECK(store::addPhotoPiece(station.database(), digest, 1000, 0, bytes).ok());
    station.checkSound();
}

TEST_CASE("lacking photos are listed by digest, a stretch at a time, and only what a photo's note "
          "names") {
    Journal station(Role::Station, 9);
    std::vector<Digest> all;
    for (int i = 10; i < 30; ++i) {
        const Digest digest = sha256(std::to_string(i));
        all.push_back(digest);
        station.write(
            act("obs/B2-07-" + std::to_string(i) + "/2026-05-12/photo", textValue(digest.hex())));
    }
    station.write(act("obs/B2-07-14/2026-05-12/note", textValue(sha256("x").hex())));
    station.write(act("obs/B2-07-14/2026-05-13/photo", textValue("no digest")));
    std::sort(all.begin(), all.end());
    std::vector<Digest> listed;
    Digest after;
    while (true) {
        const auto some = store::lackingPhotos(station.database(), after, 6);
        REQUIRE(some.ok());
        if (some->empty()) {
            break;
        }
        for (const store::LackingPhoto& photo : *some) {
            listed.push_back(photo.digest);
        }
        after = listed.back();
    }
    CHECK(listed == all);
}

TEST_CASE("a revoked device stays listed, and its digits can be paired with another key") {
    Journal station(Role::Station, 9);
    store::Database& database = station.database();
    const store::DeviceRow first{"aa", 't', 1, "row tablet", 1000, {}, {}, {}};
    REQUIRE(store::addDevice(database, first).ok());
    store::DeviceRow twin = first;
    twin.keyHash = "bb";
    const Status refused = store::addDevice(database, twin);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().code == ErrorCode::AlreadyThere);

    REQUIRE(store::noteDeviceSync(database, "aa", 2000, -86'400'000).ok());
    const auto revoked = store::revokeDevice(database, "row tablet", 3000);
    REQUIRE(revoked.ok());
    CHECK(revoked->revokedAtMs == 3000);
    CHECK(store::revokeDevice(database, "t0000000000000001", 4000)->revokedAtMs == 3000);
    REQUIRE(store::addDevice(database, twin).ok());
    station.reopen();
    const auto all = store::devices(station.database());
    REQUIRE(all.ok());
    REQUIRE(all->size() == 2);
    CHECK((*all)[0].keyHash == "aa");
    CHECK((*all)[0].letter == 't');
    CHECK((*all)[0].device == 1);
    CHECK((*all)[0].revokedAtMs == 3000);
    CHECK((*all)[0].lastSyncMs == 2000);
    CHECK((*all)[0].clockAheadMs == -86'400'000);
    CHECK_FALSE((*all)[1].revokedAtMs);
}

TEST_CASE("a device is named by its digits or by its name, if only one has it") {
    Journal station(Role::Station, 9);
    store::Database& database = station.database();
    REQUIRE(store::addDevice(database, {"aa", 't', 1, "tablet", 1000, {}, {}, {}}).ok());
    REQUIRE(store::addDevice(database, {"bb", 't', 2, "tablet", 1001, {}, {}, {}}).ok());
    const auto unclear = store::revokeDevice(database, "tablet", 3000);
    REQUIRE_FALSE(unclear.ok());
    CHECK(unclear.error().code == ErrorCode::InvalidInput);
    const auto unknown = store::revokeDevice(database, "t0000000000000003", 3000);
    REQUIRE_FALSE(unknown.ok());
    CHECK(unknown.error().code == ErrorCode::NotFound);
    CHECK(store::revokeDevice(database, "t0000000000000002", 3000)->keyHash == "bb");
    CHECK(store::revokeDevice(database, "tablet", 4000)->keyHash == "aa");
}

TEST_CASE("a device knows one station, the one it was paired with last") {
    Journal tablet(Role::Field, 1);
    CHECK_FALSE(store::station(tablet.database())->has_value());
    REQUIRE(store::setStation(tablet.database(), {"aa", "First", "127.0.0.1:1", {}, {}}).ok());
    REQUIRE(
        store::setStation(tablet.database(), {"bb", "Second", "127.0.0.1:2", Bytes(16, 'h'), 5000})
            .ok());
    tablet.reopen();
    const auto known = store::station(tablet.database());
    REQUIRE(known.ok());
    REQUIRE(known->has_value());
    CHECK((*known)->keyHash == "bb");
    CHECK((*known)->name == "Second");
    CHECK((*known)->address == "127.0.0.1:2");
    CHECK((*known)->history == Bytes(16, 'h'));
    CHECK((*known)->lastSyncMs == 5000);
}
