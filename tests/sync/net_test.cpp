#include "model_host.hpp"

#include "sync/net/client.hpp"
#include "sync/net/server.hpp"
#include "sync/protocol/pairing.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sys/stat.h>
#include <thread>
#include <unistd.h>

using namespace bullace;
using namespace bullace::test;
using namespace bullace::sync::net;

namespace {

constexpr std::uint64_t kFirst = 0x00c5a91be2f0417d;
constexpr std::uint64_t kSecond = 0x1122334455667788;

struct Station {
    ModelHost host;
    Identity identity = *makeIdentity();
    std::unique_ptr<Server> server;

    void start() {
        ServerOptions options;
        options.address = "127.0.0.1";
        options.port = 0;
        options.identity = identity;
        options.stationName = "Invented Station";
        auto started = Server::start(options, host);
        REQUIRE(started.ok());
        server = std::move(*started);
    }
    Station() { start(); }
};

struct Tablet {
    ModelReplica model;
    Identity identity = *makeIdentity();
    std::uint64_t device = kFirst;
    Cancel cancel;

    [[nodiscard]] SyncOptions options(const Station& station) const {
        SyncOptions options;
        options.place = {"127.0.0.1", station.server->port()};
        options.identity = identity;
        options.stationKey = station.identity.keyHash;
        options.device = device;
        options.current = origin('t', device);
        return options;
    }
    SyncOutcome syncWith(const Station& station) {
        return syncOnce(options(station), model, {}, cancel);
    }
    void introduce(Station& station) const {
        station.host.add(identity.keyHash, {'t', device, "tablet", false});
    }
    Result<sync::Paired> pairWith(const Station& station, const Bytes& secret) const {
        PairOptions options;
        options.place = {"127.0.0.1", station.server->port()};
        options.identity = identity;
        options.secret = secret;
        options.device = device;
        options.name = "tablet of the north rows";
        return sync::net::pair(options, cancel);
    }
};

// What a command prints, both outputs together.
std::string outputOf(const std::string& command) {
    std::string output;
    FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::array<char, 4096> buffer{};
    for (std::size_t size = 1; size > 0;) {
        size = std::fread(buffer.data(), 1, buffer.size(), pipe);
        output.append(buffer.data(), size);
    }
    ::pclose(pipe);
    return output;
}

struct Folder {
    std::filesystem::path path;
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "bullace-XXXXXX").string();
        REQUIRE(::mkdtemp(name.data()) != nullptr);
        path = name;
    }
    ~Folder() { std::filesystem::remove_all(path); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
};

} // namespace

TEST_CASE("a paired tablet syncs over the network, and a second sync has nothing to do") {
    Station station;
    Tablet tablet;
    tablet.introduce(station);
    tablet.model.write(origin('t', kFirst), 7000);
    station.host.model.write(origin('t', kSecond), 4000);
    const SyncOutcome first = tablet.syncWith(station);
    REQUIRE_MESSAGE(first.status.ok(), first.status.error().message << first.status.error().detail);
    CHECK(first.summary.isComplete);
    CHECK(first.summary.sentEntries == 7000);
    CHECK(first.summary.newHere == 4000);
    const SyncOutcome second = tablet.syncWith(station);
    REQUIRE(second.status.ok());
    CHECK(second.summary.bytesReceived < 64);
    station.server->stop();
    CHECK(station.host.model.entries() == tablet.model.entries());
    CHECK(station.host.sessionsOver() == 2);
}

TEST_CASE("a device that nobody paired gets nothing") {
    Station station;
    station.host.model.write(origin('t', kSecond), 10);
    Tablet tablet;
    tablet.model.write(origin('t', kFirst), 10);
    const SyncOutcome outcome = tablet.syncWith(station);
    REQUIRE_FALSE(outcome.status.ok());
    CHECK(outcome.status.error().code == ErrorCode::Refused);
    CHECK(outcome.status.error().message.find("Pair") != std::string::npos);
    CHECK(tablet.model.count() == 10);
    station.server->stop();
    CHECK(station.host.model.count() == 10);
    CHECK(station.host.turnedAway() == 1);
}

TEST_CASE("an armed station lets an unpaired device pair, and still not sync") {
    Station station;
    REQUIRE(station.server->arm('t').ok());
    Tablet tablet;
    CHECK(tablet.syncWith(station).status.error().code == ErrorCode::Refused);
}

TEST_CASE("a revoked device is turned away at the handshake and told why") {
    Station station;
    Tablet tablet;
    tablet.introduce(station);
    tablet.model.write(origin('t', kFirst), 10);
    REQUIRE(tablet.syncWith(station).status.ok());
    station.host.revoke(tablet.identity.keyHash);
    tablet.model.write(origin('t', kFirst), 10);
    const SyncOutcome outcome = tablet.syncWith(station);
    REQUIRE_FALSE(outcome.status.ok());
    CHECK(outcome.status.error().code == ErrorCode::Refused);
    CHECK(outcome.status.error().message.find("took this device off") != std::string::npos);
    station.server->stop();
    CHECK(station.host.model.count() == 10); // what it sent before counts
}

TEST_CASE("another key at the station's address is a hard stop before anything is sent") {
    Station station;
    Tablet tablet;
    tablet.introduce(station);
    tablet.model.write(origin('t', kFirst), 10);
    SyncOptions options = tablet.options(station);
    options.stationKey = sha256("the key it was paired with");
    const SyncOutcome outcome = syncOnce(options, tablet.model, {}, tablet.cancel);
    REQUIRE_FALSE(outcome.status.ok());
    CHECK(outcome.status.error().code == ErrorCode::WrongKey);
    CHECK(outcome.summary.bytesSent == 0);
    station.server->stop();
    CHECK(station.host.model.count() == 0);
}

TEST_CASE("nobody at the address is said plainly, and soon") {
    Tablet tablet;
    SyncOptions options;
    {
        Station station;
        options = tablet.options(station);
    }
    const SyncOutcome outcome = syncOnce(options, tablet.model, {}, tablet.cancel);
    REQUIRE_FALSE(outcome.status.ok());
    CHECK(outcome.status.error().code == ErrorCode::Network);
    CHECK(outcome.status.error().message.find("127.0.0.1") != std::string::npos);
}

TEST_CASE("a device pairs with the typed code, and syncs from then on") {
    Station station;
    Tablet tablet;
    tablet.model.write(origin('t', kFirst), 25);
    const auto armed = station.server->arm('t');
    REQUIRE(armed.ok());
    CHECK(station.server->armedFor() > 290'000);
    const auto paired = tablet.pairWith(station, *sync::readTypedCode(armed->typedCode));
    REQUIRE_MESSAGE(paired.ok(), paired.error().message << paired.error().detail);
    CHECK(paired->stationKey == station.identity.keyHash);
    CHECK(paired->stationName == "Invented Station");
    CHECK(station.server->armedFor() == 0);
    CHECK(tablet.syncWith(station).status.ok());
    // The code is used.
    Tablet other;
    other.device = kSecond;
    const auto late = other.pairWith(station, *sync::readTypedCode(armed->typedCode));
    REQUIRE_FALSE(late.ok());
    CHECK(late.error().code == ErrorCode::Refused);
    station.server->stop();
    CHECK(station.host.model.count() == 25);
}

TEST_CASE("the square on the station's screen pairs too, and names the station's key") {
    Station station;
    Tablet tablet;
    const auto armed = station.server->arm('s');
    const auto offer = sync::readQrOffer(armed->qrText);
    REQUIRE(offer);
    CHECK(offer->stationKey == station.identity.keyHash);
    PairOptions options;
    options.place = {"127.0.0.1", station.server->port()};
    options.identity = tablet.identity;
    options.stationKey = offer->stationKey;
    options.kind = sync::SecretKind::Qr;
    options.secret = offer->secret;
    options.device = kFirst;
    const auto paired = sync::net::pair(options, tablet.cancel);
    REQUIRE(paired.ok());
    CHECK(paired->letter == 's');
}

TEST_CASE("three wrong codes over the network end the code") {
    Station station;
    Tablet tablet;
    const auto armed = station.server->arm('t');
    for (int i = 0; i < 3; ++i) {
        const auto wrong = tablet.pairWith(station, Bytes(10, '\x01'));
        REQUIRE_FALSE(wrong.ok());
        CHECK(wrong.error().code == ErrorCode::Refused);
    }
    CHECK(station.server->armedFor() == 0);
    CHECK_FALSE(tablet.pairWith(station, *sync::readTypedCode(armed->typedCode)).ok());
}

TEST_CASE("a client without a certificate is refused by the station's TLS") {
    if (outputOf("command -v openssl").empty()) {
        MESSAGE("the openssl command is not installed: not tried");
        return;
    }
    Station station;
    const std::string place = "127.0.0.1:" + std::to_string(station.server->port());
    const std::string client =
        "sleep 1 | timeout 5 openssl s_client -connect " + place + " -alpn bullace/1 ";
    const std::string without = outputOf(client + "-tls1_3");
    CHECK(without.find("certificate required") != std::string::npos);
    CHECK(without.find("TLSv1.3") != std::string::npos);
    const std::string older = outputOf(client + "-tls1_2");
    CHECK(older.find("TLSv1.2, Cipher is") == std::string::npos);
    CHECK(older.find("alert protocol version") != std::string::npos);
    Folder folder;
    const std::string file = (folder.path / "key.pem").string();
    REQUIRE(loadOrMakeIdentity(file).ok());
    const std::string unknown = outputOf(client + "-tls1_3 -cert " + file + " -key " + file);
    CHECK(unknown.find("bad certificate") != std::string::npos);
}

TEST_CASE("a newer sync of the same device takes the place of the older") {
    Station station;
    Tablet tablet;
    tablet.introduce(station);
    tablet.model.write(origin('t', kFirst), 30'000);
    station.host.storeTime = std::chrono::milliseconds(60);
    Tablet twin; // the same device in another process
    twin.identity = tablet.identity;
    twin.model.write(origin('t', kFirst), 30'000);
    SyncOutcome first;
    std::thread older([&] { first = tablet.syncWith(station); });
    while (station.server->connections() == 0) {
        std::this_thread::yield();
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(150));
    const SyncOutcome second = twin.syncWith(station);
    older.join();
    CHECK(second.status.ok());
    CHECK_FALSE(first.status.ok());
    CHECK(first.status.error().code == ErrorCode::Refused);
    station.server->stop();
    CHECK(station.host.model.entries() == twin.model.entries());
}

TEST_CASE(
    "a station that is stopped in the middle has what it acknowledged, and a later sync the rest") {
    Station station;
    Tablet tablet;
    tablet.introduce(station);
    tablet.model.write(origin('t', kFirst), 30'000);
    station.host.storeTime = std::chrono::milliseconds(40);
    SyncOutcome outcome;
    std::thread syncing([&] { outcome = tablet.syncWith(station); });
    while (station.server->connections() == 0) {
        std::this_thread::yield();
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(200));
    const auto before = std::chrono::steady_clock::now();
    station.server->stop();
    CHECK(std::chrono::steady_clock::now() - before < std::chrono::seconds(10));
    syncing.join();
    REQUIRE_FALSE(outcome.status.ok());
    CHECK(outcome.status.error().code == ErrorCode::Cancelled);
    CHECK(outcome.summary.sentEntries <= station.host.model.count());
    station.host.storeTime = {};
    station.start();
    CHECK(tablet.syncWith(station).status.ok());
    station.server->stop();
    CHECK(station.host.model.entries() == tablet.model.entries());
}

TEST_CASE("a person can stop a sync") {
    Station station;
    Tablet tablet;
    tablet.introduce(station);
    tablet.model.write(origin('t', kFirst), 30'000);
    station.host.storeTime = std::chrono::milliseconds(40);
    SyncOutcome outcome;
    std::thread syncing([&] { outcome = tablet.syncWith(station); });
    std::this_thread::sleep_for(std::chrono::milliseconds(150));
    tablet.cancel.cancel();
    syncing.join();
    REQUIRE_FALSE(outcome.status.ok());
    CHECK(outcome.status.error().code == ErrorCode::Cancelled);
}

TEST_CASE("twenty tablets at once all get through, each with all of its entries") {
    Station station;
    std::vector<std::unique_ptr<Tablet>> tablets;
    for (std::uint64_t i = 0; i < 20; ++i) {
        auto tablet = std::make_unique<Tablet>();
        tablet->device = kFirst + i;
        tablet->introduce(station);
        tablet->model.write(origin('t', tablet->device), 500);
        tablets.push_back(std::move(tablet));
    }
    std::vector<std::thread> threads;
    std::vector<SyncOutcome> outcomes(tablets.size());
    for (std::size_t i = 0; i < tablets.size(); ++i) {
        threads.emplace_back([&, i] { outcomes[i] = tablets[i]->syncWith(station); });
    }
    for (std::thread& thread : threads) {
        thread.join();
    }
    for (const SyncOutcome& outcome : outcomes) {
        CHECK_MESSAGE(outcome.status.ok(), outcome.status.error().detail);
    }
    station.server->stop();
    CHECK(station.host.model.count() == 20 * 500);
}

TEST_CASE("a key file is made once, for its owner alone, and never replaced") {
    Folder folder;
    const std::string file = (folder.path / "key.pem").string();
    const auto made = loadOrMakeIdentity(file);
    REQUIRE(made.ok());
    struct stat status {};
    REQUIRE(::stat(file.c_str(), &status) == 0);
    CHECK((status.st_mode & 0777U) == 0600);
    CHECK(loadOrMakeIdentity(file)->keyHash == made->keyHash);
    CHECK(loadIdentity((folder.path / "none.pem").string()).error().code == ErrorCode::NotFound);
    std::ofstream(file) << "no key";
    CHECK(loadOrMakeIdentity(file).error().code == ErrorCode::Damaged);
}

TEST_CASE("a station's place is read as people write it") {
    CHECK(readPlace("station.local")->port == sync::kDefaultPort);
    CHECK(readPlace("192.168.4.20:5000")->port == 5000);
    CHECK(readPlace("[fe80::1]:5000")->host == "fe80::1");
    for (const char* text :
         {"", ":5000", "a b", "host:0", "host:65536", "host:x", "[fe80::1", "http://x"}) {
        CHECK_FALSE(readPlace(text));
    }
}
