// Degree-days of a century at a hundred sites by all methods, and a century's hours of cold.
#include "bench/measure.hpp"
#include "work_bench/work_benches.hpp"

#include "core/weather/chill.hpp"
#include "core/weather/degree_days.hpp"

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace bullace::bench {

namespace {

constexpr int kYears = 100;
constexpr int kSites = 100;

double seasonal(int day, double period) {
    return 15 - 12 * std::cos(2 * std::numbers::pi * day / period) + 4 * std::sin(day * 0.7);
}

void benchDegreeDays() {
    using namespace weather;
    std::vector<DayTemperatures> days;
    const std::chrono::sys_days first = std::chrono::year(1920) / 1 / 1;
    for (int i = 0; i < kYears * 365; ++i) {
        const double mean = seasonal(i, 365.25);
        days.push_back({first + std::chrono::days(i), mean - 7, mean + 7});
    }
    double sum = 0;
    const double seconds = secondsOf([&] {
        for (int site = 0; site < kSites; ++site) {
            for (const auto method : {DegreeDayMethod::MeanClamped,
                                      DegreeDayMethod::LimitsClamped,
                                      DegreeDayMethod::SingleTriangle,
                                      DegreeDayMethod::DoubleTriangle,
                                      DegreeDayMethod::SingleSine,
                                      DegreeDayMethod::DoubleSine}) {
                const auto made = heatSum(method, days, {10 + site * 0.01, 30});
                must(made.ok(), "degree-days");
                sum += made->days.back().sum;
            }
        }
    });
    must(sum > 0, "degree-days");
    tell("degree-days, six methods, 100 years x 100 sites", seconds, "s", "under 1 s", seconds < 1);
}

void benchChill() {
    std::vector<double> hours;
    for (int i = 0; i < kYears * 365 * 24; ++i) {
        hours.push_back(seasonal(i, 365.25 * 24) - 6 + 5 * std::sin(i * std::numbers::pi / 12));
    }
    double portions = 0;
    const double seconds = secondsOf([&] { portions = weather::chillPortions(hours); });
    must(portions > 0, "chill portions");
    tell("Dynamic Model, 100 years of hours", seconds, "s", "under 0.5 s", seconds < 0.5);
}

} // namespace

void benchWeather() {
    benchDegreeDays();
    benchChill();
}

} // namespace bullace::bench
