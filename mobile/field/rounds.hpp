// How a round becomes a walk.
#pragma once

#include "field/walk_plan.hpp"

#include "core/vineyard/catalogue.hpp"
#include "core/walk/round.hpp"
#include "core/walk/route.hpp"
#include "store/database.hpp"
#include "store/round_progress.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bullace::field {

using store::RowProgress;
using store::rowsOn;

// How a walk is begun.
struct WalkWish {
    std::string author;
    std::optional<std::size_t> firstRow; // index in rowsOn(); nothing for a list of vines
    walk::End end = walk::End::First;
    walk::Share share;
    bool isWholeRound =
        true; // on from the first row through the rows after it; else that row alone
};
// The plan of a walk of the round. Errors: InvalidInput where nothing is left to walk or to ask;
// those of reading.
[[nodiscard]] Result<WalkPlan> planWalk(store::Database& database,
                                        const vineyard::Catalogue& catalogue,
                                        const walk::Round& round,
                                        const WalkWish& wish,
                                        CivilDate today);

} // namespace bullace::field
