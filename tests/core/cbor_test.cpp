// The bytes of values against the published examples, and everything that is refused.
#include "core/base/cbor.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/json_value.hpp"
#include "support/entries.hpp"
#include "support/random_values.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <rapidcheck.h>
#include <string>
#include <vector>

using namespace bullace;
using namespace bullace::test;

namespace {

bool isTaken(BytesView bytes, const CborLimits& limits = {}) {
    CborReader in(bytes, limits);
    BytesView item;
    return in.any(item) && in.atEnd() && item == bytes;
}

std::string whyRefused(BytesView bytes, const CborLimits& limits = {}) {
    CborReader in(bytes, limits);
    BytesView item;
    return in.any(item) ? std::string() : std::string(in.failure());
}

struct Example {
    const char* json;
    const char* hex;
};

} // namespace

TEST_CASE("whole numbers are the bytes of RFC 8949 Appendix A, and read back") {
    const struct {
        std::int64_t value;
        const char* hex;
    } examples[] = {
        {0, "00"},
        {1, "01"},
        {10, "0a"},
        {23, "17"},
        {24, "1818"},
        {25, "1819"},
        {100, "1864"},
        {1000, "1903e8"},
        {1000000, "1a000f4240"},
        {1000000000000, "1b000000e8d4a51000"},
        {-1, "20"},
        {-10, "29"},
        {-100, "3863"},
        {-1000, "3903e7"},
        {kGreatestInteger, "1b001fffffffffffff"},
        {-kGreatestInteger, "3b001ffffffffffffe"},
    };
    for (const auto& [value, hex] : examples) {
        CAPTURE(value);
        CHECK(toHex(journal::integerValue(value)) == hex);
        const Bytes bytes = bytesOfHex(hex);
        CborReader in(bytes);
        std::int64_t read = 0;
        CHECK(in.integer(read));
        CHECK(read == value);
        CHECK(in.atEnd());
    }
}

TEST_CASE("measures are the bytes of RFC 8949 Appendix A, in the shortest width that holds them") {
    const struct {
        double value;
        const char* hex;
    } examples[] = {
        {0.0, "f90000"},
        {-0.0, "f98000"},
        {1.0, "f93c00"},
        {1.1, "fb3ff199999999999a"},
        {1.5, "f93e00"},
        {65504.0, "f97bff"},
        {100000.0, "fa47c35000"},
        {3.4028234663852886e+38, "fa7f7fffff"},
        {1.0e+300, "fb7e37e43c8800759c"},
        {5.960464477539063e-8, "f90001"},
        {0.00006103515625, "f90400"},
        {-4.0, "f9c400"},
        {-4.1, "fbc010666666666666"},
    };
    for (const auto& [value, hex] : examples) {
        CAPTURE(value);
        CHECK(toHex(journal::floatValue(value)) == hex);
        const Bytes bytes = bytesOfHex(hex);
        CborReader in(bytes);
        double read = 0;
        CHECK(in.number(read));
        CHECK(read == value);
        CHECK(std::signbit(read) == std::signbit(value));
    }
}

TEST_CASE("every binary16 that is a number reads back as the same two bytes") {
    for (unsigned half = 0; half < 0x10000U; ++half) {
        Bytes bytes("\xF9");
        bytes.push_back(static_cast<char>(half >> 8U));
        bytes.push_back(static_cast<char>(half & 0xFFU));
        const bool isFinite = (half >> 10U & 0x1FU) != 31;
        REQUIRE(isTaken(bytes) == isFinite);
        if (isFinite) {
            REQUIRE(journal::floatValue(halfToDouble(static_cast<std::uint16_t>(half))) == bytes);
        }
    }
}

TEST_CASE("texts, lists and objects are the bytes of RFC 8949 Appendix A") {
    const Example examples[] = {
        {"false", "f4"},
        {"true", "f5"},
        {"null", "f6"},
        {R"("")", "60"},
        {R"("a")", "6161"},
        {R"("IETF")", "6449455446"},
        {R"("\"\\")", "62225c"},
        {"\"\u00fc\"", "62c3bc"},
        {"\"\u6c34\"", "63e6b0b4"},
        {"\"\U00010151\"", "64f0908591"},
        {"[]", "80"},
        {"[1,2,3]", "83010203"},
        {"[1,[2,3],[4,5]]", "8301820203820405"},
        {"[1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21,22,23,24,25]",
         "98190102030405060708090a0b0c0d0e0f101112131415161718181819"},
        {"{}", "a0"},
        {R"({"a":1,"b":[2,3]})", "a26161016162820203"},
        {R"(["a",{"b":"c"}])", "826161a161626163"},
        {R"({"a":"A","b":"B","c":"C","d":"D","e":"E"})",
         "a56161614161626142616361436164614461656145"},
    };
    for (const auto& [json, hex] : examples) {
        CAPTURE(json);
        const Bytes bytes = bytesOfHex(hex);
        CHECK(isTaken(bytes));
        CHECK(journal::valueToJson(bytes) == json);
        CHECK(rewritten(bytes) == bytes);
    }
}

TEST_CASE("what RFC 8949 allows and entries do not use is refused") {
    const Example refused[] = {
        {"2^64-1", "1bffffffffffffffff"},
        {"2^53", "1b0020000000000000"},
        {"-2^53", "3b001fffffffffffff"},
        {"-2^64", "3bffffffffffffffff"},
        {"a bignum", "c249010000000000000000"},
        {"infinity", "f97c00"},
        {"NaN", "f97e00"},
        {"-infinity", "f9fc00"},
        {"infinity, 32 bits", "fa7f800000"},
        {"NaN, 64 bits", "fb7ff8000000000000"},
        {"undefined", "f7"},
        {"simple(16)", "f0"},
        {"simple(255)", "f8ff"},
        {"false in two bytes", "f814"},
        {"a date by tag", "c11a514b67b0"},
        {"bytes by tag", "d74401020304"},
        {"an empty byte string", "40"},
        {"a byte string", "4401020304"},
        {"keys that are numbers", "a201020304"},
        {"bytes of any length", "5f42010243030405ff"},
        {"a text of any length", "7f657374726561646d696e67ff"},
        {"a list of any length", "9fff"},
        {"a list of any length in a list", "83018202039f0405ff"},
        {"an object of any length", "bf61610161629f0203ffff"},
        {"a break alone", "ff"},
        {"a reserved length", "1c"},
    };
    for (const auto& [what, hex] : refused) {
        CAPTURE(what);
        CHECK_FALSE(isTaken(bytesOfHex(hex)));
        CHECK_FALSE(isTaken(bytesOfHex(std::string("81") + hex)));
        CHECK_FALSE(isTaken(bytesOfHex(std::string("a16161") + hex)));
    }
}

TEST_CASE("a value that could be written shorter, or in another order, is refused") {
    const Example refused[] = {
        {"23 in two bytes", "1817"},
        {"24 in three", "190018"},
        {"1000 in five", "1a000003e8"},
        {"1000000 in nine", "1b00000000000f4240"},
        {"-1 in two", "3800"},
        {"a text's length in two bytes", "780161"},
        {"a list's length in two bytes", "980101"},
        {"an object's length in two bytes", "b801616101"},
        {"1.0 in 32 bits", "fa3f800000"},
        {"1.5 in 64 bits", "fb3ff8000000000000"},
        {"100000.0 in 64 bits", "fb40f86a0000000000"},
        {"keys out of order", "a2616201616102"},
        {"a longer key first", "a262616101616202"},
        {"a key twice", "a2616101616102"},
    };
    for (const auto& [what, hex] : refused) {
        CAPTURE(what);
        CHECK_FALSE(isTaken(bytesOfHex(hex)));
    }
}

TEST_CASE("text that is not clean UTF-8 is refused") {
    const Example refused[] = {
        {"a lone byte of a sequence", "6180"},
        {"a sequence cut short", "61c3"},
        {"an overlong slash", "62c0af"},
        {"an overlong slash in three", "63e080af"},
        {"half a surrogate pair", "63eda080"},
        {"beyond U+10FFFF", "64f4908080"},
        {"five bytes", "65f888808080"},
        {"U+0000", "6100"},
        {"U+0000 between letters", "63610062"},
    };
    for (const auto& [what, hex] : refused) {
        CAPTURE(what);
        CHECK(whyRefused(bytesOfHex(hex)) == "a text is not clean UTF-8");
    }
    CHECK(isTaken(bytesOfHex("63efbfbf"))); // U+FFFF is a code point like others
}

TEST_CASE("bytes that end too early, and those that go on, are refused at every length") {
    const Bytes whole = bytesOfHex("a26161fb3ff199999999999a6162826449455446f5");
    REQUIRE(isTaken(whole));
    for (std::size_t length = 0; length < whole.size(); ++length) {
        CAPTURE(length);
        CHECK_FALSE(isTaken(whole.substr(0, length)));
    }
    CHECK_FALSE(isTaken(whole + Bytes(1, '\0')));
}

TEST_CASE("depth, number of elements and length of texts end at their bounds and not before") {
    const auto nested = [](std::size_t depth) { return Bytes(depth, '\x81') + Bytes(1, '\x01'); };
    CHECK(isTaken(nested(16)));
    CHECK(whyRefused(nested(17)) == "lists or maps are nested too deep");
    CHECK_FALSE(isTaken(nested(1'000'000)));
    CHECK_FALSE(isTaken(nested(33), CborLimits{.depth = 1000}));
    Bytes long16;
    CborWriter(long16).text(std::string(16384, 'a'));
    CHECK(isTaken(long16));
    Bytes longer;
    CborWriter(longer).text(std::string(16385, 'a'));
    CHECK(whyRefused(longer) == "a text is too long");
    const auto list = [](std::size_t count) {
        return journal::listValue(std::vector<Bytes>(count, journal::nullValue()));
    };
    CHECK(isTaken(list(19999)));
    CHECK(whyRefused(list(20000)) == "there are too many elements");
    // What announces more than could follow is refused at once, before anything is set aside.
    CHECK_FALSE(isTaken(bytesOfHex("9bffffffffffffffff")));
    CHECK_FALSE(isTaken(bytesOfHex("bbffffffffffffffff")));
    CHECK_FALSE(isTaken(bytesOfHex("7bffffffffffffffff")));
}

TEST_CASE("after the first wrong thing a reader takes nothing more, and says what it was") {
    const Bytes bytes = bytesOfHex("0161610203");
    CborReader in(bytes);
    std::int64_t number = 0;
    std::string_view text;
    CHECK(in.integer(number));
    CHECK_FALSE(in.integer(number));
    CHECK(std::string(in.failure()) == "an integer was expected");
    CHECK_FALSE(in.text(text));
    CHECK(std::string(in.failure()) == "an integer was expected");
}

TEST_CASE("what the writer writes of any value is taken, and written again is the same") {
    CHECK(rc::check([](std::uint64_t seed) {
        const Bytes value = randomValue(seed);
        RC_ASSERT(isTaken(value));
        RC_ASSERT(rewritten(value) == value);
    }));
}

TEST_CASE("of damaged bytes only those are taken that the writer would have written") {
    std::uint64_t taken = 0;
    CHECK(rc::check([&taken](std::uint64_t seed) {
        for (std::uint64_t i = 0; i < 200; ++i) {
            const Bytes damagedBytes = damaged(randomValue(seed), seed + i);
            if (isTaken(damagedBytes)) {
                ++taken;
                RC_ASSERT(rewritten(damagedBytes) == damagedBytes);
            }
        }
    }));
    CHECK(taken > 100);
}

TEST_CASE("bytes of chance never crash the reader, and the views of values bear them as well") {
    CHECK(rc::check([](const std::string& bytes) {
        if (isTaken(bytes)) {
            RC_ASSERT(rewritten(bytes) == bytes);
        }
        static_cast<void>(journal::valueToJson(bytes));
        static_cast<void>(journal::comparable(bytes));
        static_cast<void>(journal::memberOf(bytes, "a"));
        static_cast<void>(journal::itemsOf(bytes));
        static_cast<void>(journal::numberOf(bytes));
        static_cast<void>(journal::textOf(bytes));
    }));
}
