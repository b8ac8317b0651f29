// A pad of digits that cannot hold what a descriptor forbids.
#include "core/descriptors/number_pad.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <set>
#include <string>

namespace bullace::descriptors {

namespace {

Refusal key(NumberPad& pad, char c) {
    return c == '.' ? pad.pressPoint() : c == '-' ? pad.pressSign() : pad.press(c);
}

// What stands there after the keys; refused ones change nothing.
std::string typed(NumberPad& pad, std::string_view keys) {
    for (const char c : keys) {
        key(pad, c);
    }
    return pad.text();
}

NumberPad berryDiameter() {
    return padFor(*findBuiltIn("berry-diameter"), unitFor("mm", {}));
}

struct Kind {
    Range range;
    int decimals;
};
const Kind kKinds[] = {{{3, 60}, 1},
                       {{0, 2000}, 0},
                       {{0.1, 40}, 2},
                       {{1, 9}, 0},
                       {{0, 3}, 0},
                       {{2, 5}, 2},
                       {{-60, 10}, 1},
                       {{-30, 60}, 1},
                       {{-40, -5}, 0},
                       {{20, 25}, 0},
                       {{95, 1020}, 0},
                       {{0.05, 0.3}, 3},
                       {{420, 520}, 0},
                       {{0, 0}, 0},
                       {{0, 8}, 0},
                       {{-0.5, 0.5}, 1},
                       {{19, 160}, 0},
                       {{1, 2000}, 1}};

} // namespace

TEST_CASE("245 cannot be typed for a berry of 24.5 mm") {
    NumberPad pad = berryDiameter();
    CHECK(typed(pad, "24") == "24");
    CHECK(pad.press('5') == Refusal::TooGreat);
    CHECK(pad.text() == "24");
    CHECK(typed(pad, ".5") == "24.5");
    CHECK(pad.value() == 24.5);
    CHECK(pad.unit() == "mm");
    CHECK(pad.press('0') == Refusal::TooManyDecimals);
}

TEST_CASE("a number is committed only where it is complete and inside the range") {
    NumberPad pad = berryDiameter();
    CHECK_FALSE(pad.canCommit());
    typed(pad, "2"); // below 3, but 24.5 begins so
    CHECK_FALSE(pad.canCommit());
    typed(pad, "4");
    CHECK(pad.canCommit());
    typed(pad, ".");
    CHECK_FALSE(pad.canCommit());
    typed(pad, "0");
    CHECK(pad.value() == 24.0);
}

TEST_CASE("a leading zero is taken only where it leads somewhere") {
    NumberPad berry = berryDiameter();
    CHECK(berry.press('0') == Refusal::TooSmall);
    NumberPad clusters = padFor(*findBuiltIn("clusters"), unitFor("", {}));
    CHECK(clusters.press('0') == Refusal::None);
    CHECK(clusters.value() == 0.0);
    CHECK(clusters.press('5') == Refusal::AfterZero);
    NumberPad weight = padFor(*findBuiltIn("berry-weight"), unitFor("g", {}));
    CHECK(typed(weight, "0.35") == "0.35");
    CHECK(weight.value() == 0.35);
}

TEST_CASE("what a press changed nothing for is told, until the next press") {
    NumberPad pad = berryDiameter();
    CHECK(pad.pressPoint() == Refusal::NoDigitYet);
    CHECK(pad.refusal() == Refusal::NoDigitYet);
    CHECK(pad.press('9') == Refusal::None);
    CHECK(pad.refusal() == Refusal::None);
    CHECK(pad.pressSign() == Refusal::NoNegative);
    CHECK(pad.press('x') == Refusal::NoSuchKey);
    CHECK(pad.pressPoint() == Refusal::None);
    CHECK(pad.pressPoint() == Refusal::SecondPoint);
    CHECK(pad.press('1') == Refusal::None);
    CHECK(pad.pressPoint() == Refusal::SecondPoint);
    NumberPad whole({{0, 2000}}, 0);
    CHECK(whole.pressPoint() == Refusal::WholeOnly);
    CHECK(whole.erase() == Refusal::NothingThere);
    CHECK(whole.nudge(1) == Refusal::NothingThere);
}

TEST_CASE("the last character is erased, and all of it is cleared") {
    NumberPad pad = berryDiameter();
    typed(pad, "24.5");
    CHECK(pad.erase() == Refusal::None);
    CHECK(pad.text() == "24.");
    pad.erase();
    pad.erase();
    CHECK(pad.text() == "2");
    pad.clear();
    CHECK(pad.isEmpty());
}

TEST_CASE("a nudge goes by one of the last decimal, and not out of the range") {
    NumberPad pad = berryDiameter();
    typed(pad, "59.9");
    CHECK(pad.nudge(1) == Refusal::None);
    CHECK(pad.text() == "60.0");
    CHECK(pad.nudge(1) == Refusal::TooGreat);
    CHECK(pad.nudge(-1) == Refusal::None);
    CHECK(pad.value() == 59.9);
    NumberPad freeze({{-60, 10}}, 1);
    typed(freeze, "0.1");
    freeze.nudge(-2);
    CHECK(freeze.text() == "-0.1");
    freeze.nudge(1);
    CHECK(freeze.text() == "0.0");
}

TEST_CASE("frost is typed with a minus, before or behind the digits") {
    NumberPad pad({{-60, 10}}, 1, "°C");
    CHECK(typed(pad, "-17.8") == "-17.8");
    CHECK(pad.value() == -17.8);
    CHECK(pad.pressSign() == Refusal::TooGreat); // 17.8 is above 10
    pad.clear();
    CHECK(typed(pad, "8-") == "-8");
    pad.clear();
    CHECK(typed(pad, "-0") == "-0");
    CHECK_FALSE(pad.canCommit());
    CHECK(typed(pad, ".4") == "-0.4");
}

TEST_CASE("every number inside the range with the allowed decimals can be typed") {
    for (const auto& [range, decimals] : kKinds) {
        const double perOne = std::pow(10.0, decimals);
        for (long step = std::lround(range.least * perOne);
             step <= std::lround(range.greatest * perOne);
             ++step) {
            const double number = roundTo(static_cast<double>(step) / perOne, decimals);
            NumberPad pad(range, decimals);
            const std::string text = fixedText(number, decimals);
            REQUIRE(typed(pad, text) == text);
            REQUIRE(pad.value() == number);
            NumberPad filled(range, decimals);
            REQUIRE(filled.set(number));
            REQUIRE(filled.value() == number);
        }
    }
}

TEST_CASE("no number outside of the range, or with more decimals, can be committed") {
    std::mt19937_64 dice(51);
    constexpr std::string_view kKeys = "0123456789.-<+~";
    for (const auto& [range, decimals] : kKinds) {
        for (int run = 0; run < 400; ++run) {
            NumberPad pad(range, decimals);
            for (int press = 0; press < 12; ++press) {
                const char c = kKeys[dice() % kKeys.size()];
                const std::string before = pad.text();
                const Refusal why = c == '<'   ? pad.erase()
                                    : c == '+' ? pad.nudge(1)
                                    : c == '~' ? pad.nudge(-1)
                                               : key(pad, c);
                REQUIRE((why == Refusal::None || pad.text() == before));
                const auto value = pad.value();
                if (value) {
                    REQUIRE(*value >= range.least);
                    REQUIRE(*value <= range.greatest);
                    REQUIRE(roundTo(*value, decimals) == *value);
                }
            }
        }
    }
}

TEST_CASE("whatever stands there can be gone on with to a number that is allowed") {
    std::mt19937_64 dice(52);
    constexpr std::string_view kKeys = "0123456789.-";
    for (const auto& [range, decimals] : kKinds) {
        const double perOne = std::pow(10.0, decimals);
        std::set<std::string> beginnings; // of all numbers that are allowed
        for (long step = std::lround(range.least * perOne);
             step <= std::lround(range.greatest * perOne);
             ++step) {
            const std::string text = fixedText(static_cast<double>(step) / perOne, decimals);
            for (std::size_t length = 0; length <= text.size(); ++length) {
                beginnings.insert(text.substr(0, length));
            }
        }
        for (int run = 0; run < 300; ++run) {
            NumberPad pad(range, decimals);
            for (int press = 0; press < 8; ++press) {
                key(pad, kKeys[dice() % kKeys.size()]);
                CAPTURE(pad.text());
                REQUIRE(beginnings.count(pad.text()) == 1);
            }
        }
    }
}

TEST_CASE("a pad can start from a value, but not from one that is forbidden") {
    NumberPad pad = berryDiameter();
    CHECK(pad.set(24.5));
    CHECK(pad.text() == "24.5");
    CHECK_FALSE(pad.set(24.55));
    CHECK(pad.isEmpty());
    CHECK_FALSE(pad.set(61));
    CHECK_FALSE(pad.set(std::nan("")));
}

TEST_CASE("a pad in inches holds just the inches whose millimetres the descriptor allows") {
    const Descriptor& diameter = *findBuiltIn("berry-diameter");
    const Unit inches = unitFor("mm", {false, true, false, false, false});
    NumberPad pad = padFor(diameter, inches);
    CHECK(pad.unit() == "in");
    CHECK(typed(pad, "0.96") == "0.96");
    CHECK(toStored(inches, pad.value().value(), diameter.decimals) == 24.4);
    for (const char* text : {"0.12", "2.36"}) { // 3.0 and 59.9 mm
        pad.clear();
        typed(pad, text);
        REQUIRE(pad.canCommit());
    }
    for (const char* text : {"0.11", "2.37"}) { // 2.8 and 60.2 mm
        pad.clear();
        CHECK(typed(pad, text) != text);
    }
}

TEST_CASE("the parts of a record have pads of their own") {
    const Descriptor& freeze = *findBuiltIn("freeze-test");
    NumberPad temperature = padFor(freeze.parts[0], unitFor("°C", {}));
    CHECK(typed(temperature, "-17.5") == "-17.5");
    NumberPad dead = padFor(freeze.parts[1], unitFor("", {}));
    CHECK(typed(dead, "12.") == "12");
    NumberPad grams = padFor(findBuiltIn("berry-weight")->parts[0], unitFor("g", {}));
    CHECK(typed(grams, "145.20") == "145.20"); // of many berries: judged with their number
}

TEST_CASE("a descriptor without a range takes any number a person types") {
    NumberPad pad({}, 1);
    CHECK(typed(pad, "-123456.7") == "-123456.7");
    pad.clear();
    CHECK(typed(pad, "9999999999") == "999999999");
}

} // namespace bullace::descriptors
