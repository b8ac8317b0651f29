#include "core/statistics/distributions.hpp"
#include "core/trials/mixed_results_matrix.hpp"

#include <Eigen/Cholesky>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>

namespace bullace::trials {

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double kDifference = 1e-4; // of a variance, for derivatives of what depends on it

MatrixXd inverseOf(const MatrixXd& information) {
    const Eigen::FullPivLU<MatrixXd> factor(information);
    return factor.isInvertible() ? MatrixXd(factor.inverse())
                                 : MatrixXd::Constant(information.rows(),
                                                      information.cols(),
                                                      std::numeric_limits<double>::quiet_NaN());
}

std::optional<double> rootIfPositive(double variance) {
    return variance > 0 && std::isfinite(variance) ? std::optional(std::sqrt(variance))
                                                   : std::nullopt;
}

std::string partsOfName(const RandomBlock& block, const Parameter& parameter) {
    const std::string& one = block.parts[static_cast<std::size_t>(parameter.row)];
    const std::string& other = block.parts[static_cast<std::size_t>(parameter.column)];
    return parameter.isVariance() ? one : other + ":" + one;
}

VarianceComponent
componentOf(const MixedDesign& design, const Variances& at, const Parameter& parameter) {
    VarianceComponent component;
    const bool isRandom = parameter.term < design.random.size();
    component.name = isRandom ? design.random[parameter.term].name : "residual";
    component.of = isRandom ? partsOfName(design.random[parameter.term], parameter) : "";
    component.value = parameter.in(at);
    return component;
}

void tellVariances(MixedEquations& equations,
                   const Search& search,
                   const std::optional<Sensitivity>& sensitivity,
                   MixedFit& fit) {
    const MixedDesign& design = equations.design();
    MatrixXd average;
    if (!search.isSingular && !search.free.empty()) {
        average = inverseOf(equations.slope(search.free).information);
    }
    for (const Parameter& parameter : parametersOf(design)) {
        VarianceComponent component = componentOf(design, search.at, parameter);
        const auto same = [&](const Parameter& other) {
            return other.term == parameter.term && other.row == parameter.row &&
                   other.column == parameter.column;
        };
        component.isAtBoundary = std::ranges::any_of(search.held, same);
        const auto free = std::ranges::find_if(search.free, same);
        if (free != search.free.end()) {
            const auto place = free - search.free.begin();
            if (average.size() > 0) {
                component.averageStandardError = rootIfPositive(average(place, place));
            }
            if (sensitivity) {
                component.standardError =
                    rootIfPositive(sensitivity->varianceCovariance(place, place));
            }
        }
        fit.variances.push_back(std::move(component));
    }
}

void tellSummary(const MixedEquations& equations, const Search& search, MixedFit& fit) {
    const MixedDesign& design = equations.design();
    fit.n = design.table.rows();
    fit.leftOut = design.leftOut;
    fit.fixedRank = design.fixed.size();
    for (const FixedColumn& column : design.dropped) {
        fit.aliased.push_back(column.name);
    }
    fit.logLikelihood = search.logLikelihood;
    fit.evaluations = search.evaluations;
    fit.hasConverged = search.hasConverged;
    const Sparse fixed = design.transposed.topRows(design.fixedColumns());
    const MatrixXd product(Sparse(fixed * Sparse(fixed.transpose())));
    const MatrixXd root = Eigen::LLT<MatrixXd>(product).matrixL();
    fit.invariantLogLikelihood = fit.logLikelihood + root.diagonal().array().log().sum();
}

void remark(const Search& search, MixedFit& fit) {
    if (!fit.hasConverged) {
        fit.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                "The search for the variances did not come to an "
                                                "end; the numbers are not to be relied on."),
                               {}});
    }
    for (const VarianceComponent& component : fit.variances) {
        if (component.isAtBoundary) {
            fit.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                    "%1: no variance was found; its estimate is "
                                                    "exactly 0, and all of its predictions are 0."),
                                   {component.name}});
        }
    }
    if (search.isSingular) {
        fit.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                "A correlation was estimated as exactly 1 or -1: "
                                                "the trial is too small for so many variances."),
                               {}});
    }
    tellLeftOut(fit.leftOut, fit.remarks);
    for (const std::string& name : fit.aliased) {
        fit.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                "%1 cannot be told apart from the other fixed "
                                                "effects; it is left out."),
                               {name}});
    }
}

Status checkKnown(const MixedDesign& design, const MixedOptions& options) {
    const bool isPlain = std::ranges::all_of(
        design.random, [](const RandomBlock& block) { return block.width() == 1; });
    const bool isRight =
        isPlain && options.knownVariances.size() == design.random.size() + 1 &&
        std::ranges::all_of(options.knownVariances, [](double value) { return value >= 0; }) &&
        options.knownVariances.back() > 0;
    if (!isRight) {
        return Error{
            ErrorCode::InvalidInput,
            "Known variances are one for each random term and one above 0 for the residual, "
            "in that order.",
            {}};
    }
    return {};
}

Variances knownOf(const MixedOptions& options) {
    Variances at;
    for (const double variance : options.knownVariances) {
        at.random.push_back(MatrixXd::Constant(1, 1, variance));
    }
    at.residual = at.random.back();
    at.random.pop_back();
    return at;
}

// Each random term left out once. One more of a boundary is p = 1.
Status testRandom(const TrialTable& table, const MixedSpec& spec, MixedFit& fit) {
    for (std::size_t term = 0; term < spec.random.size(); ++term) {
        MixedSpec less = spec;
        less.random.erase(less.random.begin() + static_cast<std::ptrdiff_t>(term));
        MixedOptions plain;
        plain.hasDegreesOfFreedom = false;
        plain.hasErrorsOfPredictions = false;
        const auto other = fitMixed(table, less, plain);
        if (!other) {
            return other.error();
        }
        RandomTest test{spec.random[term].called(), 0, 1};
        test.likelihoodRatio = std::max(0.0, 2 * (fit.logLikelihood - other->logLikelihood));
        if (test.likelihoodRatio > 1e-9) {
            test.p = statistics::chiSquaredAbove(test.likelihoodRatio, 1) / 2;
        } else {
            test.likelihoodRatio = 0;
        }
        fit.randomTests.push_back(std::move(test));
    }
    return {};
}

} // namespace

std::optional<Sensitivity> sensitivityOf(MixedEquations& equations, const Search& search) {
    const auto count = static_cast<Eigen::Index>(search.free.size());
    if (search.isSingular || count == 0) {
        return {};
    }
    MatrixXd observed(count, count);
    Sensitivity sensitivity;
    for (Eigen::Index i = 0; i < count; ++i) {
        const Parameter& parameter = search.free[static_cast<std::size_t>(i)];
        const Parameter row{parameter.term, parameter.row, parameter.row};
        const Parameter column{parameter.term, parameter.column, parameter.column};
        const double step = kDifference * std::sqrt(row.in(search.at) * column.in(search.at));
        std::vector<VectorXd> scores;
        std::vector<MatrixXd> covariances;
        for (const double side : {-1.0, 1.0}) {
            Variances moved = search.at;
            parameter.set(moved, parameter.in(search.at) + side * step);
            if (!equations.logLikelihood(moved)) {
                return {};
            }
            scores.push_back(equations.slope(search.free).score);
            covariances.push_back(fixedCovariance(equations));
        }
        observed.row(i) = -(scores[1] - scores[0]).transpose() / (2 * step);
        sensitivity.derivatives.push_back((covariances[1] - covariances[0]) / (2 * step));
    }
    equations.logLikelihood(search.at);
    sensitivity.varianceCovariance = inverseOf((observed + observed.transpose()) / 2);
    return sensitivity;
}

const VarianceComponent* MixedFit::variance(std::string_view name, std::string_view of) const {
    const auto found = std::ranges::find_if(variances, [&](const VarianceComponent& each) {
        return each.name == name && each.of == of;
    });
    return found == variances.end() ? nullptr : &*found;
}

const RandomPredictions* MixedFit::predictionsOf(std::string_view name) const {
    const auto found = std::ranges::find_if(
        predictions, [&](const RandomPredictions& each) { return each.name == name; });
    return found == predictions.end() ? nullptr : &*found;
}

Result<MixedFit>
fitMixed(const TrialTable& table, const MixedSpec& spec, const MixedOptions& options) {
    const auto design = designOf(table, spec);
    if (!design) {
        return design.error();
    }
    const bool isKnown = !options.knownVariances.empty();
    if (isKnown) {
        if (const auto checked = checkKnown(*design, options); !checked) {
            return checked.error();
        }
    }
    MixedEquations equations(*design);
    const auto search =
        isKnown ? atVariances(equations, knownOf(options)) : searchVariances(equations);
    if (!search) {
        return Error{ErrorCode::InvalidInput,
                     "The fixed effects fit the values exactly: there is no variance to divide.",
                     {}};
    }
    MixedFit fit;
    tellSummary(equations, *search, fit);
    const auto sensitivity =
        options.hasDegreesOfFreedom ? sensitivityOf(equations, *search) : std::nullopt;
    equations.logLikelihood(search->at);
    tellVariances(equations, *search, sensitivity, fit);
    tellFixed(equations, spec, sensitivity, fit);
    tellPredictions(equations, spec, options.hasErrorsOfPredictions, fit);
    remark(*search, fit);
    if (options.hasTestsOfRandomTerms && !isKnown) {
        if (const auto tested = testRandom(table, spec, fit); !tested) {
            return tested.error();
        }
    }
    return fit;
}

} // namespace bullace::trials
