// Augmented designs: many selections once each, checks again and again, in blocks that the checks
// make comparable.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/trials/linear_model.hpp"
#include "core/trials/trial_table.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bullace::trials {

struct AugmentedPlan {
    std::string block;
    std::string entry;
    std::vector<std::string> checks; // levels of the entry; all others are selections
    double alpha = 0.05;
};

// Differences of two entries of one kind. Where the checks do not all stand once in each block,
// they have no one error: it is the mean over the pairs, between the least and the greatest.
struct PairError {
    std::size_t pairs = 0;
    double standardError = 0;
    double least = 0;
    double greatest = 0;
    double leastSignificant = 0; // t times the mean error
};

struct CheckAdjusted {
    std::string block;
    double effect = 0; // mean of its checks less that of all
};

struct AugmentedAnalysis {
    std::string method;
    std::size_t n = 0;
    std::size_t leftOut = 0;
    std::size_t selections = 0;
    double mean = 0;
    std::size_t degreesOfFreedom = 0;
    std::optional<double> errorVariance{};
    std::optional<double> cvPercent{};
    std::vector<VarianceLine> blocksFirst;  // block, entry, residuals
    std::vector<VarianceLine> entriesFirst; // entry, block, residuals
    // Block, then what the entries make of it: checks against selections, among checks, among
    // selections.
    std::vector<VarianceLine> parted;
    AdjustedMeans means; // of checks and selections, blocks weighted alike
    std::optional<PairError> twoChecks{};
    std::optional<PairError> sameBlock{};      // two selections of one block
    std::optional<PairError> differentBlock{}; // of two blocks
    std::optional<PairError> withCheck{};      // a selection and a check
    std::optional<double> meanError{};         // over all pairs
    // Federer 1956, Hawaiian Planters' Record 55:191-208; only where every block holds every check
    // once. The selections' adjusted means are then their values less these.
    std::vector<CheckAdjusted> checkEffects;
    Remarks remarks;
};

// Blocks and entries fixed; the errors of differences from the covariance of the means.
// Errors  InvalidInput where a column is not there, no check or no selection is among the records,
//         or nothing was recorded. BeyondLimit as LinearModel::fit.
// Source  Federer 1956; Petersen 1985, Design and Analysis of Experiments, ch. 6.
[[nodiscard]] Result<AugmentedAnalysis> analyseAugmented(const TrialTable& table,
                                                         const AugmentedPlan& plan);

enum class BlockEffects { Fixed, Random };

struct SelectionPrediction {
    std::string entry;
    double value = 0; // its deviation from the selections' mean
    double standardError = 0;
    std::optional<double> reliability{}; // nothing where selections do not vary
    double predicted = 0;                // with the selections' mean
};

// Selections as a sample of all seedlings that could have been, checks fixed.
struct RandomSelections {
    double selectionVariance = 0;
    std::optional<double> blockVariance{}; // where blocks are random
    double errorVariance = 0;
    bool hasConverged = false;
    double logLikelihood = 0; // restricted; without what depends on the coding of fixed effects
    double selectionsMean = 0;
    // 1 - mean variance of a difference / (2 · variance): Cullis, Smith & Coombes 2006, J. Agric.
    // Biol. Environ. Stat. 11:381-393. Nothing where selections do not vary.
    std::optional<double> heritability{};
    std::vector<SelectionPrediction> selections; // in the order of their bytes
    Remarks remarks;
};

// By REML, as fitMixed, with its errors beside those above.
[[nodiscard]] Result<RandomSelections>
predictSelections(const TrialTable& table, const AugmentedPlan& plan, BlockEffects blocks);

// The levels of `entry` that stand in more than one block, or more than once: what a list of checks
// is where nobody gave one. Empty where the columns are not there.
[[nodiscard]] std::vector<std::string> repeatedEntries(const TrialTable& table,
                                                       const std::string& entry);

} // namespace bullace::trials
