// What was really so behind the notes of the bench: how cold kills buds, how juice loses its
// colour, how shoots grow, what the weather was, and what the vines are that nobody has named yet.
#pragma once

#include "core/base/civil_date.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace bullace::demo {

// Of one accession's primary buds in one winter: 1/(1 + e^(-slope·(lt50 - t))) are dead at t °C.
struct FrostHardiness {
    std::size_t accession = 0;
    int year = 0; // of January
    std::string lot;
    double lt50C = -18;
    double slopePerC = 0.66;
};

// Buds that were cut open after a freeze in the field. Secondary buds live through frosts that many
// degrees colder than primary ones.
struct FieldFreeze {
    CivilDate date{};
    double lowestC = 0;
    double secondaryHardierC = 2;
    double tertiaryHardierC = 3.5;
    std::vector<std::string> positions; // of the vines that were looked at
};

// Absorbance = start·e^(-perDay·day); below 0 where juice turns brown.
struct JuiceColour {
    std::size_t accession = 0;
    std::string lot; // whose absorbance was read
    double redPerDay = 0;
    double brownPerDay = 0;
    std::array<double, 5> pigments{}; // mg per 100 g: delphinidin, cyanidin, petunidin, peonidin,
                                      // malvidin
    bool isDilutedAnew = false;       // the last readings were taken at another dilution
};

// length = asymptote/(1 + e^(-rate·(day - midpoint))), by day of the year.
struct ShootCurve {
    std::string position;
    int shoot = 0;
    double asymptoteCm = 0;
    double midpointDay = 0;
    double ratePerDay = 0;
    // The day on which it reaches 95 % of its asymptote.
    [[nodiscard]] double endDay() const { return midpointDay + 2.9444389791664403 / ratePerDay; }
};

struct FieldWeather {
    std::string site;
    CivilDate from{};
    CivilDate to{};
    CivilDate gapFrom{}; // these days, both among them, are not there
    CivilDate gapTo{};
    double heatBaseC = 10;
    unsigned heatFromMonth = 3;                        // the first of it
    double heatToBloom = 0;                            // degree-days, the same in the three seasons
    std::vector<std::pair<CivilDate, double>> freezes; // days below -10 °C
};

struct BenchTruth {
    std::vector<FrostHardiness> hardiness;
    FieldFreeze freeze;
    std::vector<JuiceColour> juices;
    std::vector<ShootCurve> shoots;
    std::vector<std::pair<std::string, double>> cordonsCm; // by position
    FieldWeather weather;
    std::vector<std::size_t> unverified; // wild accessions that stay to be identified
    std::string hybrid;                  // the position of a vine with 39 chromosomes
};

} // namespace bullace::demo
