// Means marked with letters: two that share one do not differ significantly.
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace bullace::trials {

// Whether the means of two indices differ significantly; asked with either order.
using Differs = std::function<bool(std::size_t one, std::size_t other)>;

// For each mean its letters, the greatest mean's first. Two means share a letter if and only if
// they do not differ. After z come A to Z, then (53), (54) … Where that would take more than 500
// letters, nothing is returned. Source  insertion and absorption: Piepho 2004, J. Comput. Graph.
// Stat. 13:456-466.
[[nodiscard]] std::vector<std::string> letterGroups(std::span<const double> means,
                                                    const Differs& differs);

// The same where means differ that are farther apart than `least`: the longest stretches of the
// sorted means, in one pass. Finite means; least not below 0.
[[nodiscard]] std::vector<std::string> letterStretches(std::span<const double> means, double least);

} // namespace bullace::trials
