// Probabilities of several tests, made larger for there being several.
#pragma once

#include <span>
#include <vector>

namespace bullace::statistics {

// Holm 1979, Scand. J. Stat. 6:65-70: the least is multiplied by how many there are, the next by
// one less, and none may be below the one before it; at most 1. In the order given. Each 0 to 1.
[[nodiscard]] std::vector<double> holm(std::span<const double> probabilities);

// Benjamini & Hochberg 1995, J. R. Stat. Soc. B 57:289-300: the greatest stays, the one before it
// is multiplied by n / (n - 1), and none may be above the one after it. In the order given.
[[nodiscard]] std::vector<double> falseDiscovery(std::span<const double> probabilities);

} // namespace bullace::statistics
