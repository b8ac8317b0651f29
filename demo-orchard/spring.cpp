// The third season up to the cluster counts.
#include "demo/third_season.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/standing.hpp"

#include <utility>

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::MapValue;
using journal::textValue;

// The first position of the row, from index `from` on, where a vine stands.
std::string standingIn(const Orchard& orchard, const char* block, unsigned row, std::size_t from) {
    const auto vines = orchard.row(block, row);
    while (from + 1 < vines.size() && !vines[from]->seasons[2].stands) {
        ++from;
    }
    return vines[from]->position;
}

void winter(Season& season) {
    const CivilDate date = day(2025, 1, 21);
    Pen& first = season.pens.first;
    first.begin(kIda, date, 8, 30, 25);
    const std::string slipAt = standingIn(season.orchard, "B1", 2, 10);
    const Walk weights{"B1", 0, date, "pruning-weight", 0, slipAt.c_str()};
    const auto noted = season.walk(first, weights);
    season.walk(first, {"B1", 0, date, "dead-spurs"});
    season.pens.second.begin(kWanda, date, 8, 40, 25);
    season.walk(season.pens.second, {"B3", 0, date, "pruning-weight"});
    for (const Noted& one : noted) {
        if (one.vine->position == slipAt) {
            season.truth.slip = {
                one.subject, one.value, trueValue(season.orchard, *one.vine, weights)};
        }
    }
}

void budBreak(Season& season) {
    const CivilDate date = day(2025, 3, 27);
    season.pens.first.begin(kIda, date, 7, 50, 10);
    season.walk(season.pens.first, {"B1", 0, date, "stage"});
    std::vector<Noted> seen[2];
    for (unsigned row = 1; row <= 8; ++row) {
        auto noted = season.walk(season.pens.first, {"B2", row, date, "stage"});
        if (row <= 2) {
            seen[row - 1] = std::move(noted);
        }
    }
    season.pens.second.begin(kWanda, date, 7, 55, 10);
    season.walk(season.pens.second, {"B3", 0, date, "stage"});
    for (const auto& noted : seen) {
        season.again(season.pens.second, {"B2", 0, date, "stage"}, noted, kAdvanced);
    }
    // The third tablet comes by the first row as well, and notes what the first did.
    season.pens.third.begin(kTobias, date, 8, 20, 10);
    season.walk(season.pens.third, {"N1", 0, date, "stage"});
    for (const Noted& noted : seen[0]) {
        season.pens.third.observe(noted.subject, noted.value);
    }
}

// Crosses opened in the field, at three female vines.
void crosses(Season& season) {
    Pen& pen = season.pens.first;
    const CivilDate date = day(2025, 5, 20);
    pen.begin(kIda, date, 6, 40, 30);
    int number = 0;
    for (const Vine* const vine : season.orchard.row("B1", 0)) {
        const VineSeason& truth = vine->seasons[2];
        const Accession& mother = season.orchard.collection[truth.accession];
        if (number == 3 || !truth.bears || mother.flowerSex != 4 || !season.dice.chance(0.2)) {
            continue;
        }
        const std::string id =
            journal::fieldPrefix(pen.origin().device) + "-x" + std::to_string(++number);
        pen.catalog("cross/" + id + "/mother", textValue(mother.id));
        pen.catalog("cross/" + id + "/father", textValue("A023"));
        for (const char* step : {"emasculated", "bagged", "pollinated"}) {
            MapValue work;
            work.add("cross", textValue(id)).add("step", textValue(step));
            work.add("count", integerValue(season.dice.between(20, 46)));
            work.add("tag", integerValue(100 + number));
            pen.sample(observation(vine->position, date, "cross-work"), work.bytes());
        }
    }
}

// Caps off on the slope, one row of it by two people.
void capsOff(Season& season, CivilDate date) {
    season.pens.third.begin(kTobias, date, 10, 0, 11);
    const auto seen = walkBlock(season, season.pens.third, {"B2", 0, date, "caps-off"}, 4);
    season.pens.first.begin(kIda, date, 10, 30, 11);
    season.again(season.pens.first, {"B2", 4, date, "caps-off"}, seen, kMeanOfPercents);
}

void bloom(Season& season) {
    for (const unsigned dayOfMay : {14U, 19U, 26U}) {
        const CivilDate date = day(2025, 5, dayOfMay);
        season.pens.first.begin(kIda, date, 7, 30, 11);
        season.walk(season.pens.first, {"B1", 0, date, "stage"});
        season.pens.second.begin(kWanda, date, 7, 30, 11);
        season.walk(season.pens.second, {"B3", 0, date, "stage"});
        season.pens.third.begin(kTobias, date, 7, 30, 11);
        season.walk(season.pens.third, {"N1", 0, date, "stage"});
        if (dayOfMay == 19) {
            season.walk(season.pens.third, {"N1", 0, date, "flower-sex"});
            capsOff(season, date);
            crosses(season);
        }
    }
}

// Some vines are counted again on the way back, and the first count replaced.
void countAgain(Season& season, Pen& pen, const Walk& walk, const std::vector<Noted>& noted) {
    for (std::size_t i = 2; i < noted.size(); i += 6) {
        pen.observe({noted[i].subject,
                     trueValue(season.orchard, *noted[i].vine, walk),
                     {noted[i].place},
                     {},
                     std::string("counted again")});
    }
}

// The fourth row begins at the second vine with the first vine's count.
void shiftRow(Season& season, Pen& pen, CivilDate date) {
    const Walk walk{"B3", 4, date, "clusters", 1};
    ShiftedRow& shifted = season.truth.shiftedRows.emplace_back();
    shifted = {walk.block, walk.row, writeDate(date), walk.descriptor, walk.along, false, {}};
    for (const Noted& one : season.walk(pen, walk)) {
        shifted.subjects.push_back(one.subject);
    }
}

void clusters(Season& season) {
    const CivilDate date = day(2025, 6, 11);
    Pens& pens = season.pens;
    pens.first.begin(kIda, date, 7, 20, 45);
    const Walk firstRow{"B1", 1, date, "clusters"};
    countAgain(season, pens.first, firstRow, season.walk(pens.first, firstRow));
    std::vector<Noted> third;
    for (unsigned row = 2; row <= 6; ++row) {
        auto noted = season.walk(pens.first, {"B1", row, date, "clusters"});
        if (row == 3) {
            third = std::move(noted);
        }
    }
    pens.third.begin(kTobias, date, 7, 20, 45);
    season.again(pens.third, {"B1", 3, date, "clusters"}, third, kGreatest);
    season.walk(pens.third, {"N1", 0, date, "clusters"});
    const auto slope = walkBlock(season, pens.third, {"B2", 0, date, "clusters"}, 3);
    pens.second.begin(kWanda, date, 7, 30, 45);
    season.again(pens.second, {"B2", 3, date, "clusters"}, slope, kMeanPercent);
    for (unsigned row = 1; row <= 10; ++row) {
        if (row == 4) {
            shiftRow(season, pens.second, date);
        } else {
            season.walk(pens.second, {"B3", row, date, "clusters"});
        }
    }
}

} // namespace

void writeSpring(Season& season) {
    winter(season);
    budBreak(season);
    updatePlantings(season.orchard, season.pens.office, 2025);
    bloom(season);
    clusters(season);
}

} // namespace bullace::demo
