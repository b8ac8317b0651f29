// Henderson's equations of a mixed model at given variances, from cross-products that are made
// once: their likelihood, their solution, and the derivatives by the variances.
//
// The random effects u = T v are written by effects v of variance 1 (Bates, Mächler, Bolker &
// Walker 2015, J. Stat. Softw. 67(1):1-48), so that a variance may be exactly 0:
//   C = T' W' R⁻¹ W T + (0, or the inverse relationships at the random columns).
#pragma once

#include "core/trials/mixed_design_matrix.hpp"

#include <Eigen/Core>
#include <optional>
#include <vector>

namespace bullace::trials {

// Covariance matrices: of each random term's parts, and of the descriptors' residuals (one alone
// but for models of several descriptors).
struct Variances {
    std::vector<Eigen::MatrixXd> random;
    Eigen::MatrixXd residual;
};

// One number among them that is searched for: an element on or below a diagonal.
struct Parameter {
    std::size_t term = 0; // in Variances::random; beyond it the residual
    int row = 0;
    int column = 0;

    [[nodiscard]] bool isVariance() const { return row == column; }
    [[nodiscard]] double in(const Variances& variances) const;
    void set(Variances& variances, double value) const; // and its mirror image
};

// All numbers of a design's variances, term after term.
[[nodiscard]] std::vector<Parameter> parametersOf(const MixedDesign& design);

class MixedEquations {
public:
    explicit MixedEquations(const MixedDesign& design); // which must outlive this

    // Moves to these variances. Nothing where the equations cannot be factored there.
    std::optional<double> logLikelihood(const Variances& at);

    struct Slope {
        Eigen::VectorXd score;       // of each parameter
        Eigen::MatrixXd information; // the average of observed and expected
    };
    // At the variances of the last logLikelihood(); none of the terms asked for may be singular.
    [[nodiscard]] Slope slope(const std::vector<Parameter>& parameters);

    // Of the last logLikelihood(): all effects, the fixed ones first.
    [[nodiscard]] const Eigen::VectorXd& effects() const { return effects_; }
    // The covariance matrix of (estimated - true) effects, times a vector.
    [[nodiscard]] Eigen::VectorXd covarianceTimes(const Eigen::VectorXd& right) const;
    // Its elements at two parts of one level; after slope() or invert().
    [[nodiscard]] double errorCovariance(const RandomBlock& block, int level, int a, int b) const;
    void invert() {
        if (!isInverted_) {
            factor_.invert();
        }
        isInverted_ = true;
    }

    [[nodiscard]] const MixedDesign& design() const { return design_; }
    [[nodiscard]] const Variances& at() const { return at_; }

private:
    // Cross-products of the rows of two descriptors (or one) at plots that have the same ones.
    struct Part {
        std::size_t pattern = 0;
        int one = 0; // in the pattern
        int other = 0;
        Eigen::VectorXd values; // of sparsity_
        Eigen::VectorXd right;  // with the response
        double square = 0;      // of the response
        // Of the last slope(): what the effects leave.
        Eigen::VectorXd rest;
        double restSquare = 0;
    };
    struct Pattern {
        std::vector<int> descriptors;
        double plots = 0;
    };
    // Each pattern's inverse residual covariance, or another matrix of that shape.
    using ByPattern = std::vector<Eigen::MatrixXd>;
    // One parameter's share of the derivatives.
    struct Direction {
        Eigen::VectorXd effects; // g: V_i P y = W g; empty of a residual's
        Eigen::VectorXd product; // W' R⁻¹ V_i P y
        Eigen::VectorXd solved;  // the covariance matrix times it
        ByPattern change;        // E of a residual's: how R changes
    };

    [[nodiscard]] std::vector<Sparse> products();
    void addPattern(std::vector<int> descriptors,
                    const std::vector<std::vector<int>>& rows,
                    std::vector<Sparse>& products);
    void makeSparsity(const std::vector<Sparse>& products);
    [[nodiscard]] std::int64_t placeOf(int row, int column) const;
    void placeInverses();
    [[nodiscard]] bool weigh(const Eigen::MatrixXd& residual);
    void placeRoots();
    void scale(Eigen::VectorXd& values) const;
    void scaleBlocks(std::int32_t column, std::int32_t wide, Eigen::VectorXd& values) const;
    [[nodiscard]] Eigen::VectorXd times(const Eigen::VectorXd& values,
                                        const Eigen::VectorXd& vector) const;
    void spread(Eigen::VectorXd& vector, bool isTransposed) const; // by T

    [[nodiscard]] Eigen::MatrixXd relatedTrace(std::size_t term) const;
    [[nodiscard]] double residualTrace(const ByPattern& change) const;
    void restOfParts();
    [[nodiscard]] Direction
    randomDirection(const Parameter& parameter, const Eigen::VectorXd& pulled, double& score) const;
    [[nodiscard]] Direction residualDirection(const Parameter& parameter, double& score) const;
    [[nodiscard]] double product(const Direction& one, const Direction& other) const;
    [[nodiscard]] Eigen::MatrixXd changed(const Direction& one, std::size_t pattern) const;

    const MixedDesign& design_;
    std::vector<Pattern> patterns_;
    std::vector<Part> parts_;
    Sparse sparsity_; // lower triangle; its values are those of the last C
    struct Placed {
        std::int64_t place = 0; // among the values of sparsity_
        double value = 0;
    };
    std::vector<Placed> inverses_; // identities and inverse relationships
    bool isMixed_ = false;         // some term has several parts
    bool isSingle_ = true;         // one descriptor: R is one variance
    MixedFactor factor_;

    bool isInverted_ = false; // since the last logLikelihood()

    Variances at_;
    std::vector<Eigen::MatrixXd> roots_;         // T of each random term
    std::vector<const Eigen::MatrixXd*> rootAt_; // of each column; it never moves
    ByPattern weights_;
    double logResidual_ = 0; // log |R|
    Eigen::VectorXd data_;   // values of W' R⁻¹ W
    Eigen::VectorXd effects_;
};

} // namespace bullace::trials
