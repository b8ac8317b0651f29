// The demo station as somebody gets it who tries a tablet on it: before the third season's bloom.
#pragma once

#include "core/base/civil_date.hpp"

#include <string>

namespace bullace::demo {

// JSON Lines, with digests, of the office's journal and of all tablets of the two seasons before:
// plan, collection, people, rounds, labels, crosses, and what was noted in 2023 and 2024. The same
// bytes every time.
[[nodiscard]] std::string startLines();

// A day in May of the third season on which every kind of round is open, mothers are about to
// bloom, and one block is closed.
[[nodiscard]] CivilDate startDate();

} // namespace bullace::demo
