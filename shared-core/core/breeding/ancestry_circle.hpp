// Individuals that are their own ancestors, for the message that names them.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace bullace::breeding {

// The strongly connected components of more than one individual, or of one that is its own parent;
// members ascend, circles by their first member. Parents are indices, or -1. Individuals that
// merely descend from a circle, or lie between two, are in none.
// Source  Tarjan 1972, SIAM J. Comput. 1:146-160; without recursion, as pedigrees are deep.
[[nodiscard]] std::vector<std::vector<std::int32_t>>
ancestryCircles(std::span<const std::int32_t> mother, std::span<const std::int32_t> father);

} // namespace bullace::breeding
