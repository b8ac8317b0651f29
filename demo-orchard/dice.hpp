// Random numbers for the demo station, the same on every platform: only integers, exact divisions
// and sums, and none of the standard library's distributions.
#pragma once

#include <array>
#include <cstdint>

namespace bullace::demo {

// xoshiro256** (Blackman & Vigna 2018), seeded by splitmix64.
class Dice {
public:
    explicit Dice(std::uint64_t seed);

    std::uint64_t next();
    int between(int least, int greatest); // inclusive
    double uniform();                     // in [0, 1)
    bool chance(double probability) { return uniform() < probability; }
    // About normal: the sum of twelve uniforms (never beyond six standard deviations).
    double normal(double mean, double deviation);

private:
    std::array<std::uint64_t, 4> state_{};
};

// `value` rounded to so many decimals, as the decimal number it is read as.
[[nodiscard]] double rounded(double value, int decimals);

} // namespace bullace::demo
