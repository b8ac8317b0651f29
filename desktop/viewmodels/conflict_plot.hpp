// A conflict's vine over its season, with the values that stand against each other.
#pragma once

#include "office/case_file.hpp"

#include "core/base/units.hpp"
#include "core/report/plot.hpp"

#include <optional>

namespace bullace::desk {

// The vine's line over the days of the season; each side as a point of its own on the day of the
// conflict, by its number on the page. Nothing where no other day has a number, or no side has.
[[nodiscard]] std::optional<report::Plot>
conflictPlot(const office::CaseFile& file, const vineyard::Asked& asked, const UnitWishes& wishes);

} // namespace bullace::desk
