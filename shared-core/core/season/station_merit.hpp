// What accessions are predicted to be like in one descriptor, from all of the station's notes of
// it, and what they are predicted to pass on.
#pragma once

#include "core/season/station_cross_plan.hpp"
#include "core/season/station_prediction.hpp"
#include "core/vineyard/block.hpp"

#include <span>
#include <string>
#include <vector>

namespace bullace::season {

// Descriptors with numbers of at least kLeastVines vines and of two accessions, in their order.
inline constexpr std::size_t kLeastVines = 8;
[[nodiscard]] std::vector<std::string> predictable(const StationNotes& notes);

// All accessions that the model predicts, and of how many records of each.
struct PredictedDescriptor {
    std::map<std::string, trials::Prediction, std::less<>> of; // by accession
    std::map<std::string, std::size_t, std::less<>> records;
    double variance = 0;    // of the accessions
    std::size_t rows = 0;   // vines and seasons
    std::size_t open = 0;   // conflicts left out
    std::size_t missed = 0; // "not observed" and the like
    Remarks remarks;
};
// By predictionModel() and fitMixed().
// Errors  theirs.
[[nodiscard]] Result<PredictedDescriptor> predictDescriptor(const StationNotes& notes,
                                                            std::span<const vineyard::Block> blocks,
                                                            const std::string& descriptor,
                                                            const PredictionWish& wish);

// Breeding values by predictDescriptor() with accessions related through the pedigree, also of
// those that were not noted themselves. Errors  those of the pedigree and of fitMixed().
[[nodiscard]] Result<StationMerits> meritsOf(const StationNotes& notes,
                                             std::span<const vineyard::Block> blocks,
                                             const std::string& descriptor);

} // namespace bullace::season
