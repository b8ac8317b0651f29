// The season's syncs: lines that are opened, moved on, cut, and what a device learns from them.
#include "sim/violation.hpp"
#include "sim/world.hpp"

#include <algorithm>

namespace bullace::test {

namespace {

constexpr std::size_t kMostSpoken = 4;

} // namespace

void World::startSync() {
    Machine& device = *anyDevice();
    if (device.isUp() && station().isUp() && !device.isRevoked) {
        startLine(device);
    }
}

void World::startLine(Machine& device) {
    // The newest session of a device replaces an older one, also that of its twin, who has the same
    // key.
    for (Line& line : lines_) {
        if (line.device().device() == device.device()) {
            line.dismiss(sync::Reason::Replaced);
        }
    }
    const auto clock = [this] { return static_cast<std::int64_t>(dice_.below(4'000'000'000'000)); };
    const std::int64_t deviceClock = clock();
    lines_.emplace_back(device, station(), ledger_, deviceClock, clock());
    if (dice_.isOne(1, 12)) {
        lines_.back().damageNextBatch();
    }
    say(device.name() + " begins to sync");
}

void World::moveLines() {
    if (lines_.empty()) {
        return;
    }
    auto line = lines_.begin();
    std::advance(line, static_cast<std::ptrdiff_t>(dice_.below(lines_.size())));
    for (std::uint64_t moves = dice_.between(1, 30); moves > 0; --moves) {
        const bool hasPower =
            !line->device().disk().isPowerOff() && !line->station().disk().isPowerOff();
        if (!hasPower || !line->step(dice_)) {
            break;
        }
    }
    if (dice_.isOne(1, 20)) {
        line->tick(static_cast<sync::Millis>(dice_.below(30'000)));
    }
}

void World::cutLine() {
    if (!lines_.empty()) {
        auto line = lines_.begin();
        std::advance(line, static_cast<std::ptrdiff_t>(dice_.below(lines_.size())));
        line->cut();
        say("the line of " + line->device().name() + " breaks");
    }
}

// What the program around a session does when it is over (sync/server/device.cpp).
void World::tellDevice(Line& line) {
    Machine& device = line.device();
    if (line.isToldToDevice || !device.isUp()) {
        return;
    }
    line.isToldToDevice = true;
    const sync::Summary& summary = line.summary();
    if (summary.needsNewEpoch) {
        if (const Status taken = device.database().takeNewEpoch(summary.greatestEpoch); !taken) {
            onStoreError(device, taken.error(), "take a new epoch");
            return;
        }
        say(device.name() + " goes on as " + device.database().about().own.text());
    }
    if (!line.clientStatus()->ok() || !summary.isComplete) {
        return;
    }
    device.wasSyncedSinceFork = true;
    if (!summary.mayRememberHistory()) {
        return;
    }
    const store::StationRow row{"00",
                                "Invented Station",
                                "",
                                Bytes(summary.stationHistory.begin(), summary.stationHistory.end()),
                                0};
    if (const Status kept = store::setStation(device.database(), row); !kept) {
        onStoreError(device, kept.error(), "remember the station");
    }
}

void World::tidyLines() {
    for (auto line = lines_.begin(); line != lines_.end();) {
        if (!line->isOver()) {
            ++line;
            continue;
        }
        // The device's program may be started anew in here, which cuts what it has left: so the
        // line is put aside first.
        std::list<Line> over;
        over.splice(over.begin(), lines_, line++);
        Line& done = over.front();
        say(done.device().name() + " has synced: " + std::to_string(done.summary().newThere) +
            " there, " + std::to_string(done.summary().newHere) + " here" +
            (done.isComplete() ? "" : ", broken off"));
        if (spoken_.size() < kMostSpoken && dice_.isOne(1, 3)) {
            spoken_.push_back({&done.device(), done.stationSetup(), done.spoken()});
        }
        tellDevice(done);
        line = lines_.begin();
    }
}

// The program of a machine ends: its lines break, and only the other side learns of it.
void World::cutLinesOf(const Machine& machine) {
    std::list<Line> broken;
    for (auto line = lines_.begin(); line != lines_.end();) {
        const auto at = line++;
        if (at->touches(machine)) {
            broken.splice(broken.end(), lines_, at);
        }
    }
    for (Line& line : broken) {
        line.cut();
        if (&line.device() != &machine && !line.device().disk().isPowerOff()) {
            tellDevice(line);
        }
    }
}

} // namespace bullace::test
