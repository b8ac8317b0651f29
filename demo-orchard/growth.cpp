// Tagged shoots through a season, their tips, and the length of cordons.
#include "demo/bench_work.hpp"
#include "demo/portable_curves.hpp"
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::MapValue;
using journal::textValue;

constexpr std::size_t kThird = 2; // of the seasons
constexpr std::size_t kVines = 2; // of each accession
constexpr int kShoots = 5;        // of each vine
constexpr int kVisits = 14;
constexpr int kDaysBetween = 10;
constexpr int kTipsFrom = 7;        // the visit from which on tips are looked at
constexpr double kSlowingDays = 16; // before the end
constexpr double kTapeCm = 1.2;     // error of a measurement
constexpr double kCordonCm = 560;   // two arms between vines 20 feet apart

// How an accession's shoots grow.
struct Growth {
    double asymptoteCm = 220;
    double midpointDay = 165;
    double ratePerDay = 0.055;
};

bool isInPlan(const Accession& accession, std::size_t species, bool isWild) {
    return accession.isOf(species) && (accession.status == Status::Wild) == isWild;
}

// B1's last rows are left to those who look at tips there in September.
bool isKept(const Vine& vine) {
    return !vine.position.starts_with("B1-05") && !vine.position.starts_with("B1-06");
}

std::vector<const Vine*> taggedVines(const Orchard& orchard, std::size_t accession) {
    std::vector<const Vine*> vines;
    for (const Vine* const vine : standingVines(orchard, accession)) {
        if (isKept(*vine) && vines.size() < kVines) {
            vines.push_back(vine);
        }
    }
    return vines;
}

struct Tagged {
    std::size_t accession = 0;
    Growth growth;
    std::vector<const Vine*> vines;
};

std::vector<Tagged> taggedAccessions(Dice& dice, const Orchard& orchard) {
    struct Part {
        std::size_t species;
        bool isWild;
        std::size_t accessions;
        Growth growth;
    };
    // V. munsoniana goes on into autumn; no curve of its shoots is finished by October.
    constexpr std::array<Part, 4> kPlan{{{0, true, 1, {240, 164, 0.055}},
                                         {0, false, 3, {210, 160, 0.058}},
                                         {1, true, 1, {330, 222, 0.026}},
                                         {2, true, 1, {290, 178, 0.045}}}};
    std::vector<Tagged> tagged;
    for (const Part& part : kPlan) {
        std::size_t found = 0;
        for (std::size_t i = 0; i < orchard.collection.size() && found < part.accessions; ++i) {
            auto vines = taggedVines(orchard, i);
            if (!isInPlan(orchard.collection[i], part.species, part.isWild) ||
                vines.size() < kVines) {
                continue;
            }
            Growth growth = part.growth;
            growth.asymptoteCm *= std::clamp(dice.normal(1, 0.1), 0.75, 1.3);
            growth.midpointDay += dice.normal(0, 4);
            growth.ratePerDay *= std::clamp(dice.normal(1, 0.05), 0.85, 1.15);
            tagged.push_back({i, growth, std::move(vines)});
            ++found;
        }
    }
    return tagged;
}

ShootCurve curveOf(Dice& dice, const Growth& growth, const std::string& position, int shoot) {
    return {position,
            shoot,
            rounded(growth.asymptoteCm * std::clamp(dice.normal(1, 0.12), 0.6, 1.5), 1),
            rounded(growth.midpointDay + dice.normal(0, 3), 1),
            rounded(growth.ratePerDay * std::clamp(dice.normal(1, 0.05), 0.8, 1.2), 4)};
}

std::string_view tipWord(double end, double today) {
    return today >= end ? "stopped" : today >= end - kSlowingDays ? "slowing" : "growing";
}

void visit(Dice& dice, const std::vector<ShootCurve>& curves, int number, Pen& bench) {
    const CivilDate date = addDays(day(2025, 5, 20), number * kDaysBetween);
    const int today = dayOfYear(date);
    bench.begin(kIda, date, 16, 30, 40);
    for (std::size_t i = 0; i < curves.size(); ++i) {
        const ShootCurve& curve = curves[i];
        const double cm =
            curve.asymptoteCm * logistic(curve.ratePerDay * (today - curve.midpointDay)) +
            dice.normal(0, kTapeCm);
        MapValue value;
        value.add("shoot", integerValue(curve.shoot));
        value.add("cm", integerValue(static_cast<std::int64_t>(std::nearbyint(std::max(0.0, cm)))));
        bench.sample(observation(curve.position, date, "shoot-length"), value.bytes());
        const bool isVinesLast = i + 1 == curves.size() || curves[i + 1].position != curve.position;
        if (isVinesLast && number >= kTipsFrom) {
            // Of the vine as a whole: when the middle one of its shoots has stopped.
            const ShootCurve& middle = curves[i - kShoots / 2];
            bench.observe(observation(curve.position, date, "shoot-tip"),
                          textValue(tipWord(middle.endDay(), today)));
        }
    }
}

} // namespace

void writeCordons(Dice& dice, const Orchard& orchard, Pen& bench, BenchTruth& truth) {
    const CivilDate date = day(2025, 1, 26);
    bench.begin(kIda, date, 9, 0, 45);
    for (const Vine* const vine : orchard.row("B1", 0)) {
        if (vine->seasons[kThird].stands && !vine->seasons[kThird].dies) {
            const double cm = rounded(std::clamp(dice.normal(kCordonCm, 35), 420.0, 610.0), 0);
            bench.observe(observation(vine->position, date, "cordon-length"),
                          integerValue(static_cast<std::int64_t>(cm)));
            truth.cordonsCm.emplace_back(vine->position, cm);
        }
    }
}

void writeGrowth(Dice& dice, const Orchard& orchard, Pen& bench, BenchTruth& truth) {
    for (const Tagged& tagged : taggedAccessions(dice, orchard)) {
        for (const Vine* const vine : tagged.vines) {
            for (int shoot = 1; shoot <= kShoots; ++shoot) {
                truth.shoots.push_back(curveOf(dice, tagged.growth, vine->position, shoot));
            }
        }
    }
    for (int number = 0; number < kVisits; ++number) {
        visit(dice, truth.shoots, number, bench);
    }
}

} // namespace bullace::demo
