// Units as people see and type them, and back.
#include "core/base/units.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

namespace bullace {

namespace {

constexpr UnitWishes kAmerican{true, true, true, true, true};

Unit american(std::string_view stored) {
    return unitFor(stored, kAmerican);
}

} // namespace

TEST_CASE("without a wish every value is shown as it is stored") {
    for (const char* stored : {"°C", "mm", "kg", "g", "cm", "m", "g/L", "°Brix", "%", ""}) {
        const Unit unit = unitFor(stored, {});
        CHECK(unit.isAsStored());
        CHECK(unit.shown == stored);
        CHECK(toShown(unit, 24.5, 1) == 24.5);
        CHECK(toStored(unit, 24.5, 1) == 24.5);
        CHECK_FALSE(enteredAs(unit, "24.5").has_value());
    }
}

TEST_CASE("each wish changes its own unit, and grams stay grams") {
    CHECK(american("°C").shown == "°F");
    CHECK(american("mm").shown == "in");
    CHECK(american("kg").shown == "lb");
    CHECK(american("cm").shown == "ft");
    CHECK(american("m").shown == "ft");
    CHECK(american("g/L").shown == "%");
    CHECK(american("g").shown == "g");
    CHECK(american("°Brix").shown == "°Brix");
    UnitWishes inches;
    inches.inches = true;
    CHECK(unitFor("mm", inches).shown == "in");
    CHECK(unitFor("kg", inches).shown == "kg");
}

TEST_CASE("known temperatures and weights come out right") {
    // TRADE: 10, 0 and 5 °F.
    CHECK(toStored(american("°C"), 10, 2) == -12.22);
    CHECK(toStored(american("°C"), 0, 2) == -17.78);
    CHECK(toStored(american("°C"), 5, 2) == -15.0);
    CHECK(toShown(american("°C"), 100, 1) == 212);
    CHECK(toShown(american("°C"), -40, 1) == -40);
    CHECK(toStored(american("mm"), 0.96, 1) == 24.4); // 24.384
    CHECK(toStored(american("kg"), 2.2, 2) == 1.0);   // 0.998
    CHECK(toStored(american("cm"), 10, 0) == 305);
    CHECK(toStored(american("m"), 20, 2) == 6.1);
    CHECK(toStored(american("g/L"), 0.65, 2) == 6.5);
}

TEST_CASE("what was typed comes back as it was typed, in every unit") {
    const struct {
        const char* stored;
        int decimals;
        double least;
        double greatest;
    } columns[] = {{"mm", 1, 3, 60},
                   {"mm", 1, 5, 300},
                   {"kg", 2, 0, 200},
                   {"cm", 0, 0, 3000},
                   {"m", 2, 0, 50},
                   {"g/L", 2, 0, 30},
                   {"°C", 1, -60, 60}};
    for (const auto& column : columns) {
        CAPTURE(column.stored);
        const Unit unit = american(column.stored);
        const int decimals = shownDecimals(unit, column.decimals);
        const double perOne = std::pow(10.0, decimals);
        const auto first = std::lround(toShown(unit, column.least, column.decimals) * perOne);
        const auto last = std::lround(toShown(unit, column.greatest, column.decimals) * perOne);
        REQUIRE(last > first);
        for (long step = first; step <= last; ++step) {
            const double typed = roundTo(static_cast<double>(step) / perOne, decimals);
            const double stored = toStored(unit, typed, column.decimals);
            REQUIRE(toShown(unit, stored, column.decimals) == typed);
            REQUIRE(roundTo(stored, column.decimals) == stored);
        }
    }
}

TEST_CASE("the decimals shown are those that survive storing") {
    CHECK(shownDecimals(american("mm"), 1) == 2);
    CHECK(shownDecimals(american("°C"), 1) == 0);
    CHECK(shownDecimals(american("kg"), 2) == 1);
    CHECK(shownDecimals(american("cm"), 0) == 1);
    CHECK(shownDecimals(american("g/L"), 2) == 3);
    CHECK(shownDecimals(unitFor("mm", {}), 1) == 1);
}

TEST_CASE("an entry keeps what was typed with its unit") {
    CHECK(enteredAs(american("mm"), "0.96") == "0.96 in");
    CHECK(enteredAs(american("°C"), "-4") == "-4 °F");
}

TEST_CASE("numbers are rounded as a person rounds them") {
    CHECK(roundTo(1.005, 2) == 1.01);
    CHECK(roundTo(-1.005, 2) == -1.01);
    CHECK(roundTo(24.449999, 1) == 24.4);
    CHECK(roundTo(24.45, 1) == 24.5);
    CHECK(roundTo(0.04, 1) == 0.0);
    CHECK_FALSE(std::signbit(roundTo(-0.04, 1)));
    CHECK(roundTo(7, 0) == 7);
    CHECK(fixedText(24, 1) == "24.0");
    CHECK(fixedText(0.5, 2) == "0.50");
    CHECK(fixedText(-12, 0) == "-12");
}

} // namespace bullace
