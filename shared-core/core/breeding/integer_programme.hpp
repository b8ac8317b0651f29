// Choosing the best of very many sets: a linear objective in whole numbers under linear rows, and
// under convex ones that are added as they are found broken. GLPK behind plain structs.
#pragma once

#include "core/statistics/estimate.hpp"

#include <cstdint>
#include <functional>
#include <span>
#include <utility>
#include <vector>

namespace bullace::breeding {

struct ProgrammeColumn {
    double worth = 0; // per unit, maximised
    double lower = 0; // finite, lower <= upper
    double upper = 1;
    bool isWhole = true;
    bool isDecidedFirst = false; // of the whole ones: its value is settled before others'
};

// lower <= sum of element times column <= upper; unbounded on a side by ±statistics::kUnbounded.
struct ProgrammeRow {
    double lower = -statistics::kUnbounded;
    double upper = statistics::kUnbounded;
    std::vector<std::pair<std::uint32_t, double>> elements{}; // each column once
};

struct Programme {
    std::vector<ProgrammeColumn> columns;
    std::vector<ProgrammeRow> rows;
};

enum class ProgrammeStatus {
    Optimal,    // proven: no better set exists
    TimeIsUp,   // a set was found; `bound` says how much better another may be
    Infeasible, // proven: no set keeps all rows
    NotSolved   // the time was up before any set was found, or the numbers are beyond the solver
};

struct ProgrammeSolution {
    ProgrammeStatus status = ProgrammeStatus::NotSolved;
    std::vector<double> values; // one a column; whole ones exactly whole; empty without a set
    double worth = 0;
    double bound = 0; // no set is worth more
    // What each column costs at least, in worth of the relaxation, per unit that it is forced in;
    // 0 for those that the relaxation would take. Empty where the relaxation was not solved.
    std::vector<double> reducedCosts;
    double relaxation = 0; // worth of the best set if parts of units could be taken
};

// Rows that these values break, of a convex condition made tighter by the share `margin` of its
// limit (0: the condition itself). Without a margin all rows hold for every set that keeps it. A
// row that a set breaks by less than a millionth of its bound (or of 1) counts as kept.
using FindBroken = std::function<void(
    std::span<const double> values, double margin, std::vector<ProgrammeRow>& broken)>;

// The relaxation gives a bound and the columns' reduced costs; branch and bound over the columns
// that are cheap enough to matter gives a set; a column whose reduced cost is more than what lies
// between the two cannot be in a better set, so the answer is proven for all columns. Columns
// outside are at their lower bound. Deterministic, unless the time ends it. Nothing is printed.
// seconds  for all of it, above 0.
// known    A set that keeps all rows, one value a column, to begin with; one that does not is left
//          aside. Empty: none.
// Source  Nemhauser & Wolsey 1988, Integer and Combinatorial Optimization, II.5.2 (variable fixing
// by
//         reduced cost); Kelley 1960, J. SIAM 8:703-712 (cutting planes of convex conditions).
[[nodiscard]] ProgrammeSolution solveProgramme(const Programme& programme,
                                               double seconds,
                                               const FindBroken& findBroken = {},
                                               std::span<const double> known = {});

} // namespace bullace::breeding
