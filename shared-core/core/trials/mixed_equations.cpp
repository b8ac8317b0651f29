#include "core/trials/mixed_equations_matrix.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <map>
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

Sparse lowerOf(const Sparse& matrix) {
    return matrix.triangularView<Eigen::Lower>();
}

// Columns of the matrix, in the order given.
Sparse columnsOf(const Sparse& matrix, const std::vector<int>& columns) {
    Sparse some(matrix.rows(), static_cast<Eigen::Index>(columns.size()));
    for (std::size_t i = 0; i < columns.size(); ++i) {
        some.startVec(static_cast<Eigen::Index>(i));
        for (Sparse::InnerIterator it(matrix, columns[i]); it; ++it) {
            some.insertBackByOuterInner(static_cast<Eigen::Index>(i), it.row()) = it.value();
        }
    }
    some.finalize();
    return some;
}

Eigen::VectorXd valuesAt(const Eigen::VectorXd& values, const std::vector<int>& places) {
    Eigen::VectorXd some(static_cast<Eigen::Index>(places.size()));
    for (std::size_t i = 0; i < places.size(); ++i) {
        some[static_cast<Eigen::Index>(i)] = values[places[i]];
    }
    return some;
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
    factor_.analyse(sparsity_);
}

std::vector<Sparse> MixedEquations::products() {
    std::vector<Sparse> products;
    const auto rows = static_cast<int>(design_.response.size());
    if (isSingle_) {
        patterns_ = {{{0}, static_cast<double>(rows)}};
        Part& part = parts_.emplace_back();
        part.right = design_.transposed * design_.response;
        part.square = design_.response.squaredNorm();
        products.push_back(lowerOf(design_.transposed * Sparse(design_.transposed.transpose())));
        return products;
    }
    std::map<std::uint32_t, std::vector<int>> plots; // rows of each, by their descriptor
    for (int row = 0; row < rows; ++row) {
        auto& plot = plots[design_.plotOf[static_cast<std::size_t>(row)]];
        plot.resize(static_cast<std::size_t>(design_.descriptors), -1);
        plot[design_.descriptorOf[static_cast<std::size_t>(row)]] = row;
    }
    std::map<std::vector<int>, std::vector<std::vector<int>>> byPattern;
    for (const auto& [number, plot] : plots) {
        std::vector<int> descriptors;
        for (int descriptor = 0; descriptor < design_.descriptors; ++descriptor) {
            if (plot[static_cast<std::size_t>(descriptor)] >= 0) {
                descriptors.push_back(descriptor);
            }
        }
        auto& lists = byPattern[descriptors];
        lists.resize(descriptors.size());
        for (std::size_t i = 0; i < descriptors.size(); ++i) {
            lists[i].push_back(plot[static_cast<std::size_t>(descriptors[i])]);
        }
    }
    for (const auto& [descriptors, lists] : byPattern) {
        addPattern(descriptors, lists, products);
    }
    return products;
}

void MixedEquations::addPattern(std::vector<int> descriptors,
                                const std::vector<std::vector<int>>& rows,
                                std::vector<Sparse>& products) {
    for (std::size_t one = 0; one < rows.size(); ++one) {
        const Sparse left = columnsOf(design_.transposed, rows[one]);
        const Eigen::VectorXd leftValues = valuesAt(design_.response, rows[one]);
        for (std::size_t other = 0; other <= one; ++other) {
            const Sparse right = columnsOf(design_.transposed, rows[other]);
            const Eigen::VectorXd rightValues = valuesAt(design_.response, rows[other]);
            Sparse product = left * Sparse(right.transpose());
            Part& part = parts_.emplace_back();
            part.pattern = patterns_.size();
            part.one = static_cast<int>(one);
            part.other = static_cast<int>(other);
            part.right = left * rightValues;
            part.square = leftValues.dot(rightValues);
            if (one != other) {
                product = Sparse(product + Sparse(product.transpose()));
                part.right += right * leftValues;
                part.square *= 2;
            }
            products.push_back(lowerOf(product));
        }
    }
    patterns_.push_back({std::move(descriptors), static_cast<double>(rows.front().size())});
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
    bool isMixed = false;
    for (const RandomBlock& block : design_.random) {
        for (int level = 0; level < block.height() && block.width() > 1; ++level) {
            for (int part = 0; part < block.width(); ++part) {
                span[static_cast<std::size_t>(block.at(level, part))] = {
                    block.at(level, 0), block.at(level, 0) + block.width()};
            }
            isMixed = true;
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
    if (isMixed) {
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

// T' … T of a matrix of this sparsity.
void MixedEquations::scale(Eigen::VectorXd& values) const {
    const bool isDiagonal =
        std::ranges::all_of(roots_, [](const Eigen::MatrixXd& root) { return root.isDiagonal(0); });
    Eigen::VectorXd factor = Eigen::VectorXd::Ones(design_.columns());
    std::vector<Eigen::Triplet<double, std::int32_t>> entries;
    for (std::size_t term = 0; term < design_.random.size(); ++term) {
        const RandomBlock& block = design_.random[term];
        for (int level = 0; level < block.height(); ++level) {
            for (int part = 0; part < block.width(); ++part) {
                factor[block.at(level, part)] = roots_[term](part, part);
                for (int other = 0; other < block.width() && !isDiagonal; ++other) {
                    entries.emplace_back(
                        block.at(level, part), block.at(level, other), roots_[term](part, other));
                }
            }
        }
    }
    if (isDiagonal) {
        for (std::int32_t column = 0; column < sparsity_.cols(); ++column) {
            const double own = factor[column];
            for (auto i = sparsity_.outerIndexPtr()[column];
                 i < sparsity_.outerIndexPtr()[column + 1];
                 ++i) {
                values[i] *= own * factor[sparsity_.innerIndexPtr()[i]];
            }
        }
        return;
    }
    for (int column = 0; column < design_.fixedColumns(); ++column) {
        entries.emplace_back(column, column, 1.0);
    }
    Sparse root(design_.columns(), design_.columns());
    root.setFromTriplets(entries.begin(), entries.end());
    Sparse filled = sparsity_;
    std::copy_n(values.data(), values.size(), filled.valuePtr());
    const Sparse whole = filled.selfadjointView<Eigen::Lower>();
    values = aligned(sparsity_, lowerOf(Sparse(Sparse(root.transpose()) * Sparse(whole * root))));
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
    if (!weigh(at.residual)) {
        return {};
    }
    roots_.clear();
    for (const Eigen::MatrixXd& covariance : at.random) {
        roots_.push_back(rootOf(covariance));
    }
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
