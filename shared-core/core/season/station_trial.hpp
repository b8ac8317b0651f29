// From the station's notes to the records of a trial: a value of one descriptor for each vine and
// season, with the accession and the place; and what repeats an accession in it.
#pragma once

#include "core/base/remark.hpp"
#include "core/season/comparison.hpp"
#include "core/season/station_notes.hpp"
#include "core/trials/trial_table.hpp"
#include "core/vineyard/block.hpp"

#include <cstddef>
#include <cstdint>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::season {

// The names of a trial's factors and covariates.
inline constexpr const char* kAccessionFactor = "accession";
inline constexpr const char* kSeasonFactor = "season";
inline constexpr const char* kBlockFactor = "block";
inline constexpr const char* kRowFactor = "row";             // "B1-07"
inline constexpr const char* kReplicateFactor = "replicate"; // "B1 2"; missing outside of any
inline constexpr const char* kVineFactor = "vine"; // its position; "B1-01-02 (2)" of one that
                                                   // was planted there later
inline constexpr const char* kRowNumber = "row number";
inline constexpr const char* kPlaceInRow = "place in the row";

// What of one vine in one season stands for it: picks and buckets add up, all else is a mean.
[[nodiscard]] SeasonValue seasonValueOf(std::string_view descriptor);

// Whether it runs through a season (caps off, ripe …): a vine's value depends on the day.
[[nodiscard]] bool runsThroughSeason(std::string_view descriptor);

// Whether its notes give numbers that can be compared: numbers themselves, and records of so many
// dead among so many (percent) or of a count on so many shoots or metres (their quotient).
[[nodiscard]] bool canBeTried(const DescriptorNotes& notes);

struct TrialQuestion {
    std::string descriptor;
    std::set<int> seasons{};        // empty: all
    std::set<std::string> blocks{}; // of the vineyard; empty: all
};

struct StationTrial {
    trials::TrialTable table;         // a row for each vine and season
    std::vector<std::uint32_t> vines; // of each row, in the notes
    std::vector<int> seasons;         // of each row; empty where each vine stands once
    std::size_t values = 0;           // notes that the rows are made of
    std::size_t open = 0;             // conflicts left out
    std::size_t missed = 0;           // "not observed" and the like
    std::size_t without = 0; // vines of these accessions and blocks without a value in any season
    std::size_t lost = 0;    // of those, vines that were noted as dead or missing
    std::int32_t firstDay = 0;
    std::int32_t lastDay = 0;
    Remarks remarks;
};

// Vines that stand at no position are left out. `blocks` tell which places are replicates.
[[nodiscard]] StationTrial trialOf(const StationNotes& notes,
                                   std::span<const vineyard::Block> blocks,
                                   const TrialQuestion& question);

// Two descriptors side by side: a row where either was noted, the response the one, `other` the
// other's values, NaN where there is none. What was left out is that of the one.
struct TrialOfBoth {
    StationTrial trial;
    std::vector<double> other;
};
[[nodiscard]] TrialOfBoth trialOfBoth(const StationNotes& notes,
                                      std::span<const vineyard::Block> blocks,
                                      const TrialQuestion& question,
                                      const std::string& otherDescriptor);

// What stands as replicate of an accession.
enum class TrialRepeat {
    Vines,     // each vine by itself, wherever it stands
    Blocks,    // blocks of the vineyard
    Rows,      // rows of a block
    Replicates // those of a planting plan
};
// The factor of what repeats; null for vines.
[[nodiscard]] const char* factorOf(TrialRepeat repeat);
// Replicates of a plan where most of the records lie in them; else the blocks, then the rows in
// which at least half of the accessions stand more than once and which join them all; else vines.
[[nodiscard]] TrialRepeat likelyRepeat(const StationTrial& trial);

// Each vine once: the mean of its seasons, each put right for what the season was like (least
// squares over vines and seasons; over accessions and seasons where vines do not join the seasons).
// The table has no season any more. With one season the trial as it is.
[[nodiscard]] StationTrial eachVineOnce(const StationTrial& trial);

// Means of the vines of one accession in one replicate, which share its soil and are no replicates
// of one another. Of vines: the rows as they are.
struct TrialPlots {
    trials::TrialTable table;        // factors accession and what repeats; place and row number
    std::vector<std::size_t> plotOf; // of each row of the trial; kNoPlot outside of any replicate
    std::size_t mostVines = 0;       // of a plot
};
inline constexpr std::size_t kNoPlot = static_cast<std::size_t>(-1);
[[nodiscard]] TrialPlots plotsOf(const StationTrial& trial, TrialRepeat repeat);

// The numbers of each accession, for what scale they speak.
[[nodiscard]] std::vector<std::vector<double>> groupsOf(const trials::TrialTable& table,
                                                        std::string_view factor);

} // namespace bullace::season
