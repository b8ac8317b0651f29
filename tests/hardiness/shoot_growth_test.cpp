// Shoot growth, its end, and pruning weight.
#include "core/hardiness/shoot_growth.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::hardiness;

namespace {

const CivilDate kStart = std::chrono::year(2025) / 4 / 20;

double logistic(double asymptote, double midpoint, double rate, double day) {
    return asymptote / (1 + std::exp(-rate * (day - midpoint)));
}

bool says(const Remarks& remarks, const std::string& words) {
    return std::ranges::any_of(remarks, [&](const Remark& remark) {
        return inEnglish(remark).find(words) != std::string::npos;
    });
}

CivilDate day(const char* text) {
    return *readDate(text);
}

ShootGrowth growthOf(const std::vector<ShootLength>& lengths) {
    const auto growth = fitShootGrowth(lengths);
    REQUIRE(growth.ok());
    return *growth;
}

} // namespace

TEST_CASE("lengths that lie on a logistic curve give it back, with the day that 95 % are reached") {
    std::vector<ShootLength> lengths;
    for (const int at : {0, 10, 22, 35, 50, 64, 80, 100, 140}) {
        lengths.push_back({addDays(kStart, at), logistic(240, 42, 0.08, at)});
    }
    std::ranges::reverse(lengths);
    const ShootGrowth growth = growthOf(lengths);
    REQUIRE(growth.asymptoteCm);
    CHECK(growth.asymptoteCm->value == doctest::Approx(240).epsilon(1e-6));
    CHECK(growth.midpointDay->value == doctest::Approx(42).epsilon(1e-6));
    CHECK(growth.ratePerDay->value == doctest::Approx(0.08).epsilon(1e-6));
    CHECK(growth.greatestGrowthCmPerDay->value == doctest::Approx(240 * 0.08 / 4).epsilon(1e-6));
    CHECK(growth.endDay->value == doctest::Approx(42 + std::log(19) / 0.08).epsilon(1e-6));
    CHECK(growth.endDate == addDays(kStart, 79));
    CHECK_FALSE(growth.isEndBeyondMeasured);
    CHECK(daysBeforeFrost(growth, addDays(kStart, 200))->value ==
          doctest::Approx(121.2).epsilon(1e-3));
}

// Bates & Watts's conditions hold: errors are normal and small against the curve.
TEST_CASE("limits of the end of growth hold the truth in 93 to 97 of 100 simulated shoots") {
    std::mt19937_64 dice(3);
    const auto even = [&dice] { return (static_cast<double>(dice() >> 11) + 0.5) * 0x1p-53; };
    const auto normal = [&even] {
        return std::sqrt(-2 * std::log(even())) * std::cos(2 * std::numbers::pi * even());
    };
    const double end = 42 + std::log(19) / 0.08;
    constexpr int kShoots = 2000;
    int held = 0;
    int fitted = 0;
    for (int shoot = 0; shoot < kShoots; ++shoot) {
        std::vector<ShootLength> lengths;
        for (int at = 0; at <= 140; at += 10) {
            const double cm = logistic(240, 42, 0.08, at) + 4 * normal();
            lengths.push_back({addDays(kStart, at), std::max(0.0, cm)});
        }
        const ShootGrowth growth = growthOf(lengths);
        fitted += growth.endDay ? 1 : 0;
        held += growth.endDay && growth.endDay->interval->holds(end) ? 1 : 0;
    }
    CHECK(fitted == kShoots);
    MESSAGE("held in " << 100.0 * held / fitted << " %");
    CHECK(held > kShoots * 93 / 100);
    CHECK(held < kShoots * 97 / 100);
}

TEST_CASE("too few days, no plateau, no growth and wrong lengths are told in words") {
    CHECK(says(growthOf({}).remarks, "there are 0 days"));
    CHECK(says(growthOf({{kStart, 10}, {kStart, 12}, {addDays(kStart, 9), 30}}).remarks,
               "there are 2 days"));
    std::vector<ShootLength> rising;
    for (int at = 0; at <= 40; at += 8) {
        rising.push_back(
            {addDays(kStart, at), logistic(240, 42, 0.08, at) + (at % 16 == 0 ? 1 : -1)});
    }
    const ShootGrowth open = growthOf(rising);
    CHECK(!open.remarks.empty());
    CHECK((!open.endDay || open.isEndBeyondMeasured));
    std::vector<ShootLength> still;
    for (int at = 0; at <= 40; at += 8) {
        still.push_back({addDays(kStart, at), 55});
    }
    const ShootGrowth none = growthOf(still);
    CHECK_FALSE(none.endDay);
    CHECK(says(none.remarks, "no one curve"));
    const auto wrong = fitShootGrowth(std::vector<ShootLength>{{kStart, -3}});
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.error().message == "The shoot's length of 2025-04-20 cannot be one.");
}

TEST_CASE("growth ended between the last growing tip and the first stopped one") {
    const GrowthEnd end = growthEnd(std::vector<TipRecord>{{day("2025-09-20"), ShootTip::Stopped},
                                                           {day("2025-08-30"), ShootTip::Growing},
                                                           {day("2025-09-09"), ShootTip::Slowing},
                                                           {day("2025-10-01"), ShootTip::Stopped}});
    CHECK(end.after == day("2025-09-09"));
    CHECK(end.onOrBefore == day("2025-09-20"));
    const statistics::Interval days = daysBeforeFrost(end, day("2025-11-01"));
    CHECK(days.low == 42);
    CHECK(days.high == 53);
    CHECK(daysBeforeFrost(end, day("2025-09-15")).low == -5);
}

TEST_CASE("an end of growth that was not seen is open on its side") {
    const GrowthEnd growing =
        growthEnd(std::vector<TipRecord>{{day("2025-10-20"), ShootTip::Growing}});
    CHECK_FALSE(growing.onOrBefore);
    CHECK(daysBeforeFrost(growing, day("2025-10-10")).low == -statistics::kUnbounded);
    CHECK(daysBeforeFrost(growing, day("2025-10-10")).high == -10);
    CHECK(says(growing.remarks, "Still growing"));
    const GrowthEnd stopped =
        growthEnd(std::vector<TipRecord>{{day("2025-10-20"), ShootTip::Stopped}});
    CHECK_FALSE(stopped.after);
    CHECK(says(stopped.remarks, "already stopped"));
    CHECK(says(growthEnd({}).remarks, "nothing is known"));
    const GrowthEnd again =
        growthEnd(std::vector<TipRecord>{{day("2025-08-01"), ShootTip::Stopped},
                                         {day("2025-08-20"), ShootTip::Growing},
                                         {day("2025-09-20"), ShootTip::Stopped}});
    CHECK(again.after == day("2025-08-20"));
    CHECK(again.onOrBefore == day("2025-09-20"));
    CHECK(says(again.remarks, "followed by growth"));
}

TEST_CASE("pruning weight is told for a metre of cordon, and vines without a length are left out") {
    const auto weight = pruningWeight(std::vector<PrunedVine>{{3, 600}, {4.5, 600}, {2, 0}});
    REQUIRE(weight.ok());
    CHECK(weight->vines == 2);
    CHECK(weight->leftOut == 1);
    CHECK(weight->kgPerMetre->value == doctest::Approx(0.625));
    CHECK(weight->kgPerMetre->standardError.value() == doctest::Approx(0.125));
    CHECK_FALSE(pruningWeight(std::vector<PrunedVine>{{-1, 600}}).ok());
    CHECK_FALSE(pruningWeight({})->kgPerMetre);
}

TEST_CASE("any lengths give finite numbers, or none and a word about it") {
    CHECK(rc::check([] {
        std::vector<ShootLength> lengths;
        const int count = *rc::gen::inRange(0, 9);
        for (int i = 0; i < count; ++i) {
            lengths.push_back({addDays(kStart, *rc::gen::inRange(0, 40)),
                               static_cast<double>(*rc::gen::inRange(0, 30))});
        }
        const auto growth = fitShootGrowth(lengths);
        RC_ASSERT(growth.ok());
        RC_ASSERT(growth->endDay.has_value() || !growth->remarks.empty());
        if (growth->endDay) {
            RC_ASSERT(std::isfinite(growth->endDay->value));
            RC_ASSERT(std::isfinite(growth->asymptoteCm->interval->high));
            RC_ASSERT(growth->ratePerDay->value > 0);
        }
    }));
}
