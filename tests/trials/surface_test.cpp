// Trends over a block as smooth surfaces.
#include "core/trials/surface.hpp"

#include "support/check_file.hpp"
#include "support/normal_dice.hpp"

#include <doctest/doctest.h>

#include <charconv>
#include <cmath>
#include <random>
#include <sstream>

using namespace bullace;
using namespace bullace::trials;

using test::normal;

namespace {

struct Block {
    TrialTable table;
    std::vector<double> row;
    std::vector<double> place;
    std::vector<double> trend; // the true one
};

// 10 rows of 24 vines, 60 accessions four times each, in any order.
Block blockOf(std::mt19937_64& dice, double height) {
    Block block;
    std::vector<int> order(240);
    for (int i = 0; i < 240; ++i) {
        order[static_cast<std::size_t>(i)] = i % 60;
    }
    for (std::size_t i = order.size() - 1; i > 0; --i) {
        std::swap(order[i], order[dice() % (i + 1)]);
    }
    std::vector<double> accession(60);
    for (double& value : accession) {
        value = normal(dice);
    }
    std::vector<std::string> names;
    double mean = 0;
    for (int i = 0; i < 240; ++i) {
        const double x = i / 24;
        const double y = i % 24;
        block.row.push_back(x + 1);
        block.place.push_back(y + 1);
        block.trend.push_back(height * (std::sin(x / 3) + std::cos(y / 5) * x / 10 + y / 24));
        mean += block.trend.back() / 240;
        const auto which = static_cast<std::size_t>(order[static_cast<std::size_t>(i)]);
        block.table.response.push_back(20 + accession[which] + block.trend.back() + normal(dice));
        names.push_back("A" + std::to_string(100 + which));
    }
    for (double& value : block.trend) {
        value -= mean;
    }
    block.table.responseName = "yield";
    block.table.factors = {makeFactor("accession", names)};
    return block;
}

double meanSquare(const std::vector<double>& one, const std::vector<double>& other) {
    double sum = 0;
    for (std::size_t i = 0; i < one.size(); ++i) {
        sum += std::pow(one[i] - other[i], 2);
    }
    return sum / static_cast<double>(one.size());
}

MixedFit fitOf(Block& block, bool hasSurface, std::vector<double>* trend = nullptr) {
    MixedSpec spec;
    spec.random = {{{"accession"}}};
    const auto surface = surfaceOf(block.row, block.place);
    REQUIRE(surface.ok());
    if (hasSurface) {
        addSurface(*surface, block.table, spec);
    }
    const auto fit = fitMixed(block.table, spec, {{}, false, false, true});
    REQUIRE_MESSAGE(fit.ok(), (fit.ok() ? "" : fit.error().message));
    if (trend != nullptr) {
        *trend = trendOf(*surface, *fit);
    }
    return *fit;
}

} // namespace

TEST_CASE("a trend over the block is found, and accessions are predicted better with it") {
    std::mt19937_64 dice(12);
    double with = 0;
    double without = 0;
    for (int time = 0; time < 5; ++time) {
        Block block = blockOf(dice, 2);
        const MixedFit plain = fitOf(block, false);
        std::vector<double> trend;
        const MixedFit smooth = fitOf(block, true, &trend);
        CHECK(smooth.hasConverged);
        CHECK(meanSquare(trend, block.trend) < 0.35);
        CHECK(smooth.variance("residual")->value == doctest::Approx(1).epsilon(0.35));
        with += *smooth.predictionsOf("accession")->meanVarianceOfDifference;
        without += *plain.predictionsOf("accession")->meanVarianceOfDifference;
    }
    CHECK(with < 0.8 * without);
}

TEST_CASE("where there is no trend the surface stays almost flat") {
    std::mt19937_64 dice(4);
    Block block = blockOf(dice, 0);
    std::vector<double> trend;
    const MixedFit fit = fitOf(block, true, &trend);
    CHECK(fit.hasConverged);
    CHECK(meanSquare(trend, block.trend) < 0.15);
}

TEST_CASE("the surface does not depend on where rows and places begin to be counted") {
    std::mt19937_64 dice(9);
    Block block = blockOf(dice, 1);
    Block moved = block;
    for (std::size_t i = 0; i < moved.row.size(); ++i) {
        moved.row[i] = 100 - 3 * moved.row[i];
        moved.place[i] = moved.place[i] * 0.5 + 7;
    }
    CHECK(fitOf(block, true).logLikelihood ==
          doctest::Approx(fitOf(moved, true).logLikelihood).epsilon(1e-8));
}

TEST_CASE("one row alone has no trend across, and records without a place are left out") {
    std::vector<double> row(20, 1.0);
    std::vector<double> place;
    for (int i = 0; i < 20; ++i) {
        place.push_back(i);
    }
    place[3] = std::nan("");
    const auto surface = surfaceOf(row, place);
    REQUIRE(surface.ok());
    CHECK(surface->straight.size() == 1);
    CHECK(surface->bends.size() == 1);
    CHECK(std::isnan(surface->straight[0].values[3]));
    CHECK_FALSE(surfaceOf(row, std::vector<double>(3, 1.0)).ok());
}

TEST_CASE("vine yields by row and column: most of what differs is trend (Strickland 1932)") {
    const auto text = test::checkFile("vine-yield-strickland-1932.tsv");
    if (!text) {
        return;
    }
    Block block;
    std::istringstream lines(*text);
    std::string line;
    std::vector<std::string> vines;
    while (std::getline(lines, line)) {
        std::istringstream cells(line);
        double row = 0;
        double column = 0;
        double yield = 0;
        if (cells >> row >> column >> yield) {
            block.row.push_back(row);
            block.place.push_back(column);
            block.table.response.push_back(yield);
        }
    }
    REQUIRE(block.table.response.size() > 100);
    MixedSpec spec;
    const auto surface = surfaceOf(block.row, block.place);
    REQUIRE(surface.ok());
    const auto flat = fitMixed(block.table, spec);
    addSurface(*surface, block.table, spec);
    const auto fit = fitMixed(block.table, spec, {{}, false, false, true});
    REQUIRE(flat.ok());
    REQUIRE_MESSAGE(fit.ok(), (fit.ok() ? "" : fit.error().message));
    CHECK(fit->hasConverged);
    CHECK(fit->variance("residual")->value < flat->variance("residual")->value);
    MESSAGE("residual variance " << flat->variance("residual")->value << " without a surface, "
                                 << fit->variance("residual")->value << " with one");
}
