// What a plan of crosses is made from: the station's accessions as candidates, with all that is
// known of each and of each pair.
#pragma once

#include "core/base/remark.hpp"
#include "core/breeding/cross_plan.hpp"
#include "core/season/station_notes.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::season {

// What accessions are predicted to pass on, in one unit.
struct Merit {
    double value = 0;
    double errorVariance = 0;          // of the prediction
    std::optional<double> reliability; // 0 to 1
};
struct StationMerits {
    std::map<std::string, Merit, std::less<>> of; // by accession
    std::optional<double> additiveVariance{};
    std::size_t records = 0; // vines and seasons
    std::size_t accessions = 0;
    std::size_t open = 0; // conflicts left out
    std::size_t missed = 0;
    Remarks remarks;
};

struct PlanWish {
    std::set<std::string> statuses{}; // of candidates; empty: all
    std::size_t mostUses = 4;
    std::size_t mostCandidates = 150; // the greatest merits
    bool isLessBetter = false;        // merits are turned round
};

struct StationPlan {
    std::vector<breeding::PlanCandidate> candidates;
    std::vector<std::size_t> accessions; // of each candidate, in the notes
    breeding::PairTable pairs;
    // Of n candidates n × n: days on which the mother flowers and the father sheds pollen, where
    // both windows are known.
    std::vector<std::optional<double>> overlapDays;
    std::vector<std::string> species; // in the order of the candidates' shares
    std::size_t leftOut = 0;          // with a prediction, beyond mostCandidates
    std::size_t withoutBloom = 0;     // candidates whose bloom is not bounded by visits
    Remarks remarks;

    [[nodiscard]] std::optional<std::size_t> find(std::string_view accession) const;
};

// Accessions that have a merit and stood somewhere. Sex, 2n and berry colour are what was noted
// last (the colour: most often), else what the office has; a seedling of a female mother carries
// the female allele. Pollen is stored where a lot of it is of the father.
// Errors  those of the pedigree and of bloomOverlaps().
[[nodiscard]] Result<StationPlan>
planOf(const StationNotes& notes, const StationMerits& merits, const PlanWish& wish);

// Her own list: crosses of the station that are not closed, in their order.
[[nodiscard]] std::vector<breeding::OwnCross> openCrosses(const StationNotes& notes);

// The accessions of her own list and of the plan are candidates, whatever their status: the same as
// planOf() with those that the crosses name kept among them, with or without a merit.
[[nodiscard]] Result<StationPlan>
planOfOwn(const StationNotes& notes, const StationMerits& merits, const PlanWish& wish);

// The year in which crosses planned on that day are made: from July on the next one.
[[nodiscard]] int yearOfCrosses(CivilDate today);

} // namespace bullace::season
