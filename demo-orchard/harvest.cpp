// The third season from the day on which one tablet fell into a puddle.
#include "demo/third_season.hpp"

#include "core/journal/json_value.hpp"

#include <array>
#include <utility>

namespace bullace::demo {

namespace {

using journal::Kind;
using journal::textValue;

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
    season.samples(pens.third, {"N1", 0, date, "seed-length"}, 2);
    season.samples(pens.third, {"N1", 0, date, "leaf-width"}, 2);
    season.walk(pens.third, {"N1", 0, date, "skin-thickness"});
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
    const auto flavour = walkBlock(season, pens.first, {"B2", 0, date, "flavour"}, 6);
    pens.third.begin(kTobias, date, 9, 0, 14);
    season.again(pens.third, {"B2", 6, date, "flavour"}, flavour, kMeanOfScores);
}

void decisions(Season& season) {
    Pens& pens = season.pens;
    const CivilDate date = day(2025, 9, 10);
    pens.first.begin(kIda, date, 7, 30, 13);
    const auto colours = season.walk(pens.first, {"B2", 7, date, "berry-colour"});
    const auto verdicts = walkBlock(season, pens.first, {"B2", 0, date, "verdict"}, 8);
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

void writeHarvest(Season& season) {
    puddle(season);
    august(season);
    ripening(season);
    decisions(season);
    notes(season);
    afterthoughts(season);
}

} // namespace bullace::demo
