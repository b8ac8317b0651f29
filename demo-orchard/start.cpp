#include "demo/start.hpp"

#include "demo/json_lines.hpp"
#include "demo/seasons.hpp"
#include "demo/station.hpp"

namespace bullace::demo {

namespace {

constexpr int kThirdSeason = 3;

} // namespace

std::string startLines() {
    std::string lines;
    for (const Journal& journal : makeStation().journals) {
        if (journal.season != kThirdSeason) {
            lines += journalLines(journal.entries);
        }
    }
    return lines;
}

CivilDate startDate() {
    return day(2025, 5, 13);
}

} // namespace bullace::demo
