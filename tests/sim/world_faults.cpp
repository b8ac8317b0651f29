// The season's steps that break things: power, disks, copies, clones, sticks, and what was said
// before.
#include "sim/violation.hpp"
#include "sim/world.hpp"

#include "core/journal/entry_line.hpp"

#include <algorithm>
#include <sstream>

namespace bullace::test {

namespace {

constexpr std::size_t kMostCopies = 6;
constexpr unsigned kMostClones = 1;

WriteModel anyModel(Dice& dice) {
    const std::vector<WriteModel> models{
        WriteModel::AllLost, WriteModel::Torn, WriteModel::Reordered, WriteModel::AllKept};
    return dice.pick(models);
}

} // namespace

void World::planPowerLoss(Machine& machine) {
    machine.disk().plan({.at = dice_.between(1, 40),
                         .fault = Fault::PowerLoss,
                         .model = anyModel(dice_),
                         .counted = kChanging});
    machine.isFaultPlanned = true;
}

void World::planFault() {
    Machine& machine = *anyMachine();
    if (!machine.isUp() || machine.isFaultPlanned) {
        return;
    }
    if (dice_.isOne(1, 2)) {
        planPowerLoss(machine);
        say(machine.name() + " will lose its power");
        return;
    }
    const Operations counted = dice_.isOne(3, 4) ? kChanging : only(Operation::Read);
    machine.disk().plan({.at = dice_.between(1, 30),
                         .fault = dice_.isOne(3, 4) ? Fault::IoError : Fault::Full,
                         .counted = counted});
    machine.isFaultPlanned = true;
    say(machine.name() + "'s disk will fail once");
}

void World::losePower() {
    anyMachine()->disk().cutPower(anyModel(dice_));
}

void World::fillDisk() {
    Machine& machine = *anyMachine();
    std::uint64_t used = 0;
    for (const std::string& path : machine.disk().paths()) {
        used += machine.disk().size(path);
    }
    machine.disk().setCapacity(used + dice_.below(40'000));
    machine.isDiskShort = true;
    say(machine.name() + "'s disk is nearly full");
}

void World::makeRoom() {
    Machine& machine = *anyMachine();
    machine.disk().setUnlimited();
    machine.disk().noPlan();
    machine.isDiskShort = false;
    machine.isFaultPlanned = false;
    say(machine.name() + " is sound again");
    check(machine, false);
}

void World::restartProgram() {
    Machine& machine = *anyMachine();
    say(machine.name() + " is started anew");
    cutLinesOf(machine);
    bringUp(machine);
}

void World::takeCopy() {
    Machine& machine = *anyMachine();
    if (!machine.isUp() || shelf_.size() == kMostCopies) {
        return;
    }
    shelf_.push_back({&machine, machine.copy(), machine.database().about().own.epoch});
    say(machine.name() + " is copied");
}

void World::putBack() {
    if (shelf_.empty()) {
        return;
    }
    const Shelf& shelf = dice_.pick(shelf_);
    Machine& machine = *shelf.machine;
    const bool isStation = &machine == &station();
    const CopyOf how = dice_.isOne(1, 2) ? CopyOf::JournalOnly : CopyOf::WholeDisk;
    cutLinesOf(machine);
    machine.putBack(shelf.copy, how);
    const std::uint32_t above = how == CopyOf::WholeDisk ? shelf.epoch - 1 : shelf.epoch;
    machine.doubtAbove = machine.doubtUpTo == 0 ? above : std::min(machine.doubtAbove, above);
    machine.doubtUpTo = std::max(machine.doubtUpTo, ledger_.greatestEpoch(machine.device()));
    machine.wasSyncedSinceFork = false;
    wasStationPutBack_ = wasStationPutBack_ || isStation;
    if (isStation && how == CopyOf::WholeDisk) {
        unnoticedEpoch_ = std::max(unnoticedEpoch_, shelf.epoch);
    }
    say(machine.name() + " is put back" + (how == CopyOf::WholeDisk ? " whole" : ""));
    bringUp(machine);
}

void World::cloneTablet() {
    Machine& original = *anyDevice();
    if (clones_ == kMostClones || !original.isUp() || original.letter() != 't') {
        return;
    }
    ++clones_;
    machines_.push_back(std::make_unique<Machine>(original.name() + "-twin", dice_.next()));
    Machine& twin = *machines_.back();
    twin.takeIdentityOf(original);
    twin.putBack(original.copy(), dice_.isOne(1, 2) ? CopyOf::JournalOnly : CopyOf::WholeDisk);
    twin.hasTwin = true;
    original.hasTwin = true;
    twin.isRevoked = original.isRevoked;
    say(original.name() + " is cloned");
    bringUp(twin);
}

void World::importInto(Machine& machine, const std::string& lines, const std::string& from) {
    std::istringstream in(lines);
    const auto report = machine.database().importLines(in, from, {});
    if (!report) {
        onStoreError(machine, report.error(), "import");
        return;
    }
    say(machine.name() + " takes " + std::to_string(report->taken) + " from " + from);
    machine.isToCheck = true;
}

void World::carryStick() {
    Machine& from = *anyMachine();
    Machine& to = *anyMachine();
    if (&from == &to || !from.isUp() || !to.isUp() || from.isFaultPlanned) {
        return;
    }
    wasStickCarried_ = true;
    importInto(to, exportOf(from), from.name());
}

void World::carryStrangersStick() {
    Machine& to = *anyMachine();
    if (!to.isUp()) {
        return;
    }
    wasStickCarried_ = true;
    std::string lines;
    std::vector<const LedgerEntry*> entries = writer_.strangerEntries(ledger_);
    for (const LedgerEntry* entry : entries) {
        if (!dice_.isOne(1, 12)) { // a line is lost now and then: those behind it wait
            journal::appendEntryLine(lines, *journal::readEntry(entry->bytes), entry->mark.digest);
        }
    }
    importInto(to, lines, "a stranger");
}

void World::revoke() {
    Machine& device = *anyDevice();
    const bool isOnly = std::none_of(
        machines_.begin(), machines_.end(), [](const auto& machine) { return machine->isRevoked; });
    if (!isOnly || device.hasTwin) {
        return;
    }
    device.isRevoked = true;
    for (Line& line : lines_) {
        if (&line.device() == &device) {
            line.dismiss(sync::Reason::Revoked);
        }
    }
    say(device.name() + " is revoked");
}

// Somebody plays to the station what a device said in an earlier sync.
void World::repeatSpoken() {
    if (spoken_.empty() || !station().isUp() || station().isFaultPlanned) {
        return;
    }
    const Spoken& spoken = dice_.pick(spoken_);
    server::StoreReplica replica(station().database());
    sync::StationSession session(spoken.setup, 0);
    std::deque<sync::Ask> asks;
    bool isOver = false;
    const auto take = [&](sync::Actions actions) {
        for (sync::Action& action : actions) {
            if (auto* ask = std::get_if<sync::Ask>(&action)) {
                asks.push_back(std::move(*ask));
            }
            isOver = isOver || std::holds_alternative<sync::Close>(action);
        }
    };
    take(session.start(0));
    BytesView left = spoken.bytes;
    while (!isOver && (!left.empty() || !asks.empty())) {
        if (!asks.empty()) {
            const sync::Ask ask = std::move(asks.front());
            asks.pop_front();
            take(session.onAnswer(sync::perform(replica, ask), 1));
        } else if (session.wantsInput()) {
            take(session.onBytes(left.substr(0, 4096), 1));
            left.remove_prefix(std::min<std::size_t>(left.size(), 4096));
        } else {
            break;
        }
    }
    say("the station hears again what " + spoken.device->name() + " said");
    station().isToCheck = true;
}

} // namespace bullace::test
