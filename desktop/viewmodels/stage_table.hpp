// When each accession's vines reached a stage, and how much earlier or later than a reference, as
// the lines of a table.
#pragma once

#include "desk/stage_readings.hpp"
#include "desk/study_remarks.hpp"

#include <algorithm>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

namespace bullace::desk {

// What was asked, looked up once.
struct AskedSeason {
    const season::AskedStage* stage = nullptr;
    int season = 0;
    bool isHeat = false;
    std::vector<season::HeatCurve> curves; // of the season; none without its weather
    std::vector<season::AccessionSeason> seasons;
    std::set<std::int32_t> visits; // days of season
    std::size_t readings = 0;

    [[nodiscard]] bool hasHeat() const { return !curves.empty(); }
    [[nodiscard]] const season::AccessionSeason* of(const std::string& accession) const {
        const auto found =
            std::ranges::find(seasons, accession, &season::AccessionSeason::accession);
        return found == seasons.end() ? nullptr : &*found;
    }
};

// The onsets without their years.
[[nodiscard]] std::vector<season::OnsetInterval>
daysOnly(const std::vector<season::YearOnset>& onsets);

void addStageColumns(const StudyGround& ground,
                     const AskedSeason& asking,
                     const std::string& reference,
                     Study& study);
// The lines, and what was remarked of their accessions.
struct StageRows {
    std::vector<GridRow> rows;
    NamedRemarks remarks;
};
// One line for the accession's vines, and two for those that are everbearing: they have all stages
// at once, so that their two dates stand apart.
void addStageRows(const StudyGround& ground,
                  const AskedSeason& asking,
                  const season::AccessionSeason& one,
                  const std::string& reference,
                  StageRows& into);

} // namespace bullace::desk
