// The pigments of juice or berries: the share of each of the five, malvidin against delphinidin,
// and the guide value for red wine.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace bullace::fruit {

// The 3,5-diglucosides of muscadines.
enum class Pigment { Delphinidin, Cyanidin, Petunidin, Peonidin, Malvidin };
inline constexpr std::size_t kPigments = 5;
[[nodiscard]] std::string_view nameOf(Pigment pigment); // "delphinidin"

// One sample, mg per 100 g fresh berries; what was not measured is not there.
using PigmentSample = std::array<std::optional<double>, kPigments>;

// Malvidin-3,5-diglucoside from which on the colour of red wine was good, mg per 100 g fresh
// grapes: Ballinger and others in the 1970s, Am. J. Enol. Vitic. (abstract seen; authors and year
// from memory). One guide value of one set of clones and no limit of any rule.
inline constexpr double kMalvidinGuide = 8;

enum class AgainstGuide { Reaches, Below, Undecided }; // by the interval of the mean

struct PigmentProfile {
    std::size_t samples = 0;
    std::size_t complete = 0; // with all five measured, and some pigment
    // Means over samples with 95 % limits of Student's t, from two samples on; limits are kept at 0
    // and above, of shares at 100 and below.
    std::array<std::optional<statistics::Estimate>, kPigments> mgPer100g{};
    std::array<std::size_t, kPigments> measured{}; // n of each
    // Mean of the complete samples' own shares; the five add up to 100.
    std::array<std::optional<statistics::Estimate>, kPigments> sharePercent{};
    std::optional<statistics::Estimate> totalMgPer100g{}; // of complete samples
    // Geometric mean of the samples' own ratios; limits by t of their logarithms.
    std::optional<statistics::Estimate> malvidinToDelphinidin{};
    std::size_t ratios = 0; // n: samples with both above 0
    std::optional<AgainstGuide> guide{};
    Remarks remarks;
};

// Errors: InvalidInput for a value that is below 0 or no number, naming the sample from 1 and the
// pigment.
[[nodiscard]] Result<PigmentProfile> pigmentProfile(std::span<const PigmentSample> samples);

} // namespace bullace::fruit
