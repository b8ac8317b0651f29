// Walks, stretches and draws of planting plans.
#include "core/trials/layout.hpp"

#include "core/trials/layout_parts.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <set>
#include <tuple>

namespace bullace::trials {

std::size_t LayoutDraw::below(std::size_t count) {
    const std::uint64_t size = count;
    const std::uint64_t most = std::numeric_limits<std::uint64_t>::max();
    const std::uint64_t usable = most - most % size; // what lies above would favour small numbers
    std::uint64_t drawn = engine_();
    while (drawn >= usable) {
        drawn = engine_();
    }
    return static_cast<std::size_t>(drawn % size);
}

std::vector<std::size_t> walkOrder(const std::vector<LayoutPosition>& positions) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < positions.size(); ++i) {
        if (positions[i].isUsable) {
            order.push_back(i);
        }
    }
    std::ranges::sort(order, {}, [&](std::size_t i) {
        const LayoutPosition& at = positions[i];
        return std::tuple(at.block, at.row, at.vine);
    });
    // Down every second row.
    bool isDown = false;
    for (std::size_t from = 0; from < order.size(); isDown = !isDown) {
        const LayoutPosition& first = positions[order[from]];
        std::size_t to = from;
        while (to < order.size() && positions[order[to]].block == first.block &&
               positions[order[to]].row == first.row) {
            ++to;
        }
        if (isDown) {
            std::reverse(order.begin() + static_cast<std::ptrdiff_t>(from),
                         order.begin() + static_cast<std::ptrdiff_t>(to));
        }
        from = to;
    }
    return order;
}

namespace {

Error invalid(const std::string& message) {
    return {ErrorCode::InvalidInput, message, {}};
}

std::string placeName(const LayoutPosition& at) {
    return (at.block.empty() ? "" : "block " + at.block + ", ") + "row " + std::to_string(at.row) +
           ", vine " + std::to_string(at.vine);
}

Result<void> checkPositions(const LayoutRequest& request) {
    if (request.positions.size() > kMostLayoutPositions) {
        return Error{ErrorCode::BeyondLimit,
                     "More than " + std::to_string(kMostLayoutPositions) +
                         " positions are not laid out at once.",
                     {}};
    }
    std::set<std::tuple<std::string, std::uint32_t, std::uint32_t>> seen;
    for (const LayoutPosition& at : request.positions) {
        if (!seen.emplace(at.block, at.row, at.vine).second) {
            return invalid("The position " + placeName(at) + " is listed twice.");
        }
    }
    return {};
}

Result<void> checkEntries(const LayoutRequest& request) {
    std::set<std::string> seen;
    for (const auto* list : {&request.entries, &request.checks}) {
        for (const std::string& entry : *list) {
            if (entry.empty()) {
                return invalid("An entry has no name.");
            }
            if (!seen.insert(entry).second) {
                return invalid("The entry " + entry +
                               " is listed twice. Replicates are asked for by their number.");
            }
        }
    }
    if (request.entries.empty()) {
        return invalid("There are no entries to lay out.");
    }
    if (request.replicates < 1) {
        return invalid("There must be one replicate or block at least.");
    }
    if (request.kind == LayoutKind::Augmented && request.checks.empty()) {
        return invalid("An augmented design needs checks: without them its blocks cannot be "
                       "compared.");
    }
    if (request.kind == LayoutKind::RowsAndColumns && seen.size() > kMostLayoutEntries) {
        return Error{ErrorCode::BeyondLimit,
                     "More than " + std::to_string(kMostLayoutEntries) +
                         " entries are not laid out in rows and columns.",
                     {}};
    }
    return {};
}

Result<void> checkRoom(const LayoutRequest& request, std::size_t usable) {
    const bool isAugmented = request.kind == LayoutKind::Augmented;
    const std::size_t all = request.entries.size() + request.checks.size();
    const std::size_t times = request.replicates;
    const std::size_t each = isAugmented ? request.checks.size() : all;
    const std::size_t once = isAugmented ? request.entries.size() : 0;
    // The number may be anything, and must not wrap around.
    const bool isAbsurd = times > kMostLayoutPositions;
    const std::size_t needed = isAbsurd ? 0 : once + times * each;
    if (!isAbsurd && needed <= usable) {
        return {};
    }
    const std::string what =
        isAugmented
            ? std::to_string(request.entries.size()) + " selections and " + std::to_string(each) +
                  " checks in each of " + std::to_string(times) + " blocks"
            : std::to_string(times) + " replicates of " + std::to_string(each) + " entries";
    return invalid("There are " + std::to_string(usable) + " usable positions, too few for " +
                   what + (isAbsurd ? "." : ", which take " + std::to_string(needed) + "."));
}

// What stands at each place of the walk; kNoCheck where nothing does.
struct Filling {
    std::vector<std::size_t> entry;
    std::vector<unsigned> replicate;
};

Filling completeBlocks(std::size_t entries, std::size_t replicates, LayoutDraw& draw) {
    Filling filling;
    std::vector<std::size_t> order(entries);
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (std::size_t replicate = 0; replicate < replicates; ++replicate) {
        draw.shuffle(order);
        filling.entry.insert(filling.entry.end(), order.begin(), order.end());
        filling.replicate.insert(
            filling.replicate.end(), entries, static_cast<unsigned>(replicate + 1));
    }
    return filling;
}

// Blocks of nearly equal length over all usable places; what is spare is shared among them.
Filling augmentedBlocks(const LayoutRequest& request,
                        const std::vector<std::size_t>& walk,
                        LayoutDraw& draw) {
    const std::size_t blocks = request.replicates;
    const std::size_t checks = request.checks.size();
    const std::size_t selections = request.entries.size();
    CheckSpread spread;
    for (std::size_t place = 0; place < walk.size(); ++place) {
        spread.block.push_back(place * blocks / walk.size());
    }
    spreadChecks(request.positions, walk, checks, draw, spread);
    std::vector<std::size_t> order(selections);
    std::iota(order.begin(), order.end(), std::size_t{0});
    draw.shuffle(order);
    // Free places of each block are taken in turn, so that no block has many more than another.
    const std::size_t free = walk.size() - blocks * checks;
    Filling filling{std::vector<std::size_t>(walk.size(), kNoCheck),
                    std::vector<unsigned>(walk.size(), 0)};
    std::size_t seen = 0;
    std::size_t used = 0;
    for (std::size_t place = 0; place < walk.size(); ++place) {
        filling.replicate[place] = static_cast<unsigned>(spread.block[place] + 1);
        if (spread.check[place] != kNoCheck) {
            filling.entry[place] = selections + spread.check[place];
            continue;
        }
        ++seen;
        if (seen * selections / free > used) {
            filling.entry[place] = order[used];
            ++used;
        }
    }
    return filling;
}

Layout
told(const LayoutRequest& request, const std::vector<std::size_t>& walk, const Filling& filling) {
    Layout layout;
    for (std::size_t place = 0; place < walk.size(); ++place) {
        const bool isFree = place >= filling.entry.size() || filling.entry[place] == kNoCheck;
        if (isFree) {
            layout.spare.push_back(walk[place]);
            continue;
        }
        const std::size_t entry = filling.entry[place];
        const bool isCheck = entry >= request.entries.size();
        layout.vines.push_back(
            {walk[place],
             isCheck ? request.checks[entry - request.entries.size()] : request.entries[entry],
             filling.replicate[place],
             isCheck});
    }
    for (std::size_t i = 0; i < request.positions.size(); ++i) {
        if (!request.positions[i].isUsable) {
            layout.lost.push_back(i);
        }
    }
    return layout;
}

Result<Layout> planAugmented(const LayoutRequest& request,
                             const std::vector<std::size_t>& walk,
                             LayoutDraw& draw) {
    const std::size_t blocks = request.replicates;
    if (walk.size() / blocks < request.checks.size()) {
        return invalid("A block of " + std::to_string(walk.size() / blocks) +
                       " positions cannot hold " + std::to_string(request.checks.size()) +
                       " checks: take fewer blocks.");
    }
    Layout layout = told(request, walk, augmentedBlocks(request, walk, draw));
    layout.method = "augmented blocks along the walk; checks once in each block, spread over it";
    const double b = static_cast<double>(blocks);
    const double c = static_cast<double>(request.checks.size());
    std::vector<double> ofBlock(blocks, 0.0);
    for (const PlannedVine& vine : layout.vines) {
        ofBlock[vine.replicate - 1] += vine.isCheck ? 0 : 1;
    }
    const double n = static_cast<double>(request.entries.size());
    double together = 0; // share of pairs of selections that stand in one block
    for (const double count : ofBlock) {
        together += n > 1 ? count * (count - 1) / (n * (n - 1)) : 0;
    }
    layout.twoChecksVariance = 2 / b;
    layout.sameBlockVariance = 2;
    layout.withCheckVariance = 1 + 1 / b + 1 / c - 1 / (b * c);
    if (n > 1) {
        layout.differenceVariance = 2 * together + 2 * (1 + 1 / c) * (1 - together);
        layout.efficiency = 2 / *layout.differenceVariance;
    }
    if ((b - 1) * (c - 1) < 10) {
        layout.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The checks leave %1 degrees of freedom for the error; 10 or more "
                              "make a trial that can tell entries apart (common practice, no "
                              "source)."),
             {static_cast<std::int64_t>((b - 1) * (c - 1))}});
    }
    return layout;
}

} // namespace

Result<Layout> planLayout(const LayoutRequest& request) {
    const auto positions = checkPositions(request);
    const auto entries = checkEntries(request);
    if (!positions || !entries) {
        return positions ? entries.error() : positions.error();
    }
    const std::vector<std::size_t> walk = walkOrder(request.positions);
    if (const auto room = checkRoom(request, walk.size()); !room) {
        return room.error();
    }
    LayoutDraw draw(request.seed);
    if (request.kind == LayoutKind::Augmented) {
        return planAugmented(request, walk, draw);
    }
    const std::size_t count = request.entries.size() + request.checks.size();
    Filling filling = completeBlocks(count, request.replicates, draw);
    const bool hasRows = request.kind == LayoutKind::RowsAndColumns;
    if (hasRows) {
        balanceConcurrences(request.positions, walk, count, draw, filling.entry);
    }
    Layout layout = told(request, walk, filling);
    const double complete = 2 / static_cast<double>(request.replicates);
    layout.method = hasRows
                        ? "complete replicates along the walk; rows and columns balanced by swaps"
                        : "randomised complete blocks along the walk";
    layout.differenceVariance =
        hasRows ? differenceVariance(request.positions, walk, count, filling.entry)
                : std::optional(complete);
    if (layout.differenceVariance) {
        layout.efficiency = complete / *layout.differenceVariance;
    } else if (count > 1) {
        layout.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "With rows and columns taken out, some entries could not be "
                              "compared: take more replicates, or complete blocks."),
             {}});
    }
    if (request.replicates == 1) {
        layout.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "One replicate leaves nothing to judge the error by."),
             {}});
    }
    return layout;
}

} // namespace bullace::trials
