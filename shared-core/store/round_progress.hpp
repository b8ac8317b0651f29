// The rounds that are open on a day, and how much of each is walked.
#pragma once

#include "core/vineyard/catalogue.hpp"
#include "core/walk/round.hpp"
#include "core/walk/route.hpp"
#include "store/database.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bullace::store {

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
roundsOn(Database& database, const vineyard::Catalogue& catalogue, CivilDate today);
// The rows of a round in walking order, without blocks that are closed on the day. Errors:
// likewise.
[[nodiscard]] Result<std::vector<RowProgress>> rowsOn(Database& database,
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

} // namespace bullace::store
