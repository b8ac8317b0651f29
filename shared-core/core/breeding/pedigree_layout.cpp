// Chooses who is drawn, puts them and their crosses in layers, and leads long lines through places
// of their own in the layers between.
#include "core/breeding/pedigree_layout.hpp"

#include "core/breeding/layered_graph.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <set>

namespace bullace::breeding {

namespace {

using Members = std::set<std::int32_t>; // parents before offspring

std::size_t at(std::int32_t i) {
    return static_cast<std::size_t>(i);
}

std::vector<std::int32_t> parentsOf(const Pedigree& pedigree, std::int32_t i) {
    std::vector<std::int32_t> parents;
    for (const std::int32_t parent : {pedigree.mother[at(i)], pedigree.father[at(i)]}) {
        if (parent != kUnknown && std::ranges::find(parents, parent) == parents.end()) {
            parents.push_back(parent);
        }
    }
    return parents;
}

void addAncestors(const Pedigree& pedigree, Members level, std::size_t generations, Members& all) {
    for (std::size_t g = 0; g < generations && !level.empty(); ++g) {
        Members next;
        for (const std::int32_t i : level) {
            for (const std::int32_t parent : parentsOf(pedigree, i)) {
                next.insert(parent);
            }
        }
        all.insert(next.begin(), next.end());
        level = std::move(next);
    }
}

void addDescendants(const Pedigree& pedigree,
                    Members level,
                    std::size_t generations,
                    Members& all) {
    for (std::size_t g = 0; g < generations && !level.empty(); ++g) {
        Members next;
        for (std::size_t i = 0; i < pedigree.size(); ++i) {
            const auto child = static_cast<std::int32_t>(i);
            if (level.contains(pedigree.mother[i]) || level.contains(pedigree.father[i])) {
                next.insert(child);
                const auto parents = parentsOf(pedigree, child);
                all.insert(parents.begin(), parents.end());
            }
        }
        all.insert(next.begin(), next.end());
        level = std::move(next);
    }
}

struct Drawing {
    PedigreeLayout layout;
    std::vector<std::size_t> layer; // of each node, those along lines too
    LayeredGraph graph;
};

// Individuals and crosses with their layers, and the edges.
Drawing draft(const Pedigree& pedigree, const Members& members, const Members& focus) {
    Drawing drawing;
    PedigreeLayout& layout = drawing.layout;
    std::map<std::int32_t, std::size_t> node;
    std::map<std::pair<std::int32_t, std::int32_t>, std::size_t> crosses;
    const auto shown = [&members](std::int32_t parent) {
        return members.contains(parent) ? parent : kUnknown;
    };
    for (const std::int32_t i : members) {
        const std::int32_t mother = shown(pedigree.mother[at(i)]);
        const std::int32_t father = shown(pedigree.father[at(i)]);
        const bool hasCross = mother != kUnknown || father != kUnknown;
        std::size_t cross = 0;
        if (const auto known = crosses.find({mother, father}); hasCross && known != crosses.end()) {
            cross = known->second;
        } else if (hasCross) {
            cross = layout.nodes.size();
            crosses.emplace(std::pair(mother, father), cross);
            layout.nodes.push_back({LayoutKind::Cross, kUnknown, {}, false, false, false});
            drawing.layer.push_back(0);
            const bool isSelfing = mother == father;
            for (const bool isMother : {true, false}) {
                const std::int32_t parent = isMother ? mother : father;
                if (parent == kUnknown || (isSelfing && !isMother)) {
                    continue;
                }
                drawing.layer[cross] =
                    std::max(drawing.layer[cross], drawing.layer[node[parent]] + 1);
                const LayoutLine line = isSelfing  ? LayoutLine::Selfing
                                        : isMother ? LayoutLine::Mother
                                                   : LayoutLine::Pollen;
                layout.edges.push_back({node[parent], cross, line, {}});
            }
        }
        node[i] = layout.nodes.size();
        const bool isHidden = mother != pedigree.mother[at(i)] || father != pedigree.father[at(i)];
        layout.nodes.push_back({LayoutKind::Individual, i, {}, focus.contains(i), isHidden, false});
        drawing.layer.push_back(hasCross ? drawing.layer[cross] + 1 : 0);
        if (hasCross) {
            layout.edges.push_back({cross, node[i], LayoutLine::Offspring, {}});
        }
    }
    for (std::size_t i = 0; i < pedigree.size(); ++i) {
        for (const std::int32_t parent : parentsOf(pedigree, static_cast<std::int32_t>(i))) {
            if (members.contains(parent) && !members.contains(static_cast<std::int32_t>(i))) {
                layout.nodes[node[parent]].hasHiddenOffspring = true;
            }
        }
    }
    return drawing;
}

// A parent without shown parents stands right above its first cross, not at the top.
void lower(Drawing& drawing) {
    constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();
    std::vector<std::size_t> nearest(drawing.layer.size(), kNone);
    std::vector<char> isFree(drawing.layer.size(), 1);
    for (const LayoutEdge& edge : drawing.layout.edges) {
        isFree[edge.to] = 0;
        const std::size_t above = drawing.layer[edge.to] - 1;
        nearest[edge.from] = std::min(nearest[edge.from], above);
    }
    for (std::size_t k = 0; k < drawing.layer.size(); ++k) {
        drawing.layer[k] = isFree[k] != 0 && nearest[k] != kNone ? nearest[k] : drawing.layer[k];
    }
}

// Layers with a place for each line that passes through; the nodes of each line from above.
std::vector<std::vector<std::size_t>> layOut(Drawing& drawing) {
    LayeredGraph& graph = drawing.graph;
    std::vector<std::vector<std::size_t>> ways;
    for (const LayoutEdge& edge : drawing.layout.edges) {
        std::vector<std::size_t> way{edge.from};
        for (std::size_t l = drawing.layer[edge.from] + 1; l < drawing.layer[edge.to]; ++l) {
            way.push_back(drawing.layer.size());
            drawing.layer.push_back(l);
        }
        way.push_back(edge.to);
        ways.push_back(std::move(way));
    }
    graph.above.resize(drawing.layer.size());
    graph.below.resize(drawing.layer.size());
    for (const auto& way : ways) {
        for (std::size_t k = 1; k < way.size(); ++k) {
            graph.below[way[k - 1]].push_back(way[k]);
            graph.above[way[k]].push_back(way[k - 1]);
        }
    }
    const std::size_t last = *std::ranges::max_element(drawing.layer);
    graph.layers.resize(last + 1);
    for (std::size_t k = 0; k < drawing.layer.size(); ++k) {
        graph.layers[drawing.layer[k]].push_back(k);
    }
    return ways;
}

} // namespace

Result<PedigreeLayout> layoutPedigree(const Pedigree& pedigree,
                                      std::span<const std::int32_t> focus,
                                      const LayoutExtent& extent) {
    const auto size = static_cast<std::int32_t>(pedigree.size());
    const bool isSound = !focus.empty() && std::ranges::all_of(focus, [size](std::int32_t i) {
        return i >= 0 && i < size;
    });
    if (!isSound) {
        return Error{ErrorCode::InvalidInput,
                     "A drawing of a pedigree needs at least one vine of it to be drawn around.",
                     ""};
    }
    const Members chosen(focus.begin(), focus.end());
    Members members = chosen;
    addAncestors(pedigree, chosen, extent.up, members);
    addDescendants(pedigree, chosen, extent.down, members);
    if (members.size() > kMostDrawn) {
        return Error{ErrorCode::BeyondLimit,
                     "The drawing would hold " + std::to_string(members.size()) +
                         " vines. Ask for fewer generations.",
                     ""};
    }
    Drawing drawing = draft(pedigree, members, chosen);
    lower(drawing);
    const auto ways = layOut(drawing);
    PedigreeLayout& layout = drawing.layout;
    layout.crossings = reduceCrossings(drawing.graph);
    const std::vector<double> places = placesOf(drawing.graph);
    const auto pointOf = [&](std::size_t node) {
        return LayoutPoint{places[node], static_cast<double>(drawing.layer[node])};
    };
    for (std::size_t k = 0; k < layout.nodes.size(); ++k) {
        layout.nodes[k].at = pointOf(k);
    }
    for (std::size_t e = 0; e < ways.size(); ++e) {
        for (const std::size_t node : ways[e]) {
            layout.edges[e].points.push_back(pointOf(node));
        }
    }
    for (std::size_t node = 0; node < places.size(); ++node) {
        layout.width = std::max(layout.width, pointOf(node).x);
        layout.height = std::max(layout.height, pointOf(node).y);
    }
    return std::move(layout);
}

} // namespace bullace::breeding
