#include "sim/world.hpp"

#include "sim/violation.hpp"

#include <algorithm>

namespace bullace::test {

namespace {

constexpr std::size_t kShown = 60; // steps
constexpr std::uint64_t kSteps = 250;

} // namespace

World::World(std::uint64_t seed)
    : seed_(seed),
      dice_(seed * 0x9e3779b97f4a7c15ULL + 1),
      writer_(dice_, ledger_) {}

void World::say(std::string step) {
    for (const char c : step) {
        hash_ = (hash_ ^ static_cast<unsigned char>(c)) * 1'099'511'628'211ULL;
    }
    steps_.push_back(std::to_string(number_) + " " + std::move(step));
    if (steps_.size() > kShown) {
        steps_.pop_front();
    }
}

Machine& World::add(const std::string& name, store::Role role, char letter, std::uint64_t device) {
    machines_.push_back(std::make_unique<Machine>(name, dice_.next()));
    Machine& machine = *machines_.back();
    machine.found(role, letter, device);
    machine.disk().setAfterFailedSync(dice_.isOne(1, 2) ? AfterFailedSync::StaysDirty
                                                        : AfterFailedSync::MarkedClean);
    say("new: " + name);
    return machine;
}

Machine* World::anyMachine() {
    return dice_.pick(machines_).get();
}

Machine* World::anyDevice() {
    return machines_[1 + dice_.below(machines_.size() - 1)].get();
}

void World::run() {
    drawFaults();
    add("station", store::Role::Station, 's', 0xa0a0000000000001);
    add("office", store::Role::Field, 's', 0xb0b0000000000002);
    for (std::uint64_t i = dice_.between(2, 4); i > 0; --i) {
        add("tablet" + std::to_string(i),
            store::Role::Field,
            't',
            0xc0c0000000000000 + (i << 40U) + i);
    }
    while (number_ < kSteps) {
        ++number_;
        step();
        settlePower();
        tidyLines();
    }
    finish();
}

// Not every season has every fault: what a fault would cover up shows in a season without it.
void World::drawFaults() {
    const std::vector<Choice> always{{300, &World::write},
                                     {420, &World::moveLines},
                                     {110, &World::startSync},
                                     {20, &World::makeRoom},
                                     {40, &World::look}};
    const std::vector<Choice> faults{{15, &World::cutLine},
                                     {35, &World::planFault},
                                     {15, &World::losePower},
                                     {8, &World::fillDisk},
                                     {14, &World::putBack},
                                     {5, &World::cloneTablet},
                                     {20, &World::carryStick},
                                     {20, &World::carryStrangersStick},
                                     {2, &World::revoke},
                                     {12, &World::repeatSpoken},
                                     {10, &World::restartProgram}};
    choices_ = always;
    choices_.push_back({25, &World::takeCopy});
    const bool isAll = dice_.isOne(1, 4);
    for (const Choice& fault : faults) {
        if (isAll || dice_.isOne(1, 2)) {
            choices_.push_back(fault);
        }
    }
}

void World::step() {
    std::uint64_t sum = 0;
    for (const Choice& choice : choices_) {
        sum += choice.weight;
    }
    std::uint64_t at = dice_.below(sum);
    for (const Choice& choice : choices_) {
        if (at < choice.weight) {
            (this->*choice.does)();
            return;
        }
        at -= choice.weight;
    }
}

void World::write() {
    Machine& machine = *anyMachine();
    if (!machine.isUp()) {
        return;
    }
    const Act act = writer_.act(machine);
    const auto written = machine.database().append(act.drafts, writer_.wall(), act.grouping);
    if (!written) {
        onStoreError(machine, written.error(), "write");
        return;
    }
    say(machine.name() + " writes " + written->front().origin.text() + ":" +
        std::to_string(written->front().seq) + " " + act.words);
    remember(machine, *written);
}

// What append() said is in the journal is promised; no number may stand for two acts.
void World::remember(Machine& machine, const std::vector<journal::Place>& places) {
    machine.isToCheck = true;
    const std::vector<journal::Segment> segments = machine.database().segments(places[0].origin);
    demand(segments.size() == 1, "a forked journal is not written to", machine.name());
    const auto run =
        machine.database().readRun(segments[0], 1, places.back().seq, std::size_t{1} << 24U);
    if (!run) {
        onStoreError(machine, run.error(), "read back");
        return;
    }
    // An act before this one may have got onto the disk though its commit was told as failed.
    Digest digest;
    for (std::size_t i = 0; i < run->entries.size(); ++i) {
        const journal::Place place{run->origin, i + 1};
        digest = journal::chainDigest(digest, run->entries[i]);
        const bool isNew = place.seq >= places.front().seq;
        if (isNew) {
            demand(ledger_.find(digest) == nullptr &&
                       (!ledger_.has(place) || machine.mayRepeat(place.origin.epoch)),
                   "no number is given twice",
                   machine.name() + " wrote " + place.origin.text() + " number " +
                       std::to_string(place.seq) + " again");
            machine.promised.insert({place.origin, place.seq, digest});
        }
        ledger_.learn(run->entries[i], digest);
    }
}

void World::onStoreError(Machine& machine, const Error& error, const std::string& what) {
    say(machine.name() + " could not " + what + ": " +
        std::to_string(static_cast<int>(error.code)));
    if (error.code == ErrorCode::Refused) {
        const journal::Origin own = machine.database().about().own;
        demand(machine.database().segments(own).size() > 1 && !machine.wasSyncedSinceFork,
               "who has synced can write",
               machine.name() + ": " + error.message);
        return;
    }
    const bool isExcused =
        machine.disk().isPowerOff() || machine.isDiskShort || machine.isFaultPlanned;
    demand(isExcused,
           "a sound machine takes what is written",
           machine.name() + ": " + error.message + " " + error.detail);
    if (!machine.disk().isPowerOff() && error.code != ErrorCode::DiskFull) {
        // The person starts the program anew.
        cutLinesOf(machine);
        bringUp(machine);
    }
}

void World::settlePower() {
    for (const auto& machine : machines_) {
        if (machine->disk().isPowerOff()) {
            say(machine->name() + " has lost its power");
            cutLinesOf(*machine);
            machine->restartDisk();
            bringUp(*machine);
        }
    }
}

// Starts the program, however often the power goes meanwhile.
void World::bringUp(Machine& machine) {
    machine.close();
    machine.disk().noPlan();
    machine.isFaultPlanned = false;
    if (dice_.isOne(1, 4)) {
        planPowerLoss(machine);
    }
    Status opened = machine.open();
    if (!opened && (machine.disk().isPowerOff() || machine.isDiskShort)) {
        machine.restartDisk();
        opened = machine.open();
    }
    demand(opened.ok(),
           "a journal can be opened after a fault",
           machine.name() + ": " +
               (opened ? "" : opened.error().message + " " + opened.error().detail));
    say(machine.name() + " is up as " + machine.database().about().own.text());
    if (!machine.disk().isPowerOff()) {
        check(machine, false);
    }
}

void World::check(Machine& machine, bool isDeep) {
    if (!machine.isUp() || machine.disk().isPowerOff() || machine.isFaultPlanned) {
        return;
    }
    const auto held = checkJournal(machine, ledger_);
    machine.isToCheck = false;
    if (isDeep) {
        checkState(machine, held);
        if (!machine.isDiskShort) {
            checkVerify(machine);
        }
    }
}

void World::look() {
    Machine& machine = *anyMachine();
    check(machine, dice_.isOne(1, 3));
}

} // namespace bullace::test
