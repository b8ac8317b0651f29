#include "core/fruit/crop.hpp"

#include "core/fruit/sample_size.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::fruit {

using statistics::Estimate;
using statistics::Interval;

namespace {

constexpr std::size_t kFewestRecords = 3;

bool boreNothing(const std::string& reason) {
    return reason == "no-crop" || reason == "no-vine" || reason == "dead";
}

// Standard error relative to the value.
double relative(const Estimate& estimate) {
    return estimate.standardError ? *estimate.standardError / estimate.value : 0;
}

} // namespace

SeasonYield seasonYield(std::span<const Pick> picks) {
    SeasonYield yield;
    for (const Pick& pick : picks) {
        if (pick.kg) {
            yield.kg += *pick.kg;
            ++yield.picks;
            yield.first = yield.first ? std::min(*yield.first, pick.day) : pick.day;
            yield.last = yield.last ? std::max(*yield.last, pick.day) : pick.day;
        } else if (!boreNothing(pick.none)) {
            ++yield.missed;
        }
    }
    yield.isComplete = yield.missed == 0;
    if (!yield.isComplete) {
        yield.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                  "Incomplete: picks missed: %1. The vine bore "
                                                  "more than the sum says."),
                                 {static_cast<std::int64_t>(yield.missed)}});
    }
    return yield;
}

double vinesPerArea(double area, double betweenRows, double inTheRow) {
    return area / (betweenRows * inTheRow);
}

LagPhaseFactor lagPhaseFactor(std::span<const LagPhaseRecord> records) {
    LagPhaseFactor answer;
    std::vector<double> logs;
    for (const LagPhaseRecord& record : records) {
        const double ratio = record.finalWeight / record.lagWeight;
        if (record.lagWeight > 0 && record.finalWeight > 0 && std::isfinite(ratio) && ratio > 0) {
            logs.push_back(std::log(ratio));
        }
    }
    answer.records = logs.size();
    if (logs.size() < records.size()) {
        answer.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "Left out for a weight that is not above 0: %1."),
             {static_cast<std::int64_t>(records.size() - logs.size())}});
    }
    if (logs.size() < kFewestRecords) {
        answer.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The station has %1 records of lag-phase and "
                              "final weight; a factor needs at least %2."),
             {static_cast<std::int64_t>(logs.size()), static_cast<std::int64_t>(kFewestRecords)}});
        return answer;
    }
    const Spread spread = spreadOf(logs);
    const double error = *spread.sd / std::sqrt(static_cast<double>(logs.size()));
    const double half =
        error * statistics::studentTQuantile(0.975, static_cast<double>(logs.size()) - 1);
    const double factor = std::exp(spread.mean);
    answer.factor = Estimate{factor,
                             factor * error,
                             Interval{std::exp(spread.mean - half), std::exp(spread.mean + half)}};
    return answer;
}

CropEstimate cropEstimate(const CropFactors& factors) {
    std::vector<Estimate> all{factors.bearingVines,
                              factors.clustersPerVine,
                              factors.berriesPerCluster,
                              factors.berryGrams};
    if (factors.lagPhase) {
        all.push_back(*factors.lagPhase);
    }
    CropEstimate crop;
    double grams = 1;
    double variance = 0;
    for (const Estimate& factor : all) {
        const double squared = relative(factor) * relative(factor);
        if (!(factor.value > 0) || !std::isfinite(factor.value) || !std::isfinite(squared)) {
            crop.shares.clear();
            crop.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                     "A factor is not above 0: there is no crop "
                                                     "to estimate."),
                                    {}});
            return crop;
        }
        grams *= factor.value;
        variance += squared;
        crop.shares.push_back(squared);
    }
    for (double& share : crop.shares) {
        share = variance > 0 ? share / variance : 0;
    }
    const double kg = grams / 1000;
    const double spread = std::exp(statistics::kNormal95 * std::sqrt(variance));
    if (std::isfinite(kg) && kg > 0 && std::isfinite(kg * spread)) {
        crop.kg = Estimate{kg, kg * std::sqrt(variance), Interval{kg / spread, kg * spread}};
    } else {
        crop.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                 "The factors are too uncertain, or too large, "
                                                 "for a crop to be said."),
                                {}});
    }
    if (!factors.lagPhase) {
        crop.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                 "The berries are taken at the weight they had "
                                                 "when they were weighed; they may still grow."),
                                {}});
    }
    return crop;
}

} // namespace bullace::fruit
