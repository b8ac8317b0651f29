// The collection and all observations as tables that a spreadsheet opens, and that can be imported
// again.
#pragma once

#include "office/table_import.hpp"

#include "core/vineyard/catalogue.hpp"

#include <ostream>

namespace bullace::office {

// Exact wild sites are left out unless they are asked for.
enum class WildSites { LeftOut, Included };

// Writes one table, UTF-8, commas, a point in numbers. Observations are written long: position or
// lot, date, descriptor, sample, value, unit, status, observer. Errors: those of reading; Io.
[[nodiscard]] Status exportTable(store::Database& database,
                                 const vineyard::Catalogue& catalogue,
                                 TableKind kind,
                                 WildSites sites,
                                 std::ostream& out);

} // namespace bullace::office
