// One machine of a simulated station: a tablet, the office's device or the station, with a journal
// of the real store on a disk that can fail.
#pragma once

#include "sim/dice.hpp"

#include "store/database.hpp"
#include "store/peers.hpp"
#include "support/fault_vfs.hpp"

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace bullace::test {

// An entry as it is told of: its place and its digest.
using Mark = journal::BranchEnd;

// How a disk was copied back.
enum class CopyOf {
    JournalOnly, // without the token beside it: whoever opens it can see that it is a copy
    WholeDisk,   // token and all: nobody can see it
};

class Machine {
public:
    Machine(std::string name, std::uint64_t seed);

    // A new journal. The letter is `s` for the station and the office's device.
    void found(store::Role role, char letter, std::uint64_t device);

    [[nodiscard]] const std::string& name() const { return name_; }
    [[nodiscard]] bool isUp() const { return database_ != nullptr; }
    [[nodiscard]] store::Database& database() { return *database_; }
    [[nodiscard]] FaultDisk& disk() { return disk_; }
    [[nodiscard]] char letter() const { return letter_; }
    [[nodiscard]] std::uint64_t device() const { return device_; }

    // The program ends, however it was.
    void close();
    // The program starts; the error of the store where it cannot.
    [[nodiscard]] Status open();
    // The power comes back, if it was gone.
    void restartDisk();

    struct Copy {
        FileSet files;
        std::string mark;
        std::set<Mark> promised;
    };
    [[nodiscard]] Copy copy() const;
    // The machine is put back to a copy, of itself or of another machine (whose identity it then
    // has).
    void putBack(const Copy& copy, CopyOf how);
    void takeIdentityOf(const Machine& other);

    // What must be on this machine: it said that it was saved, written here or taken from others.
    std::set<Mark> promised;
    // Where it may give a number twice: it was put back and cannot know of the epochs up to the
    // second that began after the first, or another machine goes on as the same device.
    std::uint32_t doubtAbove = 0;
    std::uint32_t doubtUpTo = 0;
    bool hasTwin = false;
    [[nodiscard]] bool mayRepeat(std::uint32_t epoch) const {
        return hasTwin || (epoch > doubtAbove && epoch <= doubtUpTo);
    }
    // A sync was complete since its own journal was found to be forked.
    bool wasSyncedSinceFork = false;
    bool isRevoked = false;
    bool isDiskShort = false;
    bool isFaultPlanned = false;
    // Changed since it was last looked at.
    bool isToCheck = true;

private:
    friend class MachineSurroundings;
    std::string name_;
    FaultDisk disk_;
    Dice dice_;
    char letter_ = 't';
    std::uint64_t device_ = 0;
    std::string mark_; // what an inode is
    bool isLocked_ = false;
    std::unique_ptr<store::Database> database_;
};

} // namespace bullace::test
