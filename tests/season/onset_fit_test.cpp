// Laws fitted to onsets that are known as intervals: against known estimates, and what is said
// where nothing can be estimated.
#include "core/season/onset_fit.hpp"

#include "known_onsets.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace bullace;
using namespace bullace::season;

namespace {

bool isNear(double value, double expected) {
    return std::abs(value - expected) <= 1e-7 + 1e-6 * std::abs(expected);
}

struct Known {
    std::vector<double> coefficients;
    std::vector<double> errors;
    double scale;
    double logScaleError; // 0: the scale is fixed
    double logLikelihood;
};

// Treatment coding: an intercept, then a column for each further group, then one for a later year.
OnsetFit fitOf(OnsetLaw law,
               const std::vector<KnownOnset>& known,
               const std::vector<std::string_view>& groups,
               bool withYear) {
    std::vector<double> covariates;
    for (const KnownOnset& one : known) {
        covariates.push_back(1);
        for (const std::string_view group : groups) {
            covariates.push_back(one.group == group ? 1 : 0);
        }
        if (withYear) {
            covariates.push_back(one.year == 2022 ? 1 : 0);
        }
    }
    const std::vector<OnsetInterval> onsets = onsetsOf(known);
    const auto fitting =
        fitOnset(law, {onsets, covariates, 1 + groups.size() + (withYear ? 1U : 0U)});
    REQUIRE(fitting.ok());
    REQUIRE(fitting->fit.has_value());
    CHECK(fitting->remarks.empty());
    return *fitting->fit;
}

void checkFit(const OnsetFit& fit, const Known& known) {
    CAPTURE(nameOf(fit.law));
    REQUIRE(fit.coefficients.size() == known.coefficients.size());
    for (std::size_t i = 0; i < known.coefficients.size(); ++i) {
        CAPTURE(i);
        CHECK(isNear(fit.coefficients[i], known.coefficients[i]));
        CHECK(isNear(fit.standardError(i), known.errors[i]));
    }
    CHECK(isNear(fit.scale, known.scale));
    CHECK(isNear(fit.logScaleError.value_or(0), known.logScaleError));
    CHECK(isNear(fit.logLikelihood, known.logLikelihood));
}

OnsetFitting alone(OnsetLaw law, const std::vector<OnsetInterval>& onsets) {
    auto fitting = fitOnset(law, {onsets});
    REQUIRE(fitting.ok());
    return std::move(*fitting);
}

} // namespace

TEST_CASE("bloom by accession, and by accession and year, has the known means and spreads") {
    checkFit(fitOf(OnsetLaw::Normal, kBloom, {"Acc2", "Acc3"}, false),
             {{160.075555615613, -4.9868281347493, 5.03750259212796},
              {0.835489476571826, 1.17441073255532, 1.16658774150748},
              3.12154761274763,
              0.114476764288437,
              -66.0438885372576});
    checkFit(fitOf(OnsetLaw::Logistic, kBloom, {"Acc2", "Acc3"}, false),
             {{160.104839451679, -5.20622026544396, 4.91013239755806},
              {0.814405323801737, 1.23193663232188, 1.13882673791128},
              1.80128636210279,
              0.131299965578692,
              -66.594039751895});
    checkFit(fitOf(OnsetLaw::Logistic, kBloom, {"Acc2", "Acc3"}, true),
             {{157.497442399466, -4.91130797334466, 5.28190757121398, 4.68339829884497},
              {0.64793391622084, 0.81277088739415, 0.759665779673571, 0.639479244002325},
              1.11351241334109,
              0.14633537192308,
              -48.5487037720075});
    const OnsetFit fit = fitOf(OnsetLaw::Normal, kBloom, {"Acc2", "Acc3"}, true);
    checkFit(fit,
             {{157.56443326793, -4.79665093164251, 5.23154839120754, 4.69427905919715},
              {0.662100848912805, 0.807134907747998, 0.79376419793475, 0.651222068066947},
              2.01852517951924,
              0.126730161132274,
              -48.9615331416618});
    CHECK(fit.counts.left == 1);
    CHECK(fit.counts.right == 1);
    CHECK(fit.counts.within == 45);
    CHECK(fit.counts.exact == 1);

    // Mean dates over both years.
    const double dates[3] = {159.911572797528, 155.114921865886, 165.143121188736};
    const double errors[3] = {0.570595633926489, 0.570214631805814, 0.551751741290372};
    const double weights[3][4] = {{1, 0, 0, 0.5}, {1, 1, 0, 0.5}, {1, 0, 1, 0.5}};
    for (std::size_t i = 0; i < 3; ++i) {
        const statistics::Estimate mean = fit.combination(weights[i]);
        CHECK(isNear(mean.value, dates[i]));
        CHECK(isNear(*mean.standardError, errors[i]));
        REQUIRE(mean.interval.has_value());
        CHECK(mean.interval->holds(mean.value));
        CHECK(mean.interval->high - mean.value > 1.96 * errors[i]);
    }
}

TEST_CASE("laws of the logarithm fit Beadle's patients as they are known to") {
    checkFit(fitOf(OnsetLaw::Weibull, kCosmesis, {}, false),
             {{4.05221152270118},
              {0.226221813777232},
              0.892530304057372,
              0.213654579499463,
              -64.5921392847739});
    checkFit(fitOf(OnsetLaw::LogNormal, kCosmesis, {}, false),
             {{3.74988585198158},
              {0.252778502790804},
              1.30863037900129,
              0.19311442970335,
              -64.5869329066199});
    checkFit(fitOf(OnsetLaw::LogLogistic, kCosmesis, {}, false),
             {{3.74285820580262},
              {0.234098218009193},
              0.763689974549891,
              0.206498785970854,
              -64.6752829774408});
    checkFit(fitOf(OnsetLaw::Exponential, kCosmesis, {}, false),
             {{4.11815595521989}, {0.218398669103316}, 1, 0, -64.7276157450454});
}

TEST_CASE(
    "laws of the logarithm fit latent periods with and without accessions as they are known to") {
    checkFit(fitOf(OnsetLaw::Weibull, kLatent, {}, false),
             {{2.17889674068684},
              {0.0540161211052382},
              0.349955545522377,
              0.118642584694017,
              -93.1959271658774});
    checkFit(fitOf(OnsetLaw::LogNormal, kLatent, {}, false),
             {{1.99173993326171},
              {0.057131618014449},
              0.393145181747489,
              0.110644217438204,
              -92.3493184604061});
    checkFit(fitOf(OnsetLaw::LogLogistic, kLatent, {}, false),
             {{1.99301066192537},
              {0.0604544454345947},
              0.236581345683176,
              0.123515026802685,
              -93.6719174216207});
    checkFit(fitOf(OnsetLaw::Weibull, kLatent, {"Sus"}, false),
             {{2.36383714491969, -0.437971089182393},
              {0.0590081169864947, 0.0819158782911045},
              0.269123108552,
              0.125988757192098,
              -82.5011034908805});
    checkFit(fitOf(OnsetLaw::LogNormal, kLatent, {"Sus"}, false),
             {{2.20169679236062, -0.41778326641608},
              {0.0690523887463441, 0.0976285517847157},
              0.332334217838185,
              0.111843463437301,
              -84.4210264677209});
    checkFit(fitOf(OnsetLaw::LogLogistic, kLatent, {"Sus"}, false),
             {{2.23481541705471, -0.44687110383737},
              {0.0735236462784036, 0.100928172805185},
              0.19570340623375,
              0.126343948090597,
              -85.3878661253102});
}

TEST_CASE("where visits settle nothing a sentence stands instead of a number") {
    const std::vector<std::vector<OnsetInterval>> nothing{
        {},
        {{}},
        {{-kOpen, 150}, {-kOpen, 151}},
        {{150, kOpen}, {152, kOpen}},
        {{-kOpen, 150}, {160, kOpen}},
        {{150, 153}},
        {{150, 153}, {150, 153}, {150, 153}},
        {{150, 153}, {153, 156}},
        {{150, 150}, {150, 150}},
        {{150, 153}, {-kOpen, 156}, {147, kOpen}}};
    for (const std::vector<OnsetInterval>& onsets : nothing) {
        for (const OnsetLaw law : {OnsetLaw::Normal, OnsetLaw::Logistic, OnsetLaw::LogNormal}) {
            const OnsetFitting fitting = alone(law, onsets);
            CHECK_FALSE(fitting.fit.has_value());
            REQUIRE(fitting.remarks.size() == 1);
            CHECK(inEnglish(fitting.remarks.front()).back() == '.');
        }
    }
}

TEST_CASE("two vines on known days have the t interval of two numbers") {
    const OnsetFitting fitting = alone(OnsetLaw::Normal, {{150, 150}, {154, 154}, {}});
    REQUIRE(fitting.fit.has_value());
    CHECK(fitting.counts.unseen == 1);
    const statistics::Estimate mean = fitting.fit->coefficient(0);
    CHECK(mean.value == doctest::Approx(152));
    // Standard deviation √8 of the two, t of one degree of freedom 12.7062: 2 · 12.7062.
    CHECK(mean.interval->high == doctest::Approx(152 + 2 * 12.706204736));
}

TEST_CASE("huge and tiny times, and an effect that cannot be told apart, end in numbers or words") {
    for (const double unit : {1e-9, 1.0, 1e9}) {
        std::vector<OnsetInterval> onsets;
        for (int i = 0; i < 12; ++i) {
            onsets.push_back({unit * (100 + i * i), unit * (104 + i * i)});
        }
        for (const OnsetLaw law :
             {OnsetLaw::Normal, OnsetLaw::Logistic, OnsetLaw::LogNormal, OnsetLaw::Weibull}) {
            const OnsetFitting fitting = alone(law, onsets);
            REQUIRE(fitting.fit.has_value());
            CHECK(std::isfinite(fitting.fit->logLikelihood));
        }
    }
    const std::vector<OnsetInterval> onsets{{150, 153}, {155, 158}, {160, 163}, {150, 153}};
    const std::vector<double> twice{1, 1, 1, 1, 1, 1, 1, 1};
    const auto same = fitOnset(OnsetLaw::Normal, {onsets, twice, 2});
    REQUIRE(same.ok());
    CHECK_FALSE(same->fit.has_value());
    CHECK(same->remarks.size() == 1);
    CHECK_FALSE(fitOnset(OnsetLaw::Normal, {onsets, {}, 2}).ok());
    CHECK_FALSE(fitOnset(OnsetLaw::LogNormal, {std::vector<OnsetInterval>{{-3, -1}}}).ok());
}
