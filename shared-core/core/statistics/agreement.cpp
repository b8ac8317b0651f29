#include "core/statistics/agreement.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace bullace::statistics {

namespace {

constexpr std::size_t kMostScores = 100;

// Shares of pairs by the two scores, with the scores in ascending order.
struct Crossing {
    std::vector<double> scores;
    std::vector<double> share; // row by row, rows are the first person's
    std::vector<double> rows;
    std::vector<double> columns;

    [[nodiscard]] std::size_t size() const { return scores.size(); }
};

Crossing crossingOf(std::span<const Pair> pairs) {
    std::map<double, std::size_t> order;
    for (const Pair& pair : pairs) {
        order[pair.one];
        order[pair.other];
    }
    Crossing crossing;
    for (auto& [score, place] : order) {
        place = crossing.scores.size();
        crossing.scores.push_back(score);
    }
    const std::size_t size = crossing.size();
    crossing.share.assign(size * size, 0.0);
    crossing.rows.assign(size, 0.0);
    crossing.columns.assign(size, 0.0);
    const double each = 1 / static_cast<double>(pairs.size());
    for (const Pair& pair : pairs) {
        const std::size_t row = order[pair.one];
        const std::size_t column = order[pair.other];
        crossing.share[row * size + column] += each;
        crossing.rows[row] += each;
        crossing.columns[column] += each;
    }
    return crossing;
}

double weightOf(const Crossing& crossing, KappaWeights weights, std::size_t i, std::size_t j) {
    if (weights == KappaWeights::None) {
        return i == j ? 1 : 0;
    }
    const double range = crossing.scores.back() - crossing.scores.front();
    const double apart = std::abs(crossing.scores[i] - crossing.scores[j]) / range;
    return 1 - (weights == KappaWeights::Linear ? apart : apart * apart);
}

// Kappa and its large-sample standard error.
Estimate kappaFrom(const Crossing& crossing, KappaWeights weights, double n) {
    const std::size_t size = crossing.size();
    std::vector<double> ofRow(size, 0.0);
    std::vector<double> ofColumn(size, 0.0);
    double observed = 0;
    double expected = 0;
    for (std::size_t i = 0; i < size; ++i) {
        for (std::size_t j = 0; j < size; ++j) {
            const double weight = weightOf(crossing, weights, i, j);
            ofRow[i] += weight * crossing.columns[j];
            ofColumn[j] += weight * crossing.rows[i];
            observed += weight * crossing.share[i * size + j];
            expected += weight * crossing.rows[i] * crossing.columns[j];
        }
    }
    const double kappa = (observed - expected) / (1 - expected);
    double sum = 0;
    for (std::size_t i = 0; i < size; ++i) {
        for (std::size_t j = 0; j < size; ++j) {
            const double part =
                weightOf(crossing, weights, i, j) - (ofRow[i] + ofColumn[j]) * (1 - kappa);
            sum += crossing.share[i * size + j] * part * part;
        }
    }
    const double off = kappa - expected * (1 - kappa);
    const double error =
        std::sqrt(std::max(0.0, sum - off * off)) / ((1 - expected) * std::sqrt(n));
    Estimate estimate = estimateAround(kappa, error, kNormal95);
    estimate.interval->low = std::max(-1.0, estimate.interval->low);
    estimate.interval->high = std::min(1.0, estimate.interval->high);
    return estimate;
}

// The mean squares of a two-way layout with one value a cell.
struct TwoWay {
    double subjects = 0; // number
    double observers = 0;
    double ofSubjects = 0; // mean squares
    double ofObservers = 0;
    double ofError = 0;
};

TwoWay twoWay(const std::vector<std::vector<double>>& values) {
    TwoWay layout;
    layout.subjects = static_cast<double>(values.size());
    layout.observers = static_cast<double>(values.front().size());
    const double origin = values.front().front();
    std::vector<double> columns(values.front().size(), 0.0);
    std::vector<double> rows;
    double all = 0;
    for (const std::vector<double>& row : values) {
        double sum = 0;
        for (std::size_t j = 0; j < row.size(); ++j) {
            sum += row[j] - origin;
            columns[j] += (row[j] - origin) / layout.subjects;
        }
        rows.push_back(sum / layout.observers);
        all += sum / (layout.subjects * layout.observers);
    }
    for (std::size_t i = 0; i < values.size(); ++i) {
        layout.ofSubjects += layout.observers * (rows[i] - all) * (rows[i] - all);
        for (std::size_t j = 0; j < columns.size(); ++j) {
            const double left = values[i][j] - origin - rows[i] - columns[j] + all;
            layout.ofError += left * left;
        }
    }
    for (const double column : columns) {
        layout.ofObservers += layout.subjects * (column - all) * (column - all);
    }
    layout.ofSubjects /= layout.subjects - 1;
    layout.ofObservers /= layout.observers - 1;
    layout.ofError /= (layout.subjects - 1) * (layout.observers - 1);
    return layout;
}

Interval intraclassLimits(const TwoWay& layout, double icc) {
    const double n = layout.subjects;
    const double k = layout.observers;
    if (layout.ofError <= 0) {
        return {icc, 1};
    }
    const double f = layout.ofObservers / layout.ofError;
    const double a = k * icc * f;
    const double b = n * (1 + (k - 1) * icc) - k * icc;
    const double freedom = (k - 1) * (n - 1) * (a + b) * (a + b) / ((n - 1) * a * a + b * b);
    const double lower = fQuantile(0.975, n - 1, freedom);
    const double upper = fQuantile(0.975, freedom, n - 1);
    const double rest = k * layout.ofObservers + (k * n - k - n) * layout.ofError;
    return {
        n * (layout.ofSubjects - lower * layout.ofError) / (lower * rest + n * layout.ofSubjects),
        n * (upper * layout.ofSubjects - layout.ofError) / (rest + n * upper * layout.ofSubjects)};
}

} // namespace

Kappa kappaOf(std::span<const Pair> pairs, KappaWeights weights) {
    Kappa answer;
    answer.n = pairs.size();
    answer.equal = static_cast<std::size_t>(
        std::ranges::count_if(pairs, [](const Pair& pair) { return pair.one == pair.other; }));
    const Crossing crossing = pairs.empty() ? Crossing{} : crossingOf(pairs);
    if (pairs.size() < 2 || crossing.size() < 2) {
        answer.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                   "Pairs: %1, all of one score: kappa needs at "
                                                   "least two pairs and two scores."),
                                  {static_cast<std::int64_t>(pairs.size())}});
    } else if (crossing.size() > kMostScores) {
        answer.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                   "These values are no scores: there are %1 "
                                                   "different ones."),
                                  {static_cast<std::int64_t>(crossing.size())}});
    } else {
        answer.kappa = kappaFrom(crossing, weights, static_cast<double>(pairs.size()));
    }
    return answer;
}

Result<Intraclass> intraclassOf(const std::vector<std::vector<double>>& values) {
    Intraclass answer;
    answer.subjects = values.size();
    answer.observers = values.empty() ? 0 : values.front().size();
    for (const std::vector<double>& row : values) {
        const bool isFinite = std::ranges::all_of(row, [](double x) { return std::isfinite(x); });
        if (row.size() != answer.observers || row.size() < 2 || !isFinite) {
            return Error{ErrorCode::InvalidInput,
                         "Each vine needs one finite value of each observer, of at least two.",
                         ""};
        }
    }
    if (values.size() < 2) {
        answer.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                   "Vines noted by both: %1; agreement needs at "
                                                   "least two."),
                                  {static_cast<std::int64_t>(values.size())}});
        return answer;
    }
    const TwoWay layout = twoWay(values);
    const double n = layout.subjects;
    const double k = layout.observers;
    const double whole = layout.ofSubjects + (k - 1) * layout.ofError +
                         k * (layout.ofObservers - layout.ofError) / n;
    if (!(whole > 0)) {
        answer.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "All values are the same: agreement cannot be told."), {}});
        return answer;
    }
    const double icc = (layout.ofSubjects - layout.ofError) / whole;
    answer.icc = Estimate{icc, {}, intraclassLimits(layout, icc)};
    return answer;
}

std::optional<Difference> differenceOf(std::span<const Pair> pairs) {
    if (pairs.empty()) {
        return std::nullopt;
    }
    const auto n = static_cast<double>(pairs.size());
    Difference difference;
    difference.n = pairs.size();
    for (const Pair& pair : pairs) {
        difference.mean += (pair.one - pair.other) / n;
    }
    if (pairs.size() < 2) {
        return difference;
    }
    double squares = 0;
    for (const Pair& pair : pairs) {
        const double off = pair.one - pair.other - difference.mean;
        squares += off * off;
    }
    const double sd = std::sqrt(squares / (n - 1));
    const double half = studentTQuantile(0.975, n - 1) * sd / std::sqrt(n);
    difference.sd = sd;
    difference.meanInterval = Interval{difference.mean - half, difference.mean + half};
    difference.limits =
        Interval{difference.mean - kNormal95 * sd, difference.mean + kNormal95 * sd};
    difference.limitError = std::sqrt(3 * sd * sd / n);
    return difference;
}

} // namespace bullace::statistics
