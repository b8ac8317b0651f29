// What the people at this desk asked for once: kept in the station's file, beside the entries, and
// never sent.
#pragma once

#include "core/base/units.hpp"
#include "store/database.hpp"

#include <string>

namespace bullace::desk {

struct DeskSettings {
    std::string author;   // the code of who sits here
    double textScale = 1; // 1 to 2
    bool isDusk = false;
    std::string language;   // empty: the computer's own
    bool letsSync = false;  // devices were let in when the desk was closed
    bool showsNames = true; // of observers, before a conflict is decided
    bool isA4 = false;      // the paper that the office has; else Letter
    UnitWishes units;
};

// Settings as they are where nothing was kept yet, or in another shape. Errors: those of reading.
[[nodiscard]] Result<DeskSettings> readDeskSettings(store::Database& database);
[[nodiscard]] Status keepDeskSettings(store::Database& database, const DeskSettings& settings);

} // namespace bullace::desk
