// A station's program around a server, in memory.
#pragma once

#include "model_replica.hpp"

#include "sync/net/server.hpp"

#include <chrono>
#include <map>
#include <mutex>
#include <thread>

namespace bullace::test {

class ModelHost final : public sync::net::StationHost {
public:
    ModelReplica model;
    // How long each store takes besides: a slow disk.
    std::chrono::milliseconds storeTime{0};

    void add(const Digest& key, sync::net::KnownDevice device) {
        const std::lock_guard lock(mutex_);
        devices_[key] = std::move(device);
    }
    void revoke(const Digest& key) {
        const std::lock_guard lock(mutex_);
        devices_[key].isRevoked = true;
    }
    [[nodiscard]] std::size_t sessionsOver() {
        const std::lock_guard lock(mutex_);
        return sessions_;
    }
    [[nodiscard]] std::size_t turnedAway() {
        const std::lock_guard lock(mutex_);
        return turnedAway_;
    }

    std::optional<sync::net::KnownDevice> find(const Digest& key) override {
        const std::lock_guard lock(mutex_);
        const auto at = devices_.find(key);
        return at == devices_.end() ? std::nullopt : std::optional(at->second);
    }
    sync::Replica& replica() override {
        std::this_thread::sleep_for(storeTime);
        return model;
    }
    Status registerDevice(const sync::NewDevice& device) override {
        const std::lock_guard lock(mutex_);
        for (const auto& [key, known] : devices_) {
            if (known.device == device.device && key != device.key) {
                return Error{ErrorCode::AlreadyThere, "Another device has these digits.", {}};
            }
        }
        devices_[device.key] = {device.letter, device.device, device.name, false};
        return {};
    }
    void onSessionOver(const sync::net::KnownDevice& /*device*/,
                       const sync::Summary& /*summary*/,
                       const Status& /*status*/) override {
        const std::lock_guard lock(mutex_);
        ++sessions_;
    }
    void onTurnedAway(const std::string& /*address*/, const std::string& /*why*/) override {
        const std::lock_guard lock(mutex_);
        ++turnedAway_;
    }

private:
    std::mutex mutex_;
    std::map<Digest, sync::net::KnownDevice> devices_;
    std::size_t sessions_ = 0;
    std::size_t turnedAway_ = 0;
};

} // namespace bullace::test
