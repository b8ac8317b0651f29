#include "core/statistics/adjust.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace bullace::statistics {

std::vector<double> holm(std::span<const double> probabilities) {
    std::vector<std::size_t> order(probabilities.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, {}, [&](std::size_t i) { return probabilities[i]; });
    std::vector<double> adjusted(probabilities.size());
    double least = 0;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const auto tests = static_cast<double>(order.size() - i);
        least = std::max(least, std::min(1.0, tests * probabilities[order[i]]));
        adjusted[order[i]] = least;
    }
    return adjusted;
}

std::vector<double> falseDiscovery(std::span<const double> probabilities) {
    std::vector<std::size_t> order(probabilities.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, {}, [&](std::size_t i) { return probabilities[i]; });
    std::vector<double> adjusted(probabilities.size());
    const double n = static_cast<double>(probabilities.size());
    double least = 1;
    for (std::size_t rank = order.size(); rank-- > 0;) {
        least = std::min(least, probabilities[order[rank]] * n / static_cast<double>(rank + 1));
        adjusted[order[rank]] = least;
    }
    return adjusted;
}

} // namespace bullace::statistics
