// JSON text into the bytes of values, and lines into entries.
#include "store/json_reader.hpp"

#include "core/journal/entry_line.hpp"
#include "core/journal/json_value.hpp"
#include "support/random_values.hpp"

#include <doctest/doctest.h>

#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::store;
using namespace bullace::test;

namespace {

std::string hexOf(std::string_view json) {
    const auto bytes = readJson(json);
    return bytes ? toHex(*bytes) : "refused";
}

const std::string kStart = R"({"origin":"t0000000000000001.1","seq":1,"count":1,"author":"mk",)"
                           R"("kind":"observe","subject":"x")";

std::string why(const std::string& rest) {
    const auto line = readEntryLine(kStart + rest);
    return line ? std::string("taken") : line.error().message;
}

} // namespace

TEST_CASE("JSON becomes the bytes of RFC 8949 Appendix A") {
    CHECK(hexOf("0") == "00");
    CHECK(hexOf("23") == "17");
    CHECK(hexOf("24") == "1818");
    CHECK(hexOf("1000000000000") == "1b000000e8d4a51000");
    CHECK(hexOf("-1000") == "3903e7");
    CHECK(hexOf("1.1") == "fb3ff199999999999a");
    CHECK(hexOf("1.0") == "f93c00");
    CHECK(hexOf("100000.0") == "fa47c35000");
    CHECK(hexOf("5.960464477539063e-8") == "f90001");
    CHECK(hexOf("true") == "f5");
    CHECK(hexOf("null") == "f6");
    CHECK(hexOf(R"("\u00fc")") == "62c3bc");
    CHECK(hexOf(R"("\ud800\udd51")") == "64f0908591");
    CHECK(hexOf(R"([1, [2, 3], [4, 5]])") == "8301820203820405");
    CHECK(hexOf(R"({"b": [2, 3], "a": 1})") == "a26161016162820203"); // in the order of the bytes
    CHECK(hexOf(R"({"aa": 1, "b": 2})") == "a261620262616101");
}

TEST_CASE("a number without point or exponent is an integer up to 2^53-1, every other a float") {
    CHECK(hexOf("9007199254740991") == "1b001fffffffffffff");
    CHECK(hexOf("-9007199254740991") == "3b001ffffffffffffe");
    CHECK(hexOf("9007199254740992") == "fa5a000000");
    CHECK(hexOf("-9007199254740992") == "fada000000");
    CHECK(hexOf("9223372036854775808") == "fa5f000000"); // 2^63
    CHECK(hexOf("100000000000000000000") == toHex(journal::floatValue(1e20)));
    CHECK(hexOf("7.0") == "f94700");
    CHECK(hexOf("7e0") == "f94700");
    CHECK(hexOf("-0") == "00");
    CHECK(hexOf("-0.0") == "f98000");
}

TEST_CASE("what is no JSON, or says what an entry cannot, is refused") {
    for (const char* text : {"",
                             " ",
                             "nul",
                             "NaN",
                             "Infinity",
                             "1e999",
                             "-1e999",
                             "01",
                             "1.",
                             ".5",
                             "+1",
                             "'a'",
                             "\"a",
                             "\"\t\"",
                             "[1,]",
                             "[1 2]",
                             "{\"a\":}",
                             "{a:1}",
                             "{\"a\":1,}",
                             "1 2",
                             "//1\n1",
                             R"({"a":1,"a":2})",
                             R"({"a":{"b":1,"b":1}})",
                             R"("\u0000")",
                             R"({"\u0000":1})",
                             R"("\ud800")",
                             "\"\xff\"",
                             "\"\xc0\xaf\"",
                             "\"\xed\xa0\x80\"",
                             "\xEF\xBB\xBF"}) {
        CAPTURE(text);
        CHECK(hexOf(text) == "refused");
    }
    CHECK(hexOf(std::string(16, '[') + std::string(16, ']')) ==
          toHex(std::string(15, '\x81') + "\x80"));
    CHECK(hexOf(std::string(17, '[') + std::string(17, ']')) == "refused");
    CHECK(hexOf(std::string(200'000, '[')) == "refused");
    CHECK(hexOf("\"" + std::string(16'384, 'a') + "\"") != "refused");
    CHECK(hexOf("\"" + std::string(16'385, 'a') + "\"") == "refused");
    std::string many = "[0";
    for (int i = 0; i < 20'000; ++i) {
        many += ",0";
    }
    CHECK(hexOf(many + "]") == "refused");
}

TEST_CASE("a line names its fields in any order, and absent ones may be null") {
    const auto line = readEntryLine(
        R"({"over":[["s0000000000000002.3",4]],"value":{"n":7.0},"subject":"x","kind":"dream",)"
        R"("author":"mk","count":9,"seq":2,"origin":"t0000000000000001.1","wall":null,)"
        R"("group":null,"why":null,"as":"7","digest":")" +
        sha256("abc").hex() + "\"}");
    REQUIRE(line.ok());
    CHECK(line->entry.origin.text() == "t0000000000000001.1");
    CHECK(line->entry.seq == 2);
    CHECK(line->entry.count == 9);
    CHECK_FALSE(line->entry.wall);
    CHECK_FALSE(line->entry.group);
    CHECK_FALSE(line->entry.why);
    CHECK(line->entry.as == "7");
    CHECK(journal::valueToJson(line->entry.value) == R"({"n":7.0})");
    CHECK(line->entry.over == std::vector<journal::Place>{{{'s', 2, 3}, 4}});
    CHECK(line->digest == sha256("abc"));
    CHECK_FALSE(line->hasUnknownFields);
}

TEST_CASE("further fields are kept, and a line without value or digest is one of null") {
    const auto line = readEntryLine(kStart + R"(,"mood":{"good":7.0},"z":[]})");
    REQUIRE(line.ok());
    CHECK(line->hasUnknownFields);
    CHECK(journal::valueToJson(line->entry.extra) == R"({"z":[],"mood":{"good":7.0}})");
    CHECK(journal::isNullValue(line->entry.value));
    CHECK_FALSE(line->digest);
}

TEST_CASE("a field of a wrong type is named, and what it must be is said") {
    CHECK(why("}") == "taken");
    CHECK(why(R"(,"wall":1})") == R"("wall" must be [milliseconds, minutes from UTC].)");
    CHECK(why(R"(,"wall":[1,2.0]})") == R"("wall" must be [milliseconds, minutes from UTC].)");
    CHECK(why(R"(,"over":[["t1",1]]})") == R"("over" must be a list of [origin, seq].)");
    CHECK(why(R"(,"over":{}})") == R"("over" must be a list of [origin, seq].)");
    CHECK(why(R"(,"group":[1]})") == R"("group" must be [first seq, number of entries].)");
    CHECK(why(R"(,"why":7})") == R"("why" must be a text.)");
    CHECK(why(R"(,"as":[]})") == R"("as" must be a text.)");
    CHECK(why(R"(,"digest":"AB"})") == R"("digest" must be 64 lower-case hex digits.)");
    CHECK(why(R"(,"digest":null})") == R"("digest" must be 64 lower-case hex digits.)");
    CHECK(why(R"(,"seq":2})") == R"("seq" stands twice.)");
    CHECK(why(R"(,"mood":1,"mood":2})") == R"("A further field" stands twice.)");
    CHECK(readEntryLine(R"({"seq":0})").error().message ==
          R"("seq" must be a whole number from 1 on.)");
    CHECK(readEntryLine(R"({"seq":1.0})").error().message ==
          R"("seq" must be a whole number from 1 on.)");
    CHECK(readEntryLine(R"({"count":-1})").error().message == R"("count" must be a whole number.)");
    CHECK(readEntryLine(R"({"seq":1})").error().message == R"("origin" is missing.)");
    CHECK(readEntryLine("[1]").error().message ==
          "It cannot be read: it is no object with the fields of an entry.");
    CHECK_FALSE(readEntryLine("7").ok());
    CHECK_FALSE(readEntryLine("").ok());
    CHECK_FALSE(readEntryLine("{}").ok());
    CHECK_FALSE(readEntryLine(kStart + "} {}").ok());
}

TEST_CASE("values of chance come back from JSON byte for byte") {
    CHECK(rc::check([](std::uint64_t seed) {
        const Bytes value = randomValue(seed);
        const auto read = readJson(journal::valueToJson(value));
        RC_ASSERT(read.ok());
        RC_ASSERT(*read == value);
    }));
}

TEST_CASE("entries of chance come back from their lines byte for byte") {
    CHECK(rc::check([](std::uint64_t seed) {
        const Bytes bytes = randomEntry(seed).encode();
        std::string line;
        journal::appendEntryLine(line, *journal::readEntry(bytes), sha256(bytes));
        const auto read = readEntryLine(line);
        RC_ASSERT(read.ok());
        RC_ASSERT(read->entry.encode() == bytes);
        RC_ASSERT(read->digest == sha256(bytes));
    }));
}

TEST_CASE("damaged lines are refused or are entries that can be written, and never crash") {
    CHECK(rc::check([](std::uint64_t seed) {
        const Bytes bytes = randomEntry(seed).encode();
        std::string line;
        journal::appendEntryLine(line, *journal::readEntry(bytes), sha256(bytes));
        for (std::uint64_t i = 0; i < 50; ++i) {
            const auto read = readEntryLine(damaged(line, seed + i));
            if (read) {
                const Bytes again = read->entry.encode();
                RC_ASSERT(again.size() > journal::kGreatestEntryBytes ||
                          journal::readEntry(again).ok());
            }
        }
    }));
}
