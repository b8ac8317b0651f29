#include "store/surroundings.hpp"

#include <array>
#include <fcntl.h>
#include <fstream>
#include <sstream>
#include <sys/file.h>
#include <sys/random.h>
#include <sys/stat.h>
#include <unistd.h>

namespace bullace::store {

namespace {

class FileLock : public WriteLock {
public:
    explicit FileLock(int file) : file_(file) {}
    ~FileLock() override { ::close(file_); }
    FileLock(const FileLock&) = delete;
    FileLock& operator=(const FileLock&) = delete;
    FileLock(FileLock&&) = delete;
    FileLock& operator=(FileLock&&) = delete;

private:
    int file_;
};

std::string firstLine(int file) {
    std::array<char, 64> text{};
    const ssize_t got = ::pread(file, text.data(), text.size(), 0);
    std::string line(text.data(), got > 0 ? static_cast<std::size_t>(got) : 0);
    return line.substr(0, line.find('\n'));
}

// Writes a small file so that after a crash either the old or the new text is there.
Status replaceFile(const std::string& path, const std::string& text) {
    const std::string fresh = path + ".new";
    const auto failed = [&path] {
        return Error{
            ErrorCode::ReadOnly,
            "\"" + path +
                "\" cannot be written. Check the rights of its folder and the room on the disk.",
            {}};
    };
    const int file = ::open(fresh.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
    if (file < 0) {
        return failed();
    }
    const bool isWritten =
        ::write(file, text.data(), text.size()) == static_cast<ssize_t>(text.size()) &&
        ::fsync(file) == 0;
    ::close(file);
    if (!isWritten || ::rename(fresh.c_str(), path.c_str()) != 0) {
        return failed();
    }
    return {};
}

class FileSurroundings : public Surroundings {
public:
    Result<std::unique_ptr<WriteLock>> lock(const std::string& path) override {
        const std::string name = path + "-lock";
        const int file = ::open(name.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0644);
        if (file < 0) {
            return Error{ErrorCode::ReadOnly,
                         "\"" + path +
                             "\" cannot be opened for writing. Check the rights of its folder.",
                         name};
        }
        if (::flock(file, LOCK_EX | LOCK_NB) != 0) {
            const std::string holder = firstLine(file);
            ::close(file);
            return Error{ErrorCode::InUse,
                         "\"" + path + "\" is open for writing in another program" +
                             (holder.empty() ? "" : " (process " + holder + ")") +
                             ". Close that one, or go through it.",
                         {}};
        }
        const std::string pid = std::to_string(::getpid()) + "\n";
        if (::ftruncate(file, 0) != 0 || ::pwrite(file, pid.data(), pid.size(), 0) < 0) {
            // The number is only for messages; the lock itself holds without it, also on a full
            // disk.
        }
        return std::unique_ptr<WriteLock>(std::make_unique<FileLock>(file));
    }

    std::optional<std::string> readToken(const std::string& path) override {
        std::ifstream in(path + "-token");
        std::ostringstream text;
        if (!in || !(text << in.rdbuf())) {
            return std::nullopt;
        }
        return text.str();
    }

    Status writeToken(const std::string& path, const std::string& text) override {
        return replaceFile(path + "-token", text);
    }

    std::string fileMark(const std::string& path) override {
        struct stat status {};
        return ::stat(path.c_str(), &status) == 0 ? std::to_string(status.st_ino) : std::string{};
    }

    bool exists(const std::string& path) override {
        struct stat status {};
        return ::lstat(path.c_str(), &status) == 0;
    }

    void remove(const std::string& path) override {
        for (const char* tail : {"", "-wal", "-shm", "-token"}) {
            ::unlink((path + tail).c_str());
        }
    }

    Bytes randomBytes(std::size_t count) override {
        Bytes bytes(count, '\0');
        std::size_t done = 0;
        while (done < count) {
            const ssize_t got = ::getrandom(bytes.data() + done, count - done, 0);
            done += got > 0 ? static_cast<std::size_t>(got) : 0;
        }
        return bytes;
    }
};

} // namespace

std::unique_ptr<Surroundings> fileSurroundings() {
    return std::make_unique<FileSurroundings>();
}

} // namespace bullace::store
