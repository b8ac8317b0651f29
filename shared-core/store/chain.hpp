// The journals in the file: origins, their branches, and their entries by place. What is told here
// is in the open transaction; after a rollback, load() again.
#pragma once

#include "core/journal/entry.hpp"
#include "core/journal/exchange.hpp"
#include "store/sqlite.hpp"

#include <deque>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::store {

// One branch of an origin. It owns the seqs first..last; what stands before first lies on its
// parent.
struct Branch {
    std::int64_t id = 0;
    std::int64_t parent = 0; // 0: begins at seq 1
    std::uint64_t first = 1;
    std::uint64_t last = 0;
    Digest lastDigest;
    std::uint64_t greatestCount = 0;
    bool isChanged = false; // in the open transaction
    std::uint64_t rowLast =
        0; // what its row says: entries behind it are found when the file is opened

    [[nodiscard]] bool owns(std::uint64_t seq) const { return first <= seq && seq <= last; }
    [[nodiscard]] std::int64_t entryId(std::uint64_t seq) const {
        return (id << 40U) + static_cast<std::int64_t>(seq);
    }
};

inline constexpr std::uint64_t kGreatestStoredSeq = (std::uint64_t{1} << 40U) - 1;

struct OriginRecord {
    std::int64_t id = 0;
    journal::Origin origin;
    std::deque<Branch> branches; // parents before their children
};

// A stored entry: its bytes live until the next call on the Chain.
struct StoredEntry {
    Digest digest;
    BytesView bytes;
};

// Where a run begins: behind `seq` of `branch`, or, without a branch, at the very beginning.
struct Link {
    Branch* branch = nullptr;
    Digest digest; // of the entry before
};

class Chain {
public:
    [[nodiscard]] static Result<Chain> load(Connection& connection);

    [[nodiscard]] OriginRecord* find(const journal::Origin& origin);
    [[nodiscard]] const std::map<journal::Origin, OriginRecord>& origins() const {
        return origins_;
    }
    [[nodiscard]] Result<OriginRecord*>
    obtain(const journal::Origin& origin); // makes it where it is not there

    [[nodiscard]] journal::Vector vector() const;
    // What somebody lacks of an origin who holds these ends and, by the chain, all before them;
    // what an entry follows on stands in the same or an earlier part. Ends that are not held here
    // say nothing.
    [[nodiscard]] Result<std::vector<journal::Part>>
    missing(const journal::Origin& origin, std::span<const journal::BranchEnd> held);
    [[nodiscard]] std::vector<journal::Segment> segments(const journal::Origin& origin) const;
    [[nodiscard]] std::uint64_t greatestCount() const;
    [[nodiscard]] std::uint32_t greatestEpoch(std::uint64_t device) const; // 0 where there is none
    [[nodiscard]] std::uint64_t entryCount() const;

    [[nodiscard]] Result<Digest> digestAt(const Branch& branch, std::uint64_t seq);
    [[nodiscard]] Result<StoredEntry> entryAt(std::int64_t id);
    // All places behind which an entry with seq `first` can follow.
    [[nodiscard]] Result<std::vector<Link>> linksBefore(OriginRecord& record, std::uint64_t first);
    // The branch that owns (seq, digest), or nullptr.
    [[nodiscard]] Result<Branch*>
    holder(OriginRecord& record, std::uint64_t seq, const Digest& digest);
    // The ids of first..last on the path that ends on `branch`; empty where the path does not reach
    // back or up to there.
    [[nodiscard]] std::vector<std::int64_t> path(const OriginRecord& record,
                                                 const Branch& branch,
                                                 std::uint64_t first,
                                                 std::uint64_t last) const;

    // Puts an entry behind `link`: on its branch where that ends there, else on a new one. Returns
    // the branch it is on now.
    [[nodiscard]] Result<Branch*> put(OriginRecord& record,
                                      const Link& link,
                                      std::uint64_t seq,
                                      BytesView bytes,
                                      const Digest& digest);
    // Writes the rows of the branches that changed. A tap on a tablet leaves its branch's row as it
    // is for a while: that is a page less to write each time.
    [[nodiscard]] Status finish();
    [[nodiscard]] Status finishTap();
    // The last entry of some branch is not what its row says: the file was damaged.
    [[nodiscard]] bool hasDamagedEnd() const { return hasDamagedEnd_; }

private:
    explicit Chain(Connection& connection) : connection_(&connection) {}
    [[nodiscard]] Status prepare();
    [[nodiscard]] Error damaged(std::string detail) const;
    [[nodiscard]] Status readRows();
    [[nodiscard]] Status readEnd(Branch& branch);
    [[nodiscard]] Result<Branch*>
    branchBehind(OriginRecord& record, const Link& link, std::uint64_t seq);

    Connection* connection_;
    std::map<journal::Origin, OriginRecord> origins_;
    std::vector<Branch*> changed_;
    bool hasDamagedEnd_ = false;
    Statement insertEntry_;
    Statement selectEntry_;
    Statement selectTail_;
    Statement insertOrigin_;
    Statement insertBranch_;
    Statement updateBranch_;
};

} // namespace bullace::store
