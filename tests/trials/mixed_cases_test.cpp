// Mixed models against outside fits: Pinheiro & Bates 2000, Bates et al. 2015, Davies 1947, Box &
// Tiao 1973, Yates 1935, Cochran & Cox 1957, Immer et al. 1934, and invented vine trials, as each
// case's expected.json cites them.
#include "trials/case_table.hpp"

#include "core/trials/heritability.hpp"
#include "core/trials/mixed_model.hpp"
#include "support/check_case.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::trials;
using test::CheckCase;
using test::tableOf;

namespace {

// "gen:year" of the cases as a list of factors.
Term termOf(const std::string& name) {
    Term term;
    std::size_t from = 0;
    for (std::size_t to = 0; to != std::string::npos; from = to + 1) {
        to = name.find(':', from);
        term.push_back(name.substr(from, to - from));
    }
    return term;
}

// "year Y2020" as the cases call it.
std::string caseName(std::string name) {
    std::erase(name, ' ');
    return name == "intercept" ? "(Intercept)" : name;
}

MixedSpec specOf(const std::vector<std::string>& fixed, const std::vector<std::string>& random) {
    MixedSpec spec;
    for (const std::string& term : fixed) {
        spec.fixed.push_back(termOf(term));
    }
    for (const std::string& term : random) {
        RandomTerm& added = spec.random.emplace_back();
        added.factors = termOf(term);
    }
    return spec;
}

void compareFixed(const CheckCase& check, const MixedFit& fit) {
    for (const FixedEffect& effect : fit.fixed) {
        const std::string path = "fixed." + caseName(effect.name);
        CHECK(check.agrees(path + ".est", effect.value));
        CHECK(check.agrees(path + ".se", effect.standardError));
        if (check.expected().at("fixed").at(caseName(effect.name)).contains("t")) {
            CHECK(check.agrees(path + ".t", effect.value / effect.standardError));
        }
    }
    CHECK(check.agrees("n", static_cast<double>(fit.n)));
    if (check.expected().contains("p")) {
        CHECK(check.agrees("p", static_cast<double>(fit.fixedRank)));
    }
    CHECK(fit.fixed.size() == check.expected().at("fixed").size());
    CHECK(check.agrees("reml_loglik", fit.logLikelihood));
    if (check.expected().contains("reml_loglik_invariant")) {
        CHECK(check.agrees("reml_loglik_invariant", fit.invariantLogLikelihood));
    }
    CHECK(check.agrees("reml_deviance", -2 * fit.logLikelihood));
}

void compareVariances(const CheckCase& check, const MixedFit& fit) {
    for (const VarianceComponent& component : fit.variances) {
        CHECK(check.agrees("varcomp." + component.name, component.value));
        if (check.expected().contains("varcomp_se_observed_info")) {
            CHECK(check.agrees("varcomp_se_observed_info." + component.name,
                               component.standardError));
            CHECK(check.agrees("varcomp_se_average_info." + component.name,
                               component.averageStandardError));
        }
    }
}

void comparePredictions(const CheckCase& check, const MixedFit& fit) {
    for (const RandomTest& test : fit.randomTests) {
        CHECK(check.agrees("lrt_random." + test.name + ".lrt", test.likelihoodRatio));
        CHECK(check.agrees("lrt_random." + test.name + ".p_mixture", test.p));
        CHECK(check.agrees("lrt_random." + test.name + ".p_chisq1",
                           test.likelihoodRatio > 0 ? 2 * test.p : 1));
    }
    if (!check.expected().contains("blup")) {
        return;
    }
    for (const RandomPredictions& term : fit.predictions) {
        CHECK(term.levels.size() == check.expected().at("blup").at(term.name).size());
        for (const Prediction& each : term.levels) {
            const std::string path = "blup." + term.name + "." + each.level;
            CHECK(check.agrees(path + ".u", each.value));
            CHECK(check.agrees(path + ".se_pev", std::sqrt(each.predictionErrorVariance)));
        }
    }
}

void compareMeans(const CheckCase& check, const MixedFit& fit) {
    for (const FixedMeans& means : fit.fixedMeans) {
        if (!check.expected().value("blue_means", nlohmann::json::object()).contains(means.term)) {
            continue;
        }
        for (const FixedMean& mean : means.means) {
            const std::string path = "blue_means." + means.term + "." + mean.level;
            CHECK(check.agrees(path + ".mean", mean.value));
            CHECK(check.agrees(path + ".se", mean.standardError));
        }
        if (check.expected().contains("mean_var_diff_blue")) {
            CHECK(check.agrees("mean_var_diff_blue", means.meanVarianceOfDifference));
        }
    }
    for (const FixedTest& test : fit.fixedTests) {
        if (check.expected().value("wald", nlohmann::json::object()).contains(test.term)) {
            const auto count = static_cast<double>(test.numerator);
            CHECK(check.agrees("wald." + test.term + ".F", test.f));
            CHECK(check.agrees("wald." + test.term + ".df", count));
            CHECK(check.agrees("wald." + test.term + ".chisq", count * test.f));
        }
    }
}

void compareHeritability(const CheckCase& check, const MixedSpec& spec, const MixedFit& fit) {
    if (!check.expected().contains("heritability")) {
        return;
    }
    const nlohmann::json& wanted = check.expected().at("heritability");
    const auto got = heritability(tableOf(check), spec, fit, wanted.at("entry").get<std::string>());
    REQUIRE_MESSAGE(got.ok(), (got.ok() ? "" : got.error().message));
    CHECK(check.agrees("heritability.H2_cullis", got->cullis));
    CHECK(check.agrees("heritability.H2_piepho", got->piepho));
    CHECK(check.agrees("heritability.mean_var_diff_blup", got->meanVarianceOfPredictions));
    CHECK(check.agrees("heritability.mean_var_diff_blue", got->meanVarianceOfMeans));
    CHECK(check.agrees("heritability.mean_reliability", got->meanReliability));
    if (wanted.contains("H2_entry_mean")) {
        CHECK(check.agrees("heritability.H2_entry_mean", got->entryMean));
        CHECK(check.agrees("heritability.H2_single_plot", got->singlePlot));
        for (const Heritability::Divisor& divisor : got->divisors) {
            CHECK(check.agrees("heritability.H2_entry_mean_divisors." + divisor.of, divisor.value));
        }
    }
}

// Numbers of the case that nobody asked for, but for those that are not told here: errors as if the
// fixed effects were known, the mean of all errors of a difference, variances with the entries
// fixed, and moments, which another test compares.
std::vector<std::string> unaskedOf(const CheckCase& check) {
    std::vector<std::string> unasked = check.unasked({"anova_estimators"});
    std::erase_if(unasked, [](const std::string& path) {
        return path.find("se_cond") != std::string::npos || path == "mean_sed" ||
               path.starts_with("heritability.varcomp_entry_fixed");
    });
    return unasked;
}

void compare(const std::string& name,
             const std::vector<std::string>& fixed,
             const std::vector<std::string>& random) {
    const auto check = CheckCase::open(name);
    if (!check) {
        return;
    }
    MixedOptions options;
    options.hasTestsOfRandomTerms = true;
    const auto fit = fitMixed(tableOf(*check), specOf(fixed, random), options);
    REQUIRE_MESSAGE(fit.ok(), (fit.ok() ? "" : fit.error().message));
    CHECK(fit->hasConverged);
    compareFixed(*check, *fit);
    compareVariances(*check, *fit);
    comparePredictions(*check, *fit);
    compareMeans(*check, *fit);
    compareHeritability(*check, specOf(fixed, random), *fit);
    CHECK(unaskedOf(*check) == std::vector<std::string>{});
    MESSAGE(name << ": " << check->asked() << " numbers, " << fit->evaluations << " evaluations");
}

void compareSlopes(const std::string& name, bool areCorrelated) {
    const auto check = CheckCase::open(name);
    if (!check) {
        return;
    }
    MixedSpec spec;
    spec.fixed = {{"x"}};
    spec.random.push_back({{"subject"}, {"x"}, areCorrelated, {}, {}});
    const auto fit = fitMixed(tableOf(*check), spec);
    REQUIRE(fit.ok());
    compareFixed(*check, *fit);
    CHECK(check->agrees("varcomp.intercept", fit->variance("subject", "intercept")->value));
    CHECK(check->agrees("varcomp.slope", fit->variance("subject", "x")->value));
    CHECK(check->agrees("varcomp.residual", fit->variance("residual")->value));
    if (areCorrelated) {
        const double covariance = fit->variance("subject", "intercept:x")->value;
        CHECK(check->agrees("varcomp.covariance", covariance));
        CHECK(check->agrees("varcomp.correlation",
                            covariance / std::sqrt(fit->variance("subject", "intercept")->value *
                                                   fit->variance("subject", "x")->value)));
    }
    for (const RandomPredictions& part : fit->predictions) {
        const std::string of = part.of == "x" ? "slope" : "intercept";
        for (const Prediction& each : part.levels) {
            CHECK(check->agrees("blup." + each.level + "." + of, each.value));
            CHECK(check->agrees("blup." + each.level + ".se_pev_" + of,
                                std::sqrt(each.predictionErrorVariance)));
        }
    }
    CHECK(unaskedOf(*check) == std::vector<std::string>{});
    MESSAGE(name << ": " << check->asked() << " numbers, " << fit->evaluations << " evaluations");
}

} // namespace

TEST_CASE("one random term, balanced: as Davies 1947 and Pinheiro & Bates 2000 have it") {
    compare("reml-dyestuff", {}, {"Batch"});
    compare("reml-rail", {}, {"Rail"});
}

TEST_CASE("a variance whose estimate is 0 is exactly 0: Box & Tiao 1973") {
    compare("reml-dyestuff2-boundary", {}, {"Batch"});
}

TEST_CASE("crossed and nested terms: Davies & Goldsmith 1972") {
    compare("reml-penicillin-crossed", {}, {"plate", "sample"});
    compare("reml-pastes-nested", {}, {"batch", "sample"});
    compare("varcomp-vines-nested", {}, {"accession", "vine"});
}

TEST_CASE("a split plot is a mixed model: Yates 1935") {
    compare("reml-oats-splitplot", {"N", "V", "N:V"}, {"B", "B:V"});
}

TEST_CASE("an interaction with what is random, balanced or not: Milliken & Johnson 1992") {
    compare("reml-machines", {"Machine"}, {"Worker", "Worker:Machine"});
    compare("reml-machines-unbalanced", {"Machine"}, {"Worker", "Worker:Machine"});
}

TEST_CASE("two fixed terms and their interaction over a nested one: Cook 1938") {
    compare("reml-cake", {"recipe", "temperature", "recipe:temperature"}, {"recipe:replicate"});
}

TEST_CASE("trials over years and sites: Immer et al. 1934, and invented vines") {
    compare("reml-barley-met-heritability",
            {"site", "year", "site:year"},
            {"variety", "variety:site", "variety:year"});
    compare("reml-vine-met-unbalanced", {"year"}, {"gen", "gen:year", "year:block"});
    compare("reml-vine-met-all-random", {}, {"gen", "year", "gen:year", "year:block"});
    compare("reml-vine-met-blue", {"gen"}, {"year", "gen:year", "year:block"});
    compare("reml-rcbd-heritability", {}, {"trt", "block"});
}

TEST_CASE("intercepts and slopes, with and without a correlation: Belenky et al. 2003") {
    compareSlopes("reml-sleepstudy-correlated", true);
    compareSlopes("reml-sleepstudy-uncorrelated", false);
}
