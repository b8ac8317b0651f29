// The yields of 155 vine places by row and column: a block without treatments, whose rows and
// columns show what blocks are worth.
//
// Source: Strickland 1932, "A vine uniformity trial", J. Agr. Victoria 30:584-593. Read from
// ../shared/checks beside the project, where it is there; nothing of it is kept here.
#include "core/trials/linear_model.hpp"
#include "core/trials/trial_analysis.hpp"
#include "support/check_file.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <set>
#include <sstream>

using namespace bullace;
using namespace bullace::trials;

namespace {

struct Yields {
    TrialTable table;
    std::size_t missing = 0;
    std::set<std::string> grownRows; // rows with one vine at least
};

std::optional<Yields> yields() {
    const auto text = test::checkFile("vine-yield-strickland-1932.tsv");
    if (!text) {
        return {};
    }
    std::istringstream in(*text);
    std::string line;
    std::getline(in, line);
    Yields found;
    std::vector<std::string> rows;
    std::vector<std::string> columns;
    Covariate along{"along", {}};
    std::string yield;
    std::string row;
    std::string column;
    while (in >> row >> column >> yield) {
        const bool isMissing = yield == "NA";
        found.missing += isMissing ? 1U : 0U;
        if (!isMissing) {
            found.grownRows.insert(row);
        }
        rows.push_back(row);
        columns.push_back(column);
        along.values.push_back(std::stod(row));
        found.table.response.push_back(isMissing ? std::nan("") : std::stod(yield));
    }
    found.table.responseName = "yield";
    found.table.factors = {makeFactor("row", rows), makeFactor("column", columns)};
    found.table.covariates = {along};
    return found;
}

// Means of the rows and of the columns taken out in turn until nothing changes: what least squares
// leaves, found without any matrix.
double leftByTurns(const TrialTable& table) {
    std::vector<double> left = table.response;
    for (int turn = 0; turn < 2000; ++turn) {
        for (const Factor& factor : table.factors) {
            std::vector<double> sum(factor.levels.size(), 0.0);
            std::vector<double> count(factor.levels.size(), 0.0);
            for (std::size_t i = 0; i < left.size(); ++i) {
                if (!std::isnan(left[i])) {
                    sum[factor.of[i]] += left[i];
                    count[factor.of[i]] += 1;
                }
            }
            for (std::size_t i = 0; i < left.size(); ++i) {
                left[i] -= std::isnan(left[i]) ? 0 : sum[factor.of[i]] / count[factor.of[i]];
            }
        }
    }
    double squares = 0;
    for (const double each : left) {
        squares += std::isnan(each) ? 0 : each * each;
    }
    return squares;
}

} // namespace

TEST_CASE("rows and columns of Strickland's block are taken out with its missing vines") {
    const auto found = yields();
    if (!found) {
        return;
    }
    const auto model = LinearModel::fit(found->table, std::vector<Term>{{"row"}, {"column"}});
    REQUIRE(model.ok());
    const ModelSummary& summary = model->summary();
    CHECK(summary.n + summary.leftOut == 155);
    CHECK(summary.leftOut == found->missing);
    CHECK(found->table.factors[0].levels.size() * found->table.factors[1].levels.size() == 155);
    const std::size_t rows = found->grownRows.size();
    const std::size_t columns = found->table.factors[1].levels.size();
    CHECK(summary.rank == rows + columns - 1);
    CHECK(summary.residualSquares == doctest::Approx(leftByTurns(found->table)).epsilon(1e-9));
    // What rows and columns explain in order, and the rest, is all there is.
    double sum = 0;
    for (const VarianceLine& line : summary.typeOne) {
        sum += line.sumOfSquares;
    }
    CHECK(sum == doctest::Approx(summary.totalSquares).epsilon(1e-10));
    const auto means = model->means({"row"});
    REQUIRE(means.ok());
    CHECK(means->levels.size() == rows);
    CHECK(means->levels.front().mean);
}

TEST_CASE(
    "rows or columns as blocks of Strickland's vines have an efficiency, and a trend its test") {
    const auto found = yields();
    if (!found) {
        return;
    }
    TrialTable table = found->table;
    // Five imaginary accessions in turn, as in a uniformity trial: they differ by chance only.
    std::vector<std::string> accessions;
    for (std::size_t i = 0; i < table.rows(); ++i) {
        accessions.push_back("A" + std::to_string((i * 7 + i / 31) % 5));
    }
    table.factors.push_back(makeFactor("accession", accessions));
    const auto result = analyseTrial(table, {{"accession"}, {"row", "column"}, {}});
    REQUIRE(result.ok());
    REQUIRE(result->efficiencies.size() == 2);
    for (const BlockEfficiency& each : result->efficiencies) {
        MESSAGE("efficiency of the " << each.block << "s: " << each.relative);
        CHECK(each.relative > 0.5);
        CHECK(each.relative < 3);
    }
    CHECK(result->model.typeTwo[2].p.value() > 0.001);
    const auto trend = LinearModel::fit(table, std::vector<Term>{{"along"}});
    REQUIRE(trend.ok());
    CHECK(trend->summary().typeOne.front().degreesOfFreedom == 1);
    // The trend is one of the ways in which rows differ, so it explains less than they do.
    const auto rows = LinearModel::fit(table, std::vector<Term>{{"row"}});
    CHECK(trend->summary().typeOne.front().sumOfSquares <=
          rows->summary().typeOne.front().sumOfSquares);
}
