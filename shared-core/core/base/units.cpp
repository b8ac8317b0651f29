#include "core/base/units.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace bullace {

namespace {

// Exact by definition: the inch, foot and pound of the international yard and pound agreement of
// 1959; the Fahrenheit scale by its two fixed points.
constexpr double kMmPerInch = 25.4;
constexpr double kCmPerFoot = 30.48;
constexpr double kMPerFoot = 0.3048;
constexpr double kKgPerPound = 0.45359237;
constexpr double kGramsPerLitrePerPercent = 10;
constexpr int kMostDecimals = 9;

struct Way {
    bool UnitWishes::*wish;
    Unit unit;
};

constexpr std::array<Way, 6> kWays{
    {{&UnitWishes::fahrenheit, {"°C", "°F", 5.0 / 9.0, 32}},
     {&UnitWishes::inches, {"mm", "in", kMmPerInch, 0}},
     {&UnitWishes::pounds, {"kg", "lb", kKgPerPound, 0}},
     {&UnitWishes::feet, {"cm", "ft", kCmPerFoot, 0}},
     {&UnitWishes::feet, {"m", "ft", kMPerFoot, 0}},
     {&UnitWishes::percent, {"g/L", "%", kGramsPerLitrePerPercent, 0}}}};

} // namespace

Unit unitFor(std::string_view stored, const UnitWishes& wishes) {
    for (const Way& way : kWays) {
        if (way.unit.stored == stored && wishes.*way.wish) {
            return way.unit;
        }
    }
    return {stored, stored, 1, 0};
}

int shownDecimals(const Unit& unit, int storedDecimals) {
    // A step of the last decimal shown must not be finer than one of the last decimal stored.
    const double finest = std::pow(10.0, -storedDecimals) * (1 - 1e-9);
    int decimals = 0;
    while (decimals < kMostDecimals && std::pow(10.0, -(decimals + 1)) * unit.factor >= finest) {
        ++decimals;
    }
    return decimals;
}

std::string fixedText(double value, int decimals) {
    std::array<char, 384> buffer{}; // the longest binary64 has 309 digits before the point
    const auto [end, failure] = std::to_chars(
        buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
    return failure == std::errc{} ? std::string(buffer.data(), end) : std::string{};
}

double roundTo(double value, int decimals) {
    // Multiplying leaves dust in the last bit: 1.005 * 100 is below 100.5. It is taken off before
    // halves are rounded.
    const double steps = value * std::pow(10.0, decimals);
    const double whole = std::round(steps + std::copysign(std::abs(steps) * 1e-12, steps));
    if (!std::isfinite(whole)) {
        return value;
    }
    const std::string text = fixedText(whole == 0 ? 0 : whole, 0) + "e-" + std::to_string(decimals);
    double rounded = value;
    std::from_chars(text.data(), text.data() + text.size(), rounded);
    return rounded;
}

double toShown(const Unit& unit, double stored, int storedDecimals) {
    return unit.isAsStored()
               ? roundTo(stored, storedDecimals)
               : roundTo(stored / unit.factor + unit.zero, shownDecimals(unit, storedDecimals));
}

double toStored(const Unit& unit, double shown, int storedDecimals) {
    return roundTo((shown - unit.zero) * unit.factor, storedDecimals);
}

std::optional<std::string> enteredAs(const Unit& unit, std::string_view text) {
    if (unit.isAsStored()) {
        return std::nullopt;
    }
    return std::string(text).append(" ").append(unit.shown);
}

} // namespace bullace
