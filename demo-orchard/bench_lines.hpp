// The truth behind the bench's notes as part of the truth document.
#pragma once

#include "demo/bench_truth.hpp"
#include "demo/collection.hpp"

#include "core/base/bytes.hpp"

#include <vector>

namespace bullace::demo {

// Keys: "hardiness", "freeze", "juices", "shoots", "cordons_cm", "weather", "unverified", "hybrid".
[[nodiscard]] Bytes benchValue(const std::vector<Accession>& collection, const BenchTruth& truth);

} // namespace bullace::demo
