// Entries as a person with a tablet writes them, for the benchmarks: vine by vine, eight
// descriptors each.
#pragma once

#include "core/journal/entry.hpp"
#include "core/journal/exchange.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace bullace::bench {

enum class Order { Walking, Random };

// One origin's entries, chained, with their subjects beside them.
struct Walk {
    journal::Origin origin;
    std::vector<Bytes> entries;
    std::vector<std::string> subjects;
    std::vector<Digest> digests;

    [[nodiscard]] journal::Run run(std::size_t from, std::size_t count) const;
};

// `count` entries of `origin`; in Random order the same vines come shuffled (by `seed`), as the
// worst case for an index. Two walks with different `round` never share a subject.
[[nodiscard]] Walk
makeWalk(journal::Origin origin, std::size_t count, Order order, std::uint64_t seed, int round = 0);

} // namespace bullace::bench
