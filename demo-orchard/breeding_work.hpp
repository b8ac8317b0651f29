// The parts of the breeding journal: the replicated trial of two generations of selections, and the
// crosses of earlier years with their seeds and seedlings.
#pragma once

#include "demo/breeding_truth.hpp"
#include "demo/orchard.hpp"
#include "demo/pen.hpp"

#include <cstdint>

namespace bullace::demo {

inline constexpr const char* kTrialBlock = "T1";
inline constexpr unsigned kTrialRows = 8;
inline constexpr unsigned kTrialPlaces = 30; // in a row; two rows are one replicate
inline constexpr unsigned kSeedlingRow = 9;
inline constexpr unsigned kSeedlingPlaces = 32;

// Sixty selections of two generations after eight cultivars, one of them inbred, with what they
// pass on.
void breedSelections(Dice& dice, const Orchard& orchard, BreedingTruth& truth);
// The office's cards of them, the block, and its plantings.
void writeTrialPlan(Pen& pen, const BreedingTruth& truth);
// Yield and sugar of every vine in three seasons.
void writeTrialRecords(Dice& dice, Pen& pen, BreedingTruth& truth);
// Crosses of 2022 to 2024 from bag to seedling.
void writeCrossBook(Dice& dice, const Orchard& orchard, Pen& pen, BreedingTruth& truth);

// All of them, from dice of their own that the seed gives.
void writeBreeding(std::uint64_t seed, const Orchard& orchard, Pen& pen, BreedingTruth& truth);

} // namespace bullace::demo
