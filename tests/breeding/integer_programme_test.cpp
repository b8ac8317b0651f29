// The best set against trying all of them, convex conditions included.
#include "core/breeding/integer_programme.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::breeding;

namespace {

bool keeps(const Programme& programme, const std::vector<double>& values) {
    for (const ProgrammeRow& row : programme.rows) {
        double sum = 0;
        for (const auto& [column, element] : row.elements) {
            sum += element * values[column];
        }
        if (sum < row.lower - 1e-9 || sum > row.upper + 1e-9) {
            return false;
        }
    }
    return true;
}

double worthOf(const Programme& programme, const std::vector<double>& values) {
    double sum = 0;
    for (std::size_t c = 0; c < values.size(); ++c) {
        sum += programme.columns[c].worth * values[c];
    }
    return sum;
}

double squares(std::span<const double> values) {
    double sum = 0;
    for (const double value : values) {
        sum += value * value;
    }
    return sum;
}

// The greatest worth over all sets of 0 and 1, minus infinity where none is allowed.
double byTrying(const Programme& programme, double mostSquares) {
    double best = -std::numeric_limits<double>::infinity();
    const std::size_t n = programme.columns.size();
    for (std::size_t set = 0; set < std::size_t{1} << n; ++set) {
        std::vector<double> values(n);
        for (std::size_t c = 0; c < n; ++c) {
            values[c] = static_cast<double>(set >> c & 1U);
        }
        if (keeps(programme, values) && squares(values) <= mostSquares) {
            best = std::max(best, worthOf(programme, values));
        }
    }
    return best;
}

Programme randomProgramme(std::mt19937_64& dice) {
    Programme programme;
    const std::size_t n = 1 + dice() % 9;
    for (std::size_t c = 0; c < n; ++c) {
        programme.columns.push_back({static_cast<double>(dice() % 41) - 15});
    }
    for (std::size_t r = dice() % 4; r-- > 0;) {
        ProgrammeRow row;
        for (std::uint32_t c = 0; c < n; ++c) {
            if (dice() % 2 == 0) {
                row.elements.emplace_back(c, static_cast<double>(dice() % 9) - 2);
            }
        }
        row.upper = static_cast<double>(dice() % 12);
        row.lower = dice() % 3 == 0 ? row.upper - static_cast<double>(dice() % 5) : -1e6;
        programme.rows.push_back(row);
    }
    return programme;
}

} // namespace

TEST_CASE("the set found is the best of all sets, or none is allowed") {
    CHECK(rc::check([](std::uint64_t seed) {
        std::mt19937_64 dice(seed);
        const Programme programme = randomProgramme(dice);
        const double best = byTrying(programme, 1e9);
        const ProgrammeSolution solution = solveProgramme(programme, 60);
        if (std::isinf(best)) {
            RC_ASSERT(solution.status == ProgrammeStatus::Infeasible);
            return;
        }
        RC_ASSERT(solution.status == ProgrammeStatus::Optimal);
        RC_ASSERT(keeps(programme, solution.values));
        RC_ASSERT(std::abs(worthOf(programme, solution.values) - best) < 1e-6);
        RC_ASSERT(std::abs(solution.bound - best) < 1e-6);
        RC_ASSERT(solution.relaxation > best - 1e-6);
    }));
}

TEST_CASE("a convex condition holds though no row of the programme states it") {
    CHECK(rc::check([](std::uint64_t seed) {
        std::mt19937_64 dice(seed);
        const Programme programme = randomProgramme(dice);
        const double most = 0.5 + static_cast<double>(dice() % 4);
        const auto tangent =
            [most](std::span<const double> at, double margin, std::vector<ProgrammeRow>& broken) {
                const double here = squares(at);
                const double limit = most * (1 - margin);
                if (here <= limit + 1e-7) {
                    return;
                }
                ProgrammeRow row;
                row.upper = limit + here;
                for (std::uint32_t c = 0; c < at.size(); ++c) {
                    row.elements.emplace_back(c, 2 * at[c]);
                }
                broken.push_back(row);
            };
        const double best = byTrying(programme, most);
        const ProgrammeSolution solution = solveProgramme(programme, 60, tangent);
        if (std::isinf(best)) {
            RC_ASSERT(solution.status == ProgrammeStatus::Infeasible);
            return;
        }
        RC_ASSERT(solution.status == ProgrammeStatus::Optimal);
        RC_ASSERT(squares(solution.values) <= most);
        RC_ASSERT(std::abs(solution.worth - best) < 1e-6);
    }));
}

TEST_CASE("numbers beyond the solver are not solved, and nothing ends the program") {
    const double nan = std::nan("");
    CHECK(solveProgramme({{{nan}}, {}}, 1).status == ProgrammeStatus::NotSolved);
    CHECK(solveProgramme({{{1, 2, 1}}, {}}, 1).status == ProgrammeStatus::NotSolved);
    CHECK(solveProgramme({{{1e300}}, {}}, 1).status == ProgrammeStatus::NotSolved);
    CHECK(solveProgramme({{{1}}, {{0, nan, {{0, 1}}}}}, 1).status == ProgrammeStatus::NotSolved);
    CHECK(solveProgramme({{{1}}, {{0, 1, {{7, 1}}}}}, 1).status == ProgrammeStatus::NotSolved);
    // A column named twice in a row is a mistake that GLPK itself finds.
    CHECK(solveProgramme({{{1}}, {{0, 1, {{0, 1}, {0, 1}}}}}, 1).status ==
          ProgrammeStatus::NotSolved);
    const ProgrammeSolution after = solveProgramme({{{2}, {1}}, {{0, 1, {{0, 1}, {1, 1}}}}}, 1);
    CHECK(after.status == ProgrammeStatus::Optimal);
    CHECK(after.worth == 2);
    CHECK(after.reducedCosts.size() == 2);
    CHECK(solveProgramme({}, 1).status == ProgrammeStatus::Optimal);
}
