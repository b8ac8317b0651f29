// What can be walked today: rounds and what is done of them, rows, and the cautions before the
// first stop.
#pragma once

#include "field/walk_plan.hpp"

#include "core/vineyard/catalogue.hpp"
#include "core/walk/round.hpp"
#include "core/walk/route.hpp"
#include "store/database.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bullace::field {

struct RowProgress {
    walk::RowPlan row;
    std::size_t stops = 0;
    std::size_t done =
        0; // vines that have a value of the round's first descriptor since its first day
    std::vector<std::string> people; // who noted there today
};

struct RoundProgress {
    const walk::Round* round = nullptr;
    std::size_t stops = 0;
    std::size_t done = 0;
    bool isLate = false;
    std::vector<std::string> gone;    // rows or vines that are on no plan any more
    std::vector<std::string> unknown; // descriptors that nobody knows here
};

// The rounds that are open on the day, those that are due first, first. Errors: those of reading.
[[nodiscard]] Result<std::vector<RoundProgress>>
roundsOn(store::Database& database, const vineyard::Catalogue& catalogue, CivilDate today);
// The rows of a round in walking order, without blocks that are closed on the day. Errors:
// likewise.
[[nodiscard]] Result<std::vector<RowProgress>> rowsOn(store::Database& database,
                                                      const vineyard::Catalogue& catalogue,
                                                      const walk::Round& round,
                                                      CivilDate today);

// A closed block, or one whose fruit is not tasted.
struct BlockCaution {
    std::string block;
    std::string name;
    std::optional<CivilDate> closedUntil;
    std::optional<CivilDate> noTastingUntil;
};
// Of all blocks that the round touches.
[[nodiscard]] std::vector<BlockCaution>
cautionsOf(const vineyard::Catalogue& catalogue, const walk::Round& round, CivilDate today);

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
