// Daily weather as CSV, and loggers' files.
#include "core/weather/weather_tables.hpp"

#include "core/weather/logger.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

using namespace bullace;
using namespace bullace::weather;

namespace {

CivilDate day(const char* text) {
    return *readDate(text);
}

template<typename T>
bool fails(const Result<T>& read, std::string_view words) {
    return !read.ok() && read.error().message.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("a station's lines are read with their hour, flags and missing values") {
    const auto read = readStationTable("USC00010655,20100401,TMAX,256,,,7,0700\r\n"
                                       "USC00010655,20100401,TMIN,28,,,7,0700\n"
                                       "USC00010655,20100401,SNOW,0,,,7,\n"
                                       "USC00010655,20100409,TMIN,-50,,I,7,0700\n"
                                       "USC00010655,20100402,PRCP,-9999,,,7,\n"
                                       "USC00010655,20100401,TMIN,28,,,7,0700\n");
    REQUIRE(read.ok());
    REQUIRE(read->record.days.size() == 1);
    const DailyWeather& first = read->record.days.at(day("2010-04-01"));
    CHECK(first.greatest == doctest::Approx(25.6));
    CHECK(first.least == doctest::Approx(2.8));
    CHECK(first.observedAt == 420);
    CHECK(read->record.failedQuality == 1);
    CHECK(read->repeated == 1);
    CHECK(read->record.otherElements.contains("SNOW"));
    CHECK(read->remarks.size() == 2);
}

TEST_CASE("a station's line that is none is refused by line and column") {
    const std::string good = "USC00010655,20100401,TMAX,256,,,7,0700\n";
    CHECK(
        fails(readStationTable(good + "USC00010655,20100401,TMAX,257,,,7,\n"), "Line 2, column 4"));
    CHECK(
        fails(readStationTable(good + "USC00010656,20100401,TMIN,257,,,7,\n"), "Line 2, column 1"));
    CHECK(fails(readStationTable("USC00010655,20100431,TMAX,1,,,7,\n"), "column 2"));
    CHECK(fails(readStationTable("USC00010655,20100430,TMAX,x,,,7,\n"), "column 4"));
    CHECK(fails(readStationTable("a,b\n"), "fields"));
    CHECK(fails(readStationTable("\n"), "no line"));
}

// A line as NOAA's order form writes it, in its standard units: 62 and 50 °F are 16.67 and 10.00
// °C, 0.25 in are 6.35 mm.
TEST_CASE("an ordered table is read in the unit that it was ordered in") {
    const std::string text = "\"STATION\",\"NAME\",\"DATE\",\"PRCP\",\"TAVG\",\"TMAX\",\"TMIN\"\n"
                             "\"USW00025333\",\"SITKA AIRPORT, AK "
                             "US\",\"2018-07-01\",\"0.25\",,\"62\",\"50\"\n";
    const auto read = readOrderedTable(text, TemperatureUnit::Fahrenheit);
    REQUIRE(read.ok());
    const DailyWeather& first = read->record.days.at(day("2018-07-01"));
    CHECK(std::abs(*first.greatest - 16.67) < 0.005);
    CHECK(*first.least == doctest::Approx(10));
    CHECK(*first.rain == doctest::Approx(6.35));
    CHECK(read->record.station == "USW00025333");
}

TEST_CASE("an ordered table in the wrong unit is doubted, and its flags count") {
    std::string text = "STATION,DATE,TMAX,TMAX_ATTRIBUTES,TMIN\n";
    for (int date = 10; date <= 31; ++date) {
        text += "USC00010655,2020-07-" + std::to_string(date) + ",30.6,\",,7,0700\",20\n";
    }
    text += "USC00010655,2020-08-01,99,\",X,7,0700\",20\n";
    const auto read = readOrderedTable(text, TemperatureUnit::Fahrenheit);
    REQUIRE(read.ok());
    CHECK(read->record.failedQuality == 1);
    CHECK(read->remarks.size() == 2);
    CHECK(read->record.days.at(day("2020-07-10")).observedAt == 420);
    CHECK(readOrderedTable(text, TemperatureUnit::Celsius)->remarks.size() == 1);
    CHECK(fails(readOrderedTable("DATE,RAIN\n2020-01-01,3\n", TemperatureUnit::Celsius), "TMAX"));
    CHECK(fails(readOrderedTable("DATE,TMAX\n2020-02-30,3\n", TemperatureUnit::Celsius),
                "Line 2, column 1"));
    CHECK(fails(readOrderedTable("DATE,TMAX\n2020-02-20,warm\n", TemperatureUnit::Celsius),
                "Line 2, column 2"));
    CHECK(
        fails(readOrderedTable("DATE,TMAX\n2020-02-20,3\n2020-02-20,4\n", TemperatureUnit::Celsius),
              "twice"));
}

TEST_CASE("a logger's file shows what its columns seem to be before it is read") {
    const std::string text = "Logger of the south block\n"
                             "\n"
                             "No.,Date/Time,\"Temp, °F\",\"RH, %\"\n"
                             "1,05/14/2026 01:00 PM,86.0,40\n"
                             "2,05/14/2026 02:00 PM,87.8,41\n"
                             "3,05/14/2026 12:00 AM,59.0,80\n";
    const auto preview = previewLogger(text);
    REQUIRE(preview.ok());
    CHECK(preview->columns.day == 1);
    CHECK(preview->columns.temperature == 2);
    CHECK(preview->columns.humidity == 3);
    CHECK(preview->columns.order == DateOrder::MonthFirst);
    CHECK(preview->isOrderCertain);
    CHECK(preview->unit == TemperatureUnit::Fahrenheit);
    CHECK(preview->firstRows.size() == 3);
    const auto read = readLogger(text, preview->columns, *preview->unit);
    REQUIRE(read.ok());
    REQUIRE(read->readings.size() == 3);
    CHECK(read->readings[0].celsius == doctest::Approx(15)); // midnight
    CHECK(read->readings[1].celsius == doctest::Approx(30));
    CHECK(read->readings[1].minute - read->readings[0].minute == 13 * 60);
    CHECK(read->readings[2].humidity == 41.0);
    CHECK_FALSE(previewLogger("a,b\n1,2\n").ok());
    CHECK_FALSE(previewLogger("").ok());
    CHECK_FALSE(previewLogger("time;temp\n5.4.2026 10:00;12,5\n")->isOrderCertain);
}

TEST_CASE("lines that cannot be read, repeats and gaps of a logger are told") {
    const std::string text = "day,time,temperature\n"
                             "2026-01-01,00:00,1.0\n2026-01-01,01:00,2.0\n2026-01-01,02:00,3.0\n"
                             "2026-01-01,02:00,3.0\n2026-01-01,02:00,4.0\n2026-01-01,03:00,ERR\n"
                             "2026-01-41,04:00,1.0\n2026-01-01,07:00,8.0\n2026-01-01,08:00,9.0\n";
    LoggerColumns columns;
    columns.clock = 1;
    columns.temperature = 2;
    const auto read = readLogger(text, columns, TemperatureUnit::Celsius);
    REQUIRE(read.ok());
    CHECK(read->readings.size() == 5);
    REQUIRE(read->unread.size() == 3);
    CHECK(read->unread[0].line == 7);
    CHECK(read->unread[1].line == 8);
    CHECK(read->unread[2].line == 6);
    CHECK(read->repeated == 1);
    CHECK(read->everyMinutes == 60);
    REQUIRE(read->gaps.size() == 1);
    CHECK(read->gaps[0].to - read->gaps[0].from == 300);
    CHECK(read->remarks.size() == 3);
    const auto hours = hoursOf(*read);
    REQUIRE(hours.size() == 2);
    CHECK(hours[0].celsius == std::vector<double>{1, 2, 3});
    CHECK(hours[1].celsius == std::vector<double>{8, 9});
    const LoggerDays days = daysOf(*read, 0);
    CHECK(days.days.empty());
    CHECK(days.incomplete == std::vector<CivilDate>{day("2026-01-01")});
    columns.temperature = 9;
    CHECK_FALSE(readLogger(text, columns, TemperatureUnit::Celsius).ok());
}

TEST_CASE("an observing day may begin at seven, and full hours lie between readings") {
    LoggerRecord record;
    for (int i = 0; i < 3 * 48; ++i) { // every half hour from 20 minutes past midnight
        const double hour = i / 2.0;
        record.readings.push_back({20 + 30 * i, 10 + hour, {}});
    }
    const LoggerDays byMidnight = daysOf(record, 0);
    REQUIRE(byMidnight.days.size() == 3);
    CHECK(byMidnight.days.at(day("1970-01-01")).least == 10);
    CHECK(byMidnight.days.at(day("1970-01-01")).greatest == 10 + 47 / 2.0);
    const LoggerDays bySeven = daysOf(record, 7);
    REQUIRE(bySeven.days.size() == 2);
    CHECK(bySeven.incomplete.size() == 2);
    // From 7 h to 7 h, by the date on which it ends: the first reading at 7:20.
    CHECK(bySeven.days.at(day("1970-01-02")).least == 17);
    CHECK(bySeven.days.at(day("1970-01-02")).observedAt == 420);
    const auto hours = hoursOf(record);
    REQUIRE(hours.size() == 1);
    CHECK(hours[0].firstHour == 1);
    CHECK(hours[0].celsius[0] == doctest::Approx(10 + 40 / 60.0));
    CHECK(hours[0].celsius.size() == 71);
}
