// The built-in descriptors, and what each of them takes at entry.
#include "core/descriptors/catalog.hpp"
#include "core/journal/json_value.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <set>
#include <string>
#include <utility>

namespace bullace::descriptors {

namespace {

using journal::floatValue;
using journal::integerValue;
using journal::listValue;
using journal::MapValue;
using journal::numberValue;
using journal::textValue;

const Descriptor& built(std::string_view code) {
    const Descriptor* const found = findBuiltIn(code);
    REQUIRE_MESSAGE(found != nullptr, std::string(code));
    return *found;
}

bool takes(std::string_view code, const Bytes& value) {
    return checkValue(built(code), value).ok();
}

Bytes record(std::initializer_list<std::pair<const char*, Bytes>> parts) {
    MapValue map;
    for (const auto& [name, value] : parts) {
        map.add(name, value);
    }
    return map.bytes();
}

// What the descriptor's own page says of it: rule and tolerance.
struct Expected {
    std::string_view code;
    DescriptorKind kind;
    RuleName rule;
    std::optional<double> within;
};
using K = DescriptorKind;
using R = RuleName;
const Expected kExpected[] = {
    {"stage", K::Stage, R::Advanced, 2},
    {"stage-least", K::Stage, R::Ask, {}},
    {"bud-break", K::Percent, R::Mean, 10},
    {"caps-off", K::Percent, R::Mean, 10},
    {"coloured", K::Percent, R::Mean, 10},
    {"ripe", K::Percent, R::Mean, 10},
    {"leaf-fall", K::Percent, R::Mean, 10},
    {"clusters", K::Count, R::Mean, 5},
    {"clusters-on-shoots", K::Record, R::Ask, {}},
    {"clusters-on-cordon", K::Record, R::Ask, {}},
    {"berries-per-cluster", K::Count, R::Ask, {}},
    {"cluster-weight", K::Measure, R::Ask, {}},
    {"berry-diameter", K::Measure, R::Ask, {}},
    {"berry-weight", K::Measure, R::Ask, {}},
    {"berry-colour", K::Category, R::Ask, {}},
    {"seeds-per-berry", K::Count, R::Ask, {}},
    {"seed-length", K::Measure, R::Ask, {}},
    {"leaf-width", K::Measure, R::Ask, {}},
    {"leaf-length", K::Measure, R::Ask, {}},
    {"soluble-solids", K::Measure, R::Mean, 0.5},
    {"titratable-acidity", K::Measure, R::Mean, 0.5},
    {"ph", K::Measure, R::Mean, 0.1},
    {"skin-thickness", K::Score, R::Mean, 1},
    {"lenticels", K::Score, R::Mean, 1},
    {"flavour", K::Score, R::Mean, 1},
    {"vigour", K::Score, R::Mean, 1},
    {"rot", K::Score, R::Mean, 1},
    {"disease", K::Score, R::Mean, 1},
    {"dry-scar", K::Percent, R::Mean, 10},
    {"flower-sex", K::Code, R::Ask, {}},
    {"primary-buds", K::Record, R::Ask, {}},
    {"secondary-buds", K::Record, R::Ask, {}},
    {"tertiary-buds", K::Record, R::Ask, {}},
    {"freeze-test", K::Record, R::Ask, {}},
    {"dead-spurs", K::Percent, R::Mean, 10},
    {"dead-cordon", K::Percent, R::Mean, 10},
    {"trunk", K::Score, R::Ask, {}},
    {"shoot-length", K::Record, R::Ask, {}},
    {"cordon-length", K::Measure, R::Ask, {}},
    {"shoot-tip", K::Category, R::Ask, {}},
    {"pruning-weight", K::Measure, R::Ask, {}},
    {"yield", K::Measure, R::Ask, {}},
    {"pigment-delphinidin", K::Measure, R::Ask, {}},
    {"pigment-cyanidin", K::Measure, R::Ask, {}},
    {"pigment-petunidin", K::Measure, R::Ask, {}},
    {"pigment-peonidin", K::Measure, R::Ask, {}},
    {"pigment-malvidin", K::Measure, R::Ask, {}},
    {"absorbance", K::Record, R::Ask, {}},
    {"chromosomes", K::Code, R::Ask, {}},
    {"cross-work", K::Record, R::Ask, {}},
    {"verdict", K::Category, R::Ask, {}},
    {"vine", K::Category, R::Ask, {}},
    {"note", K::Text, R::All, {}},
    {"photo", K::Photo, R::All, {}},
};

} // namespace

TEST_CASE("the station begins with these descriptors and their own rules") {
    CHECK(builtInDescriptors().size() == std::size(kExpected));
    for (const Expected& expected : kExpected) {
        CAPTURE(std::string(expected.code));
        const Descriptor& descriptor = built(expected.code);
        CHECK(descriptor.kind == expected.kind);
        CHECK(descriptor.rule.name == expected.rule);
        CHECK(descriptor.rule.within.has_value() == expected.within.has_value());
        if (expected.within) {
            CHECK(descriptor.rule.within->amount == *expected.within);
            CHECK(descriptor.rule.within->isPercent == (expected.code == "clusters"));
        }
        CHECK_FALSE(descriptor.title.empty());
        CHECK_FALSE(descriptor.source.empty());
    }
    CHECK(findBuiltIn("girth") == nullptr);
}

TEST_CASE("every title and every code stands once") {
    std::set<std::string_view> codes;
    std::set<std::string_view> titles;
    for (const Descriptor& descriptor : builtInDescriptors()) {
        codes.insert(descriptor.code);
        titles.insert(descriptor.title);
        CHECK(readKindWord(kindWord(descriptor.kind)) == descriptor.kind);
    }
    CHECK(codes.size() == builtInDescriptors().size());
    CHECK(titles.size() == builtInDescriptors().size());
    CHECK_FALSE(readKindWord("colour").has_value());
}

TEST_CASE("a number is taken up to the edges of its range and not beyond") {
    for (const Descriptor& descriptor : builtInDescriptors()) {
        if (!descriptor.range || !descriptor.codes.empty()) {
            continue;
        }
        CAPTURE(std::string(descriptor.code));
        const double step = std::pow(10.0, -descriptor.decimals);
        CHECK(checkValue(descriptor, numberValue(descriptor.range->least)).ok());
        CHECK(checkValue(descriptor, numberValue(descriptor.range->greatest)).ok());
        CHECK_FALSE(checkValue(descriptor, numberValue(descriptor.range->least - step)).ok());
        CHECK_FALSE(checkValue(descriptor, numberValue(descriptor.range->greatest + step)).ok());
        CHECK_FALSE(checkValue(descriptor, textValue("5")).ok());
        CHECK_FALSE(checkValue(descriptor, journal::nullValue()).ok());
    }
}

TEST_CASE("the ranges are those that the breeder was promised") {
    const auto isRange = [](std::string_view code, double least, double greatest, int decimals) {
        const Descriptor& descriptor = built(code);
        return descriptor.range && descriptor.range->least == least &&
               descriptor.range->greatest == greatest && descriptor.decimals == decimals;
    };
    CHECK(isRange("clusters", 0, 2000, 0));
    CHECK(isRange("berries-per-cluster", 0, 200, 0));
    CHECK(isRange("berry-diameter", 3, 60, 1));
    CHECK(isRange("berry-weight", 0.1, 40, 2));
    CHECK(isRange("seeds-per-berry", 0, 8, 0));
    CHECK(isRange("soluble-solids", 0, 35, 1));
    CHECK(isRange("pruning-weight", 0, 50, 2));
    CHECK(isRange("yield", 0, 200, 2));
    CHECK(isRange("flavour", 1, 9, 0));
    CHECK(isRange("trunk", 0, 3, 0));
    CHECK(isRange("caps-off", 0, 100, 0));
}

TEST_CASE("more decimals than a descriptor has are refused, a whole number never is") {
    CHECK(takes("berry-diameter", floatValue(17.3)));
    CHECK_FALSE(takes("berry-diameter", floatValue(17.35)));
    CHECK(takes("berry-weight", floatValue(6.27)));
    CHECK_FALSE(takes("berry-weight", floatValue(6.275)));
    CHECK(takes("yield", floatValue(199.99)));
    CHECK(takes("clusters", floatValue(120.0)));
    CHECK_FALSE(takes("clusters", floatValue(120.5)));
}

TEST_CASE("codes and words are taken from their list only") {
    CHECK(takes("flower-sex", integerValue(4)));
    CHECK_FALSE(takes("flower-sex", integerValue(5)));
    CHECK_FALSE(takes("flower-sex", integerValue(0)));
    CHECK(takes("chromosomes", integerValue(38)));
    CHECK(takes("chromosomes", integerValue(60)));
    CHECK_FALSE(takes("chromosomes", floatValue(39.5)));
    for (const char* colour : {"bronze", "pink", "red", "purple", "black"}) {
        CHECK(takes("berry-colour", textValue(colour)));
    }
    CHECK_FALSE(takes("berry-colour", textValue("Bronze")));
    CHECK_FALSE(takes("berry-colour", integerValue(1)));
    CHECK(takes("shoot-tip", textValue("slowing")));
    CHECK(takes("verdict", textValue("take-on")));
    CHECK(takes("vine", textValue("not-the-accession")));
    CHECK_FALSE(takes("vine", textValue("gone")));
}

TEST_CASE("why there is no value can be said of every descriptor, in known words") {
    CHECK(noneReasons().size() == 6);
    for (const Descriptor& descriptor : builtInDescriptors()) {
        CAPTURE(std::string(descriptor.code));
        for (const std::string_view reason : noneReasons()) {
            CHECK(checkValue(descriptor, journal::noneValue(reason)).ok());
        }
        CHECK_FALSE(checkValue(descriptor, journal::noneValue("rain")).ok());
        CHECK_FALSE(checkValue(descriptor, record({{"none", integerValue(1)}})).ok());
        CHECK_FALSE(checkValue(descriptor, {}).ok());
    }
}

TEST_CASE("clusters on counted shoots are two whole numbers") {
    const Bytes clusters = integerValue(14);
    CHECK(takes("clusters-on-shoots", record({{"n", clusters}, {"of", integerValue(10)}})));
    CHECK_FALSE(takes("clusters-on-shoots", record({{"n", clusters}})));
    CHECK_FALSE(takes("clusters-on-shoots", record({{"n", clusters}, {"of", integerValue(0)}})));
    CHECK_FALSE(takes("clusters-on-shoots", record({{"n", clusters}, {"of", floatValue(1.5)}})));
    CHECK_FALSE(takes("clusters-on-shoots", integerValue(14)));
    CHECK_FALSE(takes("clusters-on-shoots", listValue({clusters, clusters})));
    CHECK(takes("clusters-on-cordon", record({{"n", clusters}, {"of", floatValue(1.25)}})));
}

TEST_CASE("a record takes no part that it does not have") {
    CHECK_FALSE(takes(
        "clusters-on-shoots",
        record({{"n", integerValue(1)}, {"of", integerValue(2)}, {"side", textValue("east")}})));
}

TEST_CASE("no more buds can be dead than were cut") {
    for (const char* code : {"primary-buds", "secondary-buds", "tertiary-buds"}) {
        CHECK(takes(code, record({{"dead", integerValue(10)}, {"of", integerValue(10)}})));
        CHECK_FALSE(takes(code, record({{"dead", integerValue(11)}, {"of", integerValue(10)}})));
        CHECK_FALSE(takes(code, record({{"dead", integerValue(-1)}, {"of", integerValue(10)}})));
        CHECK_FALSE(takes(code, record({{"of", integerValue(10)}})));
    }
}

TEST_CASE("a freeze test has a temperature, its buds and which buds they were") {
    const auto test = [](double c, std::int64_t dead, const char* bud) {
        return record({{"c", numberValue(c)},
                       {"dead", integerValue(dead)},
                       {"of", integerValue(20)},
                       {"bud", textValue(bud)}});
    };
    CHECK(takes("freeze-test", test(-21.5, 7, "primary")));
    CHECK_FALSE(takes("freeze-test", test(-21.5, 21, "primary")));
    CHECK_FALSE(takes("freeze-test", test(-21.55, 7, "primary")));
    CHECK_FALSE(takes("freeze-test", test(-61, 7, "primary")));
    CHECK_FALSE(takes("freeze-test", test(-21.5, 7, "flower")));
}

TEST_CASE("berries are weighed one by one or several together, and each must be possible") {
    const auto together = [](double g, std::int64_t of) {
        return record({{"g", numberValue(g)}, {"of", integerValue(of)}});
    };
    CHECK(takes("berry-weight", floatValue(0.1)));
    CHECK(takes("berry-weight", together(127.5, 20)));
    CHECK(takes("berry-weight", together(800, 20)));
    CHECK_FALSE(takes("berry-weight", together(800.1, 20)));
    CHECK_FALSE(takes("berry-weight", together(1, 20)));
    CHECK_FALSE(takes("berry-weight", together(127.5, 0)));
    CHECK_FALSE(takes("berry-weight", record({{"of", integerValue(20)}})));
    CHECK_FALSE(takes("berry-diameter", together(20, 1)));
}

TEST_CASE("a shoot keeps its tag") {
    CHECK(takes("shoot-length", record({{"shoot", integerValue(3)}, {"cm", floatValue(87.5)}})));
    CHECK_FALSE(
        takes("shoot-length", record({{"shoot", integerValue(3)}, {"cm", integerValue(1501)}})));
    CHECK_FALSE(takes("shoot-length", record({{"cm", integerValue(80)}})));
    CHECK_FALSE(
        takes("shoot-length", record({{"shoot", integerValue(0)}, {"cm", integerValue(80)}})));
}

TEST_CASE("absorbance is read at two wavelengths, on a day of storage") {
    const auto reading = [](std::int64_t nm, double a) {
        return record({{"day", integerValue(30)},
                       {"nm", integerValue(nm)},
                       {"a", numberValue(a)},
                       {"dilution", integerValue(10)},
                       {"path_mm", integerValue(10)}});
    };
    CHECK(takes("absorbance", reading(520, 0.734)));
    CHECK(takes("absorbance", reading(420, 0)));
    CHECK_FALSE(takes("absorbance", reading(500, 0.734)));
    CHECK_FALSE(takes("absorbance", reading(520, -0.1)));
    CHECK(takes("absorbance",
                record({{"day", integerValue(0)},
                        {"nm", integerValue(520)},
                        {"a", floatValue(0.8)},
                        {"dilution", integerValue(10)},
                        {"path_mm", integerValue(10)},
                        {"ph", floatValue(3.2)},
                        {"storage_c", integerValue(20)}})));
    CHECK_FALSE(takes("absorbance", record({{"nm", integerValue(520)}, {"a", floatValue(0.8)}})));
}

TEST_CASE("work on a cross names the cross and a known step") {
    const Bytes cross = textValue("0c5a91-x7");
    CHECK(takes("cross-work", record({{"cross", cross}, {"step", textValue("bagged")}})));
    CHECK(takes("cross-work",
                record({{"cross", cross},
                        {"step", textValue("pollinated")},
                        {"count", integerValue(46)},
                        {"lot", textValue("P12")},
                        {"tag", integerValue(118)}})));
    CHECK_FALSE(takes("cross-work", record({{"cross", cross}, {"step", textValue("hoped")}})));
    CHECK_FALSE(takes("cross-work", record({{"step", textValue("bagged")}})));
    CHECK_FALSE(
        takes("cross-work", record({{"cross", textValue("a/b")}, {"step", textValue("bagged")}})));
}

TEST_CASE("a note is text, and a photo is named by its digest") {
    CHECK(takes("note", textValue("wasps")));
    CHECK_FALSE(takes("note", textValue("")));
    CHECK_FALSE(takes("note", integerValue(7)));
    CHECK(takes("photo", textValue(std::string(64, 'a'))));
    CHECK_FALSE(takes("photo", textValue(std::string(63, 'a'))));
    CHECK_FALSE(takes("photo", textValue(std::string(64, 'A'))));
}

TEST_CASE("a refusal says what is allowed") {
    const Status refused = checkValue(built("berry-diameter"), numberValue(170));
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().code == ErrorCode::InvalidInput);
    CHECK(refused.error().message == "\"Berry diameter\" takes numbers from 3 to 60 mm.");
    CHECK(checkValue(built("vine"), textValue("gone")).error().message ==
          "\"The vine itself\" takes sound, weak, dead, missing, replanted or not-the-accession.");
}

} // namespace bullace::descriptors
