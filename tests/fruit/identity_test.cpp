// What a vine is: published ranges, evidence that adds up, contradictions, and the error rates of
// deciding cluster by cluster.
#include "core/fruit/identity.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <random>
#include <rapidcheck.h>
#include <string>
#include <vector>

using namespace bullace;
using namespace bullace::fruit;

namespace {

VineValues fruitOf(std::vector<double> berries, std::vector<double> diameters) {
    VineValues values;
    values[std::string(kBerriesPerCluster)] = std::move(berries);
    values[std::string(kBerryDiameter)] = std::move(diameters);
    return values;
}

bool says(const Identity& identity, const std::string& words) {
    for (const Remark& remark : identity.remarks) {
        if (inEnglish(remark).find(words) != std::string::npos) {
            return true;
        }
    }
    return false;
}

const std::string& leading(const Identity& identity) {
    return publishedProfiles()[*identity.leading].taxon;
}

double uniform(std::mt19937_64& random) {
    return (static_cast<double>(random() >> 11U) + 0.5) * 0x1p-53;
}

} // namespace

TEST_CASE("few large berries are rotundifolia, many small ones munsoniana, as the Flora has it") {
    // Flora of North America 12:7 (Moore & Wen): 2-8 berries of 15-25 mm; 12-30 of 8-12 mm.
    const Identity large =
        identify(publishedProfiles(), fruitOf({4, 6, 5, 3, 7, 5}, {19, 21, 20, 18, 22, 20}));
    CHECK(large.verdict == Verdict::Decided);
    CHECK(leading(large) == "Vitis rotundifolia");
    CHECK(large.byPublishedRanges == "Vitis rotundifolia");
    CHECK(large.byRuleOfThumb == "Vitis rotundifolia");
    const Identity small =
        identify(publishedProfiles(), fruitOf({18, 22, 15, 25, 19}, {10, 9, 11, 10, 10}));
    CHECK(small.verdict == Verdict::Decided);
    CHECK(leading(small) == "Vitis munsoniana");
    CHECK(small.byPublishedRanges == "Vitis munsoniana");
    CHECK(small.byRuleOfThumb == "Vitis munsoniana");
    CHECK(says(small, "published (Flora of North America"));
    CHECK(says(small, "Vitis popenoei is not compared"));
}

TEST_CASE("the edges of the published ranges: 12 mm and 12 berries, 15 mm and 8") {
    const auto read = [](double berries, double diameter) {
        return identify(publishedProfiles(), fruitOf({berries}, {diameter})).byPublishedRanges;
    };
    CHECK(read(12, 12) == "Vitis munsoniana");
    CHECK(read(35, 8) == "Vitis munsoniana");
    CHECK(read(8, 15) == "Vitis rotundifolia");
    CHECK(read(1, 25) == "Vitis rotundifolia");
    CHECK_FALSE(read(10, 13.5)); // between: undecided
    CHECK_FALSE(read(12, 15));
    CHECK_FALSE(read(8, 12));
    CHECK_FALSE(read(11, 12));
    CHECK_FALSE(read(5, 27));
}

TEST_CASE("what lies between the taxa is not decided, and more of it hardly decides") {
    const VineValues between = fruitOf({10, 10, 10}, {13.5, 13.5});
    const Identity identity = identify(publishedProfiles(), between);
    CHECK(identity.verdict == Verdict::Undecided);
    CHECK_FALSE(identity.byPublishedRanges);
    CHECK(identity.byRuleOfThumb == "Vitis rotundifolia"); // the second check is coarser
}

TEST_CASE(
    "values between the taxa are undecided however many there are, and more is not asked for") {
    const VineValues values = fruitOf({9, 10, 9}, std::vector<double>(30, 13.5));
    const Identity identity = identify(publishedProfiles(), values);
    CHECK(identity.verdict != Verdict::Decided);
    CHECK_FALSE(stillNeeded(publishedProfiles(), values, kBerriesPerCluster).more);
}

TEST_CASE("clusters of one taxon with berries of the other are contradictory, and not averaged") {
    const Identity identity =
        identify(publishedProfiles(), fruitOf({20, 24, 18, 22}, {20, 21, 22, 20}));
    CHECK(identity.verdict == Verdict::Contradictory);
    CHECK(says(identity, "contradicts itself"));
}

TEST_CASE("39 chromosomes are a hybrid with subgenus Vitis, 38 no muscadine") {
    // Viljoen & Spies 1995, Vitis 34:221-224: F1 of vinifera × rotundifolia has 39, almost sterile.
    VineValues values = fruitOf({5, 6, 4}, {20, 19, 21});
    values[std::string(kChromosomes)] = {39};
    const Identity hybrid = identify(publishedProfiles(), values);
    CHECK(hybrid.verdict == Verdict::Hybrid);
    CHECK(says(hybrid, "sterile"));
    values[std::string(kChromosomes)] = {38};
    CHECK(says(identify(publishedProfiles(), values), "no muscadine"));
    values[std::string(kChromosomes)] = {40};
    CHECK(identify(publishedProfiles(), values).verdict == Verdict::Decided);
}

TEST_CASE("without a value there is nothing to go by") {
    CHECK(identify(publishedProfiles(), {}).verdict == Verdict::NothingToGoBy);
    CHECK(identify(publishedProfiles(), fruitOf({}, {})).verdict == Verdict::NothingToGoBy);
    CHECK(identify({}, fruitOf({5}, {20})).verdict == Verdict::NothingToGoBy);
    const StillNeeded needed =
        stillNeeded(publishedProfiles(), fruitOf({}, {}), kBerriesPerCluster);
    CHECK_FALSE(needed.isDecided);
    CHECK_FALSE(needed.more);
}

TEST_CASE("a published range holds about nine tenths of a taxon's single values") {
    for (const TaxonProfile& profile : publishedProfiles()) {
        const auto found = profile.characters.find(kBerriesPerCluster);
        if (found == profile.characters.end()) {
            continue;
        }
        double inside = 0;
        for (double count = found->second.range->low; count <= found->second.range->high; ++count) {
            VineLikelihood one(found->second.law);
            one.add(count);
            inside += std::exp(one.logValue());
        }
        CHECK(inside > 0.8);
        CHECK(inside < 0.95);
    }
}

TEST_CASE("the likelihood of single values sums to one, and and so do the sums of two") {
    const CharacterLaw law = countLawOfRange(12, 30);
    double all = 0;
    for (int count = 0; count < 400; ++count) {
        VineLikelihood one(law);
        one.add(count);
        all += std::exp(one.logValue());
    }
    CHECK(all == doctest::Approx(1).epsilon(1e-6));
    // Of two clusters the sum: all sums together are certain, too.
    double sums = 0;
    for (int sum = 0; sum < 800; ++sum) {
        VineLikelihood two(law);
        two.add(std::vector<double>{0, static_cast<double>(sum)});
        sums += std::exp(two.logValue());
    }
    CHECK(sums == doctest::Approx(1).epsilon(1e-6));
}

TEST_CASE("how values scatter about their mean is no evidence for a taxon") {
    // 60 berries that differ little from 16.4 mm: nearer to rotundifolia's middle in its own
    // spread than to munsoniana's, however even they are.
    const std::vector<double> even(60, 16.4);
    std::vector<double> uneven;
    for (int i = 0; i < 60; ++i) {
        uneven.push_back(16.4 + (i % 2 == 0 ? 3.0 : -3.0));
    }
    for (const std::vector<double>& berries : {even, uneven}) {
        const Identity identity = identify(publishedProfiles(), fruitOf({5, 6, 5, 6}, berries));
        CHECK(leading(identity) == "Vitis rotundifolia");
        CHECK(identity.verdict == Verdict::Decided);
    }
}

TEST_CASE("a measure's likelihood with the vine's mean integrated out is the closed form") {
    // Their mean is normal with the variance between² + within²/n.
    const CharacterLaw law{LawKind::Measure, 20, 2, 1.5, {}, 0.01};
    VineLikelihood vine(law);
    vine.add(std::vector<double>{21.2, 19.4, 22.7});
    const double variance = 4 + 1.5 * 1.5 / 3;
    const double off = (21.2 + 19.4 + 22.7) / 3 - 20;
    const double exact = -0.5 * (std::log(2 * std::numbers::pi * variance) + off * off / variance);
    CHECK(vine.logValue() == doctest::Approx(exact).epsilon(1e-12));
}

TEST_CASE("deciding cluster by cluster keeps its error rates over 10,000 vines") {
    const std::vector<TaxonProfile>& profiles = publishedProfiles();
    std::mt19937_64 random(7);
    int wrong = 0;
    int decided = 0;
    constexpr int kVines = 10'000;
    for (int vine = 0; vine < kVines; ++vine) {
        const std::size_t truth = static_cast<std::size_t>(vine % 2);
        const CharacterLaw& law = profiles[truth].characters.find(kBerriesPerCluster)->second.law;
        const VineLikelihood source(law);
        const double mean = source.drawMean(uniform(random));
        VineValues values;
        std::vector<double>& berries = values[std::string(kBerriesPerCluster)];
        for (int cluster = 0; cluster < 30; ++cluster) {
            berries.push_back(source.drawValue(mean, uniform(random)));
            const Identity identity = identify(profiles, values);
            if (identity.verdict == Verdict::Decided) {
                ++decided;
                wrong += *identity.leading == truth ? 0 : 1;
                break;
            }
        }
    }
    MESSAGE("clusters: decided " << 100.0 * decided / kVines << " %, wrong "
                                 << 100.0 * wrong / kVines << " %");
    CHECK(wrong <= 0.05 * kVines);
    CHECK(decided >= 0.9 * kVines);
}

TEST_CASE("deciding berry by berry keeps its error rates, too") {
    const std::vector<TaxonProfile>& profiles = publishedProfiles();
    std::mt19937_64 random(8);
    int wrong = 0;
    constexpr int kVines = 10'000;
    for (int vine = 0; vine < kVines; ++vine) {
        const std::size_t truth = static_cast<std::size_t>(vine % 2);
        const CharacterLaw& law = profiles[truth].characters.find(kBerryDiameter)->second.law;
        const VineLikelihood source(law);
        const double mean = source.drawMean(uniform(random));
        VineValues values;
        std::vector<double>& berries = values[std::string(kBerryDiameter)];
        for (int berry = 0; berry < 20; ++berry) {
            berries.push_back(source.drawValue(mean, uniform(random)));
            const Identity identity = identify(profiles, values);
            if (identity.verdict == Verdict::Decided) {
                wrong += *identity.leading == truth ? 0 : 1;
                break;
            }
        }
    }
    MESSAGE("berries: wrong " << 100.0 * wrong / kVines << " %");
    CHECK(wrong <= 0.05 * kVines);
}

TEST_CASE("how many more clusters decide is foreseen about right") {
    const std::vector<TaxonProfile>& profiles = publishedProfiles();
    VineValues values;
    values[std::string(kBerriesPerCluster)] = {9};
    const StillNeeded first = stillNeeded(profiles, values, kBerriesPerCluster);
    CHECK_FALSE(first.isDecided);
    CHECK(stillNeeded(profiles, values, kBerriesPerCluster).more == first.more);
    values[std::string(kBerriesPerCluster)] = {5, 4, 6, 5, 4};
    CHECK(stillNeeded(profiles, values, kBerriesPerCluster).isDecided);
    values[std::string(kBerriesPerCluster)] = {7};
    const StillNeeded near = stillNeeded(profiles, values, kBerriesPerCluster);
    CHECK((near.isDecided || (near.more && *near.more <= 10)));
}

TEST_CASE("the station's own verified accessions take the place of the published ranges") {
    std::vector<VerifiedAccession> verified;
    for (const double mean : {11.0, 12.0, 13.0}) {
        VerifiedAccession accession{"Vitis rotundifolia", {}};
        for (const double vine : {-0.5, 0.5}) {
            accession.vines[std::string(kBerryDiameter)].push_back(
                {mean + vine - 0.3, mean + vine + 0.1, mean + vine + 0.2});
        }
        verified.push_back(accession);
    }
    const std::vector<TaxonProfile> profiles = profilesWith(verified);
    const ProfileCharacter& own = profiles[0].characters.find(kBerryDiameter)->second;
    CHECK(own.isOwn);
    CHECK(own.vines == 6);
    CHECK(own.values == 18);
    CHECK(own.law.mean == doctest::Approx(12));
    CHECK(own.range->low == 15); // the published range stays known
    const Identity identity = identify(profiles, fruitOf({5, 4, 5}, {12, 12.1, 11.9}));
    CHECK(says(identity, "18 values on 6 vines of the station's verified accessions"));
    verified.pop_back(); // two accessions are not enough
    CHECK_FALSE(profilesWith(verified)[0].characters.find(kBerryDiameter)->second.isOwn);
}

TEST_CASE("a taxon that only the station has is compared like any other") {
    std::vector<VerifiedAccession> verified;
    for (const double mean : {29.0, 30.0, 31.0}) {
        VerifiedAccession accession{"Vitis incerta", {}};
        for (const double vine : {-0.6, 0.6}) {
            accession.vines[std::string(kBerryDiameter)].push_back({mean + vine, mean + vine + 1});
        }
        verified.push_back(accession);
    }
    const std::vector<TaxonProfile> profiles = profilesWith(verified);
    REQUIRE(profiles.size() == 4);
    VineValues values;
    values[std::string(kBerryDiameter)] = {30, 31, 30, 30.5};
    const Identity identity = identify(profiles, values);
    CHECK(profiles[*identity.leading].taxon == "Vitis incerta");
    CHECK(identity.verdict == Verdict::Decided);
}

TEST_CASE("whatever is typed in, the evidence is finite") {
    CHECK(rc::check(
        [](const std::vector<std::int16_t>& berries, const std::vector<std::int16_t>& mm) {
            const std::vector<double> counts(berries.begin(), berries.end());
            const std::vector<double> sizes(mm.begin(), mm.end());
            const Identity identity = identify(publishedProfiles(), fruitOf(counts, sizes));
            for (const auto& row : identity.ratios) {
                for (const double ratio : row) {
                    RC_ASSERT(std::isfinite(ratio));
                }
            }
        }));
}
