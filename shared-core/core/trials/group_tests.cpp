// Tests over groups of records.
#include "core/trials/group_tests.hpp"

#include "core/statistics/distributions.hpp"
#include "core/statistics/normality.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bullace::trials {

namespace {

struct Moments {
    double n = 0;
    double mean = 0;
    double squares = 0; // around the mean

    [[nodiscard]] double variance() const { return squares / (n - 1); }
};

Moments momentsOf(const std::vector<double>& group) {
    Moments found{static_cast<double>(group.size()), 0, 0};
    if (group.empty()) {
        return found;
    }
    const double origin = group.front();
    for (const double value : group) {
        found.mean += (value - origin) / found.n;
    }
    for (const double value : group) {
        const double apart = value - origin - found.mean;
        found.squares += apart * apart;
    }
    found.mean += origin;
    return found;
}

std::vector<Moments> groupsOfTwo(std::span<const std::vector<double>> groups) {
    std::vector<Moments> usable;
    for (const auto& group : groups) {
        if (group.size() >= 2) {
            usable.push_back(momentsOf(group));
        }
    }
    return usable;
}

bool allVary(const std::vector<Moments>& groups) {
    return std::ranges::all_of(groups, [](const Moments& group) {
        // Squares below the rounding of the mean are no variation.
        return group.squares > 1e-26 * group.mean * group.mean * group.n;
    });
}

double medianOf(std::vector<double> group) {
    std::ranges::sort(group);
    const std::size_t half = group.size() / 2;
    return group.size() % 2 == 1 ? group[half] : (group[half - 1] + group[half]) / 2;
}

} // namespace

std::optional<GroupTest> bartlett(std::span<const std::vector<double>> groups) {
    const std::vector<Moments> usable = groupsOfTwo(groups);
    if (usable.size() < 2 || !allVary(usable)) {
        return {};
    }
    double df = 0;
    double pooled = 0;
    double logs = 0;
    double inverse = 0;
    for (const Moments& group : usable) {
        df += group.n - 1;
        pooled += group.squares;
        logs += (group.n - 1) * std::log(group.variance());
        inverse += 1 / (group.n - 1);
    }
    const double others = static_cast<double>(usable.size()) - 1;
    const double right = 1 + (inverse - 1 / df) / (3 * others);
    const double statistic = std::max(0.0, (df * std::log(pooled / df) - logs) / right);
    return GroupTest{statistic, others, {}, statistics::chiSquaredAbove(statistic, others)};
}

std::optional<GroupTest> brownForsythe(std::span<const std::vector<double>> groups) {
    std::vector<Moments> distances;
    double n = 0;
    double total = 0;
    double within = 0;
    for (const auto& group : groups) {
        if (group.size() < 2) {
            continue;
        }
        const double median = medianOf(group);
        std::vector<double> apart;
        for (const double value : group) {
            apart.push_back(std::abs(value - median));
        }
        distances.push_back(momentsOf(apart));
        n += distances.back().n;
        total += distances.back().n * distances.back().mean;
        within += distances.back().squares;
    }
    const double others = static_cast<double>(distances.size()) - 1;
    const double df = n - static_cast<double>(distances.size());
    double between = 0;
    for (const Moments& group : distances) {
        between += group.n * (group.mean - total / n) * (group.mean - total / n);
    }
    if (distances.size() < 2 || !(within > 1e-24 * total * total / n)) {
        return {};
    }
    const double f = between / others / (within / df);
    return GroupTest{f, others, df, statistics::fAbove(f, others, df)};
}

std::optional<GroupTest> welch(std::span<const std::vector<double>> groups) {
    const std::vector<Moments> usable = groupsOfTwo(groups);
    if (usable.size() < 2 || !allVary(usable)) {
        return {};
    }
    const double count = static_cast<double>(usable.size());
    double weights = 0;
    double mean = 0;
    for (const Moments& group : usable) {
        weights += group.n / group.variance();
        mean += group.n / group.variance() * (group.mean - usable.front().mean);
    }
    mean = usable.front().mean + mean / weights;
    double between = 0;
    double lambda = 0;
    for (const Moments& group : usable) {
        const double weight = group.n / group.variance();
        between += weight * (group.mean - mean) * (group.mean - mean) / (count - 1);
        lambda += (1 - weight / weights) * (1 - weight / weights) / (group.n - 1);
    }
    const double f = between / (1 + 2 * (count - 2) / (count * count - 1) * lambda);
    const double df = (count * count - 1) / (3 * lambda);
    return GroupTest{f, count - 1, df, statistics::fAbove(f, count - 1, df)};
}

std::optional<GroupTest> kruskalWallis(std::span<const std::vector<double>> groups) {
    std::vector<double> all;
    std::size_t used = 0;
    for (const auto& group : groups) {
        all.insert(all.end(), group.begin(), group.end());
        used += group.empty() ? 0U : 1U;
    }
    if (used < 2) {
        return {};
    }
    const std::vector<double> ranks = statistics::meanRanks(all);
    const double n = static_cast<double>(all.size());
    const double middle = (n + 1) / 2;
    double spread = 0; // of the ranks, which ties make smaller
    for (const double rank : ranks) {
        spread += (rank - middle) * (rank - middle);
    }
    if (!(spread > 0)) {
        return {};
    }
    double between = 0;
    std::size_t at = 0;
    for (const auto& group : groups) {
        double sum = 0;
        for (std::size_t i = 0; i < group.size(); ++i) {
            sum += ranks[at++] - middle;
        }
        between += group.empty() ? 0 : sum * sum / static_cast<double>(group.size());
    }
    const double statistic = (n - 1) * between / spread;
    const double df = static_cast<double>(used) - 1;
    return GroupTest{statistic, df, {}, statistics::chiSquaredAbove(statistic, df)};
}

} // namespace bullace::trials
