#include "support/fault_vfs.hpp"

#include "support/fault_core.hpp"

#include <array>
#include <cassert>
#include <sstream>

namespace bullace::test {

namespace {

constexpr std::array<const char*, kOperationKinds> kNames{"open",
                                                          "read",
                                                          "write",
                                                          "truncate",
                                                          "sync",
                                                          "delete",
                                                          "access",
                                                          "size",
                                                          "lock",
                                                          "shm-map",
                                                          "shm-lock",
                                                          "shm-barrier"};

} // namespace

FaultDisk::FaultDisk(std::uint64_t seed) : core_(std::make_unique<FaultCore>(seed)) {
    std::ostringstream name;
    name << "fault-disk-" << core_.get();
    core_->name = name.str();
    describeVfs(*core_);
    [[maybe_unused]] const int registered = sqlite3_vfs_register(&core_->vfs, 0);
    assert(registered == SQLITE_OK);
}

FaultDisk::~FaultDisk() {
    sqlite3_vfs_unregister(&core_->vfs);
}

const char* FaultDisk::vfsName() const {
    return core_->name.c_str();
}

void FaultDisk::plan(const FaultPlan& plan) {
    core_->plan = plan;
    core_->isPlanned = true;
    core_->plannedCount = 0;
}

void FaultDisk::noPlan() {
    core_->isPlanned = false;
}

void FaultDisk::setAfterFailedSync(AfterFailedSync behaviour) {
    core_->afterFailedSync = behaviour;
}

void FaultDisk::setCapacity(std::uint64_t bytes) {
    core_->capacity = bytes;
}

std::uint64_t FaultDisk::operations(Operations counted) const {
    std::uint64_t sum = 0;
    for (unsigned kind = 0; kind < kOperationKinds; ++kind) {
        sum += (counted >> kind & 1U) != 0 ? core_->counts[kind] : 0;
    }
    return sum;
}

std::uint64_t FaultDisk::failures() const {
    return core_->failures;
}

void FaultDisk::cutPower(WriteModel model) {
    core_->isOff = true;
    core_->lossModel = model;
}

bool FaultDisk::isPowerOff() const {
    return core_->isOff;
}

void FaultDisk::restart() {
    if (!core_->isOff) {
        cutPower(WriteModel::AllLost);
    }
    core_->loseUnsynced();
    core_->isOff = false;
    core_->isPlanned = false;
}

bool FaultDisk::exists(std::string_view path) const {
    return core_->files.find(path) != core_->files.end();
}

std::uint64_t FaultDisk::size(std::string_view path) const {
    const auto file = core_->find(path);
    return file ? file->live.size() : 0;
}

std::string FaultDisk::read(std::string_view path) const {
    const auto file = core_->find(path);
    return file ? file->live.bytes() : std::string();
}

void FaultDisk::write(std::string_view path, std::string_view bytes) {
    remove(path);
    const auto file = core_->create(std::string(path));
    file->live.write(0, bytes);
    file->durable = file->live;
    file->isNamed = true;
    core_->total += bytes.size();
}

void FaultDisk::remove(std::string_view path) {
    const auto found = core_->files.find(path);
    if (found != core_->files.end()) {
        core_->total -= found->second->live.size();
        core_->files.erase(found);
    }
    if (const auto ghost = core_->unlinked.find(path); ghost != core_->unlinked.end()) {
        core_->unlinked.erase(ghost);
    }
}

std::vector<std::string> FaultDisk::paths() const {
    std::vector<std::string> paths;
    for (const auto& [path, file] : core_->files) {
        paths.push_back(path);
    }
    return paths;
}

bool FaultDisk::flipBit(std::string_view path, std::uint64_t offset, unsigned bit) {
    const auto file = core_->find(path);
    if (!file || offset >= file->live.size() || bit > 7) {
        return false;
    }
    for (FileImage* image : {&file->live, &file->durable}) {
        char byte = 0;
        if (image->read(offset, &byte, 1) == 1) {
            byte = static_cast<char>(static_cast<unsigned char>(byte) ^ 1U << bit);
            image->write(offset, {&byte, 1});
        }
    }
    return true;
}

FileSet FaultDisk::snapshot() const {
    FileSet files;
    for (const auto& [path, file] : core_->files) {
        files.emplace(path, file->live);
    }
    return files;
}

void FaultDisk::restore(const FileSet& files) {
    core_->files.clear();
    core_->unlinked.clear();
    core_->total = 0;
    ++core_->life;
    for (const auto& [path, image] : files) {
        const auto file = core_->create(path);
        file->live = image;
        file->durable = image;
        file->isNamed = true;
        core_->total += image.size();
    }
}

std::string FaultDisk::log() const {
    std::ostringstream text;
    for (const LoggedOperation& one : core_->log) {
        text << one.number << ' ' << kNames[static_cast<std::size_t>(one.kind)] << ' ' << one.path
             << " @" << one.offset << " +" << one.length
             << (one.outcome == SQLITE_OK ? "" : " failed: ")
             << (one.outcome == SQLITE_OK ? "" : sqlite3_errstr(one.outcome)) << '\n';
    }
    return text.str();
}

} // namespace bullace::test
