// What a journal on a FaultDisk needs from outside itself: lock, token and randomness, all of them
// on that disk or from a count.
#pragma once

#include "store/surroundings.hpp"
#include "support/fault_vfs.hpp"

#include <memory>
#include <optional>
#include <string>

namespace bullace::test {

class DiskSurroundings : public store::Surroundings {
public:
    // The disk outlives it. `mark` is what an inode would be; another one says that the file was
    // copied.
    explicit DiskSurroundings(FaultDisk& disk, std::string mark = "1")
        : disk_(disk),
          mark_(std::move(mark)) {}

    Result<std::unique_ptr<store::WriteLock>> lock(const std::string& /*path*/) override {
        return std::unique_ptr<store::WriteLock>(std::make_unique<NoLock>());
    }
    std::optional<std::string> readToken(const std::string& path) override {
        const std::string name = path + "-token";
        return disk_.exists(name) ? std::optional(disk_.read(name)) : std::nullopt;
    }
    Status writeToken(const std::string& path, const std::string& text) override {
        if (disk_.isPowerOff()) {
            return Error{ErrorCode::Io, "The token could not be written.", {}};
        }
        disk_.write(path + "-token", text);
        return {};
    }
    std::string fileMark(const std::string& /*path*/) override { return mark_; }
    bool exists(const std::string& path) override { return disk_.exists(path); }
    void remove(const std::string& path) override {
        for (const char* tail : {"", "-wal", "-shm", "-token"}) {
            if (!disk_.isPowerOff()) {
                disk_.remove(path + tail);
            }
        }
    }
    Bytes randomBytes(std::size_t count) override {
        static thread_local std::uint64_t number = 0;
        ++number;
        Bytes bytes;
        for (std::size_t i = 0; i < count; ++i) {
            bytes.push_back(static_cast<char>(number >> (i % 8 * 8) & 0xFFU));
        }
        return bytes;
    }
    [[nodiscard]] std::string vfs() const override { return disk_.vfsName(); }

private:
    class NoLock : public store::WriteLock {};
    FaultDisk& disk_;
    std::string mark_;
};

} // namespace bullace::test
