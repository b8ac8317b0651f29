// What time it is, for a program that may not ask by itself: tests give it any time they like.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/journal/entry.hpp"

#include <cstdint>

namespace bullace {

class Clock {
public:
    virtual ~Clock() = default;
    Clock() = default;
    Clock(const Clock&) = delete;
    Clock& operator=(const Clock&) = delete;
    Clock(Clock&&) = delete;
    Clock& operator=(Clock&&) = delete;

    // UTC milliseconds since 1970, by the tablet's clock as it is.
    [[nodiscard]] virtual std::int64_t nowMs() const = 0;
    // The local time's offset from UTC at that instant, minutes, east is positive.
    [[nodiscard]] virtual std::int64_t minutesFromUtc(std::int64_t ms) const = 0;
    // The station's civil date at that instant.
    [[nodiscard]] virtual CivilDate dateAt(std::int64_t ms) const = 0;
};

} // namespace bullace
