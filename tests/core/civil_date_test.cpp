// Civil dates, and instants as people read them.
#include "core/base/civil_date.hpp"

#include <doctest/doctest.h>

using namespace bullace;

TEST_CASE("a date is a day that the calendar has, in ten characters") {
    for (const char* text :
         {"2026-05-12", "2024-02-29", "2000-02-29", "0000-01-01", "9999-12-31"}) {
        CAPTURE(text);
        const auto date = readDate(text);
        REQUIRE(date);
        CHECK(writeDate(*date) == text);
    }
    for (const char* text : {"",
                             "2026-5-12",
                             "2026-05-1",
                             "2026-05-012",
                             "26-05-12",
                             "2026/05/12",
                             "2026-02-29",
                             "1900-02-29",
                             "2026-04-31",
                             "2026-13-01",
                             "2026-00-10",
                             "2026-01-00",
                             "2026-05-1a",
                             "2026-05--1",
                             "-026-05-12",
                             " 2026-05-12",
                             "2026-05-12 ",
                             "2026-05-12T"}) {
        CAPTURE(text);
        CHECK_FALSE(readDate(text));
    }
}

TEST_CASE("days are counted over leap years and backwards") {
    const CivilDate from = *readDate("2024-02-28");
    CHECK(daysBetween(from, *readDate("2024-03-01")) == 2);
    CHECK(daysBetween(*readDate("2025-02-28"), *readDate("2025-03-01")) == 1);
    CHECK(daysBetween(*readDate("2024-03-01"), from) == -2);
    CHECK(daysBetween(*readDate("1970-01-01"), *readDate("2026-05-12")) == 20585);
    CHECK(writeDate(addDays(from, 2)) == "2024-03-01");
    CHECK(writeDate(addDays(from, -59)) == "2023-12-31");
    CHECK(writeDate(addDays(from, 0)) == "2024-02-28");
}

TEST_CASE("an instant is written in its own local time with the offset") {
    CHECK(writeInstant(0, 0) == "1970-01-01T00:00:00.000+00:00");
    CHECK(writeInstant(1'778'572'862'114, -300) == "2026-05-12T03:01:02.114-05:00");
    CHECK(writeInstant(1'778'572'862'114, 330) == "2026-05-12T13:31:02.114+05:30");
    CHECK(writeInstant(-1, 0) == "1969-12-31T23:59:59.999+00:00");
}

TEST_CASE("a clock that went mad is written as it is, and never crashes the reader") {
    CHECK(writeInstant(INT64_MAX, 0) == "9223372036854775807 ms");
    CHECK(writeInstant(INT64_MIN, 0) == "-9223372036854775808 ms");
    CHECK(writeInstant(0, INT64_MIN + 1) == "1970-01-01T00:00:00.000+00:00");
    CHECK(writeInstant(0, 1441) == "1970-01-01T00:00:00.000+00:00");
    CHECK(writeInstant(0, 1440) == "1970-01-02T00:00:00.000+24:00");
}
