// Counts on vines and clusters, which vary more than a Poisson count would: the negative binomial
// distribution with variance m + m²/k, a small k for counts that come in heaps.
#pragma once

#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::fruit {

// How often a count was met; the same count may stand more than once.
struct CountFrequency {
    std::uint64_t count = 0; // at most 100,000
    std::uint64_t frequency = 1;
};

struct CountFit {
    std::uint64_t n = 0;
    double mean = 0;
    std::optional<double> variance; // with n - 1; from two counts on
    // What the fitted distribution gives for the mean's error: √((m + m²/k)/n), or √(m/n) where the
    // counts are not over-dispersed.
    std::optional<double> meanError;
    // By maximum likelihood, standard error from the observed information, limits by profile.
    // Nothing where the counts are not over-dispersed: k is then as good as infinite.
    std::optional<statistics::Estimate> k;
    std::optional<double> kByMoments;   // m²/(s² - m); where s² is above m
    std::optional<double> kByZeroClass; // solves P(0) = (1 + m/k)^-k; where zeros are that frequent
    double logLikelihood = 0;           // of the distribution that holds: with k, or Poisson
    double poissonLogLikelihood = 0;
    // Twice what k adds to the log-likelihood, and how often a Poisson count would reach it: half
    // of chi squared's tail with one degree of freedom, since k cannot lie beyond infinity.
    // Source  Self & Liang 1987, J. Am. Stat. Assoc. 82:605-610, case 5.
    std::optional<double> likelihoodRatio;
    std::optional<double> likelihoodRatioP;
    std::optional<double> dispersionIndex; // Σ(x - m)²/m; chi squared with n - 1 if Poisson
    std::optional<double> dispersionP;     // of at least this index
    std::vector<double> expected;          // frequencies of 0, 1, … up to the greatest count
    Remarks remarks;
};

// Errors: InvalidInput without any count, or with a greater one than 100,000 or more than 10^9 in
// all.
// Source  Bliss & Fisher 1953, Biometrics 9:176-200 (maximum likelihood by Fisher); Anscombe 1949,
// Biometrics 5:165-173 (moments and zero class).
[[nodiscard]] Result<CountFit> fitCounts(std::span<const CountFrequency> counts);

// How many counts make the mean's standard error `relative` of the mean: n = (1/m + 1/k)/D²,
// rounded up; without k as for a Poisson count. Nothing where the mean or `relative` is not above
// 0, or a thousand million would not do.
// Source  Karandinos 1976, Bull. Entomol. Soc. Am. 22:417-421.
[[nodiscard]] std::optional<std::uint64_t>
countsNeeded(double mean, std::optional<double> k, double relative);

// Negative binomial regression with logarithmic link: log m = Xb, one k ("theta") for all.
struct CountRegression {
    std::uint64_t n = 0;
    std::vector<double> coefficients;
    std::vector<double> standardErrors; // from the expected information with k held
    statistics::Estimate k;             // standard error from the observed information in k alone
    double logLikelihood = 0;
    double deviance = 0;
};

// `columns` holds the design's columns, each with one value for each count, the intercept among
// them. Errors: InvalidInput for columns of other lengths, numbers that are not finite, fewer
// counts than columns; and, with words that say so, where the likelihood has no maximum: a group of
// zeros alone, columns that add up to another, or counts that are not over-dispersed. Source
// Lawless 1987, Can. J. Stat. 15:209-225; Venables & Ripley 2002, section 7.4.
[[nodiscard]] Result<CountRegression>
fitCountRegression(std::span<const double> counts, const std::vector<std::vector<double>>& columns);

} // namespace bullace::fruit
