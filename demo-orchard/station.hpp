// The whole demo station: its journals, and the truth that they speak of more or less well.
#pragma once

#include "demo/bench_truth.hpp"
#include "demo/breeding_truth.hpp"
#include "demo/orchard.hpp"
#include "demo/pen.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace bullace::demo {

inline constexpr std::uint64_t kDefaultSeed = 20250817;
inline constexpr const char* kStationName = "Marrowby Station";

// A conflict that was put there on purpose: at least two heads that do not agree.
struct PlantedConflict {
    std::string subject;
    std::string kind;    // a rule's word, "retraction", "ruling", or "fork"
    std::string within;  // "inside", "exceeded", or empty where the rule has no such bound
    bool isOpen = false; // whether a person has to settle it
    Bytes right;         // what the vine really was like
};

// A run of values that stands `along` vines from where it belongs.
struct ShiftedRow {
    std::string block;
    unsigned row = 0;
    std::string date;
    std::string descriptor;
    int along = 0;
    bool isPutRight = false;
    std::vector<std::string> subjects; // as they were written
};

struct Slip {
    std::string subject;
    Bytes typed;
    Bytes right;
};

struct Truth {
    std::vector<PlantedConflict> conflicts;
    std::vector<std::string> agreed; // subjects that two noted alike
    std::vector<ShiftedRow> shiftedRows;
    Slip slip;
    std::string wrongClock; // origin
    int wrongClockDays = 0;
    std::string restored;            // origin
    std::uint64_t restoredAfter = 0; // the last seq that both of its branches have
    BenchTruth bench;
    BreedingTruth breeding;
};

// One file. Where two journals have the same origin, they are branches of a fork.
struct Journal {
    std::string file;  // "tablet-1.jsonl"
    std::string about; // one line for people
    int season = 0;    // 1 to 3, its last; 0 for the office, which writes in all
    std::vector<journal::Entry> entries;
};

struct DemoStation {
    Orchard orchard;
    std::vector<Journal> journals;
    Truth truth;
};

// The same seed gives the same bytes on every platform.
[[nodiscard]] DemoStation makeStation(std::uint64_t seed = kDefaultSeed);

} // namespace bullace::demo
