// The book of crosses, the pedigree and the plan as the station's notes give them. The notes are
// invented; what is expected of them follows by hand.
#include "core/season/station_crosses.hpp"

#include "core/journal/json_value.hpp"
#include "core/season/station_cross_plan.hpp"
#include "core/season/station_merit.hpp"
#include "core/season/station_pedigree.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

using namespace bullace;
using namespace bullace::season;
using breeding::BookStep;
using journal::integerValue;
using journal::textValue;

namespace {

std::int32_t dayOf(int year, unsigned month, unsigned day) {
    return dayOfDate(std::chrono::year(year) / std::chrono::month(month) / std::chrono::day(day));
}

NotedAccession accession(const char* id, const char* mother = "", const char* father = "") {
    NotedAccession made{id, std::string(id) + " Rushlight", "", false, {}};
    made.mother = mother;
    made.father = father;
    made.planted = dayOf(2015, 3, 1);
    return made;
}

// Two parents, one of their seedlings, one vine each.
StationNotes station() {
    StationNotes notes;
    notes.accessions = {accession("A1"), accession("A2"), accession("S1", "A1", "A2")};
    notes.accessions[0].taxon = "Vitis rotundifolia";
    notes.accessions[1].taxon = "Vitis rotundifolia × munsoniana";
    notes.accessions[2].cross = "X24-1";
    notes.accessions[2].planted = dayOf(2025, 5, 10);
    for (std::size_t i = 0; i < 3; ++i) {
        notes.vines.push_back({"B1-01-0" + std::to_string(i + 1), i});
    }
    notes.crosses = {{"X24-1", "24-1", "A1", "A2"}, {"X24-2", "24-2", "A2", ""}};
    return notes;
}

void work(StationNotes& notes, const char* cross, const char* step, std::int32_t day, int count) {
    journal::MapValue record;
    record.add("cross", textValue(cross)).add("step", textValue(step));
    if (count >= 0) {
        record.add("count", integerValue(count));
    }
    notes.of["cross-work"].records.push_back({0, 0, day, record.bytes()});
}

const breeding::StepRecord&
stepOf(const std::vector<breeding::BookEntry>& book, std::size_t at, BookStep step) {
    return book[at].at(step);
}

bool isTold(const Remarks& remarks, std::string_view part) {
    return std::ranges::any_of(remarks, [part](const Remark& one) {
        return one.sentence.find(part) != one.sentence.npos;
    });
}

} // namespace

TEST_CASE(
    "a cross is followed from the bag over its lot of seed to the seedling that is taken on") {
    StationNotes notes = station();
    work(notes, "X24-1", "bagged", dayOf(2024, 5, 15), 8);
    work(notes, "X24-1", "pollinated", dayOf(2024, 5, 18), 100);
    work(notes, "X24-1", "pollinated", dayOf(2024, 5, 19), 50);
    work(notes, "X24-1", "re-pollinated", dayOf(2024, 5, 21), 150);
    work(notes, "X24-1", "bag-off", dayOf(2024, 6, 12), 8);
    work(notes, "X24-1", "set", dayOf(2024, 6, 12), 60);
    work(notes, "X24-1", "harvested", dayOf(2024, 9, 2), 55);
    NotedLot lot{"S24-1", "seed", 0};
    lot.cross = "X24-1";
    lot.seeds = 120;
    lot.sinkers = 100;
    lot.germinated = 40;
    lot.day = dayOf(2024, 9, 6);
    lot.stratified = dayOf(2024, 11, 18);
    lot.sown = dayOf(2025, 3, 3);
    notes.lots.push_back(lot);
    notes.of["flower-sex"].numbers.push_back({2, dayOf(2027, 5, 21), 4, 4, 4});
    notes.of["flower-sex"].numbers.push_back({2, dayOf(2028, 5, 21), 3, 3, 3});
    notes.words = {"pull", "take-on"};
    notes.of["verdict"].words.push_back({2, dayOf(2027, 9, 1), 0});
    notes.of["verdict"].words.push_back({2, dayOf(2028, 9, 1), 1});

    const StationCrosses crosses = crossesOf(notes);
    CHECK(crosses.remarks.empty());
    REQUIRE(crosses.heads.size() == 2);
    CHECK(crosses.heads[0].year == 2024);
    CHECK(crosses.heads[1].year == 0); // nothing was done
    const auto book = breeding::crossBook(crosses.heads, crosses.events);
    REQUIRE(book.ok());
    CHECK(stepOf(*book, 0, BookStep::Pollinated).count == 150); // again is no more flowers
    CHECK(stepOf(*book, 0, BookStep::Pollinated).events == 3);
    CHECK(stepOf(*book, 0, BookStep::Set).count == 60);
    CHECK(stepOf(*book, 0, BookStep::Seeds).count == 120);
    CHECK(stepOf(*book, 0, BookStep::Stratified).count == 100); // those that sank
    CHECK(stepOf(*book, 0, BookStep::Germinated).count == 40);
    CHECK(stepOf(*book, 0, BookStep::Germinated).first == std::chrono::year(2025) / 3 / 3);
    CHECK(stepOf(*book, 0, BookStep::Planted).first == std::chrono::year(2025) / 5 / 10);
    CHECK(stepOf(*book, 0, BookStep::FirstFlower).first == std::chrono::year(2027) / 5 / 21);
    CHECK((*book)[0].female == 1); // as it was seen first
    CHECK((*book)[0].perfect == 0);
    CHECK(stepOf(*book, 0, BookStep::Selected).first == std::chrono::year(2028) / 9 / 1);
    CHECK(stepOf(*book, 1, BookStep::Bagged).events == 0);
}

TEST_CASE("what cannot stand in the book of crosses is told, and the rest stands there") {
    StationNotes notes = station();
    work(notes, "X99-9", "set", dayOf(2024, 6, 12), 60);
    work(notes, "X24-1", "set", dayOf(2024, 6, 12), -1); // without a count
    notes.of["cross-work"].open.push_back({0, dayOf(2024, 6, 13), "obs/B1-01-01/2024-06-13/x"});
    NotedLot lot{"S24-1", "seed", 0};
    lot.cross = "X24-1";
    lot.seeds = 120; // but no date
    lot.germinated = 40;
    notes.lots.push_back(lot);
    const StationCrosses crosses = crossesOf(notes);
    CHECK(crosses.open == 1);
    CHECK(isTold(crosses.remarks, "no cross of that number"));
    CHECK(isTold(crosses.remarks, "has seeds but no date"));
    CHECK(isTold(crosses.remarks, "how many seeds germinated"));
    const auto book = breeding::crossBook(crosses.heads, crosses.events);
    REQUIRE(book.ok());
    CHECK(stepOf(*book, 0, BookStep::Set).events == 1);
    CHECK_FALSE(stepOf(*book, 0, BookStep::Set).count);
    CHECK(stepOf(*book, 0, BookStep::Seeds).events == 0);
}

TEST_CASE("a seedling is known under its later names, behind its cross") {
    StationNotes notes = station();
    notes.accessions.push_back(accession("P7"));
    notes.accessions.back().earlier = "S1";
    const StationCrosses crosses = crossesOf(notes);
    const auto chain = breeding::nameChain(crosses.names, "P7");
    REQUIRE(chain.ok());
    CHECK(*chain == std::vector<std::string>{"X24-1", "S1", "P7"});
}

TEST_CASE("founders have their taxon, hybrids and accessions with parents none") {
    const StationNotes notes = station();
    const auto pedigree = pedigreeOf(notes);
    REQUIRE(pedigree.ok());
    const auto taxa = founderTaxa(notes, *pedigree);
    REQUIRE(taxa.size() == 1);
    CHECK(taxa[0].id == "A1");
    const auto related = relatedOf(notes, *pedigree);
    REQUIRE(related.size() == 3);
    CHECK(related[2].kin == 2); // two parents
    CHECK(related[0].kin == 1);
}

TEST_CASE("candidates have what was noted last, their kinship, stored pollen and no more than the "
          "greatest predictions") {
    StationNotes notes = station();
    notes.accessions[0].flowerSex = 4;
    notes.of["flower-sex"].numbers.push_back({1, dayOf(2024, 5, 1), 1, 1, 1});
    notes.of["flower-sex"].numbers.push_back({1, dayOf(2025, 5, 1), 3, 3, 3});
    notes.of["chromosomes"].numbers.push_back({0, dayOf(2024, 5, 1), 40, 40, 40});
    notes.words = {"bronze", "black"};
    for (const std::uint32_t word : {0U, 1U, 1U}) {
        notes.of["berry-colour"].words.push_back({0, dayOf(2024, 9, 1), word});
    }
    notes.lots.push_back({"PO25-1", "pollen", 1});
    StationMerits merits;
    merits.of = {{"A1", {1.5, 0.2, {}}}, {"A2", {-0.5, 0.2, {}}}, {"S1", {0.5, 0.4, {}}}};
    const auto plan = planOf(notes, merits, {});
    REQUIRE(plan.ok());
    REQUIRE(plan->candidates.size() == 3);
    CHECK(plan->candidates[0].parent.sex == breeding::FlowerSex::Female);
    CHECK(plan->candidates[1].parent.sex == breeding::FlowerSex::Perfect);
    CHECK(plan->candidates[2].parent.carriesFemale == true);
    CHECK(plan->candidates[0].parent.chromosomes == 40);
    CHECK(plan->candidates[0].parent.berryColour == "black");
    CHECK(plan->candidates[0].parent.merit == 1.5);
    CHECK(plan->pairs[0 * 3 + 1].kinship == doctest::Approx(0));
    CHECK(plan->pairs[0 * 3 + 2].kinship == doctest::Approx(0.25));
    CHECK(plan->pairs[0 * 3 + 1].hasStoredPollen);
    CHECK_FALSE(plan->pairs[1 * 3 + 0].hasStoredPollen);
    CHECK(plan->withoutBloom == 3);

    PlanWish wish;
    wish.mostCandidates = 2;
    wish.isLessBetter = true;
    const auto least = planOf(notes, merits, wish);
    REQUIRE(least.ok());
    CHECK(least->leftOut == 1);
    CHECK_FALSE(least->find("A1"));
    CHECK(least->candidates[0].parent.merit == 0.5); // turned round

    wish.mostCandidates = 1;
    const auto own = planOfOwn(notes, merits, wish);
    REQUIRE(own.ok());
    CHECK(own->find("A1")); // named by a cross that is not closed
    CHECK(openCrosses(notes).size() == 2);
    CHECK(openCrosses(notes)[1].fathers.empty());
}

TEST_CASE("crosses planned from July on are made in the next year") {
    CHECK(yearOfCrosses(std::chrono::year(2025) / 6 / 30) == 2025);
    CHECK(yearOfCrosses(std::chrono::year(2025) / 7 / 1) == 2026);
}

TEST_CASE("breeding values follow the means of the accessions, drawn towards the middle, and "
          "relatives without notes have theirs from their parents") {
    StationNotes notes;
    const std::vector<double> means{4, 6, 8, 10, 12, 14};
    for (std::size_t i = 0; i < means.size(); ++i) {
        notes.accessions.push_back(accession(("A" + std::to_string(i)).c_str()));
        for (int vine = 0; vine < 4; ++vine) {
            notes.vines.push_back(
                {"B1-0" + std::to_string(i + 1) + "-0" + std::to_string(vine + 1), i});
            const double value = means[i] + (vine % 2 == 0 ? 0.5 : -0.5);
            const auto at = static_cast<std::uint32_t>(notes.vines.size() - 1);
            // Two picks of a day make one yield.
            notes.of["yield"].numbers.push_back({at, dayOf(2024, 9, 1), value / 2, value, value});
            notes.of["yield"].numbers.push_back({at, dayOf(2024, 9, 9), value / 2, value, value});
        }
    }
    notes.accessions.push_back(accession("S9", "A0", "A5"));
    CHECK(predictable(notes) == std::vector<std::string>{"yield"});
    const auto merits = meritsOf(notes, {}, "yield");
    REQUIRE(merits.ok());
    CHECK(merits->records == 24);
    CHECK(merits->accessions == 6);
    for (std::size_t i = 0; i < means.size(); ++i) {
        const double value = merits->of.at("A" + std::to_string(i)).value;
        CHECK(std::abs(value) <= std::abs(means[i] - 9) + 1e-9);
        CHECK(value == doctest::Approx(means[i] - 9).epsilon(0.05));
    }
    const double between = (merits->of.at("A0").value + merits->of.at("A5").value) / 2;
    CHECK(merits->of.at("S9").value == doctest::Approx(between).epsilon(1e-6));
    CHECK(merits->of.at("S9").errorVariance > merits->of.at("A0").errorVariance);
    CHECK_FALSE(meritsOf(notes, {}, "soluble-solids").ok());
}
