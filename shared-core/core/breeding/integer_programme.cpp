#include "core/breeding/integer_programme.hpp"

#include "core/breeding/programme_rows.hpp"
#include "core/breeding/whole_solver.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bullace::breeding {

namespace {

constexpr double kTolerance = 1e-7;     // of a worth, relative to its size
constexpr std::size_t kFewest = 400;    // columns that branch and bound starts with
constexpr int kMostCuttingRounds = 60;  // of the relaxation
constexpr std::size_t kMostRounds = 12; // of branch and bound over more columns

// Solves the relaxation with all columns, adding broken rows to `programme` until none is.
bool relaxAll(Programme& programme,
              const Deadline& deadline,
              const FindBroken& findBroken,
              ProgrammeSolution& solution) {
    std::vector<std::uint32_t> all(programme.columns.size());
    std::iota(all.begin(), all.end(), 0U);
    WholeSolver solver(programme, std::move(all));
    std::vector<ProgrammeRow> broken;
    for (int round = 0; round < kMostCuttingRounds; ++round) {
        const RelaxationStatus status = solver.relax(deadline);
        if (status == RelaxationStatus::Infeasible) {
            solution.status = ProgrammeStatus::Infeasible;
        }
        if (status != RelaxationStatus::Solved) {
            return false;
        }
        findClearlyBroken(findBroken, solver.relaxedValues(), kRelaxed, 0, broken);
        if (broken.empty()) {
            break;
        }
        for (const ProgrammeRow& row : broken) {
            solver.add(row);
            programme.rows.push_back(row);
        }
    }
    if (!broken.empty() && solver.relax(deadline) != RelaxationStatus::Solved) {
        return false;
    }
    solution.relaxation = solver.relaxedWorth();
    solution.bound = solution.relaxation;
    const std::span<const double> values = solver.relaxedValues();
    solution.reducedCosts.resize(programme.columns.size());
    for (std::uint32_t c = 0; c < programme.columns.size(); ++c) {
        const bool isTaken = values[c] > programme.columns[c].lower + 1e-9;
        solution.reducedCosts[c] = isTaken ? 0 : solver.reducedCost(c);
    }
    return true;
}

// A first set under a convex condition: parts of units near its limit leave no room for whole ones,
// so they are held a little farther from it, and more if that is not enough.
void searchInside(double most,
                  const Programme& programme,
                  double seconds,
                  const FindBroken& findBroken,
                  ProgrammeSolution& solution) {
    const std::vector<std::uint32_t> columns = cheapColumns(solution.reducedCosts, most);
    for (const double margin : {0.01, 0.03, 0.08}) {
        const Deadline deadline(seconds / 3);
        WholeSolver solver(programme, columns);
        if (solver.relax(deadline) != RelaxationStatus::Solved) {
            return;
        }
        const WholeSolver::Whole whole = solver.search(deadline, findBroken, margin);
        if (whole.isFound) {
            solution.values = solver.wholeValues();
            solution.worth = whole.worth;
            return;
        }
    }
}

// Whether the values are a set that keeps all bounds, rows and the convex condition.
bool isSet(const Programme& programme,
           const FindBroken& findBroken,
           std::span<const double> known) {
    if (known.size() != programme.columns.size()) {
        return false;
    }
    for (std::size_t c = 0; c < known.size(); ++c) {
        const ProgrammeColumn& column = programme.columns[c];
        const bool isWithin = known[c] >= column.lower && known[c] <= column.upper;
        if (!isWithin || (column.isWhole && known[c] != std::round(known[c]))) {
            return false;
        }
    }
    for (const ProgrammeRow& row : programme.rows) {
        double sum = 0;
        for (const auto& [column, element] : row.elements) {
            sum += element * known[column];
        }
        if (sum < row.lower - kStrict * (1 + std::abs(row.lower)) ||
            sum > row.upper + kStrict * (1 + std::abs(row.upper))) {
            return false;
        }
    }
    std::vector<ProgrammeRow> broken;
    findClearlyBroken(findBroken, known, kStrict, 0, broken);
    return broken.empty();
}

double worthOf(const Programme& programme, std::span<const double> values) {
    double worth = 0;
    for (std::size_t c = 0; c < values.size(); ++c) {
        worth += programme.columns[c].worth * values[c];
    }
    return worth;
}

// Those that are cheap, and those of the set that is known.
std::vector<std::uint32_t>
columnsFor(double most, const Programme& programme, const ProgrammeSolution& solution) {
    std::vector<std::uint32_t> columns = cheapColumns(solution.reducedCosts, most);
    for (std::uint32_t c = 0; c < solution.values.size(); ++c) {
        if (solution.values[c] != programme.columns[c].lower) {
            columns.push_back(c);
        }
    }
    std::ranges::sort(columns);
    columns.erase(std::unique(columns.begin(), columns.end()), columns.end());
    return columns;
}

// One branch and bound over the cheap columns; whether another with more columns is due.
bool searchAmong(double most,
                 const Programme& programme,
                 const Deadline& deadline,
                 const FindBroken& findBroken,
                 ProgrammeSolution& solution) {
    std::vector<std::uint32_t> columns = columnsFor(most, programme, solution);
    const bool hasAll = columns.size() == programme.columns.size();
    WholeSolver solver(programme, std::move(columns));
    const RelaxationStatus status = solver.relax(deadline);
    if (status != RelaxationStatus::Solved) {
        const bool isProven = status == RelaxationStatus::Infeasible && hasAll;
        solution.status = isProven                  ? ProgrammeStatus::Infeasible
                          : solution.values.empty() ? solution.status
                                                    : ProgrammeStatus::TimeIsUp;
        return status == RelaxationStatus::Infeasible && !hasAll;
    }
    const WholeSolver::Whole whole = solver.search(deadline, findBroken, 0, solution.values);
    if (whole.isFound && (solution.values.empty() || whole.worth > solution.worth)) {
        solution.values = solver.wholeValues();
        solution.worth = whole.worth;
    }
    if (!whole.isAll) {
        solution.bound = hasAll ? std::min(solution.bound, whole.bound) : solution.bound;
        solution.status =
            solution.values.empty() ? ProgrammeStatus::NotSolved : ProgrammeStatus::TimeIsUp;
        return false;
    }
    if (!whole.isFound && solution.values.empty()) {
        solution.status = hasAll ? ProgrammeStatus::Infeasible : solution.status;
        return !hasAll;
    }
    const double slack = solution.relaxation - solution.worth;
    const bool isProven = hasAll || most >= slack;
    solution.status = isProven ? ProgrammeStatus::Optimal : ProgrammeStatus::TimeIsUp;
    solution.bound = isProven ? solution.worth : solution.bound;
    return !isProven;
}

} // namespace

ProgrammeSolution solveProgramme(const Programme& given,
                                 double seconds,
                                 const FindBroken& findBroken,
                                 std::span<const double> known) {
    ProgrammeSolution solution;
    if (!isSolvable(given)) {
        return solution;
    }
    const Deadline deadline(seconds);
    Programme programme = given;
    if (!relaxAll(programme, deadline, findBroken, solution)) {
        return solution;
    }
    const double small = kTolerance * (1 + std::abs(solution.relaxation));
    std::size_t rank = std::max(kFewest, 3 * programme.rows.size());
    double most = costOfRank(solution.reducedCosts, rank);
    if (isSet(programme, findBroken, known)) {
        solution.values.assign(known.begin(), known.end());
        solution.worth = worthOf(programme, known);
        solution.status = ProgrammeStatus::TimeIsUp;
    } else if (findBroken) {
        searchInside(most + small, programme, seconds / 3, findBroken, solution);
    }
    for (std::size_t round = 0; round < kMostRounds; ++round) {
        if (!searchAmong(most + small, programme, deadline, findBroken, solution)) {
            break;
        }
        rank *= 4;
        most = solution.values.empty()
                   ? costOfRank(solution.reducedCosts, rank)
                   : std::max(solution.relaxation - solution.worth, most + small);
    }
    return solution;
}

} // namespace bullace::breeding
