#include "demo/station.hpp"

#include "demo/bench_work.hpp"
#include "demo/breeding_work.hpp"
#include "demo/seasons.hpp"

#include <algorithm>

namespace bullace::demo {

namespace {

constexpr std::int64_t kDayMs = 86'400'000;

} // namespace

CivilDate day(int year, unsigned month, unsigned dayOfMonth) {
    return std::chrono::year(year) / std::chrono::month(month) / std::chrono::day(dayOfMonth);
}

Pens takePens() {
    return {Pen({'s', 0x51a70c3e9d2f4b86, 1}),
            Pen({'t', 0x7c19e4a2b05d3f68, 1}),
            Pen({'t', 0x2e8b6f91d4a7c053, 1}),
            Pen({'t', 0x2e8b6f91d4a7c053, 1}),
            Pen({'t', 0xd3540a8c17be6f29, 1}, kClockDaysOff * kDayMs),
            Pen({'t', 0x90f2c6b87e1a3d45, 1}),
            Pen({'t', 0x4b7d215fe8c096a3, 1}),
            Pen({'t', 0x4b7d215fe8c096a3, 2})};
}

void Pens::meet() {
    const std::uint64_t greatest = std::max({office.count(),
                                             first.count(),
                                             second.count(),
                                             third.count(),
                                             oldFirst.count(),
                                             oldSecond.count(),
                                             oldSecondAgain.count()});
    for (Pen* const pen :
         {&office, &first, &second, &third, &oldFirst, &oldSecond, &oldSecondAgain}) {
        pen->seen(greatest);
    }
}

DemoStation makeStation(std::uint64_t seed) {
    // One source of chance for each part, so that a change in one leaves the others as they are.
    Dice planting(seed);
    Dice earlier(seed + 1);
    Dice lastSeason(seed + 2);
    DemoStation station;
    station.orchard = makeOrchard(planting);
    Pens pens = takePens();
    writeOffice(station.orchard, pens.office);
    const Past past = writePastSeasons(earlier, station.orchard, pens, station.truth);
    writeThirdSeason(lastSeason, station.orchard, pens, past, station.truth);
    writeFieldWork(station.orchard, pens.office);
    writeVerified(station.orchard, pens.office, station.truth.bench);
    Pen bench({'s', 0x6e2d49b1c80f5a37, 1});
    bench.seen(pens.office.count());
    writeBench(seed, station.orchard, bench, station.truth.bench);
    Pen breeding({'s', 0x83b1f7409ce25d6a, 1});
    breeding.seen(bench.count());
    writeBreeding(seed, station.orchard, breeding, station.truth.breeding);
    station.journals = {
        {"office.jsonl",
         "the office: plan, collection, rulebook, rounds",
         0,
         pens.office.entries()},
        {"past-1.jsonl", "first tablet of the seasons before", 2, pens.oldFirst.entries()},
        {"past-2.jsonl", "second tablet of the seasons before", 1, pens.oldSecond.entries()},
        {"past-2-again.jsonl",
         "the same tablet after the winter, as a new epoch",
         2,
         pens.oldSecondAgain.entries()},
        {"tablet-1.jsonl", "first tablet", 3, pens.first.entries()},
        {"tablet-2-before.jsonl",
         "second tablet, as it was before its old copy was put back",
         3,
         pens.second.entries()},
        {"tablet-2.jsonl", "second tablet, from its old copy on", 3, pens.restored.entries()},
        {"tablet-3.jsonl", "third tablet, its clock a year behind", 3, pens.third.entries()},
        {"bench.jsonl",
         "the bench: freezing tests, juice, tagged shoots, weather",
         3,
         bench.entries()},
        {"breeding.jsonl",
         "the breeder's own desk: a replicated trial, crosses, seed and seedlings",
         3,
         breeding.entries()}};
    return station;
}

} // namespace bullace::demo
