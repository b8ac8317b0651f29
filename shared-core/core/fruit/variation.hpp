// Where values vary: between accessions, between an accession's vines, and within a vine; and how
// many vines and samples a wanted precision takes.
#pragma once

#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace bullace::fruit {

using VineSamples = std::vector<double>;
using AccessionVines = std::vector<VineSamples>;

// One line of the nested analysis of variance.
struct VarianceLine {
    double freedom = 0;
    double squares = 0;
    double meanSquare = 0;
    std::optional<double> f; // over the next line's mean square
    std::optional<double> p;
};

struct VarianceParts {
    std::size_t accessions = 0;
    std::size_t vines = 0;
    std::size_t values = 0;
    double mean = 0; // of all values
    // Absent where the design does not tell: one accession, one vine each, one value each.
    std::optional<VarianceLine> ofAccessions;
    std::optional<VarianceLine> ofVines;
    std::optional<VarianceLine> ofSamples;
    // Components; one below 0 is given as 0, and a remark says so.
    std::optional<double> betweenAccessions;
    std::optional<double> betweenVines;
    std::optional<double> withinVine;
    double vinesInVines = 0;      // what a variance of vines counts for in their mean square
    double vinesInAccessions = 0; // likewise in that of accessions
    double accessionsInAccessions = 0;
    Remarks remarks;
};

// From unequal numbers, by equating mean squares with what they are expected to be (Henderson's
// method I). Accessions and vines without values are left out. Errors: InvalidInput where no finite
// value is there, or one is not finite.
// Source  Henderson 1953, Biometrics 9:226-252; Searle, Casella & McCulloch 1992, Variance
// Components, section 5.4.
[[nodiscard]] Result<VarianceParts> varianceParts(const std::vector<AccessionVines>& accessions);

// Mean, SD, standard error and interval of values, as they are told of an accession.
struct Summary {
    std::size_t n = 0;
    double mean = 0;
    std::optional<double> sd;
    std::optional<double> standardError;
    std::optional<statistics::Interval> interval; // 95 % of the mean, by Student's t
    double least = 0;
    double greatest = 0;
};
// Nothing without a value; values are finite.
[[nodiscard]] std::optional<Summary> summaryOf(std::span<const double> values);
// The same of an accession whose vines' samples belong together: the mean of vines' means, and its
// error from how vines differ. With one vine there is no error: its samples say nothing of others.
[[nodiscard]] std::optional<Summary> summaryOfVines(const AccessionVines& vines);

// Vines, with samples on each, that bring the standard error of an accession's mean down to a
// wanted one.
struct TwoStagePlan {
    std::size_t vines = 0;
    std::size_t samplesEach = 0;
    double standardError = 0; // what that gives
    double cost = 0;          // vines·(costOfVine + samplesEach·costOfSample)
};
struct TwoStageCosts {
    double ofVine = 1;   // of walking to one more vine, in any unit
    double ofSample = 1; // of one more sample on it
};
// variance = between/v + within/(v·s), no finite population; the best s is √(within/between ·
// costOfVine/costOfSample). Variances 0 or more, not both 0; wanted above 0. Nothing otherwise, and
// where more than a million vines would be needed.
// Source  Cochran 1977, Sampling Techniques, 3rd ed., section 10.6.
[[nodiscard]] std::optional<TwoStagePlan>
twoStagePlan(double between, double within, double wantedError, const TwoStageCosts& costs = {});

} // namespace bullace::fruit
