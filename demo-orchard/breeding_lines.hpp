// The truth behind the breeding notes as part of the truth document.
#pragma once

#include "demo/breeding_truth.hpp"

#include "core/base/bytes.hpp"

namespace bullace::demo {

// Keys: "selections", "yield", "brix" (their variances), "genetic_correlation", "crosses",
// "dead_vines".
[[nodiscard]] Bytes breedingValue(const BreedingTruth& truth);

} // namespace bullace::demo
