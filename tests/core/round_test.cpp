// What the entries about a round say, and which rows and vines it names.
#include "core/walk/round.hpp"

#include "core/journal/json_value.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace bullace::walk {

namespace {

using namespace journal;

Bytes texts(const std::vector<std::string>& items) {
    std::vector<Bytes> list;
    for (const std::string& item : items) {
        list.push_back(textValue(item));
    }
    return listValue(list);
}

Round somewhere(const std::vector<std::string>& where) {
    Round round;
    REQUIRE(setField(round, "where", texts(where)));
    return round;
}

std::vector<vineyard::Block> someBlocks() {
    vineyard::Block b2;
    b2.code = "B2";
    b2.rows = {{7, 3}, {8, 2}};
    vineyard::Block n;
    n.code = "N";
    n.rows = {{1, 2}, {2, 0}};
    return {b2, n};
}

std::string inWords(const std::vector<RowPlan>& rows) {
    std::string words;
    for (const RowPlan& row : rows) {
        words += row.block + "-" + std::to_string(row.row) + ":" + std::to_string(row.vines) + " ";
    }
    return words;
}

CivilDate day(std::string_view text) {
    return readDate(text).value();
}

} // namespace

TEST_CASE("every field of a round is read from its entry") {
    Round round;
    CHECK(setField(round, "title", textValue("Bloom, block B2")));
    CHECK(setField(round, "where", texts({"B2-*", "N-01-02"})));
    CHECK(setField(round, "descriptors", texts({"stage", "vigour"})));
    CHECK(setField(round, "order", textValue("one-way")));
    CHECK(setField(round, "every-nth-row", integerValue(2)));
    for (const char* flag :
         {"both-sides", "blind", "decision", "only-what-stands-out", "least", "repeat"}) {
        CHECK(setField(round, flag, booleanValue(true)));
    }
    CHECK(setField(round, "stages", listValue({integerValue(60), integerValue(65)})));
    CHECK(setField(round, "samples", MapValue().add("berry-diameter", integerValue(10)).bytes()));
    CHECK(setField(round, "precision", MapValue().add("berry-diameter", floatValue(7.5)).bytes()));
    CHECK(setField(round, "from", textValue("2026-05-01")));
    CHECK(setField(round, "by", textValue("2026-05-20")));
    CHECK(setField(round, "closed", textValue("2026-05-18")));

    CHECK(round.title == "Bloom, block B2");
    CHECK(round.where == std::vector<std::string>{"B2-*", "N-01-02"});
    CHECK(round.descriptors == std::vector<std::string>{"stage", "vigour"});
    CHECK(round.order == Order::OneWay);
    CHECK(round.everyNthRow == 2);
    CHECK(round.bothSides);
    CHECK(round.isBlind);
    CHECK(round.isDecision);
    CHECK(round.isOnlyWhatStandsOut);
    CHECK(round.asksLeast);
    CHECK(round.isRepeat);
    CHECK(round.stages == std::vector<std::int64_t>{60, 65});
    CHECK(round.samples.at("berry-diameter") == 10);
    CHECK(round.precisionPercent.at("berry-diameter") == 7.5);
    CHECK(round.from == day("2026-05-01"));
    CHECK(round.by == day("2026-05-20"));
    CHECK(round.closed == day("2026-05-18"));
    CHECK(round.unknownFields.empty());
}

TEST_CASE("a field with a value of another shape changes nothing") {
    const Bytes wrong[] = {integerValue(0),
                           integerValue(-1),
                           floatValue(1.5),
                           listValue({booleanValue(true)}),
                           MapValue().add("stage", textValue("ten")).bytes()};
    for (const char* field : {"title",
                              "where",
                              "descriptors",
                              "order",
                              "every-nth-row",
                              "both-sides",
                              "blind",
                              "decision",
                              "only-what-stands-out",
                              "least",
                              "repeat",
                              "stages",
                              "samples",
                              "precision",
                              "from",
                              "by",
                              "closed"}) {
        CAPTURE(field);
        for (const Bytes& value : wrong) {
            Round round = somewhere({"B2-*"});
            round.everyNthRow = 3;
            CHECK_FALSE(setField(round, field, value));
            CHECK(round.where == std::vector<std::string>{"B2-*"});
            CHECK(round.everyNthRow == 3);
            CHECK(round.samples.empty());
            CHECK(round.stages.empty());
            CHECK_FALSE(round.from.has_value());
        }
    }
    Round round = somewhere({"B2-*"});
    CHECK_FALSE(setField(round, "where", texts({"B2-07-*", "row seven"})));
    CHECK_FALSE(setField(round, "order", textValue("zigzag")));
    CHECK_FALSE(setField(round, "from", textValue("2026-02-30")));
    CHECK_FALSE(
        setField(round, "samples", MapValue().add("berry-weight", integerValue(0)).bytes()));
    CHECK_FALSE(
        setField(round, "precision", MapValue().add("berry-weight", integerValue(101)).bytes()));
    CHECK(round.where == std::vector<std::string>{"B2-*"});
}

TEST_CASE("a field taken back is as without an entry, and one of a newer program is remembered") {
    Round round = somewhere({"B2-*"});
    REQUIRE(setField(round, "every-nth-row", integerValue(2)));
    CHECK(setField(round, "every-nth-row", nullValue()));
    CHECK(setField(round, "where", nullValue()));
    CHECK(round.everyNthRow == 1);
    CHECK(round.where.empty());
    CHECK(setField(round, "weather-limit", integerValue(3)));
    CHECK(setField(round, "weather-limit", integerValue(4)));
    CHECK(round.unknownFields == std::vector<std::string>{"weather-limit"});
}

TEST_CASE("a round is open from its first day until it is closed, also when it is late") {
    Round round;
    CHECK(round.isOpenOn(day("2026-05-10")));
    round.from = day("2026-05-01");
    round.by = day("2026-05-20");
    CHECK_FALSE(round.isOpenOn(day("2026-04-30")));
    CHECK(round.isOpenOn(day("2026-05-01")));
    CHECK(round.isOpenOn(day("2026-06-01")));
    round.closed = day("2026-05-19");
    CHECK(round.isOpenOn(day("2026-05-18")));
    CHECK_FALSE(round.isOpenOn(day("2026-05-19")));
}

TEST_CASE("the rows of a round follow its patterns, each row once") {
    const auto blocks = someBlocks();
    CHECK(inWords(rowsOf(somewhere({"*"}), blocks)) == "B2-7:3 B2-8:2 N-1:2 ");
    CHECK(inWords(rowsOf(somewhere({"N-*", "B2-08-*", "B2-*"}), blocks)) == "N-1:2 B2-8:2 B2-7:3 ");
    CHECK(rowsOf(somewhere({"B2-07-01"}), blocks).empty());
    CHECK(rowsOf(somewhere({"B3-*"}), blocks).empty());
}

TEST_CASE("vines planted between two come to the rows in which they stand") {
    auto rows = rowsOf(somewhere({"B2-*"}), someBlocks());
    const std::vector<std::string> standing{"B2-07-01", "B2-07-01a", "B2-09-01a", "N-01-01a"};
    addBetween(rows, standing);
    CHECK(rows[0].between == std::vector<std::string>{"B2-07-01a"});
    CHECK(rows[1].between.empty());
}

TEST_CASE("a list of vines keeps its order, each vine once, and a pattern in it gives all of its") {
    const auto blocks = someBlocks();
    CHECK_FALSE(isListOfVines(somewhere({"B2-*"})));
    CHECK_FALSE(isListOfVines(Round{}));
    const Round list = somewhere({"B2-08-02", "B2-07-01a", "N-01-*", "B2-08-02", "B2-07-09"});
    CHECK(isListOfVines(list));
    CHECK(vinesOf(list, blocks) ==
          std::vector<std::string>{"B2-08-02", "B2-07-01a", "N-01-01", "N-01-02"});
}

TEST_CASE("what a round names and the plan no longer has is told") {
    const Round round =
        somewhere({"B2-*", "B2-07-04", "B3-*", "B2-09-*", "N-02-*", "B2-08-02", "N-01-03a"});
    CHECK(goneFromPlan(round, someBlocks()) ==
          std::vector<std::string>{"B2-07-04", "B3-*", "B2-09-*", "N-02-*", "N-01-03a"});
    CHECK(goneFromPlan(somewhere({"*"}), {}) == std::vector<std::string>{"*"});
}

} // namespace bullace::walk
