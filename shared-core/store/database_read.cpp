// Reading a journal file: how far it reaches, its entries, and the state that follows from them.
#include "core/base/numbers.hpp"
#include "store/chain.hpp"
#include "store/database.hpp"
#include "store/rows.hpp"

#include <algorithm>

namespace bullace::store {

using journal::Place;

namespace {

// The subject itself and those below it, as one stretch of an index. Between the two stand only
// paths that go on with a byte before '/', which are of other subjects.
constexpr const char* kRange = "path >= ?1 AND path < ?3 AND (path = ?1 OR path >= ?2) AND ";
constexpr const char* kStateColumns =
    "SELECT id, path, state, value, rule, head FROM subjects WHERE ";

// All three are empty for everything. '0' follows '/' in ASCII.
template<typename Bounds>
Bounds boundsOf(const std::string& under) {
    return under.empty() ? Bounds{} : Bounds{under, under + "/", under + "0"};
}

std::optional<std::int64_t> optionalInteger(const Statement& statement, int column) {
    return statement.isNull(column) ? std::nullopt : std::optional(statement.integer(column));
}

} // namespace

journal::Vector Database::vector() const {
    return chain_->vector();
}

Result<bool> Database::holds(const journal::BranchEnd& end) {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    OriginRecord* record = chain_->find(end.origin);
    if (record == nullptr) {
        return false;
    }
    const Result<Branch*> branch = chain_->holder(*record, end.seq, end.digest);
    if (!branch) {
        return branch.error();
    }
    return *branch != nullptr;
}

Result<std::vector<journal::Part>> Database::missing(const journal::Origin& origin,
                                                     std::span<const journal::BranchEnd> held) {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    return chain_->missing(origin, held);
}

std::vector<journal::Segment> Database::segments(const journal::Origin& origin) const {
    return chain_ == nullptr ? std::vector<journal::Segment>{} : chain_->segments(origin);
}

std::uint32_t Database::greatestEpoch(std::uint64_t device) const {
    const std::uint32_t stored = chain_ == nullptr ? 0 : chain_->greatestEpoch(device);
    return device == about_.own.device ? std::max(stored, about_.own.epoch) : stored;
}

Result<journal::Run> Database::readRun(const journal::Segment& segment,
                                       std::uint64_t from,
                                       std::size_t mostEntries,
                                       std::size_t mostBytes) {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    journal::Run run{segment.origin, from, {}, {}};
    OriginRecord* record = chain_->find(segment.origin);
    const Result<Branch*> found = record == nullptr
                                      ? Result<Branch*>(nullptr)
                                      : chain_->holder(*record, segment.last, segment.lastDigest);
    if (!found) {
        return found.error();
    }
    const Branch* branch = *found;
    if (branch == nullptr || !branch->owns(from)) {
        return Error{
            ErrorCode::NotFound, "These entries are not held here.", segment.origin.text()};
    }
    Result<Statement> rows = connection_->prepare(
        "SELECT digest, bytes FROM entries WHERE id >= ?1 AND id <= ?2 ORDER BY id");
    if (!rows) {
        return rows.error();
    }
    std::size_t bytes = 0;
    rows->bind(1, branch->entryId(from)).bind(2, branch->entryId(segment.last));
    run.entries.reserve(mostEntries);
    Status read = forEach(*rows, [&]() -> Result<bool> {
        const BytesView entry = rows->bytes(1);
        if (!run.entries.empty() &&
            (run.entries.size() == mostEntries || bytes + entry.size() > mostBytes)) {
            return false;
        }
        bytes += entry.size();
        run.entries.emplace_back(entry);
        run.lastDigest = Digest::fromBytes(rows->bytes(0)).value_or(Digest{});
        return true;
    });
    if (!read) {
        return read.error();
    }
    return run;
}

Place Database::placeOf(std::int64_t entryId) const {
    const std::int64_t branchId = entryId >> 40U;
    for (const auto& [origin, record] : chain_->origins()) {
        for (const Branch& branch : record.branches) {
            if (branch.id == branchId) {
                return {origin,
                        static_cast<std::uint64_t>(entryId &
                                                   static_cast<std::int64_t>(kGreatestStoredSeq))};
            }
        }
    }
    return {};
}

Result<StateRow> Database::rowFrom(std::int64_t subject,
                                   std::string path,
                                   std::int64_t state,
                                   std::string valueJson,
                                   std::optional<std::int64_t> rule,
                                   std::int64_t head) {
    StateRow row{
        std::move(path), static_cast<merge::State>(state), std::move(valueJson), std::nullopt, {}};
    if (rule) {
        row.rule = static_cast<descriptors::RuleName>(*rule);
    }
    if (row.state == merge::State::Settled) {
        row.heads.push_back(placeOf(head));
        return row;
    }
    Result<Statement> heads =
        connection_->prepare("SELECT entry FROM subject_heads WHERE subject = ?1");
    if (!heads) {
        return heads.error();
    }
    heads->bind(1, subject);
    Status read = forEach(*heads, [&]() -> Result<bool> {
        row.heads.push_back(placeOf(heads->integer(0)));
        return true;
    });
    if (!read) {
        return read.error();
    }
    if (row.heads.empty()) {
        row.heads.push_back(placeOf(head));
    }
    std::sort(row.heads.begin(), row.heads.end());
    return row;
}

Result<StateRow> Database::rowAt(const Statement& rows) {
    return rowFrom(rows.integer(0),
                   std::string(rows.text(1)),
                   rows.integer(2),
                   std::string(rows.text(3)),
                   optionalInteger(rows, 4),
                   rows.integer(5));
}

Status Database::eachRow(const std::string& sql,
                         const PathBounds& bounds,
                         const std::function<bool(const StateRow&)>& row) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare(sql);
    if (!rows) {
        return rows.error();
    }
    if (!bounds.beyond.empty()) {
        rows->bindText(1, bounds.low).bindText(2, bounds.below).bindText(3, bounds.beyond);
    }
    return forEach(*rows, [&]() -> Result<bool> {
        const Result<StateRow> made = rowAt(*rows);
        if (!made) {
            return made.error();
        }
        return row(*made);
    });
}

Status Database::eachState(const std::string& under,
                           const std::function<bool(const StateRow&)>& row) {
    const std::string range = under.empty() ? "" : kRange;
    return eachRow(kStateColumns + range + "state IS NOT NULL ORDER BY path",
                   boundsOf<PathBounds>(under),
                   row);
}

Status Database::eachConflict(const std::string& under,
                              const std::function<bool(const StateRow&)>& row) {
    const std::string range = under.empty() ? "" : kRange;
    return eachRow(
        kStateColumns + range + "state = 4 ORDER BY path", boundsOf<PathBounds>(under), row);
}

Result<std::vector<HeadRow>> Database::heads(const std::string& subject) {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    Result<Statement> rows =
        connection_->prepare("SELECT e.id, e.digest, e.bytes FROM subjects s JOIN entries e ON "
                             "e.id = s.head WHERE s.path = ?1 "
                             "UNION SELECT e.id, e.digest, e.bytes FROM subjects s JOIN "
                             "subject_heads h ON h.subject = s.id "
                             "JOIN entries e ON e.id = h.entry WHERE s.path = ?1");
    if (!rows) {
        return rows.error();
    }
    std::vector<HeadRow> heads;
    rows->bindText(1, subject);
    Status read = forEach(*rows, [&]() -> Result<bool> {
        heads.push_back({placeOf(rows->integer(0)),
                         Digest::fromBytes(rows->bytes(1)).value_or(Digest{}),
                         Bytes(rows->bytes(2))});
        return true;
    });
    if (!read) {
        return read.error();
    }
    std::sort(heads.begin(), heads.end(), [](const HeadRow& a, const HeadRow& b) {
        return std::tie(a.place, a.digest) < std::tie(b.place, b.digest);
    });
    return heads;
}

Status Database::eachUncounted(const std::function<bool(const UncountedRow&)>& row) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows =
        connection_->prepare("SELECT u.entry, u.reason, e.bytes FROM uncounted u JOIN entries e ON "
                             "e.id = u.entry ORDER BY u.entry");
    if (!rows) {
        return rows.error();
    }
    return forEach(*rows, [&]() -> Result<bool> {
        const Result<journal::EntryView> entry = journal::readEntry(rows->bytes(2));
        return row({placeOf(rows->integer(0)),
                    static_cast<journal::Standing>(rows->integer(1)),
                    entry ? std::string(entry->subject) : std::string{}});
    });
}

Status Database::eachLooseEdge(const std::function<bool(const LooseRow&)>& row) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare("SELECT l.entry, l.origin, l.seq, e.bytes FROM "
                                                  "loose_edges l JOIN entries e ON e.id = l.entry");
    if (!rows) {
        return rows.error();
    }
    return forEach(*rows, [&]() -> Result<bool> {
        const auto origin = journal::readOrigin(rows->text(1)).value_or(journal::Origin{});
        LooseRow loose{placeOf(rows->integer(0)),
                       {origin, static_cast<std::uint64_t>(rows->integer(2))},
                       LooseReason::NotHere};
        const Result<journal::EntryView> from = journal::readEntry(rows->bytes(3));
        OriginRecord* record = chain_->find(origin);
        for (std::size_t i = 0; from && record != nullptr && i < record->branches.size(); ++i) {
            if (!record->branches[i].owns(loose.names.seq)) {
                continue;
            }
            const Result<StoredEntry> target =
                chain_->entryAt(record->branches[i].entryId(loose.names.seq));
            if (!target) {
                return target.error();
            }
            const Result<journal::EntryView> to = journal::readEntry(target->bytes);
            loose.reason = to && to->subject == from->subject ? LooseReason::NotEarlier
                                                              : LooseReason::OtherSubject;
        }
        return row(loose);
    });
}

Status Database::eachApart(const std::function<bool(const ApartRow&)>& row) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare(
        "SELECT id, origin, first, last, device, reason FROM apart ORDER BY id");
    if (!rows) {
        return rows.error();
    }
    return forEach(*rows, [&]() -> Result<bool> {
        return row({rows->integer(0),
                    std::string(rows->text(1)),
                    static_cast<std::uint64_t>(rows->integer(2)),
                    static_cast<std::uint64_t>(rows->integer(3)),
                    std::string(rows->text(4)),
                    std::string(rows->text(5))});
    });
}

Status Database::eachEntry(const std::function<bool(const Digest&, BytesView)>& entry) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    bool goesOn = true;
    for (const auto& [origin, record] : chain_->origins()) {
        // The seq is the lower 40 bits of the id. One branch lies in order already; several are
        // sorted.
        const bool isForked = record.branches.size() > 1;
        Result<Statement> rows = connection_->prepare(
            isForked
                ? "SELECT e.digest, e.bytes FROM branches b JOIN entries e ON e.id >> 40 = b.id "
                  "AND e.id BETWEEN (b.id << 40) AND (b.id << 40) + 1099511627775 WHERE b.origin = "
                  "?1 "
                  "ORDER BY e.id & 1099511627775, e.digest"
                : "SELECT e.digest, e.bytes FROM branches b JOIN entries e ON e.id BETWEEN (b.id "
                  "<< 40) AND "
                  "(b.id << 40) + 1099511627775 WHERE b.origin = ?1 ORDER BY e.id");
        if (!rows) {
            return rows.error();
        }
        rows->bind(1, record.id);
        Status read = forEach(*rows, [&]() -> Result<bool> {
            goesOn = entry(Digest::fromBytes(rows->bytes(0)).value_or(Digest{}), rows->bytes(1));
            return goesOn;
        });
        if (!read || !goesOn) {
            return read;
        }
    }
    return {};
}

Result<Counts> Database::counts() {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    Counts counts;
    const std::pair<std::uint64_t*, const char*> all[] = {
        {&counts.subjects, "SELECT max(rowid) FROM subjects"},
        {&counts.open, "SELECT count(*) FROM subjects WHERE state = 4"},
        {&counts.uncounted, "SELECT count(*) FROM uncounted"},
        {&counts.waiting, "SELECT count(*) FROM waiting"},
        {&counts.apart, "SELECT count(*) FROM apart"},
    };
    counts.entries = chain_->entryCount();
    for (const auto& [into, sql] : all) {
        const Result<std::int64_t> number = connection_->number(sql);
        if (!number) {
            return number.error();
        }
        *into = static_cast<std::uint64_t>(*number);
    }
    return counts;
}

} // namespace bullace::store
