// What came and lies apart, outside set and vector: runs that follow from nothing, and office
// entries that came back to a restored station and wait for somebody there.
#include "store/chain.hpp"
#include "store/database.hpp"
#include "store/derived.hpp"
#include "store/sqlite.hpp"

#include <algorithm>

namespace bullace::store {

using journal::Run;
using journal::RunOutcome;
using journal::RunReport;

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

std::vector<Digest> digestsAlong(Digest digest, const std::vector<Bytes>& entries) {
    std::vector<Digest> digests;
    digests.reserve(entries.size());
    for (const Bytes& bytes : entries) {
        digest = journal::chainDigest(digest, bytes);
        digests.push_back(digest);
    }
    return digests;
}

} // namespace

// Digests that may stand at `seq`: of what is held, and of the ends of runs that wait.
Result<std::vector<Digest>> Database::digestsBehind(const journal::Origin& origin,
                                                    std::uint64_t seq) {
    if (seq == 0) {
        return std::vector<Digest>{Digest{}};
    }
    std::vector<Digest> digests;
    if (OriginRecord* record = chain_->find(origin)) {
        const Result<std::vector<Link>> links = chain_->linksBefore(*record, seq + 1);
        if (!links) {
            return links.error();
        }
        for (const Link& link : *links) {
            digests.push_back(link.digest);
        }
    }
    Result<Statement> rows = connection_->prepare(
        "SELECT last_digest FROM apart WHERE origin = ?1 AND last = ?2 AND reason = 'resent'");
    if (!rows) {
        return rows.error();
    }
    const std::string text = origin.text();
    rows->bindText(1, text).bind(2, static_cast<std::int64_t>(seq));
    while (true) {
        const Result<bool> row = rows->step();
        if (!row) {
            return row.error();
        }
        if (!*row) {
            return digests;
        }
        digests.push_back(Digest::fromBytes(rows->bytes(0)).value_or(Digest{}));
    }
}

// Adds the digests that stand at `seq` in the middle of runs that wait.
Status Database::addDigestsWithin(const journal::Origin& origin,
                                  std::uint64_t seq,
                                  std::vector<Digest>& digests) {
    Result<Statement> rows = connection_->prepare(
        "SELECT first, last_digest, bytes FROM apart "
        "WHERE origin = ?1 AND first <= ?2 AND last > ?2 AND reason = 'resent'");
    if (!rows) {
        return rows.error();
    }
    const std::string text = origin.text();
    rows->bindText(1, text).bind(2, static_cast<std::int64_t>(seq));
    while (true) {
        const Result<bool> row = rows->step();
        if (!row || !*row) {
            return row ? Status{} : row.error();
        }
        const auto first = static_cast<std::uint64_t>(rows->integer(0));
        const std::vector<Bytes> entries = unpacked(rows->bytes(2));
        const auto last = Digest::fromBytes(rows->bytes(1));
        const Result<std::vector<Digest>> starts = digestsBehind(origin, first - 1);
        if (!starts) {
            return starts.error();
        }
        for (const Digest& start : *starts) {
            const std::vector<Digest> along = digestsAlong(start, entries);
            if (!along.empty() && last == along.back()) {
                digests.push_back(along[seq - first]);
            }
        }
    }
}

// An office entry's run that came back after a restore: held already, or such that it follows from
// what is held or waits. Bytes that follow from nothing would wait for ever, and in the place of
// the right ones.
Result<journal::RunReport> Database::weighResent(const Run& run) {
    journal::RunReport report;
    if (run.entries.empty() || run.first == 0 || run.last() > kGreatestStoredSeq) {
        return report;
    }
    const Result<bool> isHeld = holds(run.end());
    if (!isHeld) {
        return isHeld.error();
    }
    if (*isHeld) {
        report.outcome = RunOutcome::Held;
        return report;
    }
    Result<std::vector<Digest>> starts = digestsBehind(run.origin, run.first - 1);
    if (!starts) {
        return starts.error();
    }
    if (run.first > 1) {
        if (Status added = addDigestsWithin(run.origin, run.first - 1, *starts); !added) {
            return added.error();
        }
    }
    const bool follows = std::any_of(starts->begin(), starts->end(), [&run](const Digest& start) {
        return digestsAlong(start, run.entries).back() == run.lastDigest;
    });
    report.outcome = follows ? RunOutcome::Apart : RunOutcome::Unlinked;
    return report;
}

Result<Database::Laid>
Database::layApart(const Run& run, const Source& source, const std::string& reason) {
    const std::string origin = run.origin.text();
    Result<Statement> same = connection_->prepare(
        "SELECT 1 FROM apart WHERE origin = ?1 AND first = ?2 AND last_digest = ?3 AND "
        "(reason = ?4 OR reason = 'resent')");
    if (!same) {
        return same.error();
    }
    same->bindText(1, origin).bind(2, static_cast<std::int64_t>(run.first));
    const Result<bool> isThere =
        same->bindBytes(3, run.lastDigest.view()).bindText(4, reason).step();
    if (!isThere) {
        return isThere.error();
    }
    if (*isThere) {
        return Laid::There;
    }
    const Result<std::int64_t> size =
        connection_->number("SELECT ifnull(sum(length(bytes)), 0) FROM apart");
    if (!size) {
        return size.error();
    }
    const Bytes bytes = packed(run);
    if (*size + static_cast<std::int64_t>(bytes.size()) > kMostApartBytes) {
        return Laid::NoRoom;
    }
    Result<Statement> insert = connection_->prepare(
        "INSERT INTO apart(origin, first, last, last_digest, device, reason, bytes) "
        "VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7) "
        // What did not fit gives way to what does: both tell of the same end.
        "ON CONFLICT(origin, first, last_digest) DO UPDATE SET last = excluded.last, "
        "device = excluded.device, reason = excluded.reason, bytes = excluded.bytes");
    if (!insert) {
        return insert.error();
    }
    const std::string device = journal::deviceText(source.letter, source.device);
    insert->bindText(1, origin).bind(2, static_cast<std::int64_t>(run.first));
    insert->bind(3, static_cast<std::int64_t>(run.last())).bindBytes(4, run.lastDigest.view());
    insert->bindText(5, device).bindText(6, reason).bindBytes(7, bytes);
    if (Status kept = insert->execute(); !kept) {
        return kept.error();
    }
    return Laid::New;
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
