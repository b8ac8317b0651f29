// What a selection meeting looks at.
#include "core/season/station_selection.hpp"

#include "support/normal_dice.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

using namespace bullace;
using namespace bullace::season;

using test::normal;

namespace {

// Thirty accessions of three vines in two seasons each; what they are truly like is told.
struct Station {
    StationNotes notes;
    std::vector<double> yield;
    std::vector<double> rot;
    std::vector<std::size_t> all;
};

Station station(std::uint64_t seed) {
    std::mt19937_64 dice(seed);
    Station made;
    for (std::size_t a = 0; a < 30; ++a) {
        NotedAccession accession;
        accession.id = "A" + std::to_string(100 + a);
        accession.words = accession.id;
        made.notes.accessions.push_back(accession);
        made.yield.push_back(normal(dice));
        made.rot.push_back(normal(dice));
        made.all.push_back(a);
        for (int v = 0; v < 3; ++v) {
            const auto vine = static_cast<std::uint32_t>(made.notes.vines.size());
            const std::string place = std::to_string(10 + a);
            made.notes.vines.push_back({"B" + std::to_string(v + 1) + "-01-" + place, a});
            for (const int year : {2023, 2024}) {
                const std::int32_t day = dayOfDate(std::chrono::year(year) / 9 / 1);
                const double yieldNow = 15 + 2 * made.yield[a] + normal(dice);
                const double rotNow = 5 + made.rot[a] + 0.7 * normal(dice);
                made.notes.of["yield"].numbers.push_back({vine, day, yieldNow, yieldNow, yieldNow});
                if (a != 7) { // of one accession nobody looked for rot
                    made.notes.of["rot"].numbers.push_back({vine, day, rotNow, rotNow, rotNow});
                }
            }
        }
    }
    return made;
}

SelectionList listOf(const Station& station, const std::string& wishes, std::size_t best) {
    const auto read = readWishes(wishes);
    REQUIRE(read.ok());
    const auto list = selectionList(station.notes, {}, station.all, *read, best, nullptr);
    REQUIRE_MESSAGE(list.ok(), (list.ok() ? "" : list.error().message));
    return *list;
}

} // namespace

TEST_CASE("what counts is read as names with numbers, and what is none is told") {
    const auto wishes = readWishes("yield 2, soluble-solids , rot -1.5");
    REQUIRE(wishes.ok());
    REQUIRE(wishes->size() == 3);
    CHECK((*wishes)[0].weight == 2);
    CHECK((*wishes)[1].descriptor == "soluble-solids");
    CHECK((*wishes)[1].weight == 1);
    CHECK((*wishes)[2].weight == -1.5);
    CHECK(readWishes("yield two").error().message ==
          "\"yield two\" is not a descriptor's code with what it counts for, like \"yield 2\".");
    CHECK(readWishes("rot, rot 2").error().message == "\"rot\" is named twice.");
    CHECK(readWishes(" , ").error().message ==
          "Name at least one descriptor that counts, like \"yield 2, rot -1\".");
}

TEST_CASE("the best by what counts come first, and each weighs in its own deviations") {
    const Station made = station(11);
    const SelectionList list = listOf(made, "yield 1", 5);
    REQUIRE(list.candidates.size() == 30);
    CHECK(std::ranges::is_sorted(list.candidates, [](const Candidate& one, const Candidate& other) {
        return *one.merit > *other.merit;
    }));
    CHECK(list.candidates.front().evidence[0].rank == 1);
    // The true best is near the top, and the ranking goes with the truth.
    double sum = 0;
    for (std::size_t i = 0; i < 10; ++i) {
        sum += made.yield[list.candidates[i].accession] / 10;
    }
    CHECK(sum > 0.5);
    // Deviations do not depend on units.
    Station grams = made;
    for (NumberNote& note : grams.notes.of["yield"].numbers) {
        note.value *= 1000;
        note.low *= 1000;
        note.high *= 1000;
    }
    const SelectionList other = listOf(grams, "yield 1", 5);
    for (std::size_t i = 0; i < list.candidates.size(); ++i) {
        CHECK(other.candidates[i].accession == list.candidates[i].accession);
        CHECK(other.candidates[i].amongBest ==
              doctest::Approx(list.candidates[i].amongBest).epsilon(1e-6));
    }
}

TEST_CASE("less is better where the weight is below 0, and what is not known adds doubt only") {
    const Station made = station(12);
    const SelectionList list = listOf(made, "rot -1", 5);
    const Candidate& first = list.candidates.front();
    CHECK(first.evidence[0].rank == 1);
    CHECK(std::ranges::all_of(list.candidates, [&](const Candidate& each) {
        return !each.evidence[0].isKnown || each.evidence[0].value >= first.evidence[0].value;
    }));
    const auto isSeventh = [](const Candidate& each) { return each.accession == 7; };
    const auto unknown = std::ranges::find_if(list.candidates, isSeventh);
    REQUIRE(unknown != list.candidates.end());
    CHECK_FALSE(unknown->merit);
    CHECK(unknown->rank == 0);
    const SelectionList both = listOf(made, "yield 1, rot -1", 5);
    const auto half = std::ranges::find_if(both.candidates, isSeventh);
    REQUIRE(half->merit);
    CHECK(half->meritError > both.candidates.front().meritError);
}

TEST_CASE("the chances of being among the best add up to as many as there are") {
    for (const std::size_t best : {1U, 5U, 12U}) {
        const SelectionList list = listOf(station(13), "yield 2, rot -1", best);
        double sum = 0;
        for (const Candidate& candidate : list.candidates) {
            sum += candidate.amongBest;
        }
        CHECK(sum == doctest::Approx(static_cast<double>(best)).epsilon(1e-9));
    }
}

TEST_CASE("a descriptor that nobody noted is told, and the rest still counts") {
    const SelectionList list = listOf(station(14), "yield 1, flavour 2", 3);
    CHECK(list.candidates.front().merit);
    CHECK(list.wishes[1].geneticVariance == 0);
    REQUIRE_FALSE(list.wishes[1].remarks.empty());
    CHECK(inEnglish(list.wishes[1].remarks.front()).find("flavour is not predicted") == 0);
}
