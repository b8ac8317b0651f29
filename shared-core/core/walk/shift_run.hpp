// Putting a run of values right that stands one vine off: every value of the run moves by the same
// number of stops.
#pragma once

#include "core/base/result.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace bullace::walk {

// What a stop holds after the shift.
struct Moved {
    std::size_t to = 0;
    std::optional<std::size_t> from{}; // whose value stands there now; nothing: it is left without

    friend bool operator==(const Moved&, const Moved&) = default;
};

// `hasValue`: for the stops of a walk in order, whether there is a value. The values of the stops
// `first` to `last` (both included) move by `by` stops, +1 or -1. Returns the stops whose value
// changes, ascending. Errors: InvalidInput where the run is not within the stops, holds no value or
// `by` is 0; Refused where a value would fall off either end or onto a value outside of the run.
[[nodiscard]] Result<std::vector<Moved>>
shiftRun(const std::vector<bool>& hasValue, std::size_t first, std::size_t last, int by);

} // namespace bullace::walk
