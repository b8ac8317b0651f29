// Columns of terms by counting, and Gram and Schmidt's steps over Eigen's vectors.
#include "core/trials/design_matrix.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bullace::trials {

namespace {

constexpr double kSpanned = 1e-9; // of a column's length that may be left of a spanned one

Eigen::VectorXd standardised(const std::vector<double>& values) {
    Eigen::VectorXd column =
        Eigen::Map<const Eigen::VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()));
    column.array() -= values.empty() ? 0.0 : values.front();
    column.array() -= column.mean();
    const double size = column.size() > 0 ? column.cwiseAbs().maxCoeff() : 0.0;
    return size > 0 ? Eigen::VectorXd(column / size) : column;
}

} // namespace

TermColumns::TermColumns(const TrialTable& table, const Term& term)
    : term_(term),
      rows_(static_cast<Eigen::Index>(table.rows())) {
    for (const std::string& name : term) {
        if (const Factor* factor = table.factor(name)) {
            factors_.push_back(factor);
            continue;
        }
        const Eigen::VectorXd column = standardised(table.covariate(name)->values);
        product_ = product_.size() > 0 ? Eigen::VectorXd(product_.cwiseProduct(column)) : column;
    }
    if (factors_.empty()) {
        return;
    }
    cells_ = combined(factors_);
    cellLevels_.assign(cells_->levels.size() * factors_.size(), 0);
    for (std::size_t row = 0; row < table.rows(); ++row) {
        for (std::size_t i = 0; i < factors_.size(); ++i) {
            cellLevels_[cells_->of[row] * factors_.size() + i] = factors_[i]->of[row];
        }
    }
    order_.resize(cells_->levels.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::stable_partition(order_.begin(), order_.end(), [this](std::size_t cell) {
        for (std::size_t i = 0; i < factors_.size(); ++i) {
            if (levelIn(cell, i) == 0) {
                return false;
            }
        }
        return true;
    });
}

double TermColumns::possibleCells() const {
    double count = 1;
    for (const Factor* factor : factors_) {
        count *= static_cast<double>(factor->levels.size());
    }
    return count;
}

std::size_t TermColumns::columns(Coding coding) const {
    if (coding == Coding::Cells) {
        return cells_ ? order_.size() : 1;
    }
    std::size_t count = 1;
    for (const Factor* factor : factors_) {
        count *= factor->levels.size() - 1;
    }
    return count;
}

Eigen::VectorXd TermColumns::column(Coding coding, std::size_t index) const {
    if (!cells_) {
        return product_;
    }
    if (coding == Coding::SumToZero) {
        return sumColumn(index);
    }
    Eigen::VectorXd column = Eigen::VectorXd::Zero(rows_);
    for (Eigen::Index row = 0; row < rows_; ++row) {
        if (cells_->of[static_cast<std::size_t>(row)] == order_[index]) {
            column[row] = hasCovariate() ? product_[row] : 1.0;
        }
    }
    return column;
}

Eigen::VectorXd TermColumns::sumColumn(std::size_t index) const {
    Eigen::VectorXd column = hasCovariate() ? product_ : Eigen::VectorXd::Ones(rows_).eval();
    for (const Factor* factor : factors_) {
        const std::size_t last = factor->levels.size() - 1;
        const std::size_t level = index % last;
        index /= last;
        for (Eigen::Index row = 0; row < rows_; ++row) {
            const std::size_t here = factor->of[static_cast<std::size_t>(row)];
            column[row] *= here == level ? 1.0 : here == last ? -1.0 : 0.0;
        }
    }
    return column;
}

bool TermColumns::isWithin(const TermColumns& other) const {
    return std::ranges::all_of(term_, [&other](const std::string& name) {
        return std::ranges::find(other.term_, name) != other.term_.end();
    });
}

ColumnSpace::ColumnSpace(Eigen::Index rows, const Factor* absorbed)
    : groupOf_(static_cast<std::size_t>(rows), 0),
      basis_(rows, 0) {
    if (absorbed != nullptr) {
        groupOf_ = absorbed->of;
    }
    sizes_ = Eigen::VectorXd::Zero(
        absorbed != nullptr ? static_cast<Eigen::Index>(absorbed->levels.size()) : 1);
    for (const std::uint32_t group : groupOf_) {
        sizes_[group] += 1;
    }
    keptMeans_.resize(sizes_.size(), 0);
}

Eigen::VectorXd ColumnSpace::groupMeans(const Eigen::VectorXd& y) const {
    Eigen::VectorXd means = Eigen::VectorXd::Zero(sizes_.size());
    for (Eigen::Index row = 0; row < y.size(); ++row) {
        means[groupOf_[static_cast<std::size_t>(row)]] += y[row];
    }
    means = means.cwiseQuotient(sizes_);
    // A second pass takes up what the first lost to rounding.
    Eigen::VectorXd left = Eigen::VectorXd::Zero(sizes_.size());
    for (Eigen::Index row = 0; row < y.size(); ++row) {
        const std::uint32_t group = groupOf_[static_cast<std::size_t>(row)];
        left[group] += y[row] - means[group];
    }
    return means + left.cwiseQuotient(sizes_);
}

Eigen::VectorXd ColumnSpace::centred(const Eigen::VectorXd& y) const {
    const Eigen::VectorXd means = groupMeans(y);
    Eigen::VectorXd out = y;
    for (Eigen::Index row = 0; row < y.size(); ++row) {
        out[row] -= means[groupOf_[static_cast<std::size_t>(row)]];
    }
    return out;
}

bool ColumnSpace::add(const Eigen::VectorXd& column, Keep keep) {
    const double length = column.norm();
    Eigen::VectorXd left = centred(column);
    Eigen::VectorXd products = Eigen::VectorXd::Zero(used_);
    for (int pass = 0; pass < 2; ++pass) {
        const Eigen::VectorXd step = basis().transpose() * left;
        left.noalias() -= basis() * step;
        products += step;
    }
    const double rest = left.norm();
    const std::size_t index = added_++;
    const bool isNew = rest > kSpanned * length;
    if (isNew) {
        if (used_ == basis_.cols()) {
            basis_.conservativeResize(Eigen::NoChange, std::max<Eigen::Index>(8, 2 * used_));
        }
        basis_.col(used_) = left / rest;
    }
    if (keep == Keep::Coefficients && isNew) {
        upper_.conservativeResize(used_ + 1, used_ + 1);
        upper_.row(used_).setZero();
        upper_.col(used_).head(used_) = products;
        upper_(used_, used_) = rest;
        keptMeans_.conservativeResize(Eigen::NoChange, used_ + 1);
        keptMeans_.col(used_) = groupMeans(column);
        keptColumn_.push_back(index);
    } else if (keep == Keep::Coefficients) {
        const Eigen::VectorXd kept =
            upper_.topLeftCorner(used_, used_).triangularView<Eigen::Upper>().solve(products);
        spanned_.push_back({index, kept, groupMeans(column) - keptMeans_.leftCols(used_) * kept});
    }
    used_ += isNew ? 1 : 0;
    return isNew;
}

std::size_t ColumnSpace::rank() const {
    return static_cast<std::size_t>(sizes_.size() + used_);
}

Eigen::VectorXd ColumnSpace::residuals(const Eigen::VectorXd& y) const {
    Eigen::VectorXd left = centred(y);
    for (int pass = 0; pass < 2; ++pass) {
        const Eigen::VectorXd step = basis().transpose() * left;
        left.noalias() -= basis() * step;
    }
    return left;
}

Eigen::VectorXd ColumnSpace::leverages() const {
    Eigen::VectorXd leverage = basis().rowwise().squaredNorm();
    for (Eigen::Index row = 0; row < leverage.size(); ++row) {
        leverage[row] += 1 / sizes_[groupOf_[static_cast<std::size_t>(row)]];
    }
    return leverage;
}

std::optional<ColumnSpace::Function> ColumnSpace::function(const Eigen::VectorXd& groups,
                                                           const Eigen::VectorXd& columns,
                                                           std::size_t& violated) const {
    Eigen::VectorXd kept(used_);
    for (Eigen::Index i = 0; i < used_; ++i) {
        kept[i] = columns[static_cast<Eigen::Index>(keptColumn_[static_cast<std::size_t>(i)])];
    }
    for (const Spanned& each : spanned_) {
        const double stands = kept.head(each.kept.size()).dot(each.kept) + groups.dot(each.groups);
        if (std::abs(stands - columns[static_cast<Eigen::Index>(each.column)]) > 1e-7) {
            violated = each.column;
            return {};
        }
    }
    const Eigen::VectorXd beside = kept - keptMeans_.leftCols(used_).transpose() * groups;
    return Function{groups, upper_.transpose().triangularView<Eigen::Lower>().solve(beside)};
}

Eigen::VectorXd ColumnSpace::basisProducts(const Eigen::VectorXd& y) const {
    return basis().transpose() * centred(y);
}

} // namespace bullace::trials
