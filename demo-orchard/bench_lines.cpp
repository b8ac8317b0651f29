#include "demo/bench_lines.hpp"

#include "demo/dice.hpp"

#include "core/journal/json_value.hpp"

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::listValue;
using journal::MapValue;
using journal::numberValue;
using journal::textValue;

template<typename Items, typename ToValue>
Bytes valuesOf(const Items& items, ToValue&& toValue) {
    std::vector<Bytes> values;
    for (const auto& item : items) {
        values.push_back(toValue(item));
    }
    return listValue(values);
}

Bytes hardinessValue(const std::vector<Accession>& collection, const FrostHardiness& hardiness) {
    MapValue map;
    map.add("accession", textValue(collection[hardiness.accession].id));
    map.add("year", integerValue(hardiness.year)).add("lot", textValue(hardiness.lot));
    map.add("lt50_c", numberValue(hardiness.lt50C));
    return map.add("slope_per_c", numberValue(hardiness.slopePerC)).bytes();
}

Bytes freezeValue(const FieldFreeze& freeze) {
    MapValue map;
    map.add("date", textValue(writeDate(freeze.date)));
    map.add("lowest_c", numberValue(freeze.lowestC));
    map.add("secondary_hardier_c", numberValue(freeze.secondaryHardierC));
    map.add("tertiary_hardier_c", numberValue(freeze.tertiaryHardierC));
    return map.add("positions", valuesOf(freeze.positions, textValue)).bytes();
}

Bytes juiceValue(const std::vector<Accession>& collection, const JuiceColour& juice) {
    MapValue map;
    map.add("accession", textValue(collection[juice.accession].id));
    map.add("lot", textValue(juice.lot));
    map.add("red_per_day", numberValue(rounded(juice.redPerDay, 6)));
    map.add("brown_per_day", numberValue(rounded(juice.brownPerDay, 6)));
    map.add("pigments_mg_per_100g", valuesOf(juice.pigments, numberValue));
    return map.add("diluted_anew", journal::booleanValue(juice.isDilutedAnew)).bytes();
}

Bytes shootValue(const ShootCurve& shoot) {
    MapValue map;
    map.add("position", textValue(shoot.position)).add("shoot", integerValue(shoot.shoot));
    map.add("asymptote_cm", numberValue(shoot.asymptoteCm));
    map.add("midpoint_day", numberValue(shoot.midpointDay));
    map.add("rate_per_day", numberValue(shoot.ratePerDay));
    return map.add("end_day", numberValue(rounded(shoot.endDay(), 1))).bytes();
}

Bytes weatherValue(const FieldWeather& weather) {
    MapValue map;
    map.add("site", textValue(weather.site));
    map.add("from", textValue(writeDate(weather.from)));
    map.add("to", textValue(writeDate(weather.to)));
    map.add(
        "gap",
        listValue({textValue(writeDate(weather.gapFrom)), textValue(writeDate(weather.gapTo))}));
    map.add("heat_base_c", numberValue(weather.heatBaseC));
    map.add("heat_from_month", integerValue(weather.heatFromMonth));
    map.add("heat_to_bloom", numberValue(weather.heatToBloom));
    map.add("freezes", valuesOf(weather.freezes, [](const auto& freeze) {
                return listValue({textValue(writeDate(freeze.first)), numberValue(freeze.second)});
            }));
    return map.bytes();
}

} // namespace

Bytes benchValue(const std::vector<Accession>& collection, const BenchTruth& truth) {
    MapValue map;
    map.add("hardiness", valuesOf(truth.hardiness, [&collection](const FrostHardiness& one) {
                return hardinessValue(collection, one);
            }));
    map.add("freeze", freezeValue(truth.freeze));
    map.add("juices", valuesOf(truth.juices, [&collection](const JuiceColour& one) {
                return juiceValue(collection, one);
            }));
    map.add("shoots", valuesOf(truth.shoots, shootValue));
    map.add("cordons_cm", valuesOf(truth.cordonsCm, [](const auto& cordon) {
                return listValue({textValue(cordon.first), numberValue(cordon.second)});
            }));
    map.add("weather", weatherValue(truth.weather));
    map.add("unverified", valuesOf(truth.unverified, [&collection](std::size_t at) {
                return textValue(collection[at].id);
            }));
    return map.add("hybrid", textValue(truth.hybrid)).bytes();
}

} // namespace bullace::demo
