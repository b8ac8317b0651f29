// Tells when the other side is too slow to be waited for any longer.
#pragma once

#include "sync/protocol/limits.hpp"

#include <cstddef>

namespace bullace::sync {

class Deadlines {
public:
    // `firstFrameMs` until the first frame must be whole.
    Deadlines(Millis now, Millis firstFrameMs)
        : firstFrameMs_(firstFrameMs),
          lastProgress_(now),
          lastWritten_(now),
          windowStart_(now) {}

    // Bytes came, and after them a frame is open (begun, not whole) or not.
    void onBytes(Millis now, std::size_t bytes, bool isFrameOpen);
    // A whole frame of a known type came, or our own database answered.
    void onProgress(Millis now) { lastProgress_ = now; }
    void onFrame(Millis now);
    // Some of what waits to be written was; `left` bytes still wait.
    void onWritten(Millis now, std::size_t left);
    // Something is waiting to be written from now on.
    void onQueued(Millis now, std::size_t waitedBefore);

    // Whether to give up. While our own database is at work nothing is held against the other side
    // but that it takes what we write.
    [[nodiscard]] bool isTooSlow(Millis now, bool isDatabaseAtWork);

private:
    Millis firstFrameMs_;
    Millis lastProgress_;
    Millis lastWritten_;
    Millis windowStart_;
    std::size_t windowBytes_ = 0;
    std::size_t queued_ = 0;
    bool isFrameOpen_ = false;
    bool hadFrame_ = false;
};

} // namespace bullace::sync
