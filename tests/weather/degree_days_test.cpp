// Degree-days and chill against published tables.
#include "core/weather/degree_days.hpp"

#include "core/weather/chill.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <vector>

using namespace bullace;
using namespace bullace::weather;
using Method = DegreeDayMethod;

namespace {

CivilDate day(const char* text) {
    const auto read = readDate(text);
    REQUIRE(read.has_value());
    return *read;
}

double heat(Method method,
            double least,
            double greatest,
            const Thresholds& thresholds,
            std::optional<double> next = {}) {
    const auto made = degreeDays(method, least, greatest, next, thresholds);
    REQUIRE(made.ok());
    return *made;
}

bool isNear(double value, double expected, double within) {
    return std::abs(value - expected) <= within;
}

} // namespace

// Zalom, Goodell, Wilson, Barnett & Bentley 1983, UC DANR Leaflet 21373, Table 7: 55 and 90 °F,
// printed to 0.01. The table prints 24.88 for the double triangle of case 5; by exact integration
// it is 27.125, which stands here.
TEST_CASE("degree-days of all six cases by four methods are those of Zalom and others 1983") {
    struct Case {
        double least, greatest, next, triangle, doubleTriangle, sine, doubleSine;
    };
    const Case cases[] = {{96, 110, 91, 35, 35, 35, 35},
                          {45, 54, 38, 0, 0, 0, 0},
                          {60, 80, 75, 15, 18.75, 15, 18.75},
                          {50, 82, 45, 11.39, 10.62, 11.85, 11.31},
                          {60, 100, 75, 23.75, 27.125, 22.82, 26.26},
                          {50, 101, 48, 19.56, 19.19, 18.95, 18.69}};
    const Thresholds both{55, 90};
    for (const Case& one : cases) {
        CAPTURE(one.least);
        const auto by = [&](Method method) {
            return heat(method, one.least, one.greatest, both, one.next);
        };
        CHECK(isNear(by(Method::SingleTriangle), one.triangle, 0.006));
        CHECK(isNear(by(Method::DoubleTriangle), one.doubleTriangle, 0.006));
        CHECK(isNear(by(Method::SingleSine), one.sine, 0.006));
        CHECK(isNear(by(Method::DoubleSine), one.doubleSine, 0.006));
    }
}

// McMaster & Wilhelm 1997, Agric. For. Meteorol. 87:291-300, Table 1: base 0 °C.
TEST_CASE("both ways of clamping a mean are those of McMaster and Wilhelm 1997") {
    const double greatest[] = {20, 10, 8, 6, 10, 5, -2, -5, 10, 15};
    const double least[] = {10, 1, -2, 0, 5, -5, -7, -10, -2, 2};
    const double first[] = {15, 5.5, 3, 3, 7.5, 0, 0, 0, 4, 8.5};
    const double second[] = {15, 5.5, 4, 3, 7.5, 2.5, 0, 0, 5, 8.5};
    for (std::size_t i = 0; i < std::size(least); ++i) {
        CHECK(heat(Method::MeanClamped, least[i], greatest[i], {0, {}}) == first[i]);
        CHECK(heat(Method::LimitsClamped, least[i], greatest[i], {0, {}}) == second[i]);
    }
}

// Twelve days of an invented year with values of R 4.2.2 (the sine with its upper threshold by
// numerical integration): base 10, upper 32 °C; average as McMaster & Wilhelm 1997 method 1 without
// the upper threshold, average_capped their method 2.
TEST_CASE("five methods agree with an independent computation") {
    struct Case {
        double least, greatest, average, capped, sine, sineUpper, triangleUpper;
    };
    const Case cases[] = {
        {5.4, 18.3, 1.85, 4.15, 3.0631433821281, 3.0631433821281, 2.67015503875969},
        {-0.8, 11.3, 0, 0.65, 0.182860591383145, 0.182860591383145, 0.0698347107438017},
        {10.9, 25.5, 8.2, 8.2, 8.2, 8.2, 8.2},
        {21.8, 32.3, 17.05, 16.9, 17.05, 17.0284162608263, 17.0457142857143},
        {21.1, 33, 17.05, 16.55, 17.05, 16.9259058232456, 17.0079831932773},
        {-3.1, 10.1, 0, 0.05, 0.00369684794598014, 0.00369684794598014, 0.000378787878787876}};
    for (const Case& one : cases) {
        CAPTURE(one.least);
        const auto by = [&one](Method method, const Thresholds& thresholds) {
            return heat(method, one.least, one.greatest, thresholds);
        };
        CHECK(isNear(by(Method::MeanClamped, {10, {}}), one.average, 1e-10));
        CHECK(isNear(by(Method::LimitsClamped, {10, 32}), one.capped, 1e-10));
        CHECK(isNear(by(Method::SingleSine, {10, {}}), one.sine, 1e-10));
        CHECK(isNear(by(Method::SingleSine, {10, 32}), one.sineUpper, 1e-10));
        CHECK(isNear(by(Method::SingleTriangle, {10, 32}), one.triangleUpper, 1e-10));
    }
}

TEST_CASE(
    "no method leaves its bounds: heat lies between nothing and the range of the thresholds") {
    for (double least = -10; least <= 40; least += 3.7) {
        for (double greatest = least; greatest <= 50; greatest += 4.1) {
            for (const Method method : {Method::MeanClamped,
                                        Method::LimitsClamped,
                                        Method::SingleTriangle,
                                        Method::DoubleTriangle,
                                        Method::SingleSine,
                                        Method::DoubleSine}) {
                const double made = heat(method, least, greatest, {10, 30}, least + 1);
                CHECK(made >= -1e-12);
                CHECK(made <= 20 + 1e-12);
            }
        }
    }
}

TEST_CASE("a reversed day, thresholds the wrong way round and a lacking next day are refused") {
    const auto code = [](const Result<double>& made) {
        return made.ok() ? ErrorCode::Internal : made.error().code;
    };
    CHECK(code(degreeDays(Method::SingleSine, 20, 10, {}, {10, {}})) == ErrorCode::InvalidInput);
    CHECK(code(degreeDays(Method::SingleSine, 10, 20, {}, {10, 10})) == ErrorCode::InvalidInput);
    CHECK(code(degreeDays(Method::DoubleSine, 10, 20, {}, {10, {}})) == ErrorCode::InvalidInput);
    CHECK(code(degreeDays(Method::SingleSine, NAN, 20, {}, {10, {}})) == ErrorCode::InvalidInput);
}

TEST_CASE("a sum ends where a gap begins, and every gap is named") {
    const std::vector<DayTemperatures> days{{day("2025-04-01"), 10, 20},
                                            {day("2025-04-02"), 12, 22},
                                            {day("2025-04-03"), {}, 22},
                                            {day("2025-04-06"), 12, 22},
                                            {day("2025-04-07"), 12, 22}};
    const auto sum = heatSum(Method::MeanClamped, days, {10, {}});
    REQUIRE(sum.ok());
    REQUIRE(sum->days.size() == 2);
    CHECK(sum->days.back().sum == 12);
    REQUIRE(sum->gaps.size() == 1);
    CHECK(sum->gaps.front().first == day("2025-04-03"));
    CHECK(sum->gaps.front().last == day("2025-04-05"));
    const std::vector<DayTemperatures> twice{{day("2025-04-01"), 10, 20},
                                             {day("2025-04-01"), 10, 20}};
    CHECK_FALSE(heatSum(Method::MeanClamped, twice, {10, {}}).ok());
}

// Fishman, Erez & Couvillon 1987; Erez et al. 1990: two independent computations of the recursion,
// not printed in a paper, agree in these to 1e-8; chill hours and Utah units likewise.
TEST_CASE("chill of constant and of swinging winters is that of the published models") {
    struct Case {
        double celsius, portions;
        int hours;
        double utah;
    };
    for (const Case& one : {Case{0, 3.32731375, 720, 0},
                            Case{2, 18.71969308, 720, 360},
                            Case{6, 24.43256441, 720, 720},
                            Case{10, 23.31302801, 0, 360},
                            Case{12, 18.00111161, 0, 360},
                            Case{13, 0, 0, 0}}) {
        const std::vector<double> hourly(720, one.celsius);
        CAPTURE(one.celsius);
        CHECK(isNear(chillPortions(hourly), one.portions, 1e-6));
        CHECK(chillHoursBetween(hourly) == one.hours);
        CHECK(utahUnits(hourly) == one.utah);
    }
    std::vector<double> swinging;
    std::vector<double> halfWarm;
    for (int hour = 0; hour < 720; ++hour) {
        swinging.push_back(7 + 5 * std::sin(2 * std::numbers::pi * hour / 24));
        halfWarm.push_back(hour % 24 < 16 ? 6 : 13);
    }
    CHECK(isNear(chillPortions(swinging), 20.47628334, 1e-6));
    CHECK(chillHoursBetween(swinging) == 390);
    CHECK(utahUnits(swinging) == 540);
    CHECK(isNear(chillPortions(halfWarm), 22.35024110, 1e-6));
    CHECK(chillHoursBelow(halfWarm) == 480);
    CHECK(chillPortions({}) == 0);
}

// Richardson, Seeley & Walker 1974, HortScience 9:331-332: each limit belongs to the step below it.
TEST_CASE("Utah units change where the table says") {
    const double celsius[] = {1.3, 1.4, 1.5, 2.4, 2.5, 9.1, 9.2, 12.4, 12.5, 15.9, 16, 18, 18.1};
    const double units[] = {0, 0, 0.5, 0.5, 1, 1, 0.5, 0.5, 0, 0, -0.5, -0.5, -1};
    for (std::size_t i = 0; i < std::size(celsius); ++i) {
        CHECK(utahUnit(celsius[i]) == units[i]);
    }
}

// Anderson, Richardson & Kesner 1986, Acta Hortic. 184:71-78; Spencer 1971 and Almorox and others
// 2005 for the length of the day at 34 degrees north.
TEST_CASE("growing degree hours and the length of the day are those of their sources") {
    const double celsius[] = {10, 14.5, 20, 25, 30, 36};
    const double hours[] = {3.95335708, 10.5, 18.19704465, 21, 7.24792459, 0};
    for (std::size_t i = 0; i < std::size(celsius); ++i) {
        CHECK(isNear(growingDegreeHour(celsius[i]), hours[i], 1e-6));
    }
    const int days[] = {15, 80, 172, 266, 355};
    const double lengths[] = {10.1187, 12.1281, 14.4218, 12.1564, 9.8872};
    for (std::size_t i = 0; i < std::size(days); ++i) {
        CHECK(isNear(dayLengthHours(34, days[i]), lengths[i], 1e-4));
    }
    CHECK(dayLengthHours(80, 172) == 24);
    CHECK(dayLengthHours(80, 355) == 0);
}
