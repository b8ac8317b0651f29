// The third season: three tablets that do not see one another until its end.
#include "demo/third_season.hpp"

#include "core/journal/json_value.hpp"

#include <utility>

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::MapValue;
using journal::textValue;

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

} // namespace

std::vector<Noted> walkBlock(Season& season, Pen& pen, const Walk& block, unsigned kept) {
    std::vector<Noted> found;
    for (const vineyard::Block& one : season.orchard.blocks) {
        for (const vineyard::Row& row : one.rows) {
            if (one.code != block.block) {
                break;
            }
            Walk walk = block;
            walk.row = row.number;
            auto noted = season.walk(pen, walk);
            if (row.number == kept) {
                found = std::move(noted);
            }
        }
    }
    return found;
}

void writeThirdSeason(
    Dice& dice, const Orchard& orchard, Pens& pens, const Past& past, Truth& truth) {
    writeRulebook(pens.office);
    pens.meet();
    Season season{dice, orchard, pens, past, truth};
    writeSpring(season);
    writeHarvest(season);
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
