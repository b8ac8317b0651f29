#include "core/walk/slip_detector.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::walk {

namespace {

// One stop alone, as where a vine was replanted, is no evidence of a shift.
constexpr double kMostPerStop = 2.5;
// Below so many stops the advance is not known well enough to compare anything with it.
constexpr unsigned kFewest = 5;
// The advance is estimated anew after so many stops, and twice while they are still few.
constexpr unsigned kRefit = 20;
// Set by simulation to at most 3 false alarms in 100 walks of 200 stops.
constexpr double kAlarm = 6.5;

short whole(double value) {
    constexpr double kWidest = 1000; // no scale is longer
    return static_cast<short>(std::lround(std::clamp(value, -kWidest, kWidest)));
}

std::optional<short> whole(const std::optional<double>& value) {
    return value ? std::optional(whole(*value)) : std::nullopt;
}

bool isTimeToFit(unsigned stops) {
    return stops == kFewest || stops == 2 * kFewest || stops % kRefit == 0;
}

} // namespace

void SlipDetector::add(double value,
                       std::optional<double> here,
                       std::optional<double> before,
                       std::optional<double> after) {
    row_.push_back({whole(value), whole(here), whole(before), whole(after)});
    if (!here) {
        return;
    }
    advance_.add(*row_.back().here, row_.back().value);
    if (isTimeToFit(advance_.count())) {
        advance_.fit();
        replay();
    } else {
        step(row_.back());
    }
}

std::optional<Slip> SlipDetector::slip() const {
    const bool isOnward = onward_.evidence >= back_.evidence;
    const Sum& sum = isOnward ? onward_ : back_;
    if (sum.evidence < kAlarm) {
        return std::nullopt;
    }
    return Slip{isOnward ? 1 : -1, sum.vines, sum.evidence};
}

void SlipDetector::startRow() {
    row_.clear();
    onward_ = {};
    back_ = {};
}

void SlipDetector::step(const Seen& seen) {
    if (!seen.here || advance_.count() < kFewest) {
        return;
    }
    const double inPlace = advance_.likelihood(seen.value, *seen.here);
    const auto ratio = [&](const std::optional<short>& beside) {
        return beside ? std::log(advance_.likelihood(seen.value, *beside) / inPlace) : 0.0;
    };
    grow(onward_, ratio(seen.after));
    grow(back_, ratio(seen.before));
}

void SlipDetector::grow(Sum& sum, double ratio) {
    sum.evidence += std::clamp(ratio, -kMostPerStop, kMostPerStop);
    ++sum.vines;
    if (sum.evidence <= 0) {
        sum = {};
    }
}

// The row again, with the advance as it is known now.
void SlipDetector::replay() {
    onward_ = {};
    back_ = {};
    for (const Seen& seen : row_) {
        step(seen);
    }
}

} // namespace bullace::walk
