#include "core/season/comparison.hpp"

#include "core/statistics/adjust.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace bullace::season {

using statistics::Estimate;
using statistics::Interval;

namespace {

constexpr int kMostRounds = 10'000;
constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();

// A vine's value in a season; of the accessions that are compared.
struct VineSeason {
    std::uint32_t vine = 0;
    std::size_t accession = 0; // place among those compared, the reference last
    std::size_t season = 0;    // place in ascending order
    double value = 0;
    std::size_t values = 0;
};

// First day of each year from the first that is met on: a million days are sorted into them.
class Years {
public:
    explicit Years(const std::vector<NumberNote>& notes) {
        const auto [least, greatest] = std::ranges::minmax(notes, {}, &NumberNote::day);
        const int first = static_cast<int>(dateOfDay(least.day).year());
        const int last = static_cast<int>(dateOfDay(greatest.day).year());
        for (int year = first; year <= last + 1; ++year) {
            starts_.push_back(dayOfDate(std::chrono::year(year) / 1 / 1));
        }
    }
    [[nodiscard]] std::size_t count() const { return starts_.size() - 1; }
    [[nodiscard]] std::size_t of(std::int32_t day) const {
        return static_cast<std::size_t>(std::ranges::upper_bound(starts_, day) - starts_.begin()) -
               1;
    }

private:
    std::vector<std::int32_t> starts_;
};

std::vector<VineSeason> vineSeasons(const StationNotes& notes,
                                    const std::vector<NumberNote>& numbers,
                                    const std::vector<std::size_t>& placeOf,
                                    SeasonValue value) {
    const Years years(numbers);
    std::vector<VineSeason> table(notes.vines.size() * years.count());
    for (const NumberNote& note : numbers) {
        const std::size_t accession = placeOf[notes.vines[note.vine].accession];
        if (accession == kNone) {
            continue;
        }
        const std::size_t season = years.of(note.day);
        VineSeason& cell = table[note.vine * years.count() + season];
        cell = {note.vine, accession, season, cell.value + note.value, cell.values + 1};
    }
    std::erase_if(table, [](const VineSeason& cell) { return cell.values == 0; });
    if (value == SeasonValue::Mean) {
        for (VineSeason& cell : table) {
            cell.value /= static_cast<double>(cell.values);
        }
    }
    return table;
}

// Effects of accessions and seasons by least squares, each in turn until they rest (backfitting;
// the design is what it is, so that no matrix has to be full of rank).
struct Effects {
    std::vector<double> seasons;
    std::vector<std::size_t> group; // of accessions: which of them can be compared
};

struct CellSums {
    std::vector<double> sum; // accession by accession
    std::vector<double> n;
};

CellSums
cellSums(const std::vector<VineSeason>& table, std::size_t accessions, std::size_t seasons) {
    CellSums cells{std::vector<double>(accessions * seasons, 0.0),
                   std::vector<double>(accessions * seasons, 0.0)};
    for (const VineSeason& one : table) {
        cells.sum[one.accession * seasons + one.season] += one.value;
        cells.n[one.accession * seasons + one.season] += 1;
    }
    return cells;
}

// Accessions that are joined by seasons in which both were noted, directly or through others.
std::vector<std::size_t>
groupsOf(const CellSums& cells, std::size_t accessions, std::size_t seasons) {
    std::vector<std::size_t> group(accessions + seasons);
    std::iota(group.begin(), group.end(), std::size_t{0});
    const auto root = [&group](std::size_t of) {
        while (group[of] != of) {
            of = group[of] = group[group[of]];
        }
        return of;
    };
    for (std::size_t i = 0; i < accessions; ++i) {
        for (std::size_t j = 0; j < seasons; ++j) {
            if (cells.n[i * seasons + j] > 0) {
                group[root(i)] = root(accessions + j);
            }
        }
    }
    std::vector<std::size_t> of(accessions);
    for (std::size_t i = 0; i < accessions; ++i) {
        of[i] = root(i);
    }
    return of;
}

Effects
effectsOf(const std::vector<VineSeason>& table, std::size_t accessions, std::size_t seasons) {
    const CellSums cells = cellSums(table, accessions, seasons);
    Effects effects{std::vector<double>(seasons, 0.0), groupsOf(cells, accessions, seasons)};
    std::vector<double> means(accessions, 0.0);
    for (int round = 0; round < kMostRounds; ++round) {
        for (std::size_t i = 0; i < accessions; ++i) {
            double sum = 0;
            double n = 0;
            for (std::size_t j = 0; j < seasons; ++j) {
                sum += cells.sum[i * seasons + j] - cells.n[i * seasons + j] * effects.seasons[j];
                n += cells.n[i * seasons + j];
            }
            means[i] = n > 0 ? sum / n : 0;
        }
        double moved = 0;
        double scale = 0;
        for (std::size_t j = 0; j < seasons; ++j) {
            double sum = 0;
            double n = 0;
            for (std::size_t i = 0; i < accessions; ++i) {
                sum += cells.sum[i * seasons + j] - cells.n[i * seasons + j] * means[i];
                n += cells.n[i * seasons + j];
            }
            const double next = n > 0 ? sum / n : 0;
            moved = std::max(moved, std::abs(next - effects.seasons[j]));
            scale = std::max(scale, std::abs(next));
            effects.seasons[j] = next;
        }
        if (moved <= 1e-10 * (scale + 1e-300)) {
            break;
        }
    }
    // The seasons' mean is none of theirs.
    std::vector<std::size_t> noted;
    double mean = 0;
    for (std::size_t j = 0; j < seasons; ++j) {
        for (std::size_t i = 0; i < accessions; ++i) {
            if (cells.n[i * seasons + j] > 0) {
                noted.push_back(j);
                mean += effects.seasons[j];
                break;
            }
        }
    }
    for (const std::size_t j : noted) {
        effects.seasons[j] -= mean / static_cast<double>(noted.size());
    }
    return effects;
}

struct Column {
    std::size_t vines = 0;
    std::size_t values = 0;
    std::vector<bool> seasons;
    double mean = 0;
    double squares = 0;
};

// Vines' means about their accession's; `table` stands vine by vine.
std::vector<Column>
columnsOf(const std::vector<VineSeason>& table, const Effects& effects, std::size_t accessions) {
    std::vector<Column> columns(accessions);
    for (Column& column : columns) {
        column.seasons.assign(effects.seasons.size(), false);
    }
    for (std::size_t at = 0; at < table.size();) {
        double sum = 0;
        double n = 0;
        Column& column = columns[table[at].accession];
        for (const std::uint32_t vine = table[at].vine; at < table.size() && table[at].vine == vine;
             ++at) {
            sum += table[at].value - effects.seasons[table[at].season];
            n += 1;
            column.values += table[at].values;
            column.seasons[table[at].season] = true;
        }
        // Welford 1962, Technometrics 4:419-420.
        const double before = sum / n - column.mean;
        column.mean += before / static_cast<double>(++column.vines);
        column.squares += before * (sum / n - column.mean);
    }
    return columns;
}

struct Pooled {
    double variance = 0;
    double freedom = 0;
};

Pooled pooledOf(const std::vector<Column>& columns) {
    Pooled pooled;
    for (const Column& column : columns) {
        pooled.variance += column.squares;
        pooled.freedom += column.vines > 0 ? static_cast<double>(column.vines) - 1 : 0;
    }
    pooled.variance = pooled.freedom > 0 ? pooled.variance / pooled.freedom : 0;
    return pooled;
}

ComparedCell cellOf(const Column& column, const Pooled& pooled) {
    ComparedCell cell;
    cell.vines = column.vines;
    cell.values = column.values;
    cell.seasons = static_cast<std::size_t>(std::ranges::count(column.seasons, true));
    if (column.vines == 0) {
        return cell;
    }
    cell.mean = Estimate{column.mean, {}, {}};
    if (pooled.freedom > 0) {
        cell.mean = statistics::estimateAround(
            column.mean,
            std::sqrt(pooled.variance / static_cast<double>(column.vines)),
            statistics::studentTQuantile(0.975, pooled.freedom));
    }
    return cell;
}

void addDifference(const Column& column,
                   const Column& reference,
                   const Pooled& pooled,
                   ComparedCell& cell) {
    const double difference = column.mean - reference.mean;
    if (!(pooled.freedom > 0)) {
        cell.difference = Estimate{difference, {}, {}};
        return;
    }
    const double error = std::sqrt(pooled.variance * (1 / static_cast<double>(column.vines) +
                                                      1 / static_cast<double>(reference.vines)));
    cell.difference = statistics::estimateAround(
        difference, error, statistics::studentTQuantile(0.975, pooled.freedom));
    if (error > 0) {
        cell.p = statistics::studentTBothTails(difference / error, pooled.freedom);
    }
}

} // namespace

ComparedItem compareNumbers(const StationNotes& notes,
                            std::string_view descriptor,
                            std::span<const std::size_t> accessions,
                            std::size_t reference,
                            SeasonValue value) {
    ComparedItem item{std::string(descriptor), std::vector<ComparedCell>(accessions.size()), {}};
    const std::vector<NumberNote>& numbers = notes.notesOf(descriptor).numbers;
    if (numbers.empty() || accessions.empty()) {
        return item;
    }
    std::vector<std::size_t> placeOf(notes.accessions.size(), kNone);
    std::vector<std::size_t> compared(accessions.begin(), accessions.end());
    if (std::ranges::find(compared, reference) == compared.end()) {
        compared.push_back(reference);
    }
    for (std::size_t i = 0; i < compared.size(); ++i) {
        placeOf[compared[i]] = i;
    }
    const std::vector<VineSeason> table = vineSeasons(notes, numbers, placeOf, value);
    if (table.empty()) {
        return item;
    }
    const std::size_t seasons = Years(numbers).count();
    const Effects effects = effectsOf(table, compared.size(), seasons);
    const std::vector<Column> columns = columnsOf(table, effects, compared.size());
    const Pooled pooled = pooledOf(columns);
    const std::size_t referencePlace = placeOf[reference];
    std::int64_t apart = 0;
    for (std::size_t i = 0; i < accessions.size(); ++i) {
        item.cells[i] = cellOf(columns[i], pooled);
        if (i == referencePlace || columns[i].vines == 0 || columns[referencePlace].vines == 0) {
            continue;
        }
        if (effects.group[i] == effects.group[referencePlace]) {
            addDifference(columns[i], columns[referencePlace], pooled, item.cells[i]);
        } else {
            ++apart;
        }
    }
    if (apart > 0) {
        item.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                 "%1: accessions that share no season with the "
                                                 "reference, and are not compared with it: %2."),
                                {item.key, apart}});
    }
    if (!(pooled.freedom > 0)) {
        item.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                 "%1: no accession has two vines, so that nothing "
                                                 "tells how precise the means are."),
                                {item.key}});
    }
    return item;
}

void adjustForAll(std::vector<ComparedItem>& items) {
    std::vector<ComparedCell*> cells;
    std::vector<double> ps;
    for (ComparedItem& item : items) {
        for (ComparedCell& cell : item.cells) {
            if (cell.p) {
                cells.push_back(&cell);
                ps.push_back(*cell.p);
            }
        }
    }
    const std::vector<double> adjusted = statistics::holm(ps);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        cells[i]->pAdjusted = adjusted[i];
    }
}

} // namespace bullace::season
