// Freezing tests of buds, accession by accession, and buds that were cut open after a freeze.
#include "demo/bench_work.hpp"
#include "demo/portable_curves.hpp"
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::MapValue;
using journal::textValue;

constexpr std::size_t kThird = 2; // of the seasons
constexpr std::array<int, 7> kTestsC{-8, -11, -14, -17, -20, -23, -26};
constexpr int kBudsEach = 30;
constexpr int kCutOfEach = 20;
constexpr std::size_t kVinesCut = 4; // of each accession
// Lots of buds of V. rotundifolia: invented around the limits that station reports give for whole
// vines (0 °F hurts them) and for buds in the laboratory (down to -23.8 °C).
constexpr double kRotundifoliaC = -18.5;
constexpr double kPopenoeiWarmerC = 6;
constexpr double kMunsonianaWarmerC = 3;

enum class Wanted { WildRotundifolia, Cultivar, WildPopenoei, PopenoeiCross };

bool isWanted(const Accession& accession, Wanted wanted) {
    switch (wanted) {
    case Wanted::WildRotundifolia:
        return accession.status == Status::Wild && accession.isOf(0);
    case Wanted::Cultivar:
        return accession.status == Status::Cultivar;
    case Wanted::WildPopenoei:
        return accession.status == Status::Wild && accession.isOf(2);
    case Wanted::PopenoeiCross:
        break;
    }
    return accession.mother && accession.shares[2] > 0;
}

// Eight accessions with vines that stand; more cultivars where a kind has too few.
std::vector<std::size_t> testedAccessions(const Orchard& orchard) {
    constexpr std::array<std::pair<Wanted, std::size_t>, 5> kPlan{{{Wanted::WildRotundifolia, 2},
                                                                   {Wanted::Cultivar, 3},
                                                                   {Wanted::WildPopenoei, 1},
                                                                   {Wanted::PopenoeiCross, 2},
                                                                   {Wanted::Cultivar, 8}}};
    constexpr std::size_t kAccessions = 8;
    std::vector<std::size_t> chosen;
    for (const auto& [wanted, most] : kPlan) {
        std::size_t found = 0;
        for (std::size_t i = 0; i < orchard.collection.size() && found < most; ++i) {
            const bool isFree = std::find(chosen.begin(), chosen.end(), i) == chosen.end();
            if (isFree && chosen.size() < kAccessions && isWanted(orchard.collection[i], wanted) &&
                standingVines(orchard, i).size() >= kVinesCut) {
                chosen.push_back(i);
                ++found;
            }
        }
    }
    std::sort(chosen.begin(), chosen.end());
    return chosen;
}

int deadOf(Dice& dice, int buds, double share) {
    int dead = 0;
    for (int i = 0; i < buds; ++i) {
        dead += dice.chance(share) ? 1 : 0;
    }
    return dead;
}

double deadShare(const FrostHardiness& hardiness, double temperatureC) {
    return logistic(hardiness.slopePerC * (hardiness.lt50C - temperatureC));
}

void testLot(Dice& dice, const FrostHardiness& hardiness, const std::string& from, Pen& bench) {
    const CivilDate cut = day(hardiness.year, 1, 10);
    const CivilDate tested = day(hardiness.year, 1, 12);
    const std::string lot = "lot/" + hardiness.lot + "/";
    bench.catalog(lot + "kind", textValue("buds"));
    bench.catalog(lot + "from", textValue(from));
    bench.catalog(lot + "date", textValue(writeDate(cut)));
    for (const int c : kTestsC) {
        MapValue value;
        value.add("c", integerValue(c));
        value.add("dead", integerValue(deadOf(dice, kBudsEach, deadShare(hardiness, c))));
        value.add("of", integerValue(kBudsEach)).add("bud", textValue("primary"));
        bench.sample(observation("lot:" + hardiness.lot, tested, "freeze-test"), value.bytes());
    }
}

void testWinter(Dice& dice,
                const Orchard& orchard,
                const std::vector<FrostHardiness>& tested,
                Pen& bench) {
    bench.begin(kHesper, day(tested.front().year, 1, 12), 10, 0, 50);
    for (const FrostHardiness& one : tested) {
        testLot(dice, one, orchard.collection[one.accession].id, bench);
    }
}

Bytes deadValue(int dead) {
    return MapValue().add("dead", integerValue(dead)).add("of", integerValue(kCutOfEach)).bytes();
}

// Twenty buds of each kind at four vines of each accession that was tested, by what the lowest
// temperature of the freeze leaves alive.
void cutBuds(Dice& dice,
             const Orchard& orchard,
             const std::vector<FrostHardiness>& tested,
             Pen& bench,
             FieldFreeze& freeze) {
    const CivilDate looked = addDays(freeze.date, 3);
    bench.begin(kHesper, looked, 9, 0, 90);
    for (const FrostHardiness& one : tested) {
        const auto vines = standingVines(orchard, one.accession);
        for (std::size_t i = 0; i < vines.size() && i < kVinesCut; ++i) {
            const std::string& position = vines[i]->position;
            freeze.positions.push_back(position);
            const std::array<std::pair<const char*, double>, 3> kinds{
                {{"primary-buds", 0},
                 {"secondary-buds", freeze.secondaryHardierC},
                 {"tertiary-buds", freeze.tertiaryHardierC}}};
            for (const auto& [kind, hardierC] : kinds) {
                const double share = deadShare(one, freeze.lowestC + hardierC);
                bench.observe(observation(position, looked, kind),
                              deadValue(deadOf(dice, kCutOfEach, share)));
            }
        }
    }
}

} // namespace

void writeColdTests(Dice& dice, const Orchard& orchard, Pen& bench, BenchTruth& truth) {
    const auto accessions = testedAccessions(orchard);
    std::vector<double> lasting; // what an accession keeps over winters
    std::vector<double> slopes;
    for (const std::size_t at : accessions) {
        const auto& shares = orchard.collection[at].shares;
        const double middle =
            kRotundifoliaC + kPopenoeiWarmerC * shares[2] + kMunsonianaWarmerC * shares[1];
        lasting.push_back(std::clamp(dice.normal(middle, 0.8), middle - 2, middle + 2));
        slopes.push_back(std::clamp(dice.normal(0.66, 0.08), 0.5, 0.9));
    }
    for (const auto& [date, lowestC] : truth.weather.freezes) {
        if (static_cast<int>(date.year()) == kYears[kThird] && lowestC < truth.freeze.lowestC) {
            truth.freeze.date = date;
            truth.freeze.lowestC = lowestC;
        }
    }
    for (const int year : {2024, 2025}) {
        const double hardened = year == 2025 ? -0.8 : 0.0;
        std::vector<FrostHardiness> tested;
        for (std::size_t i = 0; i < accessions.size(); ++i) {
            const std::string number = std::to_string(i + 1);
            tested.push_back({accessions[i],
                              year,
                              "BU" + std::to_string(year % 100) + "-" + number,
                              rounded(lasting[i] + hardened + dice.normal(0, 0.3), 2),
                              rounded(slopes[i], 3)});
        }
        testWinter(dice, orchard, tested, bench);
        if (year == 2025) {
            cutBuds(dice, orchard, tested, bench, truth.freeze);
        }
        truth.hardiness.insert(truth.hardiness.end(), tested.begin(), tested.end());
    }
}

} // namespace bullace::demo
