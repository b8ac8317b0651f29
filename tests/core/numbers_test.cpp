// Reading and writing numbers strictly.
#include "core/base/numbers.hpp"

#include <doctest/doctest.h>

#include <charconv>
#include <cmath>
#include <rapidcheck.h>

using namespace bullace;

TEST_CASE("a count is decimal digits and nothing else") {
    CHECK(readCount("0") == 0U);
    CHECK(readCount("7") == 7U);
    CHECK(readCount("9007199254740991") == 9007199254740991U);
    for (const char* text : {"",
                             "-1",
                             "+1",
                             "01",
                             "00",
                             "1.0",
                             "1e3",
                             " 1",
                             "1 ",
                             "1a",
                             "0x1",
                             "9007199254740992",
                             "18446744073709551616",
                             "\u0661"}) {
        CAPTURE(text);
        CHECK_FALSE(readCount(text));
    }
    CHECK(readCount("10", 10) == 10U);
    CHECK_FALSE(readCount("11", 10));
}

TEST_CASE("a measure is taken with a point or a decimal comma, as people type it") {
    CHECK(readTypedNumber("15.2") == 15.2);
    CHECK(readTypedNumber("15,2") == 15.2);
    CHECK(readTypedNumber("-0,5") == -0.5);
    CHECK(readTypedNumber("0") == 0.0);
    CHECK(readTypedNumber("007") == 7.0);
}

TEST_CASE("a measure that could be read in two ways, or is none, is refused") {
    for (const char* text :
         {"",    "-",   "1,234.5", "1.234,5", "1 234", "1e3",  ".5", ",5", "5.", "5,",
          "NaN", "inf", "+1",      "--1",     "1.2.3", "0x10", " 1", "1 ", "1g", "\u22121"}) {
        CAPTURE(text);
        CHECK_FALSE(readTypedNumber(text));
    }
    CHECK_FALSE(readTypedNumber(std::string(400, '9')));
}

TEST_CASE("a fractional number is written shortest, and always shows that it is one") {
    CHECK(shortestFloat(7) == "7.0");
    CHECK(shortestFloat(-0.0) == "-0.0");
    CHECK(shortestFloat(0.1) == "0.1");
    CHECK(shortestFloat(15.25) == "15.25");
    CHECK(shortestFloat(1e300) == "1e+300");
    CHECK(shortestFloat(5e-324) == "5e-324");
    CHECK(shortestFloat(1.7976931348623157e308) == "1.7976931348623157e+308");
}

TEST_CASE("every fractional number reads back from its text as itself") {
    CHECK(rc::check([](double value) {
        RC_PRE(std::isfinite(value));
        const std::string text = shortestFloat(value);
        double read = 0;
        const auto [end, failure] = std::from_chars(text.data(), text.data() + text.size(), read);
        RC_ASSERT(failure == std::errc{});
        RC_ASSERT(end == text.data() + text.size());
        RC_ASSERT(read == value);
        RC_ASSERT(text.find_first_of(".e") != std::string::npos);
    }));
}
