// The finder of shifted rows on simulated rows: how often it finds, and how often it is wrong. The
// rows are those of the slip detector's simulation: whole stages, vines that differ by a normal
// deviate, one note in six or so one step off, the row going on by a few steps between visits.
#include "core/merge/shifted_row.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <random>
#include <string>

using namespace bullace::merge;

namespace {

constexpr std::size_t kVines = 200;
constexpr double kNoise = 0.16; // notes that are one off, half of them either way

class Simulation {
public:
    explicit Simulation(std::uint64_t seed) : dice_(seed) {}

    double uniform() { return static_cast<double>(dice_() >> 11U) * 0x1p-53; }
    // Box & Muller 1958, so that every library gives the same rows.
    double normal() {
        return std::sqrt(-2 * std::log(1 - uniform())) * std::cos(6.283185307179586 * uniform());
    }

    // `visits` days of one row; in the last one a run is noted `along` vines too far.
    std::vector<RowValues>
    row(double sd, std::size_t visits, std::size_t run, int along, std::size_t first) {
        std::vector<double> vines(kVines + 8);
        for (double& vine : vines) {
            vine = sd * normal();
        }
        std::vector<RowValues> days;
        for (std::size_t visit = 0; visit < visits; ++visit) {
            const double stage = 3 + 2.3 * static_cast<double>(visit) + uniform();
            RowValues day(kVines);
            for (std::size_t i = 0; i < kVines; ++i) {
                const bool isShifted = visit + 1 == visits && i >= first && i < first + run;
                const auto of = static_cast<std::ptrdiff_t>(i) + 4 - (isShifted ? along : 0);
                double note = std::round(stage + vines[static_cast<std::size_t>(of)]);
                const double slip = uniform();
                note += slip < kNoise / 2 ? 1 : slip < kNoise ? -1 : 0;
                day[i] = note;
            }
            days.push_back(std::move(day));
        }
        return days;
    }

    std::size_t place(std::size_t run) {
        return 4 + static_cast<std::size_t>(uniform() * static_cast<double>(kVines - run - 8));
    }

private:
    std::mt19937_64 dice_;
};

std::optional<ShiftedRun> findLast(const std::vector<RowValues>& days) {
    return findShiftedRun(days.back(), {days.data(), days.size() - 1}, ShiftScale::Steps);
}

// The right number of vines along, and most of the run.
bool isRight(const ShiftedRun& found, int along, std::size_t first, std::size_t run) {
    const std::size_t begin = std::max(found.first, first);
    const std::size_t end = std::min(found.last, first + run - 1);
    const std::size_t both = end >= begin ? end - begin + 1 : 0;
    return found.along == along && both * 2 >= run;
}

double foundPercent(double sd, std::size_t others, std::size_t run, int along, int rows) {
    Simulation simulation(static_cast<std::uint64_t>(sd * 100) * 1'000'000 + others * 10'000 +
                          run * 10 + static_cast<std::uint64_t>(along));
    int found = 0;
    for (int i = 0; i < rows; ++i) {
        const std::size_t first = simulation.place(run);
        const auto result = findLast(simulation.row(sd, others + 1, run, along, first));
        found += result && isRight(*result, along, first, run) ? 1 : 0;
    }
    return 100.0 * found / rows;
}

double falsePercent(double sd, std::size_t others, int rows) {
    Simulation simulation(77 + static_cast<std::uint64_t>(sd * 10) + others);
    int told = 0;
    for (int i = 0; i < rows; ++i) {
        told += findLast(simulation.row(sd, others + 1, 0, 0, 0)) ? 1 : 0;
    }
    return 100.0 * told / rows;
}

} // namespace

TEST_CASE("runs of twenty vines are found in 95 rows of 100 where vines differ by 0.6 of a stage") {
    constexpr std::size_t kOthers =
        10; // bud break every 3 to 4 days, bloom every 2 to 3: common practice, no source
    constexpr int kRows = 400;
    std::printf(
        "\nFound, percent of %d rows of %zu vines (%zu other visits)\n", kRows, kVines, kOthers);
    std::printf(
        "%-22s %8s %8s %8s %8s\n", "between-vine SD, along", "run 5", "run 10", "run 20", "run 40");
    for (const double sd : {0.3, 0.6, 1.0}) {
        for (const int along : {1, 2, 3}) {
            std::printf("%.1f stage, %d along      ", sd, along);
            for (const std::size_t run : {5U, 10U, 20U, 40U}) {
                const double percent = foundPercent(sd, kOthers, run, along, kRows);
                std::printf(" %8.1f", percent);
                if (sd == 0.6 && run == 20) {
                    CHECK(percent >= 95);
                }
                if (sd == 1.0 && run >= 20) {
                    CHECK(percent >= 99);
                }
            }
            std::printf("\n");
        }
    }
}

TEST_CASE("of rows with nothing wrong at most two in a hundred are told of, however vines differ") {
    constexpr int kRows = 1000;
    std::printf("\nFalse, percent of %d rows of %zu vines\n", kRows, kVines);
    std::printf("%-22s %8s %8s %8s\n", "between-vine SD", "1 other", "3 other", "10 other");
    for (const double sd : {0.3, 0.6, 1.0}) {
        std::printf("%.1f stage             ", sd);
        for (const std::size_t others : {1U, 3U, 10U}) {
            const double percent = falsePercent(sd, others, kRows);
            std::printf(" %8.1f", percent);
            CHECK(percent <= 2);
        }
        std::printf("\n");
    }
}

TEST_CASE("the more other visits there are, the surer a run of twenty is found") {
    std::printf("\nFound, percent of 400 rows, SD 0.6, a run of 20 one along, by other visits\n");
    double before = 0;
    for (const std::size_t others : {1U, 2U, 4U, 10U}) {
        const double percent = foundPercent(0.6, others, 20, 1, 400);
        std::printf("%zu: %.1f\n", others, percent);
        CHECK(percent >= before);
        before = percent;
    }
}

TEST_CASE(
    "a whole row, noted from the wrong end of its first place on, is found with its evidence") {
    Simulation simulation(5);
    const auto days = simulation.row(1.0, 4, kVines, 2, 0);
    const auto found = findLast(days);
    REQUIRE(found.has_value());
    CHECK(found->along == 2);
    CHECK(found->vines > 150);
    CHECK(found->evidenceAt(0) == 0);
    for (int shift = -kFarthestShift; shift <= kFarthestShift; ++shift) {
        CHECK(found->evidenceAt(2) >= found->evidenceAt(shift));
    }
}

TEST_CASE("a row without history, of one clone, or with fewer than five vines says nothing") {
    Simulation simulation(6);
    const auto days = simulation.row(1.0, 3, 40, 1, 60);
    CHECK_FALSE(findShiftedRun(days.back(), {}, ShiftScale::Steps));
    const auto clone = simulation.row(0.0, 4, 60, 1, 60);
    CHECK_FALSE(findLast(clone));
    const RowValues few{1, 9, 2, 8};
    const std::vector<RowValues> others(5, RowValues{9, 2, 8, 1});
    CHECK_FALSE(findShiftedRun(few, others, ShiftScale::Steps));
    CHECK_FALSE(findShiftedRun({}, others, ShiftScale::Steps));
}

TEST_CASE(
    "counts are compared by rank: one vine with a thousand clusters does not hide the others") {
    Simulation simulation(8);
    std::vector<double> vines(60);
    for (double& vine : vines) {
        vine = std::exp(5 + 0.4 * simulation.normal());
    }
    std::vector<RowValues> days;
    for (int year = 0; year < 3; ++year) {
        RowValues day(vines.size());
        for (std::size_t i = 0; i < vines.size(); ++i) {
            const bool isShifted = year == 2 && i >= 20 && i < 50;
            day[i] =
                std::round(vines[i - (isShifted ? 1 : 0)] * std::exp(0.1 * simulation.normal()));
        }
        day[3] = 2000;
        days.push_back(std::move(day));
    }
    const auto found = findShiftedRun(days.back(), {days.data(), 2}, ShiftScale::Free);
    REQUIRE(found.has_value());
    CHECK(isRight(*found, 1, 20, 30));
}
