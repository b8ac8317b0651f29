// What was really so behind the breeding notes: the genes of the selections, how much years and
// places take and give, and how well each cross sets and germinates.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bullace::demo {

// One selection of the replicated trial.
struct BredSelection {
    std::string id;
    std::string mother;
    std::string father;
    int flowerSex = 3;  // OIV 151
    double yieldKg = 0; // breeding value: deviation from the mean of unselected founders
    double brix = 0;
    // Of each season, beside the season's own mean.
    std::vector<double> yieldInSeason;
    std::vector<double> brixInSeason;
};

// Variances of one descriptor in the trial.
struct TrialVariances {
    double additive = 0; // of unrelated founders
    double accessionInSeason = 0;
    double replicateInSeason = 0;
    double residual = 0;
};

// One finished cross: shares, and what they came to.
struct BredCross {
    std::string id;
    std::string mother;
    std::string father;
    int year = 0;
    double setShare = 0;         // of pollinated flowers
    double germinationShare = 0; // of sown seeds
    int flowers = 0;
    int fruits = 0;
    int seeds = 0;
    int germinated = 0;
};

struct BreedingTruth {
    std::vector<BredSelection> selections;
    TrialVariances yield;
    TrialVariances brix;
    double geneticCorrelation = 0; // of yield and sugar
    std::vector<BredCross> crosses;
    std::vector<std::string> deadVines; // of the trial, from the second season on
};

} // namespace bullace::demo
