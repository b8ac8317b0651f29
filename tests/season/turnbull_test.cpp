// The share of vines that have reached a stage, without a law: against known estimates, and as the
// maximum of its likelihood.
#include "core/season/turnbull.hpp"

#include "known_onsets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <rapidcheck.h>
#include <vector>

using namespace bullace;
using namespace bullace::season;

namespace {

struct Step {
    double after, by, mass;
};

StepCurve curveOf(const std::vector<OnsetInterval>& onsets) {
    auto curve = turnbull(onsets);
    REQUIRE(curve.ok());
    return std::move(*curve);
}

void checkSteps(const StepCurve& curve, const std::vector<Step>& expected, double logLikelihood) {
    REQUIRE(curve.steps.size() == expected.size());
    double sum = 0;
    for (std::size_t i = 0; i < expected.size(); ++i) {
        CAPTURE(i);
        sum += expected[i].mass;
        CHECK(curve.steps[i].after == expected[i].after);
        CHECK(curve.steps[i].by == expected[i].by);
        CHECK(std::abs(curve.steps[i].mass - expected[i].mass) < 1e-6);
        CHECK(std::abs(curve.steps[i].cumulated - sum) < 1e-6);
    }
    CHECK(std::abs(curve.logLikelihood - logLikelihood) < 1e-7);
    CHECK(curve.excess <= 1e-9);
}

// Σ log of the mass that each onset may hold, if mass lies on the curve's own steps.
double likelihoodOf(const std::vector<OnsetInterval>& onsets,
                    const std::vector<StepMass>& steps,
                    const std::vector<double>& mass) {
    double value = 0;
    for (const OnsetInterval& onset : onsets) {
        double share = 0;
        for (std::size_t j = 0; j < steps.size(); ++j) {
            const bool isInside = steps[j].by <= onset.by &&
                                  (steps[j].after > onset.after || steps[j].after == onset.after) &&
                                  !(onset.after < onset.by && steps[j].by == onset.after);
            share += isInside ? mass[j] : 0;
        }
        value += std::log(share);
    }
    return value;
}

std::vector<OnsetInterval> someOnsets() {
    const auto count = *rc::gen::inRange<std::size_t>(1, 40);
    std::vector<OnsetInterval> onsets;
    for (std::size_t i = 0; i < count; ++i) {
        const int after = *rc::gen::inRange(140, 170);
        const int width = *rc::gen::inRange(0, 9);
        const int shape = *rc::gen::inRange(0, 10);
        onsets.push_back({shape == 0 ? -kOpen : after, shape == 1 ? kOpen : after + width});
    }
    return onsets;
}

} // namespace

TEST_CASE("the steps of bloom of three accessions are the known ones") {
    checkSteps(curveOf(onsetsOf(kBloom, "Acc1")),
               {{155, 157, 0.1875}, {159, 161, 0.541666666666667}, {162, 164, 0.270833333333333}},
               -15.3594110623699);
    checkSteps(curveOf(onsetsOf(kBloom, "Acc2")),
               {{148, 151, 0.1875},
                {151, 154, 0.277777777777778},
                {155, 157, 0.347222222222222},
                {159, 162, 0.125},
                {162, 166, 0.0625}},
               -22.8360915881477);
    const StepCurve third = curveOf(onsetsOf(kBloom, "Acc3"));
    checkSteps(third,
               {{162, 162, 0.166666666666667},
                {162, 164, 0.333333333333333},
                {166, 167, 0.4375},
                {169, kOpen, 0.0625}},
               -16.0140586838951);
    CHECK(third.candidates == 5);
    CHECK(third.counts.within == 14);
    CHECK(third.counts.right == 1);
    CHECK(third.counts.exact == 1);
    REQUIRE(third.where(0.5).has_value());
    CHECK(third.where(0.5)->by == 164);
    CHECK(third.where(0.51)->by == 167);
}

// Klein & Moeschberger print S = 0.954, 0.920, 0.832, 0.761, 0.668, 0.586, 0.467; their last value
// is 0.4656 when iterated to the end.
TEST_CASE("the steps of Beadle's patients are those of the book, iterated to the end") {
    const StepCurve curve = curveOf(onsetsOf(kCosmesis));
    checkSteps(curve,
               {{4, 5, 0.0463467739928941},
                {6, 7, 0.0333633709346421},
                {7, 8, 0.0886673680627083},
                {11, 12, 0.0707529217923642},
                {24, 25, 0.0926458365850131},
                {33, 34, 0.0817857649025473},
                {38, 40, 0.120879827353835},
                {46, 48, 0.465558136375996}},
               -58.060021953991);
    CHECK(curve.candidates == 14);
    const std::vector<double> printed{0.954, 0.920, 0.832, 0.761, 0.668, 0.586};
    for (std::size_t i = 0; i < printed.size(); ++i) {
        CHECK(std::abs(1 - curve.steps[i].cumulated - printed[i]) < 0.0006);
    }
}

TEST_CASE("the steps of latent periods are the known ones") {
    checkSteps(curveOf(onsetsOf(kLatent, "Res")),
               {{4, 5, 0.096},
                {5, 6, 0.144},
                {7, 8, 0.111275796027408},
                {8, 10, 0.0904752068995765},
                {10, 12, 0.281332705022759},
                {12, 14, 0.276916292050257}},
               -36.8217721905432);
    checkSteps(curveOf(onsetsOf(kLatent, "Sus")),
               {{2, 4, 0.0937765507943432},
                {4, 5, 0.178502199363785},
                {5, 6, 0.263899562759795},
                {6, 7, 0.175117599847334},
                {7, 8, 0.0487040872347429},
                {8, 10, 0.24}},
               -36.6907648441598);
}

TEST_CASE("the order in which vines are given changes nothing") {
    CHECK(rc::check("invariant to order", [] {
        std::vector<OnsetInterval> onsets = someOnsets();
        const StepCurve one = curveOf(onsets);
        std::mt19937 engine(*rc::gen::arbitrary<unsigned>());
        std::shuffle(onsets.begin(), onsets.end(), engine);
        const StepCurve other = curveOf(onsets);
        RC_ASSERT(one.logLikelihood == other.logLikelihood);
        RC_ASSERT(one.steps.size() == other.steps.size());
        for (std::size_t i = 0; i < one.steps.size(); ++i) {
            RC_ASSERT(one.steps[i].mass == other.steps[i].mass);
        }
    }));
}

TEST_CASE("no mass can be moved with gain") {
    CHECK(rc::check("a maximum", [] {
        const std::vector<OnsetInterval> onsets = someOnsets();
        const StepCurve curve = curveOf(onsets);
        RC_ASSERT(curve.excess <= 1e-9);
        std::vector<double> mass;
        double sum = 0;
        for (const StepMass& step : curve.steps) {
            mass.push_back(step.mass);
            sum += step.mass;
        }
        RC_ASSERT(std::abs(sum - 1) < 1e-12);
        RC_ASSERT(std::abs(likelihoodOf(onsets, curve.steps, mass) - curve.logLikelihood) < 1e-9);
        for (std::size_t from = 0; from < mass.size(); ++from) {
            for (std::size_t to = 0; to < mass.size(); ++to) {
                std::vector<double> moved = mass;
                const double part = moved[from] * 0.05;
                moved[from] -= part;
                moved[to] += part;
                RC_ASSERT(likelihoodOf(onsets, curve.steps, moved) <= curve.logLikelihood + 1e-9);
            }
        }
    }));
}

TEST_CASE("vines that say nothing, and bounds that are none, are told") {
    const StepCurve none = curveOf({{}, {}});
    CHECK(none.steps.empty());
    CHECK(none.counts.unseen == 2);
    CHECK(none.remarks.size() == 1);
    CHECK(curveOf({}).remarks.size() == 1);
    CHECK_FALSE(turnbull(std::vector<OnsetInterval>{{160, 150}}).ok());
    CHECK_FALSE(turnbull(std::vector<OnsetInterval>{{std::nan(""), 150}}).ok());
    CHECK_FALSE(turnbull(std::vector<OnsetInterval>{{kOpen, kOpen}}).ok());
    // All reached before the first visit: one step with an open start.
    const StepCurve left = curveOf({{-kOpen, 150}, {-kOpen, 152}});
    REQUIRE(left.steps.size() == 1);
    CHECK(left.steps.front().by == 150);
    CHECK(left.steps.front().after == -kOpen);
}
