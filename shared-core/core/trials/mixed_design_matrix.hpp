// A mixed model's columns: which rows belong to which levels, which fixed columns follow from
// earlier ones, and the cross-products of all columns and the response, in which nothing is as long
// as the table any more.
#pragma once

#include "core/base/result.hpp"
#include "core/trials/mixed_factor_matrix.hpp"
#include "core/trials/mixed_model.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace bullace::trials {

// One random term's columns: level after level, of each its parts (intercept, slopes; or one for
// each descriptor) side by side.
struct RandomBlock {
    std::string name;
    std::vector<std::string> parts; // empty names where there is one alone
    std::vector<std::string> levels;
    bool isCorrelated = false; // the parts, with one another
    std::shared_ptr<const Related> related{};
    int first = 0; // column

    [[nodiscard]] int width() const { return static_cast<int>(parts.size()); }
    [[nodiscard]] int height() const { return static_cast<int>(levels.size()); }
    [[nodiscard]] int columns() const { return width() * height(); }
    [[nodiscard]] int at(int level, int part) const { return first + level * width() + part; }
};

struct FixedColumn {
    std::string name;
    std::size_t term = 0;              // in MixedSpec::fixed; beyond it for the intercept
    std::vector<std::uint32_t> levels; // of the term's factors, in their order; kNoLevel of a
                                       // covariate
};

// The columns of a model, row by row; fixed ones first.
struct MixedDesign {
    std::vector<FixedColumn> fixed;   // that are kept
    std::vector<FixedColumn> dropped; // that follow from earlier ones
    Eigen::MatrixXd following;        // each dropped column as a sum of kept ones: kept × dropped
    std::vector<RandomBlock> random;
    Sparse transposed;              // columns × rows of the table
    Eigen::VectorXd response;       // less its mean, where there is an intercept
    std::vector<double> means{0.0}; // what was taken off, of each descriptor
    // Of models of several descriptors: what was noted at the same plot is correlated.
    int descriptors = 1;
    std::vector<std::uint32_t> plotOf;       // of each row; empty where each is a plot of its own
    std::vector<std::uint32_t> descriptorOf; // of each row; empty where there is one alone
    TrialTable table;                        // the complete rows
    std::size_t leftOut = 0;

    [[nodiscard]] int columns() const { return static_cast<int>(transposed.rows()); }
    [[nodiscard]] int fixedColumns() const { return static_cast<int>(fixed.size()); }
};

using Triplets = std::vector<Eigen::Triplet<double, std::int32_t>>;

// What a term is made of: factors whose levels combine, and covariates that multiply.
struct TermParts {
    std::vector<const Factor*> factors;
    std::vector<const Covariate*> covariates;
};
[[nodiscard]] TermParts termParts(const TrialTable& table, const Term& term);

// The fixed columns of complete rows, those left out that follow from earlier ones.
struct FixedPart {
    std::vector<FixedColumn> columns;
    std::vector<FixedColumn> dropped;
    Eigen::MatrixXd following; // as of MixedDesign
    Triplets entries;          // column, row, value
};
[[nodiscard]] FixedPart fixedPart(const TrialTable& table, const MixedSpec& spec);

// Which columns do not follow from earlier ones.
[[nodiscard]] std::vector<bool> independentColumns(const Sparse& transposed);

[[nodiscard]] Result<MixedDesign> designOf(const TrialTable& table, const MixedSpec& spec);

} // namespace bullace::trials
