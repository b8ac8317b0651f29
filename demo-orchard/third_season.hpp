// The third season in parts, each of which follows the one before in every tablet's journal.
#pragma once

#include "demo/seasons.hpp"

#include <string>
#include <vector>

namespace bullace::demo {

inline constexpr SecondLook kAdvanced{"advanced", true, 1, 5};
inline constexpr SecondLook kGreatest{"greatest", true, 8, 40, true};
inline constexpr SecondLook kLeast{"least", true, 8, 35};
inline constexpr SecondLook kMeanPercent{"mean", true, 2.5, 20, true};
inline constexpr SecondLook kMeanOfPercents{"mean", true, 5, 30};
inline constexpr SecondLook kMeanOfScores{"mean", true, 1, 3};
inline constexpr SecondLook kLater{"later"};
inline constexpr SecondLook kAsk{"ask", false, 0.1, 0.4};

// One season as it is being written.
struct Season {
    Dice& dice;
    const Orchard& orchard;
    Pens& pens;
    const Past& past;
    Truth& truth;

    std::vector<Noted> walk(Pen& pen, const Walk& walk) {
        return walkRows(dice, orchard, pen, walk);
    }
    void samples(Pen& pen, const Walk& walk, int each) {
        walkSamples(dice, orchard, pen, walk, each);
    }
    void
    again(Pen& pen, const Walk& walk, const std::vector<Noted>& first, const SecondLook& look) {
        lookAgain(orchard, pen, walk, first, look, truth);
    }
};

// Each row of a block; what was noted in row `kept` is given back.
std::vector<Noted> walkBlock(Season& season, Pen& pen, const Walk& block, unsigned kept);

void writeSpring(Season& season);  // winter to the cluster counts
void writeHarvest(Season& season); // the puddle in July to the last look back in September

} // namespace bullace::demo
