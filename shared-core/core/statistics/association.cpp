// How columns go together, and two samples against one another.
#include "core/statistics/description.hpp"
#include "core/statistics/distributions.hpp"

#include <Eigen/Core>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace bullace::statistics {

namespace {

struct Products {
    double n = 0;
    double meanX = 0;
    double meanY = 0;
    double xx = 0;
    double yy = 0;
    double xy = 0;
};

Products productsOf(std::span<const double> x, std::span<const double> y) {
    Products of;
    of.n = static_cast<double>(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) {
        of.meanX += (x[i] - x[0]) / of.n;
        of.meanY += (y[i] - y[0]) / of.n;
    }
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double offX = x[i] - x[0] - of.meanX;
        const double offY = y[i] - y[0] - of.meanY;
        of.xx += offX * offX;
        of.yy += offY * offY;
        of.xy += offX * offY;
    }
    of.meanX += x.empty() ? 0 : x[0];
    of.meanY += y.empty() ? 0 : y[0];
    return of;
}

double pearson(const Products& of) {
    return std::clamp(of.xy / std::sqrt(of.xx * of.yy), -1.0, 1.0);
}

// t of a correlation; infinite where it is ±1.
double tOf(double r, double n) {
    return r * std::sqrt((n - 2) / std::max(0.0, 1 - r * r));
}

double pOf(double r, double n) {
    const double t = tOf(r, n);
    return std::isfinite(t) ? studentTBothTails(t, n - 2) : 0;
}

// Ranks from 1, equal values sharing the mean of theirs.
std::vector<double> ranksOf(std::span<const double> values) {
    std::vector<std::size_t> order(values.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, {}, [values](std::size_t i) { return values[i]; });
    std::vector<double> ranks(values.size());
    for (std::size_t begin = 0; begin < order.size();) {
        std::size_t end = begin;
        while (end < order.size() && values[order[end]] == values[order[begin]]) {
            ++end;
        }
        const double rank = (static_cast<double>(begin) + static_cast<double>(end) + 1) / 2;
        for (; begin < end; ++begin) {
            ranks[order[begin]] = rank;
        }
    }
    return ranks;
}

// Sums over groups of equal values, of size t each.
struct Ties {
    double pairs = 0;   // t(t - 1)
    double triples = 0; // t(t - 1)(t - 2)
    double spread = 0;  // t(t - 1)(2t + 5)
    double cubes = 0;   // t³ - t
};

Ties tiesOf(std::span<const double> values) {
    std::map<double, double> sizes;
    for (const double value : values) {
        sizes[value] += 1;
    }
    Ties ties;
    for (const auto& [value, t] : sizes) {
        ties.pairs += t * (t - 1);
        ties.triples += t * (t - 1) * (t - 2);
        ties.spread += t * (t - 1) * (2 * t + 5);
        ties.cubes += t * t * t - t;
    }
    return ties;
}

double signOf(double difference) {
    return difference > 0 ? 1 : difference < 0 ? -1 : 0;
}

void addKendall(std::span<const double> x, std::span<const double> y, Correlation& of) {
    const auto n = static_cast<double>(x.size());
    double score = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        for (std::size_t j = i + 1; j < x.size(); ++j) {
            score += signOf(x[i] - x[j]) * signOf(y[i] - y[j]);
        }
    }
    const Ties tx = tiesOf(x);
    const Ties ty = tiesOf(y);
    const double all = n * (n - 1);
    of.tau = score / (std::sqrt(all - tx.pairs) * std::sqrt(all - ty.pairs) / 2);
    const double variance = (all * (2 * n + 5) - tx.spread - ty.spread) / 18 +
                            tx.pairs * ty.pairs / (2 * all) +
                            tx.triples * ty.triples / (9 * all * (n - 2));
    of.tauZ = score / std::sqrt(variance);
    of.tauP = 2 * normalBelow(-std::abs(of.tauZ));
}

} // namespace

std::optional<Correlation> correlationOf(std::span<const double> x, std::span<const double> y) {
    if (x.size() != y.size() || x.size() < 3) {
        return std::nullopt;
    }
    const Products of = productsOf(x, y);
    if (!(of.xx > 0) || !(of.yy > 0)) {
        return std::nullopt;
    }
    Correlation correlation;
    correlation.n = x.size();
    correlation.r = pearson(of);
    correlation.p = pOf(correlation.r, of.n);
    if (std::abs(correlation.r) < 1) {
        correlation.t = tOf(correlation.r, of.n);
        correlation.z = std::atanh(correlation.r);
    }
    if (x.size() > 3 && correlation.z) {
        correlation.zError = 1 / std::sqrt(of.n - 3);
        const double half = kNormal95 * *correlation.zError;
        correlation.limits =
            Interval{std::tanh(*correlation.z - half), std::tanh(*correlation.z + half)};
    }
    const Products ranks = productsOf(ranksOf(x), ranksOf(y));
    correlation.rho = pearson(ranks);
    correlation.rhoP = pOf(correlation.rho, of.n);
    addKendall(x, y, correlation);
    return correlation;
}

std::optional<Line> lineOf(std::span<const double> x, std::span<const double> y) {
    if (x.size() != y.size() || x.size() < 3) {
        return std::nullopt;
    }
    const Products of = productsOf(x, y);
    if (!(of.xx > 0)) {
        return std::nullopt;
    }
    Line line;
    line.n = x.size();
    line.slope = of.xy / of.xx;
    line.intercept = of.meanY - line.slope * of.meanX;
    const double left = std::max(0.0, of.yy - line.slope * of.xy);
    const double variance = left / (of.n - 2);
    line.residualSd = std::sqrt(variance);
    line.slopeError = std::sqrt(variance / of.xx);
    line.interceptError = std::sqrt(variance * (1 / of.n + of.meanX * of.meanX / of.xx));
    line.r2 = of.yy > 0 ? 1 - left / of.yy : 1;
    if (line.slopeError > 0) {
        line.t = line.slope / line.slopeError;
        line.p = studentTBothTails(line.t, of.n - 2);
    } else {
        line.p = line.slope == 0 ? 1 : 0;
    }
    return line;
}

Result<std::vector<double>> partialCorrelations(const std::vector<std::vector<double>>& columns) {
    const std::size_t rows = columns.empty() ? 0 : columns.front().size();
    for (const std::vector<double>& column : columns) {
        const bool isFinite =
            std::ranges::all_of(column, [](double x) { return std::isfinite(x); });
        if (column.size() != rows || !isFinite) {
            return Error{
                ErrorCode::InvalidInput, "Each column needs one finite value in every row.", ""};
        }
    }
    if (columns.size() < 2 || rows < columns.size() + 2) {
        return Error{ErrorCode::InvalidInput, "There are too few rows for so many columns.", ""};
    }
    const auto size = static_cast<Eigen::Index>(columns.size());
    Eigen::MatrixXd correlations(size, size);
    for (Eigen::Index i = 0; i < size; ++i) {
        for (Eigen::Index j = 0; j < size; ++j) {
            const Products of = productsOf(columns[static_cast<std::size_t>(i)],
                                           columns[static_cast<std::size_t>(j)]);
            correlations(i, j) = of.xy / std::sqrt(of.xx * of.yy);
        }
    }
    const Eigen::FullPivLU<Eigen::MatrixXd> factor(correlations);
    if (!correlations.allFinite() || !factor.isInvertible()) {
        return Error{
            ErrorCode::InvalidInput, "A column does not vary, or is made up of the others.", ""};
    }
    const Eigen::MatrixXd inverse = factor.inverse();
    std::vector<double> partial;
    for (Eigen::Index i = 0; i < size; ++i) {
        for (Eigen::Index j = 0; j < size; ++j) {
            partial.push_back(i == j ? 1
                                     : -inverse(i, j) / std::sqrt(inverse(i, i) * inverse(j, j)));
        }
    }
    return partial;
}

namespace {

TwoSamples::Test testOf(double difference, double error, double freedom) {
    const double half = studentTQuantile(0.975, freedom) * error;
    return {difference / error,
            freedom,
            studentTBothTails(difference / error, freedom),
            difference,
            {difference - half, difference + half}};
}

void addMeans(const Description& one, const Description& other, TwoSamples& samples) {
    const auto n = static_cast<double>(one.n);
    const auto m = static_cast<double>(other.n);
    const double a = *one.sd * *one.sd / n;
    const double b = *other.sd * *other.sd / m;
    const double difference = one.mean - other.mean;
    if (!(a + b > 0)) {
        return;
    }
    samples.welch = testOf(
        difference, std::sqrt(a + b), (a + b) * (a + b) / (a * a / (n - 1) + b * b / (m - 1)));
    const double pooled = (a * n * (n - 1) + b * m * (m - 1)) / (n + m - 2);
    samples.pooled = testOf(difference, std::sqrt(pooled * (1 / n + 1 / m)), n + m - 2);
    if (a > 0 && b > 0) {
        const double ratio = a * n / (b * m);
        const double above = fAbove(ratio, n - 1, m - 1);
        samples.varianceRatio = ratio;
        samples.varianceRatioP = 2 * std::min(above, 1 - above);
    }
}

void addPaired(std::span<const double> one, std::span<const double> other, TwoSamples& samples) {
    std::vector<double> differences;
    for (std::size_t i = 0; i < one.size(); ++i) {
        differences.push_back(one[i] - other[i]);
    }
    const auto of = describe(differences);
    if (of && of->sd && *of->sd > 0) {
        samples.paired = testOf(of->mean, *of->standardError, static_cast<double>(of->n) - 1);
    }
}

void addRanks(std::span<const double> one, std::span<const double> other, TwoSamples& samples) {
    std::vector<double> both(one.begin(), one.end());
    both.insert(both.end(), other.begin(), other.end());
    const std::vector<double> ranks = ranksOf(both);
    const auto n = static_cast<double>(one.size());
    const auto m = static_cast<double>(other.size());
    double sum = -n * (n + 1) / 2;
    for (std::size_t i = 0; i < one.size(); ++i) {
        sum += ranks[i];
    }
    samples.rankSum = sum;
    const double all = n + m;
    const double variance = n * m / 12 * (all + 1 - tiesOf(both).cubes / (all * (all - 1)));
    if (variance > 0) {
        const double off = sum - n * m / 2;
        const double z = (off - signOf(off) * 0.5) / std::sqrt(variance);
        samples.rankSumP = std::min(1.0, 2 * normalBelow(-std::abs(z)));
    }
}

} // namespace

TwoSamples compareSamples(std::span<const double> one, std::span<const double> other) {
    TwoSamples samples;
    const auto first = describe(one);
    const auto second = describe(other);
    if (!first || !second) {
        return samples;
    }
    if (first->sd && second->sd) {
        addMeans(*first, *second, samples);
    }
    if (one.size() == other.size()) {
        addPaired(one, other, samples);
    }
    addRanks(one, other, samples);
    return samples;
}

} // namespace bullace::statistics
