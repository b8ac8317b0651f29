#include "core/season/onset_interval.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace bullace::season {

namespace {

CivilDate dayBefore(int year) {
    return std::chrono::year(year - 1) / std::chrono::December / 31;
}

// What all values of one day say together.
struct Visit {
    bool saysReached = false;
    bool saysNotYet = false;
};

bool answers(const StageReading& reading, const StageQuestion& question, Organs organs) {
    return reading.organs == organs && reading.day.ok() && std::isfinite(reading.value) &&
           (reading.kind == StageReading::Kind::Stage || question.percent.has_value());
}

} // namespace

OnsetCounts countsOf(std::span<const OnsetInterval> onsets) {
    OnsetCounts counts;
    for (const OnsetInterval& onset : onsets) {
        if (onset.isUnseen()) {
            ++counts.unseen;
        } else if (onset.isExact()) {
            ++counts.exact;
        } else if (onset.isLeft()) {
            ++counts.left;
        } else if (onset.isRight()) {
            ++counts.right;
        } else {
            ++counts.within;
        }
    }
    return counts;
}

double dayOfSeason(CivilDate day, int year) {
    return daysBetween(dayBefore(year), day);
}

CivilDate dateOfSeason(double day, int year) {
    return addDays(dayBefore(year), static_cast<int>(std::lround(std::clamp(day, -1e5, 1e5))));
}

VineOnset onsetOf(std::span<const StageReading> readings,
                  const StageQuestion& question,
                  int year,
                  Organs organs) {
    VineOnset onset;
    std::map<double, Visit> visits;
    for (const StageReading& reading : readings) {
        onset.isEverbearing = onset.isEverbearing || reading.organs == Organs::LeastAdvanced;
        if (!answers(reading, question, organs)) {
            continue;
        }
        const double asked =
            reading.kind == StageReading::Kind::Stage ? question.code : *question.percent;
        Visit& visit = visits[dayOfSeason(reading.day, year)];
        (reading.value >= asked ? visit.saysReached : visit.saysNotYet) = true;
    }
    onset.visits = visits.size();
    bool wasReached = false;
    for (const auto& [day, visit] : visits) {
        onset.divided += visit.saysReached && visit.saysNotYet ? 1 : 0;
        onset.runsBack = onset.runsBack || (wasReached && visit.saysNotYet);
        wasReached = wasReached || visit.saysReached;
        if (!wasReached) {
            onset.days.after = day;
        }
    }
    for (auto visit = visits.rbegin(); visit != visits.rend() && !visit->second.saysNotYet;
         ++visit) {
        onset.days.by = visit->first;
    }
    return onset;
}

OnsetInterval lengthBetween(const OnsetInterval& first, const OnsetInterval& second) {
    const double least = second.after - first.by; // -infinity where either is open there
    const double most = second.by - first.after;
    const bool saysNothing = !std::isfinite(least) && !std::isfinite(most);
    if (saysNothing || most < 0) { // the later stage stands before the earlier one
        return {};
    }
    return {std::max(0.0, least), most};
}

} // namespace bullace::season
