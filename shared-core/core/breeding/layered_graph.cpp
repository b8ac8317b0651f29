// Sweeps down and up, keeping the best order seen; places by isotonic regression.
#include "core/breeding/layered_graph.hpp"

#include <algorithm>

namespace bullace::breeding {

namespace {

constexpr int kSweeps = 12;

std::vector<std::size_t> positionsOf(const LayeredGraph& graph) {
    std::vector<std::size_t> position(graph.above.size(), 0);
    for (const auto& layer : graph.layers) {
        for (std::size_t k = 0; k < layer.size(); ++k) {
            position[layer[k]] = k;
        }
    }
    return position;
}

// By inserting the lower ends, in the order of the upper ones, into a tree of counts (Barth, Jünger
// & Mutzel 2002, Lect. Notes Comput. Sci. 2528:130-141).
std::size_t crossingsOf(const LayeredGraph& graph) {
    const std::vector<std::size_t> position = positionsOf(graph);
    std::size_t crossings = 0;
    for (std::size_t l = 0; l + 1 < graph.layers.size(); ++l) {
        const std::size_t width = graph.layers[l + 1].size();
        std::vector<std::size_t> tree(width + 1, 0);
        std::size_t seen = 0;
        std::vector<std::size_t> ends;
        for (const std::size_t node : graph.layers[l]) {
            ends.clear();
            for (const std::size_t below : graph.below[node]) {
                ends.push_back(position[below] + 1);
            }
            for (const std::size_t end : ends) {
                std::size_t notBeyond = 0;
                for (std::size_t k = end; k > 0; k -= k & (~k + 1)) {
                    notBeyond += tree[k];
                }
                crossings += seen - notBeyond;
            }
            for (const std::size_t end : ends) {
                ++seen;
                for (std::size_t k = end; k <= width; k += k & (~k + 1)) {
                    ++tree[k];
                }
            }
        }
    }
    return crossings;
}

double meanOf(const std::vector<std::size_t>& neighbours,
              const std::vector<double>& places,
              double otherwise) {
    double sum = 0;
    for (const std::size_t node : neighbours) {
        sum += places[node];
    }
    return neighbours.empty() ? otherwise : sum / static_cast<double>(neighbours.size());
}

void orderLayer(LayeredGraph& graph, std::size_t layer, bool isDown) {
    const std::vector<std::size_t> position = positionsOf(graph);
    const std::vector<double> places(position.begin(), position.end());
    std::vector<std::pair<double, std::size_t>> keyed;
    for (const std::size_t node : graph.layers[layer]) {
        const auto& neighbours = isDown ? graph.above[node] : graph.below[node];
        keyed.emplace_back(meanOf(neighbours, places, places[node]), node);
    }
    std::ranges::stable_sort(
        keyed, {}, [](const std::pair<double, std::size_t>& key) { return key.first; });
    for (std::size_t k = 0; k < keyed.size(); ++k) {
        graph.layers[layer][k] = keyed[k].second;
    }
}

// The places nearest to those wanted (least squares) that are 1 apart: less their rank they must
// not fall, so neighbours that do are pooled (Ayer et al. 1955, Ann. Math. Stat. 26:641-647).
std::vector<double> apart(const std::vector<double>& wanted) {
    struct Pool {
        double sum;
        std::size_t count;
        [[nodiscard]] double mean() const { return sum / static_cast<double>(count); }
    };
    std::vector<Pool> pools;
    for (std::size_t k = 0; k < wanted.size(); ++k) {
        pools.push_back({wanted[k] - static_cast<double>(k), 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
            const Pool last = pools.back();
            pools.pop_back();
            pools.back().sum += last.sum;
            pools.back().count += last.count;
        }
    }
    std::vector<double> places;
    for (const Pool& pool : pools) {
        for (std::size_t k = 0; k < pool.count; ++k) {
            places.push_back(pool.mean() + static_cast<double>(places.size()));
        }
    }
    return places;
}

} // namespace

std::size_t reduceCrossings(LayeredGraph& graph) {
    std::size_t fewest = crossingsOf(graph);
    auto best = graph.layers;
    for (int sweep = 0; sweep < kSweeps && fewest > 0; ++sweep) {
        const bool isDown = sweep % 2 == 0;
        for (std::size_t k = 1; k < graph.layers.size(); ++k) {
            orderLayer(graph, isDown ? k : graph.layers.size() - 1 - k, isDown);
        }
        const std::size_t crossings = crossingsOf(graph);
        if (crossings < fewest) {
            fewest = crossings;
            best = graph.layers;
        }
    }
    graph.layers = best;
    return fewest;
}

std::vector<double> placesOf(const LayeredGraph& graph) {
    const std::vector<std::size_t> position = positionsOf(graph);
    std::vector<double> places(position.begin(), position.end());
    for (int sweep = 0; sweep < kSweeps; ++sweep) {
        for (std::size_t k = 0; k < graph.layers.size(); ++k) {
            const bool isDown = sweep % 2 == 0;
            const auto& layer = graph.layers[isDown ? k : graph.layers.size() - 1 - k];
            std::vector<double> wanted;
            for (const std::size_t node : layer) {
                const auto& first = isDown ? graph.above[node] : graph.below[node];
                const auto& second = isDown ? graph.below[node] : graph.above[node];
                wanted.push_back(meanOf(first, places, meanOf(second, places, places[node])));
            }
            const std::vector<double> found = apart(wanted);
            for (std::size_t i = 0; i < layer.size(); ++i) {
                places[layer[i]] = found[i];
            }
        }
    }
    if (!places.empty()) {
        const double least = *std::ranges::min_element(places);
        for (double& place : places) {
            place -= least;
        }
    }
    return places;
}

} // namespace bullace::breeding
