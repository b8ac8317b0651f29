// The demo station's four blocks, what stood where, and what each vine really did in each season.
#pragma once

#include "demo/collection.hpp"
#include "demo/dice.hpp"

#include "core/base/civil_date.hpp"
#include "core/vineyard/block.hpp"
#include "core/vineyard/plantings.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::demo {

inline constexpr std::array<int, 3> kYears{2023, 2024, 2025};

// The truth of one vine in one season, which nobody at the station can see.
struct VineSeason {
    bool stands = false; // in summer
    bool dies = false;   // in the winter before; found dead on the first walk
    bool bears = false;  // old enough, and not male
    std::size_t accession = 0;
    int clusters = 0;
    double berriesPerCluster = 0;
    double diameterMm = 0;
    double brix = 0;
    double pruningKg = 0;
    int vigour = 5;
    int flavour = 5;
    int deadSpurs = 0;   // percent
    int budBreakDay = 0; // of the year
    int bloomDay = 0;
    int ripeDay = 0;
};

struct Vine {
    std::string position;
    std::size_t block = 0;
    unsigned row = 0;
    std::vector<vineyard::Planting> plantings;
    std::array<VineSeason, kYears.size()> seasons;
};

struct Orchard {
    std::vector<Accession> collection;
    std::vector<vineyard::Block> blocks;
    std::vector<Vine> vines; // along the rows, empty places among them

    // The vines of one row, in order; of all rows where `row` is 0.
    [[nodiscard]] std::vector<const Vine*> row(std::string_view block, unsigned row) const;
};

[[nodiscard]] Orchard makeOrchard(Dice& dice);

[[nodiscard]] int dayOfYear(CivilDate date);

// What a vine looks like on a day.
[[nodiscard]] std::int64_t stageOn(const VineSeason& vine, int day);
[[nodiscard]] int capsOffOn(const VineSeason& vine, int day); // percent
[[nodiscard]] int ripeOn(const VineSeason& vine, int day);    // percent

} // namespace bullace::demo
