// A curve of kill over dose by maximum likelihood, how well it fits, and its points: the dose that
// kills a wanted share, with three kinds of limits.
#pragma once

#include "core/hardiness/dose_table.hpp"
#include "core/hardiness/line_crossing.hpp"
#include "core/hardiness/link.hpp"

#include <optional>
#include <span>
#include <vector>

namespace bullace::hardiness {

// How far the counts lie from the curve, row by row.
struct GoodnessOfFit {
    int degreesOfFreedom = 0; // rows minus parameters
    double deviance = 0;
    double pearson = 0;                    // χ²
    std::optional<double> devianceP{};     // where there are degrees of freedom
    std::optional<double> pearsonP{};      //
    std::optional<double> heterogeneity{}; // pearson / degrees of freedom
    [[nodiscard]] bool isPoor() const { return pearsonP && *pearsonP < 0.05; }
};

struct DoseFit {
    Link link = Link::Logit;
    double intercept = 0;
    double slope = 0; // of η in x
    double interceptError = 0;
    double slopeError = 0;
    double covariance = 0;      // of intercept and slope
    double logLikelihood = 0;   // with the binomial coefficients
    std::vector<double> fitted; // share killed, of each row that has something counted
    GoodnessOfFit goodness;

    // The same line in z = (x - centre)/scale, in which nothing cancels.
    double centre = 0;
    double scale = 1;
    FittedLine line;
};

// Source  Finney 1971, Probit Analysis, ch. 4; standard errors from the expected information, as
//         is the rule for models of this kind (McCullagh & Nelder 1989, Generalized Linear Models).
// `rows` in any order, those of one dose kept apart; checkDoses() must be content. Nothing unless
// overlapOf() is Overlapping: the slope is then not finite.
[[nodiscard]] std::optional<DoseFit> fitDoses(std::span<const DoseRow> rows, Link link);

// The dose that kills `part` of them.
struct DosePoint {
    double part = 0.5;
    double x = 0;
    double error = 0;             // delta method
    statistics::Interval delta{}; // x ± 1.96·error
    double g = 0;                 // of Fieller's limits
    std::optional<statistics::Interval> fieller{};
    statistics::Interval profile{}; // of the likelihood; a side may be unbounded

    // With the covariance times the heterogeneity and t of its degrees of freedom; where there are
    // degrees of freedom.
    struct Scaled {
        double error = 0;
        statistics::Interval delta{};
        std::optional<statistics::Interval> fieller{};
    };
    std::optional<Scaled> scaled{};
};

// 0 < part < 1; the fit's slope must not be 0. `rows` those of the fit. 95 % limits.
// Source  profile: Venzon & Moolgavkar 1988, Appl. Stat. 37:87-94.
[[nodiscard]] DosePoint pointOf(std::span<const DoseRow> rows, const DoseFit& fit, double part);

// Of a fit with a wanted η for each row and this number of parameters; rows with nothing counted
// are left out, and have no place in `etas`.
[[nodiscard]] GoodnessOfFit
goodnessOf(std::span<const DoseRow> rows, std::span<const double> etas, Link link, int parameters);

// The same of expected shares, living apart from killed so that neither loses its digits.
struct ExpectedShare {
    double killed = 0;
    double living = 1;
};
[[nodiscard]] GoodnessOfFit goodnessOfShares(std::span<const DoseRow> rows,
                                             std::span<const ExpectedShare> shares,
                                             int parameters);

// log P of a row at η but for its binomial coefficient, with its derivatives in η.
[[nodiscard]] LogShare logLikelihoodAt(const DoseRow& row, Link link, double eta);

// What a row says about its η: counted·density²/(share·(1 - share)).
[[nodiscard]] double informationAt(const DoseRow& row, Link link, double eta);

} // namespace bullace::hardiness
