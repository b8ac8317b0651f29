// Pigments of juice and how long its colour lasts.
#include "core/fruit/juice_colour.hpp"

#include "core/fruit/colour_decay.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::fruit;

namespace {

bool says(const Remarks& remarks, const std::string& words) {
    return std::ranges::any_of(remarks, [&](const Remark& remark) {
        return inEnglish(remark).find(words) != std::string::npos;
    });
}

const std::vector<PigmentSample> kSamples{
    {40.0, 10.0, 20.0, 10.0, 20.0}, {30.0, 10.0, 20.0, 10.0, 30.0}, {50.0, 10.0, 20.0, 10.0, 10.0}};

// A0 = 1.2, k = 0.02 a day; ln A off the line by 0.01·(1, -1, -1, 1), which leaves the slope alone.
std::vector<AbsorbanceReading> storage(const std::string& accession, double k, double wobble) {
    std::vector<AbsorbanceReading> readings;
    const double signs[] = {1, -1, -1, 1};
    for (int i = 0; i < 4; ++i) {
        const double day = 30.0 * i;
        readings.push_back({accession, {}, day, 1.2 * std::exp(-k * day + wobble * signs[i])});
    }
    return readings;
}

ColourComparison decayOf(const std::vector<AbsorbanceReading>& readings) {
    const auto decay = colourDecay(readings);
    REQUIRE(decay.ok());
    return *decay;
}

} // namespace

TEST_CASE("the five shares add up to 100, and the ratio is the samples' own") {
    const auto profile = pigmentProfile(kSamples);
    REQUIRE(profile.ok());
    double sum = 0;
    for (const auto& share : profile->sharePercent) {
        sum += share->value;
    }
    CHECK(sum == doctest::Approx(100).epsilon(1e-12));
    CHECK(profile->sharePercent[0]->value == doctest::Approx(40));
    CHECK(profile->totalMgPer100g->value == doctest::Approx(100));
    // (1/2 · 1 · 1/5) to the third root, by hand.
    CHECK(profile->malvidinToDelphinidin->value == doctest::Approx(std::cbrt(0.1)));
    CHECK(profile->ratios == 3);
    // Malvidin 10, 20, 30: 20 ± 4.302653 · 10/√3.
    CHECK(profile->mgPer100g[4]->interval->high ==
          doctest::Approx(20 + 4.302653 * 10 / std::sqrt(3.0)));
    CHECK(profile->mgPer100g[4]->interval->low == 0); // 20 - 24.8 is no amount
    CHECK(profile->guide == AgainstGuide::Undecided);
    CHECK(says(profile->remarks, "8 mg of malvidin"));
}

TEST_CASE("the guide value is reached or not only where the interval says so") {
    const auto guide = [](double a, double b, double c) {
        return pigmentProfile(std::vector<PigmentSample>{{1.0, 1.0, 1.0, 1.0, a},
                                                         {1.0, 1.0, 1.0, 1.0, b},
                                                         {1.0, 1.0, 1.0, 1.0, c}})
            ->guide;
    };
    CHECK(guide(20, 21, 22) == AgainstGuide::Reaches);
    CHECK(guide(2, 3, 2.5) == AgainstGuide::Below);
    CHECK(guide(7, 9, 8) == AgainstGuide::Undecided);
}

TEST_CASE("bronze berries without pigment, missing values and wrong ones") {
    const auto none = pigmentProfile(std::vector<PigmentSample>{{0.0, 0.0, 0.0, 0.0, 0.0}});
    REQUIRE(none.ok());
    CHECK_FALSE(none->sharePercent[0]);
    CHECK_FALSE(none->malvidinToDelphinidin);
    CHECK(says(none->remarks, "left out of the shares: 1."));
    CHECK(pigmentProfile({})->samples == 0);
    const auto wrong = pigmentProfile(std::vector<PigmentSample>{{1.0, 2.0, {}, {}, -3.0}});
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.error().message == "Sample 1 has a value of malvidin that cannot be one.");
}

// Closed form: residuals ±0.01 give s² = 4·0.0001/2, days about their mean 4500, t(2) = 4.302653.
TEST_CASE("half of the colour is gone after ln 2 / k days, with the limits of k turned over") {
    const ColourComparison found = decayOf(storage("A", 0.02, 0.01));
    REQUIRE(found.decays.size() == 1);
    const ColourDecay& decay = found.decays[0];
    CHECK(decay.perDay->value == doctest::Approx(0.02).epsilon(1e-10));
    CHECK(decay.perDay->standardError.value() ==
          doctest::Approx(std::sqrt(0.0002 / 4500)).epsilon(1e-9));
    CHECK(decay.start->value == doctest::Approx(1.2).epsilon(1e-10));
    CHECK(decay.halfLifeDays->value == doctest::Approx(std::numbers::ln2 / 0.02).epsilon(1e-10));
    const double half = 4.302653 * std::sqrt(0.0002 / 4500);
    CHECK(decay.halfLifeDays->interval->low ==
          doctest::Approx(std::numbers::ln2 / (0.02 + half)).epsilon(1e-6));
    CHECK(decay.halfLifeDays->interval->high ==
          doctest::Approx(std::numbers::ln2 / (0.02 - half)).epsilon(1e-6));
    CHECK(says(found.remarks, "in proportion to the absorbance"));
}

TEST_CASE("where no decay can be shown there is no half-life") {
    const ColourComparison still = decayOf(storage("A", 0.0001, 0.2));
    CHECK_FALSE(still.decays[0].halfLifeDays);
    CHECK(says(still.decays[0].remarks, "No decay could be shown"));
    const ColourComparison darker = decayOf(storage("A", -0.02, 0.01));
    CHECK_FALSE(darker.decays[0].halfLifeDays);
    CHECK(darker.decays[0].perDay->value < 0);
    const ColourComparison two = decayOf({{"A", {}, 0, 1.0}, {"A", {}, 30, 0.5}});
    CHECK(two.decays[0].perDay->value == doctest::Approx(std::numbers::ln2 / 30));
    CHECK_FALSE(two.decays[0].halfLifeDays);
    const ColourComparison one = decayOf({{"A", {}, 5, 1.0}, {"A", {}, 5, 0.5}, {"A", {}, 9, 0}});
    CHECK_FALSE(one.decays[0].perDay);
    CHECK(one.decays[0].leftOut == 1);
    CHECK(says(one.decays[0].remarks, "two different days"));
}

TEST_CASE("readings at another pH or dilution are not mixed, and that is said") {
    std::vector<AbsorbanceReading> readings = storage("A", 0.02, 0.01);
    for (AbsorbanceReading reading : storage("A", 0.05, 0.01)) {
        reading.conditions.ph = 3.4;
        readings.push_back(reading);
    }
    const ColourComparison found = decayOf(readings);
    REQUIRE(found.decays.size() == 2);
    CHECK(found.decays[0].perDay->value == doctest::Approx(0.02));
    CHECK(found.decays[1].perDay->value == doctest::Approx(0.05));
    CHECK(found.differences.empty());
    CHECK(says(found.remarks, "fitted apart"));
}

TEST_CASE("accessions' decays are compared with regard to how many there are") {
    std::vector<AbsorbanceReading> readings;
    const std::vector<std::pair<std::string, double>> rates{
        {"A", 0.02}, {"B", 0.0203}, {"C", 0.04}};
    for (const auto& [name, k] : rates) {
        for (const AbsorbanceReading& reading : storage(name, k, 0.01)) {
            readings.push_back(reading);
        }
    }
    const ColourComparison found = decayOf(readings);
    REQUIRE(found.differences.size() == 3);
    CHECK(found.differences[0].p > 0.05);
    CHECK(found.differences[1].pHolm < 0.001);
    CHECK(found.differences[1].perDay.value == doctest::Approx(-0.02));
    for (const DecayDifference& difference : found.differences) {
        CHECK(difference.pHolm >= difference.p);
    }
}

TEST_CASE("a wrong reading is named") {
    const auto message = [](const AbsorbanceReading& reading) {
        return colourDecay(std::vector<AbsorbanceReading>{reading}).error().message;
    };
    CHECK(message({"A", {}, -1, 0.5}) == "Reading 1 has a day of storage below 0, or none.");
    CHECK(message({"A", {}, 1, NAN}) == "Reading 1 has a value that is no measurement.");
    CHECK(message({"A", {520, 0, 10, {}, {}}, 1, 0.5}) ==
          "Reading 1 has a dilution or path that is not above 0.");
}

TEST_CASE("any readings give finite numbers, or none") {
    CHECK(rc::check([] {
        std::vector<AbsorbanceReading> readings;
        const int count = *rc::gen::inRange(0, 9);
        for (int i = 0; i < count; ++i) {
            readings.push_back({*rc::gen::element(std::string("A"), std::string("B")),
                                {},
                                static_cast<double>(*rc::gen::inRange(0, 4)),
                                *rc::gen::inRange(0, 5) * 1e-3});
        }
        const auto found = colourDecay(readings);
        RC_ASSERT(found.ok());
        for (const ColourDecay& decay : found->decays) {
            RC_ASSERT(!decay.perDay || std::isfinite(decay.perDay->value));
            RC_ASSERT(!decay.halfLifeDays || std::isfinite(decay.halfLifeDays->interval->high));
            RC_ASSERT(!decay.start || std::isfinite(decay.start->value));
            RC_ASSERT(decay.perDay.has_value() || !decay.remarks.empty());
        }
        for (const DecayDifference& difference : found->differences) {
            RC_ASSERT(std::isfinite(difference.p) && std::isfinite(difference.perDay.value));
        }
    }));
}

// Five readings over 120 days, errors of 5 %, k = 0.01: as a station's juices are.
TEST_CASE("limits of the decay hold the truth in 93 to 97 of 100 simulated storages") {
    std::mt19937_64 dice(77);
    const auto normal = [&dice] {
        const double u = (static_cast<double>(dice() >> 11) + 0.5) * 0x1p-53;
        const double v = (static_cast<double>(dice() >> 11) + 0.5) * 0x1p-53;
        return std::sqrt(-2 * std::log(u)) * std::cos(2 * std::numbers::pi * v);
    };
    constexpr int kStorages = 4000;
    int held = 0;
    for (int i = 0; i < kStorages; ++i) {
        std::vector<AbsorbanceReading> readings;
        for (int day = 0; day <= 120; day += 30) {
            readings.push_back({"A", {}, double(day), std::exp(-0.01 * day + 0.05 * normal())});
        }
        held += colourDecay(readings)->decays[0].perDay->interval->holds(0.01) ? 1 : 0;
    }
    CHECK(held > kStorages * 93 / 100);
    CHECK(held < kStorages * 97 / 100);
}
