// What leaves a journal file: exports and backups.
#include "core/journal/entry_line.hpp"
#include "store/chain.hpp"
#include "store/database.hpp"
#include "store/derived.hpp"
#include "store/sqlite.hpp"

#include <sqlite3.h>

#include <cstdio>
#include <fcntl.h>
#include <ostream>
#include <unistd.h>

namespace bullace::store {

namespace {

constexpr std::uint64_t kStep = 20'000;
constexpr int kPagesAtOnce = 4'096;

Error cannotWrite(const std::string& what, std::string detail) {
    return {
        ErrorCode::Io,
        what +
            " could not be written whole. Check the room on the disk and the rights of the folder.",
        std::move(detail)};
}

// Copies page by page; entries that come in meanwhile are in the copy or not, whole transactions
// either way.
Status copyPages(Connection& from, Connection& to, const Progress& progress) {
    sqlite3_backup* backup = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
    if (backup == nullptr) {
        return to.failure();
    }
    int code = SQLITE_OK;
    bool goesOn = true;
    while (code == SQLITE_OK && goesOn) {
        code = sqlite3_backup_step(backup, kPagesAtOnce);
        const auto total = static_cast<std::uint64_t>(sqlite3_backup_pagecount(backup));
        const auto left = static_cast<std::uint64_t>(sqlite3_backup_remaining(backup));
        goesOn = !progress || progress(total - left, total);
    }
    sqlite3_backup_finish(backup);
    if (code == SQLITE_DONE) {
        return {};
    }
    return goesOn ? to.failure()
                  : Error{ErrorCode::Cancelled, "The backup was stopped; no file was left.", {}};
}

} // namespace

Status Database::exportLines(std::ostream& out, const Progress& progress) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    std::string line;
    std::uint64_t done = 0;
    const std::uint64_t total = chain_->entryCount();
    Status failed;
    Status read = eachEntry([&](const Digest& digest, BytesView bytes) {
        const Result<journal::EntryView> entry = journal::readEntry(bytes);
        if (!entry) {
            failed = Error{ErrorCode::Damaged,
                           "An entry in \"" + path_ +
                               "\" cannot be read. Run `bullace verify` on the file.",
                           {}};
            return false;
        }
        line.clear();
        journal::appendEntryLine(line, *entry, digest);
        out.write(line.data(), static_cast<std::streamsize>(line.size()));
        if (!out) {
            failed = cannotWrite("The export", {});
        } else if (++done % kStep == 0 && progress && !progress(done, total)) {
            failed = Error{ErrorCode::Cancelled, "The export was stopped before its end.", {}};
        }
        return failed.ok();
    });
    if (!read) {
        return read;
    }
    out.flush();
    return failed.ok() && !out ? cannotWrite("The export", {}) : failed;
}

Status Database::backUp(const std::string& target, const Progress& progress) {
    if (surroundings_->exists(target)) {
        return Error{ErrorCode::AlreadyThere,
                     "There is a file \"" + target +
                         "\" already. Choose another name; it was not touched.",
                     {}};
    }
    const std::string partial = target + ".partial";
    const auto removePartial = [&partial] {
        for (const char* tail : {"", "-wal", "-shm", "-journal"}) {
            std::remove((partial + tail).c_str());
        }
    };
    removePartial();
    const Result<journal::Vector> copied = writeBackup(partial, progress);
    Status made = copied ? checkBackup(partial, *copied, progress) : Status{copied.error()};
    if (made && std::rename(partial.c_str(), target.c_str()) != 0) {
        made = cannotWrite("\"" + target + "\"", {});
    }
    removePartial();
    return made;
}

// Copies what stands in the file at this moment, whatever is written meanwhile. Returns how far it
// reaches.
Result<journal::Vector> Database::writeBackup(const std::string& partial,
                                              const Progress& progress) {
    Result<Connection> from = Connection::openScratch(path_, surroundings_->vfs());
    if (!from) {
        return from.error();
    }
    Result<Transaction> moment = Transaction::begin(*from);
    Result<Chain> chain = Chain::load(*from);
    if (!moment || !chain) {
        return moment ? chain.error() : moment.error();
    }
    {
        Result<Connection> copy = Connection::open(partial, Access::Create);
        if (!copy) {
            return copy.error();
        }
        if (Status copied = copyPages(*from, *copy, progress); !copied) {
            return copied.error();
        }
        // The copy is one file and has no token: whoever opens it for writing takes a new epoch.
        if (Status sealed = copy->run(
                "UPDATE about SET value = '' WHERE key = 'token'; PRAGMA journal_mode=DELETE");
            !sealed) {
            return sealed.error();
        }
    }
    const int file = ::open(partial.c_str(), O_RDONLY | O_CLOEXEC);
    const bool isSafe = file >= 0 && ::fsync(file) == 0;
    if (file >= 0) {
        ::close(file);
    }
    if (!isSafe) {
        return cannotWrite("\"" + partial + "\"", {});
    }
    return chain->vector();
}

Status Database::checkBackup(const std::string& partial,
                             const journal::Vector& copied,
                             const Progress& progress) {
    Result<std::unique_ptr<Database>> copy = Database::open(partial, false, fileSurroundings());
    if (!copy) {
        return copy.error();
    }
    const Result<Verdict> verdict = (*copy)->verify(progress);
    if (!verdict) {
        return verdict.error();
    }
    if (!verdict->faults.empty() || (*copy)->vector() != copied) {
        return Error{ErrorCode::Damaged,
                     "The backup does not agree with the database, so it was not kept. Run "
                     "`bullace verify`.",
                     verdict->faults.empty() ? "vector" : verdict->faults[0]};
    }
    return {};
}

} // namespace bullace::store
