// What is told of a mixed model whose variances were found: its fixed effects with their tests and
// means, and the predictions of its random effects.
#pragma once

#include "core/trials/mixed_search_matrix.hpp"

#include <Eigen/Core>
#include <optional>
#include <vector>

namespace bullace::trials {

// How the variances of fixed effects depend on the variances that were estimated, by central
// differences: for Satterthwaite's degrees of freedom; and the observed information besides.
struct Sensitivity {
    Eigen::MatrixXd varianceCovariance;       // of the free variances: the inverse information
    std::vector<Eigen::MatrixXd> derivatives; // of the fixed effects' covariance, by each of them
};
[[nodiscard]] std::optional<Sensitivity> sensitivityOf(MixedEquations& equations,
                                                       const Search& search);

// The covariance matrix of the fixed effects, at the last variances.
[[nodiscard]] Eigen::MatrixXd fixedCovariance(const MixedEquations& equations);

void tellFixed(const MixedEquations& equations,
               const MixedSpec& spec,
               const std::optional<Sensitivity>& sensitivity,
               MixedFit& fit);
void tellPredictions(MixedEquations& equations,
                     const MixedSpec& spec,
                     bool hasErrors,
                     MixedFit& fit);

// The weights of the fixed effects in the mean over all levels of all factors, each weighing the
// same; covariates at their means. Where that cannot be estimated, the mean over the records.
[[nodiscard]] Eigen::VectorXd overallWeights(const MixedDesign& design, const MixedSpec& spec);

} // namespace bullace::trials
