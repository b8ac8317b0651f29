// Plain loops over rows and columns.
#include "core/breeding/programme_rows.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::breeding {

namespace {

bool isClearlyBroken(const ProgrammeRow& row, std::span<const double> values, double tolerance) {
    double sum = 0;
    for (const auto& [column, element] : row.elements) {
        sum += element * values[column];
    }
    const auto slack = [tolerance](double bound) { return tolerance * (1 + std::abs(bound)); };
    return (std::isfinite(row.upper) && sum > row.upper + slack(row.upper)) ||
           (std::isfinite(row.lower) && sum < row.lower - slack(row.lower));
}

} // namespace

void findClearlyBroken(const FindBroken& findBroken,
                       std::span<const double> values,
                       double tolerance,
                       double margin,
                       std::vector<ProgrammeRow>& broken) {
    broken.clear();
    if (findBroken) {
        findBroken(values, margin, broken);
        std::erase_if(broken, [&](const ProgrammeRow& row) {
            return !isClearlyBroken(row, values, tolerance);
        });
    }
}

bool isSolvable(const Programme& programme) {
    constexpr double kGreatest = 1e12; // beyond it GLPK's tolerances mean nothing
    const auto isPlain = [](double number) { return std::abs(number) <= kGreatest; };
    const auto isSoundRow = [&](const ProgrammeRow& row) {
        return row.lower <= row.upper && row.lower < statistics::kUnbounded &&
               row.upper > -statistics::kUnbounded &&
               std::ranges::all_of(row.elements, [&](const auto& element) {
                   return element.first < programme.columns.size() && isPlain(element.second);
               });
    };
    return std::ranges::all_of(programme.columns,
                               [&](const ProgrammeColumn& column) {
                                   return isPlain(column.worth) && isPlain(column.lower) &&
                                          isPlain(column.upper) && column.lower <= column.upper;
                               }) &&
           std::ranges::all_of(programme.rows, isSoundRow);
}

std::vector<std::uint32_t> cheapColumns(const std::vector<double>& costs, double most) {
    std::vector<std::uint32_t> cheap;
    for (std::uint32_t c = 0; c < costs.size(); ++c) {
        if (costs[c] <= most) {
            cheap.push_back(c);
        }
    }
    return cheap;
}

double costOfRank(std::vector<double> costs, std::size_t rank) {
    if (rank + 1 >= costs.size()) {
        return statistics::kUnbounded;
    }
    const auto at = costs.begin() + static_cast<std::ptrdiff_t>(rank);
    std::ranges::nth_element(costs, at);
    return *at;
}

} // namespace bullace::breeding
