// Planting plans for a real block of vines, with its missing positions: randomised complete blocks,
// augmented blocks, and resolvable designs of rows and columns. All from a seed.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::trials {

// One place for a vine. Rows and vines are numbers of the same block; neighbours differ by one.
struct LayoutPosition {
    std::string block;
    std::uint32_t row = 0;
    std::uint32_t vine = 0;
    bool isUsable = true; // no vine can stand at one that is not
};

enum class LayoutKind { CompleteBlocks, Augmented, RowsAndColumns };

struct LayoutRequest {
    LayoutKind kind = LayoutKind::CompleteBlocks;
    std::vector<LayoutPosition> positions; // in any order
    std::vector<std::string> entries;      // in an augmented design the selections, once each
    std::vector<std::string>
        checks;              // augmented: each once in every block; else entries like others
    unsigned replicates = 2; // of every entry; in an augmented design the number of blocks
    std::uint64_t seed = 1;
};

struct PlannedVine {
    std::size_t position = 0; // index into the request's
    std::string entry;
    unsigned replicate = 0; // from 1; in an augmented design the block
    bool isCheck = false;
};

struct Layout {
    std::string method;
    std::vector<PlannedVine> vines; // in the order of a walk up one row and down the next
    std::vector<std::size_t> spare; // usable positions that stay free
    std::vector<std::size_t> lost;  // positions that are not usable
    // Mean variance of a difference of two entries (of two selections in an augmented design), in
    // units of the variance of one vine; nothing where entries are too many, or two are not
    // connected.
    std::optional<double> differenceVariance{};
    // Of complete blocks with as many replicates, over this: what rows and columns must take out to
    // be worth it. 1 for complete blocks.
    std::optional<double> efficiency{};
    // Augmented: a selection against a check, two checks, two selections of one block.
    std::optional<double> withCheckVariance{};
    std::optional<double> twoChecksVariance{};
    std::optional<double> sameBlockVariance{};
    Remarks remarks;
};

inline constexpr std::size_t kMostLayoutPositions = 100000;
inline constexpr std::size_t kMostLayoutEntries = 2000; // of a design of rows and columns

// Replicates and blocks are stretches of a walk, so that they lie together; missing positions are
// stepped over. Every replicate holds every entry once; in an augmented design every block holds
// every check once, spread over it, and its share of the selections. The same request gives the
// same layout on every machine. Errors  InvalidInput in plain words: no positions, one twice, no
// entries, one twice or empty, too
//         few usable positions, no checks in an augmented design, blocks too small for the checks;
//         BeyondLimit with more than kMostLayoutPositions positions or kMostLayoutEntries entries.
// Source  randomised blocks: Fisher 1935, The Design of Experiments. Augmented: Federer 1956,
//         Hawaiian Planters' Record 55:191-208; its variances where each check stands once in each
//         of b blocks: 2/b, 2, 2(1 + 1/c), 1 + 1/b + 1/c - 1/(bc). Checks spread by the sum of
//         inverse squared distances (Audze & Eglais 1977). Rows and columns: swaps within a
//         replicate that lower the sum of squared concurrences (Eccleston & Hedayat 1974, Ann.
//         Stat. 2:1238-1255).
[[nodiscard]] Result<Layout> planLayout(const LayoutRequest& request);

} // namespace bullace::trials
