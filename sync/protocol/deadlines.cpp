#include "sync/protocol/deadlines.hpp"

namespace bullace::sync {

void Deadlines::onBytes(Millis now, std::size_t bytes, bool isFrameOpen) {
    if (isFrameOpen && !isFrameOpen_) {
        windowStart_ = now;
        windowBytes_ = 0;
    }
    isFrameOpen_ = isFrameOpen;
    windowBytes_ += bytes;
}

void Deadlines::onFrame(Millis now) {
    hadFrame_ = true;
    lastProgress_ = now;
    // The frame behind this one has its own time.
    windowStart_ = now;
    windowBytes_ = 0;
}

void Deadlines::onWritten(Millis now, std::size_t left) {
    lastWritten_ = now;
    queued_ = left;
}

void Deadlines::onQueued(Millis now, std::size_t waitedBefore) {
    if (waitedBefore == 0) {
        lastWritten_ = now;
    }
    queued_ = waitedBefore + 1;
}

bool Deadlines::isTooSlow(Millis now, bool isDatabaseAtWork) {
    if (queued_ > 0 && now - lastWritten_ >= kProgressMs) {
        return true;
    }
    if (isDatabaseAtWork) {
        lastProgress_ = now;
        windowStart_ = now;
        windowBytes_ = 0;
        return false;
    }
    if (!hadFrame_ && now - lastProgress_ >= firstFrameMs_) {
        return true;
    }
    if (isFrameOpen_) {
        const bool isWindowOver = now - windowStart_ >= kSlowFrameMs;
        const bool isSlow = isWindowOver && windowBytes_ < kSlowFrameBytes;
        if (isWindowOver) {
            windowStart_ = now;
            windowBytes_ = 0;
        }
        return isSlow;
    }
    return now - lastProgress_ >= kIdleMs;
}

} // namespace bullace::sync
