// What a sync costs, over TLS on the loopback, against plain SQLite in the same run.
#include "bench/benches.hpp"
#include "bench/floor.hpp"
#include "bench/measure.hpp"
#include "bench/relay.hpp"
#include "bench/served.hpp"
#include "bench/walk.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <fstream>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace bullace::bench {

namespace {

constexpr std::size_t kBatch = 2000;

void fill(store::Database& journal, const Walk& walk) {
    for (std::size_t at = 0; at < walk.entries.size(); at += 10'000) {
        const auto reports = journal.merge({walk.run(at, 10'000)}, {.isStation = true});
        must(reports && (*reports)[0].outcome == journal::RunOutcome::Taken, "filling a journal");
    }
}

void freshSync(std::size_t count, Order order) {
    const Walk walk = makeWalk({'t', 42, 1}, count, order, 7);
    std::vector<double> ratios;
    double best = 0;
    double floor = 0;
    for (int turn = 0; turn < 3; ++turn) {
        const double plain = plainInsertRate(walk, kBatch);
        const Folder folder;
        makeStation(folder.file("station.db")).reset();
        const auto journal = makeJournal(folder.file("tablet.db"), 42);
        fill(*journal, walk);
        const Served station(folder.file("station.db"));
        station.pair(*journal, "bench");
        const double seconds =
            secondsOf([&] { must(syncNow(*journal).newThere == count, "all entries new"); });
        const double rate = static_cast<double>(count) / seconds;
        ratios.push_back(rate / plain);
        best = std::max(best, rate);
        floor = std::max(floor, plain);
    }
    const double ratio = percentile(ratios, 0.5);
    tell("sync of " + std::to_string(count) + " entries, " +
             (order == Order::Walking ? "walking" : "random") + " order",
         ratio,
         "of plain INSERTs (median of 3)",
         "at least 0.5",
         ratio >= 0.5,
         "\"entries_per_second\":" + std::to_string(static_cast<long>(best)) +
             ",\"floor_per_second\":" + std::to_string(static_cast<long>(floor)));
}

// A journal that was copied and went two ways at its last entry is sent again whole.
void everythingAgain(std::size_t count) {
    const Walk walk = makeWalk({'t', 42, 1}, count, Order::Walking, 7);
    const Folder folder;
    auto station = makeStation(folder.file("station.db"));
    fill(*station, walk);
    station.reset();
    Walk other = walk;
    const Result<journal::EntryView> last = journal::readEntry(walk.entries.back());
    journal::Entry changed = last->owned();
    changed.value = journal::integerValue(11);
    other.entries.back() = changed.encode();
    other.digests.back() = journal::chainDigest(walk.digests[count - 2], other.entries.back());
    const auto journal = makeJournal(folder.file("tablet.db"), 42);
    fill(*journal, other);
    const Served served(folder.file("station.db"));
    served.pair(*journal, "bench");
    sync::Summary summary;
    const double seconds = secondsOf([&] { summary = syncNow(*journal); });
    must(summary.newThere == 1, "only the forked entry is new");
    const double rate =
        static_cast<double>(summary.sentEntries + summary.receivedEntries) / seconds;
    tell("everything sent again, both ways",
         rate,
         "entries/s",
         "at least 250000, no row written",
         rate >= 250'000,
         "\"sent\":" + std::to_string(summary.sentEntries) +
             ",\"received\":" + std::to_string(summary.receivedEntries));
}

void nothingNew() {
    const Folder folder;
    auto station = makeStation(folder.file("station.db"));
    const auto journal = makeJournal(folder.file("tablet.db"), 1);
    for (std::uint64_t device = 1; device <= 30; ++device) {
        const Walk walk = makeWalk(
            {'t', device, 1}, 1'000'000 / 30, Order::Walking, device, static_cast<int>(device));
        fill(*station, walk);
        fill(*journal, walk);
    }
    station.reset();
    const Served served(folder.file("station.db"));
    served.pair(*journal, "bench");
    syncNow(*journal);
    std::vector<double> times;
    sync::Summary summary;
    for (int turn = 0; turn < 100; ++turn) {
        times.push_back(secondsOf([&] { summary = syncNow(*journal); }) * 1000);
    }
    const double median = percentile(times, 0.5);
    tell("a sync with nothing new, 1,000,000 entries, 30 origins",
         median,
         "ms with the handshake (median of 100)",
         "under 5 ms after the handshake",
         median < 5);
    const auto bytes = static_cast<double>(summary.bytesSent + summary.bytesReceived);
    tell("a sync with nothing new, its bytes",
         bytes,
         "bytes both ways",
         "under 4096, one exchange",
         bytes < 4096);
    std::vector<double> one;
    for (int turn = 0; turn < 300; ++turn) {
        const store::Draft draft{"mk",
                                 journal::Kind::Observe,
                                 "obs/B9-01-" + std::to_string(10 + turn) + "/2031-05-01/vigour",
                                 journal::integerValue(5),
                                 {},
                                 {},
                                 {}};
        one.push_back(
            secondsOf([&] {
                must(journal->append({&draft, 1}, journal::Wall{1'780'000'000'000, 0}).ok(),
                     "recording");
                must(syncNow(*journal).newThere == 1, "one new entry");
            }) *
            1000);
    }
    tell("one new entry, recorded, synced and durable",
         percentile(one, 0.5),
         "ms with the handshake (median of 300)",
         "p50 under 10 ms",
         percentile(one, 0.5) < 10,
         "\"p99\":" + std::to_string(percentile(one, 0.99)));
}

void importFile(store::Database& database, const std::string& path) {
    std::ifstream in(path);
    const auto report = database.importLines(in, path, {});
    must(report && report->refusedCount == 0 && report->lines > 0, "importing " + path);
}

// The demo's third season as its tablets send it, through a line that counts.
void bytesOnTheWire(const std::string& demo) {
    std::uint64_t bytes = 0;
    std::uint64_t entries = 0;
    const Folder folder;
    makeStation(folder.file("station.db")).reset();
    const Served station(folder.file("station.db"));
    for (const char* name : {"tablet-1", "tablet-2", "tablet-3"}) {
        const std::string lines = demo + "/" + name + ".jsonl";
        std::ifstream in(lines);
        std::string first;
        std::getline(in, first);
        const auto origin = journal::readOrigin(first.substr(first.find(":\"") + 2, 19));
        must(origin.has_value(), "reading " + lines);
        const auto journal = makeJournal(folder.file(name), origin->device);
        importFile(*journal, lines);
        station.pair(*journal, name);
        // What other tablets have sent comes back to this one; only its own entries are counted, on
        // a first sync that stops when they are through: so the relay counts one direction's bytes
        // against the entries both ways.
        const Relay relay(station.port());
        const sync::Summary summary = syncNow(*journal, relay.address());
        bytes += relay.bytes();
        entries += summary.sentEntries + summary.receivedEntries;
    }
    const double each = static_cast<double>(bytes) / static_cast<double>(entries);
    tell("bytes on the wire an entry, third season of the demo, handshakes and TLS records counted",
         each,
         "bytes",
         "at most 140",
         each <= 140,
         "\"entries\":" + std::to_string(entries));
}

void syncInChild(const std::string& path) {
    const auto journal = openJournal(path);
    syncNow(*journal);
}

void fiftyTablets() {
    constexpr int kTablets = 50;
    constexpr std::size_t kEach = 2000;
    const Folder folder;
    makeStation(folder.file("station.db")).reset();
    std::vector<double> ended;
    {
        const Served station(folder.file("station.db"));
        for (int tablet = 1; tablet <= kTablets; ++tablet) {
            const auto device = static_cast<std::uint64_t>(tablet);
            const auto journal = makeJournal(folder.file("t" + std::to_string(tablet)), device);
            fill(*journal, makeWalk({'t', device, 1}, kEach, Order::Walking, device, tablet));
            station.pair(*journal, "tablet " + std::to_string(tablet));
        }
        std::vector<int> children;
        const double start = secondsNow();
        for (int tablet = 1; tablet <= kTablets; ++tablet) {
            const int child = ::fork();
            if (child == 0) {
                syncInChild(folder.file("t" + std::to_string(tablet)));
                ::_exit(0);
            }
            children.push_back(child);
        }
        for (std::size_t i = 0; i < children.size(); ++i) {
            int status = 0;
            must(::waitpid(-1, &status, 0) > 0 && status == 0, "a tablet's sync");
            ended.push_back(secondsNow() - start);
        }
        const double memory = station.mostMemoryMiB();
        tell("station's memory with 50 tablets at once, 2,000 entries each",
             memory,
             "MiB at most",
             "under 256",
             memory < 256,
             "\"first_done_s\":" + std::to_string(ended.front()) +
                 ",\"last_done_s\":" + std::to_string(ended.back()));
        for (int tablet = 1; tablet <= kTablets; ++tablet) {
            syncInChild(folder.file("t" + std::to_string(tablet)));
        }
    }
    const auto station = openJournal(folder.file("station.db"));
    bool isEqual = true;
    for (int tablet = 1; tablet <= kTablets; ++tablet) {
        isEqual = isEqual && openJournal(folder.file("t" + std::to_string(tablet)))->vector() ==
                                 station->vector();
    }
    const auto counts = station->counts();
    isEqual = isEqual && counts && counts->entries == kTablets * kEach;
    tell("50 tablets and the station hold the same at the end",
         isEqual ? 1 : 0,
         "",
         "all equal",
         isEqual);
}

} // namespace

void runSyncBenches(const std::string& demo) {
    for (const std::size_t count : {std::size_t{200'000}, std::size_t{20'000}}) {
        freshSync(count, Order::Walking);
        freshSync(count, Order::Random);
    }
    everythingAgain(200'000);
    bytesOnTheWire(demo);
    nothingNew();
    fiftyTablets();
}

} // namespace bullace::bench
