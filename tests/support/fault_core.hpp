// The inside of a FaultDisk, shared by its public face and the SQLite VFS.
#pragma once

#include "support/fault_vfs.hpp"

#include <sqlite3.h>

#include <array>
#include <deque>
#include <map>
#include <memory>
#include <string>
#include <string_view>

namespace bullace::test {

// SQLite's handle: made by SQLite as raw memory, so `base` comes first.
struct OpenFile {
    sqlite3_file base{};
    FaultCore* core = nullptr;
    std::shared_ptr<StoredFile> file;
    std::uint64_t life = 0; // of the machine; a handle of an earlier one is dead
    int lock = SQLITE_LOCK_NONE;
    unsigned sharedSlots = 0; // of the -shm locks, one bit each
    unsigned exclusiveSlots = 0;
    bool isShmUser = false;
    bool isPersistentWal = false;
    bool isDeletedOnClose = false;
};

struct LoggedOperation {
    std::uint64_t number = 0;
    Operation kind = Operation::Open;
    std::string path;
    std::uint64_t offset = 0;
    std::uint64_t length = 0;
    int outcome = SQLITE_OK;
};

class FaultCore {
public:
    explicit FaultCore(std::uint64_t seed);

    // Counts and logs an operation; SQLITE_OK, or what it must fail with. `offset` and `length` are
    // for the log: of bytes, or of what else the operation is about (a lock's level, its slots).
    int begin(Operation kind,
              const std::string& path,
              std::uint64_t offset = 0,
              std::uint64_t length = 0);
    [[nodiscard]] bool isAlive(const OpenFile& handle) const {
        return handle.life == life && !isOff;
    }
    // A failure that no plan asked for (no space).
    int refuse(int outcome);

    [[nodiscard]] std::shared_ptr<StoredFile> find(std::string_view path) const;
    std::shared_ptr<StoredFile> create(const std::string& path);
    int write(StoredFile& file, std::uint64_t offset, std::string_view bytes);
    int truncate(StoredFile& file, std::uint64_t size);
    int sync(StoredFile& file);
    int unlink(const std::string& path, bool isFolderSynced);
    void loseUnsynced();
    void syncFolder();

    using Files = std::map<std::string, std::shared_ptr<StoredFile>, std::less<>>;
    Files files;
    Files unlinked;          // whose deletion a power loss would undo
    std::uint64_t total = 0; // bytes of all live files
    std::uint64_t capacity = std::numeric_limits<std::uint64_t>::max();
    std::uint64_t life = 1;
    std::uint64_t temporaries = 0;
    bool isOff = false;
    bool isPlanned = false;
    FaultPlan plan;
    std::uint64_t plannedCount = 0;
    WriteModel lossModel = WriteModel::AllLost;
    AfterFailedSync afterFailedSync = AfterFailedSync::StaysDirty;
    FaultDice dice;
    std::array<std::uint64_t, kOperationKinds> counts{};
    std::uint64_t failures = 0;
    std::deque<LoggedOperation> log;
    std::string name;
    sqlite3_vfs vfs{};

private:
    int fail(Operation kind);
};

// Fills in core.vfs; fault_io.cpp.
void describeVfs(FaultCore& core);

} // namespace bullace::test
