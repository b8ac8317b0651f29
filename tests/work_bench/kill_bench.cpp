#include "kill_bench.hpp"

#include "core/hardiness/kill_curve.hpp"

#include <chrono>
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

KillTiming timeKillCurves(std::size_t tests) {
    std::mt19937_64 dice(7);
    std::vector<std::vector<FreezeRow>> lots;
    for (std::size_t i = 0; i < tests; ++i) {
        lots.push_back(freezingTest(dice));
    }
    KillTiming timing;
    const auto start = std::chrono::steady_clock::now();
    for (const std::vector<FreezeRow>& lot : lots) {
        const auto curve = hardiness::killCurve(lot, {});
        if (curve && curve->points.size() == 3 && curve->points[1].profile &&
            std::isfinite(curve->points[1].profile->low)) {
            ++timing.curves;
        }
    }
    timing.seconds =
        std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    return timing;
}

} // namespace bullace::bench
