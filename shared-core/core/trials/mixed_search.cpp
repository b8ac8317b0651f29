#include "core/trials/mixed_search_matrix.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <limits>
#include <nlopt.hpp>

namespace bullace::trials {

namespace {

constexpr int kMostSteps = 60;
constexpr int kMostHalvings = 25;
constexpr double kCloseEnough = 1e-7; // of each number, relative, before the last step
constexpr double kNearZero = 1e-4;    // of the residual variance: where it is tried to leave 0

double varianceOf(const Eigen::VectorXd& response) {
    return (response.array() - response.mean()).square().sum() /
           static_cast<double>(response.size() - 1);
}

// The mean square of a column's entries: a slope's variance is smaller the longer its covariate.
double squareOf(const MixedDesign& design, const RandomBlock& block, int part) {
    double sum = 0;
    for (std::int32_t row = 0; row < design.transposed.cols(); ++row) {
        for (Sparse::InnerIterator it(design.transposed, row); it; ++it) {
            const auto place = static_cast<int>(it.row()) - block.first;
            const bool isIts =
                place >= 0 && place < block.columns() && place % block.width() == part;
            sum += isIts ? it.value() * it.value() : 0;
        }
    }
    return std::max(sum / static_cast<double>(design.transposed.cols()), 1e-12);
}

// All terms and the residual have the same share of the response's variance.
Variances startOf(const MixedDesign& design) {
    Variances start;
    const double share =
        varianceOf(design.response) / (static_cast<double>(design.random.size()) + 1);
    for (const RandomBlock& block : design.random) {
        Eigen::MatrixXd covariance = Eigen::MatrixXd::Zero(block.width(), block.width());
        for (int part = 0; part < block.width(); ++part) {
            const bool isPlain = block.width() == 1 && block.parts.front().empty();
            covariance(part, part) =
                share / (isPlain ? 1 : block.width() * squareOf(design, block, part));
        }
        start.random.push_back(std::move(covariance));
    }
    start.residual = Eigen::MatrixXd::Identity(design.descriptors, design.descriptors) * share;
    return start;
}

// Whether all covariance matrices are positive definite, but for single variances, which may be 0.
bool isPossible(const Variances& at) {
    const auto isDefinite = [](const Eigen::MatrixXd& covariance) {
        if (covariance.rows() == 1 || covariance.isDiagonal(0)) {
            return covariance.diagonal().minCoeff() >= 0;
        }
        const Eigen::VectorXd length = covariance.diagonal().cwiseSqrt();
        if (!(covariance.diagonal().minCoeff() > 0)) {
            return false;
        }
        const Eigen::MatrixXd correlation =
            length.cwiseInverse().asDiagonal() * covariance * length.cwiseInverse().asDiagonal();
        return Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(correlation).eigenvalues()[0] > 1e-7;
    };
    return at.residual.diagonal().minCoeff() > 0 && isDefinite(at.residual) &&
           std::ranges::all_of(at.random, isDefinite);
}

class Steps {
public:
    Steps(MixedEquations& equations, Variances start)
        : equations_(equations),
          parameters_(parametersOf(equations.design())),
          isHeld_(parameters_.size(), false),
          lowered_(parameters_.size(), -10) {
        search_.at = std::move(start);
    }

    // False where it does not arrive.
    bool climb() {
        const auto first = evaluate(search_.at);
        if (!first) {
            return false;
        }
        accept(search_.at, *first);
        for (int step = 0; step < kMostSteps; ++step) {
            if (!isAtTop_) {
                if (!stepUp()) {
                    return false;
                }
                continue;
            }
            if (!letGo()) {
                search_.hasConverged = true;
                return true;
            }
        }
        return false;
    }

    [[nodiscard]] Search result() const {
        Search search = search_;
        for (std::size_t i = 0; i < parameters_.size(); ++i) {
            (isHeld_[i] ? search.held : search.free).push_back(parameters_[i]);
        }
        return search;
    }

private:
    std::optional<double> evaluate(const Variances& at) {
        ++search_.evaluations;
        isThere_ = false;
        return equations_.logLikelihood(at);
    }
    void accept(Variances at, double logLikelihood) {
        search_.at = std::move(at);
        search_.logLikelihood = logLikelihood;
        isThere_ = true; // what was evaluated last is what is kept
    }

    [[nodiscard]] std::vector<std::size_t> freeOnes() const {
        std::vector<std::size_t> free;
        for (std::size_t i = 0; i < parameters_.size(); ++i) {
            if (!isHeld_[i]) {
                free.push_back(i);
            }
        }
        return free;
    }

    // A variance that is alone may end at 0; one among others only with all of them.
    [[nodiscard]] bool isAlone(const Parameter& parameter) const {
        const auto& random = equations_.design().random;
        return parameter.term < random.size() && parameter.isVariance() &&
               !random[parameter.term].isCorrelated;
    }

    bool stepUp() {
        const std::vector<std::size_t> free = freeOnes();
        std::vector<Parameter> parameters;
        for (const std::size_t i : free) {
            parameters.push_back(parameters_[i]);
        }
        if (!isThere_) {
            evaluate(search_.at);
        }
        const MixedEquations::Slope slope = equations_.slope(parameters);
        // In units of each number's own size: variances may differ by many powers of ten.
        Eigen::VectorXd size(slope.score.size());
        for (Eigen::Index i = 0; i < size.size(); ++i) {
            const Parameter& each = parameters[static_cast<std::size_t>(i)];
            size[i] = scaleOf(each);
        }
        Eigen::MatrixXd information = size.asDiagonal() * slope.information * size.asDiagonal();
        information.diagonal().array() += 1e-12 * information.diagonal().maxCoeff();
        const Eigen::VectorXd score = size.cwiseProduct(slope.score);
        const Eigen::VectorXd step = information.ldlt().solve(score);
        if (!step.allFinite()) {
            return false;
        }
        const bool isClose = step.cwiseAbs().maxCoeff() < kCloseEnough;
        const bool isTaken = take(free, size.cwiseProduct(step));
        isAtTop_ = isClose;
        return isTaken || isClose;
    }

    [[nodiscard]] double scaleOf(const Parameter& parameter) const {
        const auto diagonal = [&](int place) {
            return Parameter{parameter.term, place, place}.in(search_.at);
        };
        return std::sqrt(diagonal(parameter.row) * diagonal(parameter.column));
    }

    // Where a variance goes that a step leads below 0: close to it the first time, since the step
    // may have come from far away, and to 0 itself where the next one leads there again.
    double endsAt(std::size_t parameter, double now) {
        if (lowered_[parameter] == taken_) {
            return now / 10;
        }
        const bool isAgain = lowered_[parameter] + 1 == taken_;
        lowered_[parameter] = taken_;
        return isAgain ? 0 : now / 10;
    }

    // The step, halved until the likelihood does not fall.
    bool take(const std::vector<std::size_t>& free, const Eigen::VectorXd& step) {
        const double slack = 1e-9 * (1 + std::abs(search_.logLikelihood) * 1e-3);
        double part = 1;
        for (int halving = 0; halving < kMostHalvings; ++halving, part /= 2) {
            Variances next = search_.at;
            std::vector<std::size_t> ended;
            for (std::size_t i = 0; i < free.size(); ++i) {
                const Parameter& parameter = parameters_[free[i]];
                double value = parameter.in(search_.at) + part * step[static_cast<Eigen::Index>(i)];
                if (isAlone(parameter) && value <= 0) {
                    value = endsAt(free[i], parameter.in(search_.at));
                    if (value == 0) {
                        ended.push_back(free[i]);
                    }
                }
                parameter.set(next, value);
            }
            if (!isPossible(next)) {
                continue;
            }
            const auto value = evaluate(next);
            if (value && *value >= search_.logLikelihood - slack) {
                accept(std::move(next), *value);
                for (const std::size_t i : ended) {
                    isHeld_[i] = true;
                }
                ++taken_;
                return true;
            }
        }
        return false;
    }

    // Whether the likelihood rises where a variance leaves 0; it is free again then.
    bool letGo() {
        for (std::size_t i = 0; i < parameters_.size(); ++i) {
            if (!isHeld_[i]) {
                continue;
            }
            Variances next = search_.at;
            parameters_[i].set(next, kNearZero * search_.at.residual(0, 0));
            const auto value = evaluate(next);
            if (value && *value > search_.logLikelihood + 1e-7) {
                accept(std::move(next), *value);
                isHeld_[i] = false;
                isAtTop_ = false;
                return true;
            }
        }
        return false;
    }

    MixedEquations& equations_;
    std::vector<Parameter> parameters_;
    std::vector<bool> isHeld_;
    std::vector<int> lowered_; // at which step each was last led below 0
    int taken_ = 0;            // steps
    Search search_;
    bool isAtTop_ = false;
    bool isThere_ = false; // the equations are at search_.at
};

// The search without derivatives: over the roots of all covariance matrices, which hold no
// impossible values. The diagonals of roots are not below 0.
class Roots {
public:
    explicit Roots(MixedEquations& equations)
        : equations_(equations),
          parameters_(parametersOf(equations.design())) {}

    std::optional<Search> search(const Variances& start) {
        const std::vector<double> first = rootsOf(start);
        nlopt::opt search(nlopt::LN_BOBYQA, static_cast<unsigned>(first.size()));
        std::vector<double> least(first.size(), -std::numeric_limits<double>::infinity());
        std::vector<double> step(first.size());
        for (std::size_t i = 0; i < first.size(); ++i) {
            least[i] = parameters_[i].isVariance() ? 0.0 : least[i];
            step[i] = std::max(std::abs(first[i]) / 4, 0.05);
        }
        search.set_lower_bounds(least);
        search.set_initial_step(step);
        search.set_xtol_abs(1e-10);
        search.set_xtol_rel(1e-9);
        search.set_maxeval(4000);
        search.set_max_objective([](const std::vector<double>& at,
                                    std::vector<double>&,
                                    void* self) { return static_cast<Roots*>(self)->valueAt(at); },
                                 this);
        std::vector<double> at = first;
        double value = 0;
        try {
            search.optimize(at, value);
        } catch (const std::exception&) {
            // It stops where rounding ends it; the best place is kept.
        }
        return best(at);
    }

private:
    static constexpr double kImpossible = -1e300;

    double valueAt(const std::vector<double>& at) {
        ++evaluations_;
        return equations_.logLikelihood(variancesOf(at)).value_or(kImpossible);
    }

    std::optional<Search> best(const std::vector<double>& at) {
        Search search;
        search.at = variancesOf(at);
        const auto value = equations_.logLikelihood(search.at);
        if (!value) {
            return {};
        }
        search.logLikelihood = *value;
        search.hasConverged = true;
        search.evaluations = evaluations_;
        for (const Parameter& parameter : parameters_) {
            const double size = parameter.in(search.at) / search.at.residual(0, 0);
            const bool isZero = parameter.isVariance() && size < 1e-9;
            if (isZero) {
                parameter.set(search.at, 0);
            }
            (isZero ? search.held : search.free).push_back(parameter);
        }
        search.isSingular = !isPossible(search.at);
        return search;
    }

    // Lower triangular roots, relative to a residual of 1 at the start.
    [[nodiscard]] std::vector<double> rootsOf(const Variances& at) const {
        std::vector<double> roots;
        for (const Parameter& parameter : parameters_) {
            const Eigen::MatrixXd& covariance =
                parameter.term < at.random.size() ? at.random[parameter.term] : at.residual;
            const Eigen::MatrixXd root = Eigen::LLT<Eigen::MatrixXd>(covariance).matrixL();
            roots.push_back(root(parameter.row, parameter.column));
        }
        return roots;
    }

    [[nodiscard]] Variances variancesOf(const std::vector<double>& at) const {
        Variances variances = equations_.at();
        for (Eigen::MatrixXd& covariance : variances.random) {
            covariance.setZero();
        }
        variances.residual.setZero();
        for (std::size_t i = 0; i < at.size(); ++i) {
            const Parameter& parameter = parameters_[i];
            Eigen::MatrixXd& root = parameter.term < variances.random.size()
                                        ? variances.random[parameter.term]
                                        : variances.residual;
            root(parameter.row, parameter.column) = at[i];
        }
        for (Eigen::MatrixXd& root : variances.random) {
            root = (root * root.transpose()).eval();
        }
        variances.residual = (variances.residual * variances.residual.transpose()).eval();
        return variances;
    }

    MixedEquations& equations_;
    std::vector<Parameter> parameters_;
    int evaluations_ = 0;
};

} // namespace

std::optional<Search> searchVariances(MixedEquations& equations) {
    const Variances start = startOf(equations.design());
    Steps steps(equations, start);
    if (steps.climb()) {
        return steps.result();
    }
    return Roots(equations).search(start);
}

std::optional<Search> atVariances(MixedEquations& equations, Variances known) {
    const auto value = equations.logLikelihood(known);
    if (!value) {
        return {};
    }
    Search search;
    search.at = std::move(known);
    search.logLikelihood = *value;
    search.hasConverged = true;
    search.evaluations = 1;
    return search;
}

} // namespace bullace::trials
