// Backups of the station's database: one a day, each checked before it counts, kept by a simple
// rule, and the way back from one.
#pragma once

#include "core/base/civil_date.hpp"
#include "store/database.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace bullace::office {

// A file that lies in PATH-backups, STATION-2026-05-14.db.
struct BackupFile {
    std::string path;
    CivilDate date;
    std::int64_t madeMs = 0; // the file's time, UTC milliseconds since 1970
    std::uint64_t bytes = 0;
};

// The newest first. A folder that is not there has none.
[[nodiscard]] std::vector<BackupFile> backupsOf(const std::string& database);

// Which of these, all dates of backups with the newest first, are kept: the last seven, then the
// newest of each of four weeks, then the newest of each month for a year. The others may go.
[[nodiscard]] std::vector<CivilDate> keptBackups(const std::vector<CivilDate>& dates);

struct BackedUp {
    bool isNew = false; // false: today's is there already
    std::string path;
    std::vector<std::string> removed;
};

// Writes today's backup where there is none yet, checks every entry and all that follows from it in
// the copy, and only then removes what the rule does not keep. Errors: those of Database::backUp;
// then no backup was removed.
[[nodiscard]] Result<BackedUp>
backUpDaily(store::Database& database, CivilDate today, const store::Progress& progress);

// Puts a backup in the place of a damaged database. The damaged file, its log and its token are
// kept beside it, renamed; gives the damaged file's new name. Errors: NotFound, Damaged (the backup
// does not hold against its own digests: nothing was changed), Io.
[[nodiscard]] Result<std::string>
restoreBackup(const std::string& database, const std::string& backup, std::int64_t nowMs);

} // namespace bullace::office
