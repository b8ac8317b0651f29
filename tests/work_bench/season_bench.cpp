// Onsets of a large station: Turnbull's estimate and the normal law for each accession and year.
#include "bench/measure.hpp"
#include "work_bench/work_benches.hpp"

#include "core/season/bloom_windows.hpp"
#include "core/season/onset_limits.hpp"
#include "core/season/turnbull.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

namespace bullace::bench {

namespace {

using season::OnsetInterval;
using Group = std::vector<OnsetInterval>; // one accession in one year

double uniform(std::mt19937_64& engine) {
    return (static_cast<double>(engine() >> 11) + 0.5) / 9007199254740992.0;
}

// Vines of which each is visited on its own days, 3 to 7 apart: the hardest for both.
std::vector<Group> station(std::size_t groups, std::size_t vines) {
    std::mt19937_64 engine(3);
    std::vector<Group> all(groups);
    for (Group& group : all) {
        const double mean = 140 + 20 * uniform(engine);
        for (std::size_t vine = 0; vine < vines; ++vine) {
            const double day = mean + 4 * statistics::normalQuantile(uniform(engine));
            double visit = mean - 20 + std::floor(5 * uniform(engine));
            double before = -statistics::kUnbounded;
            while (visit < day) {
                before = visit;
                visit += 3 + std::floor(5 * uniform(engine));
            }
            group.push_back({before, visit});
        }
    }
    return all;
}

} // namespace

void benchSeason() {
    const std::vector<Group> groups = station(10000, 40);
    std::size_t fits = 0;
    const double seconds = secondsOf([&] {
        for (const Group& group : groups) {
            const auto curve = season::turnbull(group);
            must(curve.ok() && curve->excess <= 1e-9, "Turnbull's estimate");
            const auto fitting = season::fitOnset(season::OnsetLaw::Normal, {group});
            must(fitting.ok(), "the normal law");
            fits += fitting->fit ? 1U : 0U;
        }
    });
    must(fits > groups.size() * 9 / 10, "most of the fits");
    tell("Turnbull and normal fit, 1,000 accessions x 10 years x 40 vines",
         seconds,
         "s",
         "under 2 s",
         seconds < 2);

    const double limits = secondsOf([&] {
        for (std::size_t i = 0; i < 1000; ++i) {
            must(season::locationLimits(season::OnsetLaw::Normal, groups[i]).ok(), "limits");
        }
    });
    tell("profile limits of 1,000 means of 40 vines", limits, "s", "none", true);

    std::vector<season::BloomWindow> windows;
    for (int i = 0; i < 60; ++i) {
        const double start = 140 + i * 0.3;
        windows.push_back(
            {"", season::FlowerSex::Perfect, {start, 3, 1, 20}, {start + 12, 3, 1, 20}});
    }
    const double pairs =
        secondsOf([&] { must(season::bloomOverlaps(windows).ok(), "bloom windows"); });
    tell("bloom windows of 60 accessions, 3,540 pairs", pairs, "s", "none", true);
}

} // namespace bullace::bench
