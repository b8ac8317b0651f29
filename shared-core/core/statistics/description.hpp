// One column of numbers, and how two or more of them go together.
#pragma once

#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace bullace::statistics {

struct Description {
    std::size_t n = 0;
    double mean = 0;
    std::optional<double> sd; // with n - 1; from two values on
    std::optional<double> standardError;
    std::optional<double> cvPercent;        // where the mean is above 0
    std::optional<Interval> meanLimits;     // by Student's t
    std::optional<Interval> varianceLimits; // by chi squared, of normal values
    double median = 0;
    double lowerQuartile = 0; // Hyndman & Fan 1996, Am. Stat. 50:361-365, definition 7
    double upperQuartile = 0;
    double least = 0;
    double greatest = 0;
    std::optional<double> skewness;       // g1, by moments; where the values vary
    std::optional<double> excessKurtosis; // g2, likewise
};
// Nothing without a value. Values are finite; `confidence` between 0 and 1.
[[nodiscard]] std::optional<Description> describe(std::span<const double> values,
                                                  double confidence = 0.95);

// A share of ordered values as definition 7 above has it; `sorted` ascending and not empty.
[[nodiscard]] double quantileOf(std::span<const double> sorted, double share);

// Shapiro & Wilk's W and how often normal values would have a smaller one.
// Source  Shapiro & Wilk 1965, Biometrika 52:591-611; Royston 1995, Appl. Stat. 44:547-551 (AS
// R94).
struct Normality {
    double w = 1;
    double p = 1;
};
// Nothing for fewer than 3 values, more than 5,000, or equal ones.
[[nodiscard]] std::optional<Normality> normalityOf(std::span<const double> values);

// Two columns; the same length, finite.
struct Correlation {
    std::size_t n = 0;
    double r = 0; // Pearson's
    double t = 0;
    double p = 1;
    std::optional<double> z;        // Fisher's, atanh r; where r is not ±1
    std::optional<double> zError;   // 1/√(n - 3), from four pairs on
    std::optional<Interval> limits; // 95 %, by z
    double rho = 0;                 // Spearman's, with mean ranks; p by t
    double rhoP = 1;
    double tau = 0; // Kendall's tau-b; z with the variance for ties
    double tauZ = 0;
    double tauP = 1;
};
// Nothing with fewer than three pairs, or where a column does not vary.
// Source  Kendall 1970, Rank Correlation Methods, 4th ed.; Fisher 1921, Metron 1:3-32.
[[nodiscard]] std::optional<Correlation> correlationOf(std::span<const double> x,
                                                       std::span<const double> y);

// y over x by least squares.
struct Line {
    std::size_t n = 0;
    double intercept = 0;
    double interceptError = 0;
    double slope = 0;
    double slopeError = 0;
    double t = 0; // of the slope
    double p = 1;
    double r2 = 0;
    double residualSd = 0;
};
// Nothing with fewer than three pairs, or where x does not vary.
[[nodiscard]] std::optional<Line> lineOf(std::span<const double> x, std::span<const double> y);

// Each two of several columns of one length, every other held still; row by row. Errors:
// InvalidInput for columns of other lengths or values that are not finite, fewer rows than columns
// and two, and columns that are made up of others.
[[nodiscard]] Result<std::vector<double>>
partialCorrelations(const std::vector<std::vector<double>>& columns);

// Two samples: equal variances or not, paired (in the order given), ranks.
struct TwoSamples {
    struct Test {
        double t = 0;
        double freedom = 0;
        double p = 1;
        double difference = 0; // one - other
        Interval limits;       // 95 %
    };
    std::optional<Test> welch;
    std::optional<Test> pooled;
    std::optional<Test> paired; // where both have one length
    std::optional<double> varianceRatio;
    std::optional<double> varianceRatioP; // two-sided
    std::optional<double> rankSum;        // Wilcoxon's W of the one sample, less its least
    std::optional<double> rankSumP;       // normal, corrected for ties and continuity
};
// What cannot be said of samples so small, or without any variance, is absent.
// Source  Welch 1947, Biometrika 34:28-35; Student 1908, Biometrika 6:1-25; Wilcoxon 1945, Biom.
// Bull. 1:80-83.
[[nodiscard]] TwoSamples compareSamples(std::span<const double> one, std::span<const double> other);

} // namespace bullace::statistics
