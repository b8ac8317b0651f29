// The spread of samples and how many of them a wanted precision needs.
#include "core/fruit/sample_size.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <vector>

namespace bullace::fruit {

TEST_CASE("the forest service's example of 2000 asks for 86 plots, and 95 without an end") {
    // USDA Forest Service Handbook 2409.12 (2000): strata of 30, 10, 20 and 40 with CVs of 40, 65,
    // 80 and 35 %, allowable error 10 %, t = 2, 1000 plots.
    const std::array<std::pair<double, double>, 4> strata{{{30, 40}, {10, 65}, {20, 80}, {40, 35}}};
    double area = 0;
    double weighted = 0;
    for (const auto& [size, cv] : strata) {
        area += size;
        weighted += size * cv;
    }
    const double cv = weighted / area;
    CHECK(cv == doctest::Approx(48.5));
    CHECK(samplesForT(2, cv, 10, 1000) == 86U);
    CHECK(samplesForT(2, cv, 10) == 95U); // (2 * 48.5 / 10)² = 94.09, rounded up
}

TEST_CASE("the yields of Strickland 1932 have the published mean, deviation and variation") {
    const std::filesystem::path data = std::filesystem::path(__FILE__).parent_path() /
                                       "../../../shared/checks/vine-yield-strickland-1932.tsv";
    if (!std::filesystem::exists(data)) {
        MESSAGE(
            "left out: ../shared/checks/vine-yield-strickland-1932.tsv is not beside the project");
        return;
    }
    std::ifstream in(data);
    std::string header;
    std::getline(in, header);
    std::vector<double> yields;
    int row = 0;
    int column = 0;
    for (std::string yield; in >> row >> column >> yield;) {
        if (yield != "NA") {
            yields.push_back(std::stod(yield));
        }
    }
    const Spread spread = spreadOf(yields);
    CHECK(spread.count == 125);
    CHECK(spread.mean == doctest::Approx(5.944).epsilon(1e-9));
    CHECK(spread.sd.value() == doctest::Approx(2.585019).epsilon(1e-6));
    CHECK(std::abs(spread.cvPercent.value() - 43.4896) < 0.00005);
    CHECK(*spread.sd * *spread.sd / spread.mean == doctest::Approx(1.124213).epsilon(1e-6));
}

TEST_CASE("the spread of few samples is told only where there is one") {
    CHECK(spreadOf({}).count == 0);
    CHECK_FALSE(spreadOf({}).sd.has_value());
    const std::vector<double> one{24.5};
    CHECK(spreadOf(one).mean == 24.5);
    CHECK_FALSE(spreadOf(one).sd.has_value());
    const std::vector<double> zeros{0, 0, 0};
    CHECK(spreadOf(zeros).sd == 0.0);
    CHECK_FALSE(spreadOf(zeros).cvPercent.has_value());
}

TEST_CASE("a large mean does not swallow the spread") {
    const std::vector<double> far{1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16};
    CHECK(spreadOf(far).sd.value() == doctest::Approx(std::sqrt(30.0)));
}

TEST_CASE("the t of few samples is Student's, and nears 1.96") {
    CHECK(studentT95(1) == doctest::Approx(12.706).epsilon(1e-4));
    CHECK(studentT95(4) == doctest::Approx(2.776).epsilon(1e-3));
    CHECK(studentT95(29) == doctest::Approx(2.045).epsilon(1e-3));
    CHECK(studentT95(100'000) == doctest::Approx(1.96).epsilon(1e-4));
}

TEST_CASE("the number of samples is the least that is enough with the t of that very number") {
    std::mt19937_64 dice(41);
    std::uniform_real_distribution<double> cvs(1, 90);
    std::uniform_real_distribution<double> errors(2, 40);
    const auto enough = [](unsigned n, double cv, double error) {
        const double ratio = studentT95(n - 1) * cv / error;
        return n >= ratio * ratio;
    };
    for (int i = 0; i < 300; ++i) {
        const double cv = cvs(dice);
        const double error = errors(dice);
        const auto n = samplesNeeded(cv, error);
        REQUIRE(n.has_value());
        REQUIRE(*n >= 2);
        REQUIRE(enough(*n, cv, error));
        REQUIRE((*n == 2 || !enough(*n - 1, cv, error)));
    }
}

TEST_CASE("how many more berries are needed") {
    const std::vector<double> berries{24.5, 26.0, 23.5, 25.0, 27.5}; // mean 25.3, CV 6.0 %
    CHECK(spreadOf(berries).cvPercent.value() == doctest::Approx(6.0).epsilon(0.01));
    const auto needed = samplesNeeded(*spreadOf(berries).cvPercent, 5);
    REQUIRE(needed == 9U); // t of 8 degrees of freedom is 2.306: (2.306 * 6.0 / 5)² = 7.7
    CHECK(moreNeeded(berries, 5) == 4U);
    CHECK(moreNeeded(berries, 30) == 0U);
    const std::vector<double> alike{24.5, 24.5};
    CHECK(moreNeeded(alike, 5) == 0U);
}

TEST_CASE("where no number can be told, none is") {
    const std::vector<double> one{24.5};
    const std::vector<double> below{-1, -2};
    const std::vector<double> berries{24.5, 26.0};
    CHECK_FALSE(moreNeeded({}, 5).has_value());
    CHECK_FALSE(moreNeeded(one, 5).has_value());
    CHECK_FALSE(moreNeeded(below, 5).has_value());
    CHECK_FALSE(moreNeeded(berries, 0).has_value());
    CHECK_FALSE(samplesNeeded(90, 1e-9).has_value());
    CHECK_FALSE(samplesForT(2, 40, 10, 0).has_value());
}

} // namespace bullace::fruit
