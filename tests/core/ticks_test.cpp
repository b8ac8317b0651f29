// Round numbers and dates along an axis.
#include "core/report/ticks.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace bullace;
using namespace bullace::report;

namespace {

CivilDate day(const char* text) {
    return *readDate(text);
}

std::vector<std::string> written(const std::vector<DateTick>& ticks) {
    std::vector<std::string> dates;
    for (const DateTick& tick : ticks) {
        dates.push_back(writeDate(tick.date));
    }
    return dates;
}

} // namespace

TEST_CASE("steps are one, two or five times a power of ten") {
    CHECK(roundStep(100, 5) == doctest::Approx(20));
    CHECK(roundStep(100, 4) == doctest::Approx(50));
    CHECK(roundStep(35, 7) == doctest::Approx(5));
    CHECK(roundStep(0.7, 7) == doctest::Approx(0.1));
    CHECK(roundStep(6, 5) == doctest::Approx(2));
    CHECK(roundStep(0, 5) == 1);
    CHECK(roundStep(std::numeric_limits<double>::infinity(), 5) == 1);
}

TEST_CASE("ticks lie within the axis, on whole multiples of the step") {
    const Ticks brix = ticksWithin(13.2, 19.8, 5);
    CHECK(brix.at == std::vector<double>{14, 16, 18});
    CHECK(brix.decimals == 0);
    const Ticks small = ticksWithin(0.05, 0.34, 6);
    REQUIRE(small.at.size() == 6);
    CHECK(small.at[0] == doctest::Approx(0.05));
    CHECK(small.at[5] == doctest::Approx(0.3));
    CHECK(small.decimals == 2);
    const Ticks cold = ticksWithin(-22, 3, 5);
    CHECK(cold.at == std::vector<double>{-20, -15, -10, -5, 0});
    CHECK_FALSE(std::signbit(cold.at.back()));
    CHECK(ticksWithin(3, -22, 5).at == cold.at);
}

TEST_CASE("an axis without length has one tick, and one that is not finite has none") {
    CHECK(ticksWithin(7, 7, 5).at == std::vector<double>{7});
    CHECK(ticksWithin(std::nan(""), 7, 5).at.empty());
    CHECK(ticksWithin(0, std::numeric_limits<double>::infinity(), 5).at.empty());
}

TEST_CASE("limits lie around all values, in at most the steps asked for") {
    CHECK(ticksAround(3, 61, 7).at == std::vector<double>{0, 10, 20, 30, 40, 50, 60, 70});
    for (double least = -3.7; least < 40; least += 1.3) {
        for (double range = 0.02; range < 3000; range *= 3.1) {
            CAPTURE(least);
            CAPTURE(range);
            const Ticks ticks = ticksAround(least, least + range, 7);
            REQUIRE(ticks.at.size() >= 2);
            CHECK(ticks.at.size() <= 8);
            CHECK(ticks.at.front() <= least + 1e-9);
            CHECK(ticks.at.back() >= least + range - 1e-9);
        }
    }
    const Ticks one = ticksAround(12, 12, 7);
    CHECK(one.at.front() < 12);
    CHECK(one.at.back() > 12);
}

TEST_CASE("a week is marked by days, a season by months, ten years by years") {
    CHECK(written(dateTicks(day("2026-05-04"), day("2026-05-07"), 8)) ==
          std::vector<std::string>{"2026-05-04", "2026-05-05", "2026-05-06", "2026-05-07"});
    CHECK(written(dateTicks(day("2026-05-01"), day("2026-06-10"), 8)) ==
          std::vector<std::string>{
              "2026-05-04", "2026-05-11", "2026-05-18", "2026-05-25", "2026-06-01", "2026-06-08"});
    CHECK(written(dateTicks(day("2026-03-10"), day("2026-09-20"), 8)) ==
          std::vector<std::string>{
              "2026-04-01", "2026-05-01", "2026-06-01", "2026-07-01", "2026-08-01", "2026-09-01"});
    const auto years = dateTicks(day("2016-02-01"), day("2026-02-01"), 12);
    CHECK(years.size() == 10);
    CHECK(years.front().isMonth);
    CHECK(dateTicks(day("2026-05-04"), day("2026-05-03"), 8).empty());
    CHECK(dateTicks(day("1900-01-01"), day("2100-01-01"), 5).size() == 5);
}
