// One accession over years, and against a reference, in days and in degree-days.
#pragma once

#include "core/season/onset_summary.hpp"
#include "core/weather/degree_days.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace bullace::season {

// A vine's onset in its year; in days of season or in degree-days.
struct YearOnset {
    int year = 0;
    OnsetInterval onset;
};

// The normal law with an effect of each year; the mean over the years, each counting the same. It
// speaks of these years, not of years to come.
struct OverYears {
    std::vector<int> years;   // that are in it
    std::vector<int> leftOut; // in which no vine tells on either side of the stage
    std::vector<std::pair<int, statistics::Estimate>> yearly;
    std::optional<statistics::Estimate> mean{};
    std::optional<double> spread{};       // standard deviation between vines within a year
    std::optional<double> betweenYears{}; // standard deviation of the yearly means; from 2 years on
    OnsetCounts counts;
    Remarks remarks;
};
[[nodiscard]] Result<OverYears> overYears(std::span<const YearOnset> onsets);

// Accession less reference: above 0 is later. By the normal law with year effects from the years
// that have both; limits by profile likelihood.
struct OnsetDifference {
    std::vector<int> years;
    std::vector<int> leftOut; // years of one of the two alone, or that tell nothing
    std::optional<statistics::Estimate> difference{};
    // Where the vines are too few to estimate a spread, and so a difference: what the 95 % limits
    // of both means leave possible, as the mean over the years.
    std::optional<statistics::Interval> bounds{};
    // Of a likelihood-ratio test that the difference is the same in all years; from two years on.
    std::optional<double> sameEveryYearP{};
    OnsetCounts counts;
    OnsetCounts referenceCounts;
    Remarks remarks;
};
[[nodiscard]] Result<OnsetDifference> differenceTo(std::span<const YearOnset> accession,
                                                   std::span<const YearOnset> reference);

// The sum of degree-days at the end of each day; what lies behind its first gap is not known.
struct HeatCurve {
    int year = 0;
    std::vector<weather::HeatDay> days; // ascending, without a gap
};
struct OnHeat {
    std::vector<YearOnset> onsets;
    std::size_t leftOut = 0; // a bound lies where the sum is not known, or the year has no curve
    Remarks remarks;
};
// Days of season as degree-days of the same year; before the first day the sum is 0.
[[nodiscard]] OnHeat onHeat(std::span<const YearOnset> onsets, std::span<const HeatCurve> curves);

} // namespace bullace::season
