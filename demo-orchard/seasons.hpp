// The parts from which makeStation() puts the journals together.
#pragma once

#include "demo/station.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace bullace::demo {

// People by their codes.
inline constexpr const char* kIda = "im";
inline constexpr const char* kTobias = "tf";
inline constexpr const char* kWanda = "wo";
inline constexpr const char* kHesper = "hl"; // at the office

// One walk along a row, or all rows of a block (row 0), with one descriptor.
struct Walk {
    const char* block = "";
    unsigned row = 0;
    CivilDate date;
    const char* descriptor = "";
    int along = 0;           // each value is noted so many vines too far
    const char* slipAt = ""; // where the point was left out: ten times the value
};

// What a walk noted at one vine.
struct Noted {
    std::string subject;
    Bytes value;
    const Vine* vine = nullptr;
    journal::Place place;
};

// The pens of all devices.
struct Pens {
    Pen office;
    Pen first;
    Pen second;   // as far as it was before its old copy was put back
    Pen restored; // the second tablet again, from that copy on
    Pen third;    // its clock is a year behind
    Pen oldFirst; // of the seasons before
    Pen oldSecond;
    Pen oldSecondAgain; // its second epoch

    // All have synced: nobody's next count lies below anybody's last.
    void meet();
};
[[nodiscard]] Pens takePens();
inline constexpr int kClockDaysOff = -365; // of the third tablet

[[nodiscard]] CivilDate day(int year, unsigned month, unsigned dayOfMonth);

// The value of the vine as a careful person would note it; empty where there is nothing to note (no
// vine, no fruit).
[[nodiscard]] Bytes trueValue(const Orchard& orchard, const Vine& vine, const Walk& walk);

// Notes one value at each vine of the walk that has one, with an observer's unsteadiness. The first
// stage walk of a year also notes dead vines (a group of two) and empty places.
std::vector<Noted> walkRows(Dice& dice, const Orchard& orchard, Pen& pen, const Walk& walk);

// Notes `samples` of a sampled descriptor at each vine that has them.
void walkSamples(Dice& dice, const Orchard& orchard, Pen& pen, const Walk& walk, int samples);

// A second person at the same vines on the same day, who has not seen what the first noted: mostly
// the same, sometimes a little apart, now and then far. What differs is listed in `truth`.
// rule   The rule that will meet it, by its word; its bound, where it has one, is what `little`
//        stays inside of and `far` does not.
struct SecondLook {
    const char* rule = "";
    bool hasWithin = false;
    double little = 0;
    double far = 0;
    bool isPercent = false; // the two are percent of the value
};
void lookAgain(const Orchard& orchard,
               Pen& pen,
               const Walk& walk,
               const std::vector<Noted>& first,
               const SecondLook& look,
               Truth& truth);

// What later seasons come back to.
struct Past {
    std::vector<Noted> clusters;      // of 2024, in B1
    std::vector<Noted> clustersAgain; // the same vines by someone else, all apart from the first
};

void writeOffice(const Orchard& orchard, Pen& office);
// In April dead vines get their `until`, and replanted places their new planting.
void updatePlantings(const Orchard& orchard, Pen& office, int year);
// Rounds, labels, a closed block and crosses of the third season, as the office had them by May. In
// its journal they stand behind everything else, so that what other entries name keeps its place.
void writeFieldWork(const Orchard& orchard, Pen& office);
[[nodiscard]] Past writePastSeasons(Dice& dice, const Orchard& orchard, Pens& pens, Truth& truth);
void writeThirdSeason(
    Dice& dice, const Orchard& orchard, Pens& pens, const Past& past, Truth& truth);

} // namespace bullace::demo
