// Who may come in: how many connections there are, from where, and who failed too often. Inside
// sync/net only; without sockets and clock, so that it can be tested as it is.
#pragma once

#include "sync/protocol/limits.hpp"

#include <cstdint>
#include <map>
#include <string>

namespace bullace::sync::net {

class Door {
public:
    // A connection from this address. False: it is closed at once, since the station is full or the
    // address is silenced.
    [[nodiscard]] bool enter(const std::string& address, Millis now);
    // An unknown one may begin its handshake, or waits until another of its address is through.
    [[nodiscard]] bool mayBegin(const std::string& address) const;
    void begin(const std::string& address);
    // The handshake is over; the connection, if it goes on, is one of a known key from here on.
    void end(const std::string& address, bool hasFailed, Millis now);
    void leave(const std::string& address);

    // True at most once a minute for an address: worth a line in the log.
    [[nodiscard]] bool isNews(const std::string& address, Millis now);
    [[nodiscard]] std::size_t connections() const { return connections_; }

private:
    struct Visitor {
        std::size_t connections = 0;
        std::size_t beginning = 0; // in their handshakes
        std::size_t failures = 0;  // since `minute`
        Millis minute = 0;
        Millis silentUntil = 0;
        Millis newsAt = 0;
        bool hadNews = false;
    };
    void forgetOld(Millis now);

    std::map<std::string, Visitor> visitors_;
    std::size_t connections_ = 0;
};

} // namespace bullace::sync::net
