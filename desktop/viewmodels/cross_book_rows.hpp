// The book of crosses in words: its rows, what is due, and under which names seedlings are known.
#pragma once

#include "desk/study.hpp"

#include "core/breeding/cross_book.hpp"
#include "core/season/station_crosses.hpp"

#include <span>

namespace bullace::desk {

[[nodiscard]] QString stepWords(breeding::BookStep step);
// "A022 Brindlecap"; of a parent that is not known, that it was open pollination.
[[nodiscard]] QString parentWords(const season::StationNotes& notes, const std::string& id);
// What a group of crosses is called: a parent, a year, all of them.
[[nodiscard]] QString
groupWords(const season::StationNotes& notes, breeding::BookGroup by, const std::string& group);
[[nodiscard]] QString groupTitle(breeding::BookGroup by);

// A row for each cross, a column for each step that any of them has.
void addBookRows(const season::StationNotes& notes,
                 std::span<const breeding::BookEntry> book,
                 Study& study);
void addRateRows(const season::StationNotes& notes,
                 std::span<const breeding::SuccessRate> rates,
                 breeding::BookGroup by,
                 Study& study);
void addDueRows(std::span<const breeding::DueWork> due, CivilDate today, Study& study);
// A row for each seedling of a cross, with all names that it has had.
void addNameRows(const season::StationNotes& notes,
                 const season::StationCrosses& crosses,
                 Study& study);

} // namespace bullace::desk
