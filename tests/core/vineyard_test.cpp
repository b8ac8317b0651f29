// Positions, rows, plantings over time, and renumbered rows.
#include "core/vineyard/block.hpp"
#include "core/vineyard/plantings.hpp"
#include "core/vineyard/position.hpp"
#include "core/vineyard/renumbering.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace bullace::vineyard {

namespace {

CivilDate day(std::string_view text) {
    const auto date = readDate(text);
    REQUIRE(date.has_value());
    return *date;
}

std::string standsAt(const Plantings& plantings, std::string_view position, std::string_view date) {
    const Planting* const found = plantings.at(position, day(date));
    return found == nullptr ? "" : found->accession;
}

} // namespace

TEST_CASE("a position is written in one way only") {
    for (const char* text : {"B2-07-14", "B2-07-14a", "N-01-01", "Hill3-120-07", "B2-07-100"}) {
        CAPTURE(text);
        const auto read = readPosition(text);
        REQUIRE(read.has_value());
        CHECK(writePosition(*read) == text);
    }
    const auto between = readPosition("B2-07-14a");
    CHECK(between->block == "B2");
    CHECK(between->row == 7);
    CHECK(between->vine == 14);
    CHECK(between->letter == 'a');
}

TEST_CASE("other spellings of a position are none") {
    for (const char* text : {"B2-7-14",
                             "B2-007-14",
                             "B2-07-014",
                             "B2-07-4",
                             "2B-07-14",
                             "B2-07",
                             "B2-07-14ab",
                             "B2-07-",
                             "B2--14",
                             "-07-14",
                             "B2-07-14-01",
                             "B_2-07-14",
                             "B2-07-1 4",
                             "B2-07-+4",
                             "",
                             "B2-07-1234567"}) {
        CAPTURE(text);
        CHECK_FALSE(readPosition(text).has_value());
    }
}

TEST_CASE("a pattern names a vine, a row, a block or everything") {
    for (const char* text : {"B2-07-14", "B2-07-*", "B2-*", "*"}) {
        CHECK(isPositionPattern(text));
    }
    for (const char* text : {"B2*", "B2-7-*", "*-07", "B2-07-1*", "", "B2-07", "B2-*-14", "**"}) {
        CAPTURE(text);
        CHECK_FALSE(isPositionPattern(text));
    }
    CHECK(matchesPattern("B2-07-*", "B2-07-14a"));
    CHECK_FALSE(matchesPattern("B2-07-*", "B2-08-14"));
    CHECK(matchesPattern("B2-*", "B2-08-14"));
    CHECK_FALSE(matchesPattern("B2-*", "B21-08-14"));
    CHECK(matchesPattern("B2-07-14", "B2-07-14"));
    CHECK_FALSE(matchesPattern("B2-07-14", "B2-07-14a"));
    CHECK(matchesPattern("*", "lot:F12"));
    CHECK_FALSE(matchesPattern("B2-*", "lot:B2-1"));
}

TEST_CASE("a block lists its places row by row, and knows what is not on its plan") {
    const Block block{"B2", "Spring slope", {{7, 2}, {8, 3}}, {}, {}};
    CHECK(positionsOf(block) ==
          std::vector<std::string>{"B2-07-01", "B2-07-02", "B2-08-01", "B2-08-02", "B2-08-03"});
    CHECK(isOnPlan(block, *readPosition("B2-08-03")));
    CHECK(isOnPlan(block, *readPosition("B2-07-02a")));
    CHECK_FALSE(isOnPlan(block, *readPosition("B2-07-03")));
    CHECK_FALSE(isOnPlan(block, *readPosition("B2-09-01")));
    CHECK_FALSE(isOnPlan(block, *readPosition("B3-07-01")));
    CHECK_FALSE(isOnPlan(block, *readPosition("B2-07-00")));
}

TEST_CASE("rows and vines are ordered as numbers") {
    const auto order = [](const char* a, const char* b) {
        return compareAlongRows(*readPosition(a), *readPosition(b));
    };
    CHECK(order("B2-99-01", "B2-100-01") < 0);
    CHECK(order("B2-07-99", "B2-07-100") < 0);
    CHECK(order("B2-07-14", "B2-07-14a") < 0);
    CHECK(order("B2-07-14b", "B2-07-15") < 0);
    CHECK(order("B3-01-01", "B2-99-99") > 0);
    CHECK(order("B2-07-14", "B2-07-14") == 0);
}

TEST_CASE("a sprayed block is closed through its last closed day, and tasted later still") {
    Block block{"B2", "", {}, day("2026-08-10"), day("2026-08-20")};
    CHECK(block.isClosed(day("2026-08-10")));
    CHECK_FALSE(block.isClosed(day("2026-08-11")));
    CHECK_FALSE(block.mayTaste(day("2026-08-10")));
    CHECK_FALSE(block.mayTaste(day("2026-08-20")));
    CHECK(block.mayTaste(day("2026-08-21")));
    block.noTastingUntil.reset();
    CHECK_FALSE(block.mayTaste(day("2026-08-10")));
}

TEST_CASE("a replanted place holds the old vine until the day before the new one") {
    const Plantings plantings(
        {{"B2-07-14", day("2024-03-02"), "A117", {}}, {"B2-07-14", day("2019-02-20"), "A031", {}}});
    CHECK(standsAt(plantings, "B2-07-14", "2019-02-19").empty());
    CHECK(standsAt(plantings, "B2-07-14", "2019-02-20") == "A031");
    CHECK(standsAt(plantings, "B2-07-14", "2024-03-01") == "A031");
    CHECK(standsAt(plantings, "B2-07-14", "2024-03-02") == "A117");
    CHECK(standsAt(plantings, "B2-07-15", "2024-03-02").empty());
    const Planting* const old = plantings.at("B2-07-14", day("2020-01-01"));
    REQUIRE(old != nullptr);
    CHECK(plantings.lastDay(*old) == day("2024-03-01"));
    CHECK(plantings.history("B2-07-14", day("2020-01-01")).size() == 2);
}

TEST_CASE("a pulled vine leaves an empty place after its last day") {
    const Plantings plantings({{"B2-07-14", day("2019-02-20"), "A031", day("2023-09-30")},
                               {"B2-07-14", day("2025-03-01"), "A200", {}}});
    CHECK(standsAt(plantings, "B2-07-14", "2023-09-30") == "A031");
    CHECK(standsAt(plantings, "B2-07-14", "2023-10-01").empty());
    CHECK(standsAt(plantings, "B2-07-14", "2025-02-28").empty());
    CHECK(standsAt(plantings, "B2-07-14", "2025-03-01") == "A200");
    CHECK(plantings.lastDay(*plantings.at("B2-07-14", day("2020-01-01"))) == day("2023-09-30"));
    CHECK_FALSE(plantings.lastDay(*plantings.at("B2-07-14", day("2026-01-01"))).has_value());
}

TEST_CASE("an until behind the next planting does not keep the old vine standing") {
    const Plantings plantings({{"B2-07-14", day("2019-02-20"), "A031", day("2030-01-01")},
                               {"B2-07-14", day("2024-03-02"), "A117", day("2024-03-01")}});
    CHECK(standsAt(plantings, "B2-07-14", "2024-03-01") == "A031");
    CHECK(standsAt(plantings, "B2-07-14", "2024-03-02").empty()); // never stood
    CHECK(plantings.lastDay(*plantings.at("B2-07-14", day("2020-01-01"))) == day("2024-03-01"));
}

TEST_CASE("what stands on a date is listed along the rows") {
    const Plantings plantings({{"B2-100-01", day("2020-01-01"), "A3", {}},
                               {"B2-99-02", day("2020-01-01"), "A2", {}},
                               {"B2-99-01", day("2020-01-01"), "A1", day("2021-01-01")}});
    const auto standing = plantings.standing(day("2022-01-01"));
    REQUIRE(standing.size() == 2);
    CHECK(standing[0]->accession == "A2");
    CHECK(standing[1]->accession == "A3");
    CHECK(plantings.standing(day("2019-01-01")).empty());
}

TEST_CASE("an accession is found wherever and whenever it was planted") {
    const Plantings plantings({{"B2-07-14", day("2019-02-20"), "A031", day("2023-09-30")},
                               {"B2-07-14", day("2024-03-01"), "A002", {}},
                               {"B1-01-02", day("2024-03-01"), "A031", {}}});
    const auto found = plantings.of("A031");
    REQUIRE(found.size() == 2);
    CHECK(found[0]->position == "B1-01-02");
    CHECK(found[1]->position == "B2-07-14");
    CHECK(plantings.at("B2-07-14", day("2020-01-01")) == found[1]);
    CHECK(plantings.of("A999").empty());
}

TEST_CASE("a renumbered vine is followed both ways and through several renumberings") {
    const auto made = Renumberings::of(
        {{day("2025-01-10"), {{"B2-07-02", "B2-07-05"}}},
         {day("2023-02-01"), {{"B2-07-01", "B2-07-02"}, {"B2-07-02", "B2-07-01"}}}});
    REQUIRE(made.ok());
    const Renumberings& all = *made;
    CHECK(all.follow("B2-07-01", day("2022-05-01"), day("2024-05-01")) == "B2-07-02");
    CHECK(all.follow("B2-07-02", day("2022-05-01"), day("2024-05-01")) == "B2-07-01");
    CHECK(all.follow("B2-07-01", day("2022-05-01"), day("2026-05-01")) == "B2-07-05");
    CHECK(all.follow("B2-07-05", day("2026-05-01"), day("2022-05-01")) == "B2-07-01");
    CHECK(all.follow("B2-07-01", day("2023-02-01"), day("2023-02-01")) == "B2-07-01");
    CHECK(all.follow("B2-07-01", day("2023-01-31"), day("2023-02-01")) == "B2-07-02");
    CHECK(all.follow("B2-07-09", day("2022-05-01"), day("2026-05-01")) == "B2-07-09");
    CHECK(all.newest("B2-07-01", day("2022-05-01")) == "B2-07-05");
}

TEST_CASE("a renumbering that gives two vines one place is refused") {
    const CivilDate date = day("2025-01-10");
    const auto twice =
        Renumberings::of({{date, {{"B2-07-01", "B2-07-05"}, {"B2-07-02", "B2-07-05"}}}});
    REQUIRE_FALSE(twice.ok());
    CHECK(twice.error().code == ErrorCode::InvalidInput);
    CHECK(twice.error().message.find("2025-01-10") != std::string::npos);
    CHECK_FALSE(
        Renumberings::of({{date, {{"B2-07-01", "B2-07-05"}, {"B2-07-01", "B2-07-06"}}}}).ok());
    CHECK_FALSE(Renumberings::of({{date, {{"B2-7-1", "B2-07-05"}}}}).ok());
}

TEST_CASE("a vine keeps its history when its row is renumbered") {
    const auto made = Renumberings::of({{day("2025-01-10"), {{"B2-07-14", "B2-07-15"}}}});
    REQUIRE(made.ok());
    const Plantings plantings(
        {{"B2-07-14", day("2019-02-20"), "A031", {}}, {"B2-07-15", day("2026-03-01"), "A300", {}}},
        *made);
    CHECK(standsAt(plantings, "B2-07-14", "2024-05-12") == "A031");
    CHECK(standsAt(plantings, "B2-07-15", "2025-05-12") == "A031");
    CHECK(standsAt(plantings, "B2-07-15", "2026-05-12") == "A300");
    // What was noted as B2-07-14 before the renumbering belongs to the vine that is now 15.
    CHECK(plantings.at("B2-07-14", day("2024-05-12"), day("2025-05-12"))->accession == "A031");
}

} // namespace bullace::vineyard
