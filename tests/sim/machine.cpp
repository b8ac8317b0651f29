#include "sim/machine.hpp"

#include "sim/violation.hpp"

namespace bullace::test {

namespace {

constexpr const char* kPath = "journal.db";
constexpr const char* kToken = "journal.db-token";

class Lock : public store::WriteLock {
public:
    explicit Lock(bool& isLocked) : isLocked_(isLocked) { isLocked_ = true; }
    ~Lock() override { isLocked_ = false; }
    Lock(const Lock&) = delete;
    Lock& operator=(const Lock&) = delete;
    Lock(Lock&&) = delete;
    Lock& operator=(Lock&&) = delete;

private:
    bool& isLocked_;
};

} // namespace

class MachineSurroundings : public store::Surroundings {
public:
    explicit MachineSurroundings(Machine& machine) : machine_(machine) {}

    Result<std::unique_ptr<store::WriteLock>> lock(const std::string& path) override {
        if (machine_.isLocked_) {
            return Error{ErrorCode::InUse, "\"" + path + "\" is open for writing.", {}};
        }
        return std::unique_ptr<store::WriteLock>(std::make_unique<Lock>(machine_.isLocked_));
    }
    std::optional<std::string> readToken(const std::string& /*path*/) override {
        return machine_.disk_.exists(kToken) ? std::optional(machine_.disk_.read(kToken))
                                             : std::nullopt;
    }
    Status writeToken(const std::string& path, const std::string& text) override {
        if (machine_.disk_.isPowerOff()) {
            return Error{ErrorCode::Io, "\"" + path + "\" could not be written.", {}};
        }
        machine_.disk_.write(kToken, text);
        return {};
    }
    std::string fileMark(const std::string& /*path*/) override { return machine_.mark_; }
    bool exists(const std::string& path) override { return machine_.disk_.exists(path); }
    void remove(const std::string& path) override {
        for (const char* tail : {"", "-wal", "-shm"}) {
            machine_.disk_.remove(path + tail);
        }
    }
    Bytes randomBytes(std::size_t count) override {
        Bytes bytes;
        while (bytes.size() < count) {
            bytes.push_back(static_cast<char>(machine_.dice_.next()));
        }
        return bytes;
    }
    [[nodiscard]] std::string vfs() const override { return machine_.disk_.vfsName(); }

private:
    Machine& machine_;
};

Machine::Machine(std::string name, std::uint64_t seed)
    : name_(std::move(name)),
      disk_(seed),
      dice_(seed + 1),
      mark_("1") {}

void Machine::found(store::Role role, char letter, std::uint64_t device) {
    letter_ = letter;
    device_ = device;
    auto made = store::Database::create(kPath,
                                        {role, "Invented Station", "UTC", device},
                                        std::make_unique<MachineSurroundings>(*this));
    demand(made.ok(), "a journal can be made", made.ok() ? "" : made.error().message);
    database_ = std::move(*made);
    if (role == store::Role::Field && letter == 's') {
        const Status adopted = database_->adopt(letter, "Invented Station", "UTC");
        demand(adopted.ok(), "a journal can be made", adopted.ok() ? "" : adopted.error().message);
    }
}

void Machine::close() {
    database_.reset();
}

Status Machine::open() {
    close();
    auto opened = store::Database::open(kPath, true, std::make_unique<MachineSurroundings>(*this));
    if (!opened) {
        return opened.error();
    }
    database_ = std::move(*opened);
    isToCheck = true;
    return {};
}

void Machine::restartDisk() {
    close();
    disk_.noPlan();
    disk_.setUnlimited();
    isDiskShort = false;
    if (disk_.isPowerOff()) {
        disk_.restart();
    }
}

Machine::Copy Machine::copy() const {
    return {disk_.snapshot(), mark_, promised};
}

void Machine::putBack(const Copy& copy, CopyOf how) {
    close();
    disk_.noPlan();
    FileSet files = copy.files;
    if (how == CopyOf::WholeDisk) {
        mark_ = copy.mark;
    } else {
        // The token of today stays beside the file of then, which has another inode now.
        files.erase(kToken);
        if (disk_.exists(kToken)) {
            FileImage token;
            token.write(0, disk_.read(kToken));
            files.emplace(kToken, token);
        }
        mark_ = std::to_string(dice_.next());
    }
    disk_.restore(files);
    promised = copy.promised;
}

void Machine::takeIdentityOf(const Machine& other) {
    letter_ = other.letter_;
    device_ = other.device_;
}

} // namespace bullace::test
