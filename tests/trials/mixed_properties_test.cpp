// What holds of every mixed model, and what is said of those that cannot be fitted.
#include "core/trials/mixed_model.hpp"
#include "support/normal_dice.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::trials;

using test::normal;

namespace {

struct Shape {
    int accessions = 12;
    int years = 3;
    int blocks = 2;
    double missing = 0.15;
};

// Records in which accession, accession and year, and block within year vary.
TrialTable trialOf(std::mt19937_64& dice, const Shape& shape) {
    std::vector<std::string> accession;
    std::vector<std::string> year;
    std::vector<std::string> block;
    TrialTable table;
    table.responseName = "yield";
    std::vector<double> yearEffect(static_cast<std::size_t>(shape.years));
    std::ranges::generate(yearEffect, [&] { return 2 * normal(dice); });
    for (int a = 0; a < shape.accessions; ++a) {
        const double own = 1.5 * normal(dice);
        for (int y = 0; y < shape.years; ++y) {
            const double both = 0.7 * normal(dice);
            for (int b = 0; b < shape.blocks; ++b) {
                if (static_cast<double>(dice() % 1000) < shape.missing * 1000) {
                    continue;
                }
                accession.push_back("A" + std::to_string(100 + a));
                year.push_back("Y" + std::to_string(2019 + y));
                block.push_back("B" + std::to_string(b));
                table.response.push_back(30 + own + yearEffect[static_cast<std::size_t>(y)] + both +
                                         normal(dice));
            }
        }
    }
    table.factors = {
        makeFactor("accession", accession), makeFactor("year", year), makeFactor("block", block)};
    return table;
}

MixedSpec specOf() {
    MixedSpec spec;
    spec.fixed = {{"year"}};
    spec.random = {{{"accession"}}, {{"accession", "year"}}, {{"year", "block"}}};
    return spec;
}

std::string messageOf(const TrialTable& table, const MixedSpec& spec) {
    const auto fit = fitMixed(table, spec);
    REQUIRE_FALSE(fit.ok());
    return fit.error().message;
}

TrialTable small(const std::vector<double>& response,
                 const std::vector<std::string>& accession,
                 const std::vector<std::string>& block) {
    TrialTable table;
    table.responseName = "yield";
    table.response = response;
    table.factors = {makeFactor("accession", accession), makeFactor("block", block)};
    return table;
}

} // namespace

TEST_CASE("predictions of a random term add up to nothing") {
    CHECK(rc::check([] {
        std::mt19937_64 dice(*rc::gen::inRange<std::uint64_t>(1, 1'000'000));
        const auto fit = fitMixed(trialOf(dice, {}), specOf(), {{}, false, false, true});
        RC_ASSERT(fit.ok());
        for (const RandomPredictions& term : fit->predictions) {
            double sum = 0;
            double size = 0;
            for (const Prediction& each : term.levels) {
                sum += each.value;
                size += std::abs(each.value);
            }
            RC_ASSERT(std::abs(sum) <= 1e-8 * (1 + size));
        }
    }));
}

TEST_CASE("nothing depends on the order of the rows, or on how levels are called") {
    CHECK(rc::check([] {
        std::mt19937_64 dice(*rc::gen::inRange<std::uint64_t>(1, 1'000'000));
        const TrialTable table = trialOf(dice, {});
        std::vector<std::size_t> order(table.rows());
        std::iota(order.begin(), order.end(), std::size_t{0});
        for (std::size_t i = order.size() - 1; i > 0; --i) {
            std::swap(order[i], order[dice() % (i + 1)]);
        }
        TrialTable other = rowsOf(table, order);
        // Another year is first now, so the fixed effects are coded from another one.
        std::vector<std::string> years;
        for (const std::uint32_t level : other.factors[1].of) {
            years.push_back("Z" + std::to_string(9 - level));
        }
        other.factors[1] = makeFactor("year", years);
        const auto one = fitMixed(table, specOf(), {{}, false, false, true});
        const auto two = fitMixed(other, specOf(), {{}, false, false, true});
        RC_ASSERT(one.ok() && two.ok());
        RC_ASSERT(std::abs(one->invariantLogLikelihood - two->invariantLogLikelihood) < 1e-7);
        for (std::size_t i = 0; i < one->variances.size(); ++i) {
            RC_ASSERT(std::abs(one->variances[i].value - two->variances[i].value) <
                      1e-6 * (1 + one->variances[i].value));
        }
        for (std::size_t i = 0; i < one->predictions[0].levels.size(); ++i) {
            const Prediction& here = one->predictions[0].levels[i];
            const Prediction& there = two->predictions[0].levels[i];
            RC_ASSERT(std::abs(here.value - there.value) < 1e-5);
            RC_ASSERT(std::abs(here.total - there.total) < 1e-5);
        }
    }));
}

TEST_CASE("the likelihood is nowhere greater than at its estimate") {
    CHECK(rc::check([] {
        std::mt19937_64 dice(*rc::gen::inRange<std::uint64_t>(1, 1'000'000));
        const TrialTable table = trialOf(dice, {6, 2, 2, 0.2});
        const auto best = fitMixed(table, specOf(), {{}, false, false, false});
        if (!best.ok()) {
            return; // so few records that a term has a level for each
        }
        RC_ASSERT(best->hasConverged);
        for (int attempt = 0; attempt < 20; ++attempt) {
            MixedOptions options{{}, false, false, false};
            for (const VarianceComponent& component : best->variances) {
                const double about = std::max(component.value, 0.01);
                options.knownVariances.push_back(about * std::exp(0.5 * normal(dice)));
            }
            const auto other = fitMixed(table, specOf(), options);
            RC_ASSERT(other.ok());
            RC_ASSERT(other->logLikelihood <= best->logLikelihood + 1e-7);
        }
    }));
}

TEST_CASE("95 % limits of what an accession is truly like hold it about 19 times in 20") {
    std::mt19937_64 dice(77);
    int held = 0;
    int all = 0;
    for (int time = 0; time < 60; ++time) {
        std::vector<double> truth;
        TrialTable table;
        std::vector<std::string> accession;
        std::vector<std::string> block;
        for (int a = 0; a < 40; ++a) {
            truth.push_back(1.2 * normal(dice));
            for (int b = 0; b < 3; ++b) {
                accession.push_back("A" + std::to_string(100 + a));
                block.push_back("B" + std::to_string(b));
                table.response.push_back(12 + truth.back() + b + normal(dice));
            }
        }
        table.factors = {makeFactor("accession", accession), makeFactor("block", block)};
        MixedSpec spec;
        spec.fixed = {{"block"}};
        spec.random = {{{"accession"}}};
        const auto fit = fitMixed(table, spec);
        REQUIRE(fit.ok());
        for (std::size_t a = 0; a < truth.size(); ++a) {
            const Prediction& each = fit->predictions[0].levels[a];
            CHECK(each.total == doctest::Approx(fit->predictions[0].levels[0].total -
                                                fit->predictions[0].levels[0].value + each.value));
            held += std::abs(each.total - 13 - truth[a]) <= 1.96 * each.totalStandardError ? 1 : 0;
            ++all;
        }
    }
    const double share = static_cast<double>(held) / all;
    CHECK(share > 0.93);
    CHECK(share < 0.97);
}

TEST_CASE("degrees of freedom are those of the analysis of variance where records are balanced") {
    // Yates 1935: a split plot of 6 blocks, 3 varieties and 4 doses of nitrogen has 10 degrees of
    // freedom for varieties and 45 for nitrogen.
    std::mt19937_64 dice(8);
    TrialTable table;
    std::vector<std::string> variety;
    std::vector<std::string> nitrogen;
    std::vector<std::string> block;
    for (int b = 0; b < 6; ++b) {
        const double ofBlock = 10 * normal(dice);
        for (int v = 0; v < 3; ++v) {
            const double ofPlot = 8 * normal(dice);
            for (int n = 0; n < 4; ++n) {
                table.response.push_back(100 + ofBlock + ofPlot + 5 * v + 10 * n +
                                         9 * normal(dice));
                variety.push_back("V" + std::to_string(v));
                nitrogen.push_back("N" + std::to_string(n));
                block.push_back("B" + std::to_string(b));
            }
        }
    }
    table.factors = {makeFactor("variety", variety),
                     makeFactor("nitrogen", nitrogen),
                     makeFactor("block", block)};
    MixedSpec spec;
    spec.fixed = {{"variety"}, {"nitrogen"}, {"variety", "nitrogen"}};
    spec.random = {{{"block"}}, {{"block", "variety"}}};
    const auto fit = fitMixed(table, spec);
    REQUIRE(fit.ok());
    CHECK(fit->fixedTests[0].denominator.value() == doctest::Approx(10).epsilon(1e-3));
    CHECK(fit->fixedTests[1].denominator.value() == doctest::Approx(45).epsilon(1e-3));
    CHECK(fit->fixedTests[2].denominator.value() == doctest::Approx(45).epsilon(1e-3));
    CHECK(fit->fixedTests[2].numerator == 6);
}

TEST_CASE("what cannot be fitted is said in words of the table") {
    const std::vector<std::string> accessions{"A1", "A1", "A2", "A2", "A3", "A3"};
    const std::vector<std::string> blocks{"B1", "B2", "B1", "B2", "B1", "B2"};
    const TrialTable table = small({1, 2, 4, 3, 5, 7}, accessions, blocks);
    MixedSpec spec;
    spec.random = {{{"accession"}}};

    MixedSpec noColumn = spec;
    noColumn.fixed = {{"site"}};
    CHECK(messageOf(table, noColumn) ==
          "There is no column \"site\". The columns are: accession, block.");
    MixedSpec eachItsOwn = spec;
    eachItsOwn.random = {{{"accession", "block"}}};
    CHECK(messageOf(table, eachItsOwn) ==
          "The random term accession:block has a level of its own for each of the 6 rows: its "
          "variance cannot be told from the residual's.");
    CHECK(messageOf(small({1, 2, 3, 4, 5, 6}, std::vector<std::string>(6, "A1"), blocks), spec) ==
          "The random term accession has one level only: its variance cannot be estimated.");
    CHECK(messageOf(small({4, 4, 4, 4, 4, 4}, accessions, blocks), spec) ==
          "All 6 values are the same: there is no variance to divide.");
    CHECK(messageOf(small(std::vector<double>(6, std::nan("")), accessions, blocks), spec) ==
          "No row has yield and all the columns that the model names.");
    MixedSpec repeated;
    repeated.random = {{{"accession"}}, {{"accession"}, {}, true, {}, "again"}};
    CHECK(messageOf(table, repeated) ==
          "The random terms accession and again divide the rows in the same way: their variances "
          "cannot be told apart.");
    MixedSpec tooMany;
    tooMany.fixed = {{"accession"}, {"block"}, {"accession", "block"}};
    CHECK(messageOf(table, tooMany) ==
          "There are 6 values for 6 fixed effects: nothing is left to tell the variances from.");
}

TEST_CASE("a random term that a fixed one tells already has no variance left, and that is said") {
    std::mt19937_64 dice(3);
    const TrialTable table = trialOf(dice, {});
    MixedSpec spec;
    spec.fixed = {{"year"}};
    spec.random = {{{"accession"}}, {{"year"}}};
    const auto fit = fitMixed(table, spec);
    REQUIRE_FALSE(fit.ok());
    CHECK(fit.error().message == "The random term year is told by the fixed terms already: nothing "
                                 "is left from which to estimate its variance.");
}

TEST_CASE("confounded fixed terms are named and left out") {
    std::mt19937_64 dice(5);
    TrialTable table = trialOf(dice, {});
    Factor again = table.factors[1];
    again.name = "season";
    table.factors.push_back(again);
    MixedSpec spec = specOf();
    spec.fixed.push_back({"season"});
    const auto fit = fitMixed(table, spec);
    REQUIRE(fit.ok());
    CHECK(fit->aliased == std::vector<std::string>{"season Y2020", "season Y2021"});
    CHECK(std::ranges::any_of(fit->remarks, [](const Remark& remark) {
        return inEnglish(remark).find("season Y2020 cannot be told apart") == 0;
    }));
}

TEST_CASE("a mean that has no record behind it is not made up") {
    // Site S2 has none of variety V3: its cell, and with it the means of V3 and S2 over all, cannot
    // be told; those of V1, V2 and S1 can.
    std::mt19937_64 dice(21);
    std::vector<std::string> variety;
    std::vector<std::string> site;
    std::vector<std::string> block;
    TrialTable table;
    for (int v = 1; v <= 3; ++v) {
        for (int s = 1; s <= 2; ++s) {
            for (int b = 0; b < 4 && !(v == 3 && s == 2); ++b) {
                variety.push_back("V" + std::to_string(v));
                site.push_back("S" + std::to_string(s));
                block.push_back("B" + std::to_string(b));
                table.response.push_back(10 * v + s + 0.1 * b + normal(dice));
            }
        }
    }
    table.factors = {
        makeFactor("variety", variety), makeFactor("site", site), makeFactor("block", block)};
    MixedSpec spec;
    spec.fixed = {{"variety"}, {"site"}, {"variety", "site"}};
    spec.random = {{{"site", "block"}}};
    const auto fit = fitMixed(table, spec);
    REQUIRE_MESSAGE(fit.ok(), (fit.ok() ? "" : fit.error().message));
    CHECK(fit->aliased == std::vector<std::string>{"variety V3:site S2"});
    REQUIRE(fit->fixedMeans[0].means.size() == 2);
    CHECK(fit->fixedMeans[0].means[1].level == "V2");
    CHECK(std::abs(fit->fixedMeans[0].means[1].value - 21.65) < 2);
    REQUIRE(fit->fixedMeans[1].means.size() == 1);
    CHECK(fit->fixedMeans[1].means[0].level == "S1");
    CHECK(std::ranges::count_if(fit->remarks, [](const Remark& remark) {
              return inEnglish(remark).find("cannot be estimated are left out (levels: 1)") !=
                     std::string::npos;
          }) == 2);
    // Without the interaction all means can be told.
    spec.fixed.pop_back();
    const auto additive = fitMixed(table, spec);
    REQUIRE(additive.ok());
    CHECK(additive->fixedMeans[0].means.size() == 3);
    CHECK(additive->fixedMeans[1].means.size() == 2);
}
