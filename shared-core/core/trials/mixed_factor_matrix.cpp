#include "core/trials/mixed_factor_matrix.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::trials {

namespace {

constexpr int kSmall = 20;        // of so many rows all are dense
constexpr int kMostDense = 6000;   // rows
constexpr double kDenseFrom = 0.6; // of the trailing block's elements

// The lower triangle in the order of elimination; its values are the places in `lower`, from 1.
Sparse permuted(const Sparse& lower, const std::vector<std::int32_t>& at) {
    std::vector<Eigen::Triplet<double, std::int32_t>> entries;
    entries.reserve(static_cast<std::size_t>(lower.nonZeros()));
    double number = 1;
    for (std::int32_t column = 0; column < lower.cols(); ++column) {
        for (Sparse::InnerIterator it(lower, column); it; ++it) {
            const auto one = at[static_cast<std::size_t>(it.row())];
            const auto other = at[static_cast<std::size_t>(column)];
            entries.emplace_back(std::max(one, other), std::min(one, other), number);
            number += 1;
        }
    }
    Sparse result(lower.rows(), lower.cols());
    result.setFromTriplets(entries.begin(), entries.end());
    return result;
}

// The rows of each column of the factor, below its diagonal, ascending.
// Source  Liu 1990, SIAM J. Matrix Anal. Appl. 11:134-172 (elimination trees).
std::vector<std::vector<std::int32_t>> factorRows(const Sparse& lower) {
    const auto size = static_cast<std::size_t>(lower.cols());
    const Sparse upper = lower.transpose();
    std::vector<std::int32_t> parent(size, -1);
    std::vector<std::int32_t> seen(size, -1);
    std::vector<std::vector<std::int32_t>> rows(size);
    for (std::int32_t row = 0; row < lower.cols(); ++row) {
        seen[static_cast<std::size_t>(row)] = row;
        for (Sparse::InnerIterator it(upper, row); it; ++it) {
            auto column = static_cast<std::int32_t>(it.row());
            while (seen[static_cast<std::size_t>(column)] != row) {
                const auto here = static_cast<std::size_t>(column);
                seen[here] = row;
                rows[here].push_back(row);
                parent[here] = parent[here] < 0 ? row : parent[here];
                column = parent[here];
            }
        }
    }
    return rows;
}

// From where on the factor is dense enough to be treated so.
int splitOf(const std::vector<std::vector<std::int32_t>>& rows) {
    const int size = static_cast<int>(rows.size());
    double filled = 0;
    int split = size - 1;
    for (int column = size - 1; column >= 0 && size - column <= kMostDense; --column) {
        filled += static_cast<double>(rows[static_cast<std::size_t>(column)].size());
        const double wide = size - column;
        split = filled >= kDenseFrom * wide * (wide - 1) / 2 ? column : split;
    }
    return split;
}

} // namespace

void MixedFactor::orderBy(const Sparse& lower) {
    at_.resize(static_cast<std::size_t>(size_));
    Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, std::int32_t> inverse;
    Eigen::AMDOrdering<std::int32_t> ordering;
    ordering(lower.selfadjointView<Eigen::Lower>(), inverse);
    for (int place = 0; place < size_; ++place) {
        at_[static_cast<std::size_t>(inverse.indices()[place])] = place;
    }
}

void MixedFactor::analyse(const Sparse& lower) {
    size_ = static_cast<int>(lower.cols());
    start_.assign(1, 0);
    row_.clear();
    below_.clear();
    coupled_.clear();
    if (size_ <= kSmall) {
        split_ = 0;
        at_.resize(static_cast<std::size_t>(size_));
        for (int place = 0; place < size_; ++place) {
            at_[static_cast<std::size_t>(place)] = place;
        }
        coupled_.resize(static_cast<std::size_t>(size_));
        return;
    }
    orderBy(lower);
    layOut(permuted(lower, at_));
}

// `numbered` is the matrix in the order of elimination; its values are their places in the given
// one, from 1.
void MixedFactor::layOut(const Sparse& numbered) {
    const auto rows = factorRows(numbered);
    split_ = splitOf(rows);
    coupled_.resize(static_cast<std::size_t>(size_ - split_));
    for (std::int32_t column = 0; column < split_; ++column) {
        const auto& own = rows[static_cast<std::size_t>(column)];
        for (const std::int32_t row : own) {
            if (row >= split_) {
                coupled_[static_cast<std::size_t>(row - split_)].push_back({column, row_.size()});
            }
            row_.push_back(row);
        }
        const auto dense = std::ranges::lower_bound(own, split_);
        below_.push_back(row_.size() - static_cast<std::size_t>(own.end() - dense));
        start_.push_back(row_.size());
    }
    factor_.assign(row_.size(), 0);
    inverse_.assign(row_.size(), 0);
    coupling_.assign(row_.size(), 0);
    placeValues(numbered);
}

void MixedFactor::placeValues(const Sparse& numbered) {
    leading_ = numbered.topLeftCorner(split_, split_);
    leading_.makeCompressed();
    to_.assign(static_cast<std::size_t>(numbered.nonZeros()), 0);
    const auto source = [](double number) { return static_cast<std::size_t>(number) - 1; };
    for (std::int64_t place = 0; place < leading_.nonZeros(); ++place) {
        to_[source(leading_.valuePtr()[place])] = place;
    }
    const std::int64_t wide = size_ - split_;
    for (std::int32_t column = 0; column < numbered.cols(); ++column) {
        for (Sparse::InnerIterator it(numbered, column); it; ++it) {
            if (it.row() < split_) {
                continue;
            }
            std::int64_t& to = to_[source(it.value())];
            if (column < split_) {
                to =
                    leading_.nonZeros() +
                    static_cast<std::int64_t>(entryOf(column, static_cast<std::int32_t>(it.row())));
            } else {
                to = -1 - ((column - split_) * wide + it.row() - split_);
            }
        }
    }
    leadingFactor_.analyzePattern(leading_);
}

std::size_t MixedFactor::entryOf(int column, std::int32_t row) const {
    const auto own = static_cast<std::size_t>(column);
    const auto first = row_.begin() + static_cast<std::ptrdiff_t>(start_[own]);
    const auto last = row_.begin() + static_cast<std::ptrdiff_t>(start_[own + 1]);
    return static_cast<std::size_t>(std::lower_bound(first, last, row) - row_.begin());
}

bool MixedFactor::factorise(const Sparse& lower) {
    const int wide = size_ - split_;
    if (split_ == 0) {
        trailing_ = Eigen::MatrixXd(lower);
    } else {
        trailing_.setZero(wide, wide);
        std::ranges::fill(coupling_, 0.0);
        const double* value = lower.valuePtr();
        const std::int64_t leading = leading_.nonZeros();
        for (std::size_t i = 0; i < to_.size(); ++i) {
            const std::int64_t to = to_[i];
            double& place = to < 0         ? trailing_.data()[-1 - to]
                            : to < leading ? leading_.valuePtr()[to]
                                           : coupling_[static_cast<std::size_t>(to - leading)];
            place = value[i];
        }
        leadingFactor_.factorize(leading_);
        if (leadingFactor_.info() != Eigen::Success) {
            return false;
        }
        eliminateLeading();
    }
    trailingFactor_.compute(trailing_);
    return trailingFactor_.info() == Eigen::Success;
}

// The factor's rows of the trailing block, one by one, and what they take from that block.
void MixedFactor::eliminateLeading() {
    const auto& triangle = leadingFactor_.matrixL().nestedExpression();
    diagonal_.resize(static_cast<std::size_t>(split_));
    for (std::int32_t column = 0; column < split_; ++column) {
        const auto own = static_cast<std::size_t>(column);
        const auto first = static_cast<std::size_t>(triangle.outerIndexPtr()[column]);
        diagonal_[own] = triangle.valuePtr()[first];
        std::copy_n(triangle.valuePtr() + first + 1,
                    below_[own] - start_[own],
                    factor_.begin() + static_cast<std::ptrdiff_t>(start_[own]));
    }
    std::vector<double> sums(static_cast<std::size_t>(split_), 0.0);
    for (const auto& coupled : coupled_) {
        for (const Coupled& each : coupled) {
            sums[static_cast<std::size_t>(each.column)] = coupling_[each.entry];
        }
        for (const Coupled& each : coupled) {
            const auto own = static_cast<std::size_t>(each.column);
            const double value = sums[own] / diagonal_[own];
            factor_[each.entry] = value;
            for (std::size_t i = start_[own]; i < below_[own]; ++i) {
                sums[static_cast<std::size_t>(row_[i])] -= factor_[i] * value;
            }
        }
        for (const Coupled& each : coupled) {
            sums[static_cast<std::size_t>(each.column)] = 0;
        }
    }
    for (std::size_t own = 0; own < below_.size(); ++own) {
        for (std::size_t i = below_[own]; i < start_[own + 1]; ++i) {
            double* column = trailing_.col(row_[i] - split_).data() - split_;
            for (std::size_t k = i; k < start_[own + 1]; ++k) {
                column[row_[k]] -= factor_[i] * factor_[k];
            }
        }
    }
}

double MixedFactor::logDeterminant() const {
    double sum = 0;
    for (const double value : diagonal_) {
        sum += std::log(value);
    }
    const auto& dense = trailingFactor_.matrixLLT();
    for (Eigen::Index i = 0; i < dense.rows(); ++i) {
        sum += std::log(dense(i, i));
    }
    return 2 * sum;
}

Eigen::VectorXd MixedFactor::solve(const Eigen::VectorXd& right) const {
    if (split_ == 0) {
        return trailingFactor_.solve(right);
    }
    Eigen::VectorXd x(size_);
    for (int i = 0; i < size_; ++i) {
        x[at_[static_cast<std::size_t>(i)]] = right[i];
    }
    for (std::size_t own = 0; own < below_.size(); ++own) {
        const auto place = static_cast<Eigen::Index>(own);
        x[place] /= diagonal_[own];
        for (std::size_t i = start_[own]; i < start_[own + 1]; ++i) {
            x[row_[i]] -= factor_[i] * x[place];
        }
    }
    trailingFactor_.solveInPlace(x.tail(size_ - split_));
    for (std::size_t own = below_.size(); own-- > 0;) {
        const auto place = static_cast<Eigen::Index>(own);
        double sum = x[place];
        for (std::size_t i = start_[own]; i < start_[own + 1]; ++i) {
            sum -= factor_[i] * x[row_[i]];
        }
        x[place] = sum / diagonal_[own];
    }
    Eigen::VectorXd solution(size_);
    for (int i = 0; i < size_; ++i) {
        solution[i] = x[at_[static_cast<std::size_t>(i)]];
    }
    return solution;
}

void MixedFactor::invert() {
    const int wide = size_ - split_;
    trailingInverse_ = Eigen::MatrixXd::Identity(wide, wide);
    trailingFactor_.solveInPlace(trailingInverse_);
    inverseDiagonal_.resize(below_.size());
    std::vector<std::int32_t> at(static_cast<std::size_t>(size_), -1);
    std::vector<double> sums;
    for (int column = split_ - 1; column >= 0; --column) {
        invertColumn(column, at, sums);
    }
}

// Z_ij = -(1/L_jj) Σ_k Z_ik L_kj over the column's rows k; all those Z are there already.
void MixedFactor::invertColumn(int column,
                               std::vector<std::int32_t>& at,
                               std::vector<double>& sums) {
    const auto own = static_cast<std::size_t>(column);
    const std::size_t first = start_[own];
    const std::size_t dense = below_[own];
    const std::size_t end = start_[own + 1];
    sums.assign(end - first, 0.0);
    for (std::size_t i = first; i < end; ++i) {
        at[static_cast<std::size_t>(row_[i])] = static_cast<std::int32_t>(i - first);
    }
    for (std::size_t k = first; k < dense; ++k) {
        const auto other = static_cast<std::size_t>(row_[k]);
        double sum = inverseDiagonal_[other] * factor_[k];
        for (std::size_t i = start_[other]; i < start_[other + 1]; ++i) {
            const std::int32_t here = at[static_cast<std::size_t>(row_[i])];
            if (here >= 0) {
                sums[static_cast<std::size_t>(here)] += inverse_[i] * factor_[k];
                sum += inverse_[i] * factor_[first + static_cast<std::size_t>(here)];
            }
        }
        sums[k - first] += sum;
    }
    for (std::size_t k = dense; k < end; ++k) {
        const double* inverse = trailingInverse_.col(row_[k] - split_).data() - split_;
        for (std::size_t i = dense; i < end; ++i) {
            sums[i - first] += inverse[row_[i]] * factor_[k];
        }
    }
    double sum = 1 / diagonal_[own];
    for (std::size_t i = first; i < end; ++i) {
        at[static_cast<std::size_t>(row_[i])] = -1;
        inverse_[i] = -sums[i - first] / diagonal_[own];
        sum -= factor_[i] * inverse_[i];
    }
    inverseDiagonal_[own] = sum / diagonal_[own];
}

double MixedFactor::inverseAt(int row, int column) const {
    const std::int32_t one = at_[static_cast<std::size_t>(row)];
    const std::int32_t other = at_[static_cast<std::size_t>(column)];
    const std::int32_t low = std::min(one, other);
    const std::int32_t high = std::max(one, other);
    if (low >= split_) {
        return trailingInverse_(high - split_, low - split_);
    }
    return low == high ? inverseDiagonal_[static_cast<std::size_t>(low)]
                       : inverse_[entryOf(low, high)];
}

} // namespace bullace::trials
