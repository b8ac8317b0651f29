// A fixed linear model of any list of terms over a trial's records: what its terms explain (types
// I, II and III), adjusted means with what is known of their precision, and the residuals.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"
#include "core/trials/trial_table.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::trials {

// One line of an analysis of variance. The last line is named "Residuals".
struct VarianceLine {
    std::string term;
    std::size_t degreesOfFreedom = 0;
    double sumOfSquares = 0;
    std::optional<double> meanSquare{}; // where there are degrees of freedom
    std::optional<double> f{};          // against the residuals, where these vary
    std::optional<double> p{};

    friend bool operator==(const VarianceLine&, const VarianceLine&) = default;
};

// What the fit leaves; one of each for every row that was taken.
struct FittedRow {
    std::size_t row = 0; // of the table
    double fitted = 0;
    double residual = 0;
    double leverage = 0;                 // 0 to 1
    std::optional<double> studentised{}; // residual over its own standard error, without this row
};

struct ModelSummary {
    std::size_t n = 0;                // rows taken
    std::size_t leftOut = 0;          // rows that miss the response or a column of a term
    std::size_t rank = 0;             // of the model, the general mean included
    std::size_t degreesOfFreedom = 0; // of the residuals
    double mean = 0;                  // of the response
    double totalSquares = 0;          // around the mean
    double residualSquares = 0;
    std::optional<double> residualVariance{}; // nothing without degrees of freedom
    std::optional<double> rSquared{};         // nothing where the response does not vary
    std::optional<double> cvPercent{};        // where the mean is above 0
    std::vector<VarianceLine> typeOne;        // in the order of the terms; residuals last
    std::vector<VarianceLine> typeTwo;        // each beside all terms that do not contain it
    std::vector<VarianceLine> typeThree;      // each beside all others, cells weighted alike; empty
                                              // where cells are (a remark says so)
    std::vector<std::string> notSeparable;    // terms that others wholly or partly stand for
    Remarks remarks;
};

struct AdjustedMean {
    std::string level; // of an interaction "A1:B2"
    std::size_t n = 0;
    double rawMean = 0; // of its records as they are
    // With 95 % limits; nothing where it cannot be estimated. Without degrees of freedom it has no
    // error.
    std::optional<statistics::Estimate> mean{};
};

struct AdjustedMeans {
    std::string term;
    std::vector<AdjustedMean> levels; // in the order of their bytes
    double degreesOfFreedom = 0;
    // k × k of the means, row by row; of a mean that cannot be estimated 0. Empty with more than
    // kMostCovariances levels, or without degrees of freedom.
    std::vector<double> covariance;
    Remarks remarks;

    // The standard error of a difference; nothing where one is not estimated or nothing is known.
    [[nodiscard]] std::optional<double> differenceError(std::size_t one, std::size_t other) const;
};
inline constexpr std::size_t kMostCovariances = 2500;

// Least squares. Rows that miss something are left out and counted. The largest factor is absorbed:
// its levels cost nothing, the others n times the square of their number.
class LinearModel {
public:
    // `terms` in the order of the type I table; the general mean is always in the model. A
    // covariate is taken about its mean. Errors  InvalidInput where a term names no column, a name
    // twice, or stands twice in the list;
    //         where no row is complete; where the response exceeds ±1e150.
    //         BeyondLimit where the model is too large to be solved densely.
    // Source  Searle 1971, Linear Models, chapters 5 to 8; types as Searle, Speed & Milliken 1980,
    //         Am. Stat. 34:216-221.
    [[nodiscard]] static Result<LinearModel> fit(const TrialTable& table,
                                                 std::span<const Term> terms);
    LinearModel(LinearModel&&) noexcept;
    LinearModel& operator=(LinearModel&&) noexcept;
    ~LinearModel();

    [[nodiscard]] const ModelSummary& summary() const;
    [[nodiscard]] const std::vector<FittedRow>& rows() const;

    // Means of the levels of a factor, or of the combinations of several that occur, with all other
    // factors weighted alike and covariates at their means.
    // Errors  InvalidInput where the term names a factor that no term of the model has.
    [[nodiscard]] Result<AdjustedMeans> means(const Term& term) const;

private:
    struct Parts;
    explicit LinearModel(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

} // namespace bullace::trials
