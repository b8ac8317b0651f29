// Which means of a trial differ: least significant differences, Tukey's test of all pairs with
// letters, and Dunnett's against a reference.
#pragma once

#include "core/base/remark.hpp"
#include "core/statistics/estimate.hpp"
#include "core/trials/linear_model.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bullace::trials {

// Of two means, `one` minus `other`; indices into the levels of the means.
struct Difference {
    std::size_t one = 0;
    std::size_t other = 0;
    double value = 0;
    double standardError = 0;
    double t = 0;
    double leastSignificant = 0; // by t alone
    double leastTukey = 0;       // by the studentized range
    double p = 0;
    double pTukey = 0; // Tukey 1953; Kramer 1956, Biometrics 12:307-310, for unequal errors
    double pHolm = 0;
    double pFalseDiscovery = 0; // Benjamini & Hochberg 1995, J. R. Stat. Soc. B 57:289-300
    double pBonferroni = 0;
    statistics::Interval tukey{}; // simultaneous limits, at 1 - alpha
};

// A level minus the reference.
struct ReferenceDifference {
    std::size_t level = 0;
    statistics::Estimate value{}; // its limits are Dunnett's, simultaneous at 1 - alpha
    double t = 0;
    double p = 0;
};

struct Comparisons {
    double alpha = 0.05;
    double degreesOfFreedom = 0;
    std::optional<double> tQuantile{};
    std::optional<double> rangeQuantile{};
    std::optional<double> dunnettQuantile{};
    std::optional<double> meanError{}; // mean standard error of a difference, over all pairs
    std::optional<double> leastError{};
    std::optional<double> greatestError{}; // the same as the least where the trial is balanced
    // Of all pairs alike where their errors are; by the mean error otherwise.
    std::optional<double> leastSignificant{};
    std::optional<double> leastTukey{};
    std::vector<Difference> pairs;       // empty with more than kMostPaired means
    std::vector<std::string> letters;    // by Tukey, for each level; empty for one not estimated
    std::vector<std::string> lettersByT; // by the least significant difference
    std::vector<ReferenceDifference> toReference;
    Remarks remarks;
};
inline constexpr std::size_t kMostPaired = 60;
inline constexpr std::size_t kMostCompared = 600; // with more there are no comparisons at all

struct ComparisonOptions {
    double alpha = 0.05;                    // 0.0001 to 0.5
    std::optional<std::string> reference{}; // a level
};

// What cannot be compared is left out, with a remark: means that are not estimated, all of them
// where the residuals do not vary or have no degrees of freedom. A reference that is no level, or
// an alpha out of its range (0.05 is then taken), is said in a remark.
[[nodiscard]] Comparisons compareMeans(const AdjustedMeans& means,
                                       const ComparisonOptions& options = {});

} // namespace bullace::trials
