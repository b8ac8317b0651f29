// Two descriptors in one mixed model.
#include "core/trials/descriptor_correlation.hpp"

#include "support/normal_dice.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace bullace;
using namespace bullace::trials;

using test::normal;

namespace {

struct Two {
    TrialTable table;
    std::vector<double> other;
};

// Accessions × blocks, balanced: genetic correlation as given, residual correlation 0.3.
Two trialOf(std::mt19937_64& dice, int accessions, int blocks, double genetic) {
    Two two;
    std::vector<std::string> accession;
    std::vector<std::string> block;
    for (int a = 0; a < accessions; ++a) {
        const double one = normal(dice);
        const double other = genetic * one + std::sqrt(1 - genetic * genetic) * normal(dice);
        for (int b = 0; b < blocks; ++b) {
            const double error = normal(dice);
            two.table.response.push_back(20 + 3 * one + 2 * error);
            two.other.push_back(7 + other + (0.3 * error + std::sqrt(1 - 0.09) * normal(dice)));
            accession.push_back("A" + std::to_string(100 + a));
            block.push_back("B" + std::to_string(b));
        }
    }
    two.table.responseName = "yield";
    two.table.factors = {makeFactor("accession", accession), makeFactor("block", block)};
    return two;
}

MixedSpec specOf() {
    MixedSpec spec;
    spec.fixed = {{"block"}};
    spec.random = {{{"accession"}}};
    return spec;
}

// Mean squares and products of a balanced trial: their differences are the REML estimates where
// none is on its boundary (Searle, Casella & McCulloch 1992, Variance Components, ch. 4).
struct Products {
    double between = 0;
    double within = 0;
};
Products productsOf(const Two& two, const std::vector<double>& x, const std::vector<double>& y) {
    const Factor& accession = two.table.factors[0];
    const Factor& block = two.table.factors[1];
    const auto a = static_cast<double>(accession.levels.size());
    const auto b = static_cast<double>(block.levels.size());
    const auto means = [&](const std::vector<double>& values, const Factor& of) {
        std::vector<double> mean(of.levels.size());
        const double n = static_cast<double>(values.size()) / static_cast<double>(mean.size());
        for (std::size_t row = 0; row < values.size(); ++row) {
            mean[of.of[row]] += values[row] / n;
        }
        return mean;
    };
    const auto grand = [](const std::vector<double>& values) {
        double sum = 0;
        for (const double value : values) {
            sum += value;
        }
        return sum / static_cast<double>(values.size());
    };
    const auto xa = means(x, accession);
    const auto ya = means(y, accession);
    const auto xb = means(x, block);
    const auto yb = means(y, block);
    const double xm = grand(x);
    const double ym = grand(y);
    Products products;
    for (std::size_t i = 0; i < xa.size(); ++i) {
        products.between += b * (xa[i] - xm) * (ya[i] - ym) / (a - 1);
    }
    for (std::size_t row = 0; row < x.size(); ++row) {
        const std::size_t i = accession.of[row];
        const std::size_t j = block.of[row];
        products.within +=
            (x[row] - xa[i] - xb[j] + xm) * (y[row] - ya[i] - yb[j] + ym) / ((a - 1) * (b - 1));
    }
    return products;
}

} // namespace

TEST_CASE("in a balanced trial the covariances are those of the mean products") {
    std::mt19937_64 dice(31);
    const Two two = trialOf(dice, 40, 3, 0.6);
    const auto fit = correlateDescriptors(two.table, "brix", two.other, specOf());
    REQUIRE_MESSAGE(fit.ok(), (fit.ok() ? "" : fit.error().message));
    CHECK(fit->hasConverged);
    const Products xx = productsOf(two, two.table.response, two.table.response);
    const Products xy = productsOf(two, two.table.response, two.other);
    const Products yy = productsOf(two, two.other, two.other);
    const TermCorrelation& genetic = *fit->term("accession");
    const TermCorrelation& residual = *fit->term("residual");
    CHECK(genetic.oneVariance == doctest::Approx((xx.between - xx.within) / 3).epsilon(1e-6));
    CHECK(genetic.covariance == doctest::Approx((xy.between - xy.within) / 3).epsilon(1e-6));
    CHECK(genetic.otherVariance == doctest::Approx((yy.between - yy.within) / 3).epsilon(1e-6));
    CHECK(residual.covariance == doctest::Approx(xy.within).epsilon(1e-6));
    CHECK(residual.oneVariance == doctest::Approx(xx.within).epsilon(1e-6));
    CHECK(fit->both == 120);
}

TEST_CASE("the true correlation lies within its limits about 19 times in 20") {
    std::mt19937_64 dice(7);
    int within = 0;
    int told = 0;
    for (int trial = 0; trial < 200; ++trial) {
        Two two = trialOf(dice, 60, 3, 0.5);
        for (std::size_t row = 0; row < two.other.size(); row += 7) {
            two.other[row] = std::nan(""); // some plots have one descriptor alone
        }
        const auto fit = correlateDescriptors(two.table, "brix", two.other, specOf());
        REQUIRE(fit.ok());
        const auto& genetic = fit->term("accession")->correlation;
        REQUIRE(genetic.has_value());
        if (genetic->standardError) {
            ++told;
            within += std::abs(genetic->value - 0.5) <= 1.96 * *genetic->standardError ? 1 : 0;
        }
    }
    CHECK(told >= 198);
    CHECK(within >= 180); // 95 % of 200 is 190; three standard deviations below it is 181
    CHECK(within <= 199);
}

TEST_CASE("a correlation on its boundary is told as such, without a standard error") {
    int onBoundary = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        std::mt19937_64 dice(seed);
        const Two two = trialOf(dice, 12, 2, 1.0); // small, and the same genes for both
        const auto fit = correlateDescriptors(two.table, "brix", two.other, specOf());
        REQUIRE(fit.ok());
        const auto& genetic = fit->term("accession")->correlation;
        if (!genetic || !genetic->isAtBoundary) {
            continue;
        }
        ++onBoundary;
        CHECK(std::abs(genetic->value) == doctest::Approx(1).epsilon(1e-5));
        CHECK_FALSE(genetic->standardError);
        CHECK_FALSE(fit->remarks.empty());
    }
    CHECK(onBoundary >= 3); // about half of such trials end there
}

TEST_CASE("two descriptors that were never noted at one plot cannot be compared") {
    std::mt19937_64 dice(5);
    Two two = trialOf(dice, 10, 2, 0.5);
    for (std::size_t row = 0; row < two.other.size(); ++row) {
        (row % 2 == 0 ? two.other[row] : two.table.response[row]) = std::nan("");
    }
    const auto fit = correlateDescriptors(two.table, "brix", two.other, specOf());
    REQUIRE_FALSE(fit.ok());
    CHECK(fit.error().message == "Fewer than 3 plots have both yield and brix.");
}
