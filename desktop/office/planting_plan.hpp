// A planting plan for a real block: its free places, what is planted at each, and all of it entered
// as plantings in one act.
#pragma once

#include "office/act.hpp"

#include "core/trials/layout.hpp"
#include "core/vineyard/catalogue.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace bullace::office {

struct PlanWish {
    trials::LayoutKind kind = trials::LayoutKind::CompleteBlocks;
    std::string block;
    std::vector<unsigned> rows; // of the block; empty: all
    std::vector<std::string> entries;
    std::vector<std::string> checks;
    unsigned replicates = 2; // of an augmented design its blocks
    std::uint64_t seed = 1;
    CivilDate day{}; // on which it is planted
};

struct PlantingPlan {
    PlanWish wish;
    std::vector<std::string> positions; // of the chosen rows; the layout's indices point here
    trials::Layout layout;
    std::vector<Seen> seen; // what the plan rests on: the places' plantings, the block's replicates
};

// Places at which something stands on the day or is to stand later are not free, and lost to the
// plan.
// Errors  InvalidInput where the block or a row is not on the plan of the vineyard, or as
//         planLayout(); those of reading.
[[nodiscard]] Result<PlantingPlan>
planPlanting(store::Database& database, const vineyard::Catalogue& catalogue, const PlanWish& wish);

// All plantings of the plan, and which places are which replicate (`block/CODE/replicates`). Runs
// of other trials in the block stay; the plan's replicates are numbered after theirs.
// Errors  Outdated where something stands at one of the places by now; BeyondLimit with more vines
//         than one act holds; those of reading. perform() refuses it where a place was planted on
//         that day since, or the replicates are others.
[[nodiscard]] Result<Act> plantPlan(store::Database& database,
                                    const PlantingPlan& plan,
                                    const std::string& author,
                                    const std::string& why);

// The plan's places of one row that follow one another and are of one replicate.
[[nodiscard]] std::vector<vineyard::ReplicateRun> runsOf(const PlantingPlan& plan);

} // namespace bullace::office
