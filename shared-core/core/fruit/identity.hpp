// Which taxon a vine is: how far its characters speak for each, whether that is enough, and how
// many more clusters or berries are expected to be. Characters are taken as independent within a
// taxon. A muscadine is assumed; wild vines have poisonous look-alikes, so nobody tastes to
// identify.
#pragma once

#include "core/fruit/taxon_profile.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::fruit {

// One vine's values by character; of chosen characters only the first counts.
using VineValues = std::map<std::string, std::vector<double>, std::less<>>;

enum class Verdict {
    NothingToGoBy, // no value of a character that any profile knows
    Undecided,
    Decided,
    Contradictory, // characters speak for different taxa, each strongly
    Hybrid         // 39 chromosomes: with subgenus Vitis
};

// How often a decision may be wrong.
struct DecisionRisk {
    double wrong = 0.05;  // of deciding for a taxon that it is not, over all rivals together
    double missed = 0.05; // of not deciding for the one that it is, were the sampling endless
};

// What one character says.
struct CharacterEvidence {
    std::string character;
    std::size_t n = 0;
    double mean = 0; // the code, of chosen characters
    // In the order of the profiles; nothing where a profile does not know the character.
    std::vector<std::optional<double>> logLikelihoods;
    std::vector<std::optional<double>> distances; // as distanceFrom()
};

struct Identity {
    std::vector<CharacterEvidence> characters;
    // How much more likely the vine's values are if it is the one taxon than if it is the other, as
    // logarithms to base 10, over the characters that both profiles know; [one][other], and 0 where
    // they share none.
    std::vector<std::vector<double>> ratios;
    std::vector<bool> isRival; // whether anything observed tells the taxon from another
    double bound = 0;          // the ratio, as such a logarithm, that decides
    Verdict verdict = Verdict::NothingToGoBy;
    std::optional<std::size_t> leading; // the profile that the values speak for most
    std::optional<double> lead;         // its least ratio to any rival; nothing where it has none
    bool isUsual = false;               // the values lie where 95 % of the leading taxon's vines do
    // By the published ranges alone (TRADE's overlap rule): the taxon into whose ranges both means
    // fall. Flora of North America 12:7.
    std::optional<std::string> byPublishedRanges;
    // By the rule of thumb of 12 berries and 12 mm (common practice, no source).
    std::optional<std::string> byRuleOfThumb;
    Remarks remarks;
};

// Decides for a taxon once its ratio to every rival has passed (1 - missed)/(wrong / rivals) and
// the values are usual for it: where 95 % of its vines lie in all of the characters together, each
// having an equal share of the 5 % (Bonferroni's inequality). Source  Wald 1945,
// Ann. Math. Stat. 16:117-186 (sequential probability ratio test); Armitage 1950, J. R. Stat. Soc.
// B 12:137-144 (more than two hypotheses).
[[nodiscard]] Identity identify(const std::vector<TaxonProfile>& profiles,
                                const VineValues& values,
                                const DecisionRisk& risk = {});

// How many further values of a character are expected to decide.
struct StillNeeded {
    bool isDecided = false;
    // Half of such vines are decided within so many more; nothing where less than half are within
    // kMostForeseen: more of this character will hardly decide.
    std::optional<std::size_t> more;
    double decidedShare = 0; // within kMostForeseen
};
inline constexpr std::size_t kMostForeseen = 40;

// By playing 100 continuations of the vine as one of the leading taxon, drawn from what is known of
// it; the same values give the same answer. Nothing is foreseen of a vine that is unusual for the
// taxon that it is likeliest of. `character` is Count or Measure and known to the
// leading profile, else nothing is foreseen.
[[nodiscard]] StillNeeded stillNeeded(const std::vector<TaxonProfile>& profiles,
                                      const VineValues& values,
                                      std::string_view character,
                                      const DecisionRisk& risk = {});

} // namespace bullace::fruit
