// A symmetric positive definite matrix of one sparsity, factored again and again with other values:
// sparse at first and, where the rest of it fills up, dense. Gives solutions, the determinant, and
// the elements of the inverse that stand where the factor has any.
#pragma once

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <Eigen/OrderingMethods>
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace bullace::trials {

using Sparse = Eigen::SparseMatrix<double, Eigen::ColMajor, std::int32_t>;

class MixedFactor {
public:
    // `lower` is the lower triangle with the whole diagonal, rows ascending; only its sparsity is
    // looked at. The order of elimination is by minimum degree (Amestoy, Davis & Duff 1996, SIAM J.
    // Matrix Anal. Appl. 17:886-905).
    void analyse(const Sparse& lower);

    // False where the matrix is not positive definite. `lower` has the sparsity that was analysed.
    [[nodiscard]] bool factorise(const Sparse& lower);
    [[nodiscard]] double logDeterminant() const;
    [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& right) const;

    // Makes the elements of the inverse; until the next factorise() they can be asked for.
    // Source  Takahashi, Fagan & Chen 1973, 8th PICA Conference: 63-69; Erisman & Tinney 1975,
    //         Commun. ACM 18:177-179.
    void invert();
    // Of the inverse, in the matrix's own order. The element must be one of the matrix's sparsity.
    [[nodiscard]] double inverseAt(int row, int column) const;

private:
    using Leading =
        Eigen::SimplicialLLT<Sparse, Eigen::Lower, Eigen::NaturalOrdering<std::int32_t>>;

    void orderBy(const Sparse& lower);
    void placeValues(const Sparse& lower);
    void layOut(const Sparse& lower);
    void eliminateLeading();
    void invertColumn(int column, std::vector<std::int32_t>& at, std::vector<double>& sums);
    [[nodiscard]] std::size_t entryOf(int column, std::int32_t row) const;

    int size_ = 0;
    int split_ = 0;                // columns before it are sparse, those from it on dense
    std::vector<std::int32_t> at_; // of each row in the order of elimination
    std::vector<std::int64_t> to_; // where each value of `lower` goes: below 0 into trailing_
    Sparse leading_;               // the leading block, lower triangle
    Eigen::MatrixXd trailing_;     // the trailing block, lower triangle
    std::vector<double> coupling_; // the values between, where the factor has any
    Leading leadingFactor_;
    Eigen::LLT<Eigen::MatrixXd> trailingFactor_;
    // The factor's leading columns below their diagonal, leading rows first (of which the first
    // below_ are), and the inverse at the same places.
    std::vector<std::size_t> start_;
    std::vector<std::size_t> below_; // of each column: where its trailing rows begin
    std::vector<std::int32_t> row_;
    std::vector<double> factor_;
    std::vector<double> diagonal_;
    std::vector<double> inverse_;
    std::vector<double> inverseDiagonal_;
    Eigen::MatrixXd trailingInverse_;
    // Of each trailing row: the leading columns in which the factor has it, and where there.
    struct Coupled {
        std::int32_t column = 0;
        std::size_t entry = 0;
    };
    std::vector<std::vector<Coupled>> coupled_;
};

} // namespace bullace::trials
