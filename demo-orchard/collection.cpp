// How the species differ follows Moore & Wen, Flora of North America 12:7, and Bailey's Cyclopedia,
// for V. rotundifolia and V. munsoniana; what nobody has published of V. popenoei is made up.
#include "demo/collection.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace bullace::demo {

namespace {

constexpr std::size_t kWildRotundifolia = 10;
constexpr std::size_t kWildMunsoniana = 7;
constexpr std::size_t kWildPopenoei = 4;
constexpr std::size_t kCultivars = 14;
constexpr std::size_t kSelections = 10;
constexpr std::size_t kSeedlings = 15;

constexpr std::array<std::string_view, 21> kWildNames{
    "Sallow Ditch",  "Heron Sump",  "Tannery Lane", "Cutbank Nine", "Ferry Stump",  "Owl Gate",
    "Blind Slough",  "Sorrel Bend", "Mudlark",      "Chapel Hedge", "Spoonbill",    "Saltpan Edge",
    "Palm Hammock",  "Crab Ladder", "Tern Flat",    "Rush Island",  "Oyster Track", "Stone Stair",
    "Cloud Terrace", "Moss Bridge", "High Cistern"};
constexpr std::array<std::string_view, 14> kCultivarNames{"Brindlecap",
                                                          "Gloamberry",
                                                          "Mirewick",
                                                          "Dunmarrow",
                                                          "Quillback",
                                                          "Pewterbell",
                                                          "Sedgelight",
                                                          "Harrowmere",
                                                          "Velverin",
                                                          "Ostlerine",
                                                          "Cindermoss",
                                                          "Nightfarthing",
                                                          "Lathkin",
                                                          "Tollwax"};
constexpr std::array<std::string_view, 3> kSpecies{"rotundifolia", "munsoniana", "popenoei"};
constexpr std::array<std::string_view, 3> kDark{"black", "purple", "red"};
constexpr std::array<std::string_view, 2> kLight{"bronze", "pink"};

Nature natureOfSpecies(std::size_t species) {
    switch (species) {
    case 0:
        return {5.0, 18.5, 9.6, 68, 120, 16.5, 2.6, 7, 6, 86, 140, 248};
    case 1:
        return {19.0, 10.0, 5.4, 54, 160, 15.0, 2.0, 3, 4, 80, 143, 252};
    default:
        return {10.0, 13.5, 7.2, 108, 90, 14.5, 3.6, 5, 4, 78, 147, 262};
    }
}

double within(double value, double least, double greatest) {
    return std::clamp(value, least, greatest);
}

int near(Dice& dice, int middle, double deviation) {
    return static_cast<int>(std::nearbyint(dice.normal(middle, deviation)));
}

// One accession's own nature around that of its kind, kept within what the species is known by.
Nature varied(Dice& dice, Nature nature, bool isWild) {
    const double deviation = isWild ? 0.07 : 0.10;
    for (double* const value : {&nature.berriesPerCluster,
                                &nature.diameterMm,
                                &nature.leafMm,
                                &nature.clusters,
                                &nature.pruningKg}) {
        *value *= within(dice.normal(1, deviation), 0.75, 1.3);
    }
    nature.seedMm *= within(dice.normal(1, 0.02), 0.95, 1.08);
    nature.brix = dice.normal(nature.brix, 1.1);
    nature.skin = std::clamp(near(dice, nature.skin, 0.8), 1, 9);
    nature.flavour = std::clamp(near(dice, nature.flavour, 1.2), 1, 9);
    nature.budBreakDay = near(dice, nature.budBreakDay, 3);
    nature.bloomDay = near(dice, nature.bloomDay, 4);
    nature.ripeDay = near(dice, nature.bloomDay + 108, 4); // 100 to 120 days from bloom to ripe
    return nature;
}

// Wild vines stay inside what the species are told apart by.
void keepKnown(Nature& nature, std::size_t species) {
    if (species == 0) {
        nature.berriesPerCluster = within(nature.berriesPerCluster, 3, 7);
        nature.diameterMm = within(nature.diameterMm, 15.8, 24);
    } else if (species == 1) {
        nature.berriesPerCluster = within(nature.berriesPerCluster, 14, 28);
        nature.diameterMm = within(nature.diameterMm, 8.6, 11.4);
    }
}

// Halfway between two parents.
Nature between(const Nature& a, const Nature& b) {
    Nature child;
    child.berriesPerCluster = (a.berriesPerCluster + b.berriesPerCluster) / 2;
    child.diameterMm = (a.diameterMm + b.diameterMm) / 2;
    child.seedMm = (a.seedMm + b.seedMm) / 2;
    child.leafMm = (a.leafMm + b.leafMm) / 2;
    child.clusters = (a.clusters + b.clusters) / 2;
    child.brix = (a.brix + b.brix) / 2;
    child.pruningKg = (a.pruningKg + b.pruningKg) / 2;
    child.skin = (a.skin + b.skin) / 2;
    child.flavour = (a.flavour + b.flavour) / 2;
    child.budBreakDay = (a.budBreakDay + b.budBreakDay) / 2;
    child.bloomDay = (a.bloomDay + b.bloomDay) / 2;
    child.ripeDay = (a.ripeDay + b.ripeDay) / 2;
    return child;
}

Accession& add(std::vector<Accession>& collection, Status status) {
    Accession& made = collection.emplace_back();
    const std::string number = std::to_string(collection.size());
    made.id = "A" + std::string(3 - number.size(), '0') + number;
    made.status = status;
    return made;
}

std::string colourOf(Dice& dice, bool isDark) {
    return std::string(isDark ? kDark[static_cast<std::size_t>(dice.between(0, 2))]
                              : kLight[static_cast<std::size_t>(dice.between(0, 1))]);
}

void addWild(Dice& dice, std::vector<Accession>& collection, std::size_t species, std::size_t n) {
    for (std::size_t i = 0; i < n; ++i) {
        Accession& wild = add(collection, Status::Wild);
        wild.name = kWildNames[collection.size() - 1];
        wild.shares[species] = 1;
        // Every third is a male; the others bear.
        wild.flowerSex = i % 3 == 2 ? dice.between(1, 2) : 4;
        wild.berryColour = species == 0 ? colourOf(dice, !dice.chance(0.2)) : "black";
        wild.nature = varied(dice, natureOfSpecies(species), true);
        keepKnown(wild.nature, species);
    }
}

// Cultivars are muscadines with large berries: 25 to 38 mm.
void addCultivars(Dice& dice, std::vector<Accession>& collection) {
    for (std::size_t i = 0; i < kCultivars; ++i) {
        Accession& cultivar = add(collection, Status::Cultivar);
        cultivar.name = kCultivarNames[i];
        cultivar.shares[0] = 1;
        cultivar.flowerSex = i % 3 == 0 ? 4 : 3;
        cultivar.berryColour = colourOf(dice, i % 2 == 0);
        Nature nature = natureOfSpecies(0);
        nature.berriesPerCluster = 8.5;
        nature.diameterMm = 29.5;
        nature.brix = 18;
        nature.clusters = 150;
        nature.flavour = 7;
        cultivar.nature = varied(dice, nature, false);
        cultivar.nature.diameterMm = within(cultivar.nature.diameterMm, 25.5, 37);
    }
}

// Any accession that bears, and any that has pollen, of those before.
std::size_t pickParent(Dice& dice, const std::vector<Accession>& collection, bool isMother) {
    while (true) {
        const auto at = static_cast<std::size_t>(dice.between(
            0,
            static_cast<int>(kWildRotundifolia + kWildMunsoniana + kWildPopenoei + kCultivars) -
                1));
        const Accession& candidate = collection[at];
        const bool fits = isMother ? !candidate.isMale() : candidate.flowerSex != 4;
        // Breeders mostly cross onto cultivars.
        if (fits && (candidate.status == Status::Cultivar || dice.chance(0.4))) {
            return at;
        }
    }
}

void addCrosses(Dice& dice, std::vector<Accession>& collection, Status status, std::size_t n) {
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t mother = pickParent(dice, collection, true);
        std::size_t father = pickParent(dice, collection, false);
        while (father == mother) {
            father = pickParent(dice, collection, false);
        }
        Accession& child = add(collection, status);
        child.mother = mother;
        child.father = father;
        child.name = (status == Status::Selection ? "Sel. " : "Seedling ") + child.id.substr(1);
        for (std::size_t species = 0; species < child.shares.size(); ++species) {
            child.shares[species] =
                (collection[mother].shares[species] + collection[father].shares[species]) / 2;
        }
        child.flowerSex = dice.chance(0.5) ? 3 : 4;
        child.berryColour =
            dice.chance(0.5) ? collection[mother].berryColour : collection[father].berryColour;
        child.nature =
            varied(dice, between(collection[mother].nature, collection[father].nature), false);
    }
}

} // namespace

std::string taxonOf(const Accession& accession) {
    std::array<std::size_t, 3> order{0, 1, 2};
    std::stable_sort(order.begin(), order.end(), [&accession](std::size_t a, std::size_t b) {
        return accession.shares[a] > accession.shares[b];
    });
    std::string taxon = "Vitis ";
    taxon += kSpecies[order[0]];
    for (std::size_t i = 1; i < order.size() && accession.shares[order[i]] > 0; ++i) {
        taxon.append(" × ").append(kSpecies[order[i]]);
    }
    return taxon;
}

std::string statusWord(Status status) {
    switch (status) {
    case Status::Wild:
        return "wild accession";
    case Status::Cultivar:
        return "cultivar";
    case Status::Selection:
        return "selection";
    case Status::Seedling:
        break;
    }
    return "seedling";
}

std::vector<Accession> makeCollection(Dice& dice) {
    std::vector<Accession> collection;
    collection.reserve(60);
    addWild(dice, collection, 0, kWildRotundifolia);
    addWild(dice, collection, 1, kWildMunsoniana);
    addWild(dice, collection, 2, kWildPopenoei);
    addCultivars(dice, collection);
    addCrosses(dice, collection, Status::Selection, kSelections);
    addCrosses(dice, collection, Status::Seedling, kSeedlings);
    return collection;
}

} // namespace bullace::demo
