// The demo's sciences recover what its generator knows: each truth lies within the interval that is
// told, as often as the interval says.
#include "core/fruit/colour_decay.hpp"
#include "core/hardiness/bud_injury.hpp"
#include "core/hardiness/kill_curve.hpp"
#include "core/hardiness/shoot_growth.hpp"
#include "core/journal/json_value.hpp"
#include "support/demo_notes.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <string>
#include <vector>

using namespace bullace;
using test::Coverage;
using test::holds;

namespace {

const season::StationNotes& notes() {
    return test::demoNotes();
}
const demo::BenchTruth& truth() {
    return test::demoStation().truth.bench;
}
const demo::Orchard& orchard() {
    return test::demoStation().orchard;
}

double numberIn(BytesView value, std::string_view name) {
    const auto member = journal::memberOf(value, name);
    const auto number = member ? journal::numberOf(*member) : std::nullopt;
    REQUIRE(number.has_value());
    return *number;
}

const std::string& lotOf(const season::RecordNote& note) {
    return notes().lots[note.lot].id;
}

std::map<std::string, std::vector<hardiness::FreezeRow>> freezeTests() {
    std::map<std::string, std::vector<hardiness::FreezeRow>> byLot;
    for (const season::RecordNote& note : notes().notesOf("freeze-test").records) {
        byLot[lotOf(note)].push_back({numberIn(note.value, "c"),
                                      std::llround(numberIn(note.value, "of")),
                                      std::llround(numberIn(note.value, "dead"))});
    }
    return byLot;
}

std::vector<fruit::AbsorbanceReading> absorbances() {
    std::vector<fruit::AbsorbanceReading> readings;
    for (const season::RecordNote& note : notes().notesOf("absorbance").records) {
        fruit::AbsorbanceReading reading;
        reading.accession = lotOf(note);
        reading.conditions = {numberIn(note.value, "nm"),
                              numberIn(note.value, "dilution"),
                              numberIn(note.value, "path_mm"),
                              numberIn(note.value, "ph"),
                              numberIn(note.value, "storage_c")};
        reading.day = numberIn(note.value, "day");
        reading.absorbance = numberIn(note.value, "a");
        readings.push_back(std::move(reading));
    }
    return readings;
}

using Shoot = std::pair<std::string, std::int64_t>; // position and number
std::map<Shoot, std::vector<hardiness::ShootLength>> shoots() {
    std::map<Shoot, std::vector<hardiness::ShootLength>> byShoot;
    for (const season::RecordNote& note : notes().notesOf("shoot-length").records) {
        byShoot[{notes().vines[note.vine].position, std::llround(numberIn(note.value, "shoot"))}]
            .push_back({season::dateOfDay(note.day), numberIn(note.value, "cm")});
    }
    return byShoot;
}

} // namespace

TEST_CASE("freezing tests give the temperature that kills half of the buds") {
    const auto tests = freezeTests();
    REQUIRE(tests.size() == truth().hardiness.size());
    CHECK(tests.size() == 16);
    Coverage coverage;
    for (const demo::FrostHardiness& one : truth().hardiness) {
        CAPTURE(one.lot);
        const auto curve = hardiness::killCurve(tests.at(one.lot), {});
        REQUIRE(curve.ok());
        CHECK(curve->counted == 210);
        REQUIRE(curve->points.size() == 3);
        const hardiness::KillPoint& half = curve->points[1];
        CHECK(std::abs(half.temperatureC.value - one.lt50C) < 1.5);
        coverage.add(holds(half.temperatureC.interval, one.lt50C));
    }
    MESSAGE("killing temperatures held: ", coverage.held, " of ", coverage.of);
    CHECK(coverage.share() >= 0.9);
}

TEST_CASE("buds cut after the freeze are dead as the freezing tests' curve has them at its lowest "
          "temperature") {
    std::map<std::size_t, hardiness::DeadOf> primary;
    for (const season::RecordNote& note : notes().notesOf("primary-buds").records) {
        hardiness::DeadOf& of = primary[notes().vines[note.vine].accession];
        of.dead += std::llround(numberIn(note.value, "dead"));
        of.counted += std::llround(numberIn(note.value, "of"));
    }
    Coverage coverage;
    for (const demo::FrostHardiness& one : truth().hardiness) {
        if (one.year != static_cast<int>(truth().freeze.date.year())) {
            continue;
        }
        const auto at = notes().accession(orchard().collection[one.accession].id);
        REQUIRE(at.has_value());
        const auto share = hardiness::deadShare(primary.at(*at));
        REQUIRE((share.ok() && share->has_value()));
        const double dead =
            100 / (1 + std::exp(-one.slopePerC * (one.lt50C - truth().freeze.lowestC)));
        coverage.add(holds((*share)->clopperPearson, dead));
    }
    MESSAGE("shares of dead buds held: ", coverage.held, " of ", coverage.of);
    CHECK(coverage.of == 8);
    CHECK(coverage.held >= 7);
}

TEST_CASE("juice gives its half-life back; what turns brown has none, and another dilution is not "
          "put with the first") {
    const auto decays = fruit::colourDecay(absorbances());
    REQUIRE(decays.ok());
    Coverage coverage;
    std::size_t withoutHalfLife = 0;
    for (const demo::JuiceColour& juice : truth().juices) {
        CAPTURE(juice.lot);
        std::size_t dilutions = 0;
        for (const fruit::ColourDecay& decay : decays->decays) {
            if (decay.accession != juice.lot) {
                continue;
            }
            const bool isRed = decay.conditions.nm == 520;
            dilutions += isRed ? 1U : 0U;
            const double perDay = isRed ? juice.redPerDay : juice.brownPerDay;
            REQUIRE(decay.perDay.has_value());
            coverage.add(holds(decay.perDay->interval, perDay));
            if (perDay < 0) {
                CHECK_FALSE(decay.halfLifeDays.has_value());
                ++withoutHalfLife;
            } else if (decay.readings >= 12) {
                REQUIRE(decay.halfLifeDays.has_value());
                CHECK(std::abs(decay.halfLifeDays->value * perDay / std::log(2.0) - 1) < 0.25);
            }
        }
        CHECK(dilutions == (juice.isDilutedAnew ? 2 : 1));
    }
    MESSAGE("rates of decay held: ", coverage.held, " of ", coverage.of);
    CHECK(coverage.of == 14);
    CHECK(coverage.share() >= 0.9);
    CHECK(withoutHalfLife == 1);
}

TEST_CASE("tagged shoots tell when growth ended, and which had not by the last visit") {
    const auto all = shoots();
    REQUIRE(all.size() == truth().shoots.size());
    Coverage ends;
    Coverage late;
    for (const demo::ShootCurve& curve : truth().shoots) {
        CAPTURE(curve.position);
        CAPTURE(curve.shoot);
        const auto growth = hardiness::fitShootGrowth(all.at({curve.position, curve.shoot}));
        REQUIRE(growth.ok());
        REQUIRE(growth->endDay.has_value());
        const double first = demo::dayOfYear(growth->firstDay);
        const bool isLate = curve.endDay() > demo::dayOfYear(growth->lastDay);
        if (isLate) {
            late.add(growth->isEndBeyondMeasured);
            continue;
        }
        CHECK(std::abs(growth->endDay->value + first - curve.endDay()) < 12);
        ends.add(holds(growth->endDay->interval, curve.endDay() - first));
    }
    MESSAGE("ends of growth held: ",
            ends.held,
            " of ",
            ends.of,
            "; late shoots: ",
            late.held,
            " of ",
            late.of);
    CHECK(ends.of == 50);
    CHECK(ends.share() >= 0.9);
    CHECK(late.of == 10);
    CHECK(late.share() >= 0.9);
}

TEST_CASE("tips bound the end of growth of the vine's middle shoot") {
    std::map<std::string, std::vector<hardiness::TipRecord>> tips;
    for (const season::WordNote& note : notes().notesOf("shoot-tip").words) {
        const std::string& word = notes().words[note.word];
        tips[notes().vines[note.vine].position].push_back(
            {season::dateOfDay(note.day),
             word == "growing"   ? hardiness::ShootTip::Growing
             : word == "slowing" ? hardiness::ShootTip::Slowing
                                 : hardiness::ShootTip::Stopped});
    }
    std::size_t checked = 0;
    for (const demo::ShootCurve& curve : truth().shoots) {
        if (curve.shoot != 3) {
            continue;
        }
        CAPTURE(curve.position);
        const hardiness::GrowthEnd end = hardiness::growthEnd(tips.at(curve.position));
        CHECK((!end.after || demo::dayOfYear(*end.after) < curve.endDay()));
        CHECK((!end.onOrBefore || demo::dayOfYear(*end.onOrBefore) >= curve.endDay()));
        ++checked;
    }
    CHECK(checked == 12);
}

TEST_CASE("prunings for a metre of cordon are what was weighed over what was measured") {
    std::map<std::string, double> weights;
    for (const season::NumberNote& note : notes().notesOf("pruning-weight").numbers) {
        weights[notes().vines[note.vine].position] = note.value;
    }
    std::vector<hardiness::PrunedVine> vines;
    for (const season::NumberNote& note : notes().notesOf("cordon-length").numbers) {
        const auto weight = weights.find(notes().vines[note.vine].position);
        if (weight != weights.end() &&
            notes().vines[note.vine].position !=
                std::string(journal::readSubject(test::demoStation().truth.slip.subject).id)) {
            vines.push_back({weight->second, note.value});
        }
    }
    CHECK(vines.size() > 140);
    double sum = 0;
    for (const auto& [position, cm] : truth().cordonsCm) {
        for (const demo::Vine& vine : orchard().vines) {
            sum += vine.position == position ? vine.seasons[2].pruningKg / cm * 100 : 0;
        }
    }
    const auto weight = hardiness::pruningWeight(vines);
    REQUIRE((weight.ok() && weight->kgPerMetre));
    CHECK(weight->kgPerMetre->value ==
          doctest::Approx(sum / static_cast<double>(truth().cordonsCm.size())).epsilon(0.02));
}
