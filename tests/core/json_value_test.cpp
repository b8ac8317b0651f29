// Values in place: as JSON, compared, and taken apart.
#include "core/journal/json_value.hpp"

#include "support/random_values.hpp"

#include <doctest/doctest.h>

#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::journal;
using namespace bullace::test;

TEST_CASE("numbers are the same by value wherever they stand, texts only byte by byte") {
    CHECK(isSameValue(integerValue(7), floatValue(7)));
    CHECK(isSameValue(integerValue(0), floatValue(-0.0)));
    CHECK(isSameValue(listValue({integerValue(7)}), listValue({floatValue(7)})));
    CHECK(isSameValue(record({{"n", integerValue(3)}, {"of", listValue({floatValue(2)})}}),
                      record({{"of", listValue({integerValue(2)})}, {"n", floatValue(3)}})));
    CHECK_FALSE(isSameValue(integerValue(7), textValue("7")));
    CHECK_FALSE(isSameValue(integerValue(7), floatValue(7.0000000000000009)));
    CHECK_FALSE(isSameValue(textValue("bronze"), textValue("Bronze")));
    // One letter in two spellings: never normalised.
    CHECK_FALSE(isSameValue(textValue("\u00fc"), textValue("u\u0308")));
    CHECK_FALSE(isSameValue(listValue({integerValue(1), integerValue(2)}),
                            listValue({integerValue(2), integerValue(1)})));
    CHECK_FALSE(isSameValue(nullValue(), booleanValue(false)));
    CHECK_FALSE(isSameValue(record({{"n", integerValue(3)}}),
                            record({{"n", integerValue(3)}, {"of", nullValue()}})));
}

TEST_CASE("whole numbers beyond 2^53-1 stay floats, and are not rounded into integers") {
    CHECK(valueToJson(numberValue(9007199254740991.0)) == "9007199254740991");
    CHECK(valueToJson(numberValue(9007199254740992.0)) == "9007199254740992.0");
    CHECK(valueToJson(numberValue(1e300)) == "1e+300");
    CHECK(valueToJson(numberValue(-3.5)) == "-3.5");
    CHECK(valueToJson(numberValue(-0.0)) == "0");
    CHECK_FALSE(wholeNumberOf(floatValue(1e300)));
    CHECK_FALSE(wholeNumberOf(floatValue(65.5)));
    CHECK(wholeNumberOf(floatValue(65)) == 65);
}

TEST_CASE("parts of a value are found, and absent ones are nothing") {
    const Bytes value = record({{"dead", integerValue(3)}, {"of", integerValue(10)}});
    CHECK(numberOf(*memberOf(value, "dead")) == 3.0);
    CHECK_FALSE(memberOf(value, "alive"));
    CHECK_FALSE(memberOf(integerValue(1), "dead"));
    CHECK_FALSE(itemsOf(value));
    CHECK(itemsOf(listValue({}))->empty());
    CHECK(itemsOf(listValue({nullValue(), nullValue()}))->size() == 2);
    CHECK_FALSE(textOf(integerValue(1)));
    CHECK(textOf(textValue("pink")) == "pink");
    CHECK_FALSE(numberOf(textValue("1")));
    CHECK_FALSE(numberOf(nullValue()));
    CHECK(isNullValue(nullValue()));
    CHECK_FALSE(isNullValue(Bytes{}));
}

TEST_CASE("the reasons for having no value are these six") {
    CHECK(valueToJson(noneValue("no-vine")) == R"({"none":"no-vine"})");
    for (const char* reason :
         {"not-observed", "no-vine", "dead", "out-of-reach", "no-crop", "walked-past"}) {
        CHECK(isNoneReason(reason));
    }
    CHECK_FALSE(isNoneReason("missing"));
    CHECK_FALSE(isNoneReason(""));
}

TEST_CASE("what compares equal stays equal when compared again, and JSON tells its type") {
    CHECK(rc::check([](std::uint64_t seed) {
        const Bytes value = randomValue(seed);
        const Bytes once = comparable(value);
        RC_ASSERT(comparable(once) == once);
        RC_ASSERT(isSameValue(value, once));
        RC_ASSERT(!valueToJson(value).empty());
    }));
}
