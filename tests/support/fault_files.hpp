// Files in memory as a disk holds them: what programs read, what would survive a power loss now,
// and the writes in between. Used by support/fault_vfs.hpp.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::test {

// A small generator with the same numbers everywhere (splitmix64, public domain algorithm).
class FaultDice {
public:
    explicit FaultDice(std::uint64_t seed) : state_(seed) {}
    std::uint64_t next();
    // From 0 to `bound` - 1; 0 where bound is 0.
    std::uint64_t below(std::uint64_t bound) { return bound == 0 ? 0 : next() % bound; }

private:
    std::uint64_t state_;
};

// What is there of unsynced writes once the machine runs again.
enum class WriteModel {
    AllLost,   // nothing
    Torn,      // those up to one of them, and that one up to a sector boundary of 512 bytes
    Reordered, // any of them, whole, whatever came before
    AllKept,   // all: only the program was killed, the operating system went on
};

// The bytes of a file. Copies share their pages until one is written, so that an image is copied in
// the time of a list of pointers.
class FileImage {
public:
    [[nodiscard]] std::uint64_t size() const { return size_; }
    // Bytes beyond the end are not touched; returns how many were read.
    std::size_t read(std::uint64_t offset, char* into, std::size_t length) const;
    void write(std::uint64_t offset, std::string_view bytes);
    void resize(std::uint64_t size); // growing adds zero bytes
    [[nodiscard]] std::string bytes() const;

private:
    static constexpr std::size_t kPage = 4096;
    using Page = std::array<char, kPage>;
    Page& own(std::size_t index);

    std::vector<std::shared_ptr<Page>> pages_; // null is a page of zero bytes
    std::uint64_t size_ = 0;
};

// A write or, where `isTruncation`, a change of size to `offset`.
struct PendingWrite {
    std::uint64_t offset = 0;
    std::string bytes;
    bool isTruncation = false;
};

struct OpenFile; // one handle, see fault_core.hpp

struct StoredFile {
    std::string path;
    FileImage live;    // what programs read
    FileImage durable; // what a sync has made safe
    std::vector<PendingWrite> pending;
    bool isNamed = false; // the folder's entry for it is safe as well
    std::vector<OpenFile*> handles;
    std::vector<std::unique_ptr<std::vector<char>>> shared; // the -shm regions; lost at restart

    void write(std::uint64_t offset, std::string_view bytes);
    void truncate(std::uint64_t size);
    void sync(); // what is pending becomes durable
    // The file after the power came back.
    void recover(WriteModel model, FaultDice& dice);
};

// Paths and contents, e.g. of a backup or a copied tablet.
using FileSet = std::map<std::string, FileImage>;

} // namespace bullace::test
