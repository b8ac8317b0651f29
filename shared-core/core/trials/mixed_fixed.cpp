#include "core/statistics/distributions.hpp"
#include "core/trials/mixed_results_matrix.hpp"

#include <Eigen/Eigenvalues>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::trials {

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr Eigen::Index kMostWithDegrees =
    300; // contrasts that are taken apart into independent ones

// A cell of the fixed part: a level of some factors, all others averaged.
using Fixing = std::map<std::string, std::uint32_t>;

// What share a column has in the mean of a cell: 1 over the levels of each of its factors that is
// not held, 0 where another level is held; a covariate counts with its mean.
double shareOf(const MixedDesign& design,
               const MixedSpec& spec,
               const FixedColumn& column,
               const Fixing& held) {
    if (column.term == spec.fixed.size()) {
        return 1;
    }
    double share = 1;
    std::size_t number = 0;
    for (const std::string& name : spec.fixed[column.term]) {
        const Factor* factor = design.table.factor(name);
        if (factor == nullptr) {
            const std::vector<double>& values = design.table.covariate(name)->values;
            double sum = 0;
            for (const double value : values) {
                sum += value;
            }
            share *= sum / static_cast<double>(values.size());
            continue;
        }
        const auto fixed = held.find(name);
        const std::uint32_t level = column.levels[number++];
        if (fixed == held.end()) {
            share /= static_cast<double>(factor->levels.size());
        } else if (fixed->second != level) {
            return 0;
        }
    }
    return share;
}

VectorXd sharesOf(const MixedDesign& design,
                  const MixedSpec& spec,
                  const std::vector<FixedColumn>& columns,
                  const Fixing& held) {
    VectorXd shares(static_cast<Eigen::Index>(columns.size()));
    for (std::size_t i = 0; i < columns.size(); ++i) {
        shares[static_cast<Eigen::Index>(i)] = shareOf(design, spec, columns[i], held);
    }
    return shares;
}

VectorXd weightsOf(const MixedDesign& design, const MixedSpec& spec, const Fixing& held) {
    return sharesOf(design, spec, design.fixed, held);
}

// Whether the cell's mean can be estimated: the columns that were dropped must have the weights in
// it that follow from those of the kept ones.
bool isEstimable(const MixedDesign& design, const MixedSpec& spec, const Fixing& held) {
    const VectorXd dropped = sharesOf(design, spec, design.dropped, held);
    const VectorXd following = design.following.transpose() * weightsOf(design, spec, held);
    return dropped.size() == 0 || (dropped - following).cwiseAbs().maxCoeff() < 1e-6;
}

// Satterthwaite's degrees of freedom of one contrast.
std::optional<double> degreesOf(const VectorXd& contrast,
                                double variance,
                                const std::optional<Sensitivity>& sensitivity) {
    if (!sensitivity) {
        return {};
    }
    VectorXd gradient(static_cast<Eigen::Index>(sensitivity->derivatives.size()));
    for (Eigen::Index i = 0; i < gradient.size(); ++i) {
        gradient[i] =
            contrast.dot(sensitivity->derivatives[static_cast<std::size_t>(i)] * contrast);
    }
    const double spread = gradient.dot(sensitivity->varianceCovariance * gradient);
    const double degrees = 2 * variance * variance / spread;
    return degrees > 0 && std::isfinite(degrees) ? std::optional(degrees) : std::nullopt;
}

// The contrasts that a term stands for: the differences of its cells' means to its first level, the
// other factors averaged; of an interaction the differences of those differences.
MatrixXd contrastsOf(const MixedDesign& design, const MixedSpec& spec, const Term& term) {
    std::vector<std::uint32_t> levels; // how many each factor has
    for (const std::string& name : term) {
        levels.push_back(static_cast<std::uint32_t>(design.table.factor(name)->levels.size()));
    }
    std::vector<VectorXd> contrasts;
    std::vector<std::uint32_t> at(term.size(), 1);
    bool isLeft = std::ranges::all_of(levels, [](std::uint32_t count) { return count > 1; });
    while (isLeft) {
        VectorXd contrast = VectorXd::Zero(design.fixedColumns());
        for (unsigned corner = 0; corner < 1U << term.size(); ++corner) {
            Fixing held;
            double sign = 1;
            for (std::size_t i = 0; i < term.size(); ++i) {
                const bool isFirst = (corner >> i & 1U) != 0;
                held[term[i]] = isFirst ? 0 : at[i];
                sign = isFirst ? -sign : sign;
            }
            contrast += sign * weightsOf(design, spec, held);
        }
        contrasts.push_back(std::move(contrast));
        isLeft = false;
        for (std::size_t i = 0; i < at.size() && !isLeft; ++i) {
            isLeft = ++at[i] < levels[i];
            at[i] = isLeft ? at[i] : 1;
        }
    }
    MatrixXd matrix(static_cast<Eigen::Index>(contrasts.size()), design.fixedColumns());
    for (std::size_t i = 0; i < contrasts.size(); ++i) {
        matrix.row(static_cast<Eigen::Index>(i)) = contrasts[i];
    }
    return matrix;
}

// The term's own columns: of covariates, and where empty cells leave no means to compare.
MatrixXd columnsAlone(const MixedDesign& design, std::size_t term) {
    std::vector<int> columns;
    for (int i = 0; i < design.fixedColumns(); ++i) {
        if (design.fixed[static_cast<std::size_t>(i)].term == term) {
            columns.push_back(i);
        }
    }
    MatrixXd matrix =
        MatrixXd::Zero(static_cast<Eigen::Index>(columns.size()), design.fixedColumns());
    for (std::size_t i = 0; i < columns.size(); ++i) {
        matrix(static_cast<Eigen::Index>(i), columns[i]) = 1;
    }
    return matrix;
}

MatrixXd hypothesisOf(const MixedDesign& design, const MixedSpec& spec, std::size_t term) {
    const bool isOfFactors = std::ranges::all_of(spec.fixed[term], [&](const std::string& name) {
        return design.table.factor(name) != nullptr;
    });
    return isOfFactors && design.dropped.empty() ? contrastsOf(design, spec, spec.fixed[term])
                                                 : columnsAlone(design, term);
}

// Wald's test of some contrasts together, with degrees of freedom from independent ones among them
// (Fai & Cornelius 1996).
FixedTest testOf(const std::string& name,
                 const MatrixXd& contrasts,
                 const VectorXd& effects,
                 const MatrixXd& covariance,
                 const std::optional<Sensitivity>& sensitivity) {
    FixedTest test{name, 0, 0, {}, {}};
    const VectorXd values = contrasts * effects;
    if (values.size() > kMostWithDegrees) {
        const MatrixXd covarianceOfThem = contrasts * covariance * contrasts.transpose();
        test.numerator = static_cast<std::size_t>(values.size());
        test.f =
            values.dot(covarianceOfThem.ldlt().solve(values)) / static_cast<double>(values.size());
        return test;
    }
    const Eigen::SelfAdjointEigenSolver<MatrixXd> axes(contrasts * covariance *
                                                       contrasts.transpose());
    const double least = 1e-10 * axes.eigenvalues().cwiseAbs().maxCoeff();
    double sum = 0;
    double single = 0;
    bool isKnown = sensitivity.has_value();
    for (Eigen::Index i = 0; i < values.size(); ++i) {
        const double variance = axes.eigenvalues()[i];
        if (!(variance > least)) {
            continue;
        }
        ++test.numerator;
        const VectorXd axis = axes.eigenvectors().col(i);
        test.f += std::pow(axis.dot(values), 2) / variance;
        const auto degrees = degreesOf(contrasts.transpose() * axis, variance, sensitivity);
        isKnown = isKnown && degrees;
        single = degrees.value_or(0);
        sum += single > 2 ? single / (single - 2) : 0;
    }
    const auto count = static_cast<double>(test.numerator);
    test.f /= std::max(count, 1.0);
    if (isKnown && count > 0) {
        const double joint = sum > count ? 2 * sum / (sum - count) : 0;
        const double degrees = test.numerator == 1 ? single : joint;
        if (degrees > 0) {
            test.denominator = degrees;
            test.p = statistics::fAbove(test.f, count, degrees);
        }
    }
    return test;
}

// The means of one factor's levels, those left out that cannot be estimated.
FixedMeans meansOf(const MixedEquations& equations,
                   const MixedSpec& spec,
                   const Factor& factor,
                   const MatrixXd& covariance) {
    const MixedDesign& design = equations.design();
    FixedMeans means{factor.name, {}, 0};
    VectorXd sum = VectorXd::Zero(design.fixedColumns());
    double trace = 0;
    for (std::uint32_t level = 0; level < factor.levels.size(); ++level) {
        const Fixing held{{factor.name, level}};
        if (!isEstimable(design, spec, held)) {
            continue;
        }
        const VectorXd weights = weightsOf(design, spec, held);
        const double variance = weights.dot(covariance * weights);
        means.means.push_back(
            {factor.levels[level],
             design.means[0] + weights.dot(equations.effects().head(weights.size())),
             std::sqrt(variance)});
        sum += weights;
        trace += variance;
    }
    const auto levels = static_cast<double>(means.means.size());
    if (levels > 1) {
        means.meanVarianceOfDifference =
            2 * (trace - sum.dot(covariance * sum) / levels) / (levels - 1);
    }
    return means;
}

void tellMeans(const MixedEquations& equations,
               const MixedSpec& spec,
               const MatrixXd& covariance,
               MixedFit& fit) {
    for (const Term& term : spec.fixed) {
        const Factor* factor =
            term.size() == 1 ? equations.design().table.factor(term.front()) : nullptr;
        if (factor == nullptr) {
            continue;
        }
        FixedMeans means = meansOf(equations, spec, *factor, covariance);
        if (means.means.size() < factor->levels.size()) {
            fit.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "Means of %1 that cannot be estimated are left out (levels: %2): "
                                  "what they would need has no record, or cannot be told from "
                                  "other terms."),
                 {factor->name,
                  static_cast<std::int64_t>(factor->levels.size() - means.means.size())}});
        }
        fit.fixedMeans.push_back(std::move(means));
    }
}

} // namespace

MatrixXd fixedCovariance(const MixedEquations& equations) {
    const int count = equations.design().fixedColumns();
    MatrixXd covariance(count, count);
    VectorXd unit = VectorXd::Zero(equations.design().columns());
    for (int i = 0; i < count; ++i) {
        unit[i] = 1;
        covariance.col(i) = equations.covarianceTimes(unit).head(count);
        unit[i] = 0;
    }
    return (covariance + covariance.transpose()) / 2;
}

VectorXd overallWeights(const MixedDesign& design, const MixedSpec& spec) {
    if (isEstimable(design, spec, {})) {
        return weightsOf(design, spec, {});
    }
    const Sparse fixed = design.transposed.topRows(design.fixedColumns());
    return fixed * VectorXd::Ones(fixed.cols()) / static_cast<double>(fixed.cols());
}

void tellFixed(const MixedEquations& equations,
               const MixedSpec& spec,
               const std::optional<Sensitivity>& sensitivity,
               MixedFit& fit) {
    const MixedDesign& design = equations.design();
    const MatrixXd covariance = fixedCovariance(equations);
    for (int i = 0; i < design.fixedColumns(); ++i) {
        FixedEffect effect;
        effect.name = design.fixed[static_cast<std::size_t>(i)].name;
        effect.value = equations.effects()[i] + (spec.hasIntercept && i == 0 ? design.means[0] : 0);
        effect.standardError = std::sqrt(covariance(i, i));
        effect.degreesOfFreedom =
            degreesOf(VectorXd::Unit(covariance.rows(), i), covariance(i, i), sensitivity);
        if (effect.degreesOfFreedom) {
            effect.p = statistics::studentTBothTails(effect.value / effect.standardError,
                                                     *effect.degreesOfFreedom);
        }
        fit.fixed.push_back(std::move(effect));
    }
    for (std::size_t term = 0; term < spec.fixed.size(); ++term) {
        const MatrixXd contrasts = hypothesisOf(design, spec, term);
        if (contrasts.rows() > 0) {
            fit.fixedTests.push_back(testOf(termName(spec.fixed[term]),
                                            contrasts,
                                            equations.effects().head(design.fixedColumns()),
                                            covariance,
                                            sensitivity));
        }
    }
    tellMeans(equations, spec, covariance, fit);
}

} // namespace bullace::trials
