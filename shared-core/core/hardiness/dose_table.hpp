// A table of doses, with how many were counted and how many of them had died at each; what can be
// told from it before any curve is drawn.
#pragma once

#include "core/base/result.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace bullace::hardiness {

struct DoseRow {
    double x = 0; // greater is harsher: degrees of frost (minus the temperature in °C), or log dose
    std::int64_t counted = 0;
    std::int64_t dead = 0;
};

inline constexpr std::int64_t kMostCounted = 1'000'000'000; // in one row
inline constexpr double kGreatestDose = 1e9;                // on either side of 0

// Nothing wrong, or InvalidInput that names the first wrong row, from 1: a number that is not
// finite or beyond ±kGreatestDose, a count below 0 or above kMostCounted, more dead than counted.
[[nodiscard]] Status checkDoses(std::span<const DoseRow> rows);

// All rows of one dose together, ascending; rows with nothing counted are left out.
[[nodiscard]] std::vector<DoseRow> pooledDoses(std::span<const DoseRow> rows);

// What the table lets be estimated. With `hi` the greatest dose that anything survived and `lo` the
// least at which anything died: below each other the likelihood grows for ever with the slope
// (Albert & Anderson 1984, Biometrika 71:1-10).
enum class Overlap {
    Nothing, // nothing was counted
    NoneDead,
    AllDead,
    OneDose,            // some died and some did not, at one dose alone
    Separated,          // hi < lo: all survived up to one dose, none from the next one on
    QuasiSeparated,     // hi = lo: one dose alone has dead and living
    ReversedSeparation, // the milder doses killed and the harsher did not
    Overlapping,        // a curve has a finite slope
};
// `pooled` as pooledDoses() gives it.
[[nodiscard]] Overlap overlapOf(std::span<const DoseRow> pooled);

// The greatest log-likelihood that any curve of the shapes in link.hpp comes near to, where it has
// no finite slope: each pooled dose at its own share of dead. With the binomial coefficients of
// `rows`, which may have a dose in several rows.
[[nodiscard]] double supremumLogLikelihood(std::span<const DoseRow> rows);

} // namespace bullace::hardiness
