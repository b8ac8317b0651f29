// A whole station simulated in one thread from one seed: tablets, an office device and the
// station's database, their syncs, and everything that can go wrong between and inside them.
#pragma once

#include "sim/ledger.hpp"
#include "sim/line.hpp"
#include "sim/writer.hpp"

#include <deque>
#include <list>
#include <memory>
#include <set>
#include <string>
#include <vector>

namespace bullace::test {

class World {
public:
    explicit World(std::uint64_t seed);

    // The season with its faults, and the end without. Throws a Violation.
    void run();

    // The same for the same seed.
    [[nodiscard]] std::uint64_t traceHash() const { return hash_; }
    [[nodiscard]] const std::deque<std::string>& lastSteps() const { return steps_; }
    [[nodiscard]] std::size_t entries() const { return ledger_.all().size(); }

private:
    struct Choice { // of a step, by chance
        std::uint64_t weight = 0;
        void (World::*does)() = nullptr;
    };
    struct Shelf { // copies of a machine's disk
        Machine* machine = nullptr;
        Machine::Copy copy;
        std::uint32_t epoch = 0;
    };
    struct Spoken { // what a device said in a sync that is over
        Machine* device = nullptr;
        sync::StationSetup setup;
        Bytes bytes;
    };

    void say(std::string step);
    [[nodiscard]] Machine& station() { return *machines_[0]; }
    [[nodiscard]] Machine* anyMachine();
    [[nodiscard]] Machine* anyDevice();
    Machine& add(const std::string& name, store::Role role, char letter, std::uint64_t device);

    // Steps of the season.
    void drawFaults();
    void step();
    void write();
    void startSync();
    void moveLines();
    void cutLine();
    void planFault();
    void planPowerLoss(Machine& machine);
    void losePower();
    void fillDisk();
    void makeRoom();
    void takeCopy();
    void putBack();
    void cloneTablet();
    void carryStick();
    void carryStrangersStick();
    void revoke();
    void repeatSpoken();
    void restartProgram();
    void look();

    // What follows from them.
    void startLine(Machine& device);
    void tellDevice(Line& line);
    void tidyLines();
    void cutLinesOf(const Machine& machine);
    void settlePower();
    void bringUp(Machine& machine);
    void onStoreError(Machine& machine, const Error& error, const std::string& what);
    void remember(Machine& machine, const std::vector<journal::Place>& places);
    void importInto(Machine& machine, const std::string& lines, const std::string& from);
    void check(Machine& machine, bool isDeep);

    // The end.
    void finish();
    void calm();
    std::uint64_t syncAll();
    void demandNothingMoves();
    void takeInApart();
    void demandOwnAtStation();
    [[nodiscard]] std::set<const Machine*> acquainted();
    [[nodiscard]] bool isStationToKnow(const journal::Origin& origin);
    void demandAllAtStation(const std::set<const Machine*>& devices);
    void carryWhatOnlySticksCan();
    void demandEqual();
    void feedFreshStations();
    void feedByBatches(Machine& fresh, Machine& source);
    void feedByLines(Machine& fresh, Machine& source);

    std::uint64_t seed_;
    Dice dice_;
    Ledger ledger_;
    Writer writer_;
    std::vector<std::unique_ptr<Machine>> machines_; // the station first
    std::list<Line> lines_;
    std::vector<Choice> choices_;
    std::vector<Shelf> shelf_;
    std::vector<Spoken> spoken_;
    std::deque<std::string> steps_;
    std::uint64_t hash_ = 14'695'981'039'346'656'037ULL;
    std::uint64_t number_ = 0;
    unsigned clones_ = 0;
    bool wasStationPutBack_ = false;
    std::uint32_t unnoticedEpoch_ = 0; // the station's, where it was put back and could not see it
    bool wasStickCarried_ = false;
};

} // namespace bullace::test
