// Whole programs over TLS on the loopback, killed at random moments.
#include "process/programs.hpp"

#include <doctest/doctest.h>

#include <chrono>
#include <csignal>
#include <memory>
#include <random>
#include <thread>

using namespace bullace::test;

namespace {

constexpr int kDevices = 3;

struct Orchard {
    Folder folder;
    std::string station = folder.file("station.db");
    std::vector<LineMaker> makers;
    std::unique_ptr<Server> server;

    [[nodiscard]] std::string journal(int device) const {
        return folder.file("tablet-" + std::to_string(device) + ".db");
    }

    void note(int device, std::size_t count) {
        const Ran ran = console({"import", journal(device), "-"},
                                makers[static_cast<std::size_t>(device)].next(count));
        REQUIRE_MESSAGE(ran.status == 0, ran.err);
    }

    Orchard() {
        REQUIRE(console({"create", station, "--station", "Invented", "--zone", "UTC"}).status == 0);
        server = std::make_unique<Server>(station);
        for (int device = 0; device < kDevices; ++device) {
            makers.emplace_back(static_cast<std::uint64_t>(device + 1));
            REQUIRE(
                console({"create", journal(device), "--field", "--device", makers.back().device()})
                    .status == 0);
            note(device, 500);
            const Ran paired = console({"pair",
                                        journal(device),
                                        "--at",
                                        server->address(),
                                        "--code",
                                        server->code(station),
                                        "--name",
                                        "tablet " + std::to_string(device)});
            REQUIRE_MESSAGE(paired.status == 0, paired.err);
        }
    }
};

std::vector<std::unique_ptr<Process>> startSyncs(const Orchard& orchard) {
    std::vector<std::unique_ptr<Process>> syncs;
    for (int device = 0; device < kDevices; ++device) {
        syncs.push_back(std::make_unique<Process>(
            std::vector<std::string>{std::string(BULLACE_BIN) + "/bullace",
                                     "sync",
                                     orchard.journal(device),
                                     "--at",
                                     orchard.server->address()}));
    }
    return syncs;
}

} // namespace

TEST_CASE("a server and three devices that are killed fifty times at random moments hold the same "
          "in the end") {
    Orchard orchard;
    const std::uint16_t port = orchard.server->port();
    const unsigned seed = 20260512;
    MESSAGE("seed " << seed);
    std::mt19937 dice(seed);
    for (int kill = 0; kill < 50; ++kill) {
        for (int device = 0; device < kDevices; ++device) {
            orchard.note(device, 40 + dice() % 200);
        }
        auto syncs = startSyncs(orchard);
        std::this_thread::sleep_for(std::chrono::microseconds(dice() % 60'000));
        const unsigned victim = dice() % (kDevices + 1);
        if (victim == kDevices) {
            orchard.server->killAtOnce();
        } else {
            syncs[victim]->signal(SIGKILL);
        }
        for (auto& sync : syncs) {
            sync->wait();
        }
        if (victim == kDevices) {
            orchard.server = std::make_unique<Server>(orchard.station, port);
        }
    }
    for (int round = 0; round < 2; ++round) {
        for (int device = 0; device < kDevices; ++device) {
            const Ran synced = console({"sync", orchard.journal(device)});
            REQUIRE_MESSAGE(synced.status == 0, synced.err);
        }
    }
    const Ran stopped = orchard.server->stop();
    CHECK(stopped.status == 0);
    const Ran exported = console({"export", orchard.station});
    REQUIRE(exported.status == 0);
    CHECK(exported.out.size() > 1'000'000);
    CHECK(console({"verify", orchard.station}).status == 0);
    for (int device = 0; device < kDevices; ++device) {
        CHECK(console({"verify", orchard.journal(device)}).status == 0);
        CHECK(console({"export", orchard.journal(device)}).out == exported.out);
    }
}

TEST_CASE("a server that is told to stop while devices sync finishes what is in hand within ten "
          "seconds") {
    Orchard orchard;
    for (int device = 0; device < kDevices; ++device) {
        orchard.note(device, 5000);
    }
    auto syncs = startSyncs(orchard);
    std::this_thread::sleep_for(std::chrono::milliseconds(30));
    const auto start = std::chrono::steady_clock::now();
    const Ran stopped = orchard.server->stop();
    const auto took = std::chrono::steady_clock::now() - start;
    CHECK(stopped.status == 0);
    CHECK(stopped.out.find("Stopped.") != std::string::npos);
    CHECK(took < std::chrono::seconds(10));
    for (auto& sync : syncs) {
        sync->wait();
    }
    CHECK(console({"verify", orchard.station}).status == 0);
    orchard.server = std::make_unique<Server>(orchard.station);
    for (int device = 0; device < kDevices; ++device) {
        CHECK(
            console({"sync", orchard.journal(device), "--at", orchard.server->address()}).status ==
            0);
    }
    const Ran counted = console({"verify", orchard.station, "--json"});
    CHECK(counted.out.find("\"entries\":16500") != std::string::npos);
}
