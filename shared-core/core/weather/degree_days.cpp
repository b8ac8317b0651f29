#include "core/weather/degree_days.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace bullace::weather {

namespace {

enum class Curve { Triangle, Sine };

// Of a half wave between the two, how far it is above the threshold on average over its time. With
// a horizontal cutoff the heat is that above the lower threshold less that above the upper one.
double meanAbove(Curve curve, double least, double greatest, double threshold) {
    const double mean = (least + greatest) / 2;
    if (least >= threshold) {
        return mean - threshold;
    }
    if (greatest <= threshold) {
        return 0;
    }
    if (curve == Curve::Triangle) {
        return (greatest - threshold) * (greatest - threshold) / (2 * (greatest - least));
    }
    const double half = (greatest - least) / 2;
    const double angle = std::asin(std::clamp((threshold - mean) / half, -1.0, 1.0));
    return ((mean - threshold) * (std::numbers::pi / 2 - angle) + half * std::cos(angle)) /
           std::numbers::pi;
}

double heatOf(Curve curve, double least, double greatest, const Thresholds& thresholds) {
    const double above = meanAbove(curve, least, greatest, thresholds.lower);
    return thresholds.upper ? above - meanAbove(curve, least, greatest, *thresholds.upper) : above;
}

double
clampedHeat(DegreeDayMethod method, double least, double greatest, const Thresholds& thresholds) {
    const auto clamped = [&thresholds](double value) {
        const double low = std::max(value, thresholds.lower);
        return thresholds.upper ? std::min(low, *thresholds.upper) : low;
    };
    const double mean = method == DegreeDayMethod::MeanClamped
                            ? clamped((least + greatest) / 2)
                            : (clamped(least) + clamped(greatest)) / 2;
    return mean - thresholds.lower;
}

bool isDouble(DegreeDayMethod method) {
    return method == DegreeDayMethod::DoubleTriangle || method == DegreeDayMethod::DoubleSine;
}

Curve curveOf(DegreeDayMethod method) {
    return method == DegreeDayMethod::SingleSine || method == DegreeDayMethod::DoubleSine
               ? Curve::Sine
               : Curve::Triangle;
}

Error refused(std::string words) {
    return {ErrorCode::InvalidInput, std::move(words), {}};
}

// Why a day has no degree-days; nothing where it has some.
const char*
faultOf(DegreeDayMethod method, double least, double greatest, const double* nextLeast) {
    if (!std::isfinite(least) || !std::isfinite(greatest) ||
        (nextLeast != nullptr && !std::isfinite(*nextLeast))) {
        return "A temperature is no number.";
    }
    if (least > greatest) {
        return "The least temperature is above the greatest: they may have been exchanged.";
    }
    return isDouble(method) && nextLeast == nullptr
               ? "The next day's least temperature is not known; a single method needs none."
               : nullptr;
}

const char* faultOf(const Thresholds& thresholds) {
    if (!std::isfinite(thresholds.lower) || !std::isfinite(thresholds.upper.value_or(0))) {
        return "A temperature is no number.";
    }
    return thresholds.upper && !(*thresholds.upper > thresholds.lower)
               ? "The upper threshold has to be above the lower one."
               : nullptr;
}

// Of a day without a fault.
double heatOfDay(DegreeDayMethod method,
                 double least,
                 double greatest,
                 const double* nextLeast,
                 const Thresholds& thresholds) {
    if (method == DegreeDayMethod::MeanClamped || method == DegreeDayMethod::LimitsClamped) {
        return clampedHeat(method, least, greatest, thresholds);
    }
    const Curve curve = curveOf(method);
    const double here = heatOf(curve, least, greatest, thresholds);
    if (!isDouble(method)) {
        return here;
    }
    // A next least above this day's greatest: the way down is a way up, and as long.
    const double next = nextLeast == nullptr ? least : *nextLeast;
    const double down =
        heatOf(curve, std::min(next, greatest), std::max(next, greatest), thresholds);
    return (here + down) / 2;
}

} // namespace

Result<double> degreeDays(DegreeDayMethod method,
                          double least,
                          double greatest,
                          std::optional<double> nextLeast,
                          const Thresholds& thresholds) {
    const char* fault = faultOf(thresholds);
    const double* next = nextLeast ? &*nextLeast : nullptr;
    fault = fault == nullptr ? faultOf(method, least, greatest, next) : fault;
    return fault == nullptr ? Result<double>(heatOfDay(method, least, greatest, next, thresholds))
                            : Result<double>(refused(fault));
}

namespace {

class Summing {
public:
    Summing(DegreeDayMethod method,
            std::span<const DayTemperatures> days,
            const Thresholds& thresholds)
        : method_(method),
          days_(days),
          thresholds_(thresholds) {}

    Result<HeatSum> sum() {
        if (const char* fault = faultOf(thresholds_); fault != nullptr && !days_.empty()) {
            return refused(fault);
        }
        made_.days.reserve(days_.size());
        for (std::size_t i = 0; i < days_.size(); ++i) {
            if (i > 0) {
                const int apart = toNext_;
                if (apart < 1) {
                    return refused("The days are not in order, or one is there twice: " +
                                   writeDate(days_[i].day) + ".");
                }
                if (apart > 1) {
                    addGap(addDays(days_[i - 1].day, 1), addDays(days_[i].day, -1));
                }
            }
            toNext_ = i + 1 < days_.size() ? daysBetween(days_[i].day, days_[i + 1].day) : 0;
            if (const char* fault = take(i); fault != nullptr) {
                return refused(writeDate(days_[i].day) + ": " + fault);
            }
        }
        return std::move(made_);
    }

private:
    // Why the day has no heat though it was measured; nothing where all is well.
    const char* take(std::size_t i) {
        const DayTemperatures& day = days_[i];
        const bool hasNext = toNext_ == 1 && days_[i + 1].least;
        const double* next = hasNext ? &*days_[i + 1].least : nullptr;
        if (!day.least || !day.greatest || (isDouble(method_) && !hasNext)) {
            addGap(day.day, day.day);
            return nullptr;
        }
        if (const char* fault = faultOf(method_, *day.least, *day.greatest, next)) {
            return fault;
        }
        if (made_.gaps.empty()) {
            const double heat = heatOfDay(method_, *day.least, *day.greatest, next, thresholds_);
            const double before = made_.days.empty() ? 0 : made_.days.back().sum;
            made_.days.push_back({day.day, heat, before + heat});
        }
        return nullptr;
    }

    void addGap(CivilDate first, CivilDate last) {
        if (!made_.gaps.empty() && daysBetween(made_.gaps.back().last, first) == 1) {
            made_.gaps.back().last = last;
        } else {
            made_.gaps.push_back({first, last});
        }
    }

    DegreeDayMethod method_;
    std::span<const DayTemperatures> days_;
    const Thresholds& thresholds_;
    int toNext_ = 0; // days from the one at hand to the next, which is read once
    HeatSum made_;
};

} // namespace

Result<HeatSum> heatSum(DegreeDayMethod method,
                        std::span<const DayTemperatures> days,
                        const Thresholds& thresholds) {
    return Summing(method, days, thresholds).sum();
}

} // namespace bullace::weather
