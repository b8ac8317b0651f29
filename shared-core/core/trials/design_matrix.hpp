// The columns of a linear model's terms, and the space that they span: the inside of linear_model
// and augmented. Only .cpp files of this folder include it.
#pragma once

#include "core/trials/trial_table.hpp"

#include <Eigen/Dense>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace bullace::trials {

enum class Coding {
    Cells,    // one column for each combination of levels that occurs
    SumToZero // products of columns that are 1 for a level and -1 for the last
};

// All columns of one term over the rows of a table without gaps.
class TermColumns {
public:
    TermColumns(const TrialTable& table, const Term& term);

    [[nodiscard]] const Term& term() const { return term_; }
    [[nodiscard]] const std::vector<const Factor*>& factors() const { return factors_; }
    [[nodiscard]] bool hasCovariate() const { return product_.size() > 0; }
    // The combinations of its factors; none for a term of covariates alone.
    [[nodiscard]] const std::optional<Factor>& cells() const { return cells_; }
    // The level of each of its factors in a cell.
    [[nodiscard]] std::uint32_t levelIn(std::size_t cell, std::size_t factor) const {
        return cellLevels_[cell * factors_.size() + factor];
    }
    // The combinations that could occur.
    [[nodiscard]] double possibleCells() const;
    // Cells in the order in which their columns enter: those of a first level last, so that these
    // are the ones that others stand for.
    [[nodiscard]] const std::vector<std::size_t>& order() const { return order_; }

    [[nodiscard]] std::size_t columns(Coding coding) const;
    // Column `index` of the order above, or of the sums.
    [[nodiscard]] Eigen::VectorXd column(Coding coding, std::size_t index) const;
    // Whether every name of this term is one of the other's.
    [[nodiscard]] bool isWithin(const TermColumns& other) const;

private:
    [[nodiscard]] Eigen::VectorXd sumColumn(std::size_t index) const;

    Term term_;
    Eigen::Index rows_ = 0;
    std::vector<const Factor*> factors_;
    Eigen::VectorXd product_; // of its covariates, about their means, of unit size
    std::optional<Factor> cells_;
    std::vector<std::uint32_t> cellLevels_;
    std::vector<std::size_t> order_;
};

// The space of one factor's indicators (or of the general mean) and of further columns, as means of
// groups and an orthonormal basis beside them, made by Gram and Schmidt's steps taken twice
// (Björck 1996, Numerical Methods for Least Squares Problems, §2.4.5).
class ColumnSpace {
public:
    // `absorbed` may be null: the general mean is then the one group.
    ColumnSpace(Eigen::Index rows, const Factor* absorbed);

    // Adds the column where it is not spanned yet (relative tolerance 1e-9), and says so.
    // `keeps` what solving for coefficients needs.
    enum class Keep { Basis, Coefficients };
    bool add(const Eigen::VectorXd& column, Keep keep);

    [[nodiscard]] std::size_t rank() const;
    [[nodiscard]] Eigen::VectorXd residuals(const Eigen::VectorXd& y) const;
    [[nodiscard]] Eigen::VectorXd leverages() const;
    [[nodiscard]] Eigen::VectorXd groupMeans(const Eigen::VectorXd& y) const;
    [[nodiscard]] const Eigen::VectorXd& groupSizes() const { return sizes_; }

    // A linear function of the coefficients, weights on groups and on added columns in the order of
    // their adding, those that were spanned included, as weights on group means and on the basis.
    struct Function {
        Eigen::VectorXd groups;
        Eigen::VectorXd basis;
    };
    // Nothing where it cannot be estimated; `violated` is then the column that decides it.
    [[nodiscard]] std::optional<Function> function(const Eigen::VectorXd& groups,
                                                   const Eigen::VectorXd& columns,
                                                   std::size_t& violated) const;
    // Q'y, to be weighted by Function::basis.
    [[nodiscard]] Eigen::VectorXd basisProducts(const Eigen::VectorXd& y) const;

private:
    struct Spanned {
        std::size_t column = 0;
        Eigen::VectorXd kept;   // coefficients on the kept columns before it
        Eigen::VectorXd groups; // and on the groups
    };
    [[nodiscard]] Eigen::VectorXd centred(const Eigen::VectorXd& y) const;
    [[nodiscard]] auto basis() const { return basis_.leftCols(used_); }

    std::vector<std::uint32_t> groupOf_;
    Eigen::VectorXd sizes_;
    Eigen::MatrixXd basis_;
    Eigen::Index used_ = 0;
    std::size_t added_ = 0;
    Eigen::MatrixXd upper_;               // kept column j = Σ basis_i upper(i, j)
    std::vector<std::size_t> keptColumn_; // which of the added
    Eigen::MatrixXd keptMeans_;           // groups × kept
    std::vector<Spanned> spanned_;
};

} // namespace bullace::trials
