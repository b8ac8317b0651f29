// What an accession's vines bore in a season, and are going to bear, from the station's notes.
#pragma once

#include "core/fruit/crop.hpp"
#include "core/fruit/variation.hpp"
#include "core/season/station_notes.hpp"

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

namespace bullace::season {

inline constexpr std::array<std::string_view, 4> kCropDescriptors{
    "yield", "clusters", "berries-per-cluster", "berry-weight"};

// One accession's vines in one year.
struct Bearing {
    std::map<std::uint32_t, std::vector<fruit::Pick>> picks; // by vine; buckets of a day are one
    std::map<std::uint32_t, fruit::VineSamples> clusters;
    std::map<std::uint32_t, fruit::VineSamples> berries;
    std::map<std::int32_t, std::map<std::uint32_t, fruit::VineSamples>> weights; // g, by day
    std::set<std::uint32_t> lost; // noted as dead or missing
};
// By accession, of those of which anything of it was noted.
[[nodiscard]] std::map<std::size_t, Bearing> bearingIn(const StationNotes& notes, int year);

// How berries grew from a first weighing to the last of a season, in earlier years: vines that were
// weighed twice at least three weeks apart (common practice, no source: berries are about half
// grown in the lag phase, some seven weeks before harvest).
struct LagPhase {
    fruit::LagPhaseFactor factor;
    int lastDayOfYear = 0; // on which any of them was weighed for the first time
};
[[nodiscard]] LagPhase lagPhaseBefore(const StationNotes& notes, int year);

// The crop of one vine: clusters × berries × weight, the weight that of the last three weeks of
// weighing. It is taken times the lag-phase factor only where it was weighed no later than vines
// were for the first time in earlier years; else the berries are taken as grown. Nothing where one
// of the three was not noted.
[[nodiscard]] std::optional<fruit::CropEstimate> cropOfVine(const Bearing& bearing,
                                                            const LagPhase& lag);

} // namespace bullace::season
