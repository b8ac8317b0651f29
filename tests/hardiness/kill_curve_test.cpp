// What a freezing test says about temperatures, in numbers and in words.
#include "core/hardiness/kill_curve.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::hardiness;

namespace {

KillCurve curveOf(const std::vector<FreezeRow>& rows, const KillCurveOptions& options = {}) {
    const auto curve = killCurve(rows, options);
    REQUIRE(curve.ok());
    return *curve;
}

bool says(const Remarks& remarks, const std::string& words) {
    return std::ranges::any_of(remarks, [&](const Remark& remark) {
        return inEnglish(remark).find(words) != std::string::npos;
    });
}

// Invented; expected values by an independent program.
const std::vector<FreezeRow> kBuds{{-10, 30, 1},
                                   {-12.5, 30, 3},
                                   {-15, 30, 16},
                                   {-17.5, 30, 23},
                                   {-20, 30, 29},
                                   {-22.5, 30, 30},
                                   {-25, 30, 30}};

bool isSound(double value) {
    return !std::isnan(value);
}
bool isSound(const std::optional<statistics::Interval>& limits) {
    return !limits ||
           (isSound(limits->low) && isSound(limits->high) && limits->low <= limits->high);
}

} // namespace

TEST_CASE("half of the buds of an accession die at -15.2 °C, colder limits first") {
    const KillCurve curve = curveOf(kBuds);
    REQUIRE(curve.points.size() == 3);
    const KillPoint& half = curve.points[1];
    CHECK(half.temperatureC.value == doctest::Approx(-15.2349541325284).epsilon(1e-7));
    CHECK(half.temperatureC.standardError.value() ==
          doctest::Approx(0.351845631806364).epsilon(1e-7));
    CHECK(half.limitsBy == LimitsBy::Profile);
    CHECK(half.temperatureC.interval->low == doctest::Approx(-15.9279322841136).epsilon(1e-6));
    CHECK(half.temperatureC.interval->high == doctest::Approx(-14.5335827397047).epsilon(1e-6));
    CHECK(half.fieller->low == doctest::Approx(-15.9454422895069).epsilon(1e-7));
    CHECK_FALSE(half.isBeyondTested);
    CHECK(curve.points[0].temperatureC.value > half.temperatureC.value);
    CHECK(curve.points[2].temperatureC.value < half.temperatureC.value);
    CHECK(curve.counted == 210);
    CHECK(curve.warmestC == -10);
    CHECK(curve.coldestC == -25);
    CHECK(says(curve.remarks, "official forecasts and local advice come first"));
}

TEST_CASE("no partial kill: a bracket and the middle of the jump, and no steepness") {
    const KillCurve curve =
        curveOf({{-10, 30, 0}, {-13, 30, 0}, {-16, 30, 0}, {-19, 30, 30}, {-22, 30, 30}});
    CHECK(curve.overlap == Overlap::Separated);
    CHECK_FALSE(curve.fit);
    CHECK(curve.points.empty());
    CHECK(curve.meanKill->temperatureC.value == doctest::Approx(-17.5).epsilon(1e-12));
    CHECK_FALSE(curve.meanKill->temperatureC.standardError);
    CHECK(curve.bracket->warmerC == -16);
    CHECK(curve.bracket->colderC == -19);
    CHECK(says(curve.remarks, "No temperature killed only a part"));
}

TEST_CASE("one partial kill: Spearman and Kärber's mean with its error, and no steepness") {
    const KillCurve curve =
        curveOf({{-10, 30, 0}, {-13, 30, 0}, {-16, 30, 11}, {-19, 30, 30}, {-22, 30, 30}});
    CHECK(curve.overlap == Overlap::QuasiSeparated);
    CHECK_FALSE(curve.fit);
    CHECK(curve.meanKill->temperatureC.value == doctest::Approx(-16.4).epsilon(1e-12));
    CHECK(curve.meanKill->temperatureC.standardError.value() ==
          doctest::Approx(0.263944438597722).epsilon(1e-12));
}

TEST_CASE("what the temperatures do not reach is said in words") {
    CHECK(
        says(curveOf({{-10, 30, 0}, {-20, 30, 0}}).remarks, "colder than the coldest tested, -20"));
    CHECK(
        says(curveOf({{-10, 30, 30}, {-20, 9, 9}}).remarks, "warmer than the warmest tested, -10"));
    CHECK(says(curveOf({{-10, 30, 3}}).remarks, "Only -10.0 °C was tested"));
    CHECK(says(curveOf({}).remarks, "No buds were counted"));
    CHECK(says(curveOf({{-10, 30, 25}, {-20, 30, 5}}).remarks, "does not rise with frost"));
    const KillCurve little = curveOf({{-10, 30, 0}, {-15, 30, 1}, {-20, 30, 2}, {-25, 30, 4}});
    CHECK(says(little.remarks, "At no temperature were half of the buds dead"));
    REQUIRE(little.points.size() == 3);
    CHECK(little.points[1].isBeyondTested);
    CHECK(says(little.remarks, "kills 50 % "));
    CHECK(says(little.remarks, "extrapolated"));
    const KillCurve gaps = curveOf({{-10, 30, 0}, {-12, 0, 0}, {-20, 30, 30}});
    CHECK(gaps.rowsEmpty == 1);
    CHECK(says(gaps.remarks, "left out: 1."));
}

TEST_CASE("counts that vary more than chance widen the limits, and that is said") {
    const KillCurve curve = curveOf(
        {{-10, 40, 1}, {-12, 40, 20}, {-14, 40, 2}, {-16, 40, 35}, {-18, 40, 12}, {-20, 40, 40}});
    REQUIRE(curve.points.size() == 3);
    const KillPoint& half = curve.points[1];
    CHECK(half.limitsBy != LimitsBy::Profile);
    CHECK(half.temperatureC.interval->high - half.temperatureC.interval->low >
          half.profile->high - half.profile->low);
    CHECK(says(curve.remarks, "limits are widened"));
}

TEST_CASE("a row with more dead than counted is named, and so is a wrong control") {
    const auto wrong = killCurve(std::vector<FreezeRow>{{-10, 30, 0}, {-15, 20, 21}}, {});
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.error().message == "Row 2 has more dead (21) than counted (20).");
    KillCurveOptions control;
    control.control = Control{0, 0};
    CHECK_FALSE(killCurve(kBuds, control).ok());
    KillCurveOptions part;
    part.parts = {1.0};
    CHECK_FALSE(killCurve(kBuds, part).ok());
}

TEST_CASE("dead buds of the control move the killing temperature colder") {
    KillCurveOptions options;
    options.control = Control{80, 8};
    const KillCurve curve =
        curveOf({{-10, 40, 4}, {-15, 40, 12}, {-20, 40, 33}, {-25, 40, 39}}, options);
    REQUIRE(curve.natural);
    CHECK(curve.natural->natural == doctest::Approx(0.1).epsilon(0.05));
    CHECK(curve.points[1].temperatureC.interval->holds(curve.points[1].temperatureC.value));
    CHECK(curve.points[1].temperatureC.value <
          curveOf({{-10, 40, 4}, {-15, 40, 12}, {-20, 40, 33}, {-25, 40, 39}})
              .points[1]
              .temperatureC.value);
}

TEST_CASE("accessions are compared in degrees: the hardier has the lower LT50") {
    const std::vector<FreezeGroup> groups{{"A1", kBuds},
                                          {"A2",
                                           {{-10, 30, 0},
                                            {-12.5, 30, 0},
                                            {-15, 30, 4},
                                            {-17.5, 30, 15},
                                            {-20, 30, 26},
                                            {-22.5, 30, 30},
                                            {-25, 30, 30}}}};
    const auto compared = compareKill(groups, Link::Logit);
    REQUIRE(compared.ok());
    REQUIRE(compared->differences.size() == 1);
    CHECK(compared->differences[0].lt50C.value > 1);
    CHECK(compared->differences[0].lt50C.interval->low > 0);
    CHECK(compared->accessions[1].lt50C.value < compared->accessions[0].lt50C.value);
}

TEST_CASE("killing temperatures shift with the thermometer and scale with its degrees") {
    const std::vector<double> shifts{-7.5, 100, 1e5};
    const KillCurve plain = curveOf(kBuds);
    for (const double shift : shifts) {
        std::vector<FreezeRow> moved = kBuds;
        std::vector<FreezeRow> scaled = kBuds;
        for (std::size_t i = 0; i < moved.size(); ++i) {
            moved[i].temperatureC += shift;
            scaled[i].temperatureC = moved[i].temperatureC * 1.8 + 32;
        }
        const KillCurve there = curveOf(moved);
        const KillCurve inF = curveOf(scaled);
        for (std::size_t i = 0; i < 3; ++i) {
            const double c = there.points[i].temperatureC.value;
            CHECK(std::abs(c - shift - plain.points[i].temperatureC.value) < 1e-7);
            CHECK(std::abs(inF.points[i].temperatureC.value - (c * 1.8 + 32)) < 1e-6);
            CHECK(std::abs(there.points[i].profile->low - shift - plain.points[i].profile->low) <
                  1e-4);
        }
    }
}

TEST_CASE("random small tables: never NaN, limits hold their estimate, no slope without overlap") {
    CHECK(rc::check([] {
        const auto links = {Link::Logit, Link::Probit, Link::ComplementaryLogLog};
        std::vector<FreezeRow> rows;
        const int count = *rc::gen::inRange(0, 7);
        for (int i = 0; i < count; ++i) {
            const int counted = *rc::gen::inRange(0, 12);
            rows.push_back(
                {-0.5 * *rc::gen::inRange(0, 60), counted, *rc::gen::inRange(0, counted + 1)});
        }
        for (const Link link : links) {
            KillCurveOptions options;
            options.link = link;
            if (*rc::gen::arbitrary<bool>()) {
                options.control = Control{10, *rc::gen::inRange(0, 11)};
            }
            const auto curve = killCurve(rows, options);
            RC_ASSERT(curve.ok());
            RC_ASSERT(!curve->remarks.empty());
            RC_ASSERT(!curve->fit || curve->overlap == Overlap::Overlapping);
            for (const KillPoint& point : curve->points) {
                RC_ASSERT(std::isfinite(point.temperatureC.value));
                RC_ASSERT(isSound(*point.temperatureC.standardError));
                RC_ASSERT(isSound(point.temperatureC.interval));
                RC_ASSERT(isSound(point.delta) && isSound(point.fieller) && isSound(point.profile));
                RC_ASSERT(point.profile->low <= point.temperatureC.value + 1e-9);
                RC_ASSERT(point.profile->high >= point.temperatureC.value - 1e-9);
            }
            RC_ASSERT(!curve->meanKill || std::isfinite(curve->meanKill->temperatureC.value));
        }
    }));
}

// 7 temperatures of 30 buds each, LT50 -17.5 °C, slope 0.8 a degree: what a station's test is like.
TEST_CASE("profile limits of the LT50 hold the truth in 93 to 97 of 100 simulated tests") {
    std::mt19937_64 dice(20260211);
    constexpr int kTests = 3000;
    int held = 0;
    int fitted = 0;
    for (int test = 0; test < kTests; ++test) {
        std::vector<FreezeRow> rows;
        for (int i = 0; i < 7; ++i) {
            const double temperature = -10 - 2.5 * i;
            const double killed = killedAt(Link::Logit, 0.8 * (-temperature - 17.5));
            int dead = 0;
            for (int bud = 0; bud < 30; ++bud) {
                const double even = (static_cast<double>(dice() >> 11) + 0.5) * 0x1p-53;
                dead += even < killed ? 1 : 0;
            }
            rows.push_back({temperature, 30, dead});
        }
        KillCurveOptions options;
        options.parts = {0.5};
        const auto curve = killCurve(rows, options);
        REQUIRE(curve.ok());
        if (curve->points.empty()) {
            continue;
        }
        ++fitted;
        held += curve->points[0].profile->holds(-17.5) ? 1 : 0;
    }
    CHECK(fitted > kTests * 99 / 100);
    const double share = static_cast<double>(held) / fitted;
    MESSAGE("held in " << share * 100 << " % of " << fitted);
    CHECK(share > 0.93);
    CHECK(share < 0.97);
}
