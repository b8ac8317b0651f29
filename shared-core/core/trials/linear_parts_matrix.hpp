// What a fitted linear model keeps, shared by the files that solve it, test its terms and take its
// means. Nothing else includes it.
#pragma once

#include "core/trials/design_matrix.hpp"
#include "core/trials/linear_model.hpp"

#include <map>
#include <utility>

namespace bullace::trials {

using TermIndices = std::vector<std::size_t>; // ascending

struct Explained {
    double residualSquares = 0;
    std::size_t rank = 0;
};

// Which level a mean has of some factors.
using FixedLevels = std::vector<std::pair<const Factor*, std::uint32_t>>;

struct LinearModel::Parts {
    // Rows times the square of the columns that are not absorbed.
    static constexpr double kMostWork = 3e10;

    TrialTable table;
    std::vector<TermColumns> terms;
    Eigen::VectorXd y; // less `shift`
    double shift = 0;
    double noise = 0; // sums of squares below are rounding
    ModelSummary summary;
    std::vector<FittedRow> rows;
    std::optional<std::size_t> absorbed;
    std::optional<ColumnSpace> space;
    std::vector<std::pair<std::size_t, std::size_t>> columns; // term and index, as added
    Eigen::VectorXd groupMeans;
    Eigen::VectorXd products;
    std::map<TermIndices, Explained> known;

    [[nodiscard]] TermIndices all() const;
    [[nodiscard]] std::optional<std::size_t> largest(const TermIndices& chosen) const;
    [[nodiscard]] const Factor* cellsOf(std::optional<std::size_t> term) const;
    [[nodiscard]] bool isAbsorbed(std::size_t term, std::optional<std::size_t> into) const;
    [[nodiscard]] double work() const;
    [[nodiscard]] Explained leftBy(const ColumnSpace& of) const;
    const Explained& explained(const TermIndices& chosen);
    Result<void> take(const TrialTable& from,
                      std::span<const std::size_t> complete,
                      std::span<const Term> names);
    void solve();
    void summarise();
    void sayWhatCannotBeTested();
    void fillRows();
    void testOne();
    void testTwo();
    void testThree();
    [[nodiscard]] bool hasAllMargins() const;
    [[nodiscard]] std::optional<std::size_t> firstWithEmptyCells() const;
    [[nodiscard]] Explained withoutSums(std::size_t left) const;
    [[nodiscard]] VarianceLine
    line(std::size_t term, const Explained& without, const Explained& with) const;
    [[nodiscard]] VarianceLine residualLine() const;
    void nameWhatIsConfounded();
    // What a column of the design counts for in a mean: 1 or 0 for factors that the mean is of, one
    // part of the levels for the others; covariates are 0 at their means.
    [[nodiscard]] double weight(std::size_t term, std::size_t cell, const FixedLevels& at) const;
    // Nothing where the mean cannot be estimated; `inTheWay` is then the term that decides it.
    [[nodiscard]] std::optional<ColumnSpace::Function> meanFunction(const FixedLevels& at,
                                                                    std::string& inTheWay) const;
    [[nodiscard]] bool needsUnseen(std::size_t term, double seen) const;
};

} // namespace bullace::trials
