// Negative binomial regression: coefficients and k together, from a start that Newton's steps climb
// from.
#include "core/fruit/counts.hpp"
#include "core/statistics/distributions.hpp"
#include "core/statistics/newton.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <algorithm>
#include <cmath>

namespace bullace::fruit {

using statistics::LogLikelihood;
using statistics::Slope;

namespace {

using Columns = std::vector<std::vector<double>>;

Error wrong(const std::string& message) {
    return {ErrorCode::InvalidInput, message, ""};
}

std::optional<Error> whatIsWrong(std::span<const double> counts, const Columns& columns) {
    const auto isCount = [](double x) { return x >= 0 && x <= 1e9 && x == std::floor(x); };
    if (columns.empty() || counts.size() <= columns.size()) {
        return wrong("There are fewer counts than coefficients: " + std::to_string(counts.size()) +
                     " counts, " + std::to_string(columns.size()) + " columns.");
    }
    if (!std::ranges::all_of(counts, isCount)) {
        return wrong("A value is no count: counts are whole numbers from 0 on.");
    }
    for (const std::vector<double>& column : columns) {
        const bool isFinite =
            std::ranges::all_of(column, [](double x) { return std::isfinite(x); });
        if (column.size() != counts.size() || !isFinite) {
            return wrong("Each column needs one finite number for each count.");
        }
    }
    return std::nullopt;
}

// What one count adds to the value, and to the slopes of its linear predictor and of log k.
struct Term {
    double value = 0;
    double byEta = 0;
    double byEtaTwice = 0;
    double byLogK = 0;
    double byLogKTwice = 0;
    double byBoth = 0;
};

Term termOf(double y, double eta, double k) {
    const double mean = std::exp(eta);
    const double whole = k + mean;
    Term term;
    term.value = statistics::logGamma(k + y) - statistics::logGamma(k) -
                 statistics::logGamma(y + 1) - k * std::log1p(mean / k) +
                 y * (eta - std::log(whole));
    term.byEta = (y - mean) * k / whole;
    term.byEtaTwice = -mean * k * (k + y) / (whole * whole);
    const double byK = statistics::digamma(k + y) - statistics::digamma(k) - std::log1p(mean / k) +
                       (mean - y) / whole;
    const double byKTwice = statistics::trigamma(k + y) - statistics::trigamma(k) +
                            mean / (k * whole) - (mean - y) / (whole * whole);
    term.byLogK = k * byK;
    term.byLogKTwice = k * k * byKTwice + k * byK;
    term.byBoth = k * mean * (y - mean) / (whole * whole);
    return term;
}

double etaOf(const Columns& columns, std::span<const double> at, std::size_t row) {
    double eta = 0;
    for (std::size_t j = 0; j < columns.size(); ++j) {
        eta += columns[j][row] * at[j];
    }
    return eta;
}

LogLikelihood likelihoodOf(std::span<const double> counts, const Columns& columns) {
    return [counts, &columns](std::span<const double> at, Slope& out) {
        const std::size_t p = columns.size();
        const double k = std::exp(at[p]);
        for (std::size_t i = 0; i < counts.size(); ++i) {
            const Term term = termOf(counts[i], etaOf(columns, at, i), k);
            out.value += term.value;
            out.gradient[p] += term.byLogK;
            out.hessian[p * (p + 1) + p] += term.byLogKTwice;
            for (std::size_t j = 0; j < p; ++j) {
                const double x = columns[j][i];
                out.gradient[j] += x * term.byEta;
                out.hessian[j * (p + 1) + p] += x * term.byBoth;
                out.hessian[p * (p + 1) + j] += x * term.byBoth;
                for (std::size_t l = 0; l < p; ++l) {
                    out.hessian[j * (p + 1) + l] += x * columns[l][i] * term.byEtaTwice;
                }
            }
        }
    };
}

// Coefficients that make Xb nearest to log(y + ½), and k from what is left: near enough to climb
// from.
std::vector<double> startOf(std::span<const double> counts, const Columns& columns) {
    const auto rows = static_cast<Eigen::Index>(counts.size());
    const auto width = static_cast<Eigen::Index>(columns.size());
    Eigen::MatrixXd x(rows, width);
    Eigen::VectorXd logs(rows);
    for (Eigen::Index i = 0; i < rows; ++i) {
        logs[i] = std::log(counts[static_cast<std::size_t>(i)] + 0.5);
        for (Eigen::Index j = 0; j < width; ++j) {
            x(i, j) = columns[static_cast<std::size_t>(j)][static_cast<std::size_t>(i)];
        }
    }
    const Eigen::VectorXd b = (x.transpose() * x).ldlt().solve(x.transpose() * logs);
    std::vector<double> start(b.data(), b.data() + b.size());
    start.push_back(0); // log k
    return start;
}

double devianceOf(double y, double mean, double k) {
    const double own = y > 0 ? y * std::log(y / mean) : 0;
    return 2 * (own - (y + k) * std::log((y + k) / (mean + k)));
}

// Errors of the coefficients from the expected information, k held: (X'WX)^-1, W = m/(1 + m/k).
void addErrors(std::span<const double> counts,
               const Columns& columns,
               const std::vector<double>& at,
               CountRegression& fit) {
    const auto width = static_cast<Eigen::Index>(columns.size());
    Eigen::MatrixXd information = Eigen::MatrixXd::Zero(width, width);
    double curvature = 0;
    const double k = fit.k.value;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        const double eta = etaOf(columns, at, i);
        const double mean = std::exp(eta);
        fit.deviance += devianceOf(counts[i], mean, k);
        const Term term = termOf(counts[i], eta, k);
        curvature -= (term.byLogKTwice - term.byLogK) / (k * k);
        for (Eigen::Index j = 0; j < width; ++j) {
            for (Eigen::Index l = 0; l < width; ++l) {
                information(j, l) += columns[static_cast<std::size_t>(j)][i] *
                                     columns[static_cast<std::size_t>(l)][i] * mean /
                                     (1 + mean / k);
            }
        }
    }
    const Eigen::MatrixXd inverse =
        information.ldlt().solve(Eigen::MatrixXd::Identity(width, width));
    for (Eigen::Index j = 0; j < width; ++j) {
        fit.standardErrors.push_back(std::sqrt(inverse(j, j)));
    }
    fit.k.standardError = 1 / std::sqrt(curvature);
}

} // namespace

Result<CountRegression> fitCountRegression(std::span<const double> counts, const Columns& columns) {
    if (const auto error = whatIsWrong(counts, columns)) {
        return *error;
    }
    std::vector<double> start = startOf(counts, columns);
    if (!std::ranges::all_of(start, [](double x) { return std::isfinite(x); })) {
        return wrong("The columns add up to one another: a coefficient cannot be told.");
    }
    const auto found = statistics::maximise(likelihoodOf(counts, columns), std::move(start));
    if (!found) {
        return wrong("These counts do not determine the coefficients and k: a group may hold zeros "
                     "alone, columns may add up to one another, or the counts are not "
                     "over-dispersed.");
    }
    CountRegression fit;
    fit.n = counts.size();
    fit.coefficients.assign(found->at.begin(), found->at.end() - 1);
    fit.k.value = std::exp(found->at.back());
    const double half = statistics::kNormal95 * found->standardError(columns.size());
    fit.k.interval =
        statistics::Interval{fit.k.value * std::exp(-half), fit.k.value * std::exp(half)};
    fit.logLikelihood = found->value;
    addErrors(counts, columns, found->at, fit);
    return fit;
}

} // namespace bullace::fruit
