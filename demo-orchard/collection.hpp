// The demo station's collection: sixty accessions of three species and their crosses. All names are
// invented.
#pragma once

#include "demo/dice.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bullace::demo {

enum class Status { Wild, Cultivar, Selection, Seedling };

// What an accession is like when it stands well; vines and seasons differ around it.
struct Nature {
    double berriesPerCluster = 0;
    double diameterMm = 0;
    double seedMm = 0;
    double leafMm = 0;   // width
    double clusters = 0; // on a grown vine
    double brix = 0;
    double pruningKg = 0;
    int skin = 5;         // 1 to 9
    int flavour = 5;      // 1 to 9
    int budBreakDay = 85; // of the year
    int bloomDay = 140;
    int ripeDay = 248;
};

struct Accession {
    std::string id; // "A017"
    std::string name;
    Status status = Status::Wild;
    // Shares of V. rotundifolia, V. munsoniana and V. popenoei, 1 in all.
    std::array<double, 3> shares{};
    std::optional<std::size_t> mother; // indices in the collection
    std::optional<std::size_t> father;
    int flowerSex = 3; // OIV 151: 1 and 2 male, 3 perfect, 4 female
    std::string berryColour;
    Nature nature;

    [[nodiscard]] bool isMale() const { return flowerSex <= 2; }
    [[nodiscard]] bool isOf(std::size_t species) const { return shares[species] == 1.0; }
};

// "Vitis rotundifolia", or for a cross "Vitis rotundifolia × munsoniana", greatest share first.
[[nodiscard]] std::string taxonOf(const Accession& accession);
[[nodiscard]] std::string statusWord(Status status);

// Exactly sixty; parents stand before their children.
[[nodiscard]] std::vector<Accession> makeCollection(Dice& dice);

} // namespace bullace::demo
