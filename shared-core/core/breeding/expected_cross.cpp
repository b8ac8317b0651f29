// Ratios by enumerating the genotypes that the parents may have; merit by the infinitesimal model.
#include "core/breeding/expected_cross.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bullace::breeding {

namespace {

enum Allele : std::size_t { kMaleAllele, kPerfectAllele, kFemaleAllele };
using Genotype = std::array<Allele, 2>; // the dominant one first

// Those with the female allele first.
std::vector<Genotype> genotypesOf(const CrossParent& parent) {
    const Allele first = *parent.sex == FlowerSex::Male      ? kMaleAllele
                         : *parent.sex == FlowerSex::Perfect ? kPerfectAllele
                                                             : kFemaleAllele;
    if (first == kFemaleAllele) {
        return {{kFemaleAllele, kFemaleAllele}};
    }
    if (!parent.carriesFemale) {
        return {{first, kFemaleAllele}, {first, kPerfectAllele}};
    }
    return {{first, *parent.carriesFemale ? kFemaleAllele : kPerfectAllele}};
}

SexShares sharesOf(const Genotype& mother, const Genotype& father) {
    std::array<double, 3> shares{};
    for (const Allele one : mother) {
        for (const Allele other : father) {
            shares[std::min(one, other)] += 0.25;
        }
    }
    return {shares[kMaleAllele], shares[kPerfectAllele], shares[kFemaleAllele]};
}

bool isDark(const std::string& colour) {
    return colour == "red" || colour == "purple" || colour == "black";
}

std::optional<double> meanOf(const std::optional<double>& one, const std::optional<double>& other) {
    return one && other ? std::optional((*one + *other) / 2) : std::nullopt;
}

bool isBalanced(int chromosomes) {
    return chromosomes == 38 || chromosomes == 40;
}

// Whether the sexes are known and give seed; else the remark.
bool canGiveSeed(const CrossParent& mother, const CrossParent& father, Remarks& remarks) {
    for (const CrossParent* parent : {&mother, &father}) {
        if (!parent->sex) {
            remarks.push_back(
                {BULLACE_SENTENCE("Remark", "The flower sex of %1 is not known."), {parent->id}});
        }
    }
    if (mother.sex == FlowerSex::Male) {
        remarks.push_back(
            {BULLACE_SENTENCE("Remark", "%1 has male flowers and sets no fruit."), {mother.id}});
    }
    if (father.sex == FlowerSex::Female) {
        remarks.push_back(
            {BULLACE_SENTENCE("Remark", "%1 has female flowers: its pollen does not function."),
             {father.id}});
    }
    return remarks.empty();
}

} // namespace

ExpectedChromosomes expectedChromosomes(const CrossParent& mother, const CrossParent& father) {
    ExpectedChromosomes expected;
    for (const CrossParent* parent : {&mother, &father}) {
        if (!parent->chromosomes) {
            expected.remarks.push_back(
                {BULLACE_SENTENCE("Remark", "The chromosome number of %1 is not known."),
                 {parent->id}});
        } else if (!isBalanced(*parent->chromosomes)) {
            expected.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "%1 has %2 chromosomes: its pollen and egg cells are not "
                                  "balanced, little or no fertile seed is to be expected."),
                 {parent->id, std::int64_t{*parent->chromosomes}}});
        }
    }
    if (!expected.remarks.empty()) {
        return expected;
    }
    expected.number = (*mother.chromosomes + *father.chromosomes) / 2;
    if (*expected.number != 39) {
        return expected;
    }
    expected.remarks.push_back(
        {BULLACE_SENTENCE("Remark",
                          "Seedlings of %1 by %2 have 39 chromosomes and are almost sterile. Of "
                          "such seed 0.52 % germinated in a published trial."),
         {mother.id, father.id}});
    if (*mother.chromosomes == 40) {
        expected.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "In that trial seed came only from mothers with 38 chromosomes; %1 "
                              "has 40."),
             {mother.id}});
    }
    return expected;
}

ExpectedSexes expectedSexes(const CrossParent& mother, const CrossParent& father) {
    ExpectedSexes expected;
    if (!canGiveSeed(mother, father, expected.remarks)) {
        return expected;
    }
    for (const Genotype& one : genotypesOf(mother)) {
        for (const Genotype& other : genotypesOf(father)) {
            const bool isSelfing = mother.id == father.id;
            const SexShares shares = sharesOf(one, other);
            const bool isNew =
                std::ranges::find(expected.possible, shares) == expected.possible.end();
            if (isNew && (!isSelfing || one == other)) {
                expected.possible.push_back(shares);
            }
        }
    }
    if (mother.sex == FlowerSex::Perfect && father.sex == FlowerSex::Perfect) {
        expected.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Perfect by perfect has given some male seedlings, which the model "
                              "of one locus does not explain."),
             {}});
    }
    return expected;
}

ExpectedColours expectedColours(const CrossParent& mother, const CrossParent& father) {
    ExpectedColours expected;
    const bool fits = (isDark(mother.berryColour) && father.berryColour == "bronze") ||
                      (isDark(father.berryColour) && mother.berryColour == "bronze");
    if (fits) {
        expected.shares = ColourShares{};
        expected.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The ratio of colours is that of one published family of 65 "
                              "seedlings; others may differ."),
             {}});
    } else {
        expected.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "No ratio of berry colours is published for %1 by %2."),
             {mother.id, father.id}});
    }
    return expected;
}

Result<RatioFit> ratioFit(std::span<const std::int64_t> counts, std::span<const double> ratio) {
    const double parts = std::accumulate(ratio.begin(), ratio.end(), 0.0);
    const bool isSound = counts.size() == ratio.size() && counts.size() >= 2 &&
                         std::ranges::all_of(ratio, [](double r) { return r >= 0; }) &&
                         std::isfinite(parts) && parts > 0 &&
                         std::ranges::all_of(counts, [](std::int64_t n) { return n >= 0; });
    if (!isSound) {
        return Error{ErrorCode::InvalidInput,
                     "A ratio needs a number from 0 for each class, and each class its count.",
                     ""};
    }
    RatioFit fit;
    const double n =
        std::accumulate(counts.begin(), counts.end(), 0.0, [](double sum, std::int64_t count) {
            return sum + static_cast<double>(count);
        });
    double chiSquared = 0;
    bool isImpossible = false;
    int classes = 0;
    for (std::size_t k = 0; k < counts.size(); ++k) {
        const double expected = n * ratio[k] / parts;
        const double off = static_cast<double>(counts[k]) - expected;
        fit.expected.push_back(expected);
        classes += ratio[k] > 0 ? 1 : 0;
        isImpossible = isImpossible || (expected == 0 && counts[k] > 0);
        chiSquared += expected > 0 ? off * off / expected : 0;
    }
    fit.degreesOfFreedom = classes - 1;
    if (isImpossible) {
        fit.p = 0.0;
    } else if (n > 0 && fit.degreesOfFreedom > 0) {
        fit.chiSquared = chiSquared;
        fit.p = statistics::chiSquaredAbove(chiSquared, fit.degreesOfFreedom);
    }
    if (std::ranges::any_of(fit.expected, [](double e) { return e > 0 && e < 5; })) {
        fit.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "A class with an expectation below 5 makes the test of a ratio "
                              "rough."),
             {}});
    }
    return fit;
}

ExpectedMerit expectedMerit(const CrossParent& mother,
                            const CrossParent& father,
                            std::optional<double> additiveVariance,
                            std::optional<double> kinship) {
    ExpectedMerit expected;
    const bool isSelfing = mother.id == father.id;
    expected.mean = meanOf(mother.merit, father.merit);
    if (mother.meritErrorVariance && father.meritErrorVariance) {
        expected.meanErrorVariance =
            isSelfing ? *mother.meritErrorVariance
                      : (*mother.meritErrorVariance + *father.meritErrorVariance) / 4;
    }
    for (const CrossParent* parent : {&mother, &father}) {
        if (!parent->merit) {
            expected.remarks.push_back(
                {BULLACE_SENTENCE("Remark", "There is no prediction for %1."), {parent->id}});
        }
    }
    if (const auto f = meanOf(mother.inbreeding, father.inbreeding); f && additiveVariance) {
        expected.withinVariance = *additiveVariance * (1 - *f) / 2;
    }
    expected.inbreeding = kinship;
    if (!kinship && isSelfing && mother.inbreeding) {
        expected.inbreeding = (1 + *mother.inbreeding) / 2;
    }
    return expected;
}

Result<ExpectedMerit> expectedMixture(std::span<const ExpectedMerit> families,
                                      std::span<const double> shares) {
    const double parts = std::accumulate(shares.begin(), shares.end(), 0.0);
    if (families.size() != shares.size() || families.empty() || !std::isfinite(parts) ||
        !std::ranges::all_of(shares, [](double share) { return share > 0; })) {
        return Error{ErrorCode::InvalidInput,
                     "Each father of a mixture of pollen needs a share above 0.",
                     ""};
    }
    const auto mixed = [&](std::optional<double> ExpectedMerit::*of) {
        std::optional<double> sum = 0.0;
        for (std::size_t k = 0; k < families.size(); ++k) {
            const std::optional<double>& value = families[k].*of;
            sum = sum && value ? std::optional(*sum + *value * shares[k] / parts) : std::nullopt;
        }
        return sum;
    };
    ExpectedMerit all;
    all.mean = mixed(&ExpectedMerit::mean);
    all.inbreeding = mixed(&ExpectedMerit::inbreeding);
    all.withinVariance = mixed(&ExpectedMerit::withinVariance);
    for (std::size_t k = 0; k < families.size(); ++k) {
        if (all.withinVariance && all.mean) {
            const double off = *families[k].mean - *all.mean;
            *all.withinVariance += off * off * shares[k] / parts;
        }
        all.remarks.insert(
            all.remarks.end(), families[k].remarks.begin(), families[k].remarks.end());
    }
    if (!all.mean) {
        all.withinVariance = std::nullopt;
    }
    all.remarks.push_back(
        {BULLACE_SENTENCE("Remark",
                          "The fathers' shares of the pollen stand for their shares of the "
                          "seedlings; only parentage tests tell the true ones."),
         {}});
    return all;
}

} // namespace bullace::breeding
