#include "core/hardiness/dose_table.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace bullace::hardiness {

namespace {

std::string troubleOf(const DoseRow& row) {
    if (!(std::abs(row.x) <= kGreatestDose)) {
        return "has a temperature or dose that cannot be one.";
    }
    if (row.counted < 0 || row.dead < 0) {
        return "has a count below 0.";
    }
    if (row.counted > kMostCounted) {
        return "has a count that no one can have made.";
    }
    if (row.dead > row.counted) {
        return "has more dead (" + std::to_string(row.dead) + ") than counted (" +
               std::to_string(row.counted) + ").";
    }
    return {};
}

// x·log(p), where 0·log(0) is 0.
double timesLog(double x, double p) {
    return x > 0 ? x * std::log(p) : 0;
}

} // namespace

Status checkDoses(std::span<const DoseRow> rows) {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::string trouble = troubleOf(rows[i]);
        if (!trouble.empty()) {
            return Error{
                ErrorCode::InvalidInput, "Row " + std::to_string(i + 1) + " " + trouble, {}};
        }
    }
    return {};
}

std::vector<DoseRow> pooledDoses(std::span<const DoseRow> rows) {
    std::vector<DoseRow> sorted;
    for (const DoseRow& row : rows) {
        if (row.counted > 0) {
            sorted.push_back(row);
        }
    }
    std::ranges::sort(sorted, {}, &DoseRow::x);
    std::vector<DoseRow> pooled;
    for (const DoseRow& row : sorted) {
        if (!pooled.empty() && pooled.back().x == row.x) {
            pooled.back().counted += row.counted;
            pooled.back().dead += row.dead;
        } else {
            pooled.push_back(row);
        }
    }
    return pooled;
}

Overlap overlapOf(std::span<const DoseRow> pooled) {
    if (pooled.empty()) {
        return Overlap::Nothing;
    }
    const auto killed = [](const DoseRow& row) { return row.dead > 0; };
    const auto survived = [](const DoseRow& row) { return row.dead < row.counted; };
    const auto firstDead = std::ranges::find_if(pooled, killed);
    const auto firstAlive = std::ranges::find_if(pooled, survived);
    if (firstDead == pooled.end()) {
        return Overlap::NoneDead;
    }
    if (firstAlive == pooled.end()) {
        return Overlap::AllDead;
    }
    if (pooled.size() == 1) {
        return Overlap::OneDose;
    }
    const double lo = firstDead->x;
    const double hi = std::find_if(pooled.rbegin(), pooled.rend(), survived)->x;
    if (hi <= lo) {
        return hi < lo ? Overlap::Separated : Overlap::QuasiSeparated;
    }
    const double lastDead = std::find_if(pooled.rbegin(), pooled.rend(), killed)->x;
    return lastDead <= firstAlive->x ? Overlap::ReversedSeparation : Overlap::Overlapping;
}

double supremumLogLikelihood(std::span<const DoseRow> rows) {
    double sum = 0;
    for (const DoseRow& row : rows) {
        sum +=
            statistics::logChoose(static_cast<double>(row.counted), static_cast<double>(row.dead));
    }
    for (const DoseRow& row : pooledDoses(rows)) {
        const auto n = static_cast<double>(row.counted);
        const auto dead = static_cast<double>(row.dead);
        sum += timesLog(dead, dead / n) + timesLog(n - dead, (n - dead) / n);
    }
    return sum;
}

} // namespace bullace::hardiness
