// Whatever the records, no answer holds a number that is none, and nothing ends the program.
#include "core/trials/augmented.hpp"
#include "core/trials/nested_components.hpp"
#include "core/trials/split_plot.hpp"
#include "core/trials/trial_analysis.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::trials;

namespace {

bool isNumber(const std::optional<double>& value) {
    return !value || std::isfinite(*value);
}

bool areNumbers(const std::vector<VarianceLine>& lines) {
    return std::ranges::all_of(lines, [](const VarianceLine& line) {
        return std::isfinite(line.sumOfSquares) && isNumber(line.meanSquare) && isNumber(line.f) &&
               isNumber(line.p);
    });
}

bool areNumbers(const AdjustedMeans& means) {
    return std::ranges::all_of(means.levels, [](const AdjustedMean& level) {
        return std::isfinite(level.rawMean) &&
               (!level.mean ||
                (std::isfinite(level.mean->value) && isNumber(level.mean->standardError)));
    });
}

bool areNumbers(const Comparisons& compared) {
    const bool arePairs = std::ranges::all_of(compared.pairs, [](const Difference& pair) {
        return std::isfinite(pair.t) && std::isfinite(pair.p) && std::isfinite(pair.pTukey) &&
               pair.standardError > 0 && std::isfinite(pair.leastTukey);
    });
    const bool areOthers =
        std::ranges::all_of(compared.toReference, [](const ReferenceDifference& each) {
            return std::isfinite(each.t) && std::isfinite(each.p);
        });
    return arePairs && areOthers && isNumber(compared.leastTukey) && isNumber(compared.meanError);
}

bool isNumber(const std::optional<GroupTest>& test) {
    return !test || (std::isfinite(test->statistic) && std::isfinite(test->p) &&
                     std::isfinite(test->degreesOfFreedom) && isNumber(test->denominator));
}

bool areNumbers(const TrialAnalysis& trial) {
    bool are = areNumbers(trial.model.typeOne) && areNumbers(trial.model.typeTwo) &&
               areNumbers(trial.model.typeThree) && isNumber(trial.model.residualVariance) &&
               isNumber(trial.model.cvPercent) && isNumber(trial.model.rSquared);
    for (const TreatmentMeans& each : trial.treatments) {
        are = are && areNumbers(each.means) && areNumbers(each.comparisons);
    }
    for (const BlockEfficiency& each : trial.efficiencies) {
        are = are && std::isfinite(each.relative);
    }
    for (const FittedRow& row : trial.rows) {
        are = are && std::isfinite(row.fitted) && std::isfinite(row.leverage) &&
              isNumber(row.studentised);
    }
    return are && isNumber(trial.checks.shapiroW) && isNumber(trial.checks.shapiroP) &&
           isNumber(trial.checks.bartlett) && isNumber(trial.checks.brownForsythe) &&
           isNumber(trial.checks.nonAdditivity) && isNumber(trial.welch) &&
           isNumber(trial.kruskalWallis);
}

// A few records with gaps, ties, repeats, and numbers of every size.
TrialTable hardTable(unsigned seed) {
    std::mt19937_64 random(seed);
    const double none = std::numeric_limits<double>::quiet_NaN();
    const std::array values{0.0,
                            1.0,
                            1.0,
                            1.0,
                            2.0,
                            3.5,
                            -4.0,
                            none,
                            1e140,
                            1e-300,
                            1e12,
                            1e12 + 1,
                            5.0,
                            6.25,
                            none,
                            1e-9};
    // Most tables keep to few of them.
    const std::size_t kinds = 1 + random() % values.size();
    TrialTable table;
    table.responseName = std::string("y");
    const std::size_t rows = random() % 20;
    std::array<std::vector<std::string>, 3> cells;
    Covariate covariate{"x", {}};
    for (std::size_t row = 0; row < rows; ++row) {
        table.response.push_back(values[random() % kinds]);
        covariate.values.push_back(values[random() % kinds]);
        for (auto& column : cells) {
            const auto level = random() % 4;
            const bool isMissing = level == 3 && random() % 4 == 0;
            column.emplace_back(isMissing ? 0 : 1, static_cast<char>('0' + level));
        }
    }
    table.factors = {
        makeFactor("t", cells[0]), makeFactor("b", cells[1]), makeFactor("s", cells[2])};
    table.covariates = {covariate};
    return table;
}

} // namespace

TEST_CASE("no trial, however hard its records, gives a number that is none") {
    CHECK(rc::check([](unsigned seed) {
        const TrialTable table = hardTable(seed);
        for (const TrialPlan& plan : {TrialPlan{{"t"}, {}, {}, "1"},
                                      TrialPlan{{"t"}, {"b"}, {}, "0"},
                                      TrialPlan{{"t"}, {"b", "s"}, {"x"}},
                                      TrialPlan{{"t", "s"}, {"b"}, {}},
                                      TrialPlan{{"t", "s", "b"}, {}, {"x"}}}) {
            const auto trial = analyseTrial(table, plan);
            RC_ASSERT((!trial.ok() || areNumbers(*trial)));
            RC_ASSERT((trial.ok() || !trial.error().message.empty()));
        }
    }));
}

TEST_CASE("no split plot, nested or augmented trial does either") {
    CHECK(rc::check([](unsigned seed) {
        const TrialTable table = hardTable(seed);
        if (const auto split = analyseSplitPlot(table, {"b", "t", "s"})) {
            RC_ASSERT(areNumbers(split->wholePlots) && areNumbers(split->subPlots));
            RC_ASSERT(isNumber(split->wholePlotVariance) && isNumber(split->blockVariance));
        }
        if (const auto nested = nestedComponents(table, {"t", "s"})) {
            for (const auto& level : nested->levels) {
                RC_ASSERT(isNumber(level.variance) && isNumber(level.meanSquare));
            }
        }
        const AugmentedPlan plan{"b", "t", {"0", "2"}};
        if (const auto augmented = analyseAugmented(table, plan)) {
            RC_ASSERT(areNumbers(augmented->means) && areNumbers(augmented->parted));
            RC_ASSERT(isNumber(augmented->meanError));
        }
        for (const BlockEffects blocks : {BlockEffects::Fixed, BlockEffects::Random}) {
            if (const auto random = predictSelections(table, plan, blocks)) {
                RC_ASSERT(std::isfinite(random->selectionVariance));
                for (const SelectionPrediction& each : random->selections) {
                    RC_ASSERT(std::isfinite(each.value) && std::isfinite(each.standardError));
                }
            }
        }
    }));
}
