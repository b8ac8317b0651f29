// Split-plot trials: one factor on whole plots in blocks, another on the vines within them, each
// with its own error.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/trials/trial_analysis.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bullace::trials {

struct SplitPlotPlan {
    std::string block;
    std::string wholePlot; // the factor whose levels whole plots have
    std::string subPlot;   // and that of the parts of a whole plot
    double alpha = 0.05;
};

// A difference of two means of one kind.
struct DifferenceKind {
    double standardError = 0;
    double degreesOfFreedom = 0;
    double leastSignificant = 0;
};

struct SplitPlotAnalysis {
    std::string method;
    std::size_t n = 0;
    std::size_t leftOut = 0;
    double mean = 0;
    // Lines of the three strata; their last is the residuals of the stratum, that of blocks alone.
    std::vector<VarianceLine> blocks;
    std::vector<VarianceLine> wholePlots;
    std::vector<VarianceLine> subPlots;
    std::optional<double> cvWholePercent{}; // of the error of whole plots and of sub-plots
    std::optional<double> cvSubPercent{};
    // Where every block holds every combination once; otherwise a remark says why they are absent.
    std::optional<TreatmentMeans> wholePlotMeans{};
    std::optional<TreatmentMeans> subPlotMeans{};
    std::optional<AdjustedMeans> combinations{}; // means without errors of their own
    std::optional<DifferenceKind> betweenWholePlots{};
    std::optional<DifferenceKind> betweenSubPlots{};
    std::optional<DifferenceKind>
        subWithinWhole{};                       // two of the sub-plot factor, one whole-plot level
    std::optional<DifferenceKind> wholeAtSub{}; // two of the whole-plot factor; Satterthwaite 1946
    // From the mean squares; may be below 0, which a remark says.
    std::optional<double> subPlotVariance{};
    std::optional<double> wholePlotVariance{};
    std::optional<double> blockVariance{};
    Remarks remarks;
};

// Errors  InvalidInput where a column is not there or named twice, a factor has one level only, or
// a
//         combination stands more than once in a block.
// Source  Yates 1935, J. R. Stat. Soc. Suppl. 2:181-247; Cochran & Cox 1957, Experimental Designs,
//         §7.1; Satterthwaite 1946, Biometrics Bull. 2:110-114.
[[nodiscard]] Result<SplitPlotAnalysis> analyseSplitPlot(const TrialTable& table,
                                                         const SplitPlotPlan& plan);

} // namespace bullace::trials
