// Sets of entries made from one seed: a few devices that edit, retract, undo, rule, write groups
// and fork, with edges that dangle or run in circles. Small, and as nasty as DESIGN §6 has words
// for.
#pragma once

#include "core/journal/entry.hpp"
#include "core/journal/exchange.hpp"

#include <cstdint>
#include <vector>

namespace bullace::test {

struct MadeEntry {
    journal::Origin origin;
    std::uint64_t seq = 0;
    Bytes bytes;
    Digest before;
    Digest digest;
    std::size_t follows = 0; // index + 1 of the entry before it; 0 at seq 1

    [[nodiscard]] journal::Run run() const { return {origin, seq, {bytes}, digest}; }
};

// Each entry stands behind the one that it follows.
[[nodiscard]] std::vector<MadeEntry> makeScenario(std::uint64_t seed, std::size_t count);

// The same entries in another order in which each still stands behind the one it follows, some of
// them twice.
[[nodiscard]] std::vector<std::size_t> anotherOrder(const std::vector<MadeEntry>& entries,
                                                    std::uint64_t seed);

} // namespace bullace::test
