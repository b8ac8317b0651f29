// Juice of dark accessions: its five pigments, and how its colour goes in storage.
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
using journal::numberValue;
using journal::textValue;

constexpr std::size_t kAccessions = 6;
constexpr std::size_t kPressings = 3; // of each, all with pigments, the first with absorbance
constexpr std::array<int, 6> kDays{0, 14, 28, 56, 84, 112};
constexpr int kReadings = 3;
constexpr double kError = 0.03;
constexpr double kPressingsDiffer = 0.08;
constexpr int kDilution = 10;
constexpr int kOtherDilution = 5;
constexpr int kLastDaysDiluted = 84; // from here on
constexpr double kLn2 = 0.6931471805599453;
constexpr std::array<const char*, 5> kPigments{"pigment-delphinidin",
                                               "pigment-cyanidin",
                                               "pigment-petunidin",
                                               "pigment-peonidin",
                                               "pigment-malvidin"};

const CivilDate kPressed = std::chrono::year(2025) / std::chrono::January / 27;

std::vector<std::size_t> darkCultivars(const Orchard& orchard) {
    std::vector<std::size_t> chosen;
    for (const char* colour : {"black", "purple", "red"}) {
        for (std::size_t i = 0; i < orchard.collection.size(); ++i) {
            const Accession& accession = orchard.collection[i];
            if (accession.status != Status::Wild && !accession.isMale() &&
                accession.berryColour == colour && chosen.size() < kAccessions) {
                chosen.push_back(i);
            }
        }
    }
    std::sort(chosen.begin(), chosen.end());
    return chosen;
}

std::string lotName(std::size_t accession, std::size_t pressing) {
    return "JU25-" + std::to_string(accession + 1) +
           std::string(1, static_cast<char>('a' + pressing));
}

void writeLots(Dice& dice, const std::string& id, std::size_t at, JuiceColour& juice, Pen& bench) {
    for (std::size_t pressing = 0; pressing < kPressings; ++pressing) {
        const std::string name = lotName(at, pressing);
        bench.catalog("lot/" + name + "/kind", textValue("juice"));
        bench.catalog("lot/" + name + "/from", textValue(id));
        bench.catalog("lot/" + name + "/date", textValue(writeDate(kPressed)));
        const double strength = dice.normal(1, kPressingsDiffer);
        for (std::size_t i = 0; i < kPigments.size(); ++i) {
            const double mg = juice.pigments[i] * strength * dice.normal(1, kError);
            bench.observe(observation("lot:" + name, kPressed, kPigments[i]),
                          numberValue(std::max(0.1, rounded(mg, 1))));
        }
    }
}

struct Reading {
    int day = 0;
    int nm = 520;
    double absorbance = 0; // in the cuvette at the usual dilution
};

Bytes readingValue(const JuiceColour& juice, const Reading& reading) {
    const bool isAnew = juice.isDilutedAnew && reading.day >= kLastDaysDiluted;
    const int dilution = isAnew ? kOtherDilution : kDilution;
    MapValue value;
    value.add("day", integerValue(reading.day)).add("nm", integerValue(reading.nm));
    value.add("a", numberValue(rounded(reading.absorbance * kDilution / dilution, 3)));
    value.add("dilution", integerValue(dilution)).add("path_mm", integerValue(10));
    return value.add("ph", numberValue(3.2)).add("storage_c", integerValue(20)).bytes();
}

struct Start {
    double red = 1;
    double brown = 0.6;
};

void readColour(Dice& dice,
                const std::vector<JuiceColour>& juices,
                const std::vector<Start>& starts,
                Pen& bench) {
    for (const int storageDay : kDays) {
        const CivilDate date = addDays(kPressed, storageDay);
        bench.begin(kHesper, date, 14, 0, 35);
        for (std::size_t i = 0; i < juices.size(); ++i) {
            const JuiceColour& juice = juices[i];
            for (const int nm : {520, 420}) {
                const double start = nm == 520 ? starts[i].red : starts[i].brown;
                const double perDay = nm == 520 ? juice.redPerDay : juice.brownPerDay;
                for (int n = 0; n < kReadings; ++n) {
                    const double error = exponential(dice.normal(0, kError));
                    bench.sample(
                        observation("lot:" + juice.lot, date, "absorbance"),
                        readingValue(
                            juice,
                            {storageDay, nm, start * exponential(-perDay * storageDay) * error}));
                }
            }
        }
    }
}

} // namespace

void writeJuice(Dice& dice, const Orchard& orchard, Pen& bench, BenchTruth& truth) {
    // Half-lives over the whole range that is wanted, each accession's own within its part of it.
    constexpr std::array<int, kAccessions> kHalfLives{48, 70, 95, 120, 150, 180};
    // mg per 100 g, as a share of the whole: delphinidin mostly the largest, malvidin the smallest.
    constexpr std::array<double, 5> kShares{0.42, 0.20, 0.18, 0.12, 0.08};
    const auto accessions = darkCultivars(orchard);
    std::vector<Start> starts;
    bench.begin(kHesper, kPressed, 9, 0, 40);
    for (std::size_t i = 0; i < accessions.size(); ++i) {
        JuiceColour juice;
        juice.accession = accessions[i];
        juice.lot = lotName(i, 0);
        juice.redPerDay = kLn2 / std::clamp(dice.normal(kHalfLives[i], 6), 40.0, 200.0);
        // Brown goes more slowly than red does; in one accession's juice it comes.
        juice.brownPerDay = i == 2 ? -0.0015 : juice.redPerDay * dice.normal(0.45, 0.03);
        juice.isDilutedAnew = i == 4;
        const double total = dice.normal(110, 30);
        for (std::size_t p = 0; p < kShares.size(); ++p) {
            juice.pigments[p] = rounded(
                std::max(20.0, total) * kShares[p] * std::max(0.3, dice.normal(1, 0.25)), 2);
        }
        starts.push_back({std::clamp(dice.normal(0.95, 0.2), 0.4, 1.6),
                          std::clamp(dice.normal(0.5, 0.08), 0.25, 0.8)});
        writeLots(dice, orchard.collection[juice.accession].id, i, juice, bench);
        truth.juices.push_back(juice);
    }
    readColour(dice, truth.juices, starts, bench);
}

} // namespace bullace::demo
