// The station's crosses as the book takes them: work at the mother vines, lots of their seed, and
// the seedlings that were planted.
#pragma once

#include "core/base/remark.hpp"
#include "core/breeding/cross_book.hpp"
#include "core/season/station_notes.hpp"

#include <cstddef>
#include <vector>

namespace bullace::season {

struct StationCrosses {
    std::vector<breeding::CrossHead> heads; // in the order of the notes; called by their ids
    std::vector<breeding::BookEvent> events;
    std::vector<breeding::NameLink> names;
    std::size_t open = 0; // notes of work that people disagree about: left out
    Remarks remarks;
};

// Bagged to harvested from `cross-work` (pollinating flowers again adds none). Seeds and sinkers on
// a lot's date, stratified seeds on its own: as many as sank, else as there were. Germinated on its
// own day, else on that of sowing, from when on they are counted. Planted: each seedling on the
// first day on which it stood anywhere. First flower: the first day on which its sex was noted.
// Selected: the first day on which the verdict on it was to take it on. The year of a cross is that
// of its first step; 0 where nothing was done. What cannot be put into the book is a remark.
[[nodiscard]] StationCrosses crossesOf(const StationNotes& notes);

} // namespace bullace::season
