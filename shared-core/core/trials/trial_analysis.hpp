// A breeder's trial read whole: analysis of variance, means, what differs, what the blocks were
// worth, and whether the residuals allow it. One-way, blocks (or rows and columns), factorial;
// missing vines by least squares.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/trials/comparisons.hpp"
#include "core/trials/group_tests.hpp"
#include "core/trials/linear_model.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bullace::trials {

struct TrialPlan {
    std::vector<std::string> treatments; // one, or the factors of a factorial with all interactions
    std::vector<std::string> blocks;     // none, blocks, or rows and columns …
    std::vector<std::string> covariates;
    std::optional<std::string> reference{}; // a level of the first treatment
    double alpha = 0.05;
};

// The means of one treatment factor, or of a combination of several.
struct TreatmentMeans {
    AdjustedMeans means;
    Comparisons comparisons;
};

// How many times as many replicates it would take without the blocks, for the same precision:
// ((dfB·MSB + (n - 1 - dfB)·MSE) / (n - 1)) / MSE, with the blocks' mean square adjusted for all
// else (Cochran & Cox 1957, Experimental Designs, §4.37, without the correction for few degrees of
// freedom). Below 1 the blocks cost more than they gave.
struct BlockEfficiency {
    std::string block;
    double relative = 0;
};

struct Outlier {
    std::size_t row = 0; // of the table
    double residual = 0;
    double studentised = 0;
    double p = 0; // times the number of records (Bonferroni), at most 1
};

struct ResidualChecks {
    std::optional<double> shapiroW{};
    std::optional<double> shapiroP{};
    std::optional<GroupTest> bartlett{};      // of the residuals by treatment
    std::optional<GroupTest> brownForsythe{}; // likewise
    std::optional<GroupTest> nonAdditivity{}; // Tukey 1949, Biometrics 5:232-242: one degree of
                                              // freedom; where there are blocks and no interaction
    std::vector<Outlier> outliers;            // p below alpha, the farthest first
};

// Components of variance by the moments, of records within and between the treatments of a one-way
// layout (Searle, Casella & McCulloch 1992, Variance Components, §3.6); may be below 0.
struct OneWayComponents {
    double within = 0;
    double between = 0;
    double records = 0; // n0, the mean number of records of a treatment for unequal numbers
};

struct TrialAnalysis {
    std::string method; // one way, blocks, factorial, rows and columns, with covariates
    ModelSummary model;
    std::vector<TreatmentMeans> treatments; // main effects first, then interactions
    std::vector<AdjustedMeans> blocks;
    std::vector<BlockEfficiency> efficiencies;
    ResidualChecks checks;
    std::optional<GroupTest> welch{}; // one-way only
    std::optional<GroupTest> kruskalWallis{};
    std::optional<OneWayComponents> components{};
    std::vector<FittedRow> rows;
    Remarks remarks; // of all parts, each once
};

// Blocks stand first in the type I table, then covariates, then treatments.
// Errors  InvalidInput where no treatment is named, a column is not there or named twice, the
//         treatment has one level only, or nothing was recorded; BeyondLimit as LinearModel::fit.
[[nodiscard]] Result<TrialAnalysis> analyseTrial(const TrialTable& table, const TrialPlan& plan);

} // namespace bullace::trials
