#include "demo/orchard.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <utility>

namespace bullace::demo {

namespace {

struct BlockPlan {
    const char* code;
    const char* name;
    unsigned rows;
    unsigned vines;
    unsigned plot; // neighbours of one accession
    std::size_t firstAccession;
    std::size_t accessions;
};
// Indices of the collection: wild 0-20, cultivars 21-34, selections 35-44, seedlings 45-59.
constexpr std::array<BlockPlan, 4> kBlocks{{{"B1", "Cultivar wires", 6, 30, 6, 21, 14},
                                            {"B2", "Seedling slope", 8, 24, 3, 45, 15},
                                            {"B3", "Selection trial", 10, 20, 4, 31, 14},
                                            {"N1", "Wild collection", 8, 16, 4, 0, 21}}};

constexpr double kMissing = 0.05;
constexpr double kWinterDeath = 0.025;
constexpr double kReplanted = 0.6;

CivilDate date(int year, unsigned month, unsigned day) {
    return std::chrono::year(year) / std::chrono::month(month) / std::chrono::day(day);
}

// Plots follow one another by a stride that meets every accession, so that neighbours differ.
std::size_t accessionAt(const BlockPlan& plan, std::size_t plot) {
    std::size_t stride = plan.accessions == 15 ? 4 : 5;
    return plan.firstAccession + plot * stride % plan.accessions;
}

void plant(Dice& dice, const std::string& accession, Vine& vine) {
    vine.plantings.push_back({vine.position, date(2014 + dice.between(0, 4), 3, 1), accession, {}});
    for (int year : {2024, 2025}) {
        if (!dice.chance(kWinterDeath)) {
            continue;
        }
        vine.plantings.back().until = date(year, 3, 31);
        if (dice.chance(kReplanted)) {
            vine.plantings.push_back({vine.position, date(year, 4, 20), accession, {}});
        }
        return;
    }
}

int whole(double value, int least, int greatest) {
    return std::clamp(static_cast<int>(std::nearbyint(value)), least, greatest);
}

// The vine's lasting difference from its accession, drawn once.
struct Site {
    double vigour = 1;
    int days = 0;
};

VineSeason grow(Dice& dice, const Accession& accession, const Site& site, std::size_t season) {
    static constexpr std::array<int, 3> kEarly{0, -4, 3}; // days, of the whole season
    static constexpr std::array<double, 3> kCrop{1.0, 0.92, 1.06};
    const Nature& nature = accession.nature;
    VineSeason vine;
    vine.clusters =
        whole(nature.clusters * site.vigour * kCrop[season] * dice.normal(1, 0.08), 12, 600);
    vine.berriesPerCluster = std::max(1.5, nature.berriesPerCluster * dice.normal(1, 0.05));
    vine.diameterMm = nature.diameterMm * dice.normal(1, 0.015);
    vine.brix = std::clamp(dice.normal(nature.brix, 0.5), 11.0, 24.0);
    vine.pruningKg = std::max(0.3, nature.pruningKg * site.vigour * dice.normal(1, 0.1));
    vine.vigour = whole(5 * site.vigour + dice.normal(0, 0.5), 1, 9);
    vine.flavour = whole(nature.flavour + dice.normal(0, 0.4), 1, 9);
    vine.deadSpurs = whole(dice.normal(8, 6) + (accession.shares[2] > 0 ? 12 : 0), 0, 90);
    const int shift = kEarly[season] + site.days;
    vine.budBreakDay = nature.budBreakDay + shift + dice.between(-1, 1);
    vine.bloomDay = nature.bloomDay + shift + dice.between(-1, 1);
    vine.ripeDay = nature.ripeDay + shift + dice.between(-2, 2);
    return vine;
}

void growAll(Dice& dice, const std::vector<Accession>& collection, std::size_t index, Vine& vine) {
    const Site site{std::clamp(dice.normal(1, 0.12), 0.6, 1.4), dice.between(-2, 2)};
    const vineyard::Plantings plantings(vine.plantings);
    for (std::size_t season = 0; season < kYears.size(); ++season) {
        VineSeason grown = grow(dice, collection[index], site, season);
        const auto* const standing = plantings.at(vine.position, date(kYears[season], 3, 20));
        const auto* const summer = plantings.at(vine.position, date(kYears[season], 6, 15));
        grown.accession = index;
        grown.stands = summer != nullptr;
        grown.dies = standing != nullptr && summer != standing;
        const bool isGrown = summer != nullptr && summer->from < date(kYears[season] - 2, 12, 31);
        grown.bears = isGrown && !collection[index].isMale();
        vine.seasons[season] = grown;
    }
}

// Days from the anchor to each stage, latest first within an anchor.
struct StageDay {
    int days;
    std::int64_t code;
};
constexpr std::array<StageDay, 6> kFromRipe{
    {{30, 92}, {18, 91}, {0, 89}, {-10, 85}, {-20, 83}, {-30, 81}}};
constexpr std::array<StageDay, 18> kFromBloom{{{55, 79},
                                               {40, 77},
                                               {28, 75},
                                               {18, 73},
                                               {10, 71},
                                               {6, 69},
                                               {3, 68},
                                               {2, 67},
                                               {1, 66},
                                               {0, 65},
                                               {-1, 64},
                                               {-2, 63},
                                               {-3, 62},
                                               {-4, 61},
                                               {-5, 60},
                                               {-8, 57},
                                               {-15, 55},
                                               {-22, 53}}};
constexpr std::array<StageDay, 14> kFromBudBreak{{{28, 19},
                                                  {24, 18},
                                                  {21, 17},
                                                  {18, 16},
                                                  {15, 15},
                                                  {12, 14},
                                                  {9, 13},
                                                  {6, 12},
                                                  {3, 11},
                                                  {0, 9},
                                                  {-1, 7},
                                                  {-3, 5},
                                                  {-6, 3},
                                                  {-10, 1}}};

template<std::size_t N>
std::optional<std::int64_t> reached(const std::array<StageDay, N>& stages, int days) {
    for (const StageDay& stage : stages) {
        if (days >= stage.days) {
            return stage.code;
        }
    }
    return std::nullopt;
}

} // namespace

std::vector<const Vine*> Orchard::row(std::string_view block, unsigned row) const {
    std::vector<const Vine*> found;
    for (const Vine& vine : vines) {
        if (blocks[vine.block].code == block && (row == 0 || vine.row == row)) {
            found.push_back(&vine);
        }
    }
    return found;
}

Orchard makeOrchard(Dice& dice) {
    Orchard orchard;
    orchard.collection = makeCollection(dice);
    for (std::size_t b = 0; b < kBlocks.size(); ++b) {
        const BlockPlan& plan = kBlocks[b];
        vineyard::Block& block = orchard.blocks.emplace_back();
        block.code = plan.code;
        block.name = plan.name;
        for (unsigned row = 1; row <= plan.rows; ++row) {
            block.rows.push_back({row, plan.vines});
        }
        std::size_t place = 0;
        for (const std::string& position : vineyard::positionsOf(block)) {
            Vine& vine = orchard.vines.emplace_back();
            vine.position = position;
            vine.block = b;
            vine.row = static_cast<unsigned>(place / plan.vines) + 1;
            const std::size_t accession = accessionAt(plan, place++ / plan.plot);
            if (!dice.chance(kMissing)) {
                plant(dice, orchard.collection[accession].id, vine);
            }
            growAll(dice, orchard.collection, accession, vine);
        }
    }
    return orchard;
}

int dayOfYear(CivilDate date) {
    return daysBetween(date.year() / std::chrono::January / 1, date) + 1;
}

std::int64_t stageOn(const VineSeason& vine, int day) {
    if (const auto ripening = reached(kFromRipe, day - vine.ripeDay)) {
        return *ripening;
    }
    if (const auto bloom = reached(kFromBloom, day - vine.bloomDay)) {
        return *bloom;
    }
    return reached(kFromBudBreak, day - vine.budBreakDay).value_or(0);
}

int capsOffOn(const VineSeason& vine, int day) {
    return std::clamp((day - vine.bloomDay) * 10 + 50, 0, 100);
}

int ripeOn(const VineSeason& vine, int day) {
    return std::clamp((day - vine.ripeDay) * 4 + 50, 0, 100);
}

} // namespace bullace::demo
