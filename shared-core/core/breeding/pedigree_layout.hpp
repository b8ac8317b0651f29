// A pedigree as a drawing, in numbers: who stands where and which lines join them. Nothing is
// painted here.
#pragma once

#include "core/breeding/pedigree.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace bullace::breeding {

enum class LayoutKind { Individual, Cross };

struct LayoutPoint {
    double x = 0;
    double y = 0;

    friend bool operator==(const LayoutPoint&, const LayoutPoint&) = default;
};

// Nodes of one layer stand at least 1 apart (in x), layers 1 apart (in y, downwards): parents
// above, the cross on a layer between, its offspring below.
struct LayoutNode {
    LayoutKind kind = LayoutKind::Individual;
    std::int32_t individual = kUnknown; // of the pedigree; kUnknown of a cross
    LayoutPoint at;
    bool isFocus = false;
    bool hasHiddenParents = false; // there are some, not in the drawing
    bool hasHiddenOffspring = false;
};

enum class LayoutLine {
    Mother,   // solid
    Pollen,   // dashed
    Selfing,  // double: mother and father are one
    Offspring // from a cross down
};

struct LayoutEdge {
    std::size_t from = 0; // nodes, from above
    std::size_t to = 0;
    LayoutLine line = LayoutLine::Mother;
    std::vector<LayoutPoint> points; // from node to node, by way of the layers between
};

struct PedigreeLayout {
    std::vector<LayoutNode> nodes;
    std::vector<LayoutEdge> edges;
    double width = 0; // x from 0 to width, y from 0 to height, of the nodes' middles
    double height = 0;
    std::size_t crossings = 0; // of lines, between neighbouring layers
};

struct LayoutExtent {
    std::size_t up = 2; // generations around the focus
    std::size_t down = 2;
};
inline constexpr std::size_t kMostDrawn = 2000; // individuals

// The focus with its ancestors and descendants within the extent, and the other parents of the
// descendants. Every individual is there once, and one node stands for each pair of parents with
// its offspring. Layers are the longest ways from above; within a layer the order is that of the
// least crossings found by sweeps of barycentres, and x is as near to the neighbours as the
// distance between nodes allows. The same pedigree gives the same drawing. Source  Sugiyama, Tagawa
// & Toda 1981, IEEE Trans. Syst. Man Cybern. 11:109-125. Errors  InvalidInput where a focus is no
// individual of the pedigree, or there is none;
//         BeyondLimit where more than kMostDrawn would be drawn.
[[nodiscard]] Result<PedigreeLayout> layoutPedigree(const Pedigree& pedigree,
                                                    std::span<const std::int32_t> focus,
                                                    const LayoutExtent& extent = {});

} // namespace bullace::breeding
