// A station that serves in a process of its own, and a device that is paired with it.
#pragma once

#include "bench/measure.hpp"

#include "store/database.hpp"
#include "sync/server/device.hpp"

#include <cstdint>
#include <memory>
#include <string>

namespace bullace::bench {

class Served {
public:
    // Serves the station database at `path` until destroyed.
    explicit Served(std::string path);
    ~Served();
    Served(const Served&) = delete;
    Served& operator=(const Served&) = delete;
    Served(Served&&) = delete;
    Served& operator=(Served&&) = delete;

    [[nodiscard]] std::string address() const;
    [[nodiscard]] std::uint16_t port() const { return port_; }
    [[nodiscard]] double mostMemoryMiB() const { return memoryMiB(process_, "VmHWM"); }
    void pair(store::Database& journal, const std::string& name) const;

private:
    std::string path_;
    std::uint16_t port_ = 0;
    int process_ = 0;
    int stop_ = -1;
};

[[nodiscard]] std::unique_ptr<store::Database> makeStation(const std::string& path);
[[nodiscard]] std::unique_ptr<store::Database> makeJournal(const std::string& path,
                                                           std::uint64_t device);
[[nodiscard]] std::unique_ptr<store::Database> openJournal(const std::string& path);

// One sync at the known address, or at `at`; ends the benchmark if it fails.
sync::Summary syncNow(store::Database& journal, const std::string& at = {});

} // namespace bullace::bench
