#include "demo/breeding_work.hpp"
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::listValue;
using journal::MapValue;
using journal::numberValue;
using journal::textValue;

constexpr std::size_t kFirstFounder = 21; // the cultivars of the collection
constexpr std::size_t kFounders = 8;
constexpr std::size_t kFirstGeneration = 20;
constexpr std::size_t kSelections = 60;
constexpr std::size_t kReplicates = 4;
constexpr int kFemale = 4;

struct Genes {
    double yieldKg = 0;
    double brix = 0;
};

// Both descriptors at once, correlated, with these shares of the additive variances.
Genes drawGenes(Dice& dice, const BreedingTruth& truth, double share) {
    const double one = dice.normal(0, 1);
    const double other = dice.normal(0, 1);
    const double r = truth.geneticCorrelation;
    return {std::sqrt(share * truth.yield.additive) * one,
            std::sqrt(share * truth.brix.additive) * (r * one + std::sqrt(1 - r * r) * other)};
}

// A child's mean is that of its parents, its spread half the additive variance: none of the parents
// is inbred.
Genes childOf(Dice& dice, const BreedingTruth& truth, const Genes& mother, const Genes& father) {
    const Genes own = drawGenes(dice, truth, 0.5);
    return {(mother.yieldKg + father.yieldKg) / 2 + own.yieldKg,
            (mother.brix + father.brix) / 2 + own.brix};
}

std::string selectionId(std::size_t number) {
    const std::string digits = std::to_string(number);
    return "A" + std::string(3 - digits.size(), '0') + digits;
}

std::string placeOf(unsigned row, unsigned place) {
    const auto two = [](unsigned number) {
        return (number < 10 ? "0" : "") + std::to_string(number);
    };
    return std::string(kTrialBlock) + "-" + two(row) + "-" + two(place);
}

// The parents of a selection, as places in one list: founders first, then selections.
std::pair<std::size_t, std::size_t> parentsOf(std::size_t selection) {
    if (selection < kFirstGeneration) {
        const std::size_t pair = selection / 3; // families of three, the last of two
        return {pair % kFounders, (pair * 3 + 1) % kFounders};
    }
    const std::size_t family = (selection - kFirstGeneration) / 4;
    if (family == 9) {
        return {kFounders + 4, kFounders + 4}; // a selfing
    }
    if (family == 8) {
        return {kFounders, 0}; // back to the founder that is its mother
    }
    Dice ofFamily(77 + family); // one family has one pair of parents
    const int last = static_cast<int>(kFirstGeneration) - 1;
    const int mother = ofFamily.between(0, last);
    const int father = (mother + 3 * ofFamily.between(1, 5)) % (last + 1);
    return {kFounders + static_cast<std::size_t>(mother),
            kFounders + static_cast<std::size_t>(father)};
}

// "[[first, last, replicate], …]": runs of one row each, two rows a replicate.
Bytes replicatesValue() {
    std::vector<Bytes> runs;
    for (unsigned row = 1; row <= kTrialRows; ++row) {
        runs.push_back(listValue({textValue(placeOf(row, 1)),
                                  textValue(placeOf(row, kTrialPlaces)),
                                  integerValue((row + 1) / 2)}));
    }
    return listValue(runs);
}

// Which selection stands where: all of them once in each replicate, in an order of its own.
std::vector<std::size_t> orderOf(Dice& dice) {
    std::vector<std::size_t> order(kSelections);
    for (std::size_t i = 0; i < kSelections; ++i) {
        order[i] = i;
    }
    for (std::size_t i = kSelections - 1; i > 0; --i) {
        std::swap(order[i], order[static_cast<std::size_t>(dice.between(0, static_cast<int>(i)))]);
    }
    return order;
}

// What stands at each place of the trial, row after row; drawn again from the same dice.
std::vector<std::size_t> planOf(std::uint64_t seed) {
    Dice dice(seed);
    std::vector<std::size_t> plan;
    for (std::size_t replicate = 0; replicate < kReplicates; ++replicate) {
        const auto order = orderOf(dice);
        plan.insert(plan.end(), order.begin(), order.end());
    }
    return plan;
}
constexpr std::uint64_t kPlanSeed = 4242;

std::string placeAt(std::size_t place) {
    return placeOf(static_cast<unsigned>(place / kTrialPlaces) + 1,
                   static_cast<unsigned>(place % kTrialPlaces) + 1);
}

} // namespace

void breedSelections(Dice& dice, const Orchard& orchard, BreedingTruth& truth) {
    truth.yield = {5.0, 1.0, 0.5, 3.2};
    truth.brix = {0.9, 0.1, 0.05, 0.4};
    truth.geneticCorrelation = -0.5;
    std::vector<Genes> genes;
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < kFounders; ++i) {
        genes.push_back(drawGenes(dice, truth, 1));
        ids.push_back(orchard.collection[kFirstFounder + i].id);
    }
    for (std::size_t i = 0; i < kSelections; ++i) {
        const auto [mother, father] = parentsOf(i);
        const Genes own = childOf(dice, truth, genes[mother], genes[father]);
        BredSelection selection;
        selection.id = selectionId(orchard.collection.size() + i + 1);
        selection.mother = ids[mother];
        selection.father = ids[father];
        selection.flowerSex = dice.chance(0.4) ? kFemale : 3;
        selection.yieldKg = own.yieldKg;
        selection.brix = own.brix;
        genes.push_back(own);
        ids.push_back(selection.id);
        truth.selections.push_back(std::move(selection));
    }
}

void writeTrialPlan(Pen& pen, const BreedingTruth& truth) {
    pen.begin(kHesper, day(2019, 2, 11), 9, 0, 4);
    for (const BredSelection& selection : truth.selections) {
        const std::string subject = "accession/" + selection.id + "/";
        pen.catalog(subject + "name", textValue("Selection " + selection.id.substr(1)));
        pen.catalog(subject + "taxon", textValue("Vitis rotundifolia"));
        pen.catalog(subject + "status", textValue("selection"));
        pen.catalog(subject + "flower-sex", integerValue(selection.flowerSex));
        pen.catalog(subject + "mother", textValue(selection.mother));
        pen.catalog(subject + "father", textValue(selection.father));
    }
    const std::string block = std::string("block/") + kTrialBlock + "/";
    std::vector<Bytes> rows;
    for (unsigned row = 1; row <= kTrialRows; ++row) {
        rows.push_back(listValue({integerValue(row), integerValue(kTrialPlaces)}));
    }
    rows.push_back(listValue({integerValue(kSeedlingRow), integerValue(kSeedlingPlaces)}));
    pen.catalog(block + "name", textValue("Replicated trial"));
    pen.catalog(block + "rows", listValue(rows));
    pen.catalog(block + "replicates", replicatesValue());
    const std::vector<std::size_t> plan = planOf(kPlanSeed);
    for (std::size_t place = 0; place < plan.size(); ++place) {
        pen.catalog("planting/" + placeAt(place) + "/2019-03-04",
                    MapValue()
                        .add("accession", textValue(truth.selections[plan[place]].id))
                        .add("until", journal::nullValue())
                        .bytes());
    }
}

void writeTrialRecords(Dice& dice, Pen& pen, BreedingTruth& truth) {
    constexpr std::array<double, kYears.size()> kYieldMean{16.5, 18.4, 17.2};
    constexpr std::array<double, kYears.size()> kBrixMean{17.0, 16.4, 17.3};
    const std::vector<std::size_t> plan = planOf(kPlanSeed);
    for (std::size_t place = 11; place < plan.size(); place += 41) {
        truth.deadVines.push_back(placeAt(place));
    }
    for (std::size_t season = 0; season < kYears.size(); ++season) {
        const CivilDate date = day(kYears[season], 9, 4);
        pen.begin(kHesper, date, 8, 0, 20);
        std::array<Genes, kReplicates> ofReplicate{};
        for (Genes& effect : ofReplicate) {
            effect = {dice.normal(0, std::sqrt(truth.yield.replicateInSeason)),
                      dice.normal(0, std::sqrt(truth.brix.replicateInSeason))};
        }
        for (BredSelection& selection : truth.selections) {
            selection.yieldInSeason.push_back(
                dice.normal(0, std::sqrt(truth.yield.accessionInSeason)));
            selection.brixInSeason.push_back(
                dice.normal(0, std::sqrt(truth.brix.accessionInSeason)));
        }
        for (std::size_t place = 0; place < plan.size(); ++place) {
            const std::string position = placeAt(place);
            const BredSelection& selection = truth.selections[plan[place]];
            const Genes& replicate = ofReplicate[place / kSelections];
            const double yield = kYieldMean[season] + selection.yieldKg +
                                 selection.yieldInSeason[season] + replicate.yieldKg +
                                 dice.normal(0, std::sqrt(truth.yield.residual));
            const double brix = kBrixMean[season] + selection.brix +
                                selection.brixInSeason[season] + replicate.brix +
                                dice.normal(0, std::sqrt(truth.brix.residual));
            const bool isDead =
                season > 0 && std::ranges::find(truth.deadVines, position) != truth.deadVines.end();
            if (isDead) {
                pen.observe(observation(position, date, "yield"),
                            MapValue().add("none", textValue("dead")).bytes());
                continue;
            }
            pen.sample(observation(position, date, "yield"),
                       numberValue(rounded(std::max(0.3, yield), 2)));
            pen.sample(observation(position, date, "soluble-solids"),
                       numberValue(rounded(std::clamp(brix, 11.0, 24.0), 1)));
        }
    }
}

} // namespace bullace::demo
