// Nodes in layers and the lines between neighbouring layers: their order within the layers and
// their places.
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

namespace bullace::breeding {

struct LayeredGraph {
    std::vector<std::vector<std::size_t>> layers; // nodes in their order, from above
    std::vector<std::vector<std::size_t>> above;  // of each node its neighbours one layer up
    std::vector<std::vector<std::size_t>> below;
};

// Reorders the layers to the order with the fewest crossings that sweeps of barycentres find; the
// number that is left.
std::size_t reduceCrossings(LayeredGraph& graph);

// x of each node: near the mean of its neighbours, 1 or more from those beside it; the least is 0.
[[nodiscard]] std::vector<double> placesOf(const LayeredGraph& graph);

} // namespace bullace::breeding
