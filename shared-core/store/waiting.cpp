// Placing single lines in the chain, and keeping those that came before what stands in front of
// them.
#include "store/chain.hpp"
#include "store/database.hpp"
#include "store/derived.hpp"
#include "store/sqlite.hpp"

#include <algorithm>

namespace bullace::store {

using journal::EntryView;

namespace {

constexpr const char* kTakenPlace = "Another entry stands at this origin and number already, and a "
                                    "line without a digest cannot open a fork.";
constexpr const char* kWhichBranch = "This journal is forked here, and a line without a digest "
                                     "does not say which branch it follows.";
constexpr const char* kNoFit = "Its digest does not fit its fields. Export it again from where it "
                               "came.";
// What stands before it here is of another branch, or one of the two was changed.
constexpr const char* kNoFitHere =
    "Its digest does not fit its fields and the entry before it. If that journal is forked, take "
    "its other branch in first, and then this line again; else export it again from where it came.";

} // namespace

Result<LineFate> Database::placeLine(const EntryView& entry, const std::optional<Digest>& digest) {
    OriginRecord* record = chain_->find(entry.origin);
    bool isHeldOtherwise = false;
    for (std::size_t i = 0; record != nullptr && i < record->branches.size(); ++i) {
        const Branch& branch = record->branches[i];
        if (!branch.owns(entry.seq)) {
            continue;
        }
        const Result<StoredEntry> stored = chain_->entryAt(branch.entryId(entry.seq));
        if (!stored) {
            return stored.error();
        }
        if (digest ? stored->digest == *digest : stored->bytes == entry.bytes) {
            return LineFate{LineFate::There, {}};
        }
        isHeldOtherwise = true;
    }
    if (!digest && isHeldOtherwise) {
        return LineFate{LineFate::Refused, kTakenPlace};
    }
    Result<std::vector<Link>> links = std::vector<Link>{};
    if (record != nullptr) {
        links = chain_->linksBefore(*record, entry.seq);
    } else if (entry.seq == 1) {
        links->push_back({});
    }
    if (!links) {
        return links.error();
    }
    if (links->empty()) {
        return LineFate{LineFate::Waits, {}};
    }
    if (!digest && links->size() > 1) {
        return LineFate{LineFate::Refused, kWhichBranch};
    }
    for (Link& link : *links) {
        const Digest made = journal::chainDigest(link.digest, entry.bytes);
        if (digest && made != *digest) {
            continue;
        }
        const Result<OriginRecord*> origin = chain_->obtain(entry.origin);
        if (!origin) {
            return origin.error();
        }
        if (Status taken = takeEntry(**origin, link, entry, made); !taken) {
            return taken.error();
        }
        return LineFate{LineFate::Taken, {}};
    }
    // It may follow on a branch that is not here yet; at the very beginning there is nothing that
    // it could follow.
    return entry.seq == 1 ? LineFate{LineFate::Refused, kNoFit} : LineFate{LineFate::Waits, {}};
}

Result<bool> Database::keepWaiting(const EntryView& entry,
                                   const std::optional<Digest>& digest,
                                   const std::string& place) {
    Result<Statement> insert =
        connection_->prepare("INSERT OR IGNORE INTO waiting(origin, seq, digest, bytes, place) "
                             "VALUES(?1, ?2, ?3, ?4, ?5)");
    if (!insert) {
        return insert.error();
    }
    const std::string origin = entry.origin.text();
    insert->bindText(1, origin).bind(2, static_cast<std::int64_t>(entry.seq));
    if (digest) {
        insert->bindBytes(3, digest->view());
    } else {
        insert->bindNull(3);
    }
    if (Status kept = insert->bindBytes(4, entry.bytes).bindText(5, place).execute(); !kept) {
        return kept.error();
    }
    const bool isNew = connection_->changes() > 0;
    waitingCount_ += isNew ? 1U : 0U;
    return isNew;
}

Result<std::string> Database::hopelessReason(const EntryView& entry,
                                             const std::optional<Digest>& digest) {
    OriginRecord* record = chain_->find(entry.origin);
    if (record == nullptr) {
        return std::string{};
    }
    const auto owns = [record](std::uint64_t seq) {
        return std::any_of(record->branches.begin(),
                           record->branches.end(),
                           [seq](const Branch& branch) { return branch.owns(seq); });
    };
    if (!digest) {
        return std::string(owns(entry.seq) ? kTakenPlace : "");
    }
    if (!owns(entry.seq - 1)) {
        return std::string{};
    }
    Result<Statement> before =
        connection_->prepare("SELECT 1 FROM waiting WHERE origin = ?1 AND seq = ?2 LIMIT 1");
    if (!before) {
        return before.error();
    }
    const std::string origin = entry.origin.text();
    const Result<bool> row =
        before->bindText(1, origin).bind(2, static_cast<std::int64_t>(entry.seq - 1)).step();
    if (!row) {
        return row.error();
    }
    return std::string(*row ? "" : kNoFitHere);
}

Status Database::admitWaiting() {
    while (waitingCount_ > 0 && !touched_.empty()) {
        const auto [origin, span] = *touched_.begin();
        touched_.erase(touched_.begin());
        if (Status admitted = admitBehind(origin, span.first, span.second); !admitted) {
            return admitted;
        }
    }
    touched_.clear();
    return {};
}

// Tries what waits behind the entries first..last of an origin, and behind whatever that lets in.
Status
Database::admitBehind(const journal::Origin& origin, std::uint64_t first, std::uint64_t last) {
    Result<Statement> next =
        connection_->prepare("SELECT id, seq, digest, bytes FROM waiting WHERE origin = ?1 AND "
                             "(seq > ?2 OR (seq = ?2 AND id > ?3)) "
                             "ORDER BY seq, id LIMIT 1");
    Result<Statement> remove = connection_->prepare("DELETE FROM waiting WHERE id = ?1");
    if (!next || !remove) {
        return next ? remove.error() : next.error();
    }
    const std::string text = origin.text();
    std::uint64_t seq = first;
    std::int64_t id = INT64_MAX;
    while (true) {
        const Result<bool> row =
            next->bindText(1, text).bind(2, static_cast<std::int64_t>(seq)).bind(3, id).step();
        if (!row) {
            return row.error();
        }
        if (!*row || static_cast<std::uint64_t>(next->integer(1)) > last + 1) {
            return {};
        }
        id = next->integer(0);
        seq = static_cast<std::uint64_t>(next->integer(1));
        const Bytes bytes(next->bytes(3));
        const auto digest = Digest::fromBytes(next->bytes(2));
        next->reset();
        const Result<EntryView> entry = journal::readEntry(bytes);
        const Result<LineFate> fate =
            entry ? placeLine(*entry, digest) : Result<LineFate>(LineFate{});
        if (!fate) {
            return fate.error();
        }
        if (fate->fate != LineFate::Taken && fate->fate != LineFate::There) {
            continue;
        }
        last = std::max(last, seq);
        ++(fate->fate == LineFate::Taken ? admitted_.taken : admitted_.there);
        if (Status gone = remove->bind(1, id).execute(); !gone) {
            return gone;
        }
        --waitingCount_;
    }
}

} // namespace bullace::store
