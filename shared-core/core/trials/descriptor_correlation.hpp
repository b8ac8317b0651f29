// Whether what is good in one descriptor is good in another: correlations of two descriptors, among
// accessions and within them, by a mixed model of both.
#pragma once

#include "core/trials/mixed_model.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::trials {

struct Correlation {
    double value = 0;
    std::optional<double> standardError{}; // by the delta method; none on its boundary
    bool isAtBoundary = false;             // exactly 1 or -1, or one descriptor without variance
};

// The covariance of two descriptors over the levels of one term, in their own units.
struct TermCorrelation {
    std::string name; // the random term's, or "residual"
    double oneVariance = 0;
    double otherVariance = 0;
    double covariance = 0;
    std::optional<Correlation> correlation{}; // none where one of the variances is 0
};

struct DescriptorCorrelation {
    std::string one;
    std::string other;
    std::size_t both = 0; // plots that have both, one alone, the other alone
    std::size_t oneAlone = 0;
    std::size_t otherAlone = 0;
    std::vector<TermCorrelation> terms;    // in the model's order, the residual last
    std::optional<Correlation> phenotypic; // of single plots: all terms added up
    double logLikelihood = 0;
    bool hasConverged = false;
    Remarks remarks;

    [[nodiscard]] const TermCorrelation* term(std::string_view name) const;
};

// table      Its response is the one descriptor.
// other      The other's values, one for each row; NaN where it was not noted. Rows with either
//            count.
// spec       The same fixed and random terms for both; random terms without slopes; no smooth
// terms. Each random term and the residual has its own two variances and their covariance. Errors
// as of fitMixed(); InvalidInput where fewer than 3 plots have both. Source  Henderson & Quaas
// 1976, J. Anim. Sci. 43:1188-1197 (several traits, some missing); the
//         delta method as in Lynch & Walsh 1998, Genetics and Analysis of Quantitative Traits,
//         app. 1.
[[nodiscard]] Result<DescriptorCorrelation> correlateDescriptors(const TrialTable& table,
                                                                 const std::string& otherName,
                                                                 const std::vector<double>& other,
                                                                 const MixedSpec& spec);

} // namespace bullace::trials
