// The tablet's own clock and time zone.
#pragma once

#include "core/base/clock.hpp"

#include <QDateTime>
#include <QTimeZone>

namespace bullace::quick {

class SystemClock : public Clock {
public:
    [[nodiscard]] std::int64_t nowMs() const override {
        return QDateTime::currentMSecsSinceEpoch();
    }
    [[nodiscard]] std::int64_t minutesFromUtc(std::int64_t ms) const override {
        return zone().offsetFromUtc(QDateTime::fromMSecsSinceEpoch(ms, Qt::UTC)) / 60;
    }
    [[nodiscard]] CivilDate dateAt(std::int64_t ms) const override {
        const QDate day = QDateTime::fromMSecsSinceEpoch(ms, Qt::UTC).toTimeZone(zone()).date();
        return {std::chrono::year(day.year()),
                std::chrono::month(static_cast<unsigned>(day.month())),
                std::chrono::day(static_cast<unsigned>(day.day()))};
    }

private:
    [[nodiscard]] static QTimeZone zone() { return QTimeZone::systemTimeZone(); }
};

// The same time of day on another day: the demo station's.
class ShiftedClock : public Clock {
public:
    ShiftedClock(const Clock& clock, CivilDate today) : clock_(clock) {
        shiftMs_ = std::int64_t{86'400'000} * daysBetween(clock.dateAt(clock.nowMs()), today);
    }
    [[nodiscard]] std::int64_t nowMs() const override { return clock_.nowMs() + shiftMs_; }
    [[nodiscard]] std::int64_t minutesFromUtc(std::int64_t ms) const override {
        return clock_.minutesFromUtc(ms);
    }
    [[nodiscard]] CivilDate dateAt(std::int64_t ms) const override { return clock_.dateAt(ms); }

private:
    const Clock& clock_;
    std::int64_t shiftMs_ = 0;
};

} // namespace bullace::quick
