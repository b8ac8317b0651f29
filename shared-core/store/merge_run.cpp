// Taking in one run of entries: where does it follow, how much of it is held already, and does it
// fork the journal?
#include "core/base/planted.hpp"
#include "store/chain.hpp"
#include "store/database.hpp"
#include "store/derived.hpp"

#include <algorithm>

namespace bullace::store {

using journal::EntryView;
using journal::Run;
using journal::RunOutcome;
using journal::RunReport;

namespace {

struct ReadRun {
    std::vector<EntryView>
        entries; // as many as can be read and say the right place, from the first on
};

ReadRun readEntries(const Run& run) {
    ReadRun read;
    read.entries.reserve(run.entries.size());
    for (std::size_t i = 0; i < run.entries.size(); ++i) {
        const Result<EntryView> entry = journal::readEntry(run.entries[i]);
        if (!entry || entry->origin != run.origin || entry->seq != run.first + i) {
            break;
        }
        read.entries.push_back(*entry);
    }
    return read;
}

// The digests along the run, if it arrives at its last digest from this link; empty if it does not.
std::vector<Digest> digestsFrom(const Link& link, const Run& run) {
    std::vector<Digest> digests;
    digests.reserve(run.entries.size());
    Digest digest = link.digest;
    for (const Bytes& bytes : run.entries) {
        digest = journal::chainDigest(digest, bytes);
        digests.push_back(digest);
    }
    if (digest != run.lastDigest && !planted(Bug::UnlinkedAccepted)) {
        digests.clear();
    }
    return digests;
}

} // namespace

Result<RunReport> Database::mergeRun(const Run& run) {
    RunReport report;
    if (run.entries.empty() || run.first == 0 || run.last() > kGreatestStoredSeq) {
        return report;
    }
    OriginRecord* record = chain_->find(run.origin);
    Result<std::vector<Link>> links = std::vector<Link>{};
    if (record != nullptr) {
        links = chain_->linksBefore(*record, run.first);
    } else if (run.first == 1) {
        links->push_back({});
    }
    if (!links) {
        return links.error();
    }
    if (links->empty() && planted(Bug::UnlinkedAccepted)) {
        links->push_back({});
    }
    Link link;
    std::vector<Digest> digests;
    for (const Link& candidate : *links) {
        digests = digestsFrom(candidate, run);
        if (!digests.empty()) {
            link = candidate;
            break;
        }
    }
    if (digests.empty()) {
        return report;
    }
    const ReadRun read = readEntries(run);
    const bool isReadWhole = read.entries.size() == run.entries.size();
    report.outcome = isReadWhole ? RunOutcome::Held : RunOutcome::Unlinked;

    // What is held is a beginning of the run: by the chain, whoever holds its last entry holds all.
    std::size_t held = 0;
    for (std::size_t end = record == nullptr ? 0 : read.entries.size(); held < end;) {
        const std::size_t middle = end == read.entries.size() ? end - 1 : held + (end - held) / 2;
        const Result<Branch*> branch = chain_->holder(*record, run.first + middle, digests[middle]);
        if (!branch) {
            return branch.error();
        }
        if (*branch != nullptr) {
            held = middle + 1;
            link = {*branch, digests[middle]};
        } else {
            end = middle;
        }
    }
    if (held == read.entries.size()) {
        report.isForked = record != nullptr && record->branches.size() > 1;
        return report;
    }
    if (planted(Bug::ForkBranchDropped) && record != nullptr && !record->branches.empty() &&
        (link.branch == nullptr || link.branch->last != run.first + held - 1)) {
        return report;
    }
    const Result<OriginRecord*> origin = chain_->obtain(run.origin);
    if (!origin) {
        return origin.error();
    }
    for (std::size_t i = held; i < read.entries.size(); ++i) {
        if (Status taken = takeEntry(**origin, link, read.entries[i], digests[i]); !taken) {
            return taken.error();
        }
    }
    report.added = read.entries.size() - held;
    if (isReadWhole) {
        report.outcome = RunOutcome::Taken;
    }
    report.isForked = (*origin)->branches.size() > 1;
    return report;
}

Status Database::takeEntry(OriginRecord& record,
                           Link& link,
                           const EntryView& entry,
                           const Digest& digest) {
    const Result<Branch*> branch = chain_->put(record, link, entry.seq, entry.bytes, digest);
    if (!branch) {
        return branch.error();
    }
    if (journal::standing(entry) == journal::Standing::Counts) {
        (*branch)->greatestCount = std::max((*branch)->greatestCount, entry.count);
    }
    if (waitingCount_ > 0) {
        auto& [first, last] =
            touched_.try_emplace(record.origin, entry.seq, entry.seq).first->second;
        first = std::min(first, entry.seq);
        last = std::max(last, entry.seq);
    }
    link = {*branch, digest};
    return derived_->note(record, **branch, entry);
}

} // namespace bullace::store
