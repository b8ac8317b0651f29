// The end of a season: all faults off, everyone syncs, and everything has to come together.
#include "sim/violation.hpp"
#include "sim/world.hpp"

#include <algorithm>
#include <sstream>

namespace bullace::test {

void World::calm() {
    for (const auto& machine : machines_) {
        cutLinesOf(*machine);
    }
    for (const auto& machine : machines_) {
        machine->restartDisk();
        machine->isFaultPlanned = false;
        const Status opened = machine->open();
        demand(opened.ok(),
               "a journal can be opened after a fault",
               machine->name() + ": " + (opened ? "" : opened.error().message));
        check(*machine, true);
    }
    say("all is calm");
}

// One sync of each device that may, without faults. How many entries went over the line.
std::uint64_t World::syncAll() {
    std::uint64_t moved = 0;
    for (std::size_t i = 1; i < machines_.size(); ++i) {
        Machine& device = *machines_[i];
        if (device.isRevoked) {
            continue;
        }
        lines_.emplace_back(device, station(), ledger_, 0, 0);
        Line& line = lines_.back();
        while (line.step(dice_)) {
        }
        demand(line.isComplete(),
               "a sync without faults is complete",
               device.name() + ": " +
                   (line.clientStatus() && !line.clientStatus()->ok()
                        ? line.clientStatus()->error().message
                        : "it stands still"));
        moved += line.summary().sentEntries + line.summary().receivedEntries;
        tellDevice(line);
        lines_.pop_back();
    }
    return moved;
}

// Someone at the office takes in what came back after a restore.
void World::takeInApart() {
    std::vector<std::int64_t> waiting;
    const Status read = station().database().eachApart([&waiting](const store::ApartRow& row) {
        if (row.reason == "resent") {
            waiting.push_back(row.id);
        }
        return true;
    });
    demand(read.ok(), "a sound disk can be read", "station");
    // A run may follow on another that waits with it.
    for (std::size_t turn = 0; turn < waiting.size(); ++turn) {
        for (const std::int64_t id : waiting) {
            static_cast<void>(station().database().takeInApart(id));
        }
    }
}

void World::demandOwnAtStation() {
    for (const auto& device : machines_) {
        if (device.get() == &station() || device->isRevoked) {
            continue;
        }
        for (const journal::BranchEnd& end : device->database().vector()) {
            const bool isOwn = end.origin.device == device->device();
            const auto held = station().database().holds(end);
            demand(!isOwn || (held.ok() && *held),
                   "what a device wrote is at the station after a sync",
                   device->name());
        }
        for (const journal::BranchEnd& end : station().database().vector()) {
            const auto held = device->database().holds(end);
            demand(held.ok() && *held,
                   "what the station holds is on every device after a sync",
                   device->name());
        }
    }
}

// Those that remember a whole sync, and so will be asked to refill a station that was put back.
std::set<const Machine*> World::acquainted() {
    std::set<const Machine*> those;
    for (const auto& machine : machines_) {
        const auto known = store::station(machine->database());
        demand(known.ok(), "a sound disk can be read", machine->name());
        if (machine.get() != &station() && !machine->isRevoked && *known) {
            those.insert(machine.get());
        }
    }
    return those;
}

// A station that could not see that it is a copy learns it from a device that remembers more of the
// station's own journal; what else it lost it only asks for then.
bool World::isStationToKnow(const journal::Origin& origin) {
    return unnoticedEpoch_ == 0 ||
           (origin.device == station().device() && origin.epoch >= unnoticedEpoch_);
}

void World::demandAllAtStation(const std::set<const Machine*>& devices) {
    for (const auto& device : machines_) {
        for (const journal::BranchEnd& end : device->database().vector()) {
            const auto held = station().database().holds(end);
            demand(devices.count(device.get()) == 0 || !isStationToKnow(end.origin) ||
                       (held.ok() && *held),
                   "a station gets back what a device remembers of it",
                   device->name() + " alone has " + end.origin.text() + " number " +
                       std::to_string(end.seq));
        }
    }
}

// Entries that came by stick, and those of a revoked device, get to the station only as they came.
void World::carryWhatOnlySticksCan() {
    for (const auto& machine : machines_) {
        if (machine.get() != &station()) {
            importInto(station(), exportOf(*machine), machine->name());
        }
    }
}

void World::demandNothingMoves() {
    demand(syncAll() == 0, "a further sync moves nothing", "station");
    demandEqual();
}

void World::demandEqual() {
    const std::string lines = exportOf(station());
    const std::string state = stateOf(station());
    for (const auto& machine : machines_) {
        check(*machine, true);
        if (machine->isRevoked) {
            continue;
        }
        demand(exportOf(*machine) == lines,
               "who holds the same exports the same bytes",
               machine->name());
        demand(
            stateOf(*machine) == state, "who holds the same has the same state", machine->name());
    }
}

void World::feedByBatches(Machine& fresh, Machine& source) {
    std::vector<std::deque<journal::Run>>
        queues; // of each origin, in an order in which each run can follow
    for (const journal::BranchEnd& end : source.database().vector()) {
        const bool isSeen = std::any_of(queues.begin(), queues.end(), [&end](const auto& queue) {
            return queue.front().origin == end.origin;
        });
        if (isSeen) {
            continue;
        }
        queues.emplace_back();
        for (const journal::Segment& segment : source.database().segments(end.origin)) {
            for (std::uint64_t from = segment.first; from <= segment.last;) {
                auto run = source.database().readRun(
                    segment, from, static_cast<std::size_t>(dice_.between(1, 9)), 1U << 20U);
                demand(run.ok(), "a sound disk can be read", source.name());
                from = run->last() + 1;
                queues.back().push_back(std::move(*run));
            }
        }
    }
    while (!queues.empty()) {
        journal::Batch batch;
        for (std::uint64_t runs = dice_.between(1, 5); runs > 0 && !queues.empty(); --runs) {
            const auto at =
                queues.begin() + static_cast<std::ptrdiff_t>(dice_.below(queues.size()));
            batch.push_back(at->front());
            if (!dice_.isOne(1, 5)) { // else it comes again
                at->pop_front();
            }
            if (at->empty()) {
                queues.erase(at);
            }
        }
        const auto reports = fresh.database().merge(batch, {.isStation = true});
        demand(reports.ok(), "a sound machine takes what is written", fresh.name());
    }
}

void World::feedByLines(Machine& fresh, Machine& source) {
    std::istringstream in(exportOf(source));
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) {
        lines.push_back(line + "\n");
    }
    for (std::size_t i = lines.size(); i > 1; --i) {
        std::swap(lines[i - 1], lines[dice_.below(i)]);
    }
    std::string all;
    for (const std::string& line : lines) {
        all += line;
    }
    std::istringstream shuffled(all);
    const auto report = fresh.database().importLines(shuffled, "shuffled", {});
    demand(report.ok() && report->refusedCount == 0 && report->waitingCount == 0,
           "an export can be imported in any order",
           fresh.name());
}

void World::feedFreshStations() {
    Machine& first = add("fresh one", store::Role::Station, 's', 0xf1);
    Machine& second = add("fresh two", store::Role::Station, 's', 0xf2);
    feedByBatches(first, station());
    feedByLines(second, station());
    for (Machine* fresh : {&first, &second}) {
        demand(exportOf(*fresh) == exportOf(station()),
               "stations fed in different orders export the same",
               fresh->name());
        demand(stateOf(*fresh) == stateOf(station()),
               "stations fed in different orders have the same state",
               fresh->name());
    }
    machines_.resize(machines_.size() - 2);
}

void World::finish() {
    calm();
    const std::set<const Machine*> remembering = acquainted();
    for (int round = 0; round < 3; ++round) {
        syncAll();
        takeInApart();
    }
    demandOwnAtStation();
    // Only a stick, or a station that lost what it gave to somebody in a sync that broke, can leave
    // an entry on a device that is no other device's to send.
    if (!wasStickCarried_) {
        demandAllAtStation(remembering);
    }
    if (!wasStickCarried_ && !wasStationPutBack_) {
        demandNothingMoves();
    }
    // What came by a stick goes by a stick; lines that waited on a device enter once the sync has
    // brought what stands before them, and are carried in the next turn.
    for (int turn = 0; turn < 3; ++turn) {
        carryWhatOnlySticksCan();
        syncAll();
        syncAll();
    }
    demandNothingMoves();
    feedFreshStations();
}

} // namespace bullace::test
