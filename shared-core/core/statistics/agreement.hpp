// How well two people, or one person twice, agree about the same vines, and what each person adds
// to or takes from the values.
#pragma once

#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::statistics {

// What two people noted of one vine on one date, blind to one another.
struct Pair {
    double one = 0;
    double other = 0;
};

// Cohen's kappa with weights that fall with the square of the distance between scores: 1 for full
// agreement, 0 for what chance alone would give.
struct Kappa {
    std::size_t n = 0;
    std::size_t equal = 0;         // pairs with the same score
    std::optional<Estimate> kappa; // large-sample error; limits within -1 and 1
    Remarks remarks;
};
enum class KappaWeights { None, Linear, Squared };
// Scores are whole numbers; at most 100 different ones. Fewer than two pairs, or one score alone by
// both, give no kappa and a remark.
// Source  Cohen 1968, Psychol. Bull. 70:213-220; error by Fleiss, Cohen & Everitt 1969, Psychol.
// Bull. 72:323-327.
[[nodiscard]] Kappa kappaOf(std::span<const Pair> pairs, KappaWeights weights);

// How much of the variance of single values is between vines, when observers are a sample of all
// who might look (two-way random, absolute agreement, single measurement).
struct Intraclass {
    std::size_t subjects = 0;
    std::size_t observers = 0;
    std::optional<Estimate> icc; // 95 % limits, no standard error
    Remarks remarks;
};
// `values` holds a row for each subject with one value of each observer, all rows of one length
// from 2 on. Fewer than two rows, or no variance at all, give none and a remark. Errors:
// InvalidInput for rows of different lengths or values that are not finite. Source  Shrout & Fleiss
// 1979, Psychol. Bull. 86:420-428, ICC(2,1) and its limits; McGraw & Wong 1996, Psychol. Methods
// 1:30-46.
[[nodiscard]] Result<Intraclass> intraclassOf(const std::vector<std::vector<double>>& values);

// Mean difference, and the limits within which 95 % of differences lie.
struct Difference {
    std::size_t n = 0;
    double mean = 0;                      // one - other
    std::optional<double> sd;             // of the differences
    std::optional<Interval> meanInterval; // 95 % of the mean difference
    std::optional<Interval> limits;       // of agreement: mean ± 1.96 sd
    std::optional<double> limitError;     // standard error of each limit, √(3 sd²/n)
};
// Source  Bland & Altman 1986, Lancet 327:307-310. Nothing without a pair.
[[nodiscard]] std::optional<Difference> differenceOf(std::span<const Pair> pairs);

// One value with who noted it, of which thing (a vine on a date); things and observers are numbers
// from 0 on.
struct Reading {
    std::size_t thing = 0;
    std::size_t observer = 0;
    double value = 0;
};

struct ObserverEffect {
    std::size_t readings = 0; // of things that another person noted too
    // What the person's values lie above (+) or below (-) those of all, drawn towards 0 as far as
    // readings are few; with its prediction error.
    std::optional<Estimate> bias;
    // SD of what is left of the person's values; from three readings on.
    std::optional<double> spread;
};
struct ObserverModel {
    std::size_t things = 0;                // noted by at least two people
    std::size_t readings = 0;              // of those
    std::optional<double> observerSd;      // between people, 0 where none is shown
    std::optional<double> readingSd;       // what is left
    std::vector<ObserverEffect> observers; // in the order of their numbers
    Remarks remarks;
};
// value = thing + observer + error, things fixed, observers random and normal; variances by REML.
// Things with one reading, or with readings of one person alone, tell nothing and are left out.
// Errors: InvalidInput for values that are not finite.
// Source  Patterson & Thompson 1971, Biometrika 58:545-554; Robinson 1991, Stat. Sci. 6:15-32.
[[nodiscard]] Result<ObserverModel> observerModel(std::span<const Reading> readings,
                                                  std::size_t observers);

} // namespace bullace::statistics
