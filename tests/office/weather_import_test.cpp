// Weather from files: their forms, what is asked and what is left out, and what is written beside
// what is there.
#include "office/weather_import.hpp"

#include "office/day_heat.hpp"

#include "support/desk_stations.hpp"
#include "support/fixed_clock.hpp"

#include <doctest/doctest.h>

#include <cstdio>
#include <string>

using namespace bullace;
using namespace bullace::office;
using test::FixedClock;
using test::TempFolder;
using weather::DailyForm;
using weather::TemperatureUnit;

namespace {

// Days of one month of an element in the fixed columns; a quality flag where `flagged` says.
std::string fixedLine(const char* element, int month, int value, int days, int flagged = 0) {
    char text[32];
    std::snprintf(text, sizeof text, "ZZ0000000012025%02d%s", month, element);
    std::string line(text);
    for (int day = 1; day <= 31; ++day) {
        std::snprintf(
            text, sizeof text, "%5d %c ", day <= days ? value : -9999, day == flagged ? 'X' : ' ');
        line += text;
    }
    return line + "\n";
}

std::string orderedFile(double leastJuly, double greatestJuly, int days) {
    std::string file = "\"STATION\",\"DATE\",\"TMAX\",\"TMIN\"\n";
    for (int day = 1; day <= days; ++day) {
        char text[64];
        std::snprintf(text,
                      sizeof text,
                      "\"ZZ000000001\",\"2025-07-%02d\",\"%g\",\"%g\"\n",
                      day,
                      greatestJuly,
                      leastJuly);
        file += text;
    }
    return file;
}

struct Station {
    TempFolder folder;
    std::string path = folder.file("station.db");
    FixedClock clock{1'760'000'000'000};
    std::unique_ptr<store::Database> database;

    Station() {
        test::makeStationFile(path, "");
        auto opened = store::Database::open(path, true, store::fileSurroundings());
        REQUIRE(opened.ok());
        database = std::move(*opened);
    }
    std::string at(const std::string& subject) {
        const auto row = database->state(subject);
        REQUIRE(row.ok());
        return *row ? (*row)->valueJson : std::string();
    }
    WeatherPlan plan(const WeatherIntake& intake, const std::string& site = "north") {
        auto made = planWeather(*database, intake, site, "hl", "from a file");
        REQUIRE(made.ok());
        return std::move(*made);
    }
    std::size_t take(const WeatherPlan& plan) {
        const auto written = takeInWeather(*database, plan, clock);
        REQUIRE(written.ok());
        return *written;
    }
};

WeatherIntake readAll(const std::string& file, const WeatherWish& wish = {}) {
    const auto look = lookAtWeather(file);
    REQUIRE(look.ok());
    auto made = readWeatherFile(file, *look, wish);
    INFO((made ? std::string() : made.error().message));
    REQUIRE(made.ok());
    return std::move(*made);
}

// Days at one temperature, from 1 January 2025 on.
WeatherIntake daysAt(double least, double greatest, int count) {
    WeatherIntake intake;
    for (int i = 0; i < count; ++i) {
        intake.days[addDays(std::chrono::year(2025) / 1 / 1, i)] = {greatest, least, {}, {}};
    }
    return intake;
}

} // namespace

TEST_CASE("each form of a weather file is known by its first line, and only some lack a unit") {
    const auto formOf = [](const std::string& file) {
        const auto look = lookAtWeather(file);
        REQUIRE(look.ok());
        return std::pair(look->daily, look->needsUnit);
    };
    CHECK(formOf(fixedLine("TMAX", 7, 312, 31)) ==
          std::pair(std::optional(DailyForm::FixedWidth), false));
    CHECK(formOf("ZZ000000001,20250701,TMAX,312,,,S,0700\n") ==
          std::pair(std::optional(DailyForm::ByStation), false));
    CHECK(formOf(orderedFile(20, 31, 2)) == std::pair(std::optional(DailyForm::Ordered), true));
    CHECK(formOf("time,temperature (°C)\n2025-07-01 00:00,21.5\n2025-07-01 01:00,21.0\n") ==
          std::pair(std::optional<DailyForm>(), false));
    CHECK(formOf("time,temperature\n2025-07-01 00:00,21.5\n2025-07-01 01:00,21.0\n") ==
          std::pair(std::optional<DailyForm>(), true));
}

TEST_CASE("a file that is no weather is refused in plain words") {
    for (const char* file : {"", "position,clusters\nB1-01-01,5\n", "%PDF-1.4\n"}) {
        const auto look = lookAtWeather(file);
        REQUIRE_FALSE(look.ok());
        CHECK(look.error().message.find("no file of weather") != std::string::npos);
    }
}

TEST_CASE("a fixed-width month gives its days in degrees, and names what is lacking or doubtful") {
    const std::string file = fixedLine("TMAX", 7, 312, 31) + fixedLine("TMIN", 7, 205, 31, 10) +
                             fixedLine("PRCP", 7, 25, 31) + fixedLine("SNOW", 7, 0, 31);
    const WeatherIntake intake = readAll(file);
    CHECK(intake.station == "ZZ000000001");
    CHECK(intake.days.size() == 31);
    const auto& first = intake.days.begin()->second;
    CHECK(first.greatest == 31.2);
    CHECK(first.least == 20.5);
    CHECK(first.rain == 2.5);
    CHECK(intake.failedQuality == 1);
    CHECK(intake.otherElements == std::set<std::string>{"SNOW"});
    REQUIRE(intake.gaps.size() == 1); // the tenth has no least temperature
    CHECK(intake.gaps.front().first == std::chrono::year(2025) / 7 / 10);
    CHECK(intake.gaps.front().last == std::chrono::year(2025) / 7 / 10);
}

TEST_CASE("a July that would be 30 °F is doubted, and one that is in °F is turned into °C") {
    const std::string celsius = orderedFile(20, 31, 31);
    CHECK(readAll(celsius, {TemperatureUnit::Celsius, {}, {}}).remarks.empty());
    CHECK_FALSE(readAll(celsius, {TemperatureUnit::Fahrenheit, {}, {}}).remarks.empty());
    const WeatherIntake hot =
        readAll(orderedFile(68, 86, 31), {TemperatureUnit::Fahrenheit, {}, {}});
    CHECK(hot.remarks.empty());
    CHECK(hot.days.begin()->second.greatest == 30);
    CHECK(hot.days.begin()->second.least == 20);
}

TEST_CASE("a logger in the wrong unit is doubted like a daily record") {
    std::string file = "time,temperature\n";
    for (int hour = 0; hour < 24 * 31; ++hour) {
        char text[48];
        std::snprintf(text,
                      sizeof text,
                      "2025-07-%02d %02d:00,%d\n",
                      hour / 24 + 1,
                      hour % 24,
                      20 + (hour % 24) / 2);
        file += text;
    }
    const auto doubts = [&file](TemperatureUnit unit) {
        return readAll(file, {unit, {}, {}}).remarks.size();
    };
    CHECK(doubts(TemperatureUnit::Celsius) == 0);
    CHECK(doubts(TemperatureUnit::Fahrenheit) == 1);
}

TEST_CASE("what a logger's file does not hold is told: unread lines, and days with gaps") {
    std::string file = "time,temperature (°C)\n";
    for (int hour = 0; hour < 240; ++hour) {
        if (hour >= 30 && hour < 40) {
            continue;
        }
        char text[48];
        std::snprintf(text, sizeof text, "2025-07-%02d %02d:00,21.5\n", hour / 24 + 1, hour % 24);
        file += text;
    }
    file += "2025-07-11 00:00,broken\n";
    const WeatherIntake intake = readAll(file);
    CHECK(intake.days.size() == 9);
    REQUIRE(intake.unread.size() == 1);
    CHECK(intake.unread.front().line == 232);
    CHECK_FALSE(intake.remarks.empty());
}

TEST_CASE("weather is written once: the same file again writes nothing") {
    Station station;
    const WeatherIntake intake =
        readAll(fixedLine("TMAX", 7, 312, 31) + fixedLine("TMIN", 7, 205, 31));
    const WeatherPlan first = station.plan(intake);
    CHECK(first.fresh == 62);
    CHECK(first.there == 0);
    CHECK(station.take(first) == 62);
    CHECK(station.at("weather/north/2025-07-01/TMAX") == "31.2");
    CHECK(station.at("weather/north/2025-07-31/TMIN") == "20.5");
    const WeatherPlan again = station.plan(intake);
    CHECK(again.acts.empty());
    CHECK(again.there == 62);
    CHECK(station.plan(intake, "south").fresh == 62); // another site is another site
}

TEST_CASE("a corrected value goes over the one that stands, and the old one stays in the journal") {
    Station station;
    station.take(station.plan(daysAt(5, 15, 3)));
    WeatherIntake corrected = daysAt(5, 15, 3);
    corrected.days.begin()->second.greatest = 16;
    const WeatherPlan plan = station.plan(corrected);
    CHECK(plan.replaced == 1);
    CHECK(plan.there == 5);
    CHECK(station.take(plan) == 1);
    CHECK(station.at("weather/north/2025-01-01/TMAX") == "16");
    const auto entries = station.database->entries("weather/north/2025-01-01/TMAX");
    REQUIRE(entries.ok());
    CHECK(entries->size() == 2);
}

TEST_CASE("decades of weather go in acts of ten thousand entries at most, each of which counts") {
    Station station;
    const WeatherPlan plan = station.plan(daysAt(5, 15, 6000));
    REQUIRE(plan.acts.size() == 2);
    CHECK(plan.acts[0].drafts.size() == 10'000);
    CHECK(plan.acts[1].drafts.size() == 2'000);
    CHECK(station.take(plan) == 12'000);
    CHECK(station.plan(daysAt(5, 15, 6000)).there == 12'000);
}

TEST_CASE("nothing is written over what came in since the file was looked at") {
    Station station;
    const WeatherPlan old = station.plan(daysAt(5, 15, 2));
    station.take(station.plan(daysAt(6, 16, 2)));
    const auto refused = takeInWeather(*station.database, old, station.clock);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().code == ErrorCode::Outdated);
    CHECK(station.at("weather/north/2025-01-01/TMAX") == "16");
}

TEST_CASE("a site's name that can be no part of a subject is refused") {
    Station station;
    for (const std::string& site :
         {std::string(), std::string("a/b"), std::string("a\nb"), std::string(57, 'x')}) {
        CHECK_FALSE(planWeather(*station.database, daysAt(5, 15, 1), site, "hl", "").ok());
    }
    CHECK(siteFault("Marrowby, north field").empty());
}

TEST_CASE("degree-days until a day are summed from 1 January, and over no gap") {
    Station station;
    const CivilDate march = std::chrono::year(2025) / 3 / 1;
    const auto none = heatUntil(*station.database, march);
    REQUIRE(none.ok());
    CHECK_FALSE(*none);
    station.take(station.plan(daysAt(20, 20, 100))); // each day is 10 °C days by any method
    const auto heat = heatUntil(*station.database, march);
    REQUIRE(heat.ok());
    REQUIRE(*heat);
    CHECK((*heat)->degreeDays == doctest::Approx(600)); // 60 days
    CHECK((*heat)->site == "north");
    CHECK((*heat)->isOnlySite);
    const auto behind = heatUntil(*station.database, std::chrono::year(2025) / 6 / 1);
    REQUIRE(behind.ok());
    CHECK_FALSE(*behind);
    // A site whose weather has a gap does not stand before one that is whole.
    WeatherIntake broken = daysAt(20, 30, 100);
    broken.days.erase(std::chrono::year(2025) / 2 / 1);
    station.take(station.plan(broken, "east"));
    const auto second = heatUntil(*station.database, march);
    REQUIRE(second.ok());
    REQUIRE(*second);
    CHECK((*second)->site == "north");
    CHECK_FALSE((*second)->isOnlySite);
}
