// A clock that stands where the test puts it.
#pragma once

#include "core/base/clock.hpp"

#include <chrono>
#include <cstdint>

namespace bullace::test {

class FixedClock : public Clock {
public:
    explicit FixedClock(std::int64_t ms = 1'778'572'800'000) : ms_(ms) {} // 2026-05-12 08:00 UTC
    [[nodiscard]] std::int64_t nowMs() const override { return ms_; }
    [[nodiscard]] std::int64_t minutesFromUtc(std::int64_t /*ms*/) const override {
        return minutesFromUtc_;
    }
    [[nodiscard]] CivilDate dateAt(std::int64_t ms) const override {
        return std::chrono::floor<std::chrono::days>(
            std::chrono::sys_time<std::chrono::milliseconds>(
                std::chrono::milliseconds(ms + minutesFromUtc_ * 60'000)));
    }
    void pass(std::int64_t ms) { ms_ += ms; }
    void set(std::int64_t ms) { ms_ = ms; }
    // The clocks are changed.
    void setOffset(std::int64_t minutesFromUtc) { minutesFromUtc_ = minutesFromUtc; }

private:
    std::int64_t ms_;
    std::int64_t minutesFromUtc_ = -300;
};

} // namespace bullace::test
