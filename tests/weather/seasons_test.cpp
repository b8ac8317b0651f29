// Frosts, freezes, hours, cold, the Winkler index and the band of other years; and all of it over
// the 22 years of one station, which are read from beside the project.
#include "core/weather/chill.hpp"
#include "core/weather/frosts.hpp"
#include "core/weather/heat_band.hpp"
#include "core/weather/hourly.hpp"
#include "core/weather/winkler.hpp"
#include "support/check_file.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::weather;
using test::checkFile;

namespace {

CivilDate day(const char* text) {
    return *readDate(text);
}

// Every day of a period with the same extremes.
DailyDays steady(const char* first, const char* last, double least, double greatest) {
    DailyDays record;
    for (CivilDate date = day(first); date <= day(last); date = addDays(date, 1)) {
        record[date] = {greatest, least, {}, {}};
    }
    return record;
}

} // namespace

TEST_CASE("days of a period are all there, and gaps and reversed days are named") {
    DailyDays record = steady("2020-01-01", "2020-01-10", -2, 8);
    record.erase(day("2020-01-04"));
    record.erase(day("2020-01-05"));
    record[day("2020-01-08")] = {-3, 9, {}, {}};
    const PeriodDays made = daysOf(record, {day("2020-01-01"), day("2020-01-12")});
    CHECK(made.days.size() == 12);
    REQUIRE(made.gaps.size() == 3);
    CHECK(made.gaps[0].last == day("2020-01-05"));
    CHECK(made.gaps[1].first == day("2020-01-08"));
    CHECK(made.gaps[2].first == day("2020-01-11"));
    CHECK(made.reversed == std::vector<CivilDate>{day("2020-01-08")});
    CHECK(made.remarks.size() == 4);
    CHECK(daysOf(record, {day("2020-02-01"), day("2020-01-01")}).days.empty());
}

TEST_CASE("a July of 30 °C read as °F is doubted, and so is one of 86 read as °C") {
    const auto days =
        daysOf(steady("2020-07-01", "2020-07-31", 20, 30), {day("2020-07-01"), day("2020-07-31")})
            .days;
    CHECK(guessUnit(days, Hemisphere::North) == TemperatureUnit::Celsius);
    CHECK(doubtUnit(days, TemperatureUnit::Fahrenheit, Hemisphere::North).has_value());
    CHECK_FALSE(doubtUnit(days, TemperatureUnit::Celsius, Hemisphere::North).has_value());
    const auto hot =
        daysOf(steady("2020-07-01", "2020-07-31", 68, 86), {day("2020-07-01"), day("2020-07-31")})
            .days;
    CHECK(guessUnit(hot, Hemisphere::North) == TemperatureUnit::Fahrenheit);
    CHECK(doubtUnit(hot, TemperatureUnit::Celsius, Hemisphere::North).has_value());
    // A winter alone of 30 could be either.
    const auto winter =
        daysOf(steady("2020-01-01", "2020-01-31", 20, 30), {day("2020-01-01"), day("2020-01-31")})
            .days;
    CHECK_FALSE(guessUnit(winter, Hemisphere::North).has_value());
    CHECK(guessUnit(winter, Hemisphere::South) == TemperatureUnit::Celsius);
}

// Linvill 1990, HortScience 25:14-16, worked by hand for a day of 12.1281 h (34° north, day 80:
// Spencer 1971): sunrise 5.93595 h, sunset 18.06405 h.
TEST_CASE("hours follow Linvill's sine by day and logarithm by night") {
    std::vector<DayTemperatures> days;
    for (int i = 0; i < 3; ++i) {
        days.push_back({addDays(day("2021-03-20"), i), 4.0, 20.0});
    }
    const auto runs = hourlyFromExtremes(34.0, days); // 21 March is day 80
    REQUIRE(runs.ok());
    REQUIRE(runs->size() == 1);
    REQUIRE(runs->front().celsius.size() == 72);
    const auto hour = [&](int at) {
        return runs->front().celsius[static_cast<std::size_t>(24 + at)];
    };
    // 4 + 16 sin(π (12 - 5.93595)/16.1281) = 4 + 16 · 0.925071
    CHECK(std::abs(hour(12) - 18.8011) < 0.0005);
    CHECK(std::abs(hour(14) - 20) < 0.01); // the peak is two hours behind noon
    // At sunset 4 + 16 sin(π · 12.1281/16.1281) = 15.2429; at 22 h, 3.93595 h later, of a night
    // of 11.8541 h (day 81 has 12.1636): 15.2429 - 11.2429 · ln(4.93595)/ln(12.8541) = 8.2139.
    CHECK(std::abs(hour(22) - 8.2139) < 0.0005);
    CHECK(hour(6) < 4.4);
    CHECK(*std::ranges::min_element(runs->front().celsius) >= 3.9);
}

TEST_CASE("hours stay between the extremes, and a gap ends a run") {
    CHECK(rc::check("between the extremes", [] {
        std::vector<DayTemperatures> days;
        for (int i = 0; i < 6; ++i) {
            const double least = *rc::gen::inRange(-200, 200) / 10.0;
            days.push_back(
                {addDays(day("2021-02-20"), i), least, least + *rc::gen::inRange(0, 250) / 10.0});
        }
        const auto runs = hourlyFromExtremes(*rc::gen::inRange(-60, 60), days);
        RC_ASSERT(runs.ok());
        for (std::size_t i = 0; i < 144; ++i) {
            // A night goes from one day's evening to the next day's least.
            const std::size_t at = i / 24;
            double low = *days[at].least;
            double high = *days[at].greatest;
            for (const std::size_t near :
                 {at == 0 ? at : at - 1, std::min<std::size_t>(at + 1, 5)}) {
                low = std::min(low, *days[near].least);
                high = std::max({high, *days[near].greatest, *days[near].least});
            }
            RC_ASSERT(runs->front().celsius[i] >= low - 1e-9);
            RC_ASSERT(runs->front().celsius[i] <= high + 1e-9);
        }
    }));
    std::vector<DayTemperatures> days{{day("2021-01-01"), 1.0, 9.0},
                                      {day("2021-01-02"), {}, 9.0},
                                      {day("2021-01-03"), 1.0, 9.0},
                                      {day("2021-01-06"), 1.0, 9.0}};
    CHECK(hourlyFromExtremes(34, days)->size() == 3);
    days[2].least = 10;
    CHECK(hourlyFromExtremes(34, days).error().message.find("2021-01-03") != std::string::npos);
    days[2].least = 1;
    days[3].day = day("2021-01-03");
    CHECK_FALSE(hourlyFromExtremes(34, days).ok());
    CHECK_FALSE(
        hourlyFromExtremes(80, std::vector<DayTemperatures>{{day("2021-06-21"), 1.0, 9.0}}).ok());
    CHECK_FALSE(
        hourlyFromExtremes(NAN, std::vector<DayTemperatures>{{day("2021-06-21"), 1.0, 9.0}}).ok());
}

TEST_CASE("a winter with a lacking day has no sum of cold") {
    DailyDays record = steady("2020-11-01", "2021-02-28", 6, 6);
    const Period winter{day("2020-11-01"), day("2021-02-28")};
    const auto chill = chillBetween(record, winter, 34);
    REQUIRE(chill.ok());
    REQUIRE(chill->sum.has_value());
    CHECK(chill->sum->hours == 120 * 24);
    CHECK(chill->sum->hoursBetween == 120 * 24);
    CHECK(chill->sum->utah == 120 * 24);
    CHECK(chill->sum->portions == doctest::Approx(chillPortions(std::vector<double>(2880, 6.0))));
    record.erase(day("2021-01-05"));
    const auto lacking = chillBetween(record, winter, 34);
    CHECK_FALSE(lacking->sum.has_value());
    REQUIRE(lacking->remarks.size() == 2);
    CHECK(inEnglish(lacking->remarks[0]).find("2021-01-05") != std::string::npos);
}

TEST_CASE("the last frost of spring and the first of autumn, and days on which one may have been") {
    DailyDays record = steady("2020-01-01", "2020-12-31", 5, 15);
    record[day("2020-03-02")].least = -1;
    record[day("2020-04-09")].least = 0;
    record[day("2020-10-30")].least = -0.5;
    record[day("2020-12-30")].least = -4;
    const FrostYear frosts = frostsOf(record, 2020, Hemisphere::North);
    CHECK(frosts.lastOfSpring == day("2020-04-09"));
    CHECK(frosts.firstOfAutumn == day("2020-10-30"));
    CHECK(frosts.daysBetweenThem == 203);
    CHECK(frosts.isSpringCertain);
    CHECK(frosts.isAutumnCertain);
    CHECK(frosts.remarks.empty());
    CHECK(frostsOf(record, 2020, Hemisphere::North, -3).lastOfSpring == std::nullopt);
    record[day("2020-04-20")].least.reset();
    const FrostYear doubtful = frostsOf(record, 2020, Hemisphere::North);
    CHECK(doubtful.lastOfSpring == day("2020-04-09"));
    CHECK_FALSE(doubtful.isSpringCertain);
    CHECK(doubtful.isAutumnCertain);
    CHECK(doubtful.remarks.size() == 1);
    CHECK_FALSE(frostsOf({}, 2020, Hemisphere::North).lastOfSpring.has_value());
}

TEST_CASE("each freeze has its days and its lowest temperature") {
    DailyDays record = steady("2020-01-01", "2020-02-28", 5, 15);
    record[day("2020-01-05")].least = -1;
    record[day("2020-01-06")].least = -7.5;
    record[day("2020-01-07")].least = 0;
    record[day("2020-02-10")].least = -2;
    record.erase(day("2020-02-11"));
    const auto freezes = freezesOf(record, {day("2020-01-01"), day("2020-02-28")});
    REQUIRE(freezes.size() == 2);
    CHECK(freezes[0].first == day("2020-01-05"));
    CHECK(freezes[0].last == day("2020-01-07"));
    CHECK(freezes[0].lowest == -7.5);
    CHECK(freezes[0].lowestOn == day("2020-01-06"));
    CHECK_FALSE(freezes[0].isBesideGap);
    CHECK(freezes[1].isBesideGap);
    CHECK(hoursAtOrBelow(std::vector<double>{-1, 0, 0.1, 5}, 0) == 2);
}

// Limits of Jones et al. 2010 and of Amerine & Winkler 1944.
TEST_CASE("a sum is classified in the unit it is in") {
    const auto c = TemperatureUnit::Celsius;
    const auto f = TemperatureUnit::Fahrenheit;
    CHECK(winklerClass(849.9, c) == WinklerClass::TooCool);
    CHECK(winklerClass(850, c) == WinklerClass::Ia);
    CHECK(winklerClass(1388, c) == WinklerClass::Ib);
    CHECK(winklerClass(1389, c) == WinklerClass::II);
    CHECK(winklerClass(2222, c) == WinklerClass::V);
    CHECK(winklerClass(2700, c) == WinklerClass::V);
    CHECK(winklerClass(2700.1, c) == WinklerClass::TooHot);
    CHECK(winklerClass(4860, f) == WinklerClass::V); // 2700 °C: the limits are no conversions
    CHECK(winklerClass(4901, f) == WinklerClass::TooHot);
    CHECK(winklerClass(2499, f) == WinklerClass::Ib);
    CHECK(winklerClass1944(2500) == 1);
    CHECK(winklerClass1944(2501) == 2);
    CHECK(winklerClass1944(4000) == 4);
    CHECK(winklerClass1944(4001) == 5);
    const DailyDays record = steady("2020-01-01", "2021-06-30", 10, 20);
    const WinklerSeason north = winklerOf(record, 2020, Hemisphere::North, c);
    CHECK(north.sum == doctest::Approx(5 * 214));
    CHECK(north.winklerClass == WinklerClass::Ia);
    CHECK(winklerOf(record, 2020, Hemisphere::South, f).sum == doctest::Approx(9 * 212));
    const WinklerSeason lacking = winklerOf(record, 2021, Hemisphere::North, c);
    CHECK_FALSE(lacking.sum.has_value());
    CHECK_FALSE(lacking.winklerClass.has_value());
    CHECK_FALSE(lacking.remarks.empty());
}

TEST_CASE("the band holds complete years alone and ranks them day by day") {
    DailyDays record;
    for (int year = 2015; year <= 2020; ++year) {
        const std::string text = std::to_string(year);
        record.merge(steady(
            (text + "-01-01").c_str(), (text + "-12-31").c_str(), 10, 10.0 + 2 * (year - 2014)));
    }
    record.erase(day("2017-05-05"));
    const SeasonSpan span{std::chrono::April / 1, 100};
    const auto band = heatBand(record, span, {DegreeDayMethod::MeanClamped, {10, {}}}, 2020);
    REQUIRE(band.ok());
    CHECK(band->incomplete == std::vector<int>{2017});
    REQUIRE(band->curves.size() == 4); // 1, 2, 4 and 5 degree-days a day
    REQUIRE(band->days.size() == 100);
    const BandDay& tenth = band->days[9];
    CHECK(tenth.least == doctest::Approx(10));
    CHECK(tenth.lowerQuartile == doctest::Approx(17.5));
    CHECK(tenth.median == doctest::Approx(30));
    CHECK(tenth.upperQuartile == doctest::Approx(42.5));
    CHECK(tenth.greatest == doctest::Approx(50));
    CHECK(heatBand(record, span, {DegreeDayMethod::DoubleSine, {10, {}}}, 2020)->curves.size() ==
          4);
    CHECK(heatBand(record, span, {}, {}, 2)->curves.size() == 2);
    CHECK(heatBand({}, span, {})->remarks.size() == 1);
    CHECK_FALSE(heatBand(record, {std::chrono::February / 29, 10}, {}).ok());
}

TEST_CASE(
    "the long record has frosts, cold and heat of each of its years, or names what is lacking") {
    const auto text = checkFile("ghcn-daily-south-2003-2024.dly");
    if (!text) {
        return;
    }
    const auto read = readGhcnDaily(*text);
    REQUIRE(read.ok());
    std::size_t complete = 0;
    std::size_t winters = 0;
    for (const int year : yearsOf(read->days)) {
        CAPTURE(year);
        const WinklerSeason season =
            winklerOf(read->days, year, Hemisphere::North, TemperatureUnit::Celsius);
        CHECK(season.sum.has_value() == season.days.isComplete());
        CHECK(season.days.gaps.size() + season.days.reversed.size() + (season.sum ? 0U : 1U) ==
              season.remarks.size());
        if (season.sum) {
            ++complete;
            CHECK(*season.sum > 2000);
            CHECK(*season.sum < 2800);
        }
        const FrostYear frosts = frostsOf(read->days, year, Hemisphere::North);
        if (frosts.isSpringCertain && frosts.isAutumnCertain && frosts.lastOfSpring) {
            CHECK(read->days.at(*frosts.lastOfSpring).least.value() <= 0);
            CHECK(frosts.lastOfSpring > std::chrono::year(year) / 2 / 1);
            CHECK(frosts.lastOfSpring < std::chrono::year(year) / 5 / 10);
        }
        const Period winter{std::chrono::year(year) / 11 / 1, std::chrono::year(year + 1) / 2 / 28};
        const auto chill = chillBetween(read->days, winter, 34);
        REQUIRE(chill.ok());
        CHECK(chill->sum.has_value() == chill->days.isComplete());
        if (chill->sum) {
            ++winters;
            CHECK(chill->sum->hoursBelow >= chill->sum->hoursBetween);
            CHECK(chill->sum->portions > 30);
            CHECK(chill->sum->portions < 100);
        }
    }
    CHECK(complete >= 5);
    CHECK(winters >= 3);
    MESSAGE("complete summers " << complete << ", complete winters " << winters);
    const WinklerSeason known =
        winklerOf(read->days, 2008, Hemisphere::North, TemperatureUnit::Celsius);
    CHECK(std::abs(known.sum.value() - 2428.45) < 0.005);
    CHECK(known.winklerClass == WinklerClass::V);
}
