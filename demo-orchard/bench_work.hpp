// The parts from which the bench's journal is put together: a second desk of the office, in the
// laboratory, where freezing tests, juice, tagged shoots and the weather are typed in.
#pragma once

#include "demo/bench_truth.hpp"
#include "demo/orchard.hpp"
#include "demo/pen.hpp"

#include <cstdint>
#include <vector>

namespace bullace::demo {

struct WeatherDay {
    CivilDate date{};
    double mean = 0; // °C
    double range = 0;
    double rain = 0; // mm
    [[nodiscard]] double least() const { return rounded(mean - range / 2, 1); }
    [[nodiscard]] double greatest() const { return rounded(mean + range / 2, 1); }
};
// The weather of one site from 2021 on, also of days that are never written down. Springs are as
// warm as makes each season bloom when it did.
[[nodiscard]] std::vector<WeatherDay>
makeFieldWeather(Dice& dice, const Orchard& orchard, BenchTruth& truth);
void writeFieldWeather(const std::vector<WeatherDay>& days, Pen& bench, const BenchTruth& truth);

// Freezing tests of lots of buds in the winters of 2024 and 2025, and buds cut open after the
// hardest freeze of the last one, by the weather in the truth.
void writeColdTests(Dice& dice, const Orchard& orchard, Pen& bench, BenchTruth& truth);

// Juice pressed from the frozen berries of 2024: pigments, and absorbance in storage.
void writeJuice(Dice& dice, const Orchard& orchard, Pen& bench, BenchTruth& truth);

// The cordons of the vines whose prunings were weighed.
void writeCordons(Dice& dice, const Orchard& orchard, Pen& bench, BenchTruth& truth);

// Lengths and tips of tagged shoots in 2025.
void writeGrowth(Dice& dice, const Orchard& orchard, Pen& bench, BenchTruth& truth);

// Chromosomes of a few vines, one of them a hybrid with subgenus Vitis.
void writeChromosomes(const Orchard& orchard, Pen& bench, BenchTruth& truth);

// All of them, from dice of their own that the seed gives.
void writeBench(std::uint64_t seed, const Orchard& orchard, Pen& bench, BenchTruth& truth);

// Which accessions the office has verified: the cultivars, and the wild ones but for three of each
// species.
void writeVerified(const Orchard& orchard, Pen& office, BenchTruth& truth);

// Vines of an accession that bear in the third season, and stood throughout.
[[nodiscard]] std::vector<const Vine*> standingVines(const Orchard& orchard, std::size_t accession);

} // namespace bullace::demo
