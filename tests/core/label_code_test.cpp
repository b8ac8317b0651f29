// Label codes: a mistyped one is never another vine's.
#include "core/vineyard/label_code.hpp"

#include <doctest/doctest.h>

#include <random>
#include <set>
#include <utility>

namespace bullace::vineyard {

TEST_CASE("a label code has eight symbols, begins with a letter and reads back as itself") {
    std::mt19937_64 dice(31);
    std::set<std::string> codes;
    for (int i = 0; i < 5000; ++i) {
        const std::string code =
            labelCode(i < 100 ? static_cast<std::uint64_t>(i) : dice() % kLabelCodes);
        REQUIRE(code.size() == 8);
        REQUIRE(code.front() >= 'A');
        REQUIRE(readLabelCode(code) == code);
        codes.insert(code);
    }
    CHECK(codes.size() > 4990);
    CHECK(labelCode(0) == "A000000A"); // A is 10 in the alphabet, and 1·10 mod 31 is 10
    CHECK(labelCode(kLabelCodes - 1).substr(0, 7) == "ZZZZZZZ");
    CHECK(labelCode(kLabelCodes).empty());
}

TEST_CASE("every number has a code of its own") {
    std::set<std::string> codes;
    for (std::uint64_t number = 0; number < 40'000; ++number) {
        codes.insert(labelCode(number * 465'000 % kLabelCodes));
    }
    CHECK(codes.size() == 40'000);
}

TEST_CASE("lower case and spaces are forgiven") {
    const std::string code = labelCode(123'456'789'012);
    CHECK(code.empty()); // beyond the last code
    const std::string known = labelCode(12'345'678'901);
    std::string typed = " " + known.substr(0, 4) + "  " + known.substr(4) + " ";
    for (char& c : typed) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    CHECK(readLabelCode(typed) == known);
}

TEST_CASE("letters that are taken for others are named, and never turned into them") {
    const std::string code = labelCode(0); // full of zeros
    std::string typed = code;
    typed[3] = 'O';
    CHECK(labelFaultOf(typed) == LabelFault::NeverUsed);
    CHECK_FALSE(readLabelCode(typed).has_value());
    for (const char c : {'b', 'i', 'l', 'o', 'u', 'B', 'I', 'L', 'U'}) {
        typed[3] = c;
        CHECK(labelFaultOf(typed) == LabelFault::NeverUsed);
    }
}

TEST_CASE("what is wrong with a code is told") {
    CHECK(labelFaultOf("  ") == LabelFault::Empty);
    CHECK(labelFaultOf("A00000A") == LabelFault::TooShort);
    CHECK(labelFaultOf("A0000000A") == LabelFault::TooLong);
    CHECK(labelFaultOf("A000-00A") == LabelFault::NoSymbol);
    CHECK(labelFaultOf("A000000\xC3\xA4") == LabelFault::NoSymbol);
    CHECK(labelFaultOf("0A00000A") == LabelFault::FirstIsDigit);
    CHECK(labelFaultOf("A0000001") == LabelFault::WrongCheck);
    CHECK(labelFaultOf("A000000A") == LabelFault::None);
}

TEST_CASE("every single wrong symbol and every exchange of two in thousands of codes is caught") {
    std::mt19937_64 dice(32);
    int tried = 0;
    for (int i = 0; i < 4000; ++i) {
        const std::string code = labelCode(dice() % kLabelCodes);
        for (std::size_t at = 0; at < code.size(); ++at) {
            for (const char symbol : kLabelSymbols) {
                std::string typed = code;
                typed[at] = symbol;
                REQUIRE((typed == code || !readLabelCode(typed)));
                ++tried;
            }
            for (std::size_t other = at + 1; other < code.size(); ++other) {
                std::string typed = code;
                std::swap(typed[at], typed[other]);
                REQUIRE((typed == code || !readLabelCode(typed)));
            }
        }
    }
    CHECK(tried == 4000 * 8 * 31);
}

} // namespace bullace::vineyard
