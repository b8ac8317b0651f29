// Mixed models by restricted maximum likelihood: any list of fixed and random terms, crossed or
// nested, balanced or not; random effects that are related through a pedigree, or that vary with a
// covariate; predictions with their errors.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"
#include "core/statistics/sparse_symmetric.hpp"
#include "core/trials/trial_table.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::trials {

// How the levels of a random term are related: the inverse of their relationship matrix.
struct Related {
    std::vector<std::string> names; // of its rows; each once
    statistics::SparseSymmetric inverse;
    double logDeterminant = 0;      // of the relationship matrix itself
    std::vector<double> inbreeding; // of each; empty for none
};

struct RandomTerm {
    Term factors; // whose combinations are its levels
    // Covariates with which each level has a slope of its own, beside its intercept.
    std::vector<std::string> slopes{};
    bool areSlopesCorrelated = true; // with the intercept and with one another
    // Only for a term of one factor: its levels must be among the names; all names are predicted.
    std::shared_ptr<const Related> related{};
    std::string name{}; // the factors' names joined by colons where it is empty

    [[nodiscard]] std::string called() const { return name.empty() ? termName(factors) : name; }
};

// Smooth trends over a block: columns of numbers that share one variance (a spline's basis).
struct SmoothTerm {
    std::string name;
    std::vector<std::vector<double>> columns; // each with as many numbers as the table has rows
};

struct MixedSpec {
    std::vector<Term> fixed;
    bool hasIntercept = true;
    std::vector<RandomTerm> random;
    std::vector<SmoothTerm> smooth{};
};

struct MixedOptions {
    // Variances that are known: of the random terms in their order, then of the residual. Nothing
    // is estimated then. Only without slopes and smooth terms.
    std::vector<double> knownVariances{};
    // Standard errors of variances from the observed information, and degrees of freedom of fixed
    // effects by Satterthwaite's method: two more evaluations for each variance.
    bool hasDegreesOfFreedom = true;
    bool hasTestsOfRandomTerms = false; // each left out once, and fitted again
    bool hasErrorsOfPredictions = true;
};

struct VarianceComponent {
    std::string name; // the term's, or "residual"
    std::string of{}; // of a term with slopes: "intercept", a covariate, or two joined by a colon
    double value = 0;
    std::optional<double> standardError{};        // from the observed information
    std::optional<double> averageStandardError{}; // from the average information
    bool isAtBoundary = false;                    // no variance: the estimate is exactly 0
};

struct FixedEffect {
    std::string name; // "intercept"; "year Y2020"; an interaction's parts joined by colons
    double value = 0;
    double standardError = 0;
    std::optional<double> degreesOfFreedom{};
    std::optional<double> p{}; // that it is 0
};

struct FixedTest {
    std::string term;
    std::size_t numerator = 0;
    double f = 0; // Wald's chi squared over its degrees of freedom
    std::optional<double> denominator{};
    std::optional<double> p{};
};

struct FixedMean {
    std::string level;
    double value = 0;
    double standardError = 0;
};
struct FixedMeans {
    std::string term;
    std::vector<FixedMean> means; // that can be estimated; the other factors' levels weigh equally
    double meanVarianceOfDifference = 0;
};

struct Prediction {
    std::string level;
    double value = 0;                    // of the effect: its deviation
    double predictionErrorVariance = 0;  // uncertainty of the fixed effects counted in
    std::optional<double> reliability{}; // 1 - PEV/variance; nothing where the variance is 0
    // The general mean and the effect together: what a level would be like over all.
    double total = 0;
    double totalStandardError = 0;
};
struct RandomPredictions {
    std::string name;
    std::string of{};
    double variance = 0;
    std::vector<Prediction> levels;
    std::optional<double> meanVarianceOfDifference{}; // of two levels' predictions
};

struct RandomTest {
    std::string name;
    double likelihoodRatio = 0;
    double p = 1; // half and half chi squared with 0 and with 1 degree of freedom
};

struct MixedFit {
    std::size_t n = 0;
    std::size_t leftOut = 0;   // rows without the response or a factor
    std::size_t fixedRank = 0; // n - fixedRank degrees of freedom are left
    std::vector<VarianceComponent> variances;
    std::vector<FixedEffect> fixed;
    std::vector<std::string> aliased; // columns that follow from earlier ones, left out
    std::vector<FixedTest> fixedTests;
    std::vector<FixedMeans> fixedMeans;
    std::vector<RandomPredictions> predictions;
    std::vector<RandomTest> randomTests;
    // -½[(n-p) log 2π + log|V| + log|X'V⁻¹X| + y'Py]; it depends on how the fixed effects are
    // coded.
    double logLikelihood = 0;
    double invariantLogLikelihood = 0; // ½ log|X'X| added: does not
    int evaluations = 0;
    bool hasConverged = false;
    Remarks remarks;

    [[nodiscard]] const VarianceComponent* variance(std::string_view name,
                                                    std::string_view of = {}) const;
    [[nodiscard]] const RandomPredictions* predictionsOf(std::string_view name) const;
};

// Average-information REML over Henderson's equations, with sparse factors and the elements of the
// inverse that they need; where its steps fail, a search without derivatives (BOBYQA).
// Rows without the response, a factor or a covariate of the model are left out and counted.
// Errors  InvalidInput, in words of the table: no such column; no rows left; the response does not
//         vary; no degree of freedom left; a random term with one level, with a level for each row,
//         or that repeats another or is told by the fixed terms alone; a level that its pedigree
//         does not hold.
// Source  Gilmour, Thompson & Cullis 1995, Biometrics 51:1440-1450; Johnson & Thompson 1995,
//         J. Dairy Sci. 78:449-456; Henderson 1984, Applications of Linear Models in Animal
//         Breeding; Satterthwaite 1946, Biometrics Bull. 2:110-114, with Fai & Cornelius 1996,
//         J. Stat. Comput. Simul. 54:363-378 for tests of several; Self & Liang 1987, JASA
//         82:605-610 for the test of one variance.
[[nodiscard]] Result<MixedFit>
fitMixed(const TrialTable& table, const MixedSpec& spec, const MixedOptions& options = {});

} // namespace bullace::trials
