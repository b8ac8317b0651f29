#include "demo/bench_work.hpp"
#include "demo/breeding_work.hpp"
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::MapValue;
using journal::textValue;

constexpr std::size_t kFirstCultivar = 21; // in the collection
constexpr int kFemale = 4;
constexpr int kPerfect = 3;
constexpr std::array<int, 3> kCrossYears{2022, 2023, 2024};
constexpr std::size_t kOfEachYear = 4;
constexpr std::size_t kSeedlingsOfEach = kSeedlingPlaces / kOfEachYear;

int countOf(Dice& dice, int of, double share) {
    int count = 0;
    for (int i = 0; i < of; ++i) {
        count += dice.chance(share) ? 1 : 0;
    }
    return count;
}

// Cultivars of a flower sex, by their places in the collection.
std::vector<std::size_t> cultivarsOf(const Orchard& orchard, int flowerSex) {
    std::vector<std::size_t> found;
    for (std::size_t i = kFirstCultivar; i < orchard.collection.size(); ++i) {
        const Accession& accession = orchard.collection[i];
        if (accession.status == Status::Cultivar && accession.flowerSex == flowerSex &&
            !standingVines(orchard, i).empty()) {
            found.push_back(i);
        }
    }
    return found;
}

class Book {
public:
    Book(Dice& dice, const Orchard& orchard, Pen& pen, BreedingTruth& truth)
        : dice_(dice),
          orchard_(orchard),
          pen_(pen),
          truth_(truth),
          mothers_(cultivarsOf(orchard, kFemale)),
          perfect_(cultivarsOf(orchard, kPerfect)) {
        for (std::size_t i = 0; i < orchard.collection.size(); ++i) {
            setShares_.push_back(0.14 + 0.2 * dice.uniform());
        }
    }

    // The last cross of a year has a perfect mother, which is emasculated.
    void cross(int year, std::size_t number) {
        const bool isPerfect = number + 1 == kOfEachYear;
        const auto& mothers = isPerfect ? perfect_ : mothers_;
        const std::size_t mother = mothers[number % mothers.size()];
        const std::size_t father =
            perfect_[(number + 2 + static_cast<std::size_t>(year)) % perfect_.size()];
        BredCross made;
        made.id = "X" + std::to_string(year % 100) + "-" + std::to_string(number + 1);
        made.mother = orchard_.collection[mother].id;
        made.father = orchard_.collection[father].id;
        made.year = year;
        made.setShare = setShares_[mother];
        made.germinationShare = 0.3 + 0.1 * (year - kCrossYears.front()) + 0.1 * dice_.uniform();
        const Vine& vine = *standingVines(orchard_, mother).front();
        writeCard(made, vine);
        writeSummer(made, vine, isPerfect);
        writeSeeds(made);
        truth_.crosses.push_back(made);
        if (year == kCrossYears.front()) {
            writeSeedlings(made, number);
        }
    }

private:
    void writeCard(const BredCross& made, const Vine& vine) {
        pen_.begin(kHesper, day(made.year, 2, 3), 10, 0, 5);
        const std::string subject = "cross/" + made.id + "/";
        pen_.catalog(subject + "number", textValue(made.id.substr(1)));
        pen_.catalog(subject + "mother", textValue(made.mother));
        pen_.catalog(subject + "father", textValue(made.father));
        pen_.catalog(subject + "mother-at", textValue(vine.position));
        pen_.catalog(subject + "closed", journal::booleanValue(true));
    }

    void step(const BredCross& made, const Vine& vine, CivilDate date, const char* word, int n) {
        pen_.begin(kIda, date, 7, 0, 30);
        MapValue work;
        work.add("cross", textValue(made.id)).add("step", textValue(word));
        pen_.sample(observation(vine.position, date, "cross-work"),
                    work.add("count", integerValue(n)).bytes());
    }

    void writeSummer(BredCross& made, const Vine& vine, bool isPerfect) {
        const int bags = dice_.between(6, 11);
        made.flowers = bags * dice_.between(28, 42);
        if (isPerfect) {
            step(made, vine, day(made.year, 5, 14), "emasculated", made.flowers);
        }
        step(made, vine, day(made.year, 5, 15), "bagged", bags);
        step(made, vine, day(made.year, 5, 18), "pollinated", made.flowers);
        made.fruits = countOf(dice_, made.flowers, made.setShare);
        step(made, vine, day(made.year, 6, 12), "bag-off", bags);
        step(made, vine, day(made.year, 6, 12), "set", made.fruits);
        step(made, vine, day(made.year, 9, 2), "harvested", made.fruits);
    }

    void writeSeeds(BredCross& made) {
        made.seeds = 0;
        for (int fruit = 0; fruit < made.fruits; ++fruit) {
            made.seeds += dice_.between(1, 4);
        }
        const int sinkers = countOf(dice_, made.seeds, 0.85);
        made.germinated = countOf(dice_, sinkers, made.germinationShare);
        pen_.begin(kHesper, day(made.year, 9, 6), 14, 0, 10);
        const std::string lot = "lot/S" + made.id.substr(1) + "/";
        const auto date = [](CivilDate when) { return textValue(writeDate(when)); };
        pen_.catalog(lot + "kind", textValue("seed"));
        pen_.catalog(lot + "accession", textValue(made.mother));
        pen_.catalog(lot + "cross", textValue(made.id));
        pen_.catalog(lot + "date", date(day(made.year, 9, 6)));
        pen_.catalog(lot + "seeds", integerValue(made.seeds));
        pen_.catalog(lot + "sinkers", integerValue(sinkers));
        pen_.catalog(lot + "stratified", date(day(made.year, 11, 18)));
        pen_.catalog(lot + "sown", date(day(made.year + 1, 3, 3)));
        pen_.catalog(lot + "germinated", integerValue(made.germinated));
    }

    // Some of them are planted in the trial's last row, and flower in their third summer. A female
    // mother's seedlings are perfect and female alike (Proc. Fla. State Hort. Soc. 112, 1999).
    void writeSeedlings(const BredCross& made, std::size_t number) {
        for (std::size_t i = 0; i < kSeedlingsOfEach; ++i) {
            const std::size_t place = number * kSeedlingsOfEach + i + 1;
            const std::string two = (place < 10 ? "0" : "") + std::to_string(place);
            const std::string position = std::string(kTrialBlock) + "-09-" + two;
            const std::string id = made.id + "-" + std::to_string(i + 1);
            pen_.begin(kHesper, day(made.year + 1, 5, 9), 9, 0, 5);
            const std::string subject = "accession/" + id + "/";
            pen_.catalog(subject + "status", textValue("seedling"));
            pen_.catalog(subject + "mother", textValue(made.mother));
            pen_.catalog(subject + "father", textValue(made.father));
            pen_.catalog(subject + "cross", textValue(made.id));
            pen_.catalog("planting/" + position + "/" + std::to_string(made.year + 1) + "-05-10",
                         MapValue()
                             .add("accession", textValue(id))
                             .add("until", journal::nullValue())
                             .bytes());
            const bool isFemale = dice_.chance(number + 1 == kOfEachYear ? 0.25 : 0.5);
            pen_.begin(kTobias, day(made.year + 3, 5, 21), 9, 0, 12);
            pen_.observe(observation(position, day(made.year + 3, 5, 21), "flower-sex"),
                         integerValue(isFemale ? kFemale : kPerfect));
        }
    }

    Dice& dice_;
    const Orchard& orchard_;
    Pen& pen_;
    BreedingTruth& truth_;
    std::vector<std::size_t> mothers_;
    std::vector<std::size_t> perfect_;
    std::vector<double> setShares_; // of each accession as a mother
};

} // namespace

void writeCrossBook(Dice& dice, const Orchard& orchard, Pen& pen, BreedingTruth& truth) {
    Book book(dice, orchard, pen, truth);
    for (const int year : kCrossYears) {
        for (std::size_t number = 0; number < kOfEachYear; ++number) {
            book.cross(year, number);
        }
    }
}

void writeBreeding(std::uint64_t seed, const Orchard& orchard, Pen& pen, BreedingTruth& truth) {
    Dice ofGenes(seed + 7);
    Dice ofTrial(seed + 8);
    Dice ofCrosses(seed + 9);
    breedSelections(ofGenes, orchard, truth);
    writeTrialPlan(pen, truth);
    writeTrialRecords(ofTrial, pen, truth);
    writeCrossBook(ofCrosses, orchard, pen, truth);
}

} // namespace bullace::demo
