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

// All of the apart bytes together; a device in a loop must not fill the station's disk with them.
constexpr std::int64_t kMostApartBytes = 64 * 1024 * 1024;

Bytes packed(const Run& run) {
    Bytes bytes;
    for (const Bytes& entry : run.entries) {
        const auto size = static_cast<std::uint32_t>(entry.size());
        for (const unsigned shift : {24U, 16U, 8U, 0U}) {
            bytes.push_back(static_cast<char>(size >> shift & 0xFFU));
        }
        bytes.append(entry);
    }
    return bytes;
}

std::vector<Bytes> unpacked(BytesView bytes) {
    std::vector<Bytes> entries;
    while (bytes.size() >= 4) {
        std::size_t size = 0;
        for (const char c : bytes.substr(0, 4)) {
            size = size << 8U | static_cast<unsigned char>(c);
        }
        if (size > bytes.size() - 4) {
            break;
        }
        entries.emplace_back(bytes.substr(4, size));
        bytes.remove_prefix(4 + size);
    }
    return entries;
}

} // namespace

Result<std::vector<journal::Place>> Database::append(std::span<const Draft> acts,
                                                     std::optional<journal::Wall> wall,
                                                     Grouping grouping) {
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
    Result<std::vector<journal::Place>> written = appendInside(acts, wall, grouping);
    if (!written && written.error().code != ErrorCode::InvalidInput) {
        recover(written.error());
    }
    return written;
}

Result<std::vector<journal::Place>> Database::appendInside(std::span<const Draft> acts,
                                                           std::optional<journal::Wall> wall,
                                                           Grouping grouping) {
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
    if (Status done = transaction->commit(); !done) {
        return done.error();
    }
    return places;
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
            OriginRecord* record = chain_->find(run.origin);
            const Result<Branch*> held = record == nullptr
                                             ? Result<Branch*>(nullptr)
                                             : chain_->holder(*record, run.last(), run.lastDigest);
            if (!held) {
                return held.error();
            }
            report = RunReport{*held == nullptr ? RunOutcome::Apart : RunOutcome::Held, 0, false};
        }
        if (!report) {
            return report.error();
        }
        const bool isLaidApart =
            report->outcome == RunOutcome::Unlinked || report->outcome == RunOutcome::Apart;
        if (isLaidApart) {
            const char* reason = report->outcome == RunOutcome::Apart ? "resent" : "unlinked";
            const Result<bool> laid = layApart(run, source, reason);
            if (!laid) {
                return laid.error();
            }
            isChanged = isChanged || *laid;
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

Result<bool> Database::layApart(const Run& run, const Source& source, const std::string& reason) {
    const Result<std::int64_t> size =
        connection_->number("SELECT ifnull(sum(length(bytes)), 0) FROM apart");
    if (!size) {
        return size.error();
    }
    const Bytes bytes = packed(run);
    if (*size + static_cast<std::int64_t>(bytes.size()) > kMostApartBytes) {
        return false;
    }
    Result<Statement> insert = connection_->prepare(
        "INSERT OR IGNORE INTO apart(origin, first, last, last_digest, device, reason, bytes) "
        "VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7)");
    if (!insert) {
        return insert.error();
    }
    const std::string origin = run.origin.text();
    const std::string device = journal::deviceText(source.letter, source.device);
    insert->bindText(1, origin).bind(2, static_cast<std::int64_t>(run.first));
    insert->bind(3, static_cast<std::int64_t>(run.last())).bindBytes(4, run.lastDigest.view());
    insert->bindText(5, device).bindText(6, reason).bindBytes(7, bytes);
    if (Status kept = insert->execute(); !kept) {
        return kept.error();
    }
    return connection_->changes() > 0;
}

Result<std::uint64_t> Database::takeInApart(std::int64_t id) {
    Result<Statement> row = connection_->prepare(
        "SELECT origin, first, last_digest, bytes FROM apart WHERE id = ?1 AND reason = 'resent'");
    if (!row) {
        return row.error();
    }
    const Result<bool> found = row->bind(1, id).step();
    if (!found) {
        return found.error();
    }
    const auto origin = *found ? journal::readOrigin(row->text(0)) : std::nullopt;
    const auto digest = *found ? Digest::fromBytes(row->bytes(2)) : std::nullopt;
    if (!origin || !digest) {
        return Error{ErrorCode::NotFound, "Nothing with this number waits to be taken in.", {}};
    }
    const Run run{
        *origin, static_cast<std::uint64_t>(row->integer(1)), unpacked(row->bytes(3)), *digest};
    row->reset();
    const Result<std::vector<RunReport>> reports = merge({run}, Source{.isStation = true});
    if (!reports) {
        return reports.error();
    }
    if ((*reports)[0].outcome == RunOutcome::Unlinked) {
        return Error{ErrorCode::Refused,
                     "What stands before these entries is not here yet. Take that in first.",
                     {}};
    }
    Result<Statement> remove = connection_->prepare("DELETE FROM apart WHERE id = ?1");
    if (!remove) {
        return remove.error();
    }
    if (Status gone = remove->bind(1, id).execute(); !gone) {
        return gone.error();
    }
    return (*reports)[0].added;
}

} // namespace bullace::store
