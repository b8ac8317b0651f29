// A line between a device and its station that counts the bytes on it, TLS records and all.
#pragma once

#include <atomic>
#include <cstdint>
#include <string>
#include <thread>

namespace bullace::bench {

// Carries one connection at a time from a port of its own to `port` on the loopback.
class Relay {
public:
    explicit Relay(std::uint16_t port);
    ~Relay();
    Relay(const Relay&) = delete;
    Relay& operator=(const Relay&) = delete;
    Relay(Relay&&) = delete;
    Relay& operator=(Relay&&) = delete;

    [[nodiscard]] std::string address() const;
    [[nodiscard]] std::uint64_t bytes() const { return bytes_; }

private:
    void run();
    void carry(int device);

    std::uint16_t target_;
    std::uint16_t port_ = 0;
    int socket_ = -1;
    std::atomic<bool> isEnding_ = false;
    std::atomic<std::uint64_t> bytes_ = 0;
    std::thread thread_;
};

} // namespace bullace::bench
