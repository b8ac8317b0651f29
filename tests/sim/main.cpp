// test_sim: seasons of a simulated station, each from one seed; and the planted bugs, which the
// seasons must find.
#include "sim/violation.hpp"
#include "sim/world.hpp"

#include "core/base/planted.hpp"
#include "sync/protocol/outgoing.hpp"

#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <optional>
#include <string>
#include <utility>

using namespace bullace;
using namespace bullace::test;

namespace {

constexpr std::uint64_t kTwiceEvery = 50;
constexpr std::uint64_t kMostPlantedSeeds = 1000;

constexpr std::array<std::pair<Bug, const char*>, 13> kBugs{
    {{Bug::AckBeforeCommit, "acknowledged before the commit"},
     {Bug::SkipWithoutDigest, "a known number skipped without its digest"},
     {Bug::SeqOutsideTransaction, "number taken outside the transaction"},
     {Bug::HeadsByClock, "heads by the clock"},
     {Bug::VectorPastHole, "vector past a hole"},
     {Bug::EdgeCycleTaken, "edges in a cycle taken"},
     {Bug::RetractionDropped, "retraction dropped"},
     {Bug::GroupHalfApplied, "half a group applied"},
     {Bug::UndoIgnoresCounts, "undo that was undone takes effect"},
     {Bug::UnlinkedAccepted, "unlinked entries accepted"},
     {Bug::ForkBranchDropped, "second branch of a fork dropped"},
     {Bug::EpochNotTaken, "no new epoch after a restore"},
     {Bug::ResendDropsRest, "resume behind what was sent"}}};

struct Season {
    std::optional<Violation> violation;
    std::uint64_t hash = 0;
    std::size_t entries = 0;
    std::string lastSteps;
};

Season runSeason(std::uint64_t seed) {
    sync::forgetPlantedSends();
    Season season;
    auto world = std::make_unique<World>(seed);
    try {
        world->run();
    } catch (const Violation& violation) {
        season.violation = violation;
        for (const std::string& step : world->lastSteps()) {
            season.lastSteps += "    " + step + "\n";
        }
    }
    season.hash = world->traceHash();
    season.entries = world->entries();
    return season;
}

int runSeeds(std::uint64_t from, std::uint64_t count) {
    std::uint64_t entries = 0;
    for (std::uint64_t seed = from; seed < from + count; ++seed) {
        const Season season = runSeason(seed);
        if (season.violation) {
            std::printf("seed %llu broke \"%s\": %s\n%sAlone: test_sim --seeds %llu 1\n",
                        static_cast<unsigned long long>(seed),
                        season.violation->invariant().c_str(),
                        season.violation->what(),
                        season.lastSteps.c_str(),
                        static_cast<unsigned long long>(seed));
            return 1;
        }
        if (seed % kTwiceEvery == 0 && runSeason(seed).hash != season.hash) {
            std::printf("seed %llu did not go the same way twice\n",
                        static_cast<unsigned long long>(seed));
            return 1;
        }
        entries += season.entries;
    }
    std::printf("%llu seasons, seeds %llu to %llu, %llu entries: everything promised was kept\n",
                static_cast<unsigned long long>(count),
                static_cast<unsigned long long>(from),
                static_cast<unsigned long long>(from + count - 1),
                static_cast<unsigned long long>(entries));
    return 0;
}

int runPlanted() {
    int missed = 0;
    std::printf("%-45s %-10s %s\n", "planted bug", "at seed", "caught because");
    for (const auto& [bug, words] : kBugs) {
        plantedBug = bug;
        std::uint64_t seed = 1;
        Season season;
        while (seed <= kMostPlantedSeeds && !season.violation) {
            season = runSeason(seed++);
        }
        plantedBug = Bug::None;
        missed += season.violation ? 0 : 1;
        std::printf("%-45s %-10s %s\n",
                    words,
                    season.violation ? std::to_string(seed - 1).c_str() : "missed",
                    season.violation
                        ? ("\"" + season.violation->invariant() + "\" did not hold").c_str()
                        : "");
        std::fflush(stdout);
    }
    return missed == 0 ? 0 : 1;
}

} // namespace

int main(int count, char** words) {
    const std::string what = count > 1 ? words[1] : "";
    if (what == "--planted" && count == 2) {
        return runPlanted();
    }
    if (what == "--seeds" && count == 4) {
        return runSeeds(std::strtoull(words[2], nullptr, 10), std::strtoull(words[3], nullptr, 10));
    }
    std::fprintf(stderr,
                 "test_sim --seeds FROM COUNT   runs seasons\n"
                 "test_sim --planted            shows that the planted bugs are found\n");
    return 2;
}
