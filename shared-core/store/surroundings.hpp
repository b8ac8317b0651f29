// What a journal file needs from outside itself: the lock of its one writer, the token beside it,
// and randomness.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/result.hpp"

#include <memory>
#include <optional>
#include <string>

namespace bullace::store {

// Held as long as the file is open for writing.
class WriteLock {
public:
    virtual ~WriteLock() = default;
    WriteLock() = default;
    WriteLock(const WriteLock&) = delete;
    WriteLock& operator=(const WriteLock&) = delete;
    WriteLock(WriteLock&&) = delete;
    WriteLock& operator=(WriteLock&&) = delete;
};

class Surroundings {
public:
    virtual ~Surroundings() = default;
    Surroundings() = default;
    Surroundings(const Surroundings&) = delete;
    Surroundings& operator=(const Surroundings&) = delete;
    Surroundings(Surroundings&&) = delete;
    Surroundings& operator=(Surroundings&&) = delete;

    // Errors: InUse where another program has it, with that program's number in the message;
    // ReadOnly.
    [[nodiscard]] virtual Result<std::unique_ptr<WriteLock>> lock(const std::string& path) = 0;
    // The text beside the journal, which backups and copies leave out; nothing where there is none.
    [[nodiscard]] virtual std::optional<std::string> readToken(const std::string& path) = 0;
    [[nodiscard]] virtual Status writeToken(const std::string& path, const std::string& text) = 0;
    // Something that differs between a file and its copy (its inode), or an empty text.
    [[nodiscard]] virtual std::string fileMark(const std::string& path) = 0;
    [[nodiscard]] virtual bool exists(const std::string& path) = 0;
    // Takes away what was left of a file that could not be made.
    virtual void remove(const std::string& path) = 0;
    [[nodiscard]] virtual Bytes randomBytes(std::size_t count) = 0;
    [[nodiscard]] virtual std::string vfs() const {
        return {};
    } // the SQLite VFS to open files with
};

// For real files: PATH-lock (flock) and PATH-token beside PATH.
[[nodiscard]] std::unique_ptr<Surroundings> fileSurroundings();

} // namespace bullace::store
