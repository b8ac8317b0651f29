// Counts that vary more than Poisson counts, against published fits.
#include "core/fruit/counts.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <rapidcheck.h>
#include <string_view>
#include <vector>

using namespace bullace;
using namespace bullace::fruit;

namespace {

std::vector<CountFrequency> frequencies(std::vector<std::uint64_t> ofEach) {
    std::vector<CountFrequency> counts;
    for (std::size_t x = 0; x < ofEach.size(); ++x) {
        counts.push_back({x, ofEach[x]});
    }
    return counts;
}

doctest::Approx near(double value, double relative = 1e-8) {
    return doctest::Approx(value).epsilon(relative);
}

// Absences from school: culture, sex, age class, learner class and days of 146 children.
// Source  Aitkin 1978, J. R. Stat. Soc. A 141:195-223, table of S. Quine's data, as in Venables &
// Ripley 2002, Modern Applied Statistics with S, section 7.4 (data set quine).
struct Absences {
    std::string_view culture =
        "AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAANNNN"
        "NNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNNN";
    std::string_view sex =
        "MMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFMMMM"
        "MMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFF";
    std::string_view age =
        "0000000011111222222222223333333000001111111111111112222222223333333330000"
        "0000011111111122222222223333333000001111111111111111122222222223333333333";
    std::string_view learner =
        "SSSAAAAASSSAASSSSAAAAAAAAAAAAAASAAAASSSSSSSSSSAAAAASSSSSSSSAAAAAAAAAASSSA"
        "AAAAASSSSSSSAASSSAAAAAAAAAAAAAASAAAASSSSSSSSSSSAAAAAASSSSSSSSSAAAAAAAAAAA";
    std::vector<double> days{
        2,  11, 14, 5,  5,  13, 20, 22, 6,  6,  15, 7,  14, 6,  32, 53, 57, 14, 16, 16, 17,
        40, 43, 46, 8,  23, 23, 28, 34, 36, 38, 3,  5,  11, 24, 45, 5,  6,  6,  9,  13, 23,
        25, 32, 53, 54, 5,  5,  11, 17, 19, 8,  13, 14, 20, 47, 48, 60, 81, 2,  0,  2,  3,
        5,  10, 14, 21, 36, 40, 6,  17, 67, 0,  0,  2,  7,  11, 12, 0,  0,  5,  5,  5,  11,
        17, 3,  4,  22, 30, 36, 8,  0,  1,  5,  7,  16, 27, 0,  30, 10, 14, 27, 41, 69, 25,
        10, 11, 20, 33, 5,  7,  0,  1,  5,  5,  5,  5,  7,  11, 15, 5,  14, 6,  6,  7,  28,
        0,  5,  14, 2,  2,  3,  8,  10, 12, 1,  1,  9,  22, 3,  3,  5,  15, 18, 22, 37};

    // 1 for the children of whom all of these hold, a dot standing for anything.
    [[nodiscard]] std::vector<double> column(std::string_view wanted) const {
        std::vector<double> column;
        for (std::size_t i = 0; i < days.size(); ++i) {
            const char of[] = {culture[i], sex[i], age[i], learner[i]};
            bool holds = true;
            for (std::size_t j = 0; j < 4; ++j) {
                holds = holds && (wanted[j] == '.' || wanted[j] == of[j]);
            }
            column.push_back(holds ? 1 : 0);
        }
        return column;
    }
    [[nodiscard]] Result<CountRegression> fit(const std::vector<std::string_view>& terms) const {
        std::vector<std::vector<double>> columns;
        for (const std::string_view term : terms) {
            columns.push_back(column(term));
        }
        return fitCountRegression(days, columns);
    }
};

} // namespace

TEST_CASE("red mites on apple leaves have the k that Bliss and Fisher found") {
    // Bliss & Fisher 1953, Biometrics 9:176-200, Table 1: k = 1.02459 printed; the further digits
    // recomputed.
    const auto fit = fitCounts(frequencies({70, 38, 17, 10, 9, 3, 2, 1, 0}));
    REQUIRE(fit);
    CHECK(fit->n == 150);
    CHECK(fit->mean == near(1.14666666666667));
    CHECK(*fit->variance == near(2.27364653243848));
    REQUIRE(fit->k);
    CHECK(fit->k->value == near(1.02459238679213));
    CHECK(*fit->k->standardError == near(0.275907292384424));
    CHECK(*fit->meanError == near(0.12727796510905));
    CHECK(fit->logLikelihood == near(-222.437153598435));
    CHECK(*fit->kByMoments == near(1.16669736911757));
    CHECK(*fit->kByZeroClass == near(0.992306091263465));
    CHECK(fit->poissonLogLikelihood == near(-242.809940821005));
    CHECK(*fit->likelihoodRatio == near(40.7455744451403));
    CHECK(*fit->likelihoodRatioP == near(8.66978426941951e-11, 1e-6));
    CHECK(*fit->dispersionIndex == near(295.441860465116));
    CHECK(*fit->dispersionP == near(1.02056641925824e-11, 1e-6));
    const std::vector<double> expected{69.4879781816802,
                                       37.5998702027413,
                                       20.1010847657249,
                                       10.702633172433,
                                       5.68693279406655,
                                       3.01810589158911,
                                       1.60042909085503,
                                       0.848174225900625,
                                       0.449307441036278};
    REQUIRE(fit->expected.size() == expected.size());
    for (std::size_t x = 0; x < expected.size(); ++x) {
        CHECK(fit->expected[x] == near(expected[x]));
    }
    // k lies within its limits, which are not even: a small k is better known than a great one.
    CHECK(fit->k->interval->low < fit->k->value);
    CHECK(fit->k->interval->high - fit->k->value > fit->k->value - fit->k->interval->low);
    // Karandinos 1976, from memory: n = (1/m + 1/k)/D².
    CHECK(countsNeeded(fit->mean, fit->k->value, 0.10) == 185);
}

TEST_CASE("counts in heaps have a k below 1") {
    // Invented counts of insects on 90 leaves; the values computed independently in R.
    const auto fit = fitCounts(
        frequencies({40, 15, 12, 5, 4, 1, 1, 2, 3, 3, 2, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1}));
    REQUIRE(fit);
    REQUIRE(fit->k);
    CHECK(*fit->variance == near(12.2741573033708));
    CHECK(fit->k->value == near(0.46092948718847));
    CHECK(*fit->k->standardError == near(0.101316549627298));
    CHECK(*fit->meanError == near(0.3756553018282));
    CHECK(fit->logLikelihood == near(-172.84908305283));
    CHECK(*fit->kByMoments == near(0.480437207227303));
    CHECK(*fit->kByZeroClass == near(0.463997459265372));
    CHECK(fit->poissonLogLikelihood == near(-263.601850198031));
    CHECK(*fit->likelihoodRatio == near(181.505534290401));
    CHECK(*fit->likelihoodRatioP == near(1.13678543843199e-41, 1e-6));
    CHECK(*fit->dispersionIndex == near(496.545454545455));
    CHECK(*fit->dispersionP == near(6.87874595614774e-58, 1e-6));
    CHECK(fit->expected.front() == near(40.1135702023683));
    CHECK(fit->expected.back() == near(0.0740494865696786));
}

TEST_CASE("counts that vary less than Poisson counts are said not to be over-dispersed") {
    std::vector<CountFrequency> counts;
    for (const std::uint64_t x : {0U, 1U, 1U, 2U, 2U, 2U, 3U, 3U, 1U, 2U, 1U, 2U, 2U, 1U, 3U, 2U}) {
        counts.push_back({x, 1});
    }
    const auto fit = fitCounts(counts);
    REQUIRE(fit);
    CHECK(fit->mean == near(1.75));
    CHECK(*fit->variance == near(0.733333333333333, 1e-10));
    CHECK_FALSE(fit->k);
    CHECK_FALSE(fit->kByMoments);
    CHECK(fit->poissonLogLikelihood == near(-22.5580666094119, 1e-10));
    CHECK(fit->logLikelihood == fit->poissonLogLikelihood);
    CHECK(*fit->dispersionIndex == near(6.28571428571429, 1e-10));
    REQUIRE(fit->remarks.size() == 1);
    CHECK(inEnglish(fit->remarks[0]).find("not over-dispersed") != std::string::npos);
}

TEST_CASE("one count, zeros alone and equal counts are answered without a number that is none") {
    const auto one = fitCounts(std::vector<CountFrequency>{{7, 1}});
    REQUIRE(one);
    CHECK(one->mean == 7);
    CHECK_FALSE(one->variance);
    CHECK_FALSE(one->k);
    const auto zeros = fitCounts(frequencies({12}));
    REQUIRE(zeros);
    CHECK(zeros->mean == 0);
    CHECK_FALSE(zeros->k);
    CHECK(zeros->remarks.size() == 1);
    const auto equal = fitCounts(frequencies({0, 0, 0, 20}));
    REQUIRE(equal);
    CHECK(*equal->variance == 0);
    CHECK_FALSE(equal->k);
    CHECK_FALSE(fitCounts({}));
    CHECK_FALSE(fitCounts(frequencies({0, 0})));
    CHECK_FALSE(fitCounts(std::vector<CountFrequency>{{200'000, 1}}));
}

TEST_CASE("whatever the counts, every number is finite and k lies within its limits") {
    CHECK(rc::check([] {
        const auto ofEach =
            *rc::gen::container<std::vector<std::uint64_t>>(rc::gen::inRange<std::uint64_t>(0, 40));
        const auto fit = fitCounts(frequencies(ofEach));
        if (!fit) {
            return;
        }
        for (const double x : {fit->mean,
                               fit->meanError.value_or(0),
                               fit->logLikelihood,
                               fit->kByZeroClass.value_or(1),
                               fit->likelihoodRatio.value_or(0)}) {
            RC_ASSERT(std::isfinite(x));
        }
        if (fit->k) {
            RC_ASSERT(fit->k->value > 0);
            RC_ASSERT(fit->k->interval->low <= fit->k->value * (1 + 1e-9));
            RC_ASSERT(fit->k->interval->high >= fit->k->value * (1 - 1e-9));
            RC_ASSERT(fit->logLikelihood >= fit->poissonLogLikelihood - 1e-9);
        }
    }));
}

TEST_CASE("absences of children: main effects") {
    // Venables & Ripley 2002, section 7.4: theta 1.275 (SE 0.161), 2 log L = -1093.151 printed,
    // from memory; the further digits recomputed in R.
    const Absences quine;
    const auto fit = quine.fit({"....", "N...", ".M..", "..1.", "..2.", "..3.", "...S"});
    REQUIRE(fit);
    const std::vector<double> estimates{2.8945799902492,
                                        -0.569371697357951,
                                        0.0823202841457458,
                                        -0.448428149877481,
                                        0.0880801521141308,
                                        0.356900971429476,
                                        0.292109157033756};
    const std::vector<double> errors{0.228424614781202,
                                     0.153333359282265,
                                     0.159915014647779,
                                     0.239746592554559,
                                     0.236193028652867,
                                     0.248324362798707,
                                     0.186474710099784};
    for (std::size_t i = 0; i < estimates.size(); ++i) {
        CHECK(fit->coefficients[i] == near(estimates[i], 1e-7));
        CHECK(fit->standardErrors[i] == near(errors[i], 1e-7));
    }
    CHECK(fit->k.value == near(1.27489264506229, 1e-7));
    CHECK(*fit->k.standardError == near(0.161035661714981, 1e-7));
    CHECK(fit->logLikelihood == near(-546.575509144992));
    CHECK(fit->deviance == near(167.951800821502, 1e-7));
    const auto withoutAge = quine.fit({"....", "N...", ".M..", "...S"});
    REQUIRE(withoutAge);
    CHECK(2 * (fit->logLikelihood - withoutAge->logLikelihood) == near(11.5237885424422, 1e-6));
}

TEST_CASE("absences of children: effects within each sex") {
    // Venables & Ripley 2002, section 7.4, and its software's help: theta 1.5980 (SE 0.213), 2 log
    // L = -1063.025 printed, from memory; the further digits recomputed in R.
    const Absences quine;
    const auto fit = quine.fit({"....",
                                ".M..",
                                ".F1.",
                                ".M1.",
                                ".F2.",
                                ".M2.",
                                ".F3.",
                                ".M3.",
                                "NF..",
                                "NM..",
                                ".F.S",
                                ".M.S",
                                "NF.S",
                                "NM.S"});
    REQUIRE(fit);
    const std::vector<double> estimates{3.01918818932968,
                                        -0.475405051428276,
                                        -0.70887366781081,
                                        -0.723734895201771,
                                        -0.614864129679632,
                                        0.628420134729872,
                                        -0.34234691653544,
                                        1.15084289814441,
                                        -0.0731245034377763,
                                        -0.678986871256509,
                                        0.943576011926758,
                                        0.238909682459257,
                                        -1.35849054820541,
                                        0.761415543301324};
    const std::vector<double> errors{0.297062214999196,
                                     0.395504138291002,
                                     0.323207491864064,
                                     0.330477443372271,
                                     0.371410559036206,
                                     0.273658995833121,
                                     0.327174000271919,
                                     0.313852958965979,
                                     0.265394903117742,
                                     0.256313233180505,
                                     0.322460275800303,
                                     0.335530456290028,
                                     0.377193301200751,
                                     0.441336524047273};
    for (std::size_t i = 0; i < estimates.size(); ++i) {
        CHECK(fit->coefficients[i] == near(estimates[i], 1e-7));
        CHECK(fit->standardErrors[i] == near(errors[i], 1e-7));
    }
    CHECK(fit->k.value == near(1.59799073562276, 1e-7));
    CHECK(*fit->k.standardError == near(0.212868886533054, 1e-7));
    CHECK(fit->logLikelihood == near(-531.512511207776));
    CHECK(fit->deviance == near(167.55582151228, 1e-7));
}

TEST_CASE("a regression that the counts do not determine says so") {
    const std::vector<double> counts{0, 0, 0, 3, 9, 1};
    const std::vector<double> all(6, 1.0);
    const std::vector<double> later{0, 0, 0, 1, 1, 1};
    CHECK_FALSE(fitCountRegression(counts, {all, later})); // a group of zeros alone
    CHECK_FALSE(fitCountRegression(std::vector<double>{1, 5, 0, 3, 9, 1}, {later, later}));
    CHECK_FALSE(fitCountRegression(counts, {all, {1, 0}}));
    CHECK_FALSE(fitCountRegression(std::vector<double>{1.5, 2, 3, 4, 5, 6}, {all}));
    CHECK_FALSE(fitCountRegression(std::vector<double>{1, 2}, {all, later}));
}
