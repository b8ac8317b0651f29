// Draws for simulations that are the same on every platform: a fixed engine, and the normal
// distribution by its own quantile.
#pragma once

#include "core/statistics/distributions.hpp"

#include <random>

namespace bullace::test {

// Of the standard normal distribution.
[[nodiscard]] inline double normal(std::mt19937_64& dice) {
    const double even = (static_cast<double>(dice() >> 11) + 0.5) * 0x1p-53;
    return statistics::normalQuantile(even);
}

} // namespace bullace::test
