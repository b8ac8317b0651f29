// How warm a season had been by a day, from the weather that was taken in: what stands beside a
// conflict about a stage.
#pragma once

#include "core/base/civil_date.hpp"
#include "store/database.hpp"

#include <optional>
#include <string>

namespace bullace::office {

inline constexpr double kHeatBaseC = 10;

// Degree-days from 1 January up to the end of the day, °C days above kHeatBaseC by single sine.
struct DayHeat {
    double degreeDays = 0;
    std::string site;
    bool isOnlySite = true; // weather of no other site is there
};
// Of the first site, by its name, whose weather is known without a gap until then; nothing where
// there is none. Errors: those of reading.
[[nodiscard]] Result<std::optional<DayHeat>> heatUntil(store::Database& database, CivilDate day);

} // namespace bullace::office
