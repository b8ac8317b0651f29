// How long curves of kill take.
#pragma once

#include <cstddef>

namespace bullace::bench {

struct KillTiming {
    double seconds = 0;
    std::size_t curves = 0; // that were fitted with bounded profile limits of the LT50
};

// So many freezing tests of 7 temperatures × 30 buds of accessions that differ, each fitted with
// LT10, LT50 and LT90 and all of their limits. To reach: 1,000 in less than 1 s.
[[nodiscard]] KillTiming timeKillCurves(std::size_t tests);

} // namespace bullace::bench
