// The list of grapevine stages.
#include "core/descriptors/stages.hpp"

#include "core/descriptors/catalog.hpp"
#include "core/journal/json_value.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

namespace bullace::descriptors {

namespace {

// Lorenz, Eichhorn, Bleiholder, Klose, Meier, Weber 1995, Aust. J. Grape Wine Res. 1:100-103.
const std::set<std::int64_t> kPublished{0,  1,  3,  5,  7,  9,  11, 12, 13, 14, 15, 16, 17, 18, 19,
                                        53, 55, 57, 60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 71, 73,
                                        75, 77, 79, 81, 83, 85, 89, 91, 92, 93, 95, 97, 99};

} // namespace

TEST_CASE("the stages are exactly the 43 published codes, in the order of the season") {
    REQUIRE(grapevineStages().size() == 43);
    std::set<std::int64_t> codes;
    std::set<std::string_view> words;
    std::int64_t before = -1;
    for (const Stage& stage : grapevineStages()) {
        CHECK(stage.code > before);
        before = stage.code;
        codes.insert(stage.code);
        words.insert(stage.words);
    }
    CHECK(codes == kPublished);
    CHECK(words.size() == 43);
    CHECK_FALSE(words.contains(""));
}

TEST_CASE("a code is accepted at entry where the list has it, and no other number is") {
    const Descriptor* const stage = findBuiltIn("stage");
    REQUIRE(stage != nullptr);
    for (std::int64_t code = -1; code <= 100; ++code) {
        CAPTURE(code);
        const bool isPublished = kPublished.contains(code);
        CHECK(stageStep(code).has_value() == isPublished);
        CHECK(checkValue(*stage, journal::integerValue(code)).ok() == isPublished);
    }
    CHECK_FALSE(checkValue(*stage, journal::floatValue(65.5)).ok());
    CHECK_FALSE(checkValue(*stage, journal::textValue("65")).ok());
    CHECK_FALSE(checkValue(*stage, journal::floatValue(1e300)).ok());
}

TEST_CASE("steps are counted along the list, not in codes") {
    CHECK(*stageStep(0) == 0);
    CHECK(*stageStep(53) == *stageStep(19) + 1);
    CHECK(*stageStep(89) == *stageStep(85) + 1);
    CHECK(*stageStep(99) == 42);
}

TEST_CASE("the codes of bloom stand for tenths of the caps fallen") {
    // By the definitions of the same source: p percent of the caps fallen is code 60 + p/10, for
    // 10 to 80, so that half is 65.
    for (std::int64_t percent = 10; percent <= 80; percent += 10) {
        CAPTURE(percent);
        CHECK(stageStep(60 + percent / 10).has_value());
        CHECK(*stageStep(60 + percent / 10) - *stageStep(60) ==
              static_cast<std::size_t>(percent / 10));
    }
    CHECK(grapevineStages()[*stageStep(65)].words == "full bloom, half of the caps off");
}

} // namespace bullace::descriptors
