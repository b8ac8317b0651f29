// Reading the journals' ends when the file is opened.
#include "core/journal/standing.hpp"
#include "store/chain.hpp"

#include <algorithm>

namespace bullace::store {

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
    return connection_->prepareAll({
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
    });
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
            return damaged("origins or branches");
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

Error Chain::damaged(std::string detail) const {
    return {ErrorCode::Damaged,
            "The journals in \"" + connection_->path() +
                "\" do not hang together. Keep the file as it is, and run `bullace verify` on it.",
            std::move(detail)};
}

} // namespace bullace::store
