// What the sciences take out of a station's notes: the bench's records, the crop of a season, and
// what stands on the comparison sheet beside counts. The notes are invented; what is expected of
// them follows by hand.
#include "core/journal/json_value.hpp"
#include "core/season/comparison_further.hpp"
#include "core/season/station_bench.hpp"
#include "core/season/station_crop.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

using namespace bullace;
using namespace bullace::season;
using journal::numberValue;
using journal::textValue;

namespace {

// A0 with three vines, A1 with two.
StationNotes station() {
    StationNotes notes;
    notes.accessions = {{"A0", "A0 Tallow", "Muscadinia", true, {}},
                        {"A1", "A1 Rushlight", "Muscadinia", false, {}},
                        {"A2", "A2 Wickery", "", false, {}}};
    for (const std::size_t accession : {0U, 0U, 0U, 1U, 1U, 2U}) {
        notes.vines.push_back({"B1-01-0" + std::to_string(notes.vines.size() + 1), accession});
    }
    notes.lots.push_back({"L1", "juice", 1});
    notes.lots.push_back({"L2", "juice", std::nullopt});
    return notes;
}

void note(
    StationNotes& notes, const char* descriptor, std::uint32_t vine, CivilDate date, double value) {
    notes.of[descriptor].numbers.push_back({vine, dayOfDate(date), value, value, value});
}

void freeze(StationNotes& notes, std::uint32_t vine, double c, double dead, const char* bud) {
    journal::MapValue record;
    record.add("c", numberValue(c)).add("of", numberValue(20)).add("dead", numberValue(dead));
    if (bud != nullptr) {
        record.add("bud", textValue(bud));
    }
    notes.of["freeze-test"].records.push_back(
        {vine, 0, dayOfDate(std::chrono::year(2025) / 1 / 20), record.bytes()});
}

void absorbance(StationNotes& notes, std::uint32_t lot, double day, double a) {
    journal::MapValue record;
    record.add("a", numberValue(a)).add("nm", numberValue(520)).add("day", numberValue(day));
    notes.of["absorbance"].records.push_back(
        {kNoVine, lot, dayOfDate(std::chrono::year(2025) / 9 / 1), record.bytes()});
}

void countsOfTheCrop(StationNotes& notes, int year) {
    note(notes, "clusters", 0, std::chrono::year(year) / 6 / 20, 80);
    note(notes, "berries-per-cluster", 0, std::chrono::year(year) / 6 / 20, 5);
}

// Three vines that weighed 2 g in the lag phase and 6 g at harvest, the year before.
StationNotes weighedTwice() {
    StationNotes notes = station();
    for (std::uint32_t vine = 0; vine < 3; ++vine) {
        note(notes, "berry-weight", vine, std::chrono::year(2024) / 7 / 10, 2);
        note(notes, "berry-weight", vine, std::chrono::year(2024) / 9 / 5, 6);
    }
    countsOfTheCrop(notes, 2025);
    return notes;
}

double cropIn2025(const StationNotes& notes) {
    const auto crop = cropOfVine(bearingIn(notes, 2025).at(0), lagPhaseBefore(notes, 2025));
    REQUIRE(crop);
    return crop->kg->value;
}

} // namespace

TEST_CASE("berries of the lag phase are taken as heavy as such berries became in earlier years") {
    StationNotes notes = weighedTwice();
    note(notes, "berry-weight", 0, std::chrono::year(2025) / 7 / 8, 2.5);
    CHECK(cropIn2025(notes) == doctest::Approx(80 * 5 * 2.5 * 3 / 1000));
}

TEST_CASE("berries weighed after the lag phase are taken as they are") {
    StationNotes notes = weighedTwice();
    note(notes, "berry-weight", 0, std::chrono::year(2025) / 7 / 8, 2.5);
    note(notes, "berry-weight", 0, std::chrono::year(2025) / 9 / 1, 7);
    CHECK(cropIn2025(notes) == doctest::Approx(80 * 5 * 7.0 / 1000));
}

TEST_CASE("without enough vines weighed twice no factor is made up, and it is said") {
    StationNotes notes = station();
    countsOfTheCrop(notes, 2025);
    note(notes, "berry-weight", 0, std::chrono::year(2025) / 7 / 8, 2.5);
    const LagPhase lag = lagPhaseBefore(notes, 2025);
    CHECK_FALSE(lag.factor.factor);
    CHECK_FALSE(lag.factor.remarks.empty());
    CHECK(cropIn2025(notes) == doctest::Approx(80 * 5 * 2.5 / 1000));
}

TEST_CASE("a vine's picks of a day are one, a missed one is there, and a dead vine is lost") {
    StationNotes notes = station();
    const CivilDate first = std::chrono::year(2025) / 8 / 30;
    note(notes, "yield", 0, first, 4.5);
    note(notes, "yield", 0, first, 1.5);
    notes.words = {"walked-past", "dead"};
    notes.of["yield"].missed.push_back({0, dayOfDate(addDays(first, 12)), 0});
    notes.of["vine"].words.push_back({1, dayOfDate(first), 1});
    const auto bearing = bearingIn(notes, 2025);
    REQUIRE(bearing.size() == 1);
    const auto& picks = bearing.at(0).picks.at(0);
    REQUIRE(picks.size() == 2);
    CHECK(picks[0].kg == 6.0);
    CHECK_FALSE(picks[1].kg);
    CHECK(bearing.at(0).lost == std::set<std::uint32_t>{1});
    CHECK(bearingIn(notes, 2024).empty());
}

TEST_CASE("years are those in which any of the descriptors was noted, the newest first") {
    StationNotes notes = station();
    note(notes, "clusters", 0, std::chrono::year(2023) / 12 / 31, 1);
    note(notes, "yield", 0, std::chrono::year(2025) / 1 / 1, 1);
    note(notes, "brix", 0, std::chrono::year(2020) / 1 / 1, 1);
    const std::array<std::string_view, 2> asked{"clusters", "yield"};
    CHECK(yearsOf(notes, asked) == std::vector<int>{2025, 2023});
}

TEST_CASE("taxa take the place of accessions, and accessions that of vines") {
    StationNotes notes = station();
    for (std::uint32_t vine = 0; vine < 6; ++vine) {
        note(notes, "clusters", vine, std::chrono::year(2025) / 8 / 1, vine);
    }
    const StationNotes taxa = byTaxon(notes, "without taxon");
    REQUIRE(taxa.accessions.size() == 2);
    const auto known = taxa.accession("Muscadinia");
    const auto unknown = taxa.accession("without taxon");
    REQUIRE(known);
    REQUIRE(unknown);
    const std::vector<std::size_t> both{*known, *unknown};
    const ComparedItem item = compareNumbers(taxa, "clusters", both, *known);
    CHECK(item.cells[0].vines == 2); // accessions
    CHECK(item.cells[0].mean->value == doctest::Approx((1 + 3.5) / 2));
    CHECK(item.cells[1].mean->value == doctest::Approx(5));
}

TEST_CASE("a freezing test without its temperature, or of a lot that nobody knows, is left out") {
    StationNotes notes = station();
    freeze(notes, 0, -12, 3, nullptr);
    freeze(notes, 3, -14, 8, "secondary");
    journal::MapValue without;
    without.add("of", numberValue(20)).add("dead", numberValue(4));
    notes.of["freeze-test"].records.push_back({0, 0, 0, without.bytes()});
    const auto tests = freezeTestsIn(notes);
    REQUIRE(tests.size() == 2);
    CHECK(tests[0].bud == "primary");
    CHECK(tests[0].row.dead == 3);
    CHECK(tests[1].accession == 1);
    absorbance(notes, 0, 0, 1.2);
    absorbance(notes, 1, 0, 1.2);
    const auto readings = absorbanceIn(notes);
    REQUIRE(readings.size() == 1);
    CHECK(readings[0].accession == "A1");
    CHECK(readings[0].conditions.pathMm == 10);
}

TEST_CASE("the sheet's cold is of primary buds, and its differences have the reference's sign") {
    StationNotes notes = station();
    // One curve, and the same 2 °C warmer; symmetric, so that half dies in the middle.
    const std::array<double, 5> dead{1, 5, 10, 15, 19};
    for (std::size_t i = 0; i < dead.size(); ++i) {
        const double c = -10 - static_cast<double>(i);
        freeze(notes, 0, c, dead[i], "primary");
        freeze(notes, 3, c + 2, dead[i], "primary");
        freeze(notes, 0, c, 20, "tertiary");
    }
    const std::vector<std::size_t> accessions{0, 1, 2};
    const ComparedItem toFirst = compareCold(notes, accessions, 0);
    CHECK(toFirst.cells[0].mean->value == doctest::Approx(-12));
    CHECK(toFirst.cells[0].vines == 100);
    CHECK_FALSE(toFirst.cells[0].difference);
    CHECK(toFirst.cells[1].difference->value == doctest::Approx(2));
    CHECK(*toFirst.cells[1].p < 0.001);
    CHECK_FALSE(toFirst.cells[2].mean);
    const ComparedItem toSecond = compareCold(notes, accessions, 1);
    CHECK(toSecond.cells[0].difference->value == doctest::Approx(-2));
    CHECK(toSecond.cells[0].difference->interval->low < -2);
    CHECK(toSecond.cells[0].difference->interval->high > -2);
}

TEST_CASE("the sheet's colour is the half-life of the red, and what has no readings is empty") {
    StationNotes notes = station();
    for (int day = 0; day <= 40; day += 10) {
        absorbance(notes, 0, day, std::exp2(-day / 20.0) * (day % 20 == 0 ? 1.01 : 0.99));
    }
    const std::vector<std::size_t> accessions{0, 1};
    const ComparedItem item = compareColour(notes, accessions, 0);
    CHECK_FALSE(item.cells[0].mean);
    REQUIRE(item.cells[1].mean);
    CHECK(item.cells[1].mean->value == doctest::Approx(20).epsilon(0.02));
    CHECK(item.cells[1].vines == 5);
}

TEST_CASE("the sheet's stages are days of the season, apart by what the vines were apart") {
    StationNotes notes = station();
    for (const int year : {2024, 2025}) {
        const CivilDate begin = std::chrono::year(year) / 5 / 20;
        for (std::uint32_t vine = 0; vine < 5; ++vine) {
            // A day's spread within an accession; A1 ten days later.
            const int full = static_cast<int>(vine % 3) + (vine < 3 ? 0 : 10);
            for (int day = -6; day <= 20; day += 2) {
                note(notes, "stage", vine, addDays(begin, day), day < full ? 61 : 65);
            }
        }
    }
    const std::vector<std::size_t> accessions{0, 1, 2};
    const ComparedItem item = compareStage(notes, stageOf(kFullBloom), accessions, 0);
    REQUIRE(item.cells[1].difference);
    CHECK(item.cells[0].seasons == 2);
    CHECK(item.cells[1].vines == 4);
    CHECK(item.cells[1].difference->value == doctest::Approx(9.5).epsilon(0.2));
    CHECK_FALSE(item.cells[0].difference);
    CHECK_FALSE(item.cells[2].mean);
}
