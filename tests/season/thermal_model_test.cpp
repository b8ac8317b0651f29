// Forecasts by degree-days: a known base and sum are found again, and few years say so.
#include "core/season/thermal_model.hpp"

#include "core/season/onset_interval.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

using namespace bullace;
using namespace bullace::season;
using weather::DailyDays;

namespace {

constexpr int kFirst = 2010;
constexpr int kLast = 2021;

// Years whose springs differ in warmth and in shape, and whose days scatter.
DailyDays springs() {
    std::mt19937_64 engine(11);
    const auto between = [&engine](double low, double high) {
        return low + (high - low) * (static_cast<double>(engine() >> 11) / 9007199254740992.0);
    };
    DailyDays record;
    for (int year = kFirst; year <= kLast; ++year) {
        const double warmth = between(-2.5, 2.5);
        const double shift = between(-12, 12);
        double weather = 0;
        for (int day = 1; day <= 365; ++day) {
            weather = 0.7 * weather + between(-3, 3);
            const double angle = 2 * std::numbers::pi * (day - 110 - shift) / 365;
            const double mean = 15 + warmth + 11 * std::sin(angle) + weather;
            record[dateOfSeason(day, year)] = {mean + 6, mean - 6, {}, {}};
        }
        record[dateOfSeason(365, year)] = {10.0, 0.0, {}, {}};
        record.try_emplace(std::chrono::year(year) / 12 / 31,
                           weather::DailyWeather{10.0, 0.0, {}, {}});
    }
    return record;
}

// The day on which a year's heat above 8 °C from 1 February reaches 350.
double trueDay(const DailyDays& record, int year) {
    const auto curve = weather::heatCurve(record,
                                          {std::chrono::February / 1, 300},
                                          {weather::DegreeDayMethod::SingleSine, {8, {}}},
                                          year);
    REQUIRE(curve.ok());
    const auto found =
        std::ranges::find_if(curve->days, [](const auto& day) { return day.sum >= 350; });
    REQUIRE(found != curve->days.end());
    return dayOfSeason(found->day, year);
}

std::vector<StageYear> pastOf(const DailyDays& record, int first, int last) {
    std::vector<StageYear> past;
    for (int year = first; year <= last; ++year) {
        past.push_back({year, trueDay(record, year)});
    }
    return past;
}

} // namespace

TEST_CASE("a stage that follows degree-days is forecast by them, within its interval") {
    const DailyDays record = springs();
    const auto fit = fitThermalModel(record, pastOf(record, kFirst, kLast - 1));
    REQUIRE(fit.ok());
    REQUIRE(fit->model.has_value());
    const ThermalModel& model = *fit->model;
    CHECK(fit->usedYears.size() == kLast - kFirst);
    CHECK(model.chosenError < 1);
    CHECK(model.pastError < 1.5);
    CHECK(model.pastError >= model.chosenError);
    CHECK(model.calendarError > 3 * model.pastError);
    CHECK(std::abs(model.baseC - 8) <= 3);
    CHECK(fit->remarks.empty());

    const double truth = trueDay(record, kLast);
    const auto march = forecastStage(record, *fit, kLast, std::chrono::year(kLast) / 3 / 15);
    REQUIRE(march.day.has_value());
    CHECK(march.byWeather.size() == kLast - kFirst);
    CHECK(march.day->interval->holds(truth));
    CHECK(march.knownUntil == CivilDate(std::chrono::year(kLast) / 3 / 15));
    CHECK_FALSE(march.isPast);
    // A week before the stage less is open than in March, and behind it nothing of the weather.
    const auto late = forecastStage(record, *fit, kLast, dateOfSeason(truth - 7, kLast));
    CHECK(*late.day->standardError < *march.day->standardError);
    CHECK(std::abs(late.day->value - truth) < 2);
    const auto behind = forecastStage(record, *fit, kLast, dateOfSeason(truth + 10, kLast));
    CHECK(behind.isPast);
    CHECK(*behind.day->standardError == doctest::Approx(model.pastError));
    // What the record holds behind today is not looked at.
    DailyDays cut = record;
    cut.erase(cut.upper_bound(std::chrono::year(kLast) / 3 / 15), cut.end());
    CHECK(forecastStage(cut, *fit, kLast, std::chrono::year(kLast) / 3 / 15).day->value ==
          march.day->value);
}

TEST_CASE("two years are too few, and a year with a gap is named") {
    DailyDays record = springs();
    const auto few = fitThermalModel(record, pastOf(record, kFirst, kFirst + 1));
    REQUIRE(few.ok());
    CHECK_FALSE(few->model.has_value());
    CHECK(few->remarks.size() == 1);
    const auto none = forecastStage(record, *few, kLast, std::chrono::year(kLast) / 3 / 15);
    CHECK_FALSE(none.day.has_value());
    CHECK(none.remarks.size() == 1);
    auto past = pastOf(record, kFirst, kFirst + 4);
    record.erase(std::chrono::year(kFirst + 2) / 3 / 3);
    past.push_back(past.front());
    const auto gap = fitThermalModel(record, past);
    REQUIRE(gap.ok());
    CHECK(gap->leftOut == std::vector<int>{kFirst, kFirst, kFirst + 2});
    CHECK(gap->usedYears.size() == 3);
    CHECK(gap->model.has_value());
    CHECK_FALSE(fitThermalModel(record, past, {{}, {}}).ok());
    CHECK_FALSE(fitThermalModel(record, std::vector<StageYear>{{2010, NAN}}).ok());
    CHECK_FALSE(fitThermalModel({}, past)->model.has_value());
}

TEST_CASE("a gap in this season's weather is told, and dates that follow no heat are told") {
    DailyDays record = springs();
    const auto fit = fitThermalModel(record, pastOf(record, kFirst, kLast - 1));
    REQUIRE(fit->model.has_value());
    record.erase(std::chrono::year(kLast) / 2 / 20);
    record.erase(std::chrono::year(kLast) / 1 / 20);
    const auto made = forecastStage(record, *fit, kLast, std::chrono::year(kLast) / 4 / 10);
    REQUIRE(made.day.has_value());
    CHECK(made.remarks.size() == 1);
    std::vector<StageYear> steady;
    for (int year = kFirst; year < kLast; ++year) {
        steady.push_back({year, 140.0 + year % 2});
    }
    const auto calendar = fitThermalModel(record, steady);
    REQUIRE(calendar->model.has_value());
    CHECK(calendar->model->calendarError < calendar->model->pastError);
    CHECK(calendar->remarks.size() == 1);
}
