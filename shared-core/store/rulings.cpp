#include "store/rulings.hpp"

#include <algorithm>

namespace bullace::store {

std::vector<Draft> rulingsOver(std::span<const journal::Place> heads, const Draft& ruling) {
    std::vector<Draft> all;
    for (std::size_t at = 0; at < heads.size(); at += journal::kMostEdges) {
        Draft part = ruling;
        const auto some = heads.subspan(at, std::min(journal::kMostEdges, heads.size() - at));
        part.over.assign(some.begin(), some.end());
        all.push_back(std::move(part));
    }
    return all;
}

} // namespace bullace::store
