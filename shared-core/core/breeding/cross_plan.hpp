// Which crosses to make: her own list checked and commented, and the best set computed.
#pragma once

#include "core/breeding/expected_cross.hpp"
#include "core/breeding/integer_programme.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::breeding {

struct PlanCandidate {
    CrossParent parent;
    bool mayBeMother = true;
    bool mayBeFather = true;
    std::size_t fewestUses = 0; // in either role
    std::size_t mostUses = 4;
    // Share of each species of PlanRules::species, in their order; empty where it is not known.
    std::vector<double> speciesShares{};
};

// What is known of two candidates beside their predictions.
struct PairKnown {
    std::optional<double> kinship{};      // 0 to 1; of a candidate with itself (1 + F)/2
    std::optional<double> bloomOverlap{}; // probability from 0 to 1 that pollen is there in time
    bool hasStoredPollen = false;         // of the father: bloom need not overlap
};

// Of n candidates n × n: mother * n + father. Kinship is the same both ways; where one way is not
// known the other is taken.
using PairTable = std::vector<PairKnown>;

struct SpeciesWish {
    std::string species;
    double fewest = 0; // share of the seedlings, 0 to 1
    double most = 1;
    bool inEachCross = false; // or on average over all
};

struct PlanRules {
    std::size_t crosses = 10;
    std::optional<double> mostKinship{};      // of the two parents: the inbreeding of the seedlings
    std::optional<double> mostGroupKinship{}; // c'Kc over all parents, each weighed by its uses
    std::optional<double> leastOverlap{};     // of bloom, where no pollen is stored
    bool hasSelfings = false;
    std::vector<SpeciesWish> species{};
    // With the additive variance of the base population a cross is worth its mean and this many
    // standard deviations within the family: its usefulness (Schnell & Utz 1975, Bericht über die
    // Arbeitstagung der Vereinigung österreichischer Pflanzenzüchter, 243-248; from memory).
    std::optional<double> additiveVariance{};
    double spreadIntensity = 0;
    double seconds = 5;
    std::size_t refusalsTold = 30;
};

struct PlannedCross {
    std::size_t mother = 0; // candidates
    std::size_t father = 0;
    double worth = 0;
    ExpectedMerit merit;
    ExpectedChromosomes chromosomes;
    ExpectedSexes sexes;
    ExpectedColours colours;
    // A female mother needs none but has to be bagged all the same; nothing where her sex is not
    // known. TRADE: common practice.
    std::optional<bool> needsEmasculation;
    std::optional<double> bloomOverlap;
    bool usesStoredPollen = false; // it is needed: bloom does not overlap enough
    Remarks warnings;              // none of them forbids it
};

enum class WhyNot {
    NoSeed,       // a male mother or a female father
    NotWanted,    // the candidate is kept out of that role, or selfings are
    BloomApart,   //
    TooRelated,   //
    OtherSpecies, // its share of a species is outside what each cross must have
    UsesUp,       // a parent is used as often as it may be, in better crosses
    Outbid        // others serve the plan as a whole better
};

// A pair that is worth at least as much as the least of the plan, and is not in it.
struct Refusal {
    std::size_t mother = 0;
    std::size_t father = 0;
    double worth = 0;
    WhyNot why = WhyNot::Outbid;
    Remark reason;
    // What the sum of worths would lose at least if it were forced in (reduced cost of the
    // relaxation); of pairs that the rules allow.
    std::optional<double> leastLoss;
};

struct CrossPlan {
    ProgrammeStatus status = ProgrammeStatus::NotSolved;
    std::vector<PlannedCross> crosses; // the worthiest first
    double worth = 0;                  // sum over the crosses
    double bound = 0;                  // no set of as many is worth more
    double groupKinship = 0;           // c'Kc; unknown kinships count as 0
    std::vector<std::size_t> uses;     // of each candidate
    std::size_t pairs = 0;             // that the rules allow
    std::vector<Refusal> refusals;     // the worthiest first
    std::string method;
    Remarks remarks; // candidates left out, what is not known, what makes a plan impossible
};

// The set of crosses with the greatest sum of worths that keeps all rules, as an integer programme.
// Each pair at most once; of the two directions of a cross that with the female mother, else with
// the better overlap of bloom. A candidate without a merit is left out. What is not known (kinship,
// bloom, sex, species) excludes no cross and is told, but a wish for a species in each cross does.
// The group's kinship is quadratic in the uses and is kept by planes that touch it, added until the
// set found keeps it to 2 parts in a million; that is exact as kinship matrices are convex.
// No set at all is no error: `crosses` is then empty and a remark says which rule is in the way.
// Errors  InvalidInput where the table is not n × n, an id is empty or twice, a number is not
//         finite or outside its range, wishes contradict, or the kinships are no kinships (their
//         matrix has a negative eigenvalue) and the group's is limited.
[[nodiscard]] Result<CrossPlan> planCrosses(std::span<const PlanCandidate> candidates,
                                            const PairTable& pairs,
                                            const PlanRules& rules);

// One point of the trade-off.
struct TradeOffPoint {
    std::optional<double> mostGroupKinship; // the limit; none at the end of greatest merit
    ProgrammeStatus status = ProgrammeStatus::NotSolved;
    double worth = 0;
    double bound = 0;
    double groupKinship = 0;
};

// Plans between the greatest worth and the least group kinship: without a limit on it, and with
// `points` - 1 limits equally far apart down towards the least that parts of crosses could reach.
// The time of the rules is spent on each. Points without a set are left in, with their status.
// Errors  as planCrosses().
[[nodiscard]] Result<std::vector<TradeOffPoint>> tradeOff(std::span<const PlanCandidate> candidates,
                                                          const PairTable& pairs,
                                                          PlanRules rules,
                                                          std::size_t points = 5);

// One line of her own list.
struct OwnCross {
    std::string mother;
    std::vector<std::string>
        fathers; // none: open pollination; several: mixed pollen in equal parts
    std::size_t line = 0;
};

struct CheckedCross {
    OwnCross cross;
    std::optional<ExpectedMerit> merit; // nothing where nothing is known of it
    std::vector<PlannedCross> parts;    // one for each father that is known
    Remarks warnings;
};

// Her own list, commented and never overruled: every line stays, whatever the rules say. Errors as
// planCrosses() for the candidates and the table only.
[[nodiscard]] Result<std::vector<CheckedCross>>
checkOwnCrosses(std::span<const OwnCross> crosses,
                std::span<const PlanCandidate> candidates,
                const PairTable& pairs,
                const PlanRules& rules);

} // namespace bullace::breeding
