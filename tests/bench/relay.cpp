#include "bench/relay.hpp"

#include "bench/measure.hpp"

#include <arpa/inet.h>
#include <array>
#include <cstring>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

namespace bullace::bench {

namespace {

sockaddr_in loopback(std::uint16_t port) {
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_port = htons(port);
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    return address;
}

sockaddr* generic(sockaddr_in& address) {
    void* any = &address;
    return static_cast<sockaddr*>(any);
}

// Moves what is there; false at the end.
bool move(int from, int to, std::atomic<std::uint64_t>& count) {
    std::array<char, 65536> buffer{};
    const ssize_t got = ::recv(from, buffer.data(), buffer.size(), 0);
    if (got <= 0) {
        return false;
    }
    count += static_cast<std::uint64_t>(got);
    for (ssize_t sent = 0; sent < got;) {
        const ssize_t part =
            ::send(to, buffer.data() + sent, static_cast<std::size_t>(got - sent), MSG_NOSIGNAL);
        if (part <= 0) {
            return false;
        }
        sent += part;
    }
    return true;
}

} // namespace

Relay::Relay(std::uint16_t port) : target_(port) {
    socket_ = ::socket(AF_INET, SOCK_STREAM, 0);
    sockaddr_in address = loopback(0);
    socklen_t size = sizeof(address);
    must(::bind(socket_, generic(address), size) == 0 && ::listen(socket_, 4) == 0 &&
             ::getsockname(socket_, generic(address), &size) == 0,
         "opening the relay");
    port_ = ntohs(address.sin_port);
    thread_ = std::thread([this] { run(); });
}

Relay::~Relay() {
    isEnding_ = true;
    thread_.join();
    ::close(socket_);
}

std::string Relay::address() const {
    return "127.0.0.1:" + std::to_string(port_);
}

void Relay::run() {
    while (!isEnding_) {
        pollfd wait{socket_, POLLIN, 0};
        if (::poll(&wait, 1, 20) > 0) {
            const int device = ::accept(socket_, nullptr, nullptr);
            carry(device);
            ::close(device);
        }
    }
}

void Relay::carry(int device) {
    const int station = ::socket(AF_INET, SOCK_STREAM, 0);
    sockaddr_in address = loopback(target_);
    must(::connect(station, generic(address), sizeof(address)) == 0, "reaching the station");
    const int on = 1;
    ::setsockopt(station, IPPROTO_TCP, TCP_NODELAY, &on, sizeof(on));
    ::setsockopt(device, IPPROTO_TCP, TCP_NODELAY, &on, sizeof(on));
    std::array<pollfd, 2> waits{{{device, POLLIN, 0}, {station, POLLIN, 0}}};
    bool goesOn = true;
    while (goesOn && ::poll(waits.data(), waits.size(), 20'000) > 0) {
        goesOn = (waits[0].revents == 0 || move(device, station, bytes_)) &&
                 (waits[1].revents == 0 || move(station, device, bytes_));
    }
    ::close(station);
}

} // namespace bullace::bench
