// The benchmarks by what a person asks of the desk. Each prints its figures.
#pragma once

#include "screen.hpp"

#include <string>

namespace bullace::desk_bench {

// Opens it anew several times; `empty` is a station with nothing in it.
void measureOpening(const std::string& path, const std::string& empty, BenchClock& clock);
void measureVines(DeskScreen& screen);
void measureMap(DeskScreen& screen);
void measureRulebook(DeskScreen& screen);
void measureSearch(DeskScreen& screen);
void measureStudies(DeskScreen& screen);
// Decides some of the conflicts for good.
void measureConflicts(DeskScreen& screen, const std::string& scratch);
// A tablet pushes while somebody moves through the conflicts. `self` is this program.
void measurePush(DeskScreen& screen, const std::string& tablet, const std::string& self);

} // namespace bullace::desk_bench
