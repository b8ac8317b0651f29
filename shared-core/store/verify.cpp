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
constexpr const char* kComparedRows[] = {
    "SELECT path, entry_count, ifnull(state, -1), ifnull(head, -1), ifnull(value, ''), "
    "ifnull(rule, -1), "
    "CASE entry_count WHEN 1 THEN entry ELSE 0 END FROM subjects ORDER BY path",
    "SELECT s.path, h.entry FROM subject_heads h JOIN subjects s ON s.id = h.subject ORDER BY "
    "s.path, h.entry",
    "SELECT path, entry FROM (SELECT path, entry FROM subjects WHERE entry_count > 1 UNION ALL "
    "SELECT s.path, m.entry FROM subject_entries m JOIN subjects s ON s.id = m.subject) ORDER BY "
    "path, entry",
    "SELECT 'entry ' || entry, reason FROM uncounted ORDER BY entry",
    "SELECT 'entry ' || entry, origin, seq FROM loose_edges ORDER BY entry, origin, seq",
    "SELECT 'photo ' || lower(hex(digest)) FROM named_photos ORDER BY digest",
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

// Reads the same columns from both and tells where they differ.
Result<std::vector<std::string>> differences(Connection& held, Connection& made, const char* sql) {
    Result<Statement> a = held.prepare(sql);
    Result<Statement> b = made.prepare(sql);
    if (!a || !b) {
        return a ? b.error() : a.error();
    }
    std::vector<std::string> names;
    while (names.size() < kMostFaults) {
        const Result<bool> left = a->step();
        const Result<bool> right = b->step();
        if (!left || !right) {
            return left ? right.error() : left.error();
        }
        if (!*left && !*right) {
            break;
        }
        bool isSame = *left && *right;
        for (int i = 0; isSame && i < a->columns(); ++i) {
            isSame = a->isSame(*b, i);
        }
        if (!isSame) {
            names.emplace_back((*left ? *a : *b).text(0));
        }
        if (!*left || !*right) {
            break;
        }
    }
    return names;
}

} // namespace

Result<Verdict> Database::verify(const Progress& progress) {
    Verdict verdict;
    Result<Connection> scratch = Connection::openScratch(path_, surroundings_->vfs());
    if (!scratch) {
        return scratch.error();
    }
    if (Status made = createScratchTables(*scratch); !made) {
        return made.error();
    }
    Result<Transaction> transaction = Transaction::begin(*scratch);
    Result<Derived> derived = Derived::load(*scratch);
    if (!transaction || !derived) {
        return transaction ? derived.error() : transaction.error();
    }
    Walk walk{progress, 0, chain_->entryCount()};
    std::uint64_t count = 0;
    Status walked =
        ChainWalk(*connection_, *chain_, verdict)
            .run(walk,
                 [&](const OriginRecord& record, const Branch& branch, const EntryView& entry) {
                     if (journal::standing(entry) == journal::Standing::Counts) {
                         count = std::max(count, entry.count);
                     }
                     return derived->note(record, branch, entry);
                 });
    if (!walked) {
        return walked.error();
    }
    if (Status finished = derived->finish(*chain_); !finished) {
        return finished.error();
    }
    if (count != chain_->greatestCount()) {
        report(verdict, "The device's counter does not agree with its entries.");
    }
    for (const char* sql : kComparedRows) {
        const Result<std::vector<std::string>> names = differences(*connection_, *scratch, sql);
        if (!names) {
            return names.error();
        }
        for (const std::string& name : *names) {
            report(verdict, "What is told of \"" + name + "\" does not follow from the entries.");
        }
    }
    const Result<std::int64_t> subjects = scratch->number("SELECT count(*) FROM subjects");
    if (!subjects) {
        return subjects.error();
    }
    verdict.subjects = static_cast<std::uint64_t>(*subjects);
    return verdict;
}

Status Database::rebuild(const Progress& progress) {
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
    Walk walk{progress, 0, chain_->entryCount()};
    Status walked =
        ChainWalk(*connection_, *chain_, verdict)
            .run(walk,
                 [&](const OriginRecord& record, const Branch& branch, const EntryView& entry) {
                     return derived->note(record, branch, entry);
                 });
    if (!walked) {
        return walked;
    }
    if (Status finished = derived->finish(*chain_); !finished) {
        return finished;
    }
    if (Status done = transaction->commit(); !done) {
        return done;
    }
    return load();
}

} // namespace bullace::store
