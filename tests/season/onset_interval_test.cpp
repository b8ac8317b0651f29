// What visits say about a vine's date: both people's values bound it, and nothing is guessed.
#include "known_onsets.hpp"

#include "core/season/vine_seasons.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::season;
using Kind = StageReading::Kind;

namespace {

StageReading stage(const char* day, double code, Organs organs = Organs::MostAdvanced) {
    return {*readDate(day), Kind::Stage, code, organs};
}
StageReading percent(const char* day, double value) {
    return {*readDate(day), Kind::Percent, value, Organs::MostAdvanced};
}
OnsetInterval bloom(const std::vector<StageReading>& readings) {
    return onsetOf(readings, {65, 50.0}, 2026).days;
}

} // namespace

TEST_CASE(
    "a date lies after the last visit before the stage and by the first visit at or past it") {
    CHECK(dayOfSeason(*readDate("2026-01-01"), 2026) == 1);
    CHECK(dayOfSeason(*readDate("2027-01-05"), 2026) == 370);
    CHECK(writeDate(dateOfSeason(150.4, 2026)) == "2026-05-30");
    const std::vector<StageReading> readings{
        stage("2026-06-02", 69), stage("2026-05-20", 57), stage("2026-05-27", 61)};
    CHECK(bloom(readings) == OnsetInterval{147, 153});
    CHECK(bloom({stage("2026-05-27", 65)}) == OnsetInterval{-kOpen, 147});
    CHECK(bloom({stage("2026-05-27", 64)}) == OnsetInterval{147, kOpen});
    CHECK(bloom({}).isUnseen());
    CHECK(countsOf(std::vector<OnsetInterval>{bloom({stage("2026-05-27", 65)})}).left == 1);
}

TEST_CASE("a percentage sharpens the date where it is asked for, and only there") {
    const std::vector<StageReading> readings{stage("2026-05-20", 57),
                                             percent("2026-05-25", 20),
                                             percent("2026-05-28", 60),
                                             stage("2026-06-02", 69)};
    CHECK(bloom(readings) == OnsetInterval{145, 148});
    CHECK(onsetOf(readings, {65, {}}, 2026).days == OnsetInterval{140, 153});
    CHECK(onsetOf(readings, {61, 10.0}, 2026).days == OnsetInterval{140, 145});
}

TEST_CASE("where two people differ at a visit both bound the date") {
    const std::vector<StageReading> readings{stage("2026-05-20", 57),
                                             stage("2026-05-25", 61),
                                             stage("2026-05-25", 65),
                                             stage("2026-05-30", 68)};
    const VineOnset onset = onsetOf(readings, {65, {}}, 2026);
    CHECK(onset.days == OnsetInterval{140, 150});
    CHECK(onset.divided == 1);
    CHECK_FALSE(onset.runsBack);
    // Both below, or both past it: they agree on what is asked.
    CHECK(onsetOf(readings, {61, {}}, 2026).days == OnsetInterval{140, 145});
}

TEST_CASE("a stage that runs back widens the date and is told") {
    const std::vector<StageReading> readings{stage("2026-05-20", 57),
                                             stage("2026-05-25", 65),
                                             stage("2026-05-28", 61),
                                             stage("2026-06-02", 69)};
    const VineOnset onset = onsetOf(readings, {65, {}}, 2026);
    CHECK(onset.days == OnsetInterval{140, 153});
    CHECK(onset.runsBack);
}

TEST_CASE("a further visit never widens a date that runs forward, and the date stays inside") {
    CHECK(rc::check("more visits, narrower dates", [] {
        const double truth = 120 + 0.5 + *rc::gen::inRange(0, 60);
        const auto visits = *rc::gen::container<std::vector<int>>(rc::gen::inRange(110, 190));
        std::vector<StageReading> readings;
        double width = kOpen;
        for (const int day : visits) {
            readings.push_back({dateOfSeason(day, 2026),
                                Kind::Stage,
                                day > truth ? 65.0 : 57.0,
                                Organs::MostAdvanced});
            const OnsetInterval onset = onsetOf(readings, {65, {}}, 2026).days;
            RC_ASSERT(onset.after < truth);
            RC_ASSERT(onset.by > truth);
            RC_ASSERT(onset.by - onset.after <= width);
            width = onset.by - onset.after;
        }
    }));
}

TEST_CASE("everbearing vines stand apart with both of their dates") {
    const std::vector<VineReadings> vines{
        {"A", "B1-01-01", 2026, {stage("2026-05-20", 57), stage("2026-05-25", 65)}},
        {"A",
         "B1-01-02",
         2026,
         {stage("2026-05-20", 65),
          stage("2026-05-20", 57, Organs::LeastAdvanced),
          stage("2026-07-01", 81),
          stage("2026-07-01", 65, Organs::LeastAdvanced)}},
        {"A", "B1-01-01", 2026, {stage("2026-05-23", 61)}}};
    const auto seasons = seasonsOf(vines, {65, {}});
    REQUIRE(seasons.size() == 1);
    REQUIRE(seasons[0].onsets.size() == 1);
    CHECK(seasons[0].onsets[0] == OnsetInterval{143, 145});
    REQUIRE(seasons[0].everbearingMost.size() == 1);
    CHECK(seasons[0].everbearingMost[0] == OnsetInterval{-kOpen, 140});
    CHECK(seasons[0].everbearingLeast[0] == OnsetInterval{140, 182});
    CHECK(seasons[0].remarks.size() == 1);
}

TEST_CASE("a length lies between the nearest and the furthest ends of two dates") {
    CHECK(lengthBetween({140, 143}, {150, 155}) == OnsetInterval{7, 15});
    CHECK(lengthBetween({140, 143}, {142, 155}) == OnsetInterval{0, 15});
    CHECK(lengthBetween({-kOpen, 143}, {150, 155}) == OnsetInterval{7, kOpen});
    CHECK(lengthBetween({140, 143}, {150, kOpen}) == OnsetInterval{7, kOpen});
    CHECK(lengthBetween({-kOpen, 143}, {-kOpen, 155}).isUnseen());
    CHECK(lengthBetween({150, 153}, {140, 142}).isUnseen());
    const std::vector<VineReadings> vines{{"A",
                                           "B1-01-01",
                                           2026,
                                           {stage("2026-05-20", 57),
                                            stage("2026-05-25", 61),
                                            stage("2026-06-01", 68),
                                            stage("2026-06-04", 69)}}};
    const auto lengths = lengthsOf(vines, {61, {}}, {69, {}});
    REQUIRE(lengths.size() == 1);
    CHECK(lengths[0].onsets[0] == OnsetInterval{7, 15});
}
