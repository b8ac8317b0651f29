#include "core/trials/mixed_results_matrix.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::trials {

namespace {

using Eigen::VectorXd;

// The mean over all that is fixed, and how its error goes together with each effect's.
struct Overall {
    double value = 0;
    double variance = 0;
    VectorXd withEffects;
};

Overall overallOf(const MixedEquations& equations, const MixedSpec& spec) {
    const MixedDesign& design = equations.design();
    VectorXd weights = VectorXd::Zero(design.columns());
    weights.head(design.fixedColumns()) = overallWeights(design, spec);
    Overall overall;
    overall.withEffects = equations.covarianceTimes(weights);
    overall.value = weights.dot(equations.effects()) + (spec.hasIntercept ? design.means[0] : 0);
    overall.variance = weights.dot(overall.withEffects);
    return overall;
}

// A level's own variance: a related one's is greater where it is inbred.
double ownVariance(const RandomBlock& block, int level, double variance) {
    const bool isInbred = block.related && !block.related->inbreeding.empty();
    return isInbred ? variance * (1 + block.related->inbreeding[static_cast<std::size_t>(level)])
                    : variance;
}

RandomPredictions predictionsOf(const MixedEquations& equations,
                                const RandomBlock& block,
                                int part,
                                const Overall& overall) {
    const auto term = static_cast<std::size_t>(&block - equations.design().random.data());
    RandomPredictions predictions{
        block.name, block.parts[static_cast<std::size_t>(part)], 0, {}, {}};
    predictions.variance = equations.at().random[term](part, part);
    VectorXd ones = VectorXd::Zero(equations.design().columns());
    double trace = 0;
    for (int level = 0; level < block.height(); ++level) {
        const int column = block.at(level, part);
        Prediction each;
        each.level = block.levels[static_cast<std::size_t>(level)];
        each.value = equations.effects()[column];
        each.predictionErrorVariance =
            std::max(0.0, equations.errorCovariance(block, level, part, part));
        const double own = ownVariance(block, level, predictions.variance);
        if (own > 0) {
            each.reliability = std::clamp(1 - each.predictionErrorVariance / own, 0.0, 1.0);
        }
        each.total = overall.value + each.value;
        each.totalStandardError = std::sqrt(std::max(
            0.0,
            overall.variance + 2 * overall.withEffects[column] + each.predictionErrorVariance));
        ones[column] = 1;
        trace += each.predictionErrorVariance;
        predictions.levels.push_back(std::move(each));
    }
    const double levels = block.height();
    if (levels > 1) {
        const double sum = ones.dot(equations.covarianceTimes(ones));
        predictions.meanVarianceOfDifference = 2 * (trace - sum / levels) / (levels - 1);
    }
    return predictions;
}

RandomPredictions valuesOf(const MixedEquations& equations, const RandomBlock& block, int part) {
    RandomPredictions predictions{
        block.name, block.parts[static_cast<std::size_t>(part)], 0, {}, {}};
    for (int level = 0; level < block.height(); ++level) {
        Prediction each;
        each.level = block.levels[static_cast<std::size_t>(level)];
        each.value = equations.effects()[block.at(level, part)];
        predictions.levels.push_back(std::move(each));
    }
    return predictions;
}

} // namespace

void tellPredictions(MixedEquations& equations,
                     const MixedSpec& spec,
                     bool hasErrors,
                     MixedFit& fit) {
    if (hasErrors) {
        equations.invert();
    }
    const Overall overall = hasErrors ? overallOf(equations, spec) : Overall{};
    for (const RandomBlock& block : equations.design().random) {
        for (int part = 0; part < block.width(); ++part) {
            fit.predictions.push_back(hasErrors ? predictionsOf(equations, block, part, overall)
                                                : valuesOf(equations, block, part));
        }
    }
}

} // namespace bullace::trials
