// How long juice holds its colour: absorbance over days of storage as decay of the first order, its
// half-life, and accessions compared.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"

#include <compare>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::fruit {

// How a reading was taken. Readings that differ in any of these are never put together.
struct ReadingConditions {
    double nm = 520; // 520 for red, 420 for brown
    double dilution = 1;
    double pathMm = 10;
    std::optional<double> ph{};
    std::optional<double> storageC{};

    friend auto operator<=>(const ReadingConditions&, const ReadingConditions&) = default;
};
struct AbsorbanceReading {
    std::string accession;
    ReadingConditions conditions;
    double day = 0; // of storage
    double absorbance = 0;
};

// ln A = ln A0 - k·day by least squares: right where errors are in proportion to the absorbance.
struct ColourDecay {
    std::string accession;
    ReadingConditions conditions;
    std::size_t readings = 0; // used
    std::size_t leftOut = 0;  // absorbance not above 0
    double firstDay = 0;
    double lastDay = 0;
    std::optional<statistics::Estimate> start{};  // A0
    std::optional<statistics::Estimate> perDay{}; // k; limits of Student's t with n - 2
    std::optional<double> residualSd{};           // of ln A
    // ln 2 / k with the limits of k turned over; above 0 always. Absent unless k's limits lie above
    // 0: then no decay could be shown.
    std::optional<statistics::Estimate> halfLifeDays{};
    Remarks remarks;
};
struct DecayDifference {
    std::string one;
    std::string other;
    ReadingConditions conditions;
    statistics::Estimate perDay; // k of the one minus of the other, limits of this one alone
    double p = 1;                // Welch's approximation of degrees of freedom
    double pHolm = 1;            // with regard to all differences at these conditions
};
struct ColourComparison {
    std::vector<ColourDecay> decays; // by accession, then by conditions
    std::vector<DecayDifference> differences;
    Remarks remarks;
};

// Readings in any order. Errors: InvalidInput naming the reading, from 1: a number that is not
// finite, a day below 0, a dilution or path not above 0.
// Source  first order: common practice for anthocyanins in storage; Welch 1947, Biometrika
// 34:28-35.
[[nodiscard]] Result<ColourComparison> colourDecay(std::span<const AbsorbanceReading> readings);

} // namespace bullace::fruit
