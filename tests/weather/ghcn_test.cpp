// Daily weather of NOAA: the layout of its readme v3.00, and a station of 22 years. Those two files
// are read from ../shared/checks beside the project, where it is there; nothing of them is kept
// here.
#include "core/weather/ghcn.hpp"

#include "core/weather/degree_days.hpp"
#include "support/check_file.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <optional>
#include <string>
#include <vector>

using namespace bullace;
using namespace bullace::weather;
using test::checkFile;

namespace {

CivilDate day(const char* text) {
    return *readDate(text);
}

// A line of the layout: id, year and month, element, then values with a quality flag each.
std::string lineOf(const char* head, const std::vector<std::pair<int, char>>& values) {
    std::string line = head;
    for (const auto& [value, flag] : values) {
        std::string text = std::to_string(value);
        line += std::string(5 - text.size(), ' ') + text + ' ' + flag + ' ';
    }
    return line + "\n";
}

std::string messageOf(const Result<DailyRecord>& read) {
    return read.ok() ? std::string{} : read.error().message;
}

} // namespace

// Values of NOAA as bundled with the R package GHCNr 1.4.7, re-made in the layout.
TEST_CASE("the sample month has its thirty days and their sums") {
    const auto text = checkFile("ghcn-daily-sample.dly");
    if (!text) {
        return;
    }
    const auto read = readGhcnDaily(*text);
    REQUIRE(read.ok());
    CHECK(read->station == "USC00010655");
    CHECK(read->days.size() == 30);
    CHECK_FALSE(read->days.contains(day("2010-05-01")));
    double greatest = 0;
    double least = 0;
    double rain = 0;
    for (const auto& [date, weather] : read->days) {
        greatest += weather.greatest.value_or(0);
        least += weather.least.value_or(0);
        rain += weather.rain.value_or(0);
    }
    CHECK(greatest == doctest::Approx(762.3));
    CHECK(least == doctest::Approx(235.7));
    CHECK(rain == doctest::Approx(70.5));
    CHECK(*read->days.at(day("2010-04-01")).greatest == doctest::Approx(25.6));
    CHECK(*read->days.at(day("2010-04-01")).least == doctest::Approx(2.8));
}

// Sums of max(0, mean - 10 °C) from April to October, computed twice independently, not published.
TEST_CASE("summers of the long record have their sums, and a summer with a lacking day has none") {
    const auto text = checkFile("ghcn-daily-south-2003-2024.dly");
    if (!text) {
        return;
    }
    const auto read = readGhcnDaily(*text);
    REQUIRE(read.ok());
    const auto heatBetween = [&read](CivilDate first, CivilDate last) {
        std::vector<DayTemperatures> days;
        for (CivilDate date = first; date <= last; date = addDays(date, 1)) {
            const auto found = read->days.find(date);
            const DailyWeather weather = found == read->days.end() ? DailyWeather{} : found->second;
            days.push_back({date, weather.least, weather.greatest});
        }
        const auto sum = heatSum(DegreeDayMethod::MeanClamped, days, {10, {}});
        REQUIRE(sum.ok());
        return *sum;
    };
    const auto summerOf = [&heatBetween](int year) {
        return heatBetween(std::chrono::year(year) / std::chrono::April / 1,
                           std::chrono::year(year) / std::chrono::October / 31);
    };
    for (const auto& [year, expected] : {std::pair{2003, 2456.30},
                                         std::pair{2008, 2428.45},
                                         std::pair{2012, 2436.30},
                                         std::pair{2020, 2345.15}}) {
        const HeatSum sum = summerOf(year);
        CAPTURE(year);
        CHECK(sum.gaps.empty());
        REQUIRE(sum.days.size() == 214);
        CHECK(std::abs(sum.days.back().sum - expected) < 0.005);
    }
    const HeatSum lacking = summerOf(2009);
    REQUIRE(lacking.gaps.size() == 1);
    CHECK(daysBetween(lacking.gaps.front().first, lacking.gaps.front().last) == 0);
    CHECK(lacking.days.size() < 214);

    // The check's sum of 2016 takes a TMAX in that did not pass the quality check (19.4 °C on 26
    // May, with a TMIN of 16.1). It is not to be used: the summer has a gap; with that day's 7.75
    // the sums on both sides of it are the check's.
    const HeatSum flagged = summerOf(2016);
    REQUIRE(flagged.gaps.size() == 1);
    CHECK(flagged.gaps.front().first == day("2016-05-26"));
    CHECK(flagged.gaps.front().last == day("2016-05-26"));
    const HeatSum rest = heatBetween(day("2016-05-27"), day("2016-10-31"));
    CHECK(std::abs(flagged.days.back().sum + 7.75 + rest.days.back().sum - 2682.50) < 0.005);
}

TEST_CASE("a value that did not pass the quality check is left out and counted") {
    const auto read =
        readGhcnDaily(lineOf("USC00000001201004TMAX", {{256, ' '}, {283, 'I'}, {-9999, ' '}}) +
                      lineOf("USC00000001201004SNOW", {{1, ' '}}));
    REQUIRE(read.ok());
    CHECK(read->days.size() == 1);
    CHECK(*read->days.at(day("2010-04-01")).greatest == doctest::Approx(25.6));
    CHECK(read->failedQuality == 1);
    CHECK(read->otherElements == std::set<std::string>{"SNOW"});
}

TEST_CASE("what is no daily weather is refused with its line and column") {
    const std::string good = lineOf("USC00000001201004TMAX", {{256, ' '}});
    CHECK(messageOf(readGhcnDaily("")).find("no line") != std::string::npos);
    CHECK(messageOf(readGhcnDaily(good + lineOf("USC00000002201004TMIN", {{1, ' '}})))
              .find("Line 2, column 1") != std::string::npos);
    CHECK(messageOf(readGhcnDaily(lineOf("USC00000001201013TMAX", {{1, ' '}}))).find("column 12") !=
          std::string::npos);
    CHECK(messageOf(readGhcnDaily(good + good)).find("twice") != std::string::npos);
    CHECK(messageOf(readGhcnDaily("USC00000001201004TMAX  2x6   \n")).find("column 22") !=
          std::string::npos);
    std::vector<std::pair<int, char>> month(31, {100, ' '});
    CHECK(messageOf(readGhcnDaily(lineOf("USC00000001201004TMAX", month))).find("column 262") !=
          std::string::npos); // April has no 31st
}
