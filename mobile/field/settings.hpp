// What this tablet and the people on it asked for once: kept in the journal's file, never sent.
#pragma once

#include "core/base/units.hpp"
#include "core/vineyard/block.hpp"
#include "store/database.hpp"

#include <map>
#include <string>
#include <vector>

namespace bullace::field {

enum class KeyLayout { Bare, Glove, Rain };

struct Settings {
    bool isSetUp = false; // the questions of the first start are answered
    bool isLeftHanded = false;
    double glassFactor = 1; // true pixels a millimetre, over those the screen claims
    double textScale = 1;   // 1 to 2
    bool isDusk = false;
    KeyLayout layout = KeyLayout::Bare;
    std::string language; // empty: the tablet's own
    std::string lastAuthor;
    std::int64_t clockCorrectionMs = 0;
    std::uint64_t sentEntries = 0;           // of this device's, that the station has
    std::map<std::string, UnitWishes> units; // by author
    std::vector<vineyard::Block> ownBlocks;  // typed as rows × vines, before there was an office
    std::vector<std::string> recentNotes;    // the newest first
};

// Settings as they are where nothing was kept yet, or in another shape. Errors: those of reading.
[[nodiscard]] Result<Settings> readSettings(store::Database& database);
[[nodiscard]] Status keepSettings(store::Database& database, const Settings& settings);

} // namespace bullace::field
