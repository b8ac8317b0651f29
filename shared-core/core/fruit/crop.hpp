// What a vine bore in a season, and what a block is going to bear.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::fruit {

// One pick of a vine: what all buckets of that day weighed, or why nothing was noted.
struct Pick {
    CivilDate day;
    std::optional<double> kg;
    std::string none; // the reason, where there is no weight: "no-crop", "walked-past" …
};

struct SeasonYield {
    double kg = 0;
    std::size_t picks = 0; // with a weight
    std::size_t missed = 0;
    std::optional<CivilDate> first; // of the picks with a weight
    std::optional<CivilDate> last;
    bool isComplete = true; // no pick was missed
    Remarks remarks;
};

// The sum of the picks. "no-crop", "no-vine" and "dead" count as nothing borne; any other reason is
// a missed pick, and the season is then incomplete: the sum is less than the vine bore.
[[nodiscard]] SeasonYield seasonYield(std::span<const Pick> picks);

// Vines for each hectare, or acre, at a spacing: area / (between rows · in the row), the three in
// units that fit: 10,000 with metres, 43,560 with feet. Spacings above 0.
inline constexpr double kSquareMetresOfHectare = 10'000;
inline constexpr double kSquareFeetOfAcre = 43'560;
[[nodiscard]] double vinesPerArea(double area, double betweenRows, double inTheRow);

// What final weight is to a weight in the lag phase, from vines that were weighed at both times.
struct LagPhaseRecord {
    double lagWeight = 0;   // g, in the lag phase
    double finalWeight = 0; // g, of the same vine and season at harvest
};
struct LagPhaseFactor {
    std::optional<statistics::Estimate> factor; // geometric mean of the ratios, Student's t in logs
    std::size_t records = 0;
    Remarks remarks;
};
// At least three records with weights above 0; others are left out and counted in a remark.
[[nodiscard]] LagPhaseFactor lagPhaseFactor(std::span<const LagPhaseRecord> records);

// The factors that a crop is multiplied from. A factor without a standard error is taken as known.
struct CropFactors {
    statistics::Estimate bearingVines;
    statistics::Estimate clustersPerVine;
    statistics::Estimate berriesPerCluster;
    statistics::Estimate berryGrams; // when weighed
    std::optional<statistics::Estimate> lagPhase;
};
struct CropEstimate {
    std::optional<statistics::Estimate> kg;
    // How much of the error (of its square) each factor brings: vines, clusters, berries, weight,
    // lag phase; adds up to 1 where there is any.
    std::vector<double> shares;
    Remarks remarks;
};

// The product in kg, its interval by the errors of the factors' logarithms, which are taken as
// independent (delta method; Goodman 1960, J. Am. Stat. Assoc. 55:708-713). Nothing where a factor
// is not above 0.
[[nodiscard]] CropEstimate cropEstimate(const CropFactors& factors);

} // namespace bullace::fruit
