// What tests read off the page of conflicts.
#pragma once

#include "core/journal/json_value.hpp"
#include "support/desk_glass.hpp"

#include <string>

namespace bullace::test {

inline desk::ConflictsViewModel& conflictsOf(DeskGlass& desk) {
    return *desk.app().conflicts();
}

// Which card shows the value, as the person reads it; its number key.
inline Qt::Key cardWith(DeskGlass& desk, const std::string& json) {
    const auto& file = conflictsOf(desk).file();
    REQUIRE(file.has_value());
    for (std::size_t i = 0; i < file->sides.size(); ++i) {
        if (journal::valueToJson(file->sides[i].value) == json) {
            return static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(i));
        }
    }
    FAIL("no card shows " << json);
    return Qt::Key_1;
}

} // namespace bullace::test
