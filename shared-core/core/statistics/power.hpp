// How many vines, pairs or blocks a planned comparison takes. All return nothing where an argument
// is out of its range, or where a million would not do.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace bullace::statistics {

// Of a planned comparison; probabilities strictly between 0 and 1, power above alpha.
struct PlannedTest {
    double power = 0.9;
    double alpha = 0.05; // two-sided
};

// Of a number that is found by trying whole numbers, with what the last one gives and what one less
// would.
struct Planned {
    std::size_t n = 0;
    double achieved = 0;
    double withOneLess = 0;
};

// Vines in each of two groups to find a difference of `delta` with standard deviation `sd` (both
// above 0) by Student's t: the exact number, to be rounded up, and with it. The tail beyond the
// other side is not counted. Source  noncentral t; Owen 1965, Biometrika 52:437-446.
struct TwoGroups {
    double exact = 0;
    std::size_t each = 0;
    double power = 0; // at `each`
};
[[nodiscard]] std::optional<TwoGroups>
vinesForDifference(double delta, double sd, const PlannedTest& test);

// Vines for a mean whose interval by Student's t is no wider than ±`half`; achieved is the half
// width that so many give.
[[nodiscard]] std::optional<Planned> vinesForMean(double sd, double half, double alpha);
// The same by the normal distribution, which is too few.
[[nodiscard]] std::optional<std::size_t> vinesForMeanNormal(double sd, double half, double alpha);

// Pairs to find a correlation `rho` (between -1 and 1, not 0) by Fisher's z.
[[nodiscard]] std::optional<double> pairsForCorrelation(double rho, const PlannedTest& test);

// Complete blocks for the F test of `entries` (from 2) whose effects have the variance `between`
// (Σ τ²/(entries - 1)), with the error variance `error`; both above 0. achieved is the power.
[[nodiscard]] std::optional<Planned>
blocksForTrial(std::size_t entries, double between, double error, const PlannedTest& test);

// Complete blocks with which the least significant difference of two of `entries` is no more than
// `wanted`; achieved is that difference.
[[nodiscard]] std::optional<Planned>
blocksForDifference(std::size_t entries, double error, double wanted, double alpha);

// Plots of a survey by strata (areas with their CV in percent): the weighted CV, and the plots for
// a wanted error in percent at a given t, of a population of `population` plots or an endless one,
// spread by area and CV (Neyman).
struct Stratum {
    double area = 0;
    double cvPercent = 0;
};
struct StratifiedPlan {
    double cvPercent = 0;
    double exact = 0;
    std::size_t plots = 0;
};
// Source  USDA Forest Service Handbook 2409.12 (2000).
[[nodiscard]] std::optional<StratifiedPlan> plotsOfStrata(std::span<const Stratum> strata,
                                                          double errorPercent,
                                                          double t,
                                                          std::optional<double> population = {});

} // namespace bullace::statistics
