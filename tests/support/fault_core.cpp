#include "support/fault_core.hpp"

#include <algorithm>

namespace bullace::test {

namespace {

constexpr std::size_t kLogged = 400;
constexpr std::uint64_t kSector = 512;

int ioErrorOf(Operation kind) {
    static constexpr std::array<int, kOperationKinds> kErrors{SQLITE_CANTOPEN,
                                                              SQLITE_IOERR_READ,
                                                              SQLITE_IOERR_WRITE,
                                                              SQLITE_IOERR_TRUNCATE,
                                                              SQLITE_IOERR_FSYNC,
                                                              SQLITE_IOERR_DELETE,
                                                              SQLITE_IOERR_ACCESS,
                                                              SQLITE_IOERR_FSTAT,
                                                              SQLITE_IOERR_LOCK,
                                                              SQLITE_IOERR_SHMMAP,
                                                              SQLITE_IOERR_SHMLOCK,
                                                              SQLITE_OK};
    return kErrors[static_cast<std::size_t>(kind)];
}

} // namespace

FaultCore::FaultCore(std::uint64_t seed) : dice(seed) {}

int FaultCore::fail(Operation kind) {
    ++failures;
    if (isOff) {
        return ioErrorOf(kind);
    }
    switch (plan.fault) {
    case Fault::Full:
        return SQLITE_FULL;
    case Fault::CannotOpen:
        return SQLITE_CANTOPEN;
    case Fault::PowerLoss:
        isOff = true;
        lossModel = plan.model;
        return ioErrorOf(kind);
    case Fault::IoError:
        break;
    }
    return ioErrorOf(kind);
}

int FaultCore::begin(Operation kind,
                     const std::string& path,
                     std::uint64_t offset,
                     std::uint64_t length) {
    ++counts[static_cast<std::size_t>(kind)];
    bool isHit = isOff;
    if (!isOff && isPlanned && (plan.counted & only(kind)) != 0) {
        ++plannedCount;
        isHit = plan.isForEver ? plannedCount >= plan.at : plannedCount == plan.at;
    }
    const int outcome = isHit ? fail(kind) : SQLITE_OK;
    if (log.size() == kLogged) {
        log.pop_front();
    }
    std::uint64_t number = 0;
    for (const std::uint64_t count : counts) {
        number += count;
    }
    log.push_back({number, kind, path, offset, length, outcome});
    return outcome;
}

int FaultCore::refuse(int outcome) {
    ++failures;
    if (!log.empty()) {
        log.back().outcome = outcome;
    }
    return outcome;
}

std::shared_ptr<StoredFile> FaultCore::find(std::string_view path) const {
    const auto found = files.find(path);
    return found == files.end() ? nullptr : found->second;
}

std::shared_ptr<StoredFile> FaultCore::create(const std::string& path) {
    auto file = std::make_shared<StoredFile>();
    file->path = path;
    files[path] = file;
    return file;
}

int FaultCore::write(StoredFile& file, std::uint64_t offset, std::string_view bytes) {
    const bool wasOff = isOff;
    int outcome = begin(Operation::Write, file.path, offset, bytes.size());
    const std::uint64_t end = offset + bytes.size();
    const std::uint64_t growth = end > file.live.size() ? end - file.live.size() : 0;
    if (outcome == SQLITE_OK && growth > 0 && total + growth > capacity) {
        outcome = refuse(SQLITE_FULL);
    }
    if (wasOff) {
        return outcome;
    }
    // The write during which the power goes is one more unsynced write. One that fails otherwise
    // leaves the part of it that was on its way.
    std::string_view kept = bytes;
    if (outcome != SQLITE_OK && !isOff) {
        const std::uint64_t onItsWay = dice.below(bytes.size() / kSector + 1) * kSector;
        const std::uint64_t room = capacity > total ? capacity - total : 0;
        const std::uint64_t lastEnd = file.live.size() + room;
        kept = bytes.substr(
            0, static_cast<std::size_t>(std::min(onItsWay, lastEnd - std::min(lastEnd, offset))));
    }
    if (!kept.empty()) {
        const std::uint64_t before = file.live.size();
        file.write(offset, kept);
        total += file.live.size() - before;
    }
    return outcome;
}

int FaultCore::truncate(StoredFile& file, std::uint64_t size) {
    const bool wasOff = isOff;
    const int outcome = begin(Operation::Truncate, file.path, size);
    if (outcome == SQLITE_OK || (isOff && !wasOff)) {
        total = total - file.live.size() + size;
        file.truncate(size);
    }
    return outcome;
}

int FaultCore::sync(StoredFile& file) {
    const int outcome = begin(Operation::Sync, file.path);
    if (outcome == SQLITE_OK) {
        file.sync();
        if (!file.isNamed) {
            syncFolder();
        }
    } else if (!isOff && afterFailedSync == AfterFailedSync::MarkedClean) {
        file.pending.clear();
    }
    return outcome;
}

int FaultCore::unlink(const std::string& path, bool isFolderSynced) {
    const bool wasOff = isOff;
    const int outcome = begin(Operation::Delete, path);
    const auto found = files.find(path);
    if (outcome == SQLITE_OK && found == files.end()) {
        return SQLITE_IOERR_DELETE_NOENT;
    }
    if (found != files.end() && (outcome == SQLITE_OK || (isOff && !wasOff))) {
        total -= found->second->live.size();
        unlinked[path] = found->second;
        files.erase(found);
    }
    if (outcome == SQLITE_OK && isFolderSynced) {
        syncFolder();
    }
    return outcome;
}

// As SQLite syncs the folder when it has made a journal or a WAL: all entries of the folder are
// safe then.
void FaultCore::syncFolder() {
    unlinked.clear();
    for (const auto& [path, file] : files) {
        file->isNamed = true;
    }
}

void FaultCore::loseUnsynced() {
    const auto isKept = [this] {
        return lossModel == WriteModel::AllKept ||
               (lossModel != WriteModel::AllLost && dice.below(2) == 0);
    };
    for (const auto& [path, file] : unlinked) {
        // A deletion that did not reach the disk; a file made anew at its place goes with it.
        if (!isKept() && file->isNamed) {
            files[path] = file;
        }
    }
    unlinked.clear();
    for (auto at = files.begin(); at != files.end();) {
        if (!at->second->isNamed && !isKept()) {
            at = files.erase(at);
            continue;
        }
        // Handles of the dead program keep the old object; the survivor is a new one.
        auto survivor = std::make_shared<StoredFile>(StoredFile{at->first,
                                                                at->second->live,
                                                                at->second->durable,
                                                                std::move(at->second->pending),
                                                                true,
                                                                {},
                                                                {}});
        survivor->recover(lossModel, dice);
        at->second = std::move(survivor);
        ++at;
    }
    total = 0;
    for (const auto& [path, file] : files) {
        total += file->live.size();
    }
    ++life;
}

} // namespace bullace::test
