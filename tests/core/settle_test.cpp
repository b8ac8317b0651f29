// What several heads come to: every rule, and when each leaves the subject open.
#include "core/merge/settle.hpp"

#include "support/entries.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::merge;
using namespace bullace::test;
using journal::floatValue;
using journal::integerValue;
using journal::listValue;
using journal::nullValue;
using journal::textValue;

namespace {

// One head's part of a conflict: its value and, where it matters, its kind and clock.
struct Head {
    Bytes value;
    const char* kind = "observe";
    std::optional<std::int64_t> clockMs{};
};

// Heads of devices 1, 2, 3 … in that order. Gives "STATUS VALUE RULE".
std::string
settled(const std::string& subject, const std::vector<Head>& heads, const Rulebook& book = {}) {
    Held held;
    std::vector<Member> members;
    for (std::size_t i = 0; i < heads.size(); ++i) {
        held.add({.origin = {'t', i + 1, 1},
                  .kind = heads[i].kind,
                  .subject = subject,
                  .value = heads[i].value,
                  .clockMs = heads[i].clockMs});
    }
    for (std::size_t i = 0; i < heads.size(); ++i) {
        members.push_back({&held.views()[i], &held.digests()[i], true});
    }
    const Outcome outcome = settle(subject, members, book);
    std::string text(stateWord(outcome.state));
    text += outcome.value.empty() ? "" : " " + journal::valueToJson(outcome.value);
    return text + (outcome.rule ? " " + std::string(descriptors::ruleWord(*outcome.rule)) : "");
}

std::string obs(const char* descriptor) {
    return std::string("obs/B2-07-14/2026-05-12/") + descriptor;
}

Rulebook bookOf(const char* rule, std::optional<Bytes> within = {}) {
    Rulebook book;
    Bytes value = within ? record({{"rule", textValue(rule)}, {"within", *within}})
                         : record({{"rule", textValue(rule)}});
    book.apply("rulebook/1", value, false);
    return book;
}

std::vector<Head> numbers(std::initializer_list<double> values) {
    std::vector<Head> heads;
    for (const double value : values) {
        heads.push_back({journal::numberValue(value)});
    }
    return heads;
}

Bytes percent(double amount) {
    return record({{"percent", floatValue(amount)}});
}

} // namespace

TEST_CASE("one head settles its subject, and heads that are all null retract it") {
    CHECK(settled(obs("stage"), numbers({65})) == "settled 65");
    CHECK(settled(obs("stage"), {{nullValue(), "retract"}}) == "retracted");
    CHECK(settled(obs("stage"), {{nullValue(), "retract"}, {nullValue(), "ruling"}}) ==
          "retracted");
}

TEST_CASE("heads of the same value agree, and the first is shown as it stands") {
    CHECK(settled(obs("stage"), {{integerValue(65)}, {floatValue(65)}}) == "agreed 65");
    CHECK(settled(obs("stage"), {{floatValue(65)}, {integerValue(65)}}) == "agreed 65.0");
    CHECK(settled("cross/1/mother", {{textValue("W-17")}, {textValue("W-17")}}) ==
          "agreed \"W-17\"");
    // Two rulings of the same are no conflict either.
    CHECK(settled(obs("stage"), {{integerValue(65), "ruling"}, {integerValue(65), "ruling"}}) ==
          "agreed 65");
}

TEST_CASE("a retraction against a value waits for a person, whatever the rule") {
    for (const char* rule : {"later", "all", "mean", "greatest", "ask"}) {
        CAPTURE(rule);
        CHECK(settled(obs("vigour"), {{integerValue(5)}, {nullValue(), "retract"}}, bookOf(rule)) ==
              "open");
    }
}

TEST_CASE("where a ruling is one of the heads, no rule decides") {
    CHECK(settled(obs("note"), {{textValue("a")}, {textValue("b")}}) == "ruled [\"a\",\"b\"] all");
    CHECK(settled(obs("note"), {{textValue("a")}, {textValue("b"), "ruling"}}) == "open");
}

TEST_CASE("what is no observation always asks") {
    for (const char* subject : {"cross/1/mother",
                                "planting/B2-07-14/2026-05-12",
                                "rulebook/1",
                                "obs/of no form",
                                "weather/mast/2026-05-12/tmin"}) {
        CAPTURE(subject);
        CHECK(settled(subject, numbers({1, 2}), bookOf("later")) == "open");
    }
}

TEST_CASE("ask leaves the subject open, and all lists every value in order") {
    CHECK(settled(obs("vigour"), numbers({5, 6}), bookOf("ask")) == "open");
    CHECK(settled(obs("vigour"),
                  {{integerValue(6)}, {textValue("x")}, {floatValue(5)}},
                  bookOf("all")) == "ruled [6,\"x\",5.0] all");
    // Neither looks at `within`.
    CHECK(settled(obs("vigour"), numbers({1, 9}), bookOf("all", integerValue(0))) ==
          "ruled [1,9] all");
}

TEST_CASE("later goes by the clocks, and a head without one is the earliest") {
    const Rulebook later = bookOf("later");
    const Bytes a = textValue("a");
    const Bytes b = textValue("b");
    CHECK(settled(obs("note"), {{a, "observe", 2000}, {b, "observe", 1000}}, later) ==
          "ruled \"a\" later");
    CHECK(settled(obs("note"), {{a, "observe", 1000}, {b, "observe", 2000}}, later) ==
          "ruled \"b\" later");
    CHECK(settled(obs("note"), {{a, "observe", -5}, {b}}, later) == "ruled \"a\" later");
    // Of the same time the later origin; of none as well.
    CHECK(settled(obs("note"), {{a, "observe", 7}, {b, "observe", 7}}, later) ==
          "ruled \"b\" later");
    CHECK(settled(obs("note"), {{a}, {b}}, later) == "ruled \"b\" later");
    // Texts have no spread, so no bound can hold for them.
    CHECK(settled(obs("note"), {{a}, {b}}, bookOf("later", integerValue(9))) == "open");
    CHECK(settled(obs("vigour"), numbers({5, 6}), bookOf("later", integerValue(1))) ==
          "ruled 6 later");
    CHECK(settled(obs("vigour"), numbers({5, 7}), bookOf("later", integerValue(1))) == "open");
}

TEST_CASE("advanced takes the furthest stage where both are near, counted in steps of the list") {
    CHECK(settled(obs("stage"), numbers({61, 63})) == "ruled 63 advanced");
    CHECK(settled(obs("stage"), numbers({63, 61})) == "ruled 63 advanced");
    CHECK(settled(obs("stage"), numbers({61, 64})) == "open");
    CHECK(settled(obs("stage"), numbers({19, 53})) == "ruled 53 advanced"); // neighbours
    CHECK(settled(obs("stage"), numbers({9, 12})) == "ruled 12 advanced");  // 9, 11, 12
    CHECK(settled(obs("stage"), numbers({61, 4})) == "open");               // 4 is no code
    CHECK(settled(obs("stage"), {{integerValue(61)}, {textValue("62")}}) == "open");
    CHECK(settled(obs("stage"), {{integerValue(61)}, {journal::noneValue("dead")}}) == "open");
    CHECK(settled(obs("stage"), numbers({61, 62}), bookOf("advanced", percent(50))) == "open");
    CHECK(settled(obs("vigour"), numbers({5, 6}), bookOf("advanced")) == "open");
}

TEST_CASE("greatest, least and mean are for numbers of what is neither stage nor code") {
    const auto heads = numbers({5, 9, 7});
    CHECK(settled(obs("vigour"), heads, bookOf("greatest")) == "ruled 9 greatest");
    CHECK(settled(obs("vigour"), heads, bookOf("least")) == "ruled 5 least");
    CHECK(settled(obs("vigour"), heads, bookOf("mean")) == "ruled 7 mean");
    for (const char* rule : {"greatest", "least", "mean"}) {
        CAPTURE(rule);
        CHECK(settled(obs("stage"), numbers({61, 62}), bookOf(rule)) == "open");
        CHECK(settled(obs("flower-sex"), numbers({3, 4}), bookOf(rule)) == "open");
        CHECK(settled(obs("vigour"), {{integerValue(5)}, {textValue("6")}}, bookOf(rule)) ==
              "open");
        CHECK(settled(obs("vigour"),
                      {{integerValue(5)}, {journal::noneValue("dead")}},
                      bookOf(rule)) == "open");
    }
    // A descriptor nobody knows has no kind: its numbers are numbers.
    CHECK(settled(obs("bark"), numbers({1, 2}), bookOf("greatest")) == "ruled 2 greatest");
}

TEST_CASE("of equal extremes the first head is picked, as it was written") {
    CHECK(settled(obs("vigour"),
                  {{floatValue(9)}, {integerValue(9)}, {integerValue(5)}},
                  bookOf("greatest")) == "ruled 9.0 greatest");
    CHECK(settled(obs("vigour"),
                  {{integerValue(5)}, {floatValue(5)}, {integerValue(9)}},
                  bookOf("least")) == "ruled 5 least");
}

TEST_CASE("a mean is added in the order of the heads and written shortest") {
    CHECK(settled(obs("yield"), numbers({1, 2}), bookOf("mean")) == "ruled 1.5 mean");
    CHECK(settled(obs("yield"), {{floatValue(1.5)}, {floatValue(2.5)}}, bookOf("mean")) ==
          "ruled 2 mean");
    CHECK(settled(obs("yield"), numbers({0.1, 0.2, 0.3}), bookOf("mean")) ==
          "ruled 0.20000000000000004 mean");
    CHECK(settled(obs("yield"), {{floatValue(1e308)}, {floatValue(1.1e308)}}, bookOf("mean")) ==
          "open"); // the sum is not finite
}

TEST_CASE("within bounds the spread of all heads, in units or in percent of their mean") {
    CHECK(settled(obs("vigour"), numbers({5, 6})) == "ruled 5.5 mean"); // mean within 1
    CHECK(settled(obs("vigour"), numbers({5, 6, 7})) == "open");
    CHECK(settled(obs("soluble-solids"), numbers({15.0, 15.5})) == "ruled 15.25 mean");
    CHECK(settled(obs("soluble-solids"), numbers({15.0, 15.6})) == "open");
    CHECK(settled(obs("clusters"), numbers({195, 205})) == "ruled 200 mean"); // 5 percent
    CHECK(settled(obs("clusters"), numbers({194, 205})) == "open");
    CHECK(settled(obs("yield"), numbers({-10, 10}), bookOf("mean", percent(100))) == "open");
    CHECK(settled(obs("yield"), numbers({-10, -11}), bookOf("mean", percent(10))) ==
          "ruled -10.5 mean");
    CHECK(settled(obs("yield"), numbers({5, 5.5}), bookOf("greatest", integerValue(0))) == "open");
}

TEST_CASE("samples go by their descriptor's rule, and lots do too") {
    CHECK(settled(obs("vigour/t0000000000000001.1,1"), numbers({5, 6})) == "ruled 5.5 mean");
    CHECK(settled("obs/lot:L1/2026-09-12/ph", numbers({3.1, 3.2}), bookOf("mean")) ==
          "ruled 3.1500000000000004 mean");
    CHECK(settled("obs/lot:L1/2026-09-12/ph", {{floatValue(3.25)}, {floatValue(3.5)}}) == "open");
}

TEST_CASE("a stage of the station's own goes by the station's codes") {
    Rulebook book;
    book.apply("descriptor/bark/kind", textValue("stage"), false);
    book.apply("descriptor/bark/codes",
               listValue({textValue("green"), textValue("tan"), textValue("brown")}),
               false);
    book.apply("descriptor/bark/rule",
               record({{"rule", textValue("advanced")}, {"within", integerValue(1)}}),
               false);
    const auto words = [&](const char* a, const char* b) {
        return settled(obs("bark"), {{textValue(a)}, {textValue(b)}}, book);
    };
    CHECK(words("tan", "green") == "ruled \"tan\" advanced");
    CHECK(words("brown", "green") == "open");
    CHECK(words("brown", "grey") == "open");
    book.apply("descriptor/bark/codes", {}, true); // two lists that wait for a person
    CHECK(words("tan", "green") == "open");
}
