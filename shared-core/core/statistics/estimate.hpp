// A number with what is known of its precision. What cannot be estimated is no Estimate: it is
// absent, and a remark beside it says why.
#pragma once

#include "core/base/remark.hpp"

#include <cstddef>
#include <limits>
#include <optional>

namespace bullace::statistics {

inline constexpr double kUnbounded = std::numeric_limits<double>::infinity();

// From low to high, both in the unit of what they belong to; minus or plus kUnbounded where nothing
// limits it on that side.
struct Interval {
    double low = -kUnbounded;
    double high = kUnbounded;

    [[nodiscard]] bool holds(double value) const { return low <= value && value <= high; }
    friend bool operator==(const Interval&, const Interval&) = default;
};

struct Estimate {
    double value = 0;
    std::optional<double> standardError{};
    std::optional<Interval> interval{}; // 95 % unless the function says otherwise

    friend bool operator==(const Estimate&, const Estimate&) = default;
};

// value ± quantile·standardError, e.g. 1.96 of the normal distribution.
[[nodiscard]] inline Estimate estimateAround(double value, double standardError, double quantile) {
    const double half = quantile * standardError;
    return {value, standardError, Interval{value - half, value + half}};
}

} // namespace bullace::statistics
