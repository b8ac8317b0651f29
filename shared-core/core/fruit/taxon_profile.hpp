// What a taxon is like, character by character: from published ranges, or from the station's own
// verified accessions where there are enough. A taxon is a text with its authority; nothing here
// knows how many there are.
#pragma once

#include "core/fruit/character_law.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::fruit {

// The characters that speak for a taxon, by the codes of the descriptors where there is one.
inline constexpr std::string_view kBerriesPerCluster = "berries-per-cluster";
inline constexpr std::string_view kBerryDiameter = "berry-diameter"; // mm
inline constexpr std::string_view kSeedsPerBerry = "seeds-per-berry";
inline constexpr std::string_view kSeedLength = "seed-length"; // mm
inline constexpr std::string_view kSkin = "skin-thickness";    // 1 to 9
inline constexpr std::string_view kLenticels = "lenticels";    // 1 to 9
inline constexpr std::string_view kChromosomes = "chromosomes";
inline constexpr std::string_view kBloomOffset = "bloom-offset"; // days after the reference
inline constexpr std::string_view kGrowthEnd = "growth-end";     // day of the year

// Whether it is counted or chosen; everything else is a measure.
[[nodiscard]] LawKind kindOf(std::string_view character);

struct ProfileCharacter {
    CharacterLaw law;
    bool isOwn = false; // of the station's verified accessions; else published
    std::string source; // the citation, where it is published
    std::size_t accessions = 0;
    std::size_t vines = 0;
    std::size_t values = 0; // counts and measures behind it
    // The published range itself, where there is one.
    std::optional<statistics::Interval> range;
};

struct TaxonProfile {
    std::string taxon; // "Vitis rotundifolia"
    std::string authority;
    std::map<std::string, ProfileCharacter, std::less<>> characters;
};

// Ranges of Flora of North America 12:7 (Moore & Wen) for the taxa of subgenus Muscadinia that it
// has, and chromosome numbers 2n = 40 (for munsoniana and popenoei from memory).
[[nodiscard]] const std::vector<TaxonProfile>& publishedProfiles();

// One verified accession of the station with its vines' values.
struct VerifiedAccession {
    std::string taxon;
    std::map<std::string, std::vector<std::vector<double>>, std::less<>> vines; // by character
};

// How much of the station's own is enough for a character (common practice, no source).
inline constexpr std::size_t kEnoughAccessions = 3;
inline constexpr std::size_t kEnoughVines =
    6; // with at least two values each, of counts and measures

// The published profiles with each character replaced by the station's own where there is enough;
// taxa that only the station has are added behind them, as far as they have enough.
[[nodiscard]] std::vector<TaxonProfile>
profilesWith(const std::vector<VerifiedAccession>& verified);

} // namespace bullace::fruit
