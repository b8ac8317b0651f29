// What a cross gives, by the published ratios and numbers.
#include "core/breeding/expected_cross.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace bullace;
using namespace bullace::breeding;

namespace {

CrossParent vine(const std::string& id, FlowerSex sex, int chromosomes = 40) {
    CrossParent parent;
    parent.id = id;
    parent.sex = sex;
    parent.chromosomes = chromosomes;
    return parent;
}

const CrossParent kFemale = vine("A1", FlowerSex::Female);
const CrossParent kPerfect = vine("A2", FlowerSex::Perfect);
const CrossParent kMale = vine("A3", FlowerSex::Male);

} // namespace

TEST_CASE("40 by 40 stays fertile, 38 by 40 gives 39 with a warning and no ban") {
    // Viljoen & Spies 1995, Vitis 34:221-224.
    const CrossParent bunch = vine("B1", FlowerSex::Perfect, 38);
    CHECK(expectedChromosomes(kFemale, kPerfect).number == 40);
    CHECK(expectedChromosomes(kFemale, kPerfect).remarks.empty());
    CHECK(expectedChromosomes(bunch, bunch).number == 38);
    const auto hybrid = expectedChromosomes(bunch, kPerfect);
    CHECK(hybrid.number == 39);
    REQUIRE(hybrid.remarks.size() == 1);
    CHECK(inEnglish(hybrid.remarks[0]).find("almost sterile") != std::string::npos);
    CHECK(expectedChromosomes(kFemale, bunch).remarks.size() == 2);
    const auto back = expectedChromosomes(vine("H1", FlowerSex::Perfect, 39), kPerfect);
    CHECK_FALSE(back.number);
    CHECK(inEnglish(back.remarks[0]).find("not balanced") != std::string::npos);
    CHECK_FALSE(expectedChromosomes(CrossParent{}, kPerfect).number);
}

TEST_CASE("codes of flower sex") {
    CHECK(vineyard::flowerSexOf(1) == FlowerSex::Male);
    CHECK(vineyard::flowerSexOf(2) == FlowerSex::Male);
    CHECK(vineyard::flowerSexOf(3) == FlowerSex::Perfect);
    CHECK(vineyard::flowerSexOf(4) == FlowerSex::Female);
    CHECK_FALSE(vineyard::flowerSexOf(5));
}

TEST_CASE("a female by a perfect vine is expected to give as many females as perfect ones") {
    // Proc. Fla. State Hort. Soc. 112, 1999: 65 seedlings fit 1 : 1, 32.5 each.
    const auto sexes = expectedSexes(kFemale, kPerfect);
    REQUIRE(sexes.possible.size() == 2);
    CHECK(sexes.possible[0] == SexShares{0, 0.5, 0.5});
    CHECK(sexes.possible[1] == SexShares{0, 1, 0});
    CrossParent seedling = kPerfect;
    seedling.carriesFemale = true;
    CHECK(expectedSexes(kFemale, seedling).possible == std::vector{SexShares{0, 0.5, 0.5}});
}

TEST_CASE("other sexes by the model of one locus") {
    CHECK(expectedSexes(kFemale, kMale).possible ==
          std::vector{SexShares{0.5, 0, 0.5}, SexShares{0.5, 0.5, 0}});
    const auto perfect = expectedSexes(kPerfect, vine("A9", FlowerSex::Perfect));
    CHECK(perfect.possible == std::vector{SexShares{0, 0.75, 0.25}, SexShares{0, 1, 0}});
    CHECK(inEnglish(perfect.remarks.at(0)).find("some male seedlings") != std::string::npos);
    CHECK(expectedSexes(kPerfect, kPerfect).possible.size() == 2);
    const auto two = expectedSexes(kFemale, kFemale);
    CHECK(two.possible.empty());
    CHECK(inEnglish(two.remarks.at(0)) == "A1 has female flowers: its pollen does not function.");
    CHECK(inEnglish(expectedSexes(kMale, kPerfect).remarks.at(0)) ==
          "A3 has male flowers and sets no fruit.");
    CHECK(expectedSexes(CrossParent{}, kPerfect).possible.empty());
}

TEST_CASE("65 seedlings of the published family are expected as 32.5, 16.25 and 16.25") {
    CrossParent dark = kFemale;
    dark.berryColour = "black";
    CrossParent bronze = kPerfect;
    bronze.berryColour = "bronze";
    const auto colours = expectedColours(dark, bronze);
    REQUIRE(colours.shares);
    const std::array ratio{colours.shares->black, colours.shares->red, colours.shares->bronze};
    const auto fit = ratioFit(std::array<std::int64_t, 3>{30, 18, 17}, ratio);
    REQUIRE(fit.ok());
    CHECK(fit->expected == std::vector{32.5, 16.25, 16.25});
    CHECK(fit->degreesOfFreedom == 2);
    CHECK(*fit->chiSquared ==
          doctest::Approx(6.25 / 32.5 + (3.0625 + 0.5625) / 16.25).epsilon(1e-12));
    CHECK(*fit->p == doctest::Approx(std::exp(-*fit->chiSquared / 2)).epsilon(1e-9));
    CHECK_FALSE(expectedColours(dark, dark).shares);
    CHECK(expectedColours(dark, dark).remarks.size() == 1);
}

TEST_CASE("a ratio that cannot be tested says so instead of a number") {
    const auto nobody = ratioFit(std::array<std::int64_t, 2>{0, 0}, std::array{1.0, 1.0});
    REQUIRE(nobody.ok());
    CHECK_FALSE(nobody->p);
    const auto never = ratioFit(std::array<std::int64_t, 2>{40, 3}, std::array{1.0, 0.0});
    CHECK(never->p == 0.0);
    CHECK_FALSE(never->chiSquared);
    CHECK_FALSE(ratioFit(std::array<std::int64_t, 2>{1, 1}, std::array{1.0, -1.0}).ok());
    CHECK_FALSE(ratioFit(std::array<std::int64_t, 2>{1, 1}, std::array{std::nan(""), 1.0}).ok());
    CHECK_FALSE(ratioFit(std::array<std::int64_t, 1>{1}, std::array{1.0}).ok());
}

TEST_CASE("a family's mean is between its parents, its spread shrinks with their inbreeding") {
    CrossParent mother = kFemale;
    mother.merit = 4;
    mother.meritErrorVariance = 0.4;
    mother.inbreeding = 0;
    CrossParent father = kPerfect;
    father.merit = 1;
    father.meritErrorVariance = 0.8;
    father.inbreeding = 0.5;
    const auto family = expectedMerit(mother, father, 2.0, 0.125);
    CHECK(family.mean == 2.5);
    CHECK(*family.meanErrorVariance == doctest::Approx(0.3));
    CHECK(*family.withinVariance == doctest::Approx(0.75));
    CHECK(family.inbreeding == 0.125);
    // Selfing: Mendelian variance 1/2 - F/2, inbreeding (1 + F)/2.
    const auto selfed = expectedMerit(father, father, 2.0, {});
    CHECK(selfed.withinVariance == 0.5);
    CHECK(selfed.inbreeding == 0.75);
    CHECK(selfed.meanErrorVariance == 0.8);
    const auto unknown = expectedMerit(mother, CrossParent{}, 2.0, {});
    CHECK_FALSE(unknown.mean);
    CHECK_FALSE(unknown.withinVariance);
    CHECK(unknown.remarks.size() == 1);
}

TEST_CASE("mixed pollen spreads a family by the fathers' differences") {
    ExpectedMerit one;
    one.mean = 1;
    one.withinVariance = 0.5;
    ExpectedMerit other = one;
    other.mean = 3;
    const auto mixed = expectedMixture(std::vector{one, other}, std::vector{1.0, 3.0});
    REQUIRE(mixed.ok());
    CHECK(mixed->mean == 2.5);
    CHECK(*mixed->withinVariance == doctest::Approx(0.5 + 0.75));
    CHECK_FALSE(mixed->inbreeding);
    CHECK_FALSE(expectedMixture(std::vector{one}, std::vector{0.0}).ok());
    CHECK_FALSE(expectedMixture({}, {}).ok());
}
