#include "core/weather/chill.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace bullace::weather {

namespace {

constexpr double kChillC = 7.2;

// A greater limit and the units up to it, that limit included.
struct UtahStep {
    double upTo;
    double units;
};
constexpr std::array<UtahStep, 6> kUtah{
    {{1.4, 0}, {2.4, 0.5}, {9.1, 1}, {12.4, 0.5}, {15.9, 0}, {18.0, -0.5}}};

double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}

} // namespace

int chillHoursBelow(std::span<const double> hourly) {
    return static_cast<int>(std::count_if(
        hourly.begin(), hourly.end(), [](double celsius) { return celsius <= kChillC; }));
}

int chillHoursBetween(std::span<const double> hourly) {
    return static_cast<int>(std::count_if(hourly.begin(), hourly.end(), [](double celsius) {
        return celsius >= 0 && celsius <= kChillC;
    }));
}

double utahUnit(double celsius) {
    const auto* step = std::find_if(
        kUtah.begin(), kUtah.end(), [celsius](const UtahStep& one) { return celsius <= one.upTo; });
    return step == kUtah.end() ? -1 : step->units;
}

double utahUnits(std::span<const double> hourly) {
    double sum = 0;
    for (const double celsius : hourly) {
        sum += utahUnit(celsius);
    }
    return sum;
}

double chillPortions(std::span<const double> hourly) {
    constexpr double kE0 = 4153.5;
    constexpr double kE1 = 12888.8;
    constexpr double kA0 = 139500;
    constexpr double kA1 = 2.567e18;
    constexpr double kSlope = 1.6;
    constexpr double kTf = 277;
    constexpr double kZero = 273;         // of the model; not 273.15
    constexpr double kMostExponent = 700; // beyond it a double has no number
    double intermediate = 0;
    double portions = 0;
    double share = 0; // of the intermediate product that the hour before fixed
    // Each hour is driven by the temperature of the hour before it.
    for (std::size_t i = 1; i < hourly.size(); ++i) {
        const double kelvin = hourly[i - 1] + kZero;
        const double steady = kA0 / kA1 * std::exp((kE1 - kE0) / kelvin);
        const double rate = kA1 * std::exp(-kE1 / kelvin);
        const double begin = intermediate < 1 ? intermediate : intermediate * (1 - share);
        const double exponent =
            std::clamp(kSlope * kTf * (kelvin - kTf) / kelvin, -kMostExponent, kMostExponent);
        const double slope = std::exp(exponent);
        share = slope / (1 + slope);
        intermediate = steady - (steady - begin) * std::exp(-rate);
        if (intermediate >= 1) {
            portions += intermediate * share;
        }
    }
    return portions;
}

double growingDegreeHour(double celsius) {
    constexpr double kBase = 4;
    constexpr double kBest = 25;
    constexpr double kMost = 36;
    constexpr double kPi = std::numbers::pi;
    if (celsius <= kBase || celsius >= kMost) {
        return 0;
    }
    if (celsius <= kBest) {
        return (kBest - kBase) / 2 *
               (1 + std::cos(kPi + kPi * (celsius - kBase) / (kBest - kBase)));
    }
    return (kBest - kBase) *
           (1 + std::cos(kPi / 2 + kPi / 2 * (celsius - kBest) / (kMost - kBest)));
}

double dayLengthHours(double latitude, int dayOfYear) {
    constexpr double kHorizon = -0.8333; // degrees: refraction and the sun's radius
    const double g = 2 * std::numbers::pi * (dayOfYear - 1) / 365;
    const double declination = 0.006918 - 0.399912 * std::cos(g) + 0.070257 * std::sin(g) -
                               0.006758 * std::cos(2 * g) + 0.000907 * std::sin(2 * g) -
                               0.002697 * std::cos(3 * g) + 0.00148 * std::sin(3 * g);
    const double phi = radians(latitude);
    const double cosine = (std::sin(radians(kHorizon)) - std::sin(phi) * std::sin(declination)) /
                          (std::cos(phi) * std::cos(declination));
    if (cosine >= 1 || cosine <= -1) {
        return cosine >= 1 ? 0 : 24;
    }
    return 2 * std::acos(cosine) * 180 / std::numbers::pi / 15;
}

} // namespace bullace::weather
