#include "office/backups.hpp"

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <set>
#include <system_error>
#include <utility>

namespace bullace::office {

namespace files = std::filesystem;

namespace {

constexpr std::size_t kDays = 7;
constexpr std::size_t kWeeks = 4;
constexpr std::size_t kMonths = 12;
constexpr std::size_t kDateLetters = 10;

std::string folderOf(const std::string& database) {
    return database + "-backups";
}

Error diskError(const std::error_code& code) {
    return {code == std::errc::no_space_on_device ? ErrorCode::DiskFull : ErrorCode::Io,
            code == std::errc::no_space_on_device
                ? "The disk is full: no backup was made, and none was removed. Make room."
                : "The folder of the backups cannot be written. Is the disk there?",
            code.message()};
}

std::int64_t timeOf(const files::path& path) {
    std::error_code code;
    const auto at = files::last_write_time(path, code);
    if (code) {
        return 0;
    }
    const auto system = std::chrono::file_clock::to_sys(at);
    return std::chrono::duration_cast<std::chrono::milliseconds>(system.time_since_epoch()).count();
}

std::optional<CivilDate> dateIn(const std::string& name) {
    const std::string_view end = ".db";
    if (name.size() < kDateLetters + end.size() || !name.ends_with(end)) {
        return std::nullopt;
    }
    return readDate(
        std::string_view(name).substr(name.size() - end.size() - kDateLetters, kDateLetters));
}

// Weeks since 1970-01-05, a Monday; the same for all days from Monday to Sunday.
int weekOf(CivilDate date) {
    const int days = daysBetween(
        CivilDate{std::chrono::year(1970), std::chrono::month(1), std::chrono::day(5)}, date);
    return days >= 0 ? days / 7 : (days - 6) / 7;
}

} // namespace

std::vector<BackupFile> backupsOf(const std::string& database) {
    std::vector<BackupFile> found;
    std::error_code code;
    for (const auto& entry : files::directory_iterator(folderOf(database), code)) {
        const auto date = dateIn(entry.path().filename().string());
        std::error_code sizeCode;
        const auto bytes = entry.file_size(sizeCode);
        if (date && !sizeCode) {
            found.push_back({entry.path().string(), *date, timeOf(entry.path()), bytes});
        }
    }
    std::sort(
        found.begin(), found.end(), [](const auto& a, const auto& b) { return a.date > b.date; });
    return found;
}

std::vector<CivilDate> keptBackups(const std::vector<CivilDate>& dates) {
    std::vector<CivilDate> kept;
    std::set<int> weeks;
    std::set<std::pair<int, unsigned>> months;
    for (std::size_t i = 0; i < dates.size(); ++i) {
        const CivilDate date = dates[i];
        const bool isDay = i < kDays;
        const bool isWeek = !isDay && weeks.size() < kWeeks && weeks.count(weekOf(date)) == 0;
        const std::pair month{static_cast<int>(date.year()), static_cast<unsigned>(date.month())};
        const bool isMonth = !isDay && months.size() < kMonths && months.count(month) == 0;
        if (isWeek) {
            weeks.insert(weekOf(date));
        }
        if (isMonth) {
            months.insert(month);
        }
        if (isDay || isWeek || isMonth) {
            kept.push_back(date);
        }
    }
    return kept;
}

Result<BackedUp>
backUpDaily(store::Database& database, CivilDate today, const store::Progress& progress) {
    const files::path source = database.path();
    const files::path folder = folderOf(database.path());
    std::error_code code;
    files::create_directories(folder, code);
    if (code) {
        return diskError(code);
    }
    const std::string target =
        (folder / (source.stem().string() + "-" + writeDate(today) + ".db")).string();
    BackedUp done{false, target, {}};
    if (!files::exists(target)) {
        if (Status written = database.backUp(target, progress); !written) {
            return written.error();
        }
        done.isNew = true;
    }
    std::vector<CivilDate> dates;
    const std::vector<BackupFile> all = backupsOf(database.path());
    for (const BackupFile& backup : all) {
        dates.push_back(backup.date);
    }
    const std::vector<CivilDate> kept = keptBackups(dates);
    for (const BackupFile& backup : all) {
        if (std::find(kept.begin(), kept.end(), backup.date) == kept.end() &&
            files::remove(backup.path, code)) {
            done.removed.push_back(backup.path);
        }
    }
    return done;
}

Result<std::string>
restoreBackup(const std::string& database, const std::string& backup, std::int64_t nowMs) {
    {
        auto copy = store::Database::open(backup, false, store::fileSurroundings());
        if (!copy) {
            return copy.error();
        }
        const Result<store::Verdict> verdict = (*copy)->verify({});
        if (!verdict) {
            return verdict.error();
        }
        if (!verdict->faults.empty()) {
            return Error{ErrorCode::Damaged,
                         "This backup does not hold against its own digests. Choose another one; "
                         "nothing was changed.",
                         verdict->faults.front()};
        }
    }
    std::error_code code;
    const std::string aside = database + "-damaged-" + std::to_string(nowMs);
    const std::string partial = database + "-restoring";
    files::copy_file(backup, partial, files::copy_options::overwrite_existing, code);
    if (code) {
        return diskError(code);
    }
    // Its log belongs to it; without its token the restored file takes a new epoch.
    for (const char* end : {"-wal", "-shm", "-token", ""}) {
        files::rename(database + end, aside + end, code);
        if (code && code != std::errc::no_such_file_or_directory) {
            return diskError(code);
        }
    }
    files::rename(partial, database, code);
    if (code) {
        return diskError(code);
    }
    return aside;
}

} // namespace bullace::office
