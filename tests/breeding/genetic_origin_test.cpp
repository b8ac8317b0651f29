// Founders, species and generations behind an accession.
#include "core/breeding/genetic_origin.hpp"

#include "breeding/known_pedigrees.hpp"

#include "core/breeding/relationship.hpp"
#include "support/check_file.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <map>
#include <numeric>
#include <set>

using namespace bullace;
using namespace bullace::breeding;
using namespace bullace::test;

namespace {

// By name, "?" the unknown.
std::map<std::string, double> byName(const Pedigree& pedigree, const FounderShares& shares) {
    std::map<std::string, double> named;
    for (const FounderShare& of : shares.founders) {
        named[pedigree.names[static_cast<std::size_t>(of.founder)]] = of.share;
    }
    if (shares.unknownShare > 0) {
        named["?"] = shares.unknownShare;
    }
    return named;
}

void checkShares(const Pedigree& pedigree,
                 const FounderShares& shares,
                 const nlohmann::json& expected) {
    const auto named = byName(pedigree, shares);
    CHECK(named.size() == expected.size());
    for (const auto& [id, value] : expected.items()) {
        REQUIRE(named.contains(id));
        CHECK(named.at(id) == doctest::Approx(value.get<double>()).epsilon(1e-10));
    }
}

std::optional<nlohmann::json> expectedOf(const std::string& name) {
    const auto json = checkFile("cases/" + name + "/expected.json");
    return json ? std::optional(nlohmann::json::parse(*json)["expected"]) : std::nullopt;
}

void checkSmall(const std::string& name) {
    const auto csv = checkFile("cases/" + name + "/pedigree.csv");
    const auto expected = expectedOf(name);
    if (!csv || !expected) {
        return;
    }
    CAPTURE(name);
    const Pedigree pedigree = pedigreeOf(linesOf(*csv));
    const auto known = generations(pedigree);
    for (const auto& [id, shares] : (*expected)["founder_contribution"].items()) {
        const std::int32_t i = in(pedigree, id);
        checkShares(pedigree, founderShares(pedigree, {&i, 1}), shares);
        const Generations& of = known[static_cast<std::size_t>(i)];
        CHECK(of.equivalent == (*expected)["equivalent_generations"][id].get<double>());
        CHECK(of.most == (*expected)["max_generation"][id].get<int>());
        CHECK(of.complete <= of.equivalent);
    }
}

} // namespace

TEST_CASE("founders and generations of the small outside pedigrees") {
    checkSmall("ped-mrode-2.1");
    checkSmall("ped-selfing-series");
    checkSmall("ped-fullsib-series");
}

TEST_CASE("founders of a thousand vines and their effective number") {
    const auto csv = checkFile("cases/ped-vine-1000/pedigree.csv");
    const auto expected = expectedOf("ped-vine-1000");
    if (!csv || !expected) {
        return;
    }
    const Pedigree pedigree = pedigreeOf(linesOf(*csv));
    std::vector<std::int32_t> group;
    for (const std::string id : (*expected)["reference_group"]) {
        group.push_back(in(pedigree, id));
    }
    const FounderShares shares = founderShares(pedigree, group);
    checkShares(pedigree, shares, (*expected)["founder_contribution_reference_group"]);
    CHECK(shares.effectiveFounders ==
          doctest::Approx((*expected)["effective_founders"].get<double>()).epsilon(1e-10));
    for (const auto& [id, of] : (*expected)["founder_contribution_sample"].items()) {
        const std::int32_t i = in(pedigree, id);
        checkShares(pedigree, founderShares(pedigree, {&i, 1}), of);
    }
    double equivalent = 0;
    std::int32_t most = 0;
    for (const Generations& of : generations(pedigree)) {
        equivalent += of.equivalent / 1000;
        most = std::max(most, of.most);
    }
    CHECK(equivalent ==
          doctest::Approx((*expected)["equivalent_generations_mean"].get<double>()).epsilon(1e-10));
    CHECK(most == (*expected)["max_generation"].get<int>());
    std::vector<std::int32_t> all(pedigree.size());
    std::iota(all.begin(), all.end(), 0);
    // The outside mean leaves each vine's kinship with itself out.
    const std::vector<double> f = inbreeding(pedigree);
    const double own = (1000 + std::accumulate(f.begin(), f.end(), 0.0)) / 2;
    CHECK((meanKinship(pedigree, f, all) * 1e6 - own) / (1000 * 999) ==
          doctest::Approx((*expected)["mean_coancestry_all_pairs"].get<double>()).epsilon(1e-10));
}

TEST_CASE("founders of a hundred thousand vines and their effective number") {
    const auto csv = checkFile("cases/ped-100k/pedigree.csv");
    const auto expected = expectedOf("ped-100k");
    if (!csv || !expected) {
        return;
    }
    const Pedigree pedigree = pedigreeOf(linesOf(*csv));
    std::set<std::int32_t> parents(pedigree.mother.begin(), pedigree.mother.end());
    parents.insert(pedigree.father.begin(), pedigree.father.end());
    std::vector<std::int32_t> group;
    for (std::int32_t i = 0; i < static_cast<std::int32_t>(pedigree.size()); ++i) {
        if (!parents.contains(i)) {
            group.push_back(i);
        }
    }
    CHECK(group.size() == (*expected)["non_parents"].get<std::size_t>());
    const FounderShares shares = founderShares(pedigree, group);
    CHECK(shares.effectiveFounders ==
          doctest::Approx((*expected)["effective_founders_of_non_parents"].get<double>())
              .epsilon(1e-9));
    CHECK(shares.unknownShare ==
          doctest::Approx((*expected)["unknown_share"].get<double>()).epsilon(1e-9));
    const auto named = byName(pedigree, shares);
    for (const auto& [id, value] : (*expected)["top_founders"].items()) {
        CHECK(named.at(id) == doctest::Approx(value.get<double>()).epsilon(1e-9));
    }
}

TEST_CASE("a backcross carries three quarters of the species that it was crossed back to") {
    const Pedigree pedigree = pedigreeOf(linesOf({{"R1", "", ""},
                                                  {"M1", "", ""},
                                                  {"H1", "R1", "M1"},
                                                  {"B1", "H1", "R1"},
                                                  {"O1", "H1", ""},
                                                  {"U1", "H1", "X1"}}));
    const auto shares = speciesShares(
        pedigree,
        std::vector<FounderTaxa>{{"R1", {{"rotundifolia", 1}}},
                                 {"M1", {{"munsoniana", 0.75}, {"rotundifolia", 0.25}}},
                                 {"B1", {{"munsoniana", 1}}}});
    REQUIRE(shares.ok());
    REQUIRE(shares->taxa == std::vector<std::string>{"munsoniana", "rotundifolia"});
    const auto of = [&](const std::string& id, std::size_t taxon) {
        return shares->of(static_cast<std::size_t>(in(pedigree, id)), taxon);
    };
    CHECK(of("H1", 0) == 0.375);
    CHECK(of("B1", 0) == 0.1875);
    CHECK(of("B1", 1) == 0.8125);
    CHECK(of("O1", 0) == 0.1875);
    CHECK(shares->unknown[static_cast<std::size_t>(in(pedigree, "O1"))] == 0.5);
    CHECK(shares->unknown[static_cast<std::size_t>(in(pedigree, "U1"))] == 0.5);
    REQUIRE(shares->remarks.size() == 2);
    CHECK(inEnglish(shares->remarks[0]).find("The taxon given for B1") == 0);
    CHECK(inEnglish(shares->remarks[1]).find("Founders without a taxon: 1.") == 0);
}

TEST_CASE("wrong taxa of founders are refused by name") {
    const Pedigree pedigree = pedigreeOf(linesOf({{"R1", "", ""}}));
    const auto message = [&pedigree](std::vector<FounderTaxa> taxa) {
        const auto shares = speciesShares(pedigree, taxa);
        return shares.ok() ? "" : shares.error().message;
    };
    CHECK(message({{"R9", {}}}) == "R9 has a taxon, but is not in the pedigree.");
    CHECK(message({{"R1", {}}, {"R1", {}}}) == "The taxon of R1 is given twice.");
    CHECK(message({{"R1", {{"a", 0.7}, {"b", 0.7}}}}).find("more than 1") != std::string::npos);
    CHECK(message({{"R1", {{"a", std::nan("")}}}}).find("not between") != std::string::npos);
}
