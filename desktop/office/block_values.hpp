// What the block map shows: for every place of a block, in planting order, what one descriptor says
// there.
#pragma once

#include "office/desk.hpp"

#include "core/vineyard/catalogue.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace bullace::office {

struct BlockWish {
    std::string block;              // its code; empty: all blocks of the station
    std::string descriptor;         // empty: only where something is planted
    int season = 0;                 // calendar year
    std::optional<CivilDate> visit; // that day alone; nothing: the last value of each vine
    bool isDifference = false;      // from the value before it in the season, where there is one
};

struct PlaceValue {
    enum State { Value, NotObserved, NoVine, Dead, Open, Empty };

    std::string position;
    State state = Empty; // Empty: nothing is planted there on the day, or nothing ever was
    std::optional<CivilDate> date;   // of the value
    std::optional<CivilDate> before; // of the value that it is compared with
    // The number; of samples their mean; of a difference how much more it is now, in steps of its
    // scale for stages (onItsScale).
    std::optional<double> number;
    std::string word; // of a category
};

struct BlockRow {
    std::string block;
    unsigned row = 0;
    std::vector<PlaceValue> places; // in planting order, those planted between two with them
};

struct BlockValues {
    std::vector<BlockRow> rows;
    std::vector<CivilDate> visits; // of the descriptor in the season, the newest first
    std::vector<int> seasons;      // in which it was noted, the newest first
    // How often each descriptor was noted there, over all seasons.
    std::map<std::string, std::size_t, std::less<>> noted;
};

// Errors: NotFound where there is no such block; Cancelled; those of reading.
[[nodiscard]] Result<BlockValues> readBlockValues(store::Database& database,
                                                  const vineyard::Catalogue& catalogue,
                                                  const BlockWish& wish,
                                                  CivilDate today,
                                                  const Token& token);

} // namespace bullace::office
