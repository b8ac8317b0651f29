#include "sync/net/door.hpp"

namespace bullace::sync::net {

namespace {

constexpr Millis kMinuteMs = 60'000;
constexpr std::size_t kMostRemembered = 1024;

} // namespace

bool Door::enter(const std::string& address, Millis now) {
    if (connections_ >= kConnections) {
        return false;
    }
    forgetOld(now);
    Visitor& visitor = visitors_[address];
    if (now < visitor.silentUntil) {
        return false;
    }
    ++visitor.connections;
    ++connections_;
    return true;
}

bool Door::mayBegin(const std::string& address) const {
    const auto at = visitors_.find(address);
    return at == visitors_.end() || at->second.beginning < kUnknownPerAddress;
}

void Door::begin(const std::string& address) {
    ++visitors_[address].beginning;
}

void Door::end(const std::string& address, bool hasFailed, Millis now) {
    Visitor& visitor = visitors_[address];
    --visitor.beginning;
    if (!hasFailed) {
        return;
    }
    if (now - visitor.minute >= kMinuteMs) {
        visitor.minute = now;
        visitor.failures = 0;
    }
    if (++visitor.failures >= kFailuresPerMinute) {
        visitor.silentUntil = now + kSilenceMs;
        visitor.failures = 0;
    }
}

void Door::leave(const std::string& address) {
    --connections_;
    --visitors_[address].connections;
}

bool Door::isNews(const std::string& address, Millis now) {
    Visitor& visitor = visitors_[address];
    if (visitor.hadNews && now - visitor.newsAt < kMinuteMs) {
        return false;
    }
    visitor.hadNews = true;
    visitor.newsAt = now;
    return true;
}

// Addresses that are gone for good must not fill the memory; a silence must outlast a flood of
// others.
void Door::forgetOld(Millis now) {
    if (visitors_.size() < kMostRemembered) {
        return;
    }
    std::erase_if(visitors_, [now](const auto& entry) {
        const Visitor& visitor = entry.second;
        return visitor.connections == 0 && now >= visitor.silentUntil &&
               now - visitor.minute >= kMinuteMs;
    });
}

} // namespace bullace::sync::net
