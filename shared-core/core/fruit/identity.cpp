#include "core/fruit/identity.hpp"

#include "core/fruit/sample_size.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bullace::fruit {

namespace {

constexpr double kStrong = 1;         // a ratio of 10 on one character
constexpr double kFarOff = 2.5758;    // beyond 99 % of a taxon's vines
constexpr double kImplausible = 0.05; // of a taxon's vines, in any character
constexpr double kThumb = 12;         // berries, and mm
constexpr double kSame = 1e-9;

std::vector<double> usable(std::string_view character, const std::vector<double>& values) {
    std::vector<double> kept;
    std::ranges::copy_if(
        values, std::back_inserter(kept), [](double value) { return std::isfinite(value); });
    if (kindOf(character) == LawKind::Choice && kept.size() > 1) {
        kept.resize(1);
    }
    return kept;
}

std::vector<CharacterEvidence> evidenceOf(const std::vector<TaxonProfile>& profiles,
                                          const VineValues& values) {
    std::vector<CharacterEvidence> all;
    for (const auto& [character, given] : values) {
        const std::vector<double> kept = usable(character, given);
        CharacterEvidence evidence{character, kept.size(), spreadOf(kept).mean, {}, {}};
        bool isKnown = false;
        for (const TaxonProfile& profile : profiles) {
            const auto found = profile.characters.find(character);
            if (found == profile.characters.end() || kept.empty()) {
                evidence.logLikelihoods.emplace_back();
                evidence.distances.emplace_back();
                continue;
            }
            isKnown = true;
            VineLikelihood likelihood(found->second.law);
            likelihood.add(kept);
            evidence.logLikelihoods.emplace_back(likelihood.logValue());
            evidence.distances.emplace_back(distanceFrom(found->second.law, kept));
        }
        if (isKnown) {
            all.push_back(std::move(evidence));
        }
    }
    return all;
}

// What a character says of two taxa, to base 10; nothing where a profile does not know it.
std::optional<double>
ratioOf(const CharacterEvidence& evidence, std::size_t one, std::size_t other) {
    const auto& logs = evidence.logLikelihoods;
    return logs[one] && logs[other]
               ? std::optional((*logs[one] - *logs[other]) / std::numbers::ln10)
               : std::nullopt;
}

void compare(std::size_t taxa, Identity& identity) {
    identity.ratios.assign(taxa, std::vector<double>(taxa, 0.0));
    identity.isRival.assign(taxa, false);
    for (const CharacterEvidence& evidence : identity.characters) {
        for (std::size_t i = 0; i < taxa; ++i) {
            for (std::size_t j = 0; j < taxa; ++j) {
                const double ratio = ratioOf(evidence, i, j).value_or(0);
                identity.ratios[i][j] += ratio;
                if (std::abs(ratio) > kSame) {
                    identity.isRival[i] = true;
                }
            }
        }
    }
}

double boundOf(const std::vector<bool>& isRival, const DecisionRisk& risk) {
    const auto rivals = std::max<std::ptrdiff_t>(1, std::ranges::count(isRival, true) - 1);
    return std::log10((1 - risk.missed) * static_cast<double>(rivals) / risk.wrong);
}

// The least that speaks for a taxon against any rival.
double leastRatio(const std::vector<std::vector<double>>& ratios,
                  const std::vector<bool>& isRival,
                  std::size_t taxon) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t other = 0; other < ratios.size(); ++other) {
        if (other != taxon && isRival[other]) {
            least = std::min(least, ratios[taxon][other]);
        }
    }
    return least;
}

std::optional<std::size_t> leadingOf(const Identity& identity) {
    std::optional<std::size_t> leading;
    double greatest = 0;
    for (std::size_t taxon = 0; taxon < identity.ratios.size(); ++taxon) {
        if (!identity.isRival[taxon]) {
            continue;
        }
        const double least = leastRatio(identity.ratios, identity.isRival, taxon);
        if (!leading || least > greatest) {
            leading = taxon;
            greatest = least;
        }
    }
    return leading;
}

// Two characters that speak strongly for different ones of two taxa.
std::optional<Remark> contradiction(const std::vector<TaxonProfile>& profiles,
                                    const Identity& identity) {
    for (std::size_t i = 0; i < profiles.size(); ++i) {
        for (std::size_t j = 0; j < profiles.size(); ++j) {
            const CharacterEvidence* forOne = nullptr;
            const CharacterEvidence* forOther = nullptr;
            for (const CharacterEvidence& evidence : identity.characters) {
                const double ratio = ratioOf(evidence, i, j).value_or(0);
                forOne = ratio >= kStrong && forOne == nullptr ? &evidence : forOne;
                forOther = ratio <= -kStrong && forOther == nullptr ? &evidence : forOther;
            }
            if (i < j && forOne != nullptr && forOther != nullptr) {
                return Remark{
                    BULLACE_SENTENCE("Remark",
                                     "The evidence contradicts itself: %1 speaks for %2, "
                                     "%3 speaks for %4. A hybrid, a wrong label or a "
                                     "slip of the hand would do that."),
                    {forOne->character, profiles[i].taxon, forOther->character, profiles[j].taxon}};
            }
        }
    }
    return std::nullopt;
}

// Characters of which every profile that knows them is far away.
void addOutsiders(const Identity& identity, Remarks& remarks) {
    for (const CharacterEvidence& evidence : identity.characters) {
        const bool isOutside =
            std::ranges::all_of(evidence.distances, [](const std::optional<double>& distance) {
                return !distance || std::abs(*distance) > kFarOff;
            });
        if (isOutside) {
            remarks.push_back({BULLACE_SENTENCE("Remark",
                                                "%1 of %2 is unusual for every taxon that is "
                                                "compared."),
                               {evidence.character, Remark::Number{evidence.mean, 1}}});
        }
    }
}

void addSources(const std::vector<TaxonProfile>& profiles,
                const Identity& identity,
                Remarks& remarks) {
    for (const CharacterEvidence& evidence : identity.characters) {
        for (std::size_t i = 0; i < profiles.size(); ++i) {
            const auto found = profiles[i].characters.find(evidence.character);
            if (found == profiles[i].characters.end()) {
                continue;
            }
            if (found->second.isOwn) {
                remarks.push_back({BULLACE_SENTENCE("Remark",
                                                    "%1 of %2: from %3 values on %4 vines of the "
                                                    "station's verified accessions."),
                                   {evidence.character,
                                    profiles[i].taxon,
                                    static_cast<std::int64_t>(found->second.values),
                                    static_cast<std::int64_t>(found->second.vines)}});
            } else {
                remarks.push_back({BULLACE_SENTENCE("Remark", "%1 of %2: published (%3)."),
                                   {evidence.character, profiles[i].taxon, found->second.source}});
            }
        }
    }
    for (std::size_t i = 0; i < profiles.size(); ++i) {
        if (!identity.isRival[i] && !identity.characters.empty()) {
            remarks.push_back({BULLACE_SENTENCE("Remark",
                                                "%1 is not compared: nothing that was observed "
                                                "tells it from the others."),
                               {profiles[i].taxon}});
        }
    }
}

std::optional<double> meanOf(const Identity& identity, std::string_view character) {
    const auto found =
        std::ranges::find(identity.characters, character, &CharacterEvidence::character);
    return found == identity.characters.end() ? std::nullopt : std::optional(found->mean);
}

// The published ranges, the outermost ones of the count open outwards: "12 and more", "8 and
// fewer".
std::optional<std::string> byRanges(double diameter, double berries) {
    std::vector<const TaxonProfile*> known;
    statistics::Interval all{statistics::kUnbounded, -statistics::kUnbounded};
    for (const TaxonProfile& profile : publishedProfiles()) {
        const auto counts = profile.characters.find(kBerriesPerCluster);
        if (counts != profile.characters.end() && profile.characters.contains(kBerryDiameter)) {
            known.push_back(&profile);
            all.low = std::min(all.low, counts->second.range->low);
            all.high = std::max(all.high, counts->second.range->high);
        }
    }
    for (const TaxonProfile* profile : known) {
        statistics::Interval counts = *profile->characters.find(kBerriesPerCluster)->second.range;
        counts.low = counts.low == all.low ? 0 : counts.low;
        counts.high = counts.high == all.high ? statistics::kUnbounded : counts.high;
        if (counts.holds(berries) &&
            profile->characters.find(kBerryDiameter)->second.range->holds(diameter)) {
            return profile->taxon;
        }
    }
    return std::nullopt;
}

std::optional<std::string> byThumb(double diameter, double berries) {
    if (diameter <= kThumb && berries >= kThumb) {
        return "Vitis munsoniana";
    }
    return diameter > kThumb && berries < kThumb ? std::optional<std::string>("Vitis rotundifolia")
                                                 : std::nullopt;
}

// 2n of a cross is half of the sum of both, so that 38 × 40 gives 39.
std::optional<Remark> ofChromosomes(double chromosomes) {
    if (chromosomes == 39) {
        return Remark{BULLACE_SENTENCE("Remark",
                                       "39 chromosomes: a hybrid with a vine of subgenus Vitis "
                                       "(19 + 20), expected to be sterile (Viljoen & Spies 1995, "
                                       "Vitis 34:221-224)."),
                      {}};
    }
    if (chromosomes == 38) {
        return Remark{
            BULLACE_SENTENCE("Remark", "38 chromosomes: a vine of subgenus Vitis, no muscadine."),
            {}};
    }
    return chromosomes == 40
               ? std::nullopt
               : std::optional(Remark{BULLACE_SENTENCE("Remark",
                                                       "%1 chromosomes are neither those of a "
                                                       "muscadine (40) nor of a hybrid (39)."),
                                      {static_cast<std::int64_t>(chromosomes)}});
}

// Whether the vine's values are usual for the taxon: what lies between the taxa is likelier of one
// of them than of the other, and still of neither.
// The more characters, the likelier is one of a true vine's to be far out: each has its share of
// what may be called unusual.
bool isPlausible(const Identity& identity, std::size_t taxon) {
    const auto measured =
        std::ranges::count_if(identity.characters, [taxon](const CharacterEvidence& evidence) {
            return evidence.distances[taxon] && kindOf(evidence.character) != LawKind::Choice;
        });
    if (measured == 0) {
        return true;
    }
    const double limit =
        statistics::normalQuantile(1 - kImplausible / (2 * static_cast<double>(measured)));
    return std::ranges::all_of(
        identity.characters, [taxon, limit](const CharacterEvidence& evidence) {
            return !evidence.distances[taxon] || std::abs(*evidence.distances[taxon]) <= limit;
        });
}

void judge(const std::vector<TaxonProfile>& profiles, Identity& identity) {
    identity.leading = leadingOf(identity);
    if (identity.leading) {
        const double least = leastRatio(identity.ratios, identity.isRival, *identity.leading);
        identity.lead = std::isfinite(least) ? std::optional(least) : std::nullopt;
        const bool isAhead = identity.lead && *identity.lead >= identity.bound;
        identity.isUsual = isPlausible(identity, *identity.leading);
        identity.verdict = isAhead && identity.isUsual ? Verdict::Decided : Verdict::Undecided;
        if (isAhead && !identity.isUsual) {
            identity.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                         "Likelier of %1 than of the others, but "
                                                         "unusual for it: undecided."),
                                        {profiles[*identity.leading].taxon}});
        }
    }
    if (const auto contradicts = contradiction(profiles, identity)) {
        identity.verdict = Verdict::Contradictory;
        identity.remarks.push_back(*contradicts);
    }
    if (const auto chromosomes = meanOf(identity, kChromosomes)) {
        if (const auto remark = ofChromosomes(*chromosomes)) {
            identity.verdict = *chromosomes == 39 ? Verdict::Hybrid : Verdict::Contradictory;
            identity.remarks.push_back(*remark);
        }
    }
}

} // namespace

Identity identify(const std::vector<TaxonProfile>& profiles,
                  const VineValues& values,
                  const DecisionRisk& risk) {
    Identity identity;
    identity.characters = evidenceOf(profiles, values);
    compare(profiles.size(), identity);
    identity.bound = boundOf(identity.isRival, risk);
    judge(profiles, identity);
    addOutsiders(identity, identity.remarks);
    addSources(profiles, identity, identity.remarks);
    const auto diameter = meanOf(identity, kBerryDiameter);
    const auto berries = meanOf(identity, kBerriesPerCluster);
    if (diameter && berries) {
        identity.byPublishedRanges = byRanges(*diameter, *berries);
        identity.byRuleOfThumb = byThumb(*diameter, *berries);
    }
    return identity;
}

} // namespace bullace::fruit
