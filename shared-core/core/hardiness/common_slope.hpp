// Accessions compared by curves of one slope: the dose that kills half of each, every difference
// between two, and whether one slope does for all.
#pragma once

#include "core/hardiness/dose_fit.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::hardiness {

struct DoseGroup {
    std::string name;
    std::vector<DoseRow> rows;
};

struct CommonSlope {
    struct Group {
        std::string name;
        Overlap overlap = Overlap::Nothing; // of its own table
        double intercept = 0;
        double x50 = 0;
        double error = 0; // delta method
        statistics::Interval delta{};
        double g = 0;
        std::optional<statistics::Interval> fieller{};
    };
    struct Difference {
        std::string one;
        std::string other;
        double x50 = 0; // of the one minus of the other
        double error = 0;
        double z = 0;
        double p = 0;                    // two-sided, normal
        double pHolm = 0;                // with regard to the number of differences
        statistics::Interval interval{}; // x50 ± 1.96·error, of this difference alone
    };
    // Twice the log-likelihood that slopes of their own add. Groups without a finite slope of their
    // own count with the supremum of their likelihood.
    struct Parallelism {
        double statistic = 0;
        int degreesOfFreedom = 0;
        double p = 1;
    };

    Link link = Link::Logit;
    double slope = 0;
    double slopeError = 0;
    double logLikelihood = 0; // with the binomial coefficients, of the groups that are in
    GoodnessOfFit goodness;
    std::vector<Group> groups;           // in order of their names
    std::vector<Difference> differences; // every two, in that order
    std::optional<Parallelism> parallelism{};
};

// What could be fitted, and which groups have no place in it.
struct SlopeComparison {
    std::optional<CommonSlope> fit{};
    // None counted, none dead or all dead: their curve lies beyond what was tested.
    std::vector<std::pair<std::string, Overlap>> leftOut;
    enum class Lack { None, TooFewGroups, NoFiniteSlope, NoRise };
    Lack lack = Lack::None; // why there is no fit
};

// Groups in any order, rows of one group in any order; checkDoses() must be content with each.
// Standard errors from the expected information.
// Source  Finney 1971, Probit Analysis, ch. 6 (from memory).
// Errors: InvalidInput for two groups of one name.
[[nodiscard]] Result<SlopeComparison> compareBySlope(std::vector<DoseGroup> groups, Link link);

} // namespace bullace::hardiness
