// Uncorrected sums of squares of nested levels set equal to what they are expected to be.
#include "core/trials/nested_components.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::trials {

namespace {

struct Margin {
    std::vector<double> n;
    std::vector<double> sum;

    // Σ sum² / n.
    [[nodiscard]] double squares() const {
        double total = 0;
        for (std::size_t i = 0; i < n.size(); ++i) {
            total += sum[i] * sum[i] / n[i];
        }
        return total;
    }
};

Margin
marginOf(const std::vector<std::uint32_t>& of, std::size_t levels, const std::vector<double>& y) {
    Margin margin{std::vector<double>(levels, 0.0), std::vector<double>(levels, 0.0)};
    for (std::size_t row = 0; row < y.size(); ++row) {
        margin.n[of[row]] += 1;
        margin.sum[of[row]] += y[row];
    }
    return margin;
}

// What a variance of the finer level counts for in the coarser one's sum of squares: Σ over the
// coarser of (Σ over the finer within it of n²) / n.
double coefficient(const std::vector<std::uint32_t>& coarse,
                   const Margin& coarser,
                   const std::vector<std::uint32_t>& fine,
                   const Margin& finer) {
    std::vector<std::uint32_t> above(finer.n.size(), 0);
    for (std::size_t row = 0; row < fine.size(); ++row) {
        above[fine[row]] = coarse[row];
    }
    double total = 0;
    for (std::size_t i = 0; i < finer.n.size(); ++i) {
        total += finer.n[i] * finer.n[i] / coarser.n[above[i]];
    }
    return total;
}

struct Ladder {
    std::vector<std::vector<std::uint32_t>> of; // the general mean first
    std::vector<Margin> margins;
};

Ladder ladderOf(const TrialTable& table,
                const std::vector<std::string>& nested,
                const std::vector<double>& y) {
    Ladder ladder;
    ladder.of.emplace_back(y.size(), 0);
    ladder.margins.push_back(marginOf(ladder.of.back(), 1, y));
    std::vector<const Factor*> above;
    for (const std::string& name : nested) {
        above.push_back(table.factor(name));
        const Factor cells = combined(above);
        ladder.of.push_back(cells.of);
        ladder.margins.push_back(marginOf(cells.of, cells.levels.size(), y));
    }
    return ladder;
}

// From the finest level upward, each variance from its line and those below.
void solveUpward(const Ladder& ladder, NestedComponents& into) {
    const double n = static_cast<double>(into.n);
    const std::size_t factors = into.levels.size() - 1;
    bool isKnown = true;
    for (std::size_t level = factors + 1; level-- > 0;) {
        NestedComponents::Level& line = into.levels[level];
        const double df = static_cast<double>(line.degreesOfFreedom);
        double rest = line.sumOfSquares;
        double own = df;
        for (std::size_t below = factors + 1; isKnown && below-- > level;) {
            // The difference between the squares of this level (below it, n of each variance of
            // this level or above) and of the one above it.
            const auto counts = [&](std::size_t margin) {
                if (below == factors) {
                    return margin == factors + 1
                               ? n
                               : static_cast<double>(ladder.margins[margin].n.size());
                }
                return margin > below ? n
                                      : coefficient(ladder.of[margin],
                                                    ladder.margins[margin],
                                                    ladder.of[below + 1],
                                                    ladder.margins[below + 1]);
            };
            const double count = counts(level + 1) - counts(level);
            if (below == level) {
                own = count;
            } else {
                rest -= count * *into.levels[below].variance;
            }
        }
        isKnown = isKnown && line.degreesOfFreedom > 0 && own > 1e-9 * n;
        if (isKnown) {
            line.variance = rest / own;
        }
    }
}

// `all` is the sum of squares of the records around their mean.
void fillLines(const Ladder& ladder,
               const std::vector<std::string>& nested,
               double all,
               NestedComponents& into) {
    for (std::size_t level = 0; level <= nested.size(); ++level) {
        const bool isLast = level == nested.size();
        const double fine = isLast ? all : ladder.margins[level + 1].squares();
        const std::size_t count = isLast ? into.n : ladder.margins[level + 1].n.size();
        NestedComponents::Level line;
        line.name = isLast ? "within" : nested[level];
        line.degreesOfFreedom = count - ladder.margins[level].n.size();
        line.sumOfSquares = std::max(0.0, fine - ladder.margins[level].squares());
        if (line.degreesOfFreedom > 0) {
            line.meanSquare = line.sumOfSquares / static_cast<double>(line.degreesOfFreedom);
        }
        into.levels.push_back(std::move(line));
    }
}

void remarkOn(NestedComponents& into) {
    for (const auto& level : into.levels) {
        if (!level.variance) {
            into.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "The variance of %1 cannot be estimated: no level of it, or of "
                                  "what lies below, is repeated."),
                 {level.name}});
        } else if (*level.variance < 0) {
            into.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                     "The variance of %1 is estimated below 0: "
                                                     "read it as none that could be seen."),
                                    {level.name}});
        }
    }
    tellLeftOut(into.leftOut, into.remarks);
}

} // namespace

Result<NestedComponents> nestedComponents(const TrialTable& table,
                                          const std::vector<std::string>& nested) {
    std::vector<Term> terms;
    for (const std::string& name : nested) {
        if (table.factor(name) == nullptr) {
            return Error{
                ErrorCode::InvalidInput, "There is no factor \"" + name + "\" in the records.", {}};
        }
        terms.push_back({name});
    }
    const auto rows = completeRows(table, terms);
    if (!rows) {
        return rows.error();
    }
    if (rows->empty() || nested.empty()) {
        return Error{ErrorCode::InvalidInput,
                     nested.empty() ? "No factor is named for the variance components."
                                    : "No record is complete.",
                     {}};
    }
    const TrialTable taken = rowsOf(table, *rows);
    std::vector<double> y = taken.response;
    const double origin = y.front();
    double mean = 0;
    for (const double value : y) {
        mean += (value - origin) / static_cast<double>(y.size());
    }
    double all = 0;
    for (double& value : y) {
        value = value - origin - mean;
        all += value * value;
    }
    const Ladder ladder = ladderOf(taken, nested, y);
    NestedComponents result;
    result.n = y.size();
    result.leftOut = table.rows() - y.size();
    fillLines(ladder, nested, all, result);
    solveUpward(ladder, result);
    remarkOn(result);
    return result;
}

} // namespace bullace::trials
