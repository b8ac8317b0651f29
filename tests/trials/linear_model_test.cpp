// What a linear model, its comparisons and its letters do with records of every sort, good and bad.
#include "core/trials/linear_model.hpp"

#include "trials/case_table.hpp"

#include "core/trials/comparisons.hpp"
#include "core/trials/letter_groups.hpp"
#include "core/trials/trial_analysis.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::trials;
using bullace::test::trialTable;

namespace {

bool says(const Remarks& remarks, const std::string& words) {
    return std::ranges::any_of(remarks, [&words](const Remark& remark) {
        return inEnglish(remark).find(words) != std::string::npos;
    });
}

double between(std::mt19937_64& random, double low, double high) {
    return low + (high - low) * static_cast<double>(random() >> 11) / 9007199254740992.0;
}

TrialTable blockTrial(std::size_t treatments, std::size_t blocks, std::mt19937_64& random) {
    std::vector<std::string> treatment;
    std::vector<std::string> block;
    TrialTable table;
    table.responseName = "yield";
    for (std::size_t i = 0; i < treatments; ++i) {
        for (std::size_t j = 0; j < blocks; ++j) {
            treatment.push_back("A" + std::to_string(i));
            block.push_back("B" + std::to_string(j));
            table.response.push_back(static_cast<double>(i % 17) + between(random, 0, 3));
        }
    }
    table.factors = {makeFactor("accession", treatment), makeFactor("block", block)};
    return table;
}

} // namespace

TEST_CASE("two thousand accessions in four blocks have their means, but not every pair of them") {
    std::mt19937_64 random(3);
    const TrialTable table = blockTrial(2000, 4, random);
    const auto result = analyseTrial(table, {{"accession"}, {"block"}, {}});
    REQUIRE(result.ok());
    CHECK(result->model.degreesOfFreedom == 8000 - 2003);
    CHECK(result->treatments.front().means.levels.size() == 2000);
    CHECK(says(result->remarks, "More than 600 means are not compared in pairs"));
}

TEST_CASE("a covariate takes its share, and means are at its mean") {
    // y = 2 x + 3 for a, + 5 for b, exactly but for ±0.1: the slope and the means are known.
    const TrialTable table = trialTable("t,x,y\na,1,5.1\na,2,6.9\na,3,9.1\na,4,10.9\n"
                                        "b,3,10.9\nb,4,13.1\nb,5,14.9\nb,6,17.1\n",
                                        "y",
                                        {"x"});
    const auto model = LinearModel::fit(table, std::vector<Term>{{"x"}, {"t"}});
    REQUIRE(model.ok());
    CHECK(model->summary().typeOne[0].degreesOfFreedom == 1);
    CHECK(model->summary().typeOne[1].degreesOfFreedom == 1);
    const auto means = model->means({"t"});
    // The mean of x is 3.5; the ±0.1 cancel but for 0.02 of slope within a group.
    CHECK(means->levels[0].mean->value == doctest::Approx(10).epsilon(0.01));
    CHECK(means->levels[1].mean->value == doctest::Approx(12).epsilon(0.01));
    CHECK_FALSE(model->means({"x"}));
    CHECK_FALSE(model->means({}));
}

TEST_CASE("the order of the rows does not matter, nor the names of the levels") {
    CHECK(rc::check([](unsigned seed) {
        std::mt19937_64 random(seed);
        TrialTable table = blockTrial(5, 3, random);
        table.response[seed % 15] = std::numeric_limits<double>::quiet_NaN();
        const auto result = analyseTrial(table, {{"accession"}, {"block"}, {}});
        std::vector<std::size_t> order(table.rows());
        for (std::size_t i = 0; i < order.size(); ++i) {
            order[i] = (i * 7 + seed) % order.size();
        }
        TrialTable other = rowsOf(table, order);
        for (std::string& level : other.factors[0].levels) {
            level = std::string(1, static_cast<char>('Z' - (level[1] - '0'))) + level;
        }
        // Levels stand in the order of their bytes.
        std::vector<std::string> cells;
        for (const std::uint32_t level : other.factors[0].of) {
            cells.push_back(other.factors[0].levels[level]);
        }
        other.factors[0] = makeFactor("accession", cells);
        const auto again = analyseTrial(other, {{"accession"}, {"block"}, {}});
        RC_ASSERT(result.ok() && again.ok());
        for (std::size_t i = 0; i < result->model.typeTwo.size(); ++i) {
            RC_ASSERT(std::abs(result->model.typeTwo[i].sumOfSquares -
                               again->model.typeTwo[i].sumOfSquares) < 1e-9);
        }
        const auto& means = result->treatments[0].means.levels;
        const auto& reversed = again->treatments[0].means.levels;
        for (std::size_t i = 0; i < means.size(); ++i) {
            RC_ASSERT(std::abs(means[i].mean->value - reversed[4 - i].mean->value) < 1e-9);
        }
    }));
}

TEST_CASE("residuals sum to nothing in every block and treatment, and leverages to the rank") {
    std::mt19937_64 random(5);
    TrialTable table = blockTrial(6, 4, random);
    table.response[3] = std::numeric_limits<double>::quiet_NaN();
    const auto model = LinearModel::fit(table, std::vector<Term>{{"block"}, {"accession"}});
    REQUIRE(model.ok());
    std::vector<double> ofBlock(4, 0.0);
    double leverage = 0;
    for (const FittedRow& row : model->rows()) {
        ofBlock[table.factors[1].of[row.row]] += row.residual;
        leverage += row.leverage;
        CHECK(row.fitted + row.residual == doctest::Approx(table.response[row.row]));
    }
    for (const double sum : ofBlock) {
        CHECK(std::abs(sum) < 1e-10);
    }
    CHECK(leverage == doctest::Approx(static_cast<double>(model->summary().rank)));
    CHECK(model->summary().leftOut == 1);
}

TEST_CASE("two means share a letter exactly where they do not differ") {
    CHECK(rc::check([](unsigned seed) {
        std::mt19937_64 random(seed);
        const std::size_t count = 2 + seed % 9; // so few need no more letters than the alphabet has
        std::vector<double> means;
        std::vector<char> differ(count * count, 0);
        for (std::size_t i = 0; i < count; ++i) {
            means.push_back(between(random, 0, 10));
            for (std::size_t j = 0; j < i; ++j) {
                differ[i * count + j] = differ[j * count + i] = random() % 3 == 0 ? 1 : 0;
            }
        }
        const auto differs = [&](std::size_t i, std::size_t j) {
            return differ[i * count + j] != 0;
        };
        const auto letters = letterGroups(means, differs);
        RC_ASSERT(letters.size() == count);
        for (std::size_t i = 0; i < count; ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                const bool share = letters[i].find_first_of(letters[j]) != std::string::npos;
                RC_ASSERT(share != differs(i, j));
            }
        }
    }));
}

TEST_CASE("stretches of sorted means are the letters of equal errors") {
    CHECK(rc::check([](unsigned seed) {
        std::mt19937_64 random(seed);
        std::vector<double> means;
        for (std::size_t i = 0; i < 1 + seed % 20; ++i) {
            means.push_back(std::floor(between(random, 0, 12)));
        }
        const auto differs = [&](std::size_t i, std::size_t j) {
            return std::abs(means[i] - means[j]) > 2.5;
        };
        RC_ASSERT(letterStretches(means, 2.5) == letterGroups(means, differs));
    }));
    CHECK(letterStretches({}, 1).empty());
}

TEST_CASE("each level is compared with the reference by Dunnett's limits") {
    std::mt19937_64 random(11);
    const auto result =
        analyseTrial(blockTrial(5, 4, random), {{"accession"}, {"block"}, {}, "A2"});
    REQUIRE(result.ok());
    const Comparisons& compared = result->treatments.front().comparisons;
    REQUIRE(compared.toReference.size() == 4);
    CHECK(*compared.dunnettQuantile > *compared.tQuantile);
    CHECK(*compared.dunnettQuantile < *compared.rangeQuantile / std::numbers::sqrt2);
    for (const ReferenceDifference& each : compared.toReference) {
        CHECK(each.value.interval->holds(0) == (each.p > 0.05));
    }
    const auto none = analyseTrial(blockTrial(5, 4, random), {{"accession"}, {"block"}, {}, "A9"});
    CHECK(says(none->remarks, "The reference A9 has no mean"));
}

TEST_CASE("one block, one treatment, nothing recorded: each is answered in plain words") {
    const TrialTable one = trialTable("t,b,y\na,1,4\nc,1,5\na,1,4.4\nc,1,6\n", "y");
    const auto oneBlock = analyseTrial(one, {{"t"}, {"b"}, {}});
    REQUIRE(oneBlock.ok());
    CHECK(says(oneBlock->remarks, "All complete records stand in one b"));
    CHECK(oneBlock->efficiencies.empty());
    CHECK(analyseTrial(one, {{"b"}, {"t"}, {}}).error().message ==
          "There is only one b among the complete records: there is nothing to compare it with.");
    const TrialTable empty = trialTable("t,b,y\na,1,\nc,1,NA\n", "y");
    CHECK(analyseTrial(empty, {{"t"}, {"b"}, {}}).error().message ==
          "No record has a value of y and of every column of the model.");
    CHECK(analyseTrial(one, {{}, {"b"}, {}}).error().message.starts_with("No treatment is named"));
    CHECK(analyseTrial(one, {{"t"}, {"q"}, {}})
              .error()
              .message.starts_with("There is no column \"q\""));
    CHECK(analyseTrial(one, {{"t"}, {"t"}, {}}).error().message.find("named twice") !=
          std::string::npos);
    const TrialTable huge = trialTable("t,y\na,1e300\nb,2\n", "y");
    CHECK(analyseTrial(huge, {{"t"}, {}, {}}).error().message.find("too large to be true") !=
          std::string::npos);
}

TEST_CASE("treatments that are the blocks are named as confounded") {
    const TrialTable table = trialTable("t,b,y\na,1,4\na,1,5\nc,2,6\nc,2,6.5\n", "y");
    const auto result = analyseTrial(table, {{"t"}, {"b"}, {}});
    REQUIRE(result.ok());
    CHECK(result->model.notSeparable == std::vector<std::string>{"t"});
    CHECK_FALSE(result->treatments.front().means.levels.front().mean);
    CHECK(says(result->remarks, "Some adjusted means of t cannot be estimated"));
}

TEST_CASE("values that do not vary, or one record of each, give no tests and no nonsense") {
    const TrialTable same = trialTable("t,b,y\na,1,4\na,2,4\nc,1,4\nc,2,4\n", "y");
    const auto flat = analyseTrial(same, {{"t"}, {"b"}, {}});
    REQUIRE(flat.ok());
    CHECK(says(flat->remarks, "All records have the same value"));
    CHECK_FALSE(flat->model.typeOne.front().f);
    CHECK(flat->treatments.front().comparisons.pairs.empty());
    const TrialTable exact = trialTable("t,b,y\na,1,4\na,2,5\nc,1,6\nc,2,7\n", "y");
    const auto fitted = analyseTrial(exact, {{"t"}, {"b"}, {}});
    CHECK(says(fitted->remarks, "without any error"));
    CHECK_FALSE(fitted->model.typeOne.front().p);
    const TrialTable single = trialTable("t,b,y\na,1,4\nc,2,5\n", "y");
    const auto saturated = analyseTrial(single, {{"t"}, {}, {}});
    CHECK(says(saturated->remarks, "as many terms to estimate as records"));
    CHECK_FALSE(saturated->treatments.front().means.levels.front().mean->standardError);
}

TEST_CASE("a combination that nobody grew has no mean, and its factors say why") {
    const TrialTable table =
        trialTable("v,y,kg\na,1,4\na,1,5\na,2,6\na,2,6.5\nc,1,4\nc,1,4.4\n", "kg");
    const auto result = analyseTrial(table, {{"v", "y"}, {}, {}});
    REQUIRE(result.ok());
    CHECK(result->model.typeThree.empty());
    CHECK(says(result->remarks, "Some combinations of v:y have no record"));
    const auto& ofV = result->treatments[0].means.levels;
    CHECK(ofV[0].mean);
    CHECK_FALSE(ofV[1].mean);
    CHECK(result->treatments[2].means.levels.size() == 3);
    CHECK(result->treatments[2].means.levels[2].mean->value == doctest::Approx(4.2));
}

TEST_CASE("a record that lies far off is named and kept") {
    std::mt19937_64 random(2);
    TrialTable table = blockTrial(6, 4, random);
    table.response[9] += 40;
    const auto result = analyseTrial(table, {{"accession"}, {"block"}, {}});
    REQUIRE(result.ok());
    REQUIRE_FALSE(result->checks.outliers.empty());
    CHECK(result->checks.outliers.front().row == 9);
    CHECK(result->model.n == 24);
}
