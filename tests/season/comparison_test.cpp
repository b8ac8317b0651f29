// Accessions side by side, against closed forms and simulation.
#include "core/season/comparison.hpp"

#include "core/statistics/distributions.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <vector>

using namespace bullace;
using namespace bullace::season;

namespace {

// A station with `vines` vines of each accession.
StationNotes station(std::size_t accessions, std::size_t vines) {
    StationNotes notes;
    for (std::size_t a = 0; a < accessions; ++a) {
        notes.accessions.push_back({"A" + std::to_string(a), {}, {}, false, {}});
        for (std::size_t v = 0; v < vines; ++v) {
            notes.vines.push_back({"B1-01-01", a});
        }
    }
    return notes;
}

void note(StationNotes& notes, std::uint32_t vine, int year, double value) {
    const std::int32_t day = dayOfDate(std::chrono::year(year) / 8 / 15);
    notes.of["clusters"].numbers.push_back({vine, day, value, value, value});
}

double uniform(std::mt19937_64& random) {
    return (static_cast<double>(random() >> 11U) + 0.5) * 0x1p-53;
}
double normal(std::mt19937_64& random) {
    return statistics::normalQuantile(uniform(random));
}

} // namespace

TEST_CASE("in one season the difference of two accessions is Student's") {
    // By hand: vines 10 12 14 and 20 22: means 12 and 21, pooled variance (8 + 2)/3.
    StationNotes notes = station(2, 3);
    for (const auto& [vine, value] :
         {std::pair{0U, 10.0}, {1U, 12.0}, {2U, 14.0}, {3U, 20.0}, {4U, 22.0}}) {
        note(notes, vine, 2024, value);
    }
    const std::vector<std::size_t> accessions{0, 1};
    const ComparedItem item = compareNumbers(notes, "clusters", accessions, 0);
    CHECK(item.cells[0].mean->value == doctest::Approx(12));
    CHECK_FALSE(item.cells[0].difference);
    CHECK(item.cells[1].vines == 2);
    const auto difference = item.cells[1].difference;
    REQUIRE(difference);
    CHECK(difference->value == doctest::Approx(9));
    const double error = std::sqrt(10.0 / 3 * (1 / 3.0 + 1 / 2.0));
    CHECK(*difference->standardError == doctest::Approx(error));
    CHECK(difference->interval->low ==
          doctest::Approx(9 - statistics::studentTQuantile(0.975, 3) * error));
    CHECK(*item.cells[1].p == doctest::Approx(statistics::studentTBothTails(9 / error, 3)));
}

TEST_CASE("an accession that was noted in a rich year alone is put right for it") {
    StationNotes notes = station(2, 2);
    for (const std::uint32_t vine : {0U, 1U}) {
        note(notes, vine, 2023, 10 + vine);
        note(notes, vine, 2024, 30 + vine); // 20 more
    }
    for (const std::uint32_t vine : {2U, 3U}) {
        note(notes, vine, 2024, 33 + (vine - 2)); // 3 more than the reference in the same year
    }
    const std::vector<std::size_t> accessions{0, 1};
    const ComparedItem item = compareNumbers(notes, "clusters", accessions, 0);
    CHECK(item.cells[1].difference->value == doctest::Approx(3).epsilon(1e-8));
    CHECK(item.cells[0].seasons == 2);
    CHECK(item.cells[1].seasons == 1);
}

TEST_CASE("accessions that share no season, directly or through others, are not compared") {
    StationNotes notes = station(3, 2);
    note(notes, 0, 2023, 10);
    note(notes, 1, 2023, 11);
    note(notes, 2, 2024, 20);
    note(notes, 3, 2024, 21);
    const std::vector<std::size_t> two{0, 1};
    const ComparedItem apart = compareNumbers(notes, "clusters", two, 0);
    CHECK_FALSE(apart.cells[1].difference);
    CHECK(apart.remarks.size() == 1);
    note(notes, 4, 2023, 15); // a third one leads from the one to the other
    note(notes, 4, 2024, 18);
    const std::vector<std::size_t> three{0, 1, 2};
    const ComparedItem joined = compareNumbers(notes, "clusters", three, 0);
    REQUIRE(joined.cells[1].difference);
    CHECK(joined.cells[1].difference->value == doctest::Approx(7).epsilon(1e-6)); // 20.5 - 3 - 10.5
}

TEST_CASE("picks of one season are summed, and their vines are the repeats") {
    StationNotes notes = station(1, 2);
    note(notes, 0, 2024, 4);
    note(notes, 0, 2024, 6);
    note(notes, 1, 2024, 14);
    const std::vector<std::size_t> accessions{0};
    const ComparedItem item = compareNumbers(notes, "clusters", accessions, 0, SeasonValue::Sum);
    CHECK(item.cells[0].mean->value == doctest::Approx(12));
    CHECK(item.cells[0].values == 3);
    CHECK(item.cells[0].vines == 2);
}

TEST_CASE("nothing noted, one vine each, and equal values are answered in words or left empty") {
    StationNotes notes = station(2, 1);
    const std::vector<std::size_t> accessions{0, 1};
    CHECK_FALSE(compareNumbers(notes, "clusters", accessions, 0).cells[0].mean);
    note(notes, 0, 2024, 5);
    note(notes, 1, 2024, 8);
    const ComparedItem single = compareNumbers(notes, "clusters", accessions, 0);
    CHECK(single.cells[1].difference->value == doctest::Approx(3));
    CHECK_FALSE(single.cells[1].difference->interval);
    CHECK_FALSE(single.cells[1].p);
    CHECK(single.remarks.size() == 1);
    StationNotes equal = station(2, 2);
    for (const std::uint32_t vine : {0U, 1U, 2U, 3U}) {
        note(equal, vine, 2024, 7);
    }
    const ComparedItem same = compareNumbers(equal, "clusters", accessions, 0);
    CHECK(same.cells[1].difference->value == 0);
    CHECK_FALSE(same.cells[1].p);
}

TEST_CASE("Holm's adjustment of four differences") {
    // By hand: sorted 0.01 0.02 0.03 0.5 times 4 3 2 1, never falling.
    std::vector<ComparedItem> items(2);
    for (const double p : {0.02, 0.5}) {
        items[0].cells.emplace_back().p = p;
    }
    for (const double p : {0.03, 0.01}) {
        items[1].cells.emplace_back().p = p;
    }
    items[1].cells.emplace_back(); // of the reference
    adjustForAll(items);
    CHECK(*items[1].cells[1].pAdjusted == doctest::Approx(0.04));
    CHECK(items[1].cells[1].isBeyondDoubt());
    CHECK(*items[0].cells[0].pAdjusted == doctest::Approx(0.06));
    CHECK(*items[1].cells[0].pAdjusted == doctest::Approx(0.06));
    CHECK(*items[0].cells[1].pAdjusted == doctest::Approx(0.5));
    CHECK_FALSE(items[1].cells[2].pAdjusted);
}

TEST_CASE(
    "limits of differences hold the truth in 95 of 100 stations, with vines that last over years") {
    std::mt19937_64 random(2);
    int held = 0;
    int beyond = 0;
    constexpr int kRuns = 2000;
    for (int run = 0; run < kRuns; ++run) {
        StationNotes notes = station(4, 5);
        for (std::uint32_t vine = 0; vine < notes.vines.size(); ++vine) {
            const double lasting = 2 * normal(random);
            for (int year = 2020; year < 2024; ++year) {
                if (uniform(random) < 0.8) {
                    note(notes, vine, year, 50 + 3.0 * (year - 2020) + lasting + normal(random));
                }
            }
        }
        const std::vector<std::size_t> accessions{0, 1, 2, 3};
        std::vector<ComparedItem> items{compareNumbers(notes, "clusters", accessions, 0)};
        adjustForAll(items);
        held += items[0].cells[2].difference->interval->holds(0) ? 1 : 0;
        bool isAny = false;
        for (const ComparedCell& cell : items[0].cells) {
            isAny = isAny || cell.isBeyondDoubt();
        }
        beyond += isAny ? 1 : 0;
    }
    MESSAGE("held " << 100.0 * held / kRuns << " %, any called beyond doubt "
                    << 100.0 * beyond / kRuns << " %");
    CHECK(held >= 0.93 * kRuns);
    CHECK(held <= 0.97 * kRuns);
    CHECK(beyond <= 0.06 * kRuns);
}
