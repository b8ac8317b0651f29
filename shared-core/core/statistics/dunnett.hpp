// Several means against one reference: the greatest of their two-sided t statistics (Dunnett).
#pragma once

#include <cstddef>
#include <span>
#include <utility>
#include <vector>

namespace bullace::statistics {

// The differences of several means to one reference, whose correlations are products: those of i
// and j are λi·λj. With ni records of a mean and n0 of the reference, λi = sqrt(ni / (ni + n0)).
// Source  Dunnett 1955, J. Am. Stat. Assoc. 50:1096-1121; Hsu 1996, Multiple Comparisons, ch. 3.
class Dunnett {
public:
    // Each λ from 0 to below 1, at least one; degrees of freedom from 1, infinity where the
    // variance is known. Anything else makes the answers NaN.
    Dunnett(std::span<const double> lambdas, double degreesOfFreedom);

    // P(the greatest |t| > t); 1 for a t that is not above 0. To about 1e-12.
    [[nodiscard]] double above(double t) const;
    // The t that is exceeded with the probability `alpha`, between 0 and 1.
    [[nodiscard]] double quantile(double alpha) const;

private:
    [[nodiscard]] double knownAbove(double t) const;

    std::vector<std::pair<double, double>> loadings_; // λ, and how many have it
    double degreesOfFreedom_ = 0;
    bool isSound_ = false;
};

// The λ whose products come nearest to the correlations (size × size, row by row) by least squares
// of what lies beside the diagonal (Harman & Jones 1966, Psychometrika 31:351-368); exact where the
// correlations are such products. Each between 0 and 0.999999.
[[nodiscard]] std::vector<double> productLoadings(std::span<const double> correlations,
                                                  std::size_t size);

} // namespace bullace::statistics
