#include "store/chain.hpp"

#include "core/base/planted.hpp"
#include "core/journal/standing.hpp"

#include <algorithm>

namespace bullace::store {

using journal::Origin;

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

Result<std::vector<journal::Part>> Chain::missing(const Origin& origin,
                                                  std::span<const journal::BranchEnd> held) {
    std::vector<journal::Part> parts;
    OriginRecord* record = find(origin);
    if (record == nullptr) {
        return parts;
    }
    std::map<std::int64_t, std::uint64_t>
        covered; // branch to the last of its seqs that is held there
    for (const journal::BranchEnd& end : held) {
        const Result<Branch*> branch = holder(*record, end.seq, end.digest);
        if (!branch) {
            return branch.error();
        }
        if (*branch != nullptr) {
            std::uint64_t& last = covered[(*branch)->id];
            last = std::max(last, end.seq);
        }
    }
    // Children stand behind their parents: whoever holds some of a branch holds its parent up to
    // where it left.
    for (auto branch = record->branches.rbegin(); branch != record->branches.rend(); ++branch) {
        const auto own = covered.find(branch->id);
        if (own != covered.end() && branch->parent != 0) {
            std::uint64_t& last = covered[branch->parent];
            last = std::max(last, branch->first - 1);
        }
    }
    for (const Branch& branch : record->branches) {
        const auto own = covered.find(branch.id);
        const std::uint64_t from =
            own == covered.end() ? branch.first : std::max(branch.first, own->second + 1);
        if (from <= branch.last) {
            parts.push_back({{origin, branch.first, branch.last, branch.lastDigest}, from});
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
        return damaged("entry " + std::to_string(id));
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
