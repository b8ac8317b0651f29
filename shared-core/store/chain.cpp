#include "store/chain.hpp"

#include "core/base/planted.hpp"
#include "core/journal/standing.hpp"

#include <algorithm>

namespace bullace::store {

using journal::Origin;

namespace {

Error damaged(const Connection& connection, std::string detail) {
    return {ErrorCode::Damaged,
            "The journals in \"" + connection.path() +
                "\" do not hang together. Keep the file as it is, and run `bullace verify` on it.",
            std::move(detail)};
}

} // namespace

Result<Chain> Chain::load(Connection& connection) {
    Chain chain(connection);
    if (Status ready = chain.prepare(); !ready) {
        return ready.error();
    }
    if (Status read = chain.readRows(); !read) {
        return read.error();
    }
    return chain;
}

Status Chain::prepare() {
    const auto make = [this](Statement& into, std::string_view sql) -> Status {
        Result<Statement> made = connection_->prepare(sql);
        if (!made) {
            return made.error();
        }
        into = std::move(*made);
        return {};
    };
    const std::pair<Statement*, std::string_view> all[] = {
        {&insertEntry_, "INSERT INTO entries(id, digest, bytes) VALUES(?1, ?2, ?3)"},
        {&selectEntry_, "SELECT digest, bytes FROM entries WHERE id = ?1"},
        {&selectTail_,
         "SELECT id, digest, bytes FROM entries WHERE id >= ?1 AND id <= ?2 ORDER BY id"},
        {&insertOrigin_, "INSERT INTO origins(origin) VALUES(?1)"},
        {&insertBranch_,
         "INSERT INTO branches(origin, parent, first, last, last_digest, greatest_count) "
         "VALUES(?1, ?2, ?3, ?4, ?5, 0)"},
        {&updateBranch_,
         "UPDATE branches SET last = ?2, last_digest = ?3, greatest_count = ?4 WHERE id = ?1"},
    };
    for (const auto& [into, sql] : all) {
        if (Status made = make(*into, sql); !made) {
            return made;
        }
    }
    return {};
}

Status Chain::readRows() {
    Result<Statement> rows = connection_->prepare(
        "SELECT o.id, o.origin, b.id, b.parent, b.first, b.last, b.last_digest, b.greatest_count "
        "FROM origins o LEFT JOIN branches b ON b.origin = o.id ORDER BY b.id");
    if (!rows) {
        return rows.error();
    }
    while (true) {
        const Result<bool> row = rows->step();
        if (!row) {
            return row.error();
        }
        if (!*row) {
            return {};
        }
        const auto origin = journal::readOrigin(rows->text(1));
        const auto digest = Digest::fromBytes(rows->bytes(6));
        if (!origin || (!rows->isNull(2) && !digest)) {
            return damaged(*connection_, "origins or branches");
        }
        OriginRecord& record = origins_[*origin];
        record.id = rows->integer(0);
        record.origin = *origin;
        if (!rows->isNull(2)) {
            const auto last = static_cast<std::uint64_t>(rows->integer(5));
            record.branches.push_back({rows->integer(2),
                                       rows->integer(3),
                                       static_cast<std::uint64_t>(rows->integer(4)),
                                       last,
                                       *digest,
                                       static_cast<std::uint64_t>(rows->integer(7)),
                                       false,
                                       last});
            if (Status read = readEnd(record.branches.back()); !read) {
                return read;
            }
        }
    }
}

// Checks the last entry that the row tells of, and finds those behind it.
Status Chain::readEnd(Branch& branch) {
    const std::int64_t first = branch.entryId(branch.rowLast);
    selectTail_.reset();
    selectTail_.bind(1, first).bind(2, branch.entryId(kGreatestStoredSeq));
    bool isEndThere = false;
    while (true) {
        const Result<bool> row = selectTail_.step();
        if (!row) {
            return row.error();
        }
        if (!*row) {
            break;
        }
        const auto digest = Digest::fromBytes(selectTail_.bytes(1));
        if (selectTail_.integer(0) == first) {
            isEndThere = digest == branch.lastDigest;
            continue;
        }
        const Result<journal::EntryView> entry = journal::readEntry(selectTail_.bytes(2));
        if (!digest || !entry || selectTail_.integer(0) != branch.entryId(branch.last + 1)) {
            hasDamagedEnd_ = true;
            break;
        }
        ++branch.last;
        branch.lastDigest = *digest;
        if (journal::standing(*entry) == journal::Standing::Counts) {
            branch.greatestCount = std::max(branch.greatestCount, entry->count);
        }
    }
    selectTail_.reset();
    hasDamagedEnd_ = hasDamagedEnd_ || !isEndThere;
    return {};
}

OriginRecord* Chain::find(const Origin& origin) {
    const auto found = origins_.find(origin);
    return found == origins_.end() ? nullptr : &found->second;
}

Result<OriginRecord*> Chain::obtain(const Origin& origin) {
    if (OriginRecord* record = find(origin)) {
        return record;
    }
    const std::string text = origin.text();
    if (Status made = insertOrigin_.bindText(1, text).execute(); !made) {
        return made.error();
    }
    OriginRecord& record = origins_[origin];
    record.id = connection_->lastRowId();
    record.origin = origin;
    return &record;
}

journal::Vector Chain::vector() const {
    journal::Vector ends;
    for (const auto& [origin, record] : origins_) {
        for (const Branch& branch : record.branches) {
            ends.push_back({origin, branch.last, branch.lastDigest});
        }
    }
    std::sort(ends.begin(), ends.end());
    return ends;
}

std::vector<journal::Segment> Chain::segments(const Origin& origin) const {
    std::vector<journal::Segment> parts;
    const auto found = origins_.find(origin);
    if (found != origins_.end()) {
        for (const Branch& branch : found->second.branches) {
            parts.push_back({origin, branch.first, branch.last, branch.lastDigest});
        }
    }
    return parts;
}

std::uint64_t Chain::greatestCount() const {
    std::uint64_t greatest = 0;
    for (const auto& [origin, record] : origins_) {
        for (const Branch& branch : record.branches) {
            greatest = std::max(greatest, branch.greatestCount);
        }
    }
    return greatest;
}

std::uint32_t Chain::greatestEpoch(std::uint64_t device) const {
    std::uint32_t greatest = 0;
    for (const auto& [origin, record] : origins_) {
        if (origin.device == device) {
            greatest = std::max(greatest, origin.epoch);
        }
    }
    return greatest;
}

std::uint64_t Chain::entryCount() const {
    std::uint64_t count = 0;
    for (const auto& [origin, record] : origins_) {
        for (const Branch& branch : record.branches) {
            count += branch.last - branch.first + 1;
        }
    }
    return count;
}

Result<StoredEntry> Chain::entryAt(std::int64_t id) {
    selectEntry_.reset();
    const Result<bool> row = selectEntry_.bind(1, id).step();
    if (!row) {
        return row.error();
    }
    const auto digest = *row ? Digest::fromBytes(selectEntry_.bytes(0)) : std::nullopt;
    if (!digest) {
        return damaged(*connection_, "entry " + std::to_string(id));
    }
    return StoredEntry{*digest, selectEntry_.bytes(1)};
}

Result<Digest> Chain::digestAt(const Branch& branch, std::uint64_t seq) {
    if (seq == branch.last) {
        return branch.lastDigest;
    }
    const Result<StoredEntry> entry = entryAt(branch.entryId(seq));
    selectEntry_.reset();
    if (!entry) {
        return entry.error();
    }
    return entry->digest;
}

Result<std::vector<Link>> Chain::linksBefore(OriginRecord& record, std::uint64_t first) {
    std::vector<Link> links;
    if (first == 1) {
        links.push_back({});
        return links;
    }
    for (Branch& branch : record.branches) {
        if (!branch.owns(first - 1)) {
            continue;
        }
        const Result<Digest> digest = digestAt(branch, first - 1);
        if (!digest) {
            return digest.error();
        }
        links.push_back({&branch, *digest});
    }
    return links;
}

Result<Branch*> Chain::holder(OriginRecord& record, std::uint64_t seq, const Digest& digest) {
    for (Branch& branch : record.branches) {
        if (!branch.owns(seq)) {
            continue;
        }
        const Result<Digest> held = digestAt(branch, seq);
        if (!held) {
            return held.error();
        }
        if (*held == digest || planted(Bug::SkipWithoutDigest)) {
            return &branch;
        }
    }
    return nullptr;
}

std::vector<std::int64_t> Chain::path(const OriginRecord& record,
                                      const Branch& branch,
                                      std::uint64_t first,
                                      std::uint64_t last) const {
    std::vector<std::int64_t> ids;
    if (last > branch.last || first == 0) {
        return ids;
    }
    const Branch* at = &branch;
    for (std::uint64_t seq = last; seq >= first; --seq) {
        while (seq < at->first) {
            const auto parent =
                std::find_if(record.branches.begin(),
                             record.branches.end(),
                             [at](const Branch& other) { return other.id == at->parent; });
            if (parent == record.branches.end()) {
                return {};
            }
            at = &*parent;
        }
        ids.push_back(at->entryId(seq));
    }
    std::reverse(ids.begin(), ids.end());
    return ids;
}

Result<Branch*> Chain::branchBehind(OriginRecord& record, const Link& link, std::uint64_t seq) {
    if (link.branch != nullptr && link.branch->last + 1 == seq) {
        return link.branch;
    }
    const std::int64_t parent = link.branch == nullptr ? 0 : link.branch->id;
    insertBranch_.bind(1, record.id).bind(2, parent).bind(3, static_cast<std::int64_t>(seq));
    insertBranch_.bind(4, static_cast<std::int64_t>(seq)).bindBytes(5, link.digest.view());
    if (Status made = insertBranch_.execute(); !made) {
        return made.error();
    }
    record.branches.push_back(
        {connection_->lastRowId(), parent, seq, seq - 1, link.digest, 0, false, seq - 1});
    return &record.branches.back();
}

Result<Branch*> Chain::put(OriginRecord& record,
                           const Link& link,
                           std::uint64_t seq,
                           BytesView bytes,
                           const Digest& digest) {
    if (seq > kGreatestStoredSeq) {
        return Error{ErrorCode::BeyondLimit, "A journal cannot be as long as that.", {}};
    }
    const Result<Branch*> branch = branchBehind(record, link, seq);
    if (!branch) {
        return branch.error();
    }
    insertEntry_.bind(1, (*branch)->entryId(seq)).bindBytes(2, digest.view()).bindBytes(3, bytes);
    if (Status stored = insertEntry_.execute(); !stored) {
        return stored.error();
    }
    (*branch)->last = seq;
    (*branch)->lastDigest = digest;
    if (!(*branch)->isChanged) {
        (*branch)->isChanged = true;
        changed_.push_back(*branch);
    }
    return *branch;
}

Status Chain::finish() {
    for (Branch* branch : changed_) {
        updateBranch_.bind(1, branch->id).bind(2, static_cast<std::int64_t>(branch->last));
        updateBranch_.bindBytes(3, branch->lastDigest.view());
        updateBranch_.bind(4, static_cast<std::int64_t>(branch->greatestCount));
        if (Status written = updateBranch_.execute(); !written) {
            return written;
        }
        branch->isChanged = false;
        branch->rowLast = branch->last;
    }
    changed_.clear();
    return {};
}

Status Chain::finishTap() {
    constexpr std::uint64_t kMostBehindRow = 64;
    const bool isDue = std::any_of(changed_.begin(), changed_.end(), [](const Branch* branch) {
        return branch->rowLast < branch->first || branch->last - branch->rowLast >= kMostBehindRow;
    });
    if (isDue) {
        return finish();
    }
    for (Branch* branch : changed_) {
        branch->isChanged = false;
    }
    changed_.clear();
    return {};
}

} // namespace bullace::store
