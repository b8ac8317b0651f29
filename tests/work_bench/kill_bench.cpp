// Freezing tests of 7 temperatures × 30 buds of accessions that differ.
#include "bench/measure.hpp"
#include "work_bench/work_benches.hpp"

#include "core/hardiness/kill_curve.hpp"

#include <cmath>
#include <random>
#include <vector>

namespace bullace::bench {

namespace {

using hardiness::FreezeRow;

std::vector<FreezeRow> freezingTest(std::mt19937_64& dice) {
    const auto even = [&dice] { return (static_cast<double>(dice() >> 11) + 0.5) * 0x1p-53; };
    const double lt50 = -13 - 9 * even();
    const double slope = 0.5 + even();
    std::vector<FreezeRow> rows;
    for (int i = 0; i < 7; ++i) {
        const double temperature = -10 - 2.5 * i;
        const double killed =
            hardiness::killedAt(hardiness::Link::Logit, slope * (lt50 - temperature));
        int dead = 0;
        for (int bud = 0; bud < 30; ++bud) {
            dead += even() < killed ? 1 : 0;
        }
        rows.push_back({temperature, 30, dead});
    }
    return rows;
}

} // namespace

void benchKill() {
    std::mt19937_64 dice(7);
    std::vector<std::vector<FreezeRow>> lots;
    for (std::size_t i = 0; i < 1000; ++i) {
        lots.push_back(freezingTest(dice));
    }
    std::size_t curves = 0;
    const double seconds = secondsOf([&] {
        for (const std::vector<FreezeRow>& lot : lots) {
            const auto curve = hardiness::killCurve(lot, {});
            must(curve.ok(), "a curve of kill");
            const bool hasLimits = curve->points.size() == 3 && curve->points[1].profile &&
                                   std::isfinite(curve->points[1].profile->low);
            curves += hasLimits ? 1U : 0U;
        }
    });
    must(curves > lots.size() * 9 / 10, "most of the curves");
    tell("1,000 kill curves with LT10, LT50, LT90 and profile limits",
         seconds,
         "s",
         "under 1 s",
         seconds < 1);
}

} // namespace bullace::bench
