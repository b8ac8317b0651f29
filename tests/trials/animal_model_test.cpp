// Breeding values through the pedigree: Mrode 2014, Example 3.1, and an invented vine pedigree.
#include "trials/case_table.hpp"

#include "core/breeding/related.hpp"
#include "core/trials/mixed_model.hpp"
#include "support/check_case.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::trials;
using test::CheckCase;
using test::tableOf;

namespace {

std::shared_ptr<const Related> relatedOf(const CheckCase& check) {
    const auto csv = report::readCsv(check.file("pedigree.csv"));
    REQUIRE(csv.ok());
    std::vector<breeding::PedigreeLine> lines;
    for (const report::CsvRow& row : csv->rows) {
        lines.push_back({row.cells[0], row.cells[1], row.cells[2], row.line});
    }
    const auto pedigree = breeding::makePedigree(lines);
    REQUIRE(pedigree.ok());
    return breeding::relatedThrough(*pedigree);
}

} // namespace

TEST_CASE("with known variances breeding values are as in Mrode 2014, Example 3.1") {
    // Table 3.1 and its solutions, 3rd edition, pp. 37-44: calves, their weight gain before
    // weaning.
    const std::vector<breeding::PedigreeLine> lines{{"1", "", "", 1},
                                                    {"2", "", "", 2},
                                                    {"3", "", "", 3},
                                                    {"4", "", "1", 4},
                                                    {"5", "2", "3", 5},
                                                    {"6", "2", "1", 6},
                                                    {"7", "5", "4", 7},
                                                    {"8", "6", "3", 8}};
    const auto pedigree = breeding::makePedigree(lines);
    REQUIRE(pedigree.ok());
    TrialTable table;
    table.responseName = "gain";
    table.response = {4.5, 2.9, 3.9, 3.5, 5.0};
    table.factors = {makeFactor("calf", std::vector<std::string>{"4", "5", "6", "7", "8"}),
                     makeFactor("sex", std::vector<std::string>{"M", "F", "F", "M", "M"})};
    MixedSpec spec;
    spec.hasIntercept = false;
    spec.fixed = {{"sex"}};
    spec.random.push_back({{"calf"}, {}, true, breeding::relatedThrough(*pedigree), {}});
    MixedOptions options;
    options.knownVariances = {20, 40};
    const auto fit = fitMixed(table, spec, options);
    REQUIRE(fit.ok());
    const std::vector<double> printed{0.098, -0.019, -0.041, -0.009, -0.186, 0.177, -0.249, 0.183};
    const RandomPredictions& values = *fit->predictionsOf("calf");
    for (const Prediction& each : values.levels) {
        const auto calf = static_cast<std::size_t>(std::stoi(each.level) - 1);
        CHECK(std::abs(each.value - printed[calf]) < 0.0005);
    }
    CHECK(std::abs(fit->fixedMeans[0].means[1].value - 4.358) < 0.001);
    CHECK(std::abs(fit->fixedMeans[0].means[0].value - 3.404) < 0.001);
    if (const auto check = CheckCase::open("animal-model-mrode-3.1")) {
        for (const Prediction& each : values.levels) {
            CHECK(check->agrees("blup." + each.level + ".a", each.value));
            CHECK(check->agrees("blup." + each.level + ".pev", each.predictionErrorVariance));
            CHECK(check->agrees("blup." + each.level + ".reliability", each.reliability));
        }
    }
}

TEST_CASE("variances, breeding values and their reliability through a pedigree with selfing") {
    const auto check = CheckCase::open("animal-model-reml-vines");
    if (!check) {
        return;
    }
    MixedSpec spec;
    spec.fixed = {{"year"}};
    spec.random.push_back({{"id"}, {}, true, relatedOf(*check), "additive"});
    spec.random.push_back({{"id"}, {}, true, {}, "accession"});
    MixedOptions options;
    options.hasTestsOfRandomTerms = true;
    const auto fit = fitMixed(tableOf(*check, "records.csv"), spec, options);
    REQUIRE_MESSAGE(fit.ok(), (fit.ok() ? "" : fit.error().message));
    for (const VarianceComponent& component : fit->variances) {
        CHECK(check->agrees("varcomp." + component.name, component.value));
        CHECK(check->agrees("varcomp_se_observed_info." + component.name, component.standardError));
        CHECK(check->agrees("varcomp_se_average_info." + component.name,
                            component.averageStandardError));
    }
    CHECK(check->agrees("reml_loglik", fit->logLikelihood));
    CHECK(check->agrees("reml_loglik_invariant", fit->invariantLogLikelihood));
    CHECK(check->agrees("lrt_additive", fit->randomTests[0].likelihoodRatio));
    CHECK(check->agrees("fixed.(Intercept).est", fit->fixed[0].value));
    CHECK(check->agrees("fixed.yearY2020.se", fit->fixed[2].standardError));
    for (const Prediction& each : fit->predictionsOf("additive")->levels) {
        const std::string path = "blup." + each.level;
        CHECK(check->agrees(path + ".a", each.value));
        CHECK(check->agrees(path + ".pev", each.predictionErrorVariance));
        CHECK(check->agrees(path + ".reliability", each.reliability));
    }
    MESSAGE(check->asked() << " numbers, " << fit->evaluations << " evaluations");
}

TEST_CASE("an accession with records that its pedigree does not hold is named") {
    const auto pedigree =
        breeding::makePedigree(std::vector<breeding::PedigreeLine>{{"A1", "", "", 1}});
    REQUIRE(pedigree.ok());
    TrialTable table;
    table.response = {1, 2, 3, 5};
    table.factors = {makeFactor("accession", std::vector<std::string>{"A1", "A1", "B7", "B7"})};
    MixedSpec spec;
    spec.random.push_back({{"accession"}, {}, true, breeding::relatedThrough(*pedigree), {}});
    const auto fit = fitMixed(table, spec);
    REQUIRE_FALSE(fit.ok());
    CHECK(fit.error().message == "\"B7\" has records but does not stand in the pedigree.");
}
