// Indices against a textbook's example and an outside case; what must hold of any.
#include "core/breeding/selection_index.hpp"

#include "core/report/csv.hpp"
#include "support/check_file.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <limits>

using namespace bullace;
using namespace bullace::breeding;
using namespace bullace::test;

namespace {

// Mrode 2014, Linear Models for the Prediction of Animal Breeding Values, pp. 15-18: growth rate
// and lean percent.
const TraitVariances kBeef{
    {"growth", "lean"}, {6400, -57.6, -57.6, 51.84}, {2752, 62.064, 62.064, 15.552}};

std::vector<double> listOf(const nlohmann::json& object, const std::vector<std::string>& names) {
    std::vector<double> list;
    for (const std::string& name : names) {
        list.push_back(object.at(name));
    }
    return list;
}

void checkAll(const std::vector<double>& values, const std::vector<double>& wanted) {
    REQUIRE(values.size() == wanted.size());
    for (std::size_t k = 0; k < values.size(); ++k) {
        CHECK(values[k] == doctest::Approx(wanted[k]).epsilon(1e-9));
    }
}

// The invented four-trait case.
struct Grapes {
    nlohmann::json parameters;
    nlohmann::json expected;
    TraitVariances variances;
    std::vector<double> weights;
    std::vector<IndexCandidate> candidates;
};

std::optional<Grapes> grapes() {
    const std::string folder = "cases/index-grape-4traits/";
    const auto parameters = checkFile(folder + "parameters.json");
    const auto expected = checkFile(folder + "expected.json");
    const auto csv = checkFile(folder + "candidates.csv");
    if (!parameters || !expected || !csv) {
        return {};
    }
    Grapes all{nlohmann::json::parse(*parameters),
               nlohmann::json::parse(*expected)["expected"],
               {},
               {},
               {}};
    all.variances.traits = all.parameters["traits"].get<std::vector<std::string>>();
    for (const auto& [key, into] :
         {std::pair{"P", &all.variances.phenotypic}, {"G", &all.variances.genetic}}) {
        for (const auto& row : all.parameters[key]) {
            into->insert(into->end(), row.begin(), row.end());
        }
    }
    all.weights = listOf(all.parameters["weights"], all.variances.traits);
    const auto table = report::readCsv(*csv);
    REQUIRE(table.ok());
    for (const auto& row : table->rows) {
        IndexCandidate candidate{row.cells[0], {}};
        for (std::size_t t = 1; t < row.cells.size(); ++t) {
            candidate.values.push_back(nlohmann::json::parse(row.cells[t]).get<double>());
        }
        all.candidates.push_back(candidate);
    }
    return all;
}

std::vector<std::string> idsOf(const RankedCandidates& ranked) {
    std::vector<std::string> ids;
    for (const CandidateIndex& of : ranked.candidates) {
        ids.push_back(of.id);
    }
    return ids;
}

} // namespace

TEST_CASE("the beef index has the printed coefficients") {
    const auto index = smithHazel(kBeef, std::vector{1.5, 0.5});
    REQUIRE(index.ok());
    // Printed 0.674 and 2.695; further digits from an independent run.
    checkAll(index->coefficients, {0.674102272727273, 2.69483585858586});
    CHECK(index->variance == doctest::Approx(3075.44640627273).epsilon(1e-10));
    CHECK(*index->objectiveVariance == doctest::Approx(6288.984).epsilon(1e-10));
    CHECK(*index->accuracy == doctest::Approx(0.699300496714616).epsilon(1e-10));
    // The printed sub-indices 0.445, 1.692 and 0.0125, 0.314.
    checkAll(smithHazel(kBeef, std::vector{1.0, 0.0})->coefficients,
             {0.445227272727273, 1.69191919191919});
    checkAll(smithHazel(kBeef, std::vector{0.0, 1.0})->coefficients,
             {0.0125227272727273, 0.313914141414141});
}

TEST_CASE("the index of four grape traits agrees with an independent run") {
    const auto all = grapes();
    if (!all) {
        return;
    }
    const nlohmann::json& expected = all->expected;
    const auto index = smithHazel(all->variances, all->weights);
    REQUIRE(index.ok());
    const auto& traits = all->variances.traits;
    checkAll(index->coefficients, listOf(expected["b"], traits));
    CHECK(index->variance == doctest::Approx(expected["var_index"].get<double>()).epsilon(1e-9));
    CHECK(std::sqrt(index->variance) ==
          doctest::Approx(expected["sd_index"].get<double>()).epsilon(1e-9));
    CHECK(*index->objectiveVariance ==
          doctest::Approx(expected["var_objective"].get<double>()).epsilon(1e-9));
    CHECK(*index->accuracy == doctest::Approx(expected["accuracy"].get<double>()).epsilon(1e-9));
    CHECK(*index->heritability ==
          doctest::Approx(expected["heritability_of_index"].get<double>()).epsilon(1e-9));
    for (std::size_t t = 0; t < traits.size(); ++t) {
        CHECK(all->variances.genetic[t * 5] / all->variances.phenotypic[t * 5] ==
              doctest::Approx(expected["single_trait_h2"][traits[t]].get<double>()).epsilon(1e-9));
    }
    const double infinite = selectionIntensity(0.2);
    const double finite = selectionIntensity(4, 20);
    CHECK(infinite ==
          doctest::Approx(expected["selection"]["intensity_infinite"].get<double>()).epsilon(1e-9));
    CHECK(finite ==
          doctest::Approx(expected["selection"]["intensity_finite_order_statistics"].get<double>())
              .epsilon(1e-8));
    CHECK(*index->objectiveResponse * infinite ==
          doctest::Approx(expected["expected_response_objective_infinite"].get<double>())
              .epsilon(1e-9));
    CHECK(*index->objectiveResponse * finite ==
          doctest::Approx(expected["expected_response_objective_finite"].get<double>())
              .epsilon(1e-8));
    std::vector<double> gains = index->traitResponse;
    for (double& gain : gains) {
        gain *= infinite;
    }
    checkAll(gains, listOf(expected["expected_gain_per_trait_infinite"], traits));

    const auto ranked = rankByIndex(*index, all->candidates);
    REQUIRE(ranked.ok());
    CHECK(idsOf(*ranked) == expected["ranking"].get<std::vector<std::string>>());
    for (const CandidateIndex& of : ranked->candidates) {
        CHECK(*of.index ==
              doctest::Approx(expected["index_values"][of.id].get<double>()).epsilon(1e-9));
        CHECK(*of.accuracy == doctest::Approx(*index->accuracy).epsilon(1e-12));
    }
    const auto base = baseIndex(all->variances, all->weights);
    CHECK(idsOf(*rankByIndex(*base, all->candidates)) ==
          expected["base_index_ranking"].get<std::vector<std::string>>());
    CHECK(*base->accuracy < *index->accuracy);

    const auto wanted = listOf(all->parameters["desired_gains"], traits);
    const auto desired = desiredGains(all->variances, wanted);
    checkAll(desired->coefficients, listOf(expected["desired_gains"]["b"], traits));
    const double sd = std::sqrt(desired->variance);
    CHECK(sd == doctest::Approx(expected["desired_gains"]["index_sd"].get<double>()).epsilon(1e-9));
    for (std::size_t t = 0; t < traits.size(); ++t) {
        CHECK(desired->traitResponse[t] * sd / wanted[t] == doctest::Approx(1).epsilon(1e-9));
    }
    CHECK_FALSE(desired->accuracy);
}

TEST_CASE("a restricted index leaves the held trait where it is, and costs accuracy") {
    const std::vector<std::size_t> held{1};
    const auto free = smithHazel(kBeef, std::vector{1.5, 0.5});
    const auto restricted = restrictedIndex(kBeef, std::vector{1.5, 0.5}, held);
    REQUIRE(restricted.ok());
    CHECK(std::abs(restricted->traitResponse[1]) < 1e-10);
    CHECK(restricted->traitResponse[0] > 0);
    CHECK(*restricted->accuracy < *free->accuracy);
    CHECK_FALSE(restrictedIndex(kBeef, std::vector{1.5, 0.5}, std::vector<std::size_t>{0, 1}).ok());
    CHECK_FALSE(restrictedIndex(kBeef, std::vector{1.5, 0.5}, std::vector<std::size_t>{2}).ok());
}

TEST_CASE("a trait that was not measured enters as the others let expect it") {
    const auto index = smithHazel(kBeef, std::vector{1.5, 0.5});
    const std::vector<IndexCandidate> candidates{
        {"A1", {900.0, 55.0}}, {"A2", {950.0, {}}}, {"A3", {{}, {}}}, {"A4", {{}, 61.0}}};
    const auto ranked = rankByIndex(*index, candidates, std::vector{900.0, 55.0});
    REQUIRE(ranked.ok());
    CHECK(idsOf(*ranked) == std::vector<std::string>{"A2", "A4", "A1", "A3"});
    // The index from growth alone: b = Cov(growth, objective)/Var(growth).
    const double b = (2752 * 1.5 + 62.064 * 0.5) / 6400;
    CHECK(*ranked->candidates[0].index == doctest::Approx(50 * b).epsilon(1e-12));
    CHECK(*ranked->candidates[0].accuracy ==
          doctest::Approx(b * std::sqrt(6400 / 6288.984)).epsilon(1e-12));
    CHECK(ranked->candidates[2].index == 0.0);
    CHECK_FALSE(ranked->candidates[3].index);
    CHECK_FALSE(ranked->candidates[3].rank);
    CHECK(ranked->remarks.size() == 2);
}

TEST_CASE("variances that contradict one another are refused, or bent and said so") {
    const TraitVariances three{{"a", "b", "c"},
                               {1, 0.9, 0.9, 0.9, 1, -0.9, 0.9, -0.9, 1},
                               {0.5, 0, 0, 0, 0.5, 0, 0, 0, 0.5}};
    const std::vector<double> weights{1, 1, 1};
    const auto refused = smithHazel(three, weights);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().message.find("phenotypic variances") != std::string::npos);
    const auto bent = smithHazel(three, weights, Bending::Allowed);
    REQUIRE(bent.ok());
    CHECK(bent->remarks.size() == 1);
    for (const double b : bent->coefficients) {
        CHECK(std::isfinite(b));
    }
}

TEST_CASE("wrong variances are refused, no variance at all ranks nobody") {
    const auto message = [](const TraitVariances& of, std::vector<double> weights) {
        const auto index = smithHazel(of, weights);
        return index.ok() ? "" : index.error().message;
    };
    CHECK(message({{"a"}, {0}, {1}}, {1}) == "The phenotypic variance of a is not above 0.");
    CHECK(message({{"a"}, {1}, {-1}}, {1}) == "The genetic variance of a is not above 0.");
    CHECK(message({{"a", "b"}, {1, 0.5, 0.1, 1}, {1, 0, 0, 1}}, {1, 1}).find("two values") !=
          std::string::npos);
    CHECK(message({{"a"}, {std::nan("")}, {1}}, {1}).find("no numbers") != std::string::npos);
    CHECK(message({{"a"}, {1}, {1}}, {std::numeric_limits<double>::infinity()}) ==
          "A weight is no number.");
    CHECK_FALSE(message({{}, {}, {}}, {}).empty());
    const auto none = smithHazel({{"a"}, {1}, {0}}, std::vector{1.0});
    REQUIRE(none.ok());
    CHECK(none->variance == 0);
    CHECK_FALSE(none->accuracy);
    CHECK(none->remarks.size() == 1);
    CHECK(smithHazel({{"a"}, {1}, {2}}, std::vector{1.0})->remarks.size() == 1);
    CHECK_FALSE(rankByIndex(*none, std::vector<IndexCandidate>{{"A1", {}}}).ok());
    CHECK_FALSE(rankByIndex(*none, std::vector<IndexCandidate>{{"A1", {1.0}}, {"A1", {2.0}}}).ok());
}

TEST_CASE("selection intensities of small and of large numbers") {
    // Expected maxima of normal samples: 2: 1/sqrt(pi); 3: 1.5/sqrt(pi); 10: 1.53875 (Harter 1961,
    // Biometrika 48:151-165; from memory).
    const double root = std::sqrt(3.14159265358979323846);
    CHECK(selectionIntensity(1, 2) == doctest::Approx(1 / root).epsilon(1e-11));
    CHECK(selectionIntensity(1, 3) == doctest::Approx(1.5 / root).epsilon(1e-11));
    CHECK(selectionIntensity(1, 10) == doctest::Approx(1.53875).epsilon(1e-5));
    CHECK(selectionIntensity(7, 7) == 0);
    CHECK(selectionIntensity(200000, 1000000) ==
          doctest::Approx(selectionIntensity(0.2)).epsilon(1e-5));
    CHECK(selectionIntensity(19, 20) * 19 ==
          doctest::Approx(selectionIntensity(1, 20)).epsilon(1e-9));
}
