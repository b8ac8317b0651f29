#include "core/season/station_stages.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

namespace bullace::season {

namespace {

constexpr std::string_view kStage = "stage";
constexpr std::string_view kLeast = "stage-least";
constexpr std::array<std::string_view, 6> kDescriptors{
    kStage, "bud-break", "caps-off", "coloured", "ripe", "leaf-fall"};

const std::array<AskedStage, 7> kStages{{
    {"bud-break", {9, 50}, "bud-break"},
    {"bloom-start", {61, 10}, "caps-off"},
    {"bloom-full", {65, 50}, "caps-off"},
    {"bloom-end", {69, 100}, "caps-off"},
    {"first-colour", {81, 1}, "coloured"},
    {"ripe", {89, 50}, "ripe"},
    {"leaf-fall", {95, 50}, "leaf-fall"},
}};

using ByVine = std::map<std::pair<int, std::uint32_t>, std::vector<StageReading>>;

void addReadings(const DescriptorNotes& notes,
                 const StageReading& like,
                 int season,
                 ByVine& vines) {
    for (const NumberNote& note : notes.numbers) {
        const CivilDate date = dateOfDay(note.day);
        const int year = yearOfDay(note.day);
        if (season != 0 && year != season) {
            continue;
        }
        StageReading reading = like;
        reading.day = date;
        reading.value = note.low;
        std::vector<StageReading>& readings = vines[{year, note.vine}];
        readings.push_back(reading);
        if (note.high != note.low) {
            reading.value = note.high;
            readings.push_back(reading);
        }
    }
}

} // namespace

std::span<const AskedStage> askedStages() {
    return kStages;
}

const AskedStage& stageOf(std::string_view key) {
    const auto found = std::ranges::find(kStages, key, &AskedStage::key);
    return found == kStages.end() ? kStages.front() : *found;
}

std::span<const std::string_view> stageDescriptors() {
    return kDescriptors;
}

std::vector<std::string_view> descriptorsOf(const AskedStage& stage) {
    return {kStage, kLeast, stage.percent};
}

std::vector<VineReadings>
readingsOf(const StationNotes& notes, const AskedStage& stage, int season) {
    ByVine vines;
    const StageReading most{{}, StageReading::Kind::Stage, 0, Organs::MostAdvanced};
    const StageReading least{{}, StageReading::Kind::Stage, 0, Organs::LeastAdvanced};
    const StageReading percent{{}, StageReading::Kind::Percent, 0, Organs::MostAdvanced};
    addReadings(notes.notesOf(kStage), most, season, vines);
    addReadings(notes.notesOf(kLeast), least, season, vines);
    addReadings(notes.notesOf(stage.percent), percent, season, vines);
    std::vector<VineReadings> readings;
    readings.reserve(vines.size());
    for (auto& [key, of] : vines) {
        const NotedVine& vine = notes.vines[key.second];
        readings.push_back(
            {notes.accessions[vine.accession].id, vine.position, key.first, std::move(of)});
    }
    return readings;
}

void addOnsets(const AccessionSeason& season, std::vector<YearOnset>& onsets) {
    for (const OnsetInterval& onset : season.onsets) {
        onsets.push_back({season.year, onset});
    }
}

} // namespace bullace::season
