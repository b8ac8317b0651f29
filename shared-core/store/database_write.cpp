// The doors through which entries come in: what is written here, and what other replicas send.
#include "core/base/planted.hpp"
#include "store/chain.hpp"
#include "store/database.hpp"
#include "store/derived.hpp"
#include "store/sqlite.hpp"

#include <algorithm>

namespace bullace::store {

using journal::Entry;
using journal::EntryView;
using journal::Run;
using journal::RunOutcome;
using journal::RunReport;
using journal::Standing;

namespace {

// The names of bookmarks stand apart from what the file says of itself.
const std::string kBookmark = "kept:";

} // namespace

Result<std::vector<journal::Place>> Database::append(std::span<const Draft> acts,
                                                     std::optional<journal::Wall> wall,
                                                     Grouping grouping,
                                                     std::span<const Bookmark> marks) {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    // A journal that went two ways is never written on: this device goes on under a new number.
    const OriginRecord* own = chain_->find(about_.own);
    if (own != nullptr && own->branches.size() > 1) {
        if (Status taken = takeNewEpoch(0); !taken) {
            return taken.error();
        }
    }
    Result<std::vector<journal::Place>> written = appendInside(acts, wall, grouping, marks);
    if (!written && written.error().code != ErrorCode::InvalidInput) {
        recover(written.error());
    }
    return written;
}

Result<std::vector<journal::Place>> Database::appendInside(std::span<const Draft> acts,
                                                           std::optional<journal::Wall> wall,
                                                           Grouping grouping,
                                                           std::span<const Bookmark> marks) {
    Result<Transaction> transaction = Transaction::begin(*connection_);
    if (!transaction) {
        return transaction.error();
    }
    OriginRecord* record = chain_->find(about_.own);
    std::uint64_t seq =
        record == nullptr || record->branches.empty() ? 0 : record->branches[0].last;
    if (planted(Bug::SeqOutsideTransaction)) {
        seq = std::max(seq, plantedSeq_);
    }
    std::uint64_t count = chain_->greatestCount();
    const std::uint64_t first = seq + 1;
    std::vector<Bytes> all;
    for (const Draft& act : acts) {
        Entry entry{about_.own,
                    ++seq,
                    ++count,
                    wall,
                    act.author,
                    std::string(journal::kindWord(act.kind)),
                    act.subject,
                    act.value,
                    act.over,
                    std::nullopt,
                    act.why,
                    act.as,
                    {}};
        if (grouping == Grouping::OneAct && acts.size() > 1) {
            entry.group = journal::Group{first, acts.size()};
        }
        all.push_back(entry.encode());
        const Result<EntryView> read = journal::readEntry(all.back());
        if (!read) {
            return Error{ErrorCode::InvalidInput, read.error().message, act.subject};
        }
        if (const Standing standing = journal::standing(*read); standing != Standing::Counts) {
            return Error{ErrorCode::InvalidInput,
                         "\"" + act.subject + "\" cannot be written here. " +
                             std::string(journal::standingSentence(standing)),
                         {}};
        }
        if (act.kind == journal::Kind::Ruling && act.why.value_or("").empty()) {
            return Error{ErrorCode::InvalidInput,
                         "A ruling needs a reason. Give one, even a short one.",
                         {}};
        }
    }
    Result<OriginRecord*> own = chain_->obtain(about_.own);
    if (!own) {
        return own.error();
    }
    std::vector<journal::Place> places;
    for (const Bytes& bytes : all) {
        const EntryView entry = *journal::readEntry(bytes);
        Link link;
        if (!(*own)->branches.empty()) {
            link = {&(*own)->branches[0], (*own)->branches[0].lastDigest};
        }
        const Digest digest = journal::chainDigest(link.digest, bytes);
        if (Status taken = takeEntry(**own, link, entry, digest); !taken) {
            return taken.error();
        }
        places.push_back(entry.place());
    }
    plantedSeq_ = seq;
    if (Status finished = acts.size() == 1 ? chain_->finishTap() : chain_->finish(); !finished) {
        return finished.error();
    }
    if (Status finished = derived_->finish(*chain_); !finished) {
        return finished.error();
    }
    if (Status kept = keepInside(marks); !kept) {
        return kept.error();
    }
    if (Status done = transaction->commit(); !done) {
        return done.error();
    }
    return places;
}

Status Database::keepInside(std::span<const Bookmark> marks) {
    if (marks.empty()) {
        return {};
    }
    Result<Statement> set =
        connection_->prepare("INSERT INTO about(key, value) VALUES(?1, ?2) "
                             "ON CONFLICT(key) DO UPDATE SET value = excluded.value");
    if (!set) {
        return set.error();
    }
    for (const Bookmark& mark : marks) {
        const std::string key = kBookmark + mark.name;
        if (Status done = set->bindText(1, key).bindBytes(2, mark.value).execute(); !done) {
            return done;
        }
        set->reset();
    }
    return {};
}

Status Database::keep(std::span<const Bookmark> marks) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Transaction> transaction = Transaction::begin(*connection_);
    if (!transaction) {
        return transaction.error();
    }
    if (Status kept = keepInside(marks); !kept) {
        return kept;
    }
    return transaction->commit();
}

Result<Bytes> Database::kept(const std::string& name) {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    Result<Statement> row = connection_->prepare("SELECT value FROM about WHERE key = ?1");
    if (!row) {
        return row.error();
    }
    const std::string key = kBookmark + name;
    const Result<bool> found = row->bindText(1, key).step();
    if (!found) {
        return found.error();
    }
    return *found ? Bytes(row->bytes(0)) : Bytes{};
}

Status Database::finishInside() {
    if (Status admitted = admitWaiting(); !admitted) {
        return admitted;
    }
    if (Status finished = chain_->finish(); !finished) {
        return finished;
    }
    return derived_->finish(*chain_);
}

Result<std::vector<RunReport>> Database::merge(const journal::Batch& batch, const Source& source) {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    Result<std::vector<RunReport>> reports = mergeInside(batch, source);
    if (!reports) {
        recover(reports.error());
    }
    return reports;
}

Result<std::vector<RunReport>> Database::mergeInside(const journal::Batch& batch,
                                                     const Source& source) {
    Result<Transaction> transaction = Transaction::begin(*connection_);
    if (!transaction) {
        return transaction.error();
    }
    std::vector<RunReport> reports;
    bool isChanged = false;
    for (const Run& run : batch) {
        const bool isOwn = run.origin.device == source.device &&
                           (run.origin.letter == source.letter || run.origin.letter == 't');
        const bool waitsForOffice = source.isRelay && !isOwn && run.origin.letter == 's';
        Result<RunReport> report = RunReport{};
        if (isOwn || source.isStation || (source.isRelay && !waitsForOffice)) {
            report = mergeRun(run);
        } else if (waitsForOffice) {
            report = weighResent(run);
        }
        if (!report) {
            return report.error();
        }
        const bool isLaidApart =
            report->outcome == RunOutcome::Unlinked || report->outcome == RunOutcome::Apart;
        if (isLaidApart) {
            const char* reason = report->outcome == RunOutcome::Apart ? "resent" : "unlinked";
            const Result<Laid> laid = layApart(run, source, reason);
            if (!laid) {
                return laid.error();
            }
            isChanged = isChanged || *laid == Laid::New;
            if (*laid == Laid::NoRoom) {
                report->outcome = RunOutcome::Unlinked; // the sender has to come again with it
            }
        }
        isChanged = isChanged || report->added > 0;
        reports.push_back(*report);
    }
    if (!isChanged) {
        return reports; // nothing to write: the transaction goes with nothing in it
    }
    if (Status finished = finishInside(); !finished) {
        return finished.error();
    }
    if (Status done = transaction->commit(); !done) {
        return done.error();
    }
    return reports;
}

} // namespace bullace::store
