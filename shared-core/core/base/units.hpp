// Units as people wish to see and type them. Values are stored in the descriptor's unit; what was
// typed in another one is kept beside it as it was typed.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace bullace {

// One person's wishes; all false shows every value in the unit in which it is stored.
struct UnitWishes {
    bool fahrenheit = false; // for °C
    bool inches = false;     // for mm
    bool pounds = false;     // for kg; grams stay grams
    bool feet = false;       // for cm and m
    bool percent = false;    // for g/L: 1 % is 10 g/L
};

// How a stored unit is shown: stored = (shown - zero) * factor.
struct Unit {
    std::string_view stored;
    std::string_view shown;
    double factor = 1;
    double zero = 0;

    [[nodiscard]] bool isAsStored() const { return stored == shown; }
};

// `stored` as descriptors write it: "mm", "°C", "kg", "g/L". A unit without another way to show it
// is shown as it is. The views of the result point into `stored` or into constants.
[[nodiscard]] Unit unitFor(std::string_view stored, const UnitWishes& wishes);

// The decimals with which a value stored with `storedDecimals` is shown and typed: as many as come
// back unchanged from storing (mm with 1 decimal: inches with 2; °C with 1: °F with none).
[[nodiscard]] int shownDecimals(const Unit& unit, int storedDecimals);

// Rounded half away from zero to that many decimals, as the nearest binary64.
[[nodiscard]] double roundTo(double value, int decimals);

// Rounded to shownDecimals().
[[nodiscard]] double toShown(const Unit& unit, double stored, int storedDecimals);
// Rounded to storedDecimals.
[[nodiscard]] double toStored(const Unit& unit, double shown, int storedDecimals);

// "0.96 in", for an entry's `as`; nothing where the value is typed in the unit in which it is
// stored.
[[nodiscard]] std::optional<std::string> enteredAs(const Unit& unit, std::string_view text);

// A number with exactly `decimals` decimals and a point: {24, 1} is "24.0". Finite.
[[nodiscard]] std::string fixedText(double value, int decimals);

} // namespace bullace
