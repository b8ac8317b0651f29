// What the journal file costs by itself: recording, importing, opening, checking.
#include "bench/benches.hpp"
#include "bench/floor.hpp"
#include "bench/measure.hpp"
#include "bench/served.hpp"
#include "bench/walk.hpp"

#include "core/journal/entry_line.hpp"
#include "core/journal/json_value.hpp"

#include <array>
#include <fstream>
#include <sys/wait.h>
#include <unistd.h>

namespace bullace::bench {

namespace {

constexpr std::size_t kMillion = 1'000'000;

void recording() {
    constexpr int kPairs = 5000;
    const Folder folder;
    const auto journal = makeJournal(folder.file("tablet.db"), 42);
    BareCommits bare(folder.file("bare.db"));
    const Walk walk = makeWalk({'t', 42, 1}, kPairs, Order::Walking, 7);
    std::vector<double> ours;
    std::vector<double> floor;
    for (std::size_t i = 0; i < kPairs; ++i) {
        const store::Draft draft{
            "mk", journal::Kind::Observe, walk.subjects[i], journal::integerValue(5), {}, {}, {}};
        ours.push_back(secondsOf([&] {
            must(journal->append({&draft, 1}, journal::Wall{1'780'000'000'000, -300}).ok(),
                 "recording");
        }));
        floor.push_back(secondsOf([&] { bare.commit(walk.entries[i]); }));
    }
    const auto told = [](double a, double b) {
        return "\"ours_ms\":" + std::to_string(a * 1000) +
               ",\"floor_ms\":" + std::to_string(b * 1000);
    };
    for (const auto& [share, target] : {std::pair{0.5, 1.3}, std::pair{0.99, 2.0}}) {
        const double a = percentile(ours, share);
        const double b = percentile(floor, share);
        tell(std::string("recording one observation, p") + (share < 0.9 ? "50" : "99"),
             a / b,
             "of a bare commit, 5,000 alternating pairs",
             share < 0.9 ? "at most 1.3" : "at most 2",
             a / b <= target,
             told(a, b));
    }
}

void writeLines(const std::string& path, const Walk& walk) {
    std::ofstream out(path);
    std::string line;
    for (std::size_t i = 0; i < walk.entries.size(); ++i) {
        line.clear();
        journal::appendEntryLine(line, *journal::readEntry(walk.entries[i]), walk.digests[i]);
        out << line;
    }
    must(out.good(), "writing lines");
}

struct ImportCost {
    double seconds = 0;
    double memory = 0;
};

// In a program of its own, started afresh, so that the memory is that of the import alone.
ImportCost importCost(const Folder& folder, const std::string& database, const std::string& lines) {
    std::array<int, 2> pipe{};
    must(::pipe(pipe.data()) == 0, "making a pipe");
    const int child = ::fork();
    if (child == 0) {
        ::dup2(pipe[1], STDOUT_FILENO);
        ::execl("/proc/self/exe",
                "bullace-bench",
                "import-alone",
                folder.file(database).c_str(),
                folder.file(lines).c_str(),
                nullptr);
        ::_exit(1);
    }
    ::close(pipe[1]);
    ImportCost cost;
    must(::read(pipe[0], &cost, sizeof(cost)) == sizeof(cost), "importing in a child");
    ::close(pipe[0]);
    ::waitpid(child, nullptr, 0);
    return cost;
}

void importing(const Folder& folder) {
    double floor = 0;
    {
        const Walk walk = makeWalk({'t', 42, 1}, kMillion, Order::Walking, 7);
        floor = plainInsertRate(walk, 10'000);
        writeLines(folder.file("all.jsonl"), walk);
        const Walk part = makeWalk({'t', 42, 1}, kMillion / 2, Order::Walking, 7);
        writeLines(folder.file("part.jsonl"), part);
    }
    const ImportCost small = importCost(folder, "small.db", "part.jsonl");
    const ImportCost large = importCost(folder, "station.db", "all.jsonl");
    const double rate = kMillion / large.seconds;
    tell("import of 1,000,000 JSON Lines",
         rate / floor,
         "of plain INSERTs",
         "at least 0.3",
         rate / floor >= 0.3,
         "\"entries_per_second\":" + std::to_string(static_cast<long>(rate)) +
             ",\"floor_per_second\":" + std::to_string(static_cast<long>(floor)));
    tell("memory of that import",
         large.memory,
         "MiB at most, the 64 MiB page cache in it",
         "flat: no more than 16 MiB above 500,000 lines",
         large.memory - small.memory < 16,
         "\"at_500000_lines_mib\":" + std::to_string(small.memory));
}

// Makes 5,000 conflicts in the million, then opens it anew.
void openingAndChecking(const Folder& folder) {
    const std::string path = folder.file("station.db");
    {
        const auto station = openJournal(path);
        Walk other = makeWalk({'t', 43, 1}, 5000, Order::Walking, 7);
        Digest digest;
        for (std::size_t i = 0; i < other.entries.size(); ++i) {
            journal::Entry entry = journal::readEntry(other.entries[i])->owned();
            entry.value = journal::textValue("otherwise");
            other.entries[i] = entry.encode();
            digest = other.digests[i] = journal::chainDigest(digest, other.entries[i]);
        }
        must(station->merge({other.run(0, 5000)}, {.isStation = true}).ok(), "merging conflicts");
    }
    std::vector<double> times;
    std::size_t count = 0;
    for (int turn = 0; turn < 20; ++turn) {
        times.push_back(secondsOf([&] {
                            count = 0;
                            auto opened =
                                store::Database::open(path, false, store::fileSurroundings());
                            must(opened.ok(), "opening");
                            const Status read =
                                (*opened)->eachConflict({}, [&count](const store::StateRow&) {
                                    ++count;
                                    return true;
                                });
                            must(read.ok(), "listing");
                        }) *
                        1000);
    }
    tell("opening a station of 1,000,000 entries and listing its conflicts",
         percentile(times, 0.5),
         "ms (median of 20)",
         "under 200",
         percentile(times, 0.5) < 200,
         "\"conflicts\":" + std::to_string(count));
    const auto station = store::Database::open(path, false, store::fileSurroundings());
    must(station.ok(), "opening");
    std::uint64_t entries = 0;
    const double seconds = secondsOf([&] {
        const auto verdict = (*station)->verify({});
        must(verdict && verdict->faults.empty(), "verifying");
        entries = verdict->entries;
    });
    const double rate = static_cast<double>(entries) / seconds;
    tell("rebuilding its whole state and comparing (verify)",
         rate,
         "entries/s",
         "at least 200000",
         rate >= 200'000);
}

} // namespace

void importAlone(const std::string& database, const std::string& lines) {
    ImportCost cost;
    cost.seconds = secondsOf([&] {
        const auto station = makeStation(database);
        std::ifstream in(lines);
        const auto report = station->importLines(in, lines, {});
        must(report && report->taken > 0 && report->taken == report->lines, "importing");
    });
    cost.memory = memoryMiB(kThisProcess, "VmHWM");
    must(::write(STDOUT_FILENO, &cost, sizeof(cost)) == sizeof(cost), "telling");
}

void runStoreBenches() {
    recording();
    const Folder folder;
    importing(folder);
    openingAndChecking(folder);
}

} // namespace bullace::bench
