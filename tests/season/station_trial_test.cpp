// The records of a trial out of a station's notes: what counts, what is left out, what repeats. The
// notes are invented; what is expected of them follows by hand.
#include "core/season/station_trial.hpp"

#include "core/journal/json_value.hpp"
#include "core/season/station_prediction.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

using namespace bullace;
using namespace bullace::season;

namespace {

constexpr std::array<double, 3> kWorth{10, 14, 20}; // of the accessions
constexpr int kVinesEach = 2;                       // of an accession in a block

// Three accessions with two vines each in each of two blocks; B2 gives 4 more.
StationNotes station() {
    StationNotes notes;
    notes.accessions = {{"A0", "A0 Tallow", "", true, {}},
                        {"A1", "A1 Rushlight", "", false, {}},
                        {"A2", "A2 Wickery", "", false, {}}};
    for (const char* block : {"B1", "B2"}) {
        unsigned vine = 0;
        for (std::size_t accession = 0; accession < kWorth.size(); ++accession) {
            for (int i = 0; i < kVinesEach; ++i) {
                ++vine;
                notes.vines.push_back(
                    {vineyard::writePosition({block, accession + 1 > 2 ? 2U : 1U, vine, 0}),
                     accession});
            }
        }
    }
    notes.words = {"dead", "not-observed"};
    return notes;
}

void note(StationNotes& notes, const char* what, std::uint32_t vine, int year, double value) {
    notes.of[what].numbers.push_back(
        {vine, dayOfDate(std::chrono::year(year) / 9 / 1), value, value, value});
}

double worthOf(const StationNotes& notes, std::uint32_t vine) {
    const bool isSecond = notes.vines[vine].position.starts_with("B2");
    return kWorth.at(notes.vines[vine].accession) + (isSecond ? 4 : 0);
}

void noteAll(StationNotes& notes, int year, double ofSeason) {
    for (std::uint32_t vine = 0; vine < notes.vines.size(); ++vine) {
        note(notes, "clusters", vine, year, worthOf(notes, vine) + ofSeason);
    }
}

const trials::Factor& factor(const StationTrial& trial, const char* name) {
    const trials::Factor* found = trial.table.factor(name);
    REQUIRE(found != nullptr);
    return *found;
}

} // namespace

TEST_CASE("a vine and season is one record: means of counts, sums of picks, shares of records") {
    StationNotes notes = station();
    note(notes, "clusters", 0, 2024, 10);
    note(notes, "clusters", 0, 2024, 20);
    note(notes, "clusters", 0, 2025, 50);
    note(notes, "yield", 0, 2024, 3);
    note(notes, "yield", 0, 2024, 4);
    for (const int dead : {3, 6}) {
        journal::MapValue record;
        record.add("dead", journal::numberValue(dead)).add("of", journal::numberValue(12));
        notes.of["primary-buds"].records.push_back(
            {0, 0, dayOfDate(std::chrono::year(2024) / 2 / 1), record.bytes()});
    }
    const StationTrial clusters = trialOf(notes, {}, {"clusters"});
    CHECK(clusters.table.response == std::vector<double>{15, 50});
    CHECK(clusters.seasons == std::vector<int>{2024, 2025});
    CHECK(clusters.values == 3);
    CHECK(factor(clusters, kVineFactor).levels == std::vector<std::string>{"B1-01-01"});
    CHECK(trialOf(notes, {}, {"clusters", {2025}}).table.response == std::vector<double>{50});
    CHECK(trialOf(notes, {}, {"yield"}).table.response == std::vector<double>{7});
    CHECK(canBeTried(notes.notesOf("primary-buds")));
    const StationTrial buds = trialOf(notes, {}, {"primary-buds"});
    REQUIRE(buds.table.rows() == 1);
    CHECK(buds.table.response[0] == doctest::Approx(37.5)); // 9 of 24
}

TEST_CASE(
    "what a trial leaves out is counted and told: open, missed, vines without a value, dead") {
    StationNotes notes = station();
    noteAll(notes, 2024, 0);
    std::erase_if(notes.of["clusters"].numbers,
                  [](const NumberNote& each) { return each.vine == 1 || each.vine == 2; });
    const std::int32_t day = dayOfDate(std::chrono::year(2024) / 9 / 1);
    notes.of["clusters"].open.push_back({1, day, "obs/B1-01-02/2024-09-01/clusters"});
    notes.of["clusters"].missed.push_back({2, day, 1});
    notes.of["vine"].words.push_back({2, day, 0});
    const StationTrial trial = trialOf(notes, {}, {"clusters"});
    CHECK(trial.table.rows() == 10);
    CHECK(trial.open == 1);
    CHECK(trial.missed == 1);
    CHECK(trial.without == 2);
    CHECK(trial.lost == 1);
    REQUIRE_FALSE(trial.remarks.empty());
    CHECK(inEnglish(trial.remarks.front()).find("A trial with open conflicts") == 0);
    CHECK(trialOf(notes, {}, {"clusters", {2023}}).table.rows() == 0);
    const StationTrial second = trialOf(notes, {}, {"clusters", {}, {"B2"}});
    CHECK(second.table.rows() == 6);
    CHECK(second.open == 0);
    CHECK(second.without == 0);
}

TEST_CASE("a trial of what runs through the season says that its days have to be the same") {
    StationNotes notes = station();
    note(notes, "ripe", 0, 2024, 40);
    note(notes, "clusters", 0, 2024, 40);
    REQUIRE(trialOf(notes, {}, {"ripe"}).remarks.size() == 2);
    CHECK(inEnglish(trialOf(notes, {}, {"ripe"}).remarks[1]).find("ripe changes from day") == 0);
    CHECK(trialOf(notes, {}, {"clusters"}).remarks.size() == 1); // A0's other vines
}

TEST_CASE("what repeats is told by where accessions stand, and by the planting plan's replicates") {
    StationNotes notes = station();
    noteAll(notes, 2024, 0);
    CHECK(likelyRepeat(trialOf(notes, {}, {"clusters"})) == TrialRepeat::Blocks);
    CHECK(likelyRepeat(trialOf(notes, {}, {"clusters", {}, {"B1"}})) == TrialRepeat::Vines);
    // A2 stands in blocks of its own: nothing joins it to the others.
    StationNotes apart = station();
    for (NotedVine& vine : apart.vines) {
        if (vine.accession == 2) {
            vine.position.replace(0, 2, vine.position.starts_with("B1") ? "B3" : "B4");
        }
    }
    noteAll(apart, 2024, 0);
    CHECK(likelyRepeat(trialOf(apart, {}, {"clusters"})) == TrialRepeat::Vines);
    vineyard::Block block{"B1", {}, {{1, 4}, {2, 6}}, {}, {}, {}};
    block.replicates = {
        {"B1-01-01", "B1-01-01", 1}, {"B1-01-02", "B1-01-03", 2}, {"B1-01-04", "B1-01-04", 1}};
    const std::vector<vineyard::Block> blocks{block};
    const StationTrial planned = trialOf(notes, blocks, {"clusters", {}, {"B1"}});
    CHECK(factor(planned, kReplicateFactor).levels == std::vector<std::string>{"B1 1", "B1 2"});
    CHECK(likelyRepeat(planned) == TrialRepeat::Replicates);
    const TrialPlots plots = plotsOf(planned, TrialRepeat::Replicates);
    CHECK(plots.table.rows() == 4); // A0 and A1 in both; A2 stands in none
    CHECK(std::ranges::count(plots.plotOf, kNoPlot) == 2);
}

TEST_CASE("vines of an accession in a block are one plot, with their mean and the middle of their "
          "places") {
    StationNotes notes = station();
    noteAll(notes, 2024, 0);
    note(notes, "clusters", 0, 2024, 16); // B1-01-01: 10 and 16, so 13
    const StationTrial trial = trialOf(notes, {}, {"clusters"});
    const TrialPlots plots = plotsOf(trial, TrialRepeat::Blocks);
    CHECK(plots.table.rows() == 6);
    CHECK(plots.mostVines == 2);
    CHECK(plots.table.response[0] == doctest::Approx(11.5));
    CHECK(plots.table.covariate(kPlaceInRow)->values[0] == doctest::Approx(1.5));
    CHECK(plotsOf(trial, TrialRepeat::Vines).table.rows() == trial.table.rows());
}

TEST_CASE("seasons are put right by the vines that were noted in both") {
    StationNotes notes = station();
    noteAll(notes, 2024, 0);
    for (std::uint32_t vine = 0; vine < 8; ++vine) { // the others are younger
        note(notes, "clusters", vine, 2023, worthOf(notes, vine) + 6);
    }
    const StationTrial once = eachVineOnce(trialOf(notes, {}, {"clusters"}));
    REQUIRE(once.table.rows() == notes.vines.size());
    CHECK(once.table.factor(kSeasonFactor) == nullptr);
    for (std::size_t row = 0; row < once.table.rows(); ++row) {
        // Half of what the one season gives more is every vine's.
        CHECK(once.table.response[row] ==
              doctest::Approx(worthOf(notes, once.vines[row]) + 3).epsilon(1e-9));
    }
}

TEST_CASE("seasons that no vine and no accession joins are not put right, and that is said") {
    StationNotes notes = station();
    note(notes, "clusters", 0, 2023, 10);
    note(notes, "clusters", 5, 2024, 30);
    const StationTrial once = eachVineOnce(trialOf(notes, {}, {"clusters"}));
    CHECK(once.table.response == std::vector<double>{10, 30});
    CHECK(inEnglish(once.remarks.back()).find("No vine and no accession joins the seasons") == 0);
}

TEST_CASE("the model of predictions holds the terms that can be told apart, and no others") {
    StationNotes notes = station();
    noteAll(notes, 2024, 0);
    noteAll(notes, 2025, 5);
    const auto namesOf = [](const PredictionModel& model) {
        std::vector<std::string> names;
        for (const trials::RandomTerm& term : model.spec.random) {
            names.push_back(term.called());
        }
        return names;
    };
    const auto two = predictionModel(trialOf(notes, {}, {"clusters"}), {});
    REQUIRE(two);
    CHECK(two->spec.fixed == std::vector<trials::Term>{{kSeasonFactor}});
    CHECK(namesOf(*two) == std::vector<std::string>{
                               "accession", "accession:season", "vine", "block", "season:block"});
    // In one season the seasons are no term, and in one block the places are none.
    const auto one = predictionModel(trialOf(notes, {}, {"clusters", {2024}, {"B1"}}), {});
    REQUIRE(one);
    CHECK(one->spec.fixed.empty());
    CHECK(namesOf(*one) == std::vector<std::string>{"accession"});
    CHECK(one->remarks.size() == 1);
}

TEST_CASE("two descriptors side by side have a row where either was noted") {
    StationNotes notes = station();
    noteAll(notes, 2024, 0);
    note(notes, "yield", 0, 2024, 3);
    note(notes, "yield", 0, 2024, 4);
    note(notes, "yield", 3, 2025, 9);
    const TrialOfBoth both = trialOfBoth(notes, {}, {"clusters"}, "yield");
    REQUIRE(both.trial.table.rows() == notes.vines.size() + 1);
    REQUIRE(both.other.size() == both.trial.table.rows());
    CHECK(both.other[0] == 7);
    CHECK(std::isnan(both.other[1]));
    CHECK(both.trial.seasons[4] == 2025); // of vine 3, behind its row of 2024
    CHECK(std::isnan(both.trial.table.response[4]));
    CHECK(both.other[4] == 9);
}
