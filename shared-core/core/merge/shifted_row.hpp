// Whether a run of one walk's values stands one to three vines from where it belongs: the values
// are compared with what each vine of the row is otherwise like, in place and along the row.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace bullace::merge {

// The values of one descriptor on one day, by place along the row as it is planted; nothing where
// none was noted, or where another vine stood there then. Whole numbers (steps of stages, scores),
// counts or measures.
using RowValues = std::vector<std::optional<double>>;

inline constexpr int kFarthestShift = 3;

struct ShiftedRun {
    std::size_t first = 0; // of the walk's values, both included
    std::size_t last = 0;
    int along = 0; // +1: each value was noted one vine too far, and belongs to the place before
    std::size_t vines = 0; // in the run, with a value
    // Natural logarithms of how much better the run's values fit along -3 … +3 than in place; 0 at
    // 0.
    std::array<double, 2 * kFarthestShift + 1> evidence{};

    [[nodiscard]] double evidenceAt(int shift) const {
        return evidence[static_cast<std::size_t>(shift + kFarthestShift)];
    }
};

enum class ShiftScale {
    Steps, // whole numbers of a short scale: noise is known to be about one step in six
    Free   // counts and measures: compared by their rank in the row
};

// The evidence from which on a run is told. Chosen by simulation (tests/findings): of rows of 200
// vines with nothing wrong at most 2 in 100 are told of.
// Where vines differ by less than about half a stage, what each is like is itself little known, and
// more is asked for.
inline constexpr double kShiftEvidence = 8.8;
inline constexpr double kShiftEvidenceOfFewDays = 10.3; // fewer than kManyDays other days
inline constexpr std::size_t kManyDays = 6;
inline constexpr double kShiftEvidenceWhereAlike = 11.8;
inline constexpr std::size_t kLeastShiftedRun = 5; // vines

// The run that fits best along, where one fits clearly better than in place. `others` are other
// days of the row, before or after, of this and other seasons; the more there are, the better each
// vine is known. Nothing where fewer than kLeastShiftedRun vines can be compared or the vines
// hardly differ. Method  Vine effects and variances by one-way analysis of variance with days as
// replicates (Searle,
//         Casella & McCulloch 1992, Variance Components, ch. 3); best linear prediction of each
//         vine (Henderson 1975, Biometrics 31:423-447); the run is the maximum of the sums of log
//         likelihood ratios, as in Page 1954 (Biometrika 41:100-115), over all runs and shifts.
[[nodiscard]] std::optional<ShiftedRun>
findShiftedRun(const RowValues& walk, std::span<const RowValues> others, ShiftScale scale);

} // namespace bullace::merge
