#include "core/season/station_bloom.hpp"

#include "core/season/stage_date.hpp"
#include "core/season/station_stages.hpp"

#include <array>
#include <map>
#include <optional>
#include <string>

namespace bullace::season {

namespace {

// Of askedStages(): start and end of bloom.
constexpr std::array<std::size_t, 2> kStages{1, 3};

} // namespace

StationBloom expectedBloom(const StationNotes& notes) {
    std::map<std::string, std::array<std::vector<YearOnset>, 2>> by;
    for (std::size_t i = 0; i < kStages.size(); ++i) {
        const AskedStage& stage = askedStages()[kStages[i]];
        for (const AccessionSeason& one : seasonsOf(readingsOf(notes, stage, 0), stage.question)) {
            addOnsets(one, by[one.accession][i]);
        }
    }
    StationBloom bloom;
    for (const auto& [id, onsets] : by) {
        const auto start = stageDate(onsets[0]);
        const auto end = stageDate(onsets[1]);
        const bool isWindow =
            start && end && start->date && end->date && start->date->mean <= end->date->mean;
        const auto accession = notes.accession(id);
        if (isWindow && accession) {
            bloom.windows.push_back({id,
                                     vineyard::flowerSexOf(notes.accessions[*accession].flowerSex),
                                     *start->date,
                                     *end->date});
        } else {
            ++bloom.without;
        }
    }
    return bloom;
}

} // namespace bullace::season
