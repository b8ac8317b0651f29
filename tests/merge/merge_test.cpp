// The state is a function of the set of entries: whatever the order, the batches and the
// repetitions, it is the same to the byte, and the same as brute force makes of that set.
#include "merge/scenario.hpp"

#include "core/journal/entry_line.hpp"
#include "core/journal/json_value.hpp"
#include "store/database.hpp"
#include "support/disk_surroundings.hpp"
#include "support/naive_merge.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <rapidcheck.h>
#include <sstream>

using namespace bullace;
using namespace bullace::test;
using store::Database;

namespace {

// A station on a disk of its own in memory.
struct Station {
    FaultDisk disk;
    std::unique_ptr<Database> database;

    Station() {
        auto made = Database::create("station.db",
                                     {store::Role::Station, "Invented", "UTC", 0xFEED},
                                     std::make_unique<DiskSurroundings>(disk));
        RC_ASSERT(made.ok());
        database = std::move(*made);
    }

    void merge(const journal::Batch& batch) const {
        const auto reports = database->merge(batch, {.isStation = true});
        RC_ASSERT(reports.ok());
        for (const journal::RunReport& report : *reports) {
            RC_ASSERT(report.outcome == journal::RunOutcome::Taken ||
                      report.outcome == journal::RunOutcome::Held);
        }
    }

    [[nodiscard]] std::vector<std::string> states() const {
        std::vector<std::string> lines;
        const Status read = database->eachState({}, [&lines](const store::StateRow& row) {
            NaiveState state;
            state.subject = row.subject;
            state.status = merge::stateWord(row.state);
            state.value =
                row.valueJson.empty() ? std::nullopt : std::optional(Json::parse(row.valueJson));
            state.rule = row.rule ? std::string(descriptors::ruleWord(*row.rule)) : std::string{};
            for (const journal::Place& head : row.heads) {
                state.heads.push_back({head.origin.text(), head.seq});
            }
            lines.push_back(state.line());
            return true;
        });
        RC_ASSERT(read.ok());
        return lines;
    }

    [[nodiscard]] std::string exported() const {
        std::ostringstream out;
        RC_ASSERT(database->exportLines(out, {}).ok());
        return out.str();
    }

    [[nodiscard]] std::set<std::string> uncounted() const {
        std::set<std::string> places;
        RC_ASSERT(database
                      ->eachUncounted([&places](const store::UncountedRow& row) {
                          places.insert(row.place.origin.text() + " " +
                                        std::to_string(row.place.seq));
                          return true;
                      })
                      .ok());
        return places;
    }

    void checkRebuild() const {
        const auto verdict = database->verify({});
        RC_ASSERT(verdict.ok());
        RC_ASSERT(verdict->faults.empty());
    }
};

void mergeInOrder(const Station& station,
                  const std::vector<MadeEntry>& entries,
                  const std::vector<std::size_t>& order,
                  std::uint64_t seed) {
    std::mt19937_64 dice(seed);
    journal::Batch batch;
    for (const std::size_t i : order) {
        batch.push_back(entries[i].run());
        if (dice() % 4 == 0) {
            station.merge(batch);
            batch.clear();
        }
    }
    station.merge(batch);
}

std::vector<std::size_t> madeOrder(const std::vector<MadeEntry>& entries) {
    std::vector<std::size_t> order(entries.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    return order;
}

std::vector<std::string> naiveStates(const std::vector<MadeEntry>& made) {
    std::vector<NaiveEntry> entries;
    entries.reserve(made.size());
    NaiveStation station;
    for (const MadeEntry& entry : made) {
        entries.push_back(readNaively(entry.bytes, entry.digest, {entry.before}));
        station.add(entries.back());
    }
    std::vector<std::string> lines;
    for (const NaiveState& state : station.states()) {
        lines.push_back(state.line());
    }
    return lines;
}

void checkProperty(
    const char* words,
    const std::function<void(const std::vector<MadeEntry>&, std::uint64_t)>& property) {
    const bool holds = rc::check(words, [&property] {
        const auto seed = *rc::gen::arbitrary<std::uint64_t>();
        const auto count = *rc::gen::inRange<std::size_t>(1, 40);
        property(makeScenario(seed, count), seed);
    });
    CHECK(holds);
}

std::string linesOf(const std::vector<MadeEntry>& entries, const std::vector<std::size_t>& order) {
    std::string lines;
    for (const std::size_t i : order) {
        journal::appendEntryLine(lines, *journal::readEntry(entries[i].bytes), entries[i].digest);
    }
    return lines;
}

} // namespace

TEST_CASE("the state after any order, batching and repetition of a set of entries is what brute "
          "force makes of the set") {
    checkProperty("order, batches and repetition change nothing",
                  [](const std::vector<MadeEntry>& entries, std::uint64_t seed) {
                      const std::vector<std::string> expected = naiveStates(entries);
                      Station first;
                      mergeInOrder(first, entries, madeOrder(entries), seed);
                      RC_ASSERT(first.states() == expected);
                      first.checkRebuild();
                      Station second;
                      mergeInOrder(second, entries, anotherOrder(entries, seed), seed + 1);
                      RC_ASSERT(second.states() == expected);
                      RC_ASSERT(second.exported() == first.exported());
                      RC_ASSERT(second.uncounted() == first.uncounted());
                      second.checkRebuild();
                      Station third;
                      mergeInOrder(third, entries, anotherOrder(entries, seed + 2), seed + 3);
                      RC_ASSERT(third.states() == expected);
                      RC_ASSERT(third.exported() == first.exported());
                  });
}

TEST_CASE("import after export is the identity, with the lines shuffled and repeated too") {
    checkProperty("what is exported can be imported",
                  [](const std::vector<MadeEntry>& entries, std::uint64_t seed) {
                      Station first;
                      mergeInOrder(first, entries, madeOrder(entries), seed);
                      const std::string exported = first.exported();
                      std::vector<std::size_t> order = madeOrder(entries);
                      std::mt19937_64 dice(seed);
                      std::shuffle(order.begin(), order.end(), dice);
                      order.push_back(order[dice() % order.size()]);
                      for (const std::string& lines : {exported, linesOf(entries, order)}) {
                          Station second;
                          std::istringstream in(lines);
                          const auto report = second.database->importLines(in, "lines", {});
                          RC_ASSERT(report.ok());
                          RC_ASSERT(report->refusedCount == 0U);
                          RC_ASSERT(report->waitingCount == 0U);
                          RC_ASSERT(report->taken == entries.size());
                          RC_ASSERT(second.exported() == exported);
                          RC_ASSERT(second.states() == first.states());
                          second.checkRebuild();
                      }
                  });
}

TEST_CASE("all orders of a few entries that replace, undo and retract one another give one state") {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        std::vector<MadeEntry> entries = makeScenario(seed, 5);
        entries.resize(std::min<std::size_t>(entries.size(), 5));
        const std::vector<std::string> expected = naiveStates(entries);
        std::vector<std::size_t> order = madeOrder(entries);
        do {
            std::vector<bool> isOut(entries.size());
            const bool isPossible = std::all_of(order.begin(), order.end(), [&](std::size_t i) {
                isOut[i] = true;
                return entries[i].follows == 0 || isOut[entries[i].follows - 1];
            });
            if (!isPossible) {
                continue;
            }
            const Station station;
            for (const std::size_t i : order) {
                station.merge({entries[i].run()});
            }
            REQUIRE(station.states() == expected);
        } while (std::next_permutation(order.begin(), order.end()));
    }
}
