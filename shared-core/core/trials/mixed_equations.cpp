#include "core/trials/mixed_equations_matrix.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace bullace::trials {

namespace {

// A matrix whose product with its own transpose is the covariance matrix, which may be singular.
Eigen::MatrixXd rootOf(const Eigen::MatrixXd& covariance) {
    if (covariance.rows() == 1 || covariance.isDiagonal(0)) {
        return covariance.diagonal().cwiseMax(0).cwiseSqrt().asDiagonal();
    }
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(covariance);
    return solver.eigenvectors() * solver.eigenvalues().cwiseMax(0).cwiseSqrt().asDiagonal();
}

// The values of `part` at the places of `whole`, which has them all.
Eigen::VectorXd aligned(const Sparse& whole, const Sparse& part) {
    Eigen::VectorXd values = Eigen::VectorXd::Zero(whole.nonZeros());
    for (std::int32_t column = 0; column < whole.cols(); ++column) {
        std::int32_t place = whole.outerIndexPtr()[column];
        for (Sparse::InnerIterator it(part, column); it; ++it) {
            while (whole.innerIndexPtr()[place] != it.row()) {
                ++place;
            }
            values[place] = it.value();
        }
    }
    return values;
}

} // namespace

double Parameter::in(const Variances& variances) const {
    return term < variances.random.size() ? variances.random[term](row, column)
                                          : variances.residual(row, column);
}

void Parameter::set(Variances& variances, double value) const {
    Eigen::MatrixXd& matrix =
        term < variances.random.size() ? variances.random[term] : variances.residual;
    matrix(row, column) = value;
    matrix(column, row) = value;
}

std::vector<Parameter> parametersOf(const MixedDesign& design) {
    std::vector<Parameter> parameters;
    const auto addTriangle = [&](std::size_t term, int width, bool isWhole) {
        for (int row = 0; row < width; ++row) {
            for (int column = isWhole ? 0 : row; column <= row; ++column) {
                parameters.push_back({term, row, column});
            }
        }
    };
    for (std::size_t term = 0; term < design.random.size(); ++term) {
        addTriangle(term, design.random[term].width(), design.random[term].isCorrelated);
    }
    addTriangle(design.random.size(), design.descriptors, true);
    return parameters;
}

MixedEquations::MixedEquations(const MixedDesign& design)
    : design_(design),
      isSingle_(design.descriptors == 1) {
    makeSparsity(products());
    placeInverses();
    roots_.resize(design.random.size());
    placeRoots();
    factor_.analyse(sparsity_);
}

// All places that any part has, the diagonal, the inverse relationships; and where a term's parts
// are mixed by its covariance, whole blocks of them.
void MixedEquations::makeSparsity(const std::vector<Sparse>& products) {
    using Triplet = Eigen::Triplet<double, std::int32_t>;
    const int size = design_.columns();
    std::vector<Triplet> entries;
    for (int column = 0; column < size; ++column) {
        entries.emplace_back(column, column, 1.0);
    }
    std::vector<std::pair<int, int>> span(static_cast<std::size_t>(size)); // of each column's level
    for (int column = 0; column < size; ++column) {
        span[static_cast<std::size_t>(column)] = {column, column + 1};
    }
    for (const RandomBlock& block : design_.random) {
        for (int level = 0; level < block.height() && block.width() > 1; ++level) {
            for (int part = 0; part < block.width(); ++part) {
                span[static_cast<std::size_t>(block.at(level, part))] = {
                    block.at(level, 0), block.at(level, 0) + block.width()};
            }
            isMixed_ = true;
        }
        if (!block.related) {
            continue;
        }
        const statistics::SparseSymmetric& inverse = block.related->inverse;
        for (std::uint32_t column = 0; column < inverse.size; ++column) {
            for (auto i = inverse.columnStart[column]; i < inverse.columnStart[column + 1]; ++i) {
                entries.emplace_back(block.at(static_cast<int>(inverse.row[i]), 0),
                                     block.at(static_cast<int>(column), 0),
                                     1.0);
            }
        }
    }
    Sparse whole(size, size);
    whole.setFromTriplets(entries.begin(), entries.end());
    for (const Sparse& product : products) {
        whole = Sparse(whole + product);
    }
    if (isMixed_) {
        entries.clear();
        for (int column = 0; column < size; ++column) {
            for (Sparse::InnerIterator it(whole, column); it; ++it) {
                const auto rows = span[static_cast<std::size_t>(it.row())];
                const auto columns = span[static_cast<std::size_t>(column)];
                for (int c = columns.first; c < columns.second; ++c) {
                    for (int r = std::max(rows.first, c); r < rows.second; ++r) {
                        entries.emplace_back(r, c, 1.0);
                    }
                }
            }
        }
        whole.setFromTriplets(entries.begin(), entries.end());
    }
    sparsity_ = std::move(whole);
    sparsity_.makeCompressed();
    for (std::size_t part = 0; part < products.size(); ++part) {
        parts_[part].values = aligned(sparsity_, products[part]);
    }
}

std::int64_t MixedEquations::placeOf(int row, int column) const {
    const std::int32_t* first = sparsity_.innerIndexPtr() + sparsity_.outerIndexPtr()[column];
    const std::int32_t* last = sparsity_.innerIndexPtr() + sparsity_.outerIndexPtr()[column + 1];
    return std::lower_bound(first, last, row) - sparsity_.innerIndexPtr();
}

void MixedEquations::placeInverses() {
    for (const RandomBlock& block : design_.random) {
        for (int part = 0; part < block.width(); ++part) {
            for (int level = 0; level < block.height() && !block.related; ++level) {
                const int column = block.at(level, part);
                inverses_.push_back({placeOf(column, column), 1.0});
            }
            if (!block.related) {
                continue;
            }
            const statistics::SparseSymmetric& inverse = block.related->inverse;
            for (std::uint32_t column = 0; column < inverse.size; ++column) {
                for (auto i = inverse.columnStart[column]; i < inverse.columnStart[column + 1];
                     ++i) {
                    inverses_.push_back({placeOf(block.at(static_cast<int>(inverse.row[i]), part),
                                                 block.at(static_cast<int>(column), part)),
                                         inverse.value[i]});
                }
            }
        }
    }
}

// The inverse of each pattern's residual covariance, and log |R|.
bool MixedEquations::weigh(const Eigen::MatrixXd& residual) {
    weights_.clear();
    logResidual_ = 0;
    for (const Pattern& pattern : patterns_) {
        const auto wide = static_cast<Eigen::Index>(pattern.descriptors.size());
        Eigen::MatrixXd own(wide, wide);
        for (Eigen::Index i = 0; i < wide; ++i) {
            for (Eigen::Index j = 0; j < wide; ++j) {
                own(i, j) = residual(pattern.descriptors[static_cast<std::size_t>(i)],
                                     pattern.descriptors[static_cast<std::size_t>(j)]);
            }
        }
        const Eigen::LLT<Eigen::MatrixXd> factor(own);
        if (factor.info() != Eigen::Success) {
            return false;
        }
        weights_.push_back(factor.solve(Eigen::MatrixXd::Identity(wide, wide)));
        logResidual_ +=
            2 * pattern.plots * Eigen::MatrixXd(factor.matrixL()).diagonal().array().log().sum();
    }
    return true;
}

// T' … T of a matrix of this sparsity: of single columns by their factors, of levels with several
// parts by whole blocks, all of whose places are there.
void MixedEquations::scale(Eigen::VectorXd& values) const {
    const std::int32_t* start = sparsity_.outerIndexPtr();
    const std::int32_t* row = sparsity_.innerIndexPtr();
    for (std::int32_t column = 0; column < sparsity_.cols();) {
        const Eigen::MatrixXd& right = *rootAt_[static_cast<std::size_t>(column)];
        const auto wide = static_cast<std::int32_t>(right.cols());
        if (wide == 1 && !isMixed_) {
            for (std::int32_t i = start[column]; i < start[column + 1]; ++i) {
                values[i] *= right(0, 0) * (*rootAt_[static_cast<std::size_t>(row[i])])(0, 0);
            }
        } else {
            scaleBlocks(column, wide, values);
        }
        column += wide;
    }
}

// The blocks of some neighbouring columns, which have the same rows below their own.
void MixedEquations::scaleBlocks(std::int32_t column,
                                 std::int32_t wide,
                                 Eigen::VectorXd& values) const {
    const Eigen::MatrixXd& right = *rootAt_[static_cast<std::size_t>(column)];
    const std::int32_t* start = sparsity_.outerIndexPtr();
    Eigen::MatrixXd block(wide, wide);
    // Element (r, c) of the columns' own block stands at start[column + c] + r - c.
    for (std::int32_t c = 0; c < wide; ++c) {
        for (std::int32_t r = c; r < wide; ++r) {
            block(r, c) = values[start[column + c] + r - c];
            block(c, r) = block(r, c);
        }
    }
    block = (right.transpose() * block * right).eval();
    for (std::int32_t c = 0; c < wide; ++c) {
        for (std::int32_t r = c; r < wide; ++r) {
            values[start[column + c] + r - c] = block(r, c);
        }
    }
    for (std::int32_t i = wide; i < start[column + 1] - start[column];) {
        const std::int32_t row = sparsity_.innerIndexPtr()[start[column] + i];
        const Eigen::MatrixXd& left = *rootAt_[static_cast<std::size_t>(row)];
        const auto high = static_cast<std::int32_t>(left.rows());
        block.resize(high, wide);
        for (std::int32_t c = 0; c < wide; ++c) {
            block.col(c) = values.segment(start[column + c] + i - c, high);
        }
        block = (left.transpose() * block * right).eval();
        for (std::int32_t c = 0; c < wide; ++c) {
            values.segment(start[column + c] + i - c, high) = block.col(c);
        }
        i += high;
    }
}

// Each column's T, for scale().
void MixedEquations::placeRoots() {
    static const Eigen::MatrixXd kOne = Eigen::MatrixXd::Identity(1, 1);
    rootAt_.assign(static_cast<std::size_t>(design_.columns()), &kOne);
    for (std::size_t term = 0; term < design_.random.size(); ++term) {
        const RandomBlock& block = design_.random[term];
        for (int column = 0; column < block.columns(); ++column) {
            rootAt_[static_cast<std::size_t>(block.first + column)] = &roots_[term];
        }
    }
}

Eigen::VectorXd MixedEquations::times(const Eigen::VectorXd& values,
                                      const Eigen::VectorXd& vector) const {
    const Eigen::Map<const Sparse> lower(sparsity_.rows(),
                                         sparsity_.cols(),
                                         sparsity_.nonZeros(),
                                         sparsity_.outerIndexPtr(),
                                         sparsity_.innerIndexPtr(),
                                         values.data());
    return lower.selfadjointView<Eigen::Lower>() * vector;
}

void MixedEquations::spread(Eigen::VectorXd& vector, bool isTransposed) const {
    for (std::size_t term = 0; term < design_.random.size(); ++term) {
        const RandomBlock& block = design_.random[term];
        Eigen::Map<Eigen::MatrixXd> levels(
            vector.data() + block.first, block.width(), block.height());
        if (block.width() == 1) {
            levels *= roots_[term](0, 0);
        } else if (isTransposed) {
            levels = (roots_[term].transpose() * levels).eval();
        } else {
            levels = (roots_[term] * levels).eval();
        }
    }
}

Eigen::VectorXd MixedEquations::covarianceTimes(const Eigen::VectorXd& right) const {
    Eigen::VectorXd vector = right;
    spread(vector, true);
    vector = factor_.solve(vector);
    spread(vector, false);
    return vector;
}

std::optional<double> MixedEquations::logLikelihood(const Variances& at) {
    at_ = at;
    isInverted_ = false;
    if (!weigh(at.residual)) {
        return {};
    }
    roots_.resize(at.random.size());
    std::ranges::transform(at.random, roots_.begin(), rootOf);
    data_ = Eigen::VectorXd::Zero(sparsity_.nonZeros());
    Eigen::VectorXd right = Eigen::VectorXd::Zero(design_.columns());
    for (const Part& part : parts_) {
        const double weight = weights_[part.pattern](part.one, part.other);
        data_ += weight * part.values;
        right += weight * part.right;
    }
    Eigen::VectorXd values = data_;
    scale(values);
    for (const Placed& placed : inverses_) {
        values[placed.place] += placed.value;
    }
    std::copy_n(values.data(), values.size(), sparsity_.valuePtr());
    if (!factor_.factorise(sparsity_)) {
        return {};
    }
    effects_ = covarianceTimes(right);
    double weighted = 0;
    for (const Part& part : parts_) {
        weighted +=
            weights_[part.pattern](part.one, part.other) * (part.square - part.right.dot(effects_));
    }
    double logRelated = 0;
    for (const RandomBlock& block : design_.random) {
        logRelated += block.related ? block.width() * block.related->logDeterminant : 0;
    }
    const auto left = static_cast<double>(design_.response.size() - design_.fixedColumns());
    const double value = -0.5 * (left * std::log(2 * std::numbers::pi) + logResidual_ +
                                 factor_.logDeterminant() + logRelated + weighted);
    return std::isfinite(value) ? std::optional(value) : std::nullopt;
}

} // namespace bullace::trials
