// Trials of one treatment, in blocks, factorial and with missing vines, against published data sets
// with numbers of independent computations, number by number.
#include "core/trials/trial_analysis.hpp"

#include "trials/case_table.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace bullace;
using namespace bullace::trials;
using bullace::test::CheckCase;
using bullace::test::tableOf;

namespace {

std::string at(const std::string& path, std::size_t index, const std::string& key) {
    return path + "." + std::to_string(index) + "." + key;
}

enum class Tails { Compared, TooSteep };

void checkTable(CheckCase& check,
                const std::string& path,
                const std::vector<VarianceLine>& lines,
                Tails tails = Tails::Compared) {
    std::size_t index = 0;
    for (const VarianceLine& line : lines) {
        if (line.degreesOfFreedom == 0) {
            continue; // confounded: the check does not list it
        }
        CHECK(check.agrees(at(path, index, "df"), static_cast<double>(line.degreesOfFreedom)));
        CHECK(check.agrees(at(path, index, "ss"), line.sumOfSquares));
        if (check.expected()[path][index].contains("ms")) {
            CHECK(check.agrees(at(path, index, "ms"), line.meanSquare));
        }
        if (line.term != "Residuals") {
            CHECK(check.agrees(at(path, index, "F"), line.f));
            CHECK((tails == Tails::TooSteep || check.agrees(at(path, index, "p"), line.p)));
        }
        ++index;
    }
}

bool shareLetter(const std::string& one, const std::string& other) {
    return one.find_first_of(other) != std::string::npos;
}

void checkPairs(CheckCase& check, const TreatmentMeans& treatment) {
    const Comparisons& compared = treatment.comparisons;
    CHECK(check.agrees("comparisons.alpha", compared.alpha));
    CHECK(check.agrees("comparisons.t_crit", compared.tQuantile));
    CHECK(check.agrees("comparisons.q_crit", compared.rangeQuantile));
    const auto& pairs = check.expected()["comparisons"]["pairs"];
    REQUIRE(pairs.size() == compared.pairs.size());
    for (std::size_t i = 0; i < compared.pairs.size(); ++i) {
        const Difference& pair = compared.pairs[i];
        const std::string path = "comparisons.pairs." + std::to_string(i) + ".";
        CHECK(treatment.means.levels[pair.one].level == pairs[i]["a"].get<std::string>());
        CHECK(treatment.means.levels[pair.other].level == pairs[i]["b"].get<std::string>());
        CHECK(check.agrees(path + "diff", pair.value));
        CHECK(check.agrees(path + "se", pair.standardError));
        CHECK(check.agrees(path + "t", pair.t));
        CHECK(check.agrees(path + "p_lsd", pair.p));
        CHECK(check.agrees(path + "p_tukey", pair.pTukey));
        CHECK(check.agrees(path + "lsd", pair.leastSignificant));
        CHECK(check.agrees(path + "hsd", pair.leastTukey));
        CHECK(check.agrees(path + "tukey_lo", pair.tukey.low));
        CHECK(check.agrees(path + "tukey_hi", pair.tukey.high));
        if (pairs[i].contains("p_holm")) {
            CHECK(check.agrees(path + "p_holm", pair.pHolm));
            CHECK(check.agrees(path + "p_bh", pair.pFalseDiscovery));
            CHECK(check.agrees(path + "p_bonferroni", pair.pBonferroni));
        }
        CHECK(shareLetter(compared.letters[pair.one], compared.letters[pair.other]) !=
              pairs[i]["sig_tukey"].get<bool>());
        CHECK(shareLetter(compared.lettersByT[pair.one], compared.lettersByT[pair.other]) !=
              pairs[i]["sig_lsd"].get<bool>());
    }
}

void checkTest(CheckCase& check, const std::string& path, const std::optional<GroupTest>& test) {
    REQUIRE(test);
    const auto& expected = check.expected()[path];
    CHECK(check.agrees(path + (expected.contains("F")   ? ".F"
                               : expected.contains("H") ? ".H"
                                                        : ".K2"),
                       test->statistic));
    CHECK(check.agrees(path + (test->denominator ? ".df1" : ".df"), test->degreesOfFreedom));
    if (test->denominator) {
        CHECK(check.agrees(path + ".df2", *test->denominator));
    }
    CHECK(check.agrees(path + ".p", test->p));
}

TrialAnalysis analysed(const TrialTable& table, const TrialPlan& plan) {
    auto analysis = analyseTrial(table, plan);
    REQUIRE(analysis.ok());
    return std::move(*analysis);
}

} // namespace

// Dobson 1983 (dried weight of plants, F = 4.846, p = 0.01591 published); McNeil 1977 (chicks by
// feed, unequal numbers).
TEST_CASE("one-way trials agree with independent computations in every number") {
    for (const char* name : {"oneway-plantgrowth", "oneway-chickwts-unbalanced"}) {
        auto check = CheckCase::open(name);
        if (!check) {
            return;
        }
        const TrialAnalysis result = analysed(tableOf(*check), {{"trt"}, {}, {}});
        checkTable(*check, "anova", result.model.typeOne);
        checkPairs(*check, result.treatments.front());
        const auto& sd = check->expected()["sd"];
        for (const AdjustedMean& mean : result.treatments.front().means.levels) {
            CHECK(check->agrees("means." + mean.level, mean.mean->value));
            CHECK(check->agrees("n." + mean.level, static_cast<double>(mean.n)));
            CHECK(check->agrees("se_mean_pooled." + mean.level, mean.mean->standardError));
            CHECK(sd.contains(mean.level));
        }
        checkTest(*check, "bartlett", result.checks.bartlett);
        checkTest(*check, "brown_forsythe", result.checks.brownForsythe);
        checkTest(*check, "kruskal", result.kruskalWallis);
        checkTest(*check, "welch", result.welch);
        REQUIRE(result.components);
        CHECK(check->agrees("varcomp_moment.n0", result.components->records));
        CHECK(check->agrees("varcomp_moment.within", result.components->within));
        CHECK(check->agrees("varcomp_moment.between", result.components->between));
        CHECK(check->unasked({"sd."}).empty()); // a plain standard deviation is spreadOf's
    }
}

// NIST Statistical Reference Datasets, analysis of variance: AtmWtAg, SmLs01, SmLs04, SmLs07
// (certified values).
TEST_CASE("NIST's certified analyses of variance come out, thirteen constant digits and all") {
    for (const char* name :
         {"anova-nist-atmwtag", "anova-nist-smls01", "anova-nist-smls04", "anova-nist-smls07"}) {
        auto check = CheckCase::open(name);
        if (!check) {
            return;
        }
        const TrialAnalysis result = analysed(tableOf(*check), {{"group"}, {}, {}});
        // SmLs07's doubles have F = 21.0008 by exact arithmetic; its p of 1e-22 is then apart by
        // more than the tolerance, which is F's.
        const bool isSteep = std::string_view(name) == "anova-nist-smls07";
        checkTable(
            *check, "anova", result.model.typeOne, isSteep ? Tails::TooSteep : Tails::Compared);
        CHECK(check->agrees("r_squared", result.model.rSquared));
        CHECK(check->agrees("residual_sd", std::sqrt(*result.model.residualVariance)));
        CHECK(check->unasked({isSteep ? "anova.0.p" : "nothing"}).empty());
    }
}

// Immer, Hayes & Powers 1934, J. Am. Soc. Agron. 26:403-419 (barley); Pinheiro & Bates 2000, §1.2
// (stools: F = 22.36, residual standard deviation 1.1003 published); an invented trial of vines.
TEST_CASE("trials in complete blocks agree with independent computations in every number") {
    for (const char* name : {"rcbd-immer", "rcbd-ergostool", "rcbd-vine-invented"}) {
        auto check = CheckCase::open(name);
        if (!check) {
            return;
        }
        const TrialAnalysis result = analysed(tableOf(*check), {{"trt"}, {"block"}, {}});
        const TreatmentMeans& treatment = result.treatments.front();
        checkTable(*check, "anova", result.model.typeOne);
        checkPairs(*check, treatment);
        CHECK(check->agrees("n", static_cast<double>(result.model.n)));
        CHECK(check->agrees("grand_mean", result.model.mean));
        CHECK(check->agrees("mse", result.model.residualVariance));
        CHECK(check->agrees("df_error", static_cast<double>(result.model.degreesOfFreedom)));
        CHECK(check->agrees("cv_percent", result.model.cvPercent));
        for (const AdjustedMean& mean : treatment.means.levels) {
            CHECK(check->agrees("treatment_means." + mean.level, mean.mean->value));
            CHECK(check->agrees("se_mean", mean.mean->standardError));
        }
        for (const AdjustedMean& mean : result.blocks.front().levels) {
            CHECK(check->agrees("block_means." + mean.level, mean.mean->value));
        }
        CHECK(check->agrees("sed", treatment.comparisons.meanError));
        CHECK(check->agrees("lsd05", treatment.comparisons.leastSignificant));
        CHECK(check->agrees("q05", treatment.comparisons.rangeQuantile));
        CHECK(check->agrees("hsd05", treatment.comparisons.leastTukey));
        const Comparisons strict = compareMeans(treatment.means, {0.01, {}});
        CHECK(check->agrees("lsd01", strict.leastSignificant));
        CHECK(check->agrees("relative_efficiency_vs_crd", result.efficiencies.front().relative));
        CHECK(check->agrees("residual_shapiro.W", result.checks.shapiroW));
        CHECK(check->agrees("residual_shapiro.p", result.checks.shapiroP));
        checkTest(*check, "nonadditivity", result.checks.nonAdditivity);
        CHECK(check->unasked({"nonadditivity.ss"}).empty());
    }
}

TEST_CASE("missing vines are made up for by least squares, not by guesses") {
    auto check = CheckCase::open("rcbd-missing-vine");
    if (!check) {
        return;
    }
    const TrialTable table = tableOf(*check);
    const TrialAnalysis result = analysed(table, {{"trt"}, {"block"}, {}});
    const TreatmentMeans& treatment = result.treatments.front();
    checkTable(*check, "anova_sequential_block_first", result.model.typeOne);
    const std::vector<Term> other = {{"trt"}, {"block"}};
    const auto reversed = LinearModel::fit(table, other);
    REQUIRE(reversed.ok());
    checkTable(*check, "anova_sequential_trt_first", reversed->summary().typeOne);
    for (const VarianceLine& line : result.model.typeThree) {
        if (line.term != "Residuals") {
            const std::string path = "type2." + line.term;
            CHECK(check->agrees(path + ".df", static_cast<double>(line.degreesOfFreedom)));
            CHECK(check->agrees(path + ".ss", line.sumOfSquares));
            CHECK(check->agrees(path + ".F", line.f));
            CHECK(check->agrees(path + ".p", line.p));
        }
    }
    CHECK(check->agrees("mse", result.model.residualVariance));
    CHECK(check->agrees("df_error", static_cast<double>(result.model.degreesOfFreedom)));
    for (const AdjustedMean& mean : treatment.means.levels) {
        CHECK(check->agrees("raw_means." + mean.level, mean.rawMean));
        CHECK(check->agrees("ls_means." + mean.level, mean.mean->value));
        CHECK(check->agrees("se_ls_means." + mean.level, mean.mean->standardError));
        CHECK(check->agrees("ci95_lower." + mean.level, mean.mean->interval->low));
        CHECK(check->agrees("ci95_upper." + mean.level, mean.mean->interval->high));
    }
    checkPairs(*check, treatment);
    CHECK(check->agrees("mean_sed", treatment.comparisons.meanError));
    CHECK(check->unasked().empty());
}

// Yates 1937; Venables & Ripley 2002 print N 12.2587 (p .00437), K 6.1657 (p .0288), error 15.44.
TEST_CASE("an interaction that is confounded with blocks is named and left out") {
    auto check = CheckCase::open("factorial-npk");
    if (!check) {
        return;
    }
    const TrialAnalysis result = analysed(tableOf(*check), {{"N", "P", "K"}, {"block"}, {}});
    checkTable(*check, "anova", result.model.typeOne);
    CHECK(check->unasked().empty());
    CHECK(result.model.notSeparable == std::vector<std::string>{"N:P:K"});
    const auto isSaid = [](const Remark& remark) {
        return inEnglish(remark).starts_with("N:P:K cannot be told from the terms before it");
    };
    CHECK(std::ranges::any_of(result.remarks, isSaid));
    // Main effects are orthogonal to the blocks, so their means are the plain ones.
    for (const AdjustedMean& mean : result.treatments.front().means.levels) {
        CHECK(mean.mean->value == doctest::Approx(mean.rawMean).epsilon(1e-12));
    }
    CHECK(result.treatments.back().means.term == "N:P:K");
    CHECK_FALSE(result.treatments.back().means.levels.front().mean);
}

TEST_CASE("two factors with unequal cells have their three types and adjusted means") {
    auto check = CheckCase::open("twoway-unbal-npk");
    if (!check) {
        return;
    }
    const TrialAnalysis result = analysed(tableOf(*check), {{"A", "B"}, {}, {}});
    checkTable(*check, "type1", result.model.typeOne);
    const auto checkType = [&](const std::string& type, const std::vector<VarianceLine>& lines) {
        for (const VarianceLine& line : lines) {
            if (line.term == "Residuals") {
                continue;
            }
            const std::string path = type + "." + (line.term == "A:B" ? "AB" : line.term);
            CHECK(check->agrees(path + ".df", static_cast<double>(line.degreesOfFreedom)));
            CHECK(check->agrees(path + ".ss", line.sumOfSquares));
            CHECK(check->agrees(path + ".F", line.f));
            CHECK(check->agrees(path + ".p", line.p));
        }
    };
    checkType("type2", result.model.typeTwo);
    checkType("type3", result.model.typeThree);
    CHECK(check->agrees("mse", result.model.residualVariance));
    CHECK(check->agrees("df_error", static_cast<double>(result.model.degreesOfFreedom)));
    for (const TreatmentMeans& each : result.treatments) {
        for (const AdjustedMean& mean : each.means.levels) {
            if (each.means.term != "A:B") {
                CHECK(check->agrees("lsmeans_" + each.means.term + "." + mean.level,
                                    mean.mean->value));
                CHECK(check->agrees("se_" + each.means.term + "." + mean.level,
                                    mean.mean->standardError));
            }
        }
    }
    CHECK(check->unasked().empty());
}
