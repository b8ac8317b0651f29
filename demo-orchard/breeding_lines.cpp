#include "demo/breeding_lines.hpp"

#include "demo/dice.hpp"

#include "core/journal/json_value.hpp"

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::listValue;
using journal::MapValue;
using journal::numberValue;
using journal::textValue;

Bytes variancesValue(const TrialVariances& variances) {
    MapValue map;
    map.add("additive", numberValue(variances.additive));
    map.add("accession_in_season", numberValue(variances.accessionInSeason));
    map.add("replicate_in_season", numberValue(variances.replicateInSeason));
    return map.add("residual", numberValue(variances.residual)).bytes();
}

Bytes selectionValue(const BredSelection& selection) {
    MapValue map;
    map.add("accession", textValue(selection.id));
    map.add("yield_kg", numberValue(rounded(selection.yieldKg, 4)));
    return map.add("brix", numberValue(rounded(selection.brix, 4))).bytes();
}

Bytes crossValue(const BredCross& cross) {
    MapValue map;
    map.add("cross", textValue(cross.id));
    map.add("set_share", numberValue(rounded(cross.setShare, 4)));
    map.add("germination_share", numberValue(rounded(cross.germinationShare, 4)));
    map.add("flowers", integerValue(cross.flowers)).add("fruits", integerValue(cross.fruits));
    map.add("seeds", integerValue(cross.seeds));
    return map.add("germinated", integerValue(cross.germinated)).bytes();
}

} // namespace

Bytes breedingValue(const BreedingTruth& truth) {
    std::vector<Bytes> selections;
    for (const BredSelection& selection : truth.selections) {
        selections.push_back(selectionValue(selection));
    }
    std::vector<Bytes> crosses;
    for (const BredCross& cross : truth.crosses) {
        crosses.push_back(crossValue(cross));
    }
    std::vector<Bytes> dead;
    for (const std::string& position : truth.deadVines) {
        dead.push_back(textValue(position));
    }
    MapValue map;
    map.add("selections", listValue(selections)).add("yield", variancesValue(truth.yield));
    map.add("brix", variancesValue(truth.brix));
    map.add("genetic_correlation", numberValue(truth.geneticCorrelation));
    return map.add("crosses", listValue(crosses)).add("dead_vines", listValue(dead)).bytes();
}

} // namespace bullace::demo
