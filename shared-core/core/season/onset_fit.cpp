#include "core/season/onset_fit.hpp"

#include "core/season/onset_likelihood.hpp"
#include "core/statistics/distributions.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::season {

namespace {

using statistics::kUnbounded;
using statistics::Slope;

double middleOf(const WeighedOnset& one) {
    if (std::isinf(one.low)) {
        return one.high;
    }
    return std::isinf(one.high) ? one.low : (one.low + one.high) / 2;
}

// Least squares on the middles; nothing where the covariates are not independent.
std::optional<std::vector<double>> startOf(const OnsetProblem& problem) {
    const auto p = static_cast<Eigen::Index>(problem.columns);
    Eigen::MatrixXd products = Eigen::MatrixXd::Zero(p, p);
    Eigen::VectorXd right = Eigen::VectorXd::Zero(p);
    double weights = 0;
    for (const WeighedOnset& one : problem.onsets) {
        const Eigen::Map<const Eigen::VectorXd> row(problem.row(one).data(), p);
        products += one.weight * row * row.transpose();
        right += one.weight * middleOf(one) * row;
        weights += one.weight;
    }
    const Eigen::LDLT<Eigen::MatrixXd> factor(products);
    const Eigen::VectorXd scaled = factor.vectorD().cwiseAbs();
    if (factor.info() != Eigen::Success || !(scaled.minCoeff() > 1e-12 * scaled.maxCoeff())) {
        return std::nullopt;
    }
    const Eigen::VectorXd beta = factor.solve(right);
    double squares = 0;
    double width = 0;
    for (const WeighedOnset& one : problem.onsets) {
        const Eigen::Map<const Eigen::VectorXd> row(problem.row(one).data(), p);
        const double residual = middleOf(one) - row.dot(beta);
        squares += one.weight * residual * residual;
        width = std::max(width, std::isfinite(one.high - one.low) ? one.high - one.low : 0);
    }
    std::vector<double> start(beta.begin(), beta.end());
    if (problem.hasScale()) {
        const double spread = std::max(std::sqrt(squares / weights), width / 8);
        start.push_back(std::log(spread > 0 ? spread : 1));
    }
    return start;
}

// Whether one location could lie in all intervals: a spread of 0 then explains everything.
bool haveDayInCommon(const OnsetProblem& problem) {
    double latestStart = -kUnbounded;
    double earliestEnd = kUnbounded;
    for (const WeighedOnset& one : problem.onsets) {
        latestStart = std::max(latestStart, one.low);
        earliestEnd = std::min(earliestEnd, one.high);
    }
    return latestStart <= earliestEnd;
}

std::optional<Remark> whyNoFit(const OnsetProblem& problem) {
    const OnsetCounts& counts = problem.counts;
    const auto n = static_cast<std::int64_t>(counts.telling());
    if (n == 0) {
        return Remark{BULLACE_SENTENCE("Remark", "No visit says anything about this stage."), {}};
    }
    if (counts.left == counts.telling()) {
        return Remark{BULLACE_SENTENCE("Remark",
                                       "Every vine had reached the stage at its first visit "
                                       "(vines: %1): only the latest possible day is known."),
                      {n}};
    }
    if (counts.right == counts.telling()) {
        return Remark{BULLACE_SENTENCE("Remark",
                                       "No vine had reached the stage at its last visit (vines: "
                                       "%1): only the earliest possible day is known."),
                      {n}};
    }
    if (counts.telling() <= problem.columns) {
        return Remark{BULLACE_SENTENCE("Remark",
                                       "The vines are too few to estimate a mean and a spread "
                                       "(vines: %1, means asked for: %2)."),
                      {n, static_cast<std::int64_t>(problem.columns)}};
    }
    if (counts.within + counts.exact == 0 && problem.hasScale()) {
        return Remark{BULLACE_SENTENCE("Remark",
                                       "Every vine was seen only before or only after the stage: "
                                       "neither mean nor spread can be estimated."),
                      {}};
    }
    if (problem.columns == 1 && problem.hasScale() && haveDayInCommon(problem)) {
        return Remark{BULLACE_SENTENCE("Remark",
                                       "All vines may have reached the stage on one day: how they "
                                       "spread around it cannot be estimated (vines: %1)."),
                      {n}};
    }
    return std::nullopt;
}

// A spread that is nothing beside the shortest interval has run towards 0.
bool hasVanished(const OnsetProblem& problem, double scale) {
    double narrowest = kUnbounded;
    for (const WeighedOnset& one : problem.onsets) {
        const double width = one.high - one.low;
        narrowest = width > 0 ? std::min(narrowest, width) : narrowest;
    }
    return std::isfinite(narrowest) && scale < 0.02 * narrowest;
}

std::optional<OnsetFit> fitted(const OnsetProblem& problem) {
    auto start = startOf(problem);
    if (!start) {
        return std::nullopt;
    }
    const auto maximum = statistics::maximise(
        [&problem](std::span<const double> at, Slope& out) { likelihoodAt(problem, at, out); },
        std::move(*start));
    if (!maximum) {
        return std::nullopt;
    }
    OnsetFit fit{problem.law, maximum->at, 1, {}, maximum->covariance, maximum->value, {}};
    fit.counts = problem.counts;
    if (problem.hasScale()) {
        fit.scale = std::exp(fit.coefficients.back());
        fit.coefficients.pop_back();
        fit.logScaleError = maximum->standardError(problem.columns);
        if (!std::isfinite(fit.scale) || hasVanished(problem, fit.scale)) {
            return std::nullopt;
        }
    }
    return fit;
}

} // namespace

std::string_view nameOf(OnsetLaw law) {
    constexpr std::array<std::string_view, 6> kNames{
        "normal", "logistic", "log-normal", "log-logistic", "Weibull", "exponential"};
    return kNames[static_cast<std::size_t>(law)];
}

bool isOfLogarithm(OnsetLaw law) {
    return law != OnsetLaw::Normal && law != OnsetLaw::Logistic;
}

double OnsetFit::standardError(std::size_t coefficient) const {
    const std::size_t all = coefficients.size() + (logScaleError ? 1 : 0);
    return std::sqrt(covariance[coefficient * all + coefficient]);
}

std::size_t OnsetFit::degreesOfFreedom() const {
    const std::size_t n = counts.telling();
    return n > coefficients.size() ? n - coefficients.size() : 0;
}

statistics::Estimate OnsetFit::combination(std::span<const double> weights) const {
    const std::size_t p = coefficients.size();
    const std::size_t all = p + (logScaleError ? 1 : 0);
    double value = 0;
    double variance = 0;
    for (std::size_t i = 0; i < p; ++i) {
        value += weights[i] * coefficients[i];
        for (std::size_t j = 0; j < p; ++j) {
            variance += weights[i] * weights[j] * covariance[i * all + j];
        }
    }
    statistics::Estimate made{value, std::sqrt(std::max(0.0, variance)), {}};
    const auto freedom = static_cast<double>(degreesOfFreedom());
    if (freedom > 0) {
        const double wider = std::sqrt(static_cast<double>(counts.telling()) / freedom);
        const double half =
            statistics::studentTQuantile(0.975, freedom) * wider * *made.standardError;
        made.interval = statistics::Interval{value - half, value + half};
    }
    return made;
}

statistics::Estimate OnsetFit::coefficient(std::size_t which) const {
    std::vector<double> weights(coefficients.size(), 0.0);
    weights[which] = 1;
    return combination(weights);
}

Result<OnsetFitting> fitOnset(OnsetLaw law, const OnsetDesign& design) {
    const auto problem = problemOf(law, design);
    if (!problem) {
        return problem.error();
    }
    OnsetFitting fitting{{}, problem->counts, {}};
    if (auto why = whyNoFit(*problem)) {
        fitting.remarks.push_back(std::move(*why));
        return fitting;
    }
    fitting.fit = fitted(*problem);
    if (!fitting.fit) {
        fitting.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "These visits do not settle a mean and a spread: the likelihood has "
                              "no single maximum."),
             {}});
    }
    return fitting;
}

} // namespace bullace::season
