#include "core/vineyard/block.hpp"

#include <algorithm>

namespace bullace::vineyard {

std::vector<std::string> positionsOf(const Block& block) {
    std::vector<std::string> positions;
    for (const Row& row : block.rows) {
        for (unsigned vine = 1; vine <= row.vines; ++vine) {
            positions.push_back(writePosition({block.code, row.number, vine, 0}));
        }
    }
    return positions;
}

bool isOnPlan(const Block& block, const Position& position) {
    const auto row =
        std::find_if(block.rows.begin(), block.rows.end(), [&position](const Row& candidate) {
            return candidate.number == position.row;
        });
    return position.block == block.code && row != block.rows.end() && position.vine >= 1 &&
           position.vine <= row->vines;
}

std::optional<unsigned> replicateAt(const Block& block, const Position& position) {
    for (const ReplicateRun& run : block.replicates) {
        const auto first = readPosition(run.first);
        const auto last = readPosition(run.last);
        if (first && last && position.block == first->block && position.row == first->row &&
            first->vine <= position.vine && position.vine <= last->vine) {
            return run.replicate;
        }
    }
    return {};
}

std::strong_ordering compareAlongRows(const Position& a, const Position& b) {
    if (const auto byBlock = a.block <=> b.block; byBlock != 0) {
        return byBlock;
    }
    if (const auto byRow = a.row <=> b.row; byRow != 0) {
        return byRow;
    }
    if (const auto byVine = a.vine <=> b.vine; byVine != 0) {
        return byVine;
    }
    return a.letter <=> b.letter;
}

} // namespace bullace::vineyard
