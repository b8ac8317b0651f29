// What an accession's vines say together, over years, and against a reference.
#include "core/season/onset_comparison.hpp"

#include "known_onsets.hpp"

#include "core/statistics/distributions.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace bullace;
using namespace bullace::season;

namespace {

std::vector<YearOnset> yearly(const std::vector<KnownOnset>& known, std::string_view group) {
    std::vector<YearOnset> onsets;
    for (const KnownOnset& one : known) {
        if (one.group == group) {
            onsets.push_back({one.year, one.onset});
        }
    }
    return onsets;
}

double uniform(std::mt19937_64& engine) {
    return (static_cast<double>(engine() >> 11) + 0.5) / 9007199254740992.0;
}

// Vines of an accession around a mean, visited every 4 days.
std::vector<YearOnset> seen(std::mt19937_64& engine, const std::vector<double>& means, int vines) {
    std::vector<YearOnset> onsets;
    int year = 2020;
    for (const double mean : means) {
        for (int vine = 0; vine < vines; ++vine) {
            const double day = mean + 3 * statistics::normalQuantile(uniform(engine));
            const double by = 4 * std::ceil(day / 4);
            onsets.push_back({year, {by - 4, by}});
        }
        ++year;
    }
    return onsets;
}

} // namespace

TEST_CASE("three laws and the steps stand beside one another") {
    const auto summary = summariseOnset(onsetsOf(kBloom, "Acc1"));
    REQUIRE(summary.ok());
    CHECK(summary->laws.size() == 3);
    CHECK(summary->counts.within == 16);
    REQUIRE(summary->half.has_value());
    CHECK(summary->half->after == 159);
    const LawEstimate* normal = summary->of(OnsetLaw::Normal);
    const LawEstimate* logNormal = summary->of(OnsetLaw::LogNormal);
    REQUIRE(normal != nullptr);
    REQUIRE(logNormal != nullptr);
    CHECK(std::abs(normal->middle.value - logNormal->middle.value) < 0.5);
    CHECK(normal->middle.interval->holds(logNormal->middle.value));
    CHECK(logNormal->middle.interval->holds(normal->middle.value));
}

TEST_CASE("one visit, one vine, one interval: limits where there are any, a sentence else") {
    const auto one = summariseOnset(std::vector<OnsetInterval>{{150, 153}});
    REQUIRE(one.ok());
    CHECK(one->laws.empty());
    CHECK_FALSE(one->limits.has_value());
    CHECK(one->remarks.size() == 1);
    CHECK(one->half->by == 153);
    const auto same = summariseOnset(std::vector<OnsetInterval>(6, {150, 153}));
    REQUIRE(same.ok());
    CHECK(same->laws.empty());
    CHECK(same->remarks.size() == 1);
    REQUIRE(same->limits.has_value());
    CHECK(same->limits->low < 150.5);
    CHECK(same->limits->high > 152.5);
    const auto none = summariseOnset({});
    REQUIRE(none.ok());
    CHECK(none->remarks.size() == 1);
}

// The mean dates over both years, by R 4.2.2's survival 3.5.3 for three accessions with one spread;
// alone each accession has a spread of its own, so the means are near and not the same.
TEST_CASE("the mean over years counts each year the same") {
    const auto over = overYears(yearly(kBloom, "Acc1"));
    REQUIRE(over.ok());
    REQUIRE(over->mean.has_value());
    CHECK(over->years == std::vector<int>{2021, 2022});
    CHECK(std::abs(over->mean->value - 159.911572797528) < 0.3);
    REQUIRE(over->yearly.size() == 2);
    CHECK((over->yearly[0].second.value + over->yearly[1].second.value) / 2 ==
          doctest::Approx(over->mean->value));
    CHECK(over->mean->interval->holds(159.911572797528));
    CHECK(over->betweenYears.value() > 0);
}

TEST_CASE("a year that does not bound the date is named and left out") {
    std::vector<YearOnset> onsets = yearly(kBloom, "Acc1");
    onsets.push_back({2023, {-kOpen, 150}});
    onsets.push_back({2023, {-kOpen, 152}});
    onsets.push_back({2024, {}});
    const auto over = overYears(onsets);
    REQUIRE(over.ok());
    CHECK(over->leftOut == std::vector<int>{2023, 2024});
    CHECK(over->remarks.size() == 2);
    CHECK(over->mean->value == doctest::Approx(overYears(yearly(kBloom, "Acc1"))->mean->value));
    CHECK(overYears({})->remarks.size() == 1);
}

TEST_CASE("a difference is in days, earlier is below 0, and its words give its limits") {
    const auto made = differenceTo(yearly(kBloom, "Acc2"), yearly(kBloom, "Acc1"));
    REQUIRE(made.ok());
    REQUIRE(made->difference.has_value());
    // -4.797 ± 0.807 with all three accessions in one fit.
    CHECK(std::abs(made->difference->value + 4.797) < 0.3);
    CHECK(made->difference->interval->high < 0);
    CHECK(made->sameEveryYearP.has_value());
    const std::string words = inEnglish(inWords(*made->difference, OnsetUnit::Days));
    CAPTURE(words);
    CHECK(words.find("days earlier, 95 %: ") != std::string::npos);
    const auto back = differenceTo(yearly(kBloom, "Acc1"), yearly(kBloom, "Acc2"));
    CHECK(back->difference->value == doctest::Approx(-made->difference->value));
    CHECK(back->difference->interval->low ==
          doctest::Approx(-made->difference->interval->high).epsilon(1e-6));
    CHECK(inEnglish(inWords({-9, 1.5, statistics::Interval{-12, -6}}, OnsetUnit::Days)) ==
          "9.0 days earlier, 95 %: 6.0 to 12.0.");
    CHECK(inEnglish(inWords({40, 15, statistics::Interval{-10, 90}}, OnsetUnit::DegreeDays)) ==
          "40.0 degree-days later, 95 %: -10.0 to 90.0.");
}

TEST_CASE("a known difference over years is found, and one that changes with the year is told") {
    std::mt19937_64 engine(5);
    const std::vector<YearOnset> reference = seen(engine, {150, 158, 147}, 12);
    const auto steady = differenceTo(seen(engine, {141, 149, 138}, 12), reference);
    REQUIRE(steady->difference.has_value());
    CHECK(steady->difference->interval->holds(-9));
    CHECK(*steady->sameEveryYearP > 0.05);
    const auto changing = differenceTo(seen(engine, {141, 158, 156}, 12), reference);
    REQUIRE(changing->difference.has_value());
    CHECK(*changing->sameEveryYearP < 0.001);
    CHECK_FALSE(changing->remarks.empty());
}

TEST_CASE("without a shared year, or a spread, there is a sentence or there are bounds") {
    const std::vector<YearOnset> one{{2020, {150, 153}}, {2020, {150, 153}}, {2020, {150, 153}}};
    const std::vector<YearOnset> other{{2021, {150, 153}}};
    const auto apart = differenceTo(one, other);
    REQUIRE(apart.ok());
    CHECK_FALSE(apart->difference.has_value());
    CHECK(apart->leftOut == std::vector<int>{2020, 2021});
    CHECK(apart->remarks.size() == 3);
    const std::vector<YearOnset> later{{2020, {157, 160}}, {2020, {157, 160}}, {2020, {157, 160}}};
    const auto bounded = differenceTo(later, one);
    REQUIRE(bounded.ok());
    CHECK_FALSE(bounded->difference.has_value());
    REQUIRE(bounded->bounds.has_value());
    CHECK(bounded->bounds->holds(7));
    CHECK(bounded->bounds->low < 4.1);
    CHECK(bounded->bounds->high > 9.9);
}

TEST_CASE("the same dates in degree-days go through the year's own curve") {
    HeatCurve curve{2021, {}};
    for (int day = 100; day <= 170; ++day) { // 10 a day, 0 on day 156
        const double before = curve.days.empty() ? 0 : curve.days.back().sum;
        const double heat = day == 156 ? 0 : 10;
        curve.days.push_back({dateOfSeason(day, 2021), heat, before + heat});
    }
    const std::vector<YearOnset> onsets{{2021, {150, 154}},
                                        {2021, {155, 156}},
                                        {2021, {-kOpen, 99}},
                                        {2021, {165, 171}},
                                        {2021, {165, kOpen}},
                                        {2022, {150, 154}}};
    const OnHeat heat = onHeat(onsets, std::vector<HeatCurve>{curve});
    REQUIRE(heat.onsets.size() == 4);
    CHECK(heat.leftOut == 2);
    CHECK(heat.remarks.size() == 1);
    CHECK(heat.onsets[0].onset == OnsetInterval{510, 550});
    CHECK(heat.onsets[1].onset.isExact()); // no heat passed between these visits
    CHECK(heat.onsets[2].onset == OnsetInterval{-kOpen, 0});
    CHECK(heat.onsets[3].onset == OnsetInterval{650, kOpen});
}
