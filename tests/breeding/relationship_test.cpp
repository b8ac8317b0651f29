// Inbreeding, relationships and A-inverse against worked pedigrees of textbooks, large ones from
// outside, and the matrix written out.
#include "core/breeding/relationship.hpp"

#include "breeding/known_pedigrees.hpp"

#include "support/check_file.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <map>
#include <numeric>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::breeding;
using namespace bullace::test;

namespace {

std::size_t at(std::int32_t i) {
    return static_cast<std::size_t>(i);
}

// A by the tabular method, individual by individual (Emik & Terrill 1949, J. Hered. 40:51-55).
std::vector<std::vector<double>> tabular(const Pedigree& pedigree) {
    const std::size_t n = pedigree.size();
    std::vector<std::vector<double>> a(n, std::vector<double>(n, 0));
    for (std::size_t i = 0; i < n; ++i) {
        const std::int32_t m = pedigree.mother[i];
        const std::int32_t f = pedigree.father[i];
        for (std::size_t j = 0; j < i; ++j) {
            a[i][j] = (m < 0 ? 0 : a[at(m)][j] / 2) + (f < 0 ? 0 : a[at(f)][j] / 2);
            a[j][i] = a[i][j];
        }
        a[i][i] = 1 + (m < 0 || f < 0 ? 0 : a[at(m)][at(f)] / 2);
    }
    return a;
}

std::vector<std::vector<double>> dense(const statistics::SparseSymmetric& matrix) {
    std::vector<std::vector<double>> all(matrix.size, std::vector<double>(matrix.size, 0));
    for (std::uint32_t c = 0; c < matrix.size; ++c) {
        for (std::uint64_t k = matrix.columnStart[c]; k < matrix.columnStart[c + 1]; ++k) {
            all[matrix.row[k]][c] = all[c][matrix.row[k]] = matrix.value[k];
        }
    }
    return all;
}

double element(const statistics::SparseSymmetric& matrix, std::int32_t i, std::int32_t j) {
    const auto c = at(std::min(i, j));
    for (std::uint64_t k = matrix.columnStart[c]; k < matrix.columnStart[c + 1]; ++k) {
        if (matrix.row[k] == static_cast<std::uint32_t>(std::max(i, j))) {
            return matrix.value[k];
        }
    }
    return 0;
}

struct Sums {
    double trace = 0;
    double sum = 0;
    std::size_t nonzeros = 0;
};

Sums sumsOf(const statistics::SparseSymmetric& matrix) {
    Sums sums;
    for (std::uint32_t c = 0; c < matrix.size; ++c) {
        for (std::uint64_t k = matrix.columnStart[c]; k < matrix.columnStart[c + 1]; ++k) {
            const bool isDiagonal = matrix.row[k] == c;
            sums.trace += isDiagonal ? matrix.value[k] : 0;
            sums.sum += (isDiagonal ? 1 : 2) * matrix.value[k];
            sums.nonzeros += isDiagonal ? 1 : 2;
        }
    }
    return sums;
}

bool isNear(double value, double wanted, double tolerance) {
    return std::abs(value - wanted) <= tolerance * (1 + std::abs(wanted));
}

// All numbers of a small case: F, d, A and A-inverse.
void checkSmall(const std::string& name) {
    const auto csv = checkFile("cases/" + name + "/pedigree.csv");
    const auto json = checkFile("cases/" + name + "/expected.json");
    if (!csv || !json) {
        return;
    }
    CAPTURE(name);
    const nlohmann::json expected = nlohmann::json::parse(*json)["expected"];
    const Pedigree pedigree = pedigreeOf(linesOf(*csv));
    const std::vector<double> f = inbreeding(pedigree);
    const std::vector<double> d = mendelianVariances(pedigree, f);
    const auto inverse = dense(inverseRelationship(pedigree, f).inverse);
    std::vector<std::int32_t> ids;
    for (const std::string id : expected["ids"]) {
        ids.push_back(in(pedigree, id));
        CHECK(isNear(f[at(ids.back())], expected["inbreeding"][id], 1e-12));
        CHECK(isNear(d[at(ids.back())], expected["mendelian_d"][id], 1e-12));
    }
    const std::vector<double> kinship = kinshipMatrix(pedigree, f, ids);
    for (std::size_t i = 0; i < ids.size(); ++i) {
        for (std::size_t j = 0; j < ids.size(); ++j) {
            CHECK(isNear(2 * kinship[i * ids.size() + j], expected["A"][i][j], 1e-12));
            CHECK(isNear(inverse[at(ids[i])][at(ids[j])], expected["A_inverse"][i][j], 1e-12));
        }
    }
}

} // namespace

TEST_CASE("Mrode's six animals have the inbreeding and variances that are printed") {
    // Mrode 2014, Linear Models for the Prediction of Animal Breeding Values, 3rd ed., Table 2.1:
    // F of animals 5 and 6 is 0.125, D is 1, 1, 0.5, 0.75, 0.5, 0.469.
    const Pedigree pedigree = pedigreeOf(linesOf(
        {{"3", "2", "1"}, {"4", "", "1"}, {"5", "3", "4"}, {"6", "2", "5"}, {"1", "", ""}}));
    const std::vector<double> f = inbreeding(pedigree);
    CHECK(f[at(in(pedigree, "4"))] == 0);
    CHECK(f[at(in(pedigree, "5"))] == 0.125);
    CHECK(f[at(in(pedigree, "6"))] == 0.125);
    const std::vector<double> d = mendelianVariances(pedigree, f);
    CHECK(d[at(in(pedigree, "1"))] == 1);
    CHECK(d[at(in(pedigree, "4"))] == 0.75);
    CHECK(d[at(in(pedigree, "6"))] == 0.46875);
    const auto inverse = inverseRelationship(pedigree, f);
    CHECK(element(inverse.inverse, in(pedigree, "2"), in(pedigree, "2")) ==
          doctest::Approx(2.0333333333333333).epsilon(1e-14));
    CHECK(inverse.logDeterminant ==
          doctest::Approx(std::log(0.5 * 0.75 * 0.5 * 0.46875)).epsilon(1e-14));
}

TEST_CASE("selfing and mating of full sibs raise the inbreeding as Wright found") {
    // Wright 1921, Genetics 6:111-178; Falconer & Mackay 1996, Table 5.1.
    Lines lines = linesOf({{"F1", "P1", "P2"}, {"S1", "F1", "F1"}});
    for (int t = 2; t <= 60; ++t) {
        const std::string before = "S" + std::to_string(t - 1);
        lines.push_back({"S" + std::to_string(t), before, before, 0});
    }
    const Pedigree selfed = pedigreeOf(lines);
    const std::vector<double> f = inbreeding(selfed);
    for (int t = 1; t <= 60; ++t) {
        CHECK(f[at(in(selfed, "S" + std::to_string(t)))] ==
              doctest::Approx(1 - std::pow(0.5, t)).epsilon(1e-14));
    }
    // Sixty generations of selfing still have an inverse.
    for (const double value : inverseRelationship(selfed, f).inverse.value) {
        CHECK(std::isfinite(value));
    }
    checkSmall("ped-mrode-2.1");
    checkSmall("ped-selfing-series");
    checkSmall("ped-fullsib-series");
}

TEST_CASE("a thousand vines agree with the matrix that was written out") {
    const auto csv = checkFile("cases/ped-vine-1000/pedigree.csv");
    const auto json = checkFile("cases/ped-vine-1000/expected.json");
    if (!csv || !json) {
        return;
    }
    const nlohmann::json expected = nlohmann::json::parse(*json)["expected"];
    const Pedigree pedigree = pedigreeOf(linesOf(*csv));
    const std::vector<double> f = inbreeding(pedigree);
    REQUIRE(pedigree.size() == expected["n"]);
    for (const auto& [id, value] : expected["inbreeding"].items()) {
        CHECK(isNear(f[at(in(pedigree, id))], value, 1e-10));
    }
    CHECK(isNear(std::accumulate(f.begin(), f.end(), 0.0) / 1000, expected["mean_F"], 1e-10));
    CHECK(*std::ranges::max_element(f) == expected["max_F"]);
    std::vector<Pair> pairs;
    for (const auto& row : expected["A_sample"]) {
        pairs.emplace_back(in(pedigree, row[0]), in(pedigree, row[1]));
    }
    const std::vector<double> kinship = kinships(pedigree, f, pairs);
    for (std::size_t k = 0; k < pairs.size(); ++k) {
        CHECK(isNear(2 * kinship[k], expected["A_sample"][k][2], 1e-10));
    }
    const InverseRelationship inverse = inverseRelationship(pedigree, f);
    for (const auto& row : expected["A_inverse_sample"]) {
        CHECK(isNear(
            element(inverse.inverse, in(pedigree, row[0]), in(pedigree, row[1])), row[2], 1e-9));
    }
    const Sums sums = sumsOf(inverse.inverse);
    CHECK(sums.nonzeros == expected["A_inverse_nonzeros"]);
    CHECK(isNear(sums.trace, expected["A_inverse_trace"], 1e-9));
    CHECK(isNear(sums.sum, expected["A_inverse_sum"], 1e-9));
    CHECK(std::abs(inverse.logDeterminant - expected["logdet_A"].get<double>()) < 1e-7);
}

TEST_CASE("a hundred thousand vines agree with a second program") {
    const auto csv = checkFile("cases/ped-100k/pedigree.csv");
    const auto full = checkFile("cases/ped-100k/inbreeding_full.csv");
    const auto json = checkFile("cases/ped-100k/expected.json");
    if (!csv || !full || !json) {
        return;
    }
    const nlohmann::json expected = nlohmann::json::parse(*json)["expected"];
    const Pedigree pedigree = pedigreeOf(linesOf(*csv));
    const std::vector<double> f = inbreeding(pedigree);
    const auto known = report::readCsv(*full);
    REQUIRE(known.ok());
    REQUIRE(known->rows.size() == pedigree.size());
    std::size_t off = 0;
    for (const auto& row : known->rows) {
        off += isNear(f[at(in(pedigree, row.cells[0]))],
                      nlohmann::json::parse(row.cells[1]).get<double>(),
                      1e-9)
                   ? 0U
                   : 1U;
    }
    CHECK(off == 0);
    const InverseRelationship inverse = inverseRelationship(pedigree, f);
    for (const auto& row : expected["A_inverse_sample"]) {
        CHECK(isNear(
            element(inverse.inverse, in(pedigree, row[0]), in(pedigree, row[1])), row[2], 1e-9));
    }
    const Sums sums = sumsOf(inverse.inverse);
    CHECK(sums.nonzeros == expected["A_inverse_nonzeros"]);
    CHECK(std::abs(sums.trace - expected["A_inverse_trace"].get<double>()) < 1e-4);
    CHECK(std::abs(sums.sum - expected["A_inverse_sum"].get<double>()) < 1e-4);
    CHECK(std::abs(inverse.logDeterminant - expected["logdet_A"].get<double>()) < 1e-4);
}

TEST_CASE("A times its inverse is the identity, F is never negative, and order does not matter") {
    CHECK(rc::check([](std::uint64_t seed) {
        std::mt19937_64 dice(seed);
        Lines lines = randomLines(dice, 1 + dice() % 60);
        const Pedigree pedigree = pedigreeOf(lines);
        const std::size_t n = pedigree.size();
        const std::vector<double> f = inbreeding(pedigree);
        const auto a = tabular(pedigree);
        const auto inverse = dense(inverseRelationship(pedigree, f).inverse);
        std::vector<std::int32_t> members;
        double all = 0;
        for (std::size_t i = 0; i < n; ++i) {
            RC_ASSERT(f[i] >= 0);
            RC_ASSERT(isNear(f[i], a[i][i] - 1, 1e-13));
            members.push_back(static_cast<std::int32_t>(i));
            for (std::size_t j = 0; j < n; ++j) {
                double product = 0;
                for (std::size_t k = 0; k < n; ++k) {
                    product += a[i][k] * inverse[k][j];
                }
                RC_ASSERT(std::abs(product - (i == j ? 1 : 0)) < 1e-8);
                all += a[i][j] / 2;
            }
        }
        const std::vector<double> kinship = kinshipMatrix(pedigree, f, members);
        RC_ASSERT(isNear(kinship[n * n / 2], a[n * n / 2 / n][n * n / 2 % n] / 2, 1e-12));
        RC_ASSERT(
            isNear(meanKinship(pedigree, f, members), all / static_cast<double>(n * n), 1e-11));
        std::ranges::shuffle(lines, dice);
        const Pedigree shuffled = pedigreeOf(lines);
        const std::vector<double> again = inbreeding(shuffled);
        for (std::size_t i = 0; i < n; ++i) {
            RC_ASSERT(isNear(again[at(in(shuffled, pedigree.names[i]))], f[i], 1e-14));
        }
    }));
}
