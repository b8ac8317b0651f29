#include "core/season/comparison_further.hpp"

#include "core/season/stage_date.hpp"
#include "core/season/station_bench.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace bullace::season {

using statistics::Estimate;

namespace {

// That there is no difference, by the normal law; nothing without an error.
std::optional<double> pOf(const Estimate& difference) {
    if (!difference.standardError || !(*difference.standardError > 0)) {
        return std::nullopt;
    }
    const double z = std::abs(difference.value) / *difference.standardError;
    return 2 * statistics::normalBelow(-z);
}

ComparedItem emptyItem(std::string_view key, std::size_t accessions) {
    return {std::string(key), std::vector<ComparedCell>(accessions), {}};
}

using Onsets = std::map<std::string, std::vector<YearOnset>, std::less<>>;

Onsets onsetsOf(const StationNotes& notes, const AskedStage& stage) {
    Onsets onsets;
    for (const AccessionSeason& one : seasonsOf(readingsOf(notes, stage, 0), stage.question)) {
        addOnsets(one, onsets[one.accession]);
    }
    return onsets;
}

bool isBounded(const statistics::Interval& interval) {
    return std::isfinite(interval.low) && std::isfinite(interval.high);
}

// Where the vines' spread cannot be told: the middle of what the visits leave possible.
std::optional<Estimate> betweenVisits(std::span<const YearOnset> onsets) {
    const auto dating = stageDate(onsets);
    return dating && dating->date
               ? std::optional(statistics::estimateAround(
                     dating->date->mean, dating->date->standardError, statistics::kNormal95))
               : std::nullopt;
}

} // namespace

ComparedItem compareStage(const StationNotes& notes,
                          const AskedStage& stage,
                          std::span<const std::size_t> accessions,
                          std::size_t reference) {
    ComparedItem item = emptyItem(stage.key, accessions.size());
    const Onsets onsets = onsetsOf(notes, stage);
    const auto of = [&](std::size_t accession) {
        const auto found = onsets.find(notes.accessions[accession].id);
        return found == onsets.end() ? std::vector<YearOnset>{} : found->second;
    };
    const auto others = of(reference);
    for (std::size_t i = 0; i < accessions.size(); ++i) {
        const auto mine = of(accessions[i]);
        const auto mean = overYears(mine);
        if (mine.empty() || !mean) {
            continue;
        }
        ComparedCell& cell = item.cells[i];
        cell.vines = mean->counts.telling();
        cell.values = mine.size();
        cell.seasons = mean->years.size();
        cell.mean = mean->mean ? mean->mean : betweenVisits(mine);
        const auto difference = accessions[i] == reference
                                    ? Result<OnsetDifference>(OnsetDifference{})
                                    : differenceTo(mine, others);
        if (difference && difference->difference) {
            cell.difference = difference->difference;
            cell.p = pOf(*cell.difference);
        } else if (difference && difference->bounds) {
            const statistics::Interval& bounds = *difference->bounds;
            cell.difference =
                isBounded(bounds)
                    ? std::optional(Estimate{(bounds.low + bounds.high) / 2, {}, bounds})
                    : std::nullopt;
        }
    }
    return item;
}

ComparedItem compareCold(const StationNotes& notes,
                         std::span<const std::size_t> accessions,
                         std::size_t reference) {
    ComparedItem item = emptyItem("freeze-test", accessions.size());
    std::map<std::size_t, hardiness::FreezeGroup> groups;
    for (const FreezeTest& test : freezeTestsIn(notes)) {
        if (test.bud == "primary") {
            groups[test.accession].accession = notes.accessions[test.accession].id;
            groups[test.accession].rows.push_back(test.row);
        }
    }
    for (std::size_t i = 0; i < accessions.size(); ++i) {
        const auto mine = groups.find(accessions[i]);
        const auto curve = mine == groups.end()
                               ? Result<hardiness::KillCurve>(hardiness::KillCurve{})
                               : hardiness::killCurve(mine->second.rows, {});
        if (!curve || curve->counted == 0) {
            continue;
        }
        ComparedCell& cell = item.cells[i];
        cell.vines = static_cast<std::size_t>(curve->counted);
        cell.values = curve->rowsUsed;
        for (const hardiness::KillPoint& point : curve->points) {
            if (point.part == 0.5) {
                cell.mean = point.temperatureC;
            }
        }
        const auto other = groups.find(reference);
        if (accessions[i] == reference || other == groups.end()) {
            continue;
        }
        const hardiness::FreezeGroup both[] = {mine->second, other->second};
        const auto compared = hardiness::compareKill(both, hardiness::Link::Logit);
        if (compared && !compared->differences.empty()) {
            const auto& difference = compared->differences.front();
            cell.difference = difference.lt50C;
            if (difference.one != mine->second.accession) {
                cell.difference->value = -cell.difference->value;
                if (auto& limits = cell.difference->interval) {
                    limits = statistics::Interval{-limits->high, -limits->low};
                }
            }
            cell.p = difference.p;
        }
    }
    return item;
}

// The red colour; of an accession with readings of several conditions those of the most readings.
ComparedItem compareColour(const StationNotes& notes,
                           std::span<const std::size_t> accessions,
                           std::size_t reference) {
    ComparedItem item = emptyItem("absorbance", accessions.size());
    const auto compared = fruit::colourDecay(absorbanceIn(notes));
    if (!compared) {
        return item;
    }
    const auto best = [&](std::size_t accession) {
        const fruit::ColourDecay* found = nullptr;
        for (const fruit::ColourDecay& decay : compared->decays) {
            if (decay.accession == notes.accessions[accession].id && decay.conditions.nm == 520 &&
                (found == nullptr || decay.readings > found->readings)) {
                found = &decay;
            }
        }
        return found;
    };
    const fruit::ColourDecay* other = best(reference);
    for (std::size_t i = 0; i < accessions.size(); ++i) {
        const fruit::ColourDecay* mine = best(accessions[i]);
        if (mine == nullptr) {
            continue;
        }
        ComparedCell& cell = item.cells[i];
        cell.vines = mine->readings;
        cell.values = mine->readings;
        cell.mean = mine->halfLifeDays;
        if (other == nullptr || mine == other || !mine->halfLifeDays || !other->halfLifeDays) {
            continue;
        }
        cell.difference = Estimate{mine->halfLifeDays->value - other->halfLifeDays->value, {}, {}};
        for (const fruit::DecayDifference& difference : compared->differences) {
            const bool isOfBoth =
                difference.conditions == mine->conditions &&
                ((difference.one == mine->accession && difference.other == other->accession) ||
                 (difference.other == mine->accession && difference.one == other->accession));
            if (isOfBoth) {
                cell.p = difference.p;
            }
        }
    }
    return item;
}

} // namespace bullace::season
