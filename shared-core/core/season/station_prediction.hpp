// The mixed model by which accessions are predicted from all of a station's notes of a descriptor:
// which of its terms can be told apart there, and which cannot.
#pragma once

#include "core/season/station_trial.hpp"
#include "core/trials/mixed_model.hpp"
#include "core/trials/surface.hpp"

#include <memory>
#include <optional>

namespace bullace::season {

// What takes out where vines stand.
enum class PlaceTerm { Blocks, Rows, Replicates, Surface };

struct PredictionWish {
    PlaceTerm place = PlaceTerm::Blocks;
    // Relatives lend each other information; null: accessions stand by themselves.
    std::shared_ptr<const trials::Related> related{};
};

struct PredictionModel {
    trials::TrialTable table;
    trials::MixedSpec spec;
    std::optional<trials::Surface> surface{};
    Remarks remarks; // which terms are not in it, and why
};

// Seasons fixed; accessions, accessions × seasons, vines that were noted in several seasons, places
// and places × seasons random. A term is left out where it repeats another, has a level for each
// record, or is told by the seasons alone. The surface is over one block: `trial` has only that.
// Errors  those of surfaceOf().
[[nodiscard]] Result<PredictionModel> predictionModel(const StationTrial& trial,
                                                      const PredictionWish& wish);

} // namespace bullace::season
