// The rulebook: which entries of it are rules, and which rule an observation goes by.
#include "core/merge/rulebook.hpp"

#include "core/journal/json_value.hpp"
#include "support/entries.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::merge;
using namespace bullace::test;
using descriptors::DescriptorKind;
using descriptors::Rule;
using descriptors::RuleName;
using journal::floatValue;
using journal::integerValue;
using journal::listValue;
using journal::nullValue;
using journal::readSubject;
using journal::textValue;

namespace {

Bytes rule(const char* name) {
    return record({{"rule", textValue(name)}});
}

Rule ruleFor(const Rulebook& book, const char* subject) {
    return book.ruleFor(readSubject(subject));
}

} // namespace

TEST_CASE("a rule of the book says where, when, of what, and how") {
    const auto read =
        readBookRule(record({{"where", textValue("B2-07-*")},
                             {"from", textValue("2026-05-01")},
                             {"to", textValue("2026-05-31")},
                             {"descriptors", listValue({textValue("vigour"), textValue("rot")})},
                             {"rule", textValue("mean")},
                             {"within", record({{"percent", floatValue(2.5)}})}}));
    REQUIRE(read);
    CHECK(read->rule.name == RuleName::Mean);
    REQUIRE(read->rule.within);
    CHECK(read->rule.within->amount == 2.5);
    CHECK(read->rule.within->isPercent);
    const auto matches = [&read](const char* subject) {
        return read->matches(readSubject(subject));
    };
    CHECK(matches("obs/B2-07-14/2026-05-12/vigour"));
    CHECK(matches("obs/B2-07-14/2026-05-12/rot/t0000000000000001.1,1"));
    CHECK(matches("obs/B2-07-01a/2026-05-01/vigour"));
    CHECK(matches("obs/B2-07-14/2026-05-31/vigour"));
    CHECK_FALSE(matches("obs/B2-07-14/2026-04-30/vigour"));
    CHECK_FALSE(matches("obs/B2-07-14/2026-06-01/vigour"));
    CHECK_FALSE(matches("obs/B2-08-14/2026-05-12/vigour"));
    CHECK_FALSE(matches("obs/B2-070-14/2026-05-12/vigour"));
    CHECK_FALSE(matches("obs/B21-07-14/2026-05-12/vigour"));
    CHECK_FALSE(matches("obs/B2-07-14/2026-05-12/stage"));
    CHECK_FALSE(matches("obs/lot:B2-07-14/2026-05-12/vigour"));
}

TEST_CASE("a pattern is one vine, one row, one block or everything; lots go by everything alone") {
    const auto matches = [](const char* where, const char* place) {
        const auto read =
            readBookRule(record({{"where", textValue(where)}, {"rule", textValue("later")}}));
        REQUIRE(read);
        return read->matches(readSubject("obs/" + std::string(place) + "/2026-05-12/stage"));
    };
    CHECK(matches("B2-07-14", "B2-07-14"));
    CHECK_FALSE(matches("B2-07-14", "B2-07-14a"));
    CHECK(matches("B2-*", "B2-07-14"));
    CHECK_FALSE(matches("B2-*", "B20-07-14"));
    CHECK(matches("*", "B2-07-14"));
    CHECK(matches("*", "lot:L1"));
}

TEST_CASE("a missing or null part of a rule matches everything") {
    const auto read = readBookRule(record({{"where", nullValue()},
                                           {"from", nullValue()},
                                           {"to", nullValue()},
                                           {"descriptors", nullValue()},
                                           {"within", nullValue()},
                                           {"rule", textValue("later")}}));
    REQUIRE(read);
    CHECK_FALSE(read->rule.within);
    CHECK(read->matches(readSubject("obs/lot:L1/2026-05-12/ph")));
    CHECK(readBookRule(rule("later"))->matches(readSubject("obs/B2-07-14/1999-01-01/stage")));
    // No descriptor is not every descriptor.
    const auto none =
        readBookRule(record({{"descriptors", listValue({})}, {"rule", textValue("later")}}));
    REQUIRE(none);
    CHECK_FALSE(none->matches(readSubject("obs/B2-07-14/2026-05-12/stage")));
}

TEST_CASE("a rule of another shape is passed over") {
    const Bytes later = textValue("later");
    const Bytes wrong[] = {
        Bytes{},
        nullValue(),
        textValue("later"),
        listValue({later}),
        record({}),
        rule("newest"),
        rule("Later"),
        record({{"rule", nullValue()}}),
        record({{"rule", integerValue(1)}}),
        record({{"rule", later}, {"who", textValue("mk")}}), // may narrow the rule
        record({{"rule", later}, {"where", textValue("B2-7-*")}}),
        record({{"rule", later}, {"where", textValue("B2-*-14")}}),
        record({{"rule", later}, {"where", textValue("B2")}}),
        record({{"rule", later}, {"where", textValue("")}}),
        record({{"rule", later}, {"where", integerValue(2)}}),
        record({{"rule", later}, {"from", textValue("2026-02-30")}}),
        record({{"rule", later}, {"to", textValue("May")}}),
        record({{"rule", later}, {"descriptors", textValue("stage")}}),
        record({{"rule", later}, {"descriptors", listValue({integerValue(1)})}}),
        record({{"rule", later}, {"within", integerValue(-1)}}),
        record({{"rule", later}, {"within", textValue("2")}}),
        record({{"rule", later}, {"within", record({{"percent", integerValue(-1)}})}}),
        record({{"rule", later}, {"within", record({{"percent", textValue("5")}})}}),
        record({{"rule", later}, {"within", record({{"steps", integerValue(2)}})}}),
        record({{"rule", later},
                {"within", record({{"percent", integerValue(2)}, {"of", integerValue(2)}})}}),
    };
    for (const Bytes& value : wrong) {
        CAPTURE(journal::valueToJson(value));
        CHECK_FALSE(readBookRule(value));
    }
    CHECK(readOwnRule(record({{"rule", later}, {"within", integerValue(2)}})));
    CHECK_FALSE(readOwnRule(record({{"rule", later}, {"where", textValue("*")}})));
}

TEST_CASE("the first rule that matches decides, by ascending number and not by text") {
    Rulebook book;
    book.apply("rulebook/10", rule("greatest"), false);
    book.apply("rulebook/9", rule("least"), false);
    const char* const subject = "obs/B2-07-14/2026-05-12/vigour";
    CHECK(ruleFor(book, subject).name == RuleName::Least);
    book.apply("rulebook/9", {}, false); // retracted
    CHECK(ruleFor(book, subject).name == RuleName::Greatest);
    book.apply("rulebook/8", rule("newest"), false); // of no known rule
    CHECK(ruleFor(book, subject).name == RuleName::Greatest);
    book.apply("rulebook/10", {}, true); // open
    CHECK(ruleFor(book, subject).name == RuleName::Mean);
}

TEST_CASE("without a rule of the book a descriptor goes by its own, and an unknown one asks") {
    const Rulebook book;
    const Rule stage = ruleFor(book, "obs/B2-07-14/2026-05-12/stage");
    CHECK(stage.name == RuleName::Advanced);
    REQUIRE(stage.within);
    CHECK(stage.within->amount == 2);
    CHECK(ruleFor(book, "obs/B2-07-14/2026-05-12/note").name == RuleName::All);
    CHECK(ruleFor(book, "obs/B2-07-14/2026-05-12/moon-phase").name == RuleName::Ask);
}

TEST_CASE(
    "the station's word for a descriptor's rule, kind and codes goes before the built-in one") {
    Rulebook book;
    const char* const subject = "obs/B2-07-14/2026-05-12/yield";
    book.apply("descriptor/yield/rule", record({{"rule", textValue("greatest")}}), false);
    CHECK(ruleFor(book, subject).name == RuleName::Greatest);
    book.apply("descriptor/yield/rule", {}, true); // two rules that wait for a person
    CHECK(ruleFor(book, subject).name == RuleName::Ask);
    book.apply("descriptor/vigour/rule", textValue("mean"), false); // of another shape
    CHECK(ruleFor(book, "obs/B2-07-14/2026-05-12/vigour").name == RuleName::Ask);
    book.apply("descriptor/vigour/rule", {}, false); // retracted: as built in
    CHECK(ruleFor(book, "obs/B2-07-14/2026-05-12/vigour").name == RuleName::Mean);

    CHECK_FALSE(book.kindOf("bark"));
    book.apply("descriptor/bark/kind", textValue("stage"), false);
    CHECK(book.kindOf("bark") == DescriptorKind::Stage);
    book.apply("descriptor/bark/kind", textValue("feeling"), false);
    CHECK_FALSE(book.kindOf("bark"));
    CHECK(book.kindOf("yield") == DescriptorKind::Measure);
    book.apply("descriptor/yield/kind", textValue("stage"), false);
    CHECK(book.kindOf("yield") == DescriptorKind::Stage);
}

TEST_CASE("stages have the steps of their list: the built-in one, or the station's codes") {
    Rulebook book;
    CHECK(book.stepOf("stage", integerValue(0)) == 0U);
    CHECK(book.stepOf("stage", integerValue(99)) == 42U);
    CHECK(book.stepOf("stage", floatValue(65)) == book.stepOf("stage", integerValue(65)));
    CHECK_FALSE(book.stepOf("stage", integerValue(64 + 100)));
    CHECK_FALSE(book.stepOf("stage", textValue("65")));
    book.apply("descriptor/bark/codes",
               listValue({textValue("green"), textValue("brown"), integerValue(3)}),
               false);
    CHECK(book.stepOf("bark", textValue("brown")) == 1U);
    CHECK(book.stepOf("bark", floatValue(3)) == 2U);
    CHECK_FALSE(book.stepOf("bark", textValue("grey")));
    book.apply("descriptor/bark/codes", {}, true);
    CHECK_FALSE(book.stepOf("bark", textValue("brown")));
}

TEST_CASE("only the rulebook and a descriptor's rule, kind and codes shape what is derived") {
    CHECK(shapesRulebook(readSubject("rulebook/1")));
    CHECK(shapesRulebook(readSubject("descriptor/bark/rule")));
    CHECK(shapesRulebook(readSubject("descriptor/bark/kind")));
    CHECK(shapesRulebook(readSubject("descriptor/bark/codes")));
    CHECK_FALSE(shapesRulebook(readSubject("descriptor/bark/title")));
    CHECK_FALSE(shapesRulebook(readSubject("round/1/rule")));
    CHECK_FALSE(shapesRulebook(readSubject("rulebook/01")));
}
