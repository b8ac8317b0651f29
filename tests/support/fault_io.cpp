// The VFS through which SQLite sees a FaultDisk. It has locks and shared memory like a real one, so
// that several connections of one thread get in each other's way as they would on a disk.
#include "support/fault_core.hpp"

#include <algorithm>
#include <cstring>
#include <new>

namespace bullace::test {

namespace {

OpenFile& handleOf(sqlite3_file* file) {
    return *reinterpret_cast<OpenFile*>(file);
}
FaultCore& coreOf(sqlite3_vfs* vfs) {
    return *static_cast<FaultCore*>(vfs->pAppData);
}

// Of another life of the machine, or without power.
constexpr int kDead = SQLITE_IOERR;

template<typename Predicate>
bool anyOther(const OpenFile& handle, Predicate&& holds) {
    const auto& all = handle.file->handles;
    return std::any_of(all.begin(), all.end(), [&](const OpenFile* other) {
        return other != &handle && holds(*other);
    });
}

int closeFile(sqlite3_file* base) {
    OpenFile& handle = handleOf(base);
    auto& handles = handle.file->handles;
    handles.erase(std::remove(handles.begin(), handles.end(), &handle), handles.end());
    if (handle.isDeletedOnClose && handle.life == handle.core->life) {
        const auto found = handle.core->files.find(handle.file->path);
        if (found != handle.core->files.end()) {
            handle.core->total -= found->second->live.size();
            handle.core->files.erase(found);
        }
    }
    handle.~OpenFile();
    return SQLITE_OK;
}

int readFile(sqlite3_file* base, void* into, int length, sqlite3_int64 offset) {
    OpenFile& handle = handleOf(base);
    if (handle.life != handle.core->life) {
        return kDead;
    }
    const auto from = static_cast<std::uint64_t>(offset);
    const auto wanted = static_cast<std::size_t>(length);
    if (const int outcome = handle.core->begin(Operation::Read, handle.file->path, from, wanted)) {
        return outcome;
    }
    auto* const bytes = static_cast<char*>(into);
    const std::size_t there = handle.file->live.read(from, bytes, wanted);
    std::fill(bytes + there, bytes + wanted, '\0');
    return there == wanted ? SQLITE_OK : SQLITE_IOERR_SHORT_READ;
}

int writeFile(sqlite3_file* base, const void* bytes, int length, sqlite3_int64 offset) {
    OpenFile& handle = handleOf(base);
    if (handle.life != handle.core->life) {
        return kDead;
    }
    return handle.core->write(*handle.file,
                              static_cast<std::uint64_t>(offset),
                              {static_cast<const char*>(bytes), static_cast<std::size_t>(length)});
}

int truncateFile(sqlite3_file* base, sqlite3_int64 size) {
    OpenFile& handle = handleOf(base);
    return handle.life == handle.core->life
               ? handle.core->truncate(*handle.file, static_cast<std::uint64_t>(size))
               : kDead;
}

int syncFile(sqlite3_file* base, int /*flags*/) {
    OpenFile& handle = handleOf(base);
    return handle.life == handle.core->life ? handle.core->sync(*handle.file) : kDead;
}

int fileSize(sqlite3_file* base, sqlite3_int64* size) {
    OpenFile& handle = handleOf(base);
    if (handle.life != handle.core->life) {
        return kDead;
    }
    const int outcome = handle.core->begin(Operation::Size, handle.file->path);
    *size = outcome == SQLITE_OK ? static_cast<sqlite3_int64>(handle.file->live.size()) : 0;
    return outcome;
}

int lockFile(sqlite3_file* base, int level) {
    OpenFile& handle = handleOf(base);
    if (handle.life != handle.core->life) {
        return kDead;
    }
    if (handle.lock >= level) {
        return SQLITE_OK;
    }
    if (const int outcome = handle.core->begin(
            Operation::Lock, handle.file->path, static_cast<std::uint64_t>(level))) {
        return outcome;
    }
    const auto otherHolds = [&handle](int least) {
        return anyOther(handle, [least](const OpenFile& other) { return other.lock >= least; });
    };
    const bool isTaken = level == SQLITE_LOCK_SHARED ? otherHolds(SQLITE_LOCK_PENDING)
                                                     : otherHolds(SQLITE_LOCK_RESERVED);
    if (isTaken) {
        return SQLITE_BUSY;
    }
    if (level == SQLITE_LOCK_EXCLUSIVE && otherHolds(SQLITE_LOCK_SHARED)) {
        handle.lock = SQLITE_LOCK_PENDING; // nobody new may read now
        return SQLITE_BUSY;
    }
    handle.lock = level;
    return SQLITE_OK;
}

// Giving up a lock never fails: a lock that stayed behind would be the test's bug, not the disk's.
int unlockFile(sqlite3_file* base, int level) {
    OpenFile& handle = handleOf(base);
    handle.lock = std::min(handle.lock, level);
    return SQLITE_OK;
}

int checkReserved(sqlite3_file* base, int* isReserved) {
    OpenFile& handle = handleOf(base);
    *isReserved =
        handle.lock >= SQLITE_LOCK_RESERVED ||
                anyOther(handle,
                         [](const OpenFile& other) { return other.lock >= SQLITE_LOCK_RESERVED; })
            ? 1
            : 0;
    return SQLITE_OK;
}

int controlFile(sqlite3_file* base, int operation, void* argument) {
    OpenFile& handle = handleOf(base);
    if (operation == SQLITE_FCNTL_PERSIST_WAL) {
        int& value = *static_cast<int*>(argument);
        if (value < 0) {
            value = handle.isPersistentWal ? 1 : 0;
        } else {
            handle.isPersistentWal = value != 0;
        }
        return SQLITE_OK;
    }
    if (operation == SQLITE_FCNTL_VFSNAME) {
        *static_cast<char**>(argument) = sqlite3_mprintf("%s", handle.core->name.c_str());
        return SQLITE_OK;
    }
    return SQLITE_NOTFOUND;
}

int sectorSize(sqlite3_file* /*base*/) {
    return 4096;
}

// As SQLite assumes of common disks: a write within a sector does not harm the rest of it.
int characteristics(sqlite3_file* /*base*/) {
    return SQLITE_IOCAP_POWERSAFE_OVERWRITE;
}

int shmMap(sqlite3_file* base, int region, int size, int isExtended, void volatile** mapped) {
    OpenFile& handle = handleOf(base);
    *mapped = nullptr;
    if (handle.life != handle.core->life) {
        return kDead;
    }
    const auto index = static_cast<std::size_t>(region);
    if (const int outcome = handle.core->begin(Operation::ShmMap, handle.file->path, index)) {
        return outcome;
    }
    auto& regions = handle.file->shared;
    handle.isShmUser = true;
    if (index >= regions.size() && isExtended == 0) {
        return SQLITE_OK;
    }
    while (index >= regions.size()) {
        regions.push_back(std::make_unique<std::vector<char>>(static_cast<std::size_t>(size)));
    }
    *mapped = regions[index]->data();
    return SQLITE_OK;
}

int shmLock(sqlite3_file* base, int first, int count, int flags) {
    OpenFile& handle = handleOf(base);
    const unsigned slots = ((1U << static_cast<unsigned>(count)) - 1)
                           << static_cast<unsigned>(first);
    if ((flags & SQLITE_SHM_UNLOCK) != 0) {
        handle.sharedSlots &= ~slots;
        handle.exclusiveSlots &= ~slots;
        return SQLITE_OK;
    }
    if (handle.life != handle.core->life) {
        return kDead;
    }
    if (const int outcome = handle.core->begin(Operation::ShmLock,
                                               handle.file->path,
                                               static_cast<std::uint64_t>(first),
                                               static_cast<std::uint64_t>(count))) {
        return outcome;
    }
    const bool isShared = (flags & SQLITE_SHM_SHARED) != 0;
    const bool isTaken = anyOther(handle, [slots, isShared](const OpenFile& other) {
        return (other.exclusiveSlots & slots) != 0 ||
               (!isShared && (other.sharedSlots & slots) != 0);
    });
    if (isTaken) {
        return SQLITE_BUSY;
    }
    (isShared ? handle.sharedSlots : handle.exclusiveSlots) |= slots;
    return SQLITE_OK;
}

void shmBarrier(sqlite3_file* base) {
    OpenFile& handle = handleOf(base);
    if (handle.life == handle.core->life) {
        handle.core->begin(Operation::ShmBarrier, handle.file->path);
    }
}

int shmUnmap(sqlite3_file* base, int /*isDeleted*/) {
    OpenFile& handle = handleOf(base);
    handle.isShmUser = false;
    handle.sharedSlots = 0;
    handle.exclusiveSlots = 0;
    // The next first user of a real -shm file clears it as well.
    if (!anyOther(handle, [](const OpenFile& other) { return other.isShmUser; })) {
        handle.file->shared.clear();
    }
    return SQLITE_OK;
}

const sqlite3_io_methods kMethods{2,
                                  closeFile,
                                  readFile,
                                  writeFile,
                                  truncateFile,
                                  syncFile,
                                  fileSize,
                                  lockFile,
                                  unlockFile,
                                  checkReserved,
                                  controlFile,
                                  sectorSize,
                                  characteristics,
                                  shmMap,
                                  shmLock,
                                  shmBarrier,
                                  shmUnmap,
                                  nullptr,
                                  nullptr};

int openFile(sqlite3_vfs* vfs, const char* name, sqlite3_file* base, int flags, int* outFlags) {
    FaultCore& core = coreOf(vfs);
    base->pMethods = nullptr; // so that nobody closes what was not opened
    const std::string path =
        name != nullptr ? name : "temporary-" + std::to_string(++core.temporaries);
    if (const int outcome = core.begin(Operation::Open, path)) {
        return outcome;
    }
    auto file = core.find(path);
    if (!file && (flags & SQLITE_OPEN_CREATE) == 0) {
        return SQLITE_CANTOPEN;
    }
    if (!file) {
        file = core.create(path);
    }
    auto* const handle = new (base) OpenFile();
    handle->base.pMethods = &kMethods;
    handle->core = &core;
    handle->file = std::move(file);
    handle->life = core.life;
    handle->isDeletedOnClose = (flags & SQLITE_OPEN_DELETEONCLOSE) != 0;
    handle->file->handles.push_back(handle);
    if (outFlags != nullptr) {
        *outFlags = flags;
    }
    return SQLITE_OK;
}

int deleteFile(sqlite3_vfs* vfs, const char* path, int isFolderSynced) {
    return coreOf(vfs).unlink(path, isFolderSynced != 0);
}

int accessFile(sqlite3_vfs* vfs, const char* path, int /*flags*/, int* isThere) {
    FaultCore& core = coreOf(vfs);
    const int outcome = core.begin(Operation::Access, path);
    *isThere = outcome == SQLITE_OK && core.find(path) != nullptr ? 1 : 0;
    return outcome;
}

int fullPath(sqlite3_vfs* /*vfs*/, const char* path, int size, char* out) {
    sqlite3_snprintf(size, out, "%s", path);
    return SQLITE_OK;
}

int randomness(sqlite3_vfs* vfs, int length, char* out) {
    FaultCore& core = coreOf(vfs);
    std::generate_n(out, length, [&core] { return static_cast<char>(core.dice.next()); });
    return length;
}

int sleepNever(sqlite3_vfs* /*vfs*/, int microseconds) {
    return microseconds;
}

// Noon of 1 January 2000: nothing here may depend on the day.
int currentTime(sqlite3_vfs* /*vfs*/, sqlite3_int64* milliseconds) {
    *milliseconds = 211813488000000;
    return SQLITE_OK;
}

int currentDay(sqlite3_vfs* /*vfs*/, double* day) {
    *day = 2451545.0;
    return SQLITE_OK;
}

int lastError(sqlite3_vfs* /*vfs*/, int /*length*/, char* /*out*/) {
    return 0;
}

} // namespace

void describeVfs(FaultCore& core) {
    sqlite3_vfs& vfs = core.vfs;
    vfs.iVersion = 2;
    vfs.szOsFile = sizeof(OpenFile);
    vfs.mxPathname = 512;
    vfs.zName = core.name.c_str();
    vfs.pAppData = &core;
    vfs.xOpen = openFile;
    vfs.xDelete = deleteFile;
    vfs.xAccess = accessFile;
    vfs.xFullPathname = fullPath;
    vfs.xRandomness = randomness;
    vfs.xSleep = sleepNever;
    vfs.xCurrentTime = currentDay;
    vfs.xGetLastError = lastError;
    vfs.xCurrentTimeInt64 = currentTime;
}

} // namespace bullace::test
