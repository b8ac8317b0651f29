// Importing JSON Lines: in any order, again, with gaps and forks, in bounded memory.
#include "store/chain.hpp"
#include "store/database.hpp"
#include "store/derived.hpp"
#include "store/json_reader.hpp"
#include "store/line_source.hpp"
#include "store/sqlite.hpp"

#include <algorithm>

namespace bullace::store {

using journal::EntryView;
using journal::Standing;

namespace {

constexpr std::size_t kLinesAtOnce = 10'000; // in one transaction
constexpr std::size_t kMostListed = 10'000;
constexpr std::size_t kLongestLine = 4 * journal::kGreatestEntryBytes;

} // namespace

// One run of importLines().
class Importer {
public:
    Importer(Database& database, std::string name) : database_(database), name_(std::move(name)) {}

    Result<ImportReport> run(std::istream& in, const Progress& progress) {
        LineSource lines(in, kLongestLine);
        database_.admitted_ = {};
        bool more = true;
        while (more) {
            const Result<bool> chunk = takeChunk(lines);
            if (!chunk) {
                database_.recover(chunk.error());
                return chunk.error();
            }
            more = *chunk && (!progress || progress(lines.number(), 0));
        }
        if (lines.failed()) {
            return Error{ErrorCode::Io,
                         "\"" + name_ + "\" could not be read to its end. What was taken stays.",
                         {}};
        }
        if (Status told = tellWaiting(); !told) {
            database_.recover(told.error());
            return told.error();
        }
        // Entries under this device's own name that came from a file were written in another life
        // of it.
        if (hasOwn_) {
            if (Status taken = database_.takeNewEpoch(0); !taken) {
                return taken.error();
            }
        }
        return std::move(report_);
    }

private:
    // Takes up to kLinesAtOnce lines in one transaction; false when the input is at its end.
    Result<bool> takeChunk(LineSource& lines) {
        Result<Transaction> transaction = Transaction::begin(*database_.connection_);
        if (!transaction) {
            return transaction.error();
        }
        const ImportReport before = countsOf(report_);
        std::string_view line;
        bool more = true;
        for (std::size_t i = 0; i < kLinesAtOnce; ++i) {
            more = lines.next(line);
            if (!more) {
                break;
            }
            if (Status taken = takeLine(line, lines); !taken) {
                return taken.error();
            }
        }
        if (report_.taken == before.taken && report_.waitingCount == before.waitingCount) {
            return more;
        }
        if (Status finished = database_.finishInside(); !finished) {
            return finished.error();
        }
        if (Status done = transaction->commit(); !done) {
            return done.error();
        }
        return more;
    }

    static ImportReport countsOf(const ImportReport& report) {
        ImportReport counts;
        counts.taken = report.taken;
        counts.waitingCount = report.waitingCount;
        return counts;
    }

    void refuse(std::uint64_t line, std::string message) {
        ++report_.refusedCount;
        if (report_.refused.size() < kMostListed) {
            report_.refused.push_back({line, name_, std::move(message)});
        }
    }

    Status takeLine(std::string_view text, const LineSource& lines) {
        if (text.empty()) {
            return {};
        }
        ++report_.lines;
        if (lines.isCut()) {
            refuse(lines.number(), "The line is longer than an entry can be (64 KiB).");
            return {};
        }
        const Result<EntryLine> read = readEntryLine(text);
        if (!read) {
            refuse(lines.number(), read.error().message);
            return {};
        }
        const Bytes bytes = read->entry.encode();
        const Result<EntryView> entry = journal::readEntry(bytes);
        if (!entry) {
            refuse(lines.number(), entry.error().message);
            return {};
        }
        const Result<LineFate> fate = database_.placeLine(*entry, read->digest);
        if (!fate) {
            return fate.error();
        }
        return tell(*fate, *read, *entry, lines.number());
    }

    Status tell(const LineFate& fate,
                const EntryLine& line,
                const EntryView& entry,
                std::uint64_t number) {
        switch (fate.fate) {
        case LineFate::Taken:
            ++report_.taken;
            hasOwn_ = hasOwn_ || entry.origin.isSameDevice(database_.about().own);
            countKept(line, entry);
            return {};
        case LineFate::There:
            ++report_.there;
            return {};
        case LineFate::Refused:
            refuse(number, fate.message);
            return {};
        case LineFate::Waits:
            return keepWaiting(line, entry, number);
        }
        return {};
    }

    Status keepWaiting(const EntryLine& line, const EntryView& entry, std::uint64_t number) {
        const Result<bool> kept =
            database_.keepWaiting(entry, line.digest, name_ + ":" + std::to_string(number));
        if (!kept) {
            return kept.error();
        }
        ++(*kept ? report_.waitingCount : report_.there);
        return {};
    }

    // What is kept though nobody knows what to make of it: told in the closing line.
    void countKept(const EntryLine& line, const EntryView& entry) {
        report_.unknownFields += line.hasUnknownFields ? 1U : 0U;
        report_.uncounted += journal::standing(entry) == Standing::Counts ? 0U : 1U;
        const journal::Subject subject = journal::readSubject(entry.subject);
        report_.unknownSubjects += subject.form == journal::SubjectForm::Unknown ? 1U : 0U;
        const bool isUnknown = subject.form == journal::SubjectForm::Observation &&
                               !database_.rulebook().kindOf(subject.descriptor);
        report_.unknownDescriptors += isUnknown ? 1U : 0U;
    }

    // What still waits: for an entry that is not here, or for nothing that could come.
    Status tellWaiting() {
        report_.waitingCount = 0;
        report_.taken += database_.admitted_.taken;
        report_.there += database_.admitted_.there;
        if (database_.waitingCount_ == 0) {
            return {};
        }
        Result<Transaction> transaction = Transaction::begin(*database_.connection_);
        if (!transaction) {
            return transaction.error();
        }
        Result<Statement> rows = database_.connection_->prepare(
            "SELECT id, digest, bytes, place FROM waiting ORDER BY origin, seq, id");
        if (!rows) {
            return rows.error();
        }
        std::vector<std::int64_t> hopeless;
        while (true) {
            const Result<bool> row = rows->step();
            if (!row) {
                return row.error();
            }
            if (!*row) {
                break;
            }
            if (Status told = tellWaitingRow(*rows, hopeless); !told) {
                return told;
            }
        }
        rows->reset();
        return dropWaiting(hopeless, *transaction);
    }

    Status tellWaitingRow(Statement& row, std::vector<std::int64_t>& hopeless) {
        const Bytes bytes(row.bytes(2));
        const Result<EntryView> entry = journal::readEntry(bytes);
        const std::string place(row.text(3));
        const std::size_t colon = place.rfind(':');
        ImportedLine line{
            std::strtoull(place.c_str() + colon + 1, nullptr, 10), place.substr(0, colon), {}};
        const Result<std::string> reason =
            entry ? database_.hopelessReason(*entry, Digest::fromBytes(row.bytes(1)))
                  : Result<std::string>(entry.error().message);
        if (!reason) {
            return reason.error();
        }
        if (!reason->empty()) {
            hopeless.push_back(row.integer(0));
            line.message = *reason;
            ++report_.refusedCount;
            if (report_.refused.size() < kMostListed) {
                report_.refused.push_back(std::move(line));
            }
            return {};
        }
        ++report_.waitingCount;
        line.message = "It waits for " + entry->origin.text() + " number " +
                       std::to_string(entry->seq - 1) + ", which is not here yet.";
        if (report_.waiting.size() < kMostListed) {
            report_.waiting.push_back(std::move(line));
        }
        return {};
    }

    Status dropWaiting(const std::vector<std::int64_t>& ids, Transaction& transaction) {
        Result<Statement> remove =
            database_.connection_->prepare("DELETE FROM waiting WHERE id = ?1");
        if (!remove) {
            return remove.error();
        }
        for (const std::int64_t id : ids) {
            if (Status gone = remove->bind(1, id).execute(); !gone) {
                return gone;
            }
        }
        if (Status done = transaction.commit(); !done) {
            return done;
        }
        database_.waitingCount_ -= ids.size();
        return {};
    }

    Database& database_;
    std::string name_;
    ImportReport report_;
    bool hasOwn_ = false;
};

Result<ImportReport>
Database::importLines(std::istream& in, const std::string& name, const Progress& progress) {
    if (Status ready = usable(); !ready) {
        return ready.error();
    }
    return Importer(*this, name).run(in, progress);
}

} // namespace bullace::store
