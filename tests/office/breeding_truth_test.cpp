// The truth behind the demo's trial and crosses, recovered from its notes within the intervals.
#include "core/breeding/cross_book.hpp"
#include "core/breeding/related.hpp"
#include "core/season/station_crosses.hpp"
#include "core/season/station_pedigree.hpp"
#include "core/season/station_trial.hpp"
#include "core/statistics/distributions.hpp"
#include "core/trials/descriptor_correlation.hpp"
#include "core/trials/mixed_model.hpp"
#include "support/demo_notes.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>

using namespace bullace;
using namespace bullace::test;

namespace {

const demo::BreedingTruth& truth() {
    return demoStation().truth.breeding;
}

// The trial's records of one descriptor, each row a vine in a season.
season::StationTrial trialRecords(const std::string& descriptor) {
    vineyard::Block block;
    block.code = "T1";
    for (unsigned row = 1; row <= 8; ++row) {
        const std::string along = "T1-0" + std::to_string(row) + "-";
        block.replicates.push_back({along + "01", along + "30", (row + 1) / 2});
    }
    const std::vector<vineyard::Block> blocks{block};
    return season::trialOf(demoNotes(), blocks, {descriptor, {}, {"T1"}});
}

trials::MixedSpec modelOf(bool isThroughPedigree) {
    trials::MixedSpec spec;
    spec.fixed = {{season::kSeasonFactor}};
    trials::RandomTerm accession{{season::kAccessionFactor}, {}, true, {}, "accession"};
    if (isThroughPedigree) {
        const auto pedigree = season::pedigreeOf(demoNotes());
        REQUIRE(pedigree.ok());
        accession.related = breeding::relatedThrough(*pedigree);
    }
    spec.random = {accession,
                   {{season::kAccessionFactor, season::kSeasonFactor}},
                   {{season::kSeasonFactor, season::kReplicateFactor}}};
    return spec;
}

trials::MixedFit fitOf(const season::StationTrial& trial) {
    const auto fit = trials::fitMixed(trial.table, modelOf(true));
    REQUIRE_MESSAGE(fit.ok(), (fit.ok() ? "" : fit.error().message));
    CHECK(fit->hasConverged);
    return *fit;
}

// By a normal approximation on the logarithm, as variances are skewed.
bool holdsVariance(const trials::VarianceComponent& component, double value) {
    if (!component.standardError || component.value <= 0) {
        return false;
    }
    const double ratio = 1.96 * *component.standardError / component.value;
    return std::abs(std::log(component.value / value)) <= ratio;
}

} // namespace

TEST_CASE("breeding values of the trial's selections lie within their 95 % limits") {
    for (const bool isYield : {true, false}) {
        const auto trial = trialRecords(isYield ? "yield" : "soluble-solids");
        CHECK(trial.table.rows() == 240 * 3 - 2 * truth().deadVines.size());
        const trials::MixedFit fit = fitOf(trial);
        std::map<std::string, const trials::Prediction*> predicted;
        for (const trials::Prediction& each : fit.predictionsOf("accession")->levels) {
            predicted[each.level] = &each;
        }
        // Founders' values are not known: selections are compared with their own mean.
        double mean = 0;
        double predictedMean = 0;
        const auto count = static_cast<double>(truth().selections.size());
        for (const demo::BredSelection& selection : truth().selections) {
            mean += (isYield ? selection.yieldKg : selection.brix) / count;
            predictedMean += predicted.at(selection.id)->value / count;
        }
        Coverage coverage;
        for (const demo::BredSelection& selection : truth().selections) {
            const trials::Prediction& each = *predicted.at(selection.id);
            const double is = (isYield ? selection.yieldKg : selection.brix) - mean;
            const double half = 1.96 * std::sqrt(each.predictionErrorVariance);
            coverage.add(std::abs(each.value - predictedMean - is) <= half);
        }
        MESSAGE((isYield ? "yield" : "sugar")
                << ": breeding values held: " << coverage.held << " of " << coverage.of);
        CHECK(coverage.share() >= 0.88); // 95 % of 60 is 57; three deviations below it is 52
    }
}

TEST_CASE("the trial's variances lie within their limits") {
    Coverage coverage;
    for (const bool isYield : {true, false}) {
        const trials::MixedFit fit = fitOf(trialRecords(isYield ? "yield" : "soluble-solids"));
        const demo::TrialVariances& is = isYield ? truth().yield : truth().brix;
        const std::vector<double> values{
            is.additive, is.accessionInSeason, is.replicateInSeason, is.residual};
        REQUIRE(fit.variances.size() == values.size());
        for (std::size_t i = 0; i < values.size(); ++i) {
            INFO(fit.variances[i].name << " " << fit.variances[i].value << ", truly " << values[i]);
            coverage.add(holdsVariance(fit.variances[i], values[i]));
        }
    }
    MESSAGE("variances held: " << coverage.held << " of " << coverage.of);
    CHECK(coverage.held + 1 >= coverage.of);
}

TEST_CASE("yield and sugar go against one another as they do in the genes") {
    const auto both = season::trialOfBoth(demoNotes(), {}, {"yield", {}, {"T1"}}, "soluble-solids");
    trials::MixedSpec spec;
    spec.fixed = {{season::kSeasonFactor}};
    spec.random = {{{season::kAccessionFactor}},
                   {{season::kAccessionFactor, season::kSeasonFactor}}};
    const auto told =
        trials::correlateDescriptors(both.trial.table, "soluble-solids", both.other, spec);
    REQUIRE_MESSAGE(told.ok(), (told.ok() ? "" : told.error().message));
    const auto& genetic = told->terms.front().correlation;
    REQUIRE(genetic.has_value());
    REQUIRE(genetic->standardError.has_value());
    MESSAGE("genetic correlation " << genetic->value << " ± " << *genetic->standardError
                                   << ", truly " << truth().geneticCorrelation);
    CHECK(std::abs(genetic->value - truth().geneticCorrelation) <= 1.96 * *genetic->standardError);
}

TEST_CASE("how well each cross set and germinated lies within its limits") {
    const season::StationCrosses crosses = season::crossesOf(demoNotes());
    const auto book = breeding::crossBook(crosses.heads, crosses.events);
    REQUIRE_MESSAGE(book.ok(), (book.ok() ? "" : book.error().message));
    Coverage coverage;
    for (const demo::BredCross& is : truth().crosses) {
        const auto found = std::ranges::find_if(
            *book, [&](const auto& entry) { return entry.head.cross == is.id; });
        REQUIRE(found != book->end());
        const auto countAt = [&](breeding::BookStep step) {
            return static_cast<double>(found->at(step).count.value_or(-1));
        };
        CHECK(countAt(breeding::BookStep::Pollinated) == is.flowers);
        CHECK(countAt(breeding::BookStep::Harvested) == is.fruits);
        CHECK(countAt(breeding::BookStep::Seeds) == is.seeds);
        const auto holdsShare = [](double successes, double trials, double share) {
            const double low =
                successes == 0 ? 0
                               : statistics::betaQuantile(0.025, successes, trials - successes + 1);
            const double high =
                successes == trials
                    ? 1
                    : statistics::betaQuantile(0.975, successes + 1, trials - successes);
            return low <= share && share <= high; // Clopper & Pearson 1934
        };
        coverage.add(holdsShare(countAt(breeding::BookStep::Set), is.flowers, is.setShare));
        coverage.add(holdsShare(countAt(breeding::BookStep::Germinated),
                                countAt(breeding::BookStep::Sinkers),
                                is.germinationShare));
    }
    MESSAGE("shares of crosses held: " << coverage.held << " of " << coverage.of);
    CHECK(coverage.share() >= 0.85);
}
