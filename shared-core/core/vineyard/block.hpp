// Blocks and their rows as planted, and the order in which positions follow one another in a walk.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/vineyard/position.hpp"

#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::vineyard {

struct Row {
    unsigned number = 0;
    unsigned vines = 0; // places along the wire, numbered from 1; missing vines are places too
};

// Places of one row that belong to one replicate of a trial, from the first vine to the last.
struct ReplicateRun {
    std::string first; // positions
    std::string last;
    unsigned replicate = 0; // from 1
};

// A block as its `block/CODE/…` fields tell.
struct Block {
    std::string code;
    std::string name;
    std::vector<Row> rows;
    std::optional<CivilDate> closedUntil;    // the last day on which nobody walks it (sprayed)
    std::optional<CivilDate> noTastingUntil; // the last day on which none of its fruit is tasted
    // `replicates`: [["B1-01-01", "B1-01-20", 1], ["B1-02-11", "B1-02-20", 1], …]
    std::vector<ReplicateRun> replicates{};

    // A closed block is not offered for a walk.
    [[nodiscard]] bool isClosed(CivilDate date) const {
        return closedUntil && date <= *closedUntil;
    }
    [[nodiscard]] bool mayTaste(CivilDate date) const {
        return !isClosed(date) && !(noTastingUntil && date <= *noTastingUntil);
    }
};

// All places of the block, row by row, each row from its first vine on.
[[nodiscard]] std::vector<std::string> positionsOf(const Block& block);

// Whether the plan has the position. A vine planted between two (14a) stands at a place of the plan
// where the vine before it does.
[[nodiscard]] bool isOnPlan(const Block& block, const Position& position);

// The replicate in which the position lies; nothing where it lies in none.
[[nodiscard]] std::optional<unsigned> replicateAt(const Block& block, const Position& position);

// Block by its code, then row, vine and letter as numbers: B2-9 stands before B2-10.
[[nodiscard]] std::strong_ordering compareAlongRows(const Position& a, const Position& b);

} // namespace bullace::vineyard
