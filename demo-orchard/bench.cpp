// The bench's journal as a whole, and its small parts.
#include "demo/bench_work.hpp"
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"

#include <array>

namespace bullace::demo {

namespace {

constexpr std::size_t kThird = 2; // of the seasons
constexpr std::size_t kLeftOfEach = 3;
constexpr std::size_t kSpecies = 3;
constexpr int kOfMuscadines = 40;
constexpr int kOfHybrid = 39; // 20 of a muscadine and 19 of a bunch grape

void noteChromosomes(Pen& bench, const Vine& vine, int number) {
    bench.observe(observation(vine.position, day(2025, 1, 26), "chromosomes"),
                  journal::integerValue(number));
}

} // namespace

std::vector<const Vine*> standingVines(const Orchard& orchard, std::size_t accession) {
    std::vector<const Vine*> vines;
    for (const Vine& vine : orchard.vines) {
        const VineSeason& season = vine.seasons[kThird];
        if (season.accession == accession && season.stands && vine.plantings.size() == 1 &&
            !vine.plantings.front().until) {
            vines.push_back(&vine);
        }
    }
    return vines;
}

void writeChromosomes(const Orchard& orchard, Pen& bench, BenchTruth& truth) {
    bench.begin(kHesper, day(2025, 1, 26), 15, 0, 240);
    std::array<int, kSpecies> counted{};
    for (std::size_t i = 0; i < orchard.collection.size(); ++i) {
        const Accession& accession = orchard.collection[i];
        const auto vines = standingVines(orchard, i);
        for (std::size_t species = 0; species < kSpecies && !vines.empty(); ++species) {
            if (accession.status == Status::Wild && accession.isOf(species) &&
                counted[species]++ < 2) {
                noteChromosomes(bench, *vines.front(), kOfMuscadines);
            }
        }
    }
    // One seedling came of foreign pollen: the one with the fewest clusters.
    const Vine* hybrid = nullptr;
    for (const Vine* const vine : orchard.row("B2", 0)) {
        const VineSeason& season = vine->seasons[kThird];
        if (season.stands && season.bears && vine->plantings.size() == 1 &&
            (hybrid == nullptr || season.clusters < hybrid->seasons[kThird].clusters)) {
            hybrid = vine;
        }
    }
    if (hybrid != nullptr) {
        noteChromosomes(bench, *hybrid, kOfHybrid);
        truth.hybrid = hybrid->position;
    }
}

void writeBench(std::uint64_t seed, const Orchard& orchard, Pen& bench, BenchTruth& truth) {
    // Dice for each part; makeStation() takes the three before.
    Dice ofWeather(seed + 3);
    Dice ofCold(seed + 4);
    Dice ofJuice(seed + 5);
    Dice ofGrowth(seed + 6);
    const auto days = makeFieldWeather(ofWeather, orchard, truth);
    writeColdTests(ofCold, orchard, bench, truth);
    writeCordons(ofGrowth, orchard, bench, truth);
    writeChromosomes(orchard, bench, truth);
    writeJuice(ofJuice, orchard, bench, truth);
    writeGrowth(ofGrowth, orchard, bench, truth);
    writeFieldWeather(days, bench, truth);
}

void writeVerified(const Orchard& orchard, Pen& office, BenchTruth& truth) {
    office.begin(kHesper, day(2025, 5, 6), 9, 0, 5);
    std::array<std::size_t, kSpecies> left{};
    for (std::size_t i = 0; i < orchard.collection.size(); ++i) {
        const Accession& accession = orchard.collection[i];
        bool isVerified = accession.status == Status::Cultivar;
        for (std::size_t species = 0; species < kSpecies; ++species) {
            if (accession.status == Status::Wild && accession.isOf(species)) {
                isVerified = left[species]++ >= kLeftOfEach;
            }
        }
        if (isVerified) {
            office.catalog("accession/" + accession.id + "/verified", journal::booleanValue(true));
        } else if (accession.status == Status::Wild) {
            truth.unverified.push_back(i);
        }
    }
}

} // namespace bullace::demo
