// The third season: three tablets that do not see one another until its end.
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/standing.hpp"

#include <array>
#include <utility>

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::Kind;
using journal::MapValue;
using journal::textValue;

constexpr SecondLook kAdvanced{"advanced", true, 1, 5};
constexpr SecondLook kGreatest{"greatest", true, 8, 40, true};
constexpr SecondLook kLeast{"least", true, 8, 35};
constexpr SecondLook kMeanPercent{"mean", true, 2.5, 20, true};
constexpr SecondLook kMeanOfPercents{"mean", true, 5, 30};
constexpr SecondLook kMeanOfScores{"mean", true, 1, 3};
constexpr SecondLook kLater{"later"};
constexpr SecondLook kAsk{"ask", false, 0.1, 0.4};

// One season as it is being written.
struct Season {
    Dice& dice;
    const Orchard& orchard;
    Pens& pens;
    const Past& past;
    Truth& truth;

    std::vector<Noted> walk(Pen& pen, const Walk& walk) {
        return walkRows(dice, orchard, pen, walk);
    }
    void samples(Pen& pen, const Walk& walk, int each) {
        walkSamples(dice, orchard, pen, walk, each);
    }
    void
    again(Pen& pen, const Walk& walk, const std::vector<Noted>& first, const SecondLook& look) {
        lookAgain(orchard, pen, walk, first, look, truth);
    }
};

Bytes ruleValue(const char* where, const char* descriptor, const char* rule, Bytes within) {
    MapValue value;
    value.add("where", textValue(where));
    value.add("from", textValue("2025-01-01"));
    value.add("descriptors", journal::listValue({textValue(descriptor)}));
    value.add("rule", textValue(rule));
    if (!within.empty()) {
        value.add("within", std::move(within));
    }
    return value.bytes();
}

void writeRulebook(Pen& office) {
    office.begin(kHesper, day(2025, 1, 9), 11, 0, 60);
    office.catalog(
        "rulebook/1",
        ruleValue(
            "B1-*", "clusters", "greatest", MapValue().add("percent", integerValue(20)).bytes()));
    office.catalog("rulebook/2", ruleValue("B3-*", "ripe", "least", integerValue(20)));
    office.catalog("rulebook/3", ruleValue("*", "shoot-tip", "later", {}));
}

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

void bloom(Season& season) {
    for (const unsigned dayOfMay : {14U, 19U, 26U}) {
        const CivilDate date = day(2025, 5, dayOfMay);
        season.pens.first.begin(kIda, date, 7, 30, 11);
        season.walk(season.pens.first, {"B1", 0, date, "stage"});
        season.pens.second.begin(kWanda, date, 7, 30, 11);
        season.walk(season.pens.second, {"B3", 0, date, "stage"});
        season.pens.third.begin(kTobias, date, 7, 30, 11);
        season.walk(season.pens.third, {"N1", 0, date, "stage"});
    }
    const CivilDate date = day(2025, 5, 19);
    std::vector<Noted> seen;
    for (unsigned row = 1; row <= 8; ++row) {
        auto noted = season.walk(season.pens.third, {"B2", row, date, "caps-off"});
        if (row == 4) {
            seen = std::move(noted);
        }
    }
    season.again(season.pens.first, {"B2", 4, date, "caps-off"}, seen, kMeanOfPercents);
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

void clusters(Season& season) {
    const CivilDate date = day(2025, 6, 11);
    Pens& pens = season.pens;
    pens.first.begin(kIda, date, 7, 20, 45);
    std::vector<Noted> b1;
    for (unsigned row = 1; row <= 6; ++row) {
        auto noted = season.walk(pens.first, {"B1", row, date, "clusters"});
        if (row == 3) {
            b1 = noted;
        } else if (row == 1) {
            for (std::size_t i = 2; i < noted.size(); i += 6) { // counted again on the way back
                pens.first.observe(
                    {noted[i].subject,
                     trueValue(season.orchard, *noted[i].vine, {"B1", 1, date, "clusters"}),
                     {noted[i].place},
                     {},
                     std::string("counted again")});
            }
        }
    }
    pens.third.begin(kTobias, date, 7, 20, 45);
    season.again(pens.third, {"B1", 3, date, "clusters"}, b1, kGreatest);
    season.walk(pens.third, {"N1", 0, date, "clusters"});
    std::vector<Noted> b2;
    for (unsigned row = 1; row <= 8; ++row) {
        auto noted = season.walk(pens.third, {"B2", row, date, "clusters"});
        if (row == 3) {
            b2 = std::move(noted);
        }
    }
    pens.second.begin(kWanda, date, 7, 30, 45);
    season.again(pens.second, {"B2", 3, date, "clusters"}, b2, kMeanPercent);
    for (unsigned row = 1; row <= 10; ++row) {
        const Walk walk{"B3", row, date, "clusters", row == 4 ? 1 : 0};
        const auto noted = season.walk(pens.second, walk);
        if (walk.along != 0) {
            ShiftedRow& shifted = season.truth.shiftedRows.emplace_back();
            shifted = {walk.block, row, writeDate(date), walk.descriptor, walk.along, false, {}};
            for (const Noted& one : noted) {
                shifted.subjects.push_back(one.subject);
            }
        }
    }
}

// A copy of the second tablet is made, it goes on, falls into a puddle, and the copy is put back:
// from there on its journal has two branches.
void puddle(Season& season) {
    Pens& pens = season.pens;
    pens.restored = pens.second;
    season.truth.restored = pens.second.origin().text();
    season.truth.restoredAfter = pens.second.entries().size();
    const CivilDate date = day(2025, 7, 8);
    pens.second.begin(kWanda, date, 7, 40, 12);
    std::vector<Noted> first;
    for (unsigned row = 1; row <= 6; ++row) {
        auto noted = season.walk(pens.second, {"B3", row, date, "vigour"});
        if (row == 1) {
            first = std::move(noted);
        }
    }
    // What was remembered of the first row was noted again under its date.
    pens.restored.begin(kWanda, day(2025, 7, 10), 16, 5, 20);
    season.again(pens.restored, {"B3", 1, date, "vigour"}, first, kMeanOfScores);
}

void august(Season& season) {
    Pens& pens = season.pens;
    const CivilDate date = day(2025, 8, 20);
    pens.first.begin(kIda, date, 7, 0, 8);
    season.samples(pens.first, {"B1", 0, date, "berries-per-cluster"}, 3);
    season.samples(pens.first, {"B2", 0, date, "berries-per-cluster"}, 3);
    season.samples(pens.first, {"B1", 0, date, "berry-diameter"}, 4);
    pens.restored.begin(kWanda, date, 7, 10, 8);
    season.samples(pens.restored, {"B1", 3, date, "berries-per-cluster"}, 3);
    season.samples(pens.restored, {"B3", 0, date, "berry-diameter"}, 4);
    pens.third.begin(kTobias, date, 7, 0, 8);
    season.samples(pens.third, {"N1", 0, date, "berries-per-cluster"}, 3);
    season.samples(pens.third, {"N1", 0, date, "berry-diameter"}, 4);
    season.walk(pens.third, {"N1", 2, date, "wasp-damage"});
}

void ripening(Season& season) {
    Pens& pens = season.pens;
    const CivilDate date = day(2025, 8, 27);
    pens.restored.begin(kWanda, date, 7, 0, 14);
    std::vector<Noted> ripe;
    for (unsigned row = 1; row <= 10; ++row) {
        auto noted = season.walk(pens.restored, {"B3", row, date, "ripe"});
        if (row <= 2) {
            ripe.insert(ripe.end(), noted.begin(), noted.end());
        }
    }
    season.samples(pens.restored, {"B3", 0, date, "soluble-solids"}, 2);
    pens.first.begin(kIda, date, 7, 0, 14);
    season.again(pens.first, {"B3", 0, date, "ripe"}, ripe, kLeast);
    std::vector<Noted> flavour;
    for (unsigned row = 1; row <= 8; ++row) {
        auto noted = season.walk(pens.first, {"B2", row, date, "flavour"});
        if (row == 6) {
            flavour = std::move(noted);
        }
    }
    pens.third.begin(kTobias, date, 9, 0, 14);
    season.again(pens.third, {"B2", 6, date, "flavour"}, flavour, kMeanOfScores);
}

void decisions(Season& season) {
    Pens& pens = season.pens;
    const CivilDate date = day(2025, 9, 10);
    pens.first.begin(kIda, date, 7, 30, 13);
    const auto colours = season.walk(pens.first, {"B2", 7, date, "berry-colour"});
    std::vector<Noted> verdicts;
    for (unsigned row = 1; row <= 8; ++row) {
        verdicts = season.walk(pens.first, {"B2", row, date, "verdict"});
    }
    pens.third.begin(kTobias, date, 7, 30, 13);
    season.again(pens.third, {"B2", 7, date, "berry-colour"}, colours, kAsk);
    pens.restored.begin(kWanda, date, 7, 30, 13);
    season.again(pens.restored, {"B2", 8, date, "verdict"}, verdicts, kAsk);

    const CivilDate autumn = day(2025, 9, 30);
    pens.first.begin(kIda, autumn, 8, 0, 10);
    const auto fifth = season.walk(pens.first, {"B1", 5, autumn, "shoot-tip"});
    const auto sixth = season.walk(pens.first, {"B1", 6, autumn, "shoot-tip"});
    pens.restored.begin(kWanda, autumn, 10, 0, 10);
    season.again(pens.restored, {"B1", 5, autumn, "shoot-tip"}, fifth, kLater);
    // Later in the day, but by its clock a year before.
    pens.third.begin(kTobias, autumn, 13, 0, 10);
    season.again(pens.third, {"B1", 6, autumn, "shoot-tip"}, sixth, kLater);
}

void notes(Season& season) {
    constexpr std::array<std::pair<const char*, const char*>, 5> kTexts{
        {{"wire loose at the post", "post leans"},
         {"many leafhoppers", "leaves pale, hoppers under them"},
         {"sweetest of the row", "good, thin skin"},
         {"shoots from the root", "suckers at the foot"},
         {"bird net torn", "netting has a hole"}}};
    const CivilDate date = day(2025, 9, 11);
    season.pens.first.begin(kIda, date, 8, 0, 40);
    season.pens.third.begin(kTobias, date, 8, 0, 40);
    std::size_t at = 0;
    for (const Vine* const vine : season.orchard.row("B2", 2)) {
        if (!vine->seasons[2].stands || at == kTexts.size()) {
            continue;
        }
        const std::string subject = observation(vine->position, date, "note");
        season.pens.first.observe(subject, textValue(kTexts[at].first));
        season.pens.third.observe(subject, textValue(kTexts[at++].second));
        season.truth.conflicts.push_back({subject, "all", "", false, {}});
    }
    season.pens.first.write(
        Kind::Remark,
        {observation("B2-02-01", date, "note"), textValue("rained on while writing"), {}, {}, {}});
}

// Notes of the year before, taken up again by people who cannot see one another.
void afterthoughts(Season& season) {
    Pens& pens = season.pens;
    const Past& past = season.past;
    const auto right = [&season](const Noted& noted) {
        return trueValue(season.orchard, *noted.vine, {"B1", 2, day(2024, 6, 11), "clusters"});
    };
    pens.first.begin(kIda, day(2025, 9, 12), 9, 0, 30);
    pens.third.begin(kTobias, day(2025, 9, 12), 9, 0, 30);
    for (std::size_t i = past.clustersAgain.size(); i < past.clustersAgain.size() + 3; ++i) {
        const Noted& noted = past.clusters.at(i);
        pens.first.write(
            Kind::Retract,
            {noted.subject, journal::nullValue(), {noted.place}, {}, std::string("wrong vine")});
        pens.third.observe({noted.subject, right(noted), {noted.place}, {}, {}});
        season.truth.conflicts.push_back({noted.subject, "retraction", "", true, right(noted)});
    }
    const Noted& one = past.clusters.at(0);
    const std::vector<journal::Place> both{one.place, past.clustersAgain.at(0).place};
    pens.first.observe({one.subject, one.value, both, {}, std::string("mine was right")});
    pens.office.begin(kHesper, day(2025, 7, 1), 14, 0, 60);
    pens.office.write(Kind::Ruling,
                      {one.subject,
                       past.clustersAgain.at(0).value,
                       both,
                       {},
                       std::string("T. counted in the shade")});
    season.truth.conflicts.push_back({one.subject, "ruling", "", true, right(one)});
}

} // namespace

void writeThirdSeason(
    Dice& dice, const Orchard& orchard, Pens& pens, const Past& past, Truth& truth) {
    writeRulebook(pens.office);
    pens.meet();
    Season season{dice, orchard, pens, past, truth};
    winter(season);
    budBreak(season);
    updatePlantings(orchard, pens.office, 2025);
    bloom(season);
    crosses(season);
    clusters(season);
    puddle(season);
    august(season);
    ripening(season);
    decisions(season);
    notes(season);
    afterthoughts(season);
    // The other countings of the year before were left as they were, open by the rule of that time.
    for (std::size_t i = 1; i < past.clustersAgain.size(); ++i) {
        const Noted& noted = past.clusters.at(i);
        truth.conflicts.push_back(
            {noted.subject,
             "mean",
             "exceeded",
             true,
             trueValue(orchard, *noted.vine, {"B1", 2, day(2024, 6, 11), "clusters"})});
    }
    truth.wrongClock = pens.third.origin().text();
    truth.wrongClockDays = kClockDaysOff;
}

} // namespace bullace::demo
