// Chance, from a seed: the same numbers everywhere.
#pragma once

#include "support/fault_files.hpp"

#include <cstdint>
#include <vector>

namespace bullace::test {

class Dice {
public:
    explicit Dice(std::uint64_t seed) : numbers_(seed) {}

    std::uint64_t next() { return numbers_.next(); }
    std::uint64_t below(std::uint64_t bound) { return numbers_.below(bound); }
    // From least to greatest, both included.
    std::uint64_t between(std::uint64_t least, std::uint64_t greatest) {
        return least + numbers_.below(greatest - least + 1);
    }
    // True `n` times out of `of`.
    bool isOne(std::uint64_t n, std::uint64_t of) { return numbers_.below(of) < n; }
    template<typename T>
    T& pick(std::vector<T>& from) {
        return from[static_cast<std::size_t>(numbers_.below(from.size()))];
    }
    template<typename T>
    const T& pick(const std::vector<T>& from) {
        return from[static_cast<std::size_t>(numbers_.below(from.size()))];
    }

private:
    FaultDice numbers_;
};

} // namespace bullace::test
