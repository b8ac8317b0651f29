// The derivatives of a mixed model's likelihood by its variances.
//
// With P = V⁻¹ - V⁻¹X(X'V⁻¹X)⁻X'V⁻¹ and V_i the derivative of V, the score is
// -½ [tr(P V_i) - y'P V_i P y] and the average information ½ y'P V_i P V_j P y
// (Gilmour, Thompson & Cullis 1995). All is taken from cross-products: V_i P y is W g for a random
// term, and P f = R⁻¹ (f - W C⁻¹ W' R⁻¹ f).
#include "core/trials/mixed_equations_matrix.hpp"

#include <Eigen/LU>

namespace bullace::trials {

double MixedEquations::errorCovariance(const RandomBlock& block, int level, int a, int b) const {
    const auto term = static_cast<std::size_t>(&block - design_.random.data());
    double sum = 0;
    for (int c = 0; c < block.width(); ++c) {
        for (int d = 0; d < block.width(); ++d) {
            const double weight = roots_[term](a, c) * roots_[term](b, d);
            sum += weight == 0 ? 0
                               : weight * factor_.inverseAt(block.at(level, c), block.at(level, d));
        }
    }
    return sum;
}

// The trace of the inverse relationships times each block of C⁻¹: parts × parts.
Eigen::MatrixXd MixedEquations::relatedTrace(std::size_t term) const {
    const RandomBlock& block = design_.random[term];
    Eigen::MatrixXd trace = Eigen::MatrixXd::Zero(block.width(), block.width());
    const auto add = [&](int row, int column, double weight) {
        for (int c = 0; c < block.width(); ++c) {
            for (int d = 0; d < block.width(); ++d) {
                trace(c, d) += weight * factor_.inverseAt(block.at(row, c), block.at(column, d));
            }
        }
    };
    if (!block.related) {
        for (int level = 0; level < block.height(); ++level) {
            add(level, level, 1);
        }
        return trace;
    }
    const statistics::SparseSymmetric& inverse = block.related->inverse;
    for (std::uint32_t column = 0; column < inverse.size; ++column) {
        for (auto i = inverse.columnStart[column]; i < inverse.columnStart[column + 1]; ++i) {
            const auto row = static_cast<int>(inverse.row[i]);
            const bool isOff = inverse.row[i] != column;
            add(row, static_cast<int>(column), isOff ? 2 * inverse.value[i] : inverse.value[i]);
        }
    }
    return (trace + trace.transpose()) / 2;
}

void MixedEquations::restOfParts() {
    for (Part& part : parts_) {
        part.rest = part.right - times(part.values, effects_);
        part.restSquare = part.square - effects_.dot(part.right) - effects_.dot(part.rest);
    }
}

MixedEquations::Direction MixedEquations::randomDirection(const Parameter& parameter,
                                                          const Eigen::VectorXd& pulled,
                                                          double& score) const {
    const RandomBlock& block = design_.random[parameter.term];
    const Eigen::Map<const Eigen::MatrixXd> own(
        pulled.data() + block.first, block.width(), block.height());
    // The relationship matrix times it.
    const Eigen::Map<const Eigen::MatrixXd> effects(
        effects_.data() + block.first, block.width(), block.height());
    const Eigen::MatrixXd related =
        block.related ? Eigen::MatrixXd(at_.random[parameter.term].inverse() * effects)
                      : Eigen::MatrixXd(own);
    const int a = parameter.row;
    const int b = parameter.column;
    const double twice = a == b ? 1 : 2;
    const Eigen::MatrixXd inverseRoot = roots_[parameter.term].inverse();
    const Eigen::MatrixXd kept =
        block.height() * Eigen::MatrixXd::Identity(block.width(), block.width()) -
        relatedTrace(parameter.term);
    const double trace = twice * (inverseRoot.transpose() * kept * inverseRoot)(a, b);
    score = -0.5 * (trace - twice * own.row(a).dot(related.row(b)));

    Direction direction;
    direction.effects = Eigen::VectorXd::Zero(effects_.size());
    Eigen::Map<Eigen::MatrixXd> moved(
        direction.effects.data() + block.first, block.width(), block.height());
    moved.row(a) += related.row(b);
    if (a != b) {
        moved.row(b) += related.row(a);
    }
    direction.product = times(data_, direction.effects);
    return direction;
}

// R⁻¹ E R⁻¹ of one pattern.
Eigen::MatrixXd MixedEquations::changed(const Direction& one, std::size_t pattern) const {
    return weights_[pattern] * one.change[pattern] * weights_[pattern];
}

// tr(C⁻¹ W' R⁻¹ E R⁻¹ W).
double MixedEquations::residualTrace(const ByPattern& change) const {
    if (isSingle_) {
        double trace = design_.columns();
        for (std::size_t term = 0; term < design_.random.size(); ++term) {
            trace -= relatedTrace(term).trace();
        }
        return trace * weights_[0](0, 0);
    }
    Eigen::VectorXd values = Eigen::VectorXd::Zero(sparsity_.nonZeros());
    for (const Part& part : parts_) {
        const Eigen::MatrixXd& weight = weights_[part.pattern];
        values += (weight * change[part.pattern] * weight)(part.one, part.other) * part.values;
    }
    scale(values);
    double trace = 0;
    for (std::int32_t column = 0; column < sparsity_.cols(); ++column) {
        for (auto i = sparsity_.outerIndexPtr()[column]; i < sparsity_.outerIndexPtr()[column + 1];
             ++i) {
            const std::int32_t row = sparsity_.innerIndexPtr()[i];
            trace += (row == column ? 1 : 2) * values[i] * factor_.inverseAt(row, column);
        }
    }
    return trace;
}

MixedEquations::Direction MixedEquations::residualDirection(const Parameter& parameter,
                                                            double& score) const {
    Direction direction;
    double trace = 0;
    for (std::size_t number = 0; number < patterns_.size(); ++number) {
        const Pattern& pattern = patterns_[number];
        const auto wide = static_cast<Eigen::Index>(pattern.descriptors.size());
        Eigen::MatrixXd change = Eigen::MatrixXd::Zero(wide, wide);
        for (Eigen::Index i = 0; i < wide; ++i) {
            for (Eigen::Index j = 0; j < wide; ++j) {
                const int one = pattern.descriptors[static_cast<std::size_t>(i)];
                const int other = pattern.descriptors[static_cast<std::size_t>(j)];
                const bool isIt = (one == parameter.row && other == parameter.column) ||
                                  (one == parameter.column && other == parameter.row);
                change(i, j) = isIt ? 1 : 0;
            }
        }
        trace += pattern.plots * (weights_[number] * change).trace();
        direction.change.push_back(std::move(change));
    }
    trace -= residualTrace(direction.change);
    direction.product = Eigen::VectorXd::Zero(effects_.size());
    double square = 0;
    for (const Part& part : parts_) {
        const double weight = changed(direction, part.pattern)(part.one, part.other);
        direction.product += weight * part.rest;
        square += weight * part.restSquare;
    }
    score = -0.5 * (trace - square);
    return direction;
}

// y'P V_i R⁻¹ V_j P y.
double MixedEquations::product(const Direction& one, const Direction& other) const {
    if (one.effects.size() > 0) {
        return one.effects.dot(other.product);
    }
    if (other.effects.size() > 0) {
        return other.effects.dot(one.product);
    }
    double sum = 0;
    for (const Part& part : parts_) {
        const Eigen::MatrixXd both =
            changed(one, part.pattern) * other.change[part.pattern] * weights_[part.pattern];
        sum += (both(part.one, part.other) + both(part.other, part.one)) / 2 * part.restSquare;
    }
    return sum;
}

MixedEquations::Slope MixedEquations::slope(const std::vector<Parameter>& parameters) {
    invert();
    restOfParts();
    Eigen::VectorXd pulled = Eigen::VectorXd::Zero(effects_.size()); // W' P y
    for (const Part& part : parts_) {
        pulled += weights_[part.pattern](part.one, part.other) * part.rest;
    }
    const auto count = static_cast<Eigen::Index>(parameters.size());
    Slope slope{Eigen::VectorXd(count), Eigen::MatrixXd(count, count)};
    std::vector<Direction> directions;
    for (Eigen::Index i = 0; i < count; ++i) {
        const Parameter& parameter = parameters[static_cast<std::size_t>(i)];
        const bool isRandom = parameter.term < design_.random.size();
        directions.push_back(isRandom ? randomDirection(parameter, pulled, slope.score[i])
                                      : residualDirection(parameter, slope.score[i]));
        directions.back().solved = covarianceTimes(directions.back().product);
    }
    for (Eigen::Index i = 0; i < count; ++i) {
        for (Eigen::Index j = 0; j <= i; ++j) {
            const Direction& one = directions[static_cast<std::size_t>(i)];
            const Direction& other = directions[static_cast<std::size_t>(j)];
            slope.information(i, j) = 0.5 * (product(one, other) - one.product.dot(other.solved));
            slope.information(j, i) = slope.information(i, j);
        }
    }
    return slope;
}

} // namespace bullace::trials
