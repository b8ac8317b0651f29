// Where values vary, and how many vines and samples a precision takes.
#include "core/fruit/variation.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace bullace;
using namespace bullace::fruit;

namespace {

// Invented values of 12 accessions with unequal numbers of vines and of samples.
const std::vector<AccessionVines> kNested{
    {{18.32, 17.37, 18.7},
     {18.69, 17.68},
     {17.65},
     {17.32, 17.93, 18.77},
     {18.89, 18.84},
     {17.55, 16.59, 17.83}},
    {{15.33, 14.73}, {18.52}, {17.7, 15.87}, {17.3, 15.74}},
    {{17.37, 18.56, 19.04},
     {17.27, 16.36},
     {21.35, 20.76, 19.2, 18.72},
     {19.43, 19.39, 19.8, 20.13},
     {19.37, 18.93, 19.31, 18.68}},
    {{17.91, 18}, {17.29, 15.12, 16.28, 19.19}, {14.44, 14.39, 14}},
    {{22.25, 18.7},
     {16.33},
     {17.77, 17.16},
     {18.62},
     {20.55, 19.01, 18.64},
     {17.69},
     {19.52},
     {19.5, 17.74}},
    {{16.31, 16.25, 16.76, 15.95}, {15.5}},
    {{13.54, 16.1}, {14.18, 15.42, 15.03}, {14.64, 15.23, 16.58}, {13.66}, {12.03, 13.12, 12.3}},
    {{17.56},
     {18.62, 18.32},
     {19.88, 17.63, 18.73},
     {17.94, 16.94, 18.83, 18.15},
     {16.31, 16.44, 17.27, 15.44}},
    {{19.83, 18.82, 19.52, 18.82},
     {17.83, 18.53},
     {20.29, 19.99},
     {18.11},
     {18.96, 18.13, 16.84},
     {21.01},
     {18.2, 20.05}},
    {{15.63, 17.14}},
    {{20.12}, {20.71, 19.68}, {18.7, 17.63, 19.27, 18.52}, {21.14}},
    {{18.5, 16.9, 20.15, 19.11},
     {18.57, 18.66},
     {15.68, 18.53},
     {18.91, 20.07, 21.01},
     {15.54},
     {19.2, 19.4}}};

doctest::Approx near(double value, double relative = 1e-10) {
    return doctest::Approx(value).epsilon(relative);
}

} // namespace

TEST_CASE("variance between accessions, between vines and within a vine, unequal numbers") {
    // Method: Henderson 1953, method I; the values computed independently in R.
    const auto parts = varianceParts(kNested);
    REQUIRE(parts);
    CHECK(parts->accessions == 12);
    CHECK(parts->values == 130);
    CHECK(parts->ofAccessions->freedom == 11);
    CHECK(parts->ofVines->freedom == 44);
    CHECK(parts->ofSamples->freedom == 74);
    CHECK(parts->ofAccessions->squares == near(286.582257680277));
    CHECK(parts->ofVines->squares == near(135.372327576133));
    CHECK(parts->ofSamples->squares == near(65.9147416666668));
    CHECK(*parts->ofAccessions->f == near(29.2486469257866));
    CHECK(*parts->ofAccessions->p == near(1.38709263261765e-22, 1e-6));
    CHECK(*parts->ofVines->f == near(3.45403222520284));
    CHECK(*parts->ofVines->p == near(1.25744946360812e-06, 1e-8));
    CHECK(parts->vinesInVines == near(2.21411880603057));
    CHECK(parts->vinesInAccessions == near(2.70855974091268));
    CHECK(parts->accessionsInAccessions == near(10.6727272727273));
    CHECK(*parts->betweenAccessions == near(2.10706672356043));
    CHECK(*parts->betweenVines == near(0.987256894409868));
    CHECK(*parts->withinVine == near(0.890739752252254));
    CHECK(parts->remarks.empty());
}

TEST_CASE("a design that does not tell vines from samples says so") {
    const auto oneEach = varianceParts({{{1.0}, {2.0}}, {{4.0}, {3.0}}});
    REQUIRE(oneEach);
    CHECK_FALSE(oneEach->withinVine);
    CHECK_FALSE(oneEach->betweenAccessions);
    CHECK(oneEach->remarks.size() == 1);
    const auto oneVine = varianceParts({{{1.0, 2.0}}, {{4.0, 3.0}}});
    REQUIRE(oneVine);
    CHECK(oneVine->withinVine);
    CHECK_FALSE(oneVine->betweenVines);
    CHECK(oneVine->remarks.size() == 1);
    const auto equal = varianceParts({{{5, 5}, {5, 5}}, {{5, 5}, {5, 5}}});
    REQUIRE(equal);
    CHECK(*equal->withinVine == 0);
    CHECK(*equal->betweenAccessions == 0);
    CHECK_FALSE(equal->ofVines->f);
    CHECK_FALSE(varianceParts({}));
    CHECK_FALSE(varianceParts({{{}}}));
    CHECK_FALSE(varianceParts({{{1.0, std::nan("")}}}));
}

TEST_CASE("a component below zero is given as zero, and said to be") {
    const auto parts = varianceParts({{{1, 9}, {9, 1}}, {{2, 8}, {8, 2}}});
    REQUIRE(parts);
    CHECK(*parts->betweenVines == 0);
    CHECK(parts->remarks.size() >= 1);
}

TEST_CASE("large equal leading digits do not spoil the variances") {
    auto shifted = kNested;
    for (AccessionVines& vines : shifted) {
        for (VineSamples& samples : vines) {
            for (double& value : samples) {
                value += 1e6;
            }
        }
    }
    const auto parts = varianceParts(shifted);
    REQUIRE(parts);
    CHECK(*parts->withinVine == near(0.890739752252254, 1e-7));
    CHECK(*parts->betweenAccessions == near(2.10706672356043, 1e-7));
}

TEST_CASE("an accession's mean has the error of its vines, not of its many samples") {
    const auto summary = summaryOfVines({{10, 11, 12}, {14, 14}, {}});
    REQUIRE(summary);
    CHECK(summary->n == 5);
    CHECK(summary->mean == near(12.5));
    CHECK(*summary->sd == near(std::sqrt(4.5)));
    CHECK(summary->least == 10);
    CHECK(summary->greatest == 14);
    CHECK(summary->interval->high - summary->mean == near(12.706204736 * 1.5, 1e-8)); // t, 1 df
    const auto oneVine = summaryOfVines({{10, 11, 12}});
    REQUIRE(oneVine);
    CHECK(oneVine->mean == 11);
    CHECK_FALSE(oneVine->interval);
    CHECK_FALSE(summaryOfVines({{}, {}}));
    CHECK_FALSE(summaryOf({}));
}

TEST_CASE("two-stage sampling takes as many samples on a vine as their variances and costs ask") {
    // Cochran 1977, section 10.6: best number √(within/between · cost/cost); by hand √(8/2 · 9)
    // = 6.
    const auto plan = twoStagePlan(2, 8, 0.5, {9, 1});
    REQUIRE(plan);
    CHECK(plan->samplesEach == 6);
    CHECK(plan->vines == 14); // (2 + 8/6)/0.25 = 13.3
    CHECK(plan->standardError <= 0.5);
    const auto alike = twoStagePlan(0, 4, 0.5);
    REQUIRE(alike);
    CHECK(alike->vines == 1);
    CHECK(alike->samplesEach == 16);
    const auto even = twoStagePlan(4, 0, 1);
    REQUIRE(even);
    CHECK(even->vines == 4);
    CHECK(even->samplesEach == 1);
    CHECK_FALSE(twoStagePlan(0, 0, 1));
    CHECK_FALSE(twoStagePlan(1, 1, 0));
    CHECK_FALSE(twoStagePlan(1, 1, 1e-9));
    CHECK_FALSE(twoStagePlan(-1, 1, 1));
}
