#include "core/season/vine_seasons.hpp"

#include <functional>
#include <map>
#include <tuple>
#include <utility>

namespace bullace::season {

namespace {

using Key = std::tuple<std::string, int, std::string>; // accession, year, vine
using Ask = std::function<VineOnset(const std::vector<StageReading>&, int year, Organs)>;

void addVine(AccessionSeason& season, const std::vector<StageReading>& readings, const Ask& ask) {
    const VineOnset most = ask(readings, season.year, Organs::MostAdvanced);
    season.divided += most.divided;
    season.runsBack += most.runsBack ? 1 : 0;
    if (!most.isEverbearing) {
        season.onsets.push_back(most.days);
        return;
    }
    const VineOnset least = ask(readings, season.year, Organs::LeastAdvanced);
    season.divided += least.divided;
    season.runsBack += least.runsBack ? 1 : 0;
    season.everbearingMost.push_back(most.days);
    season.everbearingLeast.push_back(least.days);
}

void remarkOn(AccessionSeason& season) {
    const auto number = [](std::size_t count) { return static_cast<std::int64_t>(count); };
    if (!season.everbearingMost.empty()) {
        season.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Everbearing vines stand apart and are in no mean with the others "
                              "(vines: %1)."),
             {number(season.everbearingMost.size())}});
    }
    if (season.divided > 0) {
        season.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Where two values of one visit did not agree, both bound the date "
                              "(visits: %1)."),
             {number(season.divided)}});
    }
    if (season.runsBack > 0) {
        season.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Some vines were noted as not yet there after they had been: the "
                              "date lies anywhere between (vines: %1)."),
             {number(season.runsBack)}});
    }
}

std::vector<AccessionSeason> collected(std::span<const VineReadings> vines, const Ask& ask) {
    std::map<Key, std::vector<StageReading>> byVine;
    for (const VineReadings& vine : vines) {
        auto& readings = byVine[{vine.accession, vine.year, vine.vine}];
        readings.insert(readings.end(), vine.readings.begin(), vine.readings.end());
    }
    std::vector<AccessionSeason> seasons;
    for (const auto& [key, readings] : byVine) {
        const auto& [accession, year, vine] = key;
        if (seasons.empty() || seasons.back().accession != accession ||
            seasons.back().year != year) {
            seasons.push_back({accession, year, {}, {}, {}, 0, 0, {}});
        }
        addVine(seasons.back(), readings, ask);
    }
    for (AccessionSeason& season : seasons) {
        remarkOn(season);
    }
    return seasons;
}

} // namespace

std::vector<AccessionSeason> seasonsOf(std::span<const VineReadings> vines,
                                       const StageQuestion& question) {
    return collected(vines,
                     [&](const std::vector<StageReading>& readings, int year, Organs organs) {
                         return onsetOf(readings, question, year, organs);
                     });
}

std::vector<AccessionSeason> lengthsOf(std::span<const VineReadings> vines,
                                       const StageQuestion& first,
                                       const StageQuestion& second) {
    return collected(vines,
                     [&](const std::vector<StageReading>& readings, int year, Organs organs) {
                         VineOnset begin = onsetOf(readings, first, year, organs);
                         const VineOnset end = onsetOf(readings, second, year, organs);
                         begin.days = lengthBetween(begin.days, end.days);
                         begin.divided += end.divided;
                         begin.runsBack = begin.runsBack || end.runsBack;
                         return begin;
                     });
}

} // namespace bullace::season
