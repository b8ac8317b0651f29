#include "sim/ledger.hpp"

#include "sim/violation.hpp"

#include <algorithm>
#include <sstream>

namespace bullace::test {

namespace {

std::string nameOf(const Mark& mark) {
    return mark.origin.text() + " number " + std::to_string(mark.seq) + " (" +
           mark.digest.hex().substr(0, 8) + ")";
}

void demandRead(const Status& status, const Machine& machine) {
    demand(status.ok(),
           "a sound disk can be read",
           machine.name() + ": " + (status ? "" : status.error().message));
}

NaiveState fromRow(const store::StateRow& row) {
    NaiveState state{row.subject, std::string(merge::stateWord(row.state)), std::nullopt, {}, {}};
    if (!row.valueJson.empty()) {
        state.value = Json::parse(row.valueJson);
    }
    if (row.rule) {
        state.rule = descriptors::ruleWord(*row.rule);
    }
    for (const journal::Place& head : row.heads) {
        state.heads.push_back({head.origin.text(), head.seq});
    }
    return state;
}

} // namespace

const LedgerEntry* Ledger::find(const Digest& digest) const {
    const auto found = entries_.find(digest);
    return found == entries_.end() ? nullptr : &found->second;
}

std::uint32_t Ledger::greatestEpoch(std::uint64_t device) const {
    const auto found = epochs_.find(device);
    return found == epochs_.end() ? 0 : found->second;
}

const LedgerEntry& Ledger::learn(BytesView bytes, const Digest& digest) {
    if (const LedgerEntry* known = find(digest)) {
        demand(known->bytes == bytes,
               "no entry is ever changed",
               nameOf(known->mark) + " has other bytes now");
        return *known;
    }
    const Result<journal::EntryView> read = journal::readEntry(bytes);
    demand(read.ok(), "no entry is ever changed", "an entry that cannot be read");
    std::vector<Digest> before;
    if (read->seq == 1) {
        before.push_back({});
    } else if (const auto found = byPlace_.find({read->origin, read->seq - 1});
               found != byPlace_.end()) {
        before = found->second;
    }
    LedgerEntry entry{
        {read->origin, read->seq, digest}, Bytes(bytes), {}, readNaively(bytes, digest, before)};
    demand(!entry.naive.before.empty(),
           "every chain is valid",
           nameOf(entry.mark) + " follows from nothing");
    entry.before = *Digest::fromBytes(*fromHex(entry.naive.before));
    byPlace_[read->place()].push_back(digest);
    epochs_[read->origin.device] = std::max(epochs_[read->origin.device], read->origin.epoch);
    const LedgerEntry& kept = entries_.emplace(digest, std::move(entry)).first->second;
    all_.push_back(&kept);
    return kept;
}

std::vector<Mark> Ledger::marksUpTo(const Mark& last, std::uint64_t count) const {
    std::vector<Mark> marks;
    for (const LedgerEntry* at = find(last.digest); at != nullptr && marks.size() < count;
         at = find(at->before)) {
        marks.push_back(at->mark);
    }
    return marks;
}

std::vector<const LedgerEntry*> checkJournal(Machine& machine, Ledger& ledger) {
    std::vector<const LedgerEntry*> held;
    std::set<Digest> there;
    std::set<Digest> followed;
    demandRead(machine.database().eachEntry([&](const Digest& digest, BytesView bytes) {
        held.push_back(&ledger.learn(bytes, digest));
        there.insert(digest);
        followed.insert(held.back()->before);
        return true;
    }),
               machine);
    demand(there.size() == held.size(), "no entry is held twice", machine.name());
    journal::Vector ends;
    for (const LedgerEntry* entry : held) {
        const LedgerEntry* before = ledger.find(entry->before);
        const bool isJoined =
            entry->mark.seq == 1 ||
            (before != nullptr && before->mark.origin == entry->mark.origin &&
             before->mark.seq + 1 == entry->mark.seq && there.count(entry->before) != 0);
        demand(isJoined,
               "no journal has a hole",
               machine.name() + " lacks what stands before " + nameOf(entry->mark));
        if (followed.count(entry->mark.digest) == 0) {
            ends.push_back(entry->mark);
        }
    }
    std::sort(ends.begin(), ends.end());
    demand(ends == machine.database().vector(), "the vector is what is there", machine.name());
    for (const Mark& mark : machine.promised) {
        demand(there.count(mark.digest) != 0,
               "what was said to be saved is there",
               machine.name() + " lacks " + nameOf(mark));
    }
    return held;
}

void checkState(Machine& machine, const std::vector<const LedgerEntry*>& held) {
    NaiveStation naive;
    for (const LedgerEntry* entry : held) {
        naive.add(entry->naive);
    }
    const std::vector<NaiveState> expected = naive.states();
    std::size_t at = 0;
    demandRead(machine.database().eachState("",
                                            [&](const store::StateRow& row) {
                                                const std::string line = fromRow(row).line();
                                                const std::string wanted = at < expected.size()
                                                                               ? expected[at].line()
                                                                               : "nothing";
                                                demand(line == wanted,
                                                       "heads and values are those of brute force",
                                                       machine.name() + " has " + line + ", not " +
                                                           wanted);
                                                ++at;
                                                return true;
                                            }),
               machine);
    demand(at == expected.size(),
           "heads and values are those of brute force",
           machine.name() + " lacks " + (at < expected.size() ? expected[at].line() : ""));
    std::vector<std::string> open;
    for (const NaiveState& state : expected) {
        if (state.status == "open") {
            open.push_back(state.subject);
        }
    }
    std::vector<std::string> conflicts;
    demandRead(machine.database().eachConflict("",
                                               [&](const store::StateRow& row) {
                                                   conflicts.push_back(row.subject);
                                                   return true;
                                               }),
               machine);
    demand(open == conflicts, "the conflicts are those of brute force", machine.name());
    std::multiset<NaivePlace> idle;
    const std::set<std::string> uncounted = naive.uncounted();
    for (const LedgerEntry* entry : held) {
        if (uncounted.count(entry->naive.digest) != 0) {
            idle.insert(entry->naive.place);
        }
    }
    std::multiset<NaivePlace> listed;
    demandRead(machine.database().eachUncounted([&](const store::UncountedRow& row) {
        listed.insert({row.place.origin.text(), row.place.seq});
        return true;
    }),
               machine);
    demand(idle == listed, "what counts is judged as by brute force", machine.name());
}

void checkVerify(Machine& machine) {
    const Result<store::Verdict> verdict = machine.database().verify({});
    demand(verdict.ok(),
           "a sound disk can be read",
           machine.name() + (verdict ? "" : verdict.error().message));
    demand(verdict->faults.empty(),
           "the state is that of a rebuild",
           machine.name() + ": " + (verdict->faults.empty() ? "" : verdict->faults[0]));
}

std::string exportOf(Machine& machine) {
    std::ostringstream lines;
    demandRead(machine.database().exportLines(lines, {}), machine);
    return lines.str();
}

std::string stateOf(Machine& machine) {
    std::string text;
    demandRead(machine.database().eachState("",
                                            [&](const store::StateRow& row) {
                                                text += fromRow(row).line() + " " + row.valueJson +
                                                        "\n";
                                                return true;
                                            }),
               machine);
    return text;
}

} // namespace bullace::test
