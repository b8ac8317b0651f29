// Checking a journal file: the chains by their digests, and the derived tables against what the
// entries give anew.
#include "store/chain.hpp"
#include "store/database.hpp"
#include "store/derived.hpp"
#include "store/schema.hpp"
#include "store/sqlite.hpp"

#include <algorithm>

namespace bullace::store {

using journal::EntryView;

namespace {

constexpr std::size_t kMostFaults = 100;
constexpr std::uint64_t kStep = 20'000; // entries between two reports of progress

constexpr const char* kDerivedTables[] = {
    "subjects", "subject_entries", "subject_heads", "uncounted", "loose_edges", "named_photos"};

// Rows of the derived tables in an order and in words that do not depend on how they were made.
// Each @ stands for the schema, the file's own or the temporary one; the first column says what a
// row is about.
constexpr const char* kComparedRows[] = {
    "SELECT path, entry_count, state, head, value, rule, CASE entry_count WHEN 1 THEN entry END "
    "FROM @subjects "
    "ORDER BY path",
    "SELECT s.path, h.entry FROM @subject_heads h JOIN @subjects s ON s.id = h.subject ORDER BY "
    "s.path, h.entry",
    "SELECT path, entry FROM (SELECT path, entry FROM @subjects WHERE entry_count > 1 UNION ALL "
    "SELECT s.path, m.entry FROM @subject_entries m JOIN @subjects s ON s.id = m.subject) ORDER BY "
    "path, entry",
    "SELECT printf('entry %020d', entry), reason FROM @uncounted ORDER BY entry",
    "SELECT printf('entry %020d', entry), origin, seq FROM @loose_edges ORDER BY entry, origin, "
    "seq",
    "SELECT 'photo ' || lower(hex(digest)) FROM @named_photos ORDER BY digest",
};

struct Walk {
    const Progress& progress;
    std::uint64_t done = 0;
    std::uint64_t total = 0;

    // False when the person wants it to end.
    bool step() { return ++done % kStep != 0 || !progress || progress(done, total); }
};

Error stopped() {
    return {ErrorCode::Cancelled, "It was stopped before its end; nothing was changed.", {}};
}

void report(Verdict& verdict, std::string fault) {
    if (verdict.faults.size() < kMostFaults) {
        verdict.faults.push_back(std::move(fault));
    }
}

// Walks all entries branch by branch and checks each against the chain; `each` gets those that can
// be read.
class ChainWalk {
public:
    ChainWalk(Connection& connection, const Chain& chain, Verdict& verdict)
        : connection_(connection),
          chain_(chain),
          verdict_(verdict) {}

    template<typename Each>
    Status run(Walk& walk, Each each) {
        Result<Statement> rows = connection_.prepare(
            "SELECT id, digest, bytes FROM entries WHERE id >= ?1 AND id <= ?2 ORDER BY id");
        if (!rows) {
            return rows.error();
        }
        for (const auto& [origin, record] : chain_.origins()) {
            for (const Branch& branch : record.branches) {
                if (Status walked = walkBranch(*rows, record, branch, walk, each); !walked) {
                    return walked;
                }
            }
        }
        return {};
    }

private:
    static std::string nameOf(const OriginRecord& record, std::uint64_t seq) {
        return record.origin.text() + " number " + std::to_string(seq);
    }

    template<typename Each>
    Status walkBranch(
        Statement& rows, const OriginRecord& record, const Branch& branch, Walk& walk, Each& each) {
        Digest digest = before(record, branch);
        std::uint64_t expected = branch.first;
        rows.reset();
        rows.bind(1, branch.entryId(branch.first)).bind(2, branch.entryId(kGreatestStoredSeq));
        while (true) {
            const Result<bool> row = rows.step();
            if (!row) {
                return row.error();
            }
            if (!*row) {
                break;
            }
            const auto seq = static_cast<std::uint64_t>(rows.integer(0)) & kGreatestStoredSeq;
            const Result<EntryView> entry = journal::readEntry(rows.bytes(2));
            checkEntry(record, branch, rows, entry, seq, expected, digest);
            if (entry) {
                if (Status taken = each(record, branch, *entry); !taken) {
                    return taken;
                }
            }
            expected = seq + 1;
            ++verdict_.entries;
            if (!walk.step()) {
                return stopped();
            }
        }
        if (expected != branch.last + 1 || digest != branch.lastDigest) {
            report(verdict_,
                   "The journal " + record.origin.text() + " should end with number " +
                       std::to_string(branch.last) +
                       ", and what is there does not agree with that.");
        }
        return {};
    }

    Digest before(const OriginRecord& record, const Branch& branch) {
        const std::vector<std::int64_t> ids =
            branch.first == 1 ? std::vector<std::int64_t>{}
                              : chain_.path(record, branch, branch.first - 1, branch.first - 1);
        if (ids.empty()) {
            return {};
        }
        Result<Statement> row = connection_.prepare("SELECT digest FROM entries WHERE id = ?1");
        const Result<bool> found = row ? row->bind(1, ids[0]).step() : Result<bool>(false);
        return found && *found ? Digest::fromBytes(row->bytes(0)).value_or(Digest{}) : Digest{};
    }

    void checkEntry(const OriginRecord& record,
                    const Branch& branch,
                    const Statement& rows,
                    const Result<EntryView>& entry,
                    std::uint64_t seq,
                    std::uint64_t expected,
                    Digest& digest) {
        if (seq != expected) {
            report(verdict_, nameOf(record, expected) + " is missing.");
        }
        digest = journal::chainDigest(digest, rows.bytes(2));
        const auto stored = Digest::fromBytes(rows.bytes(1));
        if (seq > branch.last || !entry || entry->origin != record.origin || entry->seq != seq ||
            stored != digest) {
            report(verdict_,
                   nameOf(record, seq) +
                       " does not agree with its digest: its bytes were changed.");
        }
        digest = stored.value_or(digest); // so that one changed entry is told once
    }

    Connection& connection_;
    const Chain& chain_;
    Verdict& verdict_;
};

std::string inSchema(std::string sql, std::string_view schema) {
    for (std::size_t at = sql.find('@'); at != std::string::npos; at = sql.find('@')) {
        sql.replace(at, 1, schema);
    }
    return sql;
}

// Reads the same rows of the file's tables and of those made anew; what the rows that differ are
// about.
Result<std::vector<std::string>> differences(Connection& connection, const char* sql) {
    Result<Statement> held = connection.prepare(inSchema(sql, "main."));
    Result<Statement> made = connection.prepare(inSchema(sql, "temp."));
    if (!held || !made) {
        return held ? made.error() : held.error();
    }
    std::vector<std::string> names;
    Result<bool> left = held->step();
    Result<bool> right = made->step();
    while (left && right && (*left || *right) && names.size() < kMostFaults) {
        const int order = !*right ? -1 : !*left ? 1 : held->text(0).compare(made->text(0));
        bool isSame = order == 0;
        for (int i = 1; isSame && i < held->columns(); ++i) {
            isSame = held->isSame(*made, i);
        }
        if (!isSame) {
            names.emplace_back((order <= 0 ? *held : *made).text(0));
        }
        // What one side lacks is told, and the other goes on alone.
        left = order <= 0 ? held->step() : left;
        right = order >= 0 ? made->step() : right;
    }
    if (!left || !right) {
        return left ? right.error() : left.error();
    }
    return names;
}

// Walks all entries, checks the chains, and makes the derived tables of `connection` from them.
Status makeAnew(Connection& connection,
                const Chain& chain,
                Derived& derived,
                Verdict& verdict,
                const Progress& progress) {
    Walk walk{progress, 0, chain.entryCount()};
    std::uint64_t count = 0;
    Status walked =
        ChainWalk(connection, chain, verdict)
            .run(walk,
                 [&](const OriginRecord& record, const Branch& branch, const EntryView& entry) {
                     if (journal::standing(entry) == journal::Standing::Counts) {
                         count = std::max(count, entry.count);
                     }
                     return derived.note(record, branch, entry);
                 });
    if (!walked) {
        return walked;
    }
    if (count != chain.greatestCount()) {
        report(verdict, "The device's counter does not agree with its entries.");
    }
    return derived.finish(chain);
}

} // namespace

Result<Verdict> Database::verify(const Progress& progress) {
    // All of it through one connection and in one transaction, so that what a server writes
    // meanwhile does not come in between.
    Result<Connection> scratch = Connection::openScratch(path_, surroundings_->vfs());
    if (!scratch) {
        return scratch.error();
    }
    if (Status made = createScratchTables(*scratch); !made) {
        return made.error();
    }
    Result<Transaction> transaction = Transaction::begin(*scratch);
    Result<Chain> chain = Chain::load(*scratch);
    Result<Derived> derived = Derived::load(*scratch);
    if (!transaction || !chain || !derived) {
        return !transaction ? transaction.error() : !chain ? chain.error() : derived.error();
    }
    Verdict verdict;
    if (Status made = makeAnew(*scratch, *chain, *derived, verdict, progress); !made) {
        return made.error();
    }
    for (const char* sql : kComparedRows) {
        const Result<std::vector<std::string>> names = differences(*scratch, sql);
        if (!names) {
            return names.error();
        }
        for (const std::string& name : *names) {
            report(verdict, "What is told of \"" + name + "\" does not follow from the entries.");
        }
    }
    const Result<std::int64_t> subjects = scratch->number("SELECT count(*) FROM temp.subjects");
    if (!subjects) {
        return subjects.error();
    }
    verdict.subjects = static_cast<std::uint64_t>(*subjects);
    return verdict;
}

Status Database::rebuild(const Progress& progress) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Transaction> transaction = Transaction::begin(*connection_);
    if (!transaction) {
        return transaction.error();
    }
    for (const char* table : kDerivedTables) {
        if (Status emptied = connection_->run((std::string("DELETE FROM ") + table).c_str());
            !emptied) {
            return emptied;
        }
    }
    Result<Derived> derived = Derived::load(*connection_);
    if (!derived) {
        return derived.error();
    }
    Verdict verdict;
    if (Status made = makeAnew(*connection_, *chain_, *derived, verdict, progress); !made) {
        return made;
    }
    if (Status done = transaction->commit(); !done) {
        return done;
    }
    return load();
}

} // namespace bullace::store
