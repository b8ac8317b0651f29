// A disk in memory that fails as told: for SQLite by its own VFS, and for other files by read and
// write.
//
//     FaultDisk disk(seed);
//     sqlite3_open_v2("journal.db", &db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE,
//     disk.vfsName()); disk.plan({.at = n, .fault = Fault::PowerLoss, .model = WriteModel::Torn});
//     …                     // at the nth operation from here on the power goes; then all fails
//     sqlite3_close(db);    // as always: the handles of the dead program must be closed
//     disk.restart();       // what has survived is there to be opened
//
// One thread. Everything follows from the seed and the calls, but for the salts that SQLite puts
// into its WAL, which change no decision. Databases must be closed before their disk goes.
#pragma once

#include "support/fault_files.hpp"

#include <cstdint>
#include <limits>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::test {

enum class Operation : unsigned {
    Open,
    Read,
    Write,
    Truncate,
    Sync,
    Delete,
    Access,
    Size,
    Lock,
    ShmMap,
    ShmLock,
    ShmBarrier,
};
inline constexpr unsigned kOperationKinds = 12;

// A set of kinds of operation, one bit each.
using Operations = unsigned;
inline constexpr Operations kAllOperations = (1U << kOperationKinds) - 1;
[[nodiscard]] constexpr Operations only(Operation kind) {
    return 1U << static_cast<unsigned>(kind);
}
// Those after which a power loss leaves something else than before.
inline constexpr Operations kChanging = only(Operation::Open) | only(Operation::Write) |
                                        only(Operation::Truncate) | only(Operation::Sync) |
                                        only(Operation::Delete);

enum class Fault {
    IoError, // SQLITE_IOERR_READ, _WRITE, _FSYNC … as fits the operation
    Full,
    CannotOpen,
    PowerLoss,
};

struct FaultPlan {
    std::uint64_t at = 1; // the number of the operation, from 1, counted from plan() on
    Fault fault = Fault::IoError;
    bool isForEver = false;                 // that one and all after it; a power loss always is
    WriteModel model = WriteModel::AllLost; // of a power loss
    Operations counted = kAllOperations;    // only these are counted and fail
};

// What a failed sync does to the pages that it did not write.
enum class AfterFailedSync {
    StaysDirty,  // a later sync writes them
    MarkedClean, // never written, though they can be read until the machine stops
};

class FaultCore;

class FaultDisk {
public:
    explicit FaultDisk(std::uint64_t seed = 1);
    ~FaultDisk();
    FaultDisk(const FaultDisk&) = delete;
    FaultDisk& operator=(const FaultDisk&) = delete;
    FaultDisk(FaultDisk&&) = delete;
    FaultDisk& operator=(FaultDisk&&) = delete;

    // For sqlite3_open_v2; valid as long as the disk.
    [[nodiscard]] const char* vfsName() const;

    // Faults. One plan at a time; a new one replaces the old.
    void plan(const FaultPlan& plan);
    void noPlan();
    void setAfterFailedSync(AfterFailedSync behaviour);
    // No write beyond this many bytes in all files together.
    void setCapacity(std::uint64_t bytes);
    void setUnlimited() { setCapacity(std::numeric_limits<std::uint64_t>::max()); }
    // Operations since the disk was made.
    [[nodiscard]] std::uint64_t operations(Operations counted = kAllOperations) const;
    // Operations that failed by plan, for want of space, or without power.
    [[nodiscard]] std::uint64_t failures() const;

    // Power. It goes at the planned operation, or now.
    void cutPower(WriteModel model);
    [[nodiscard]] bool isPowerOff() const;
    // The machine runs again, with what the write model left; the plan is dropped. Handles from
    // before fail from now on and can only be closed. With the power still on this is a sudden
    // restart with everything synced by nobody: as cutPower(AllLost) before it.
    void restart();

    // Files, without counting, and safe at once.
    [[nodiscard]] bool exists(std::string_view path) const;
    [[nodiscard]] std::uint64_t size(std::string_view path) const; // 0 where there is none
    [[nodiscard]] std::string read(std::string_view path) const;
    void write(std::string_view path, std::string_view bytes);
    void remove(std::string_view path);
    [[nodiscard]] std::vector<std::string> paths() const;
    // Flips one bit, 0 to 7, of a byte that the file has; false where it has not.
    bool flipBit(std::string_view path, std::uint64_t offset, unsigned bit);

    // All files as programs read them now; copies no bytes.
    [[nodiscard]] FileSet snapshot() const;
    // Every file becomes as in the snapshot, of this disk or another, others vanish; open handles
    // fail from now on.
    void restore(const FileSet& files);

    // The last operations, one a line: number, kind, path, offset, length, outcome.
    [[nodiscard]] std::string log() const;

private:
    std::unique_ptr<FaultCore> core_;
};

} // namespace bullace::test
