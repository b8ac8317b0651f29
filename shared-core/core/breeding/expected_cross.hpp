// What a cross is expected to give: chromosomes, sexes, colours of berries, merit and its spread,
// inbreeding. Nothing here forbids a cross; what speaks against one is a remark.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/vineyard/flower_sex.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::breeding {

using vineyard::FlowerSex;

// A parent as far as it is known.
struct CrossParent {
    std::string id;
    std::optional<int> chromosomes{}; // 2n
    std::optional<FlowerSex> sex{};
    // Whether it carries the allele of female flowers: true of a seedling of a female vine.
    std::optional<bool> carriesFemale{};
    std::string berryColour{}; // bronze, pink, red, purple, black; empty where it is not known
    // The predicted breeding value, in the unit of the trait or index, and the variance of its
    // error of prediction.
    std::optional<double> merit{};
    std::optional<double> meritErrorVariance{};
    std::optional<double> inbreeding{};
};

// 2n of the seedlings: half of each parent's. Nothing where one is not known, or has an odd number
// or another than 38 or 40: its gametes are not balanced.
// 40 × 40 gives 40; 38 × 40 gives 39, almost sterile: 0.52 % of such seed germinated, and only with
// 38 chromosomes on the mother's side. Source  Viljoen & Spies 1995, Vitis 34:221-224.
struct ExpectedChromosomes {
    std::optional<int> number;
    Remarks remarks;
};
[[nodiscard]] ExpectedChromosomes expectedChromosomes(const CrossParent& mother,
                                                      const CrossParent& father);

// Shares of the three sexes among the seedlings, together 1.
struct SexShares {
    double male = 0;
    double perfect = 0;
    double female = 0;

    friend bool operator==(const SexShares&, const SexShares&) = default;
};

// Working model: one locus with the alleles male over perfect over female; a male is never pure for
// its allele, as two males give no seed. Source  abstract at the ASHS Annual Conference 2016; later
// marker work calls the inheritance unclear, and perfect by perfect gives some males that the model
// does not explain, so records that do not fit are no errors. One published family of female by
// perfect, 65 seedlings, fits 1 : 1 (Proc. Fla. State Hort. Soc. 112, 1999).
// All that the parents' genotypes allow, the likeliest first: a parent that may carry the female
// allele does. Empty where a sex is not known or the cross gives no seed (a male mother, a female
// father), which a remark says.
struct ExpectedSexes {
    std::vector<SexShares> possible;
    Remarks remarks;
};
[[nodiscard]] ExpectedSexes expectedSexes(const CrossParent& mother, const CrossParent& father);

// black : red : bronze as 2 : 1 : 1, the ratio of the same published family (two loci were
// suggested). Given where one parent is dark (red, purple, black) and the other bronze; nothing,
// and a remark, else.
struct ColourShares {
    double black = 0.5;
    double red = 0.25;
    double bronze = 0.25;
};
struct ExpectedColours {
    std::optional<ColourShares> shares;
    Remarks remarks;
};
[[nodiscard]] ExpectedColours expectedColours(const CrossParent& mother, const CrossParent& father);

// Whether counts of a family fit a ratio: Pearson's chi squared with one degree of freedom less
// than classes; nothing beside `expected` where nobody was counted. Classes with an expectation of
// 0 and a count above 0 do not fit at all (p = 0, no statistic).
struct RatioFit {
    std::vector<double> expected;
    std::optional<double> chiSquared;
    std::optional<double> p;
    int degreesOfFreedom = 0;
    Remarks remarks; // an expectation below 5, where chi squared is rough
};
// Errors  InvalidInput where counts and ratio have not one length from 2, or the ratio is negative
// or
//         adds up to nothing.
[[nodiscard]] Result<RatioFit> ratioFit(std::span<const std::int64_t> counts,
                                        std::span<const double> ratio);

// The family's merit.
struct ExpectedMerit {
    std::optional<double> mean;              // of the parents' merits
    std::optional<double> meanErrorVariance; // the parents' errors taken as independent
    // Additive variance among full sibs from Mendelian sampling, 1/2 (1 - (F_m + F_f)/2) of the
    // base population's; a selfing's too. Source  Henderson 1976, Biometrics 32:69-83; Falconer &
    // Mackay 1996, ch. 15. Dominance and the depression by inbreeding are not in it.
    std::optional<double> withinVariance;
    std::optional<double> inbreeding; // of the seedlings: the parents' kinship
    Remarks remarks;
};

// `additiveVariance` is that of the base population, `kinship` that of the two parents; either may
// not be known.
[[nodiscard]] ExpectedMerit expectedMerit(const CrossParent& mother,
                                          const CrossParent& father,
                                          std::optional<double> additiveVariance,
                                          std::optional<double> kinship);

// A cross with a mixture of pollen: the fathers' shares of it (above 0; they are brought to a sum
// of 1) stand for their shares of the seedlings, which nobody knows better. The variance within is
// the mean of the families' plus that between their means.
// Errors  InvalidInput where spans differ in length, are empty, or a share is not above 0.
[[nodiscard]] Result<ExpectedMerit> expectedMixture(std::span<const ExpectedMerit> families,
                                                    std::span<const double> shares);

} // namespace bullace::breeding
